package view

import "testing"

func benchmark(b *testing.B, bodies []Body, cam Camera, opts Options) {
	b.ReportAllocs()
	n := 0
	for b.Loop() {
		n = len(Project(bodies, cam, opts).Lines)
	}
	b.ReportMetric(float64(n), "lines")
}

func BenchmarkSideboard(b *testing.B) {
	bodies := sideboard()
	eye, _ := Standing(Vec3{2600, -2300, 0}, 1600, Vec3{750, 225, 400})
	b.Run("front-hidden", func(b *testing.B) { benchmark(b, bodies, From(Front), Options{Hidden: true}) })
	b.Run("isometric-hidden", func(b *testing.B) { benchmark(b, bodies, Isometric(Right), Options{Hidden: true}) })
	b.Run("isometric", func(b *testing.B) { benchmark(b, bodies, Isometric(Right), Options{}) })
	b.Run("perspective-fills", func(b *testing.B) { benchmark(b, bodies, eye, Options{Fills: true}) })
}

// twoThousand is a stack of boxes with gaps between, 20 × 10 × 10.
func twoThousand() []Body {
	var out []Body
	for i := range 2000 {
		x, y, z := float64(i%20)*50, float64(i/20%10)*50, float64(i/200)*50
		out = append(out, box(i, x, y, z, x+41, y+37, z+33))
	}
	return out
}

func BenchmarkTwoThousandBoxes(b *testing.B) {
	bodies := twoThousand()
	b.Run("front-hidden", func(b *testing.B) { benchmark(b, bodies, From(Front), Options{Hidden: true}) })
	b.Run("isometric-hidden", func(b *testing.B) { benchmark(b, bodies, Isometric(Right), Options{Hidden: true}) })
	b.Run("isometric-fills", func(b *testing.B) { benchmark(b, bodies, Isometric(Right), Options{Fills: true}) })
}
