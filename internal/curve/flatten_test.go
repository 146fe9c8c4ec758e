package curve

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// Every point of the curve is within tolerance of the polyline. Both are
// graphs over x, so the segment under a point is the one to measure.
func TestFlattenKeepsTolerance(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		c := anyCurve(t)
		tol := rapid.SampledFrom([]float64{0.001, 0.01, 0.1, 1, 20}).Draw(t, "tolerance")
		pts := c.Flatten(c.from, c.to, tol)
		for i := range pts[1:] {
			a, b := pts[i], pts[i+1]
			if !(b.X > a.X) {
				t.Fatalf("points %d and %d do not go on: %v %v", i, i+1, a, b)
			}
			for _, f := range []float64{0.1, 0.25, 0.5, 0.75, 0.9} {
				x := a.X + f*(b.X-a.X)
				if d := toSegment(Point{x, c.Y(x)}, a, b); d > tol*(1+1e-9)+1e-10 {
					t.Fatalf("%v from the line at %v, tolerance %v", d, x, tol)
				}
			}
		}
	})
}

func anyCurve(t *rapid.T) *Curve {
	c, err := New(anySpec(t))
	if err != nil {
		t.Fatal(err)
	}
	if !rapid.Bool().Draw(t, "offset") {
		return c
	}
	r, _ := c.MinRadius()
	p, err := c.Offset(measure.Length(rapid.Float64Range(-0.9, 1).Draw(t, "d/R") * float64(min(r, c.Span()))))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The corners of the flats and the two ends are points, whatever the
// tolerance, and the other way round gives the same points.
func TestFlattenKeepsCorners(t *testing.T) {
	c := must(t, ledge())
	pts := c.Flatten(0, c.to, 1000)
	want := []Point{{0, 0}, {1.25 * inch, 0}, {21.25 * inch, 0}, {22.5 * inch, 0}}
	if len(pts) != len(want) {
		t.Fatalf("%v", pts)
	}
	for i := range want {
		testkit.Near(t, pts[i].X, want[i].X, 1e-12)
		testkit.Near(t, pts[i].Y, want[i].Y, 1e-12)
	}
	fine := c.Flatten(0, c.to, 0.1)
	back := c.Flatten(c.to, 0, 0.1)
	slices.Reverse(back)
	testkit.Diff(t, fine, back)
	if one := c.Flatten(5, 5, 1); len(one) != 1 {
		t.Errorf("no stretch gives %v", one)
	}
}

// An arc of radius R needs chords of 2·acos(1 − tol/R) of turn at the most, so
// the count cannot be below the turn over that; it should not be far above.
func TestFlattenIsNotWasteful(t *testing.T) {
	c := must(t, sideboard())
	R, tol := 163.7*inch, 0.05
	least := 2 * float64(c.EndAngle()) / (2 * math.Acos(1-tol/R))
	if n := float64(len(c.Flatten(0, c.to, tol)) - 1); n < least || n > 2*least+2 {
		t.Errorf("%v chords, the fewest are %v", n, least)
	}
}

func TestBeziersKeepTolerance(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		c := anyCurve(t)
		tol := rapid.SampledFrom([]float64{0.001, 0.05, 1}).Draw(t, "tolerance")
		cubics := c.Beziers(c.from, c.to, tol)
		for i, b := range cubics {
			if i > 0 && b[0] != cubics[i-1][3] && math.Hypot(b[0].X-cubics[i-1][3].X, b[0].Y-cubics[i-1][3].Y) > 1e-9 {
				t.Fatalf("cubic %d starts at %v, the one before ends at %v", i, b[0], cubics[i-1][3])
			}
			for k := 1; k < 100; k++ {
				p := b.At(float64(k) / 100)
				d := math.Abs(p.Y-c.Y(p.X)) * math.Cos(float64(c.Tangent(p.X)))
				if d > tol {
					t.Fatalf("cubic %d of %d is %v off at %v, tolerance %v", i, len(cubics), d, p, tol)
				}
			}
		}
	})
}

func TestBezierCount(t *testing.T) {
	c := must(t, sideboard())
	if n := len(c.Beziers(0, c.to, 0.01)); n != 2 {
		t.Errorf("%d cubics for a shallow arc, want its two halves", n)
	}
}

func TestOrdinates(t *testing.T) {
	c := must(t, ledge())
	table, err := c.Ordinates(2 * measure.Inch)
	if err != nil {
		t.Fatal(err)
	}
	// Eleven stations 2 in apart fall on 10 in each way, which are the corners,
	// and the ends lie 1¼ beyond.
	if len(table) != 13 {
		t.Fatalf("%d stations: %v", len(table), table)
	}
	for i, s := range table {
		m := table[len(table)-1-i]
		testkit.Near(t, s.FromCentre, -m.FromCentre, 1e-9)
		testkit.Near(t, s.Y, m.Y, 1e-9)
		testkit.Near(t, s.X, s.FromCentre+11.25*inch, 1e-9)
	}
	// 5 in from the end, 11/16 of the rise; here 4 in: u = 0.4, 1.5(1.2−0.064)/2.
	testkit.Near(t, table[3].Y, 1.5*inch*(1.2-0.064)/2, 1e-9)
	for _, bad := range []measure.Length{0, -1, 1} {
		if _, err := c.Ordinates(bad); err == nil {
			t.Errorf("spacing %v taken", bad)
		}
	}
}

func TestOrdinatesIn(t *testing.T) {
	c := must(t, ledge())
	table, err := c.OrdinatesIn(5)
	if err != nil {
		t.Fatal(err)
	}
	for i, y := range []float64{0, 11.0 / 16, 1, 11.0 / 16, 0} {
		testkit.Near(t, table[i].Y, y*1.5*inch, 1e-9)
		testkit.Near(t, table[i].FromCentre, float64(i-2)*5*inch, 1e-9)
	}
	for _, n := range []int{-1, 0, 1, mostStations + 1} {
		if _, err := c.OrdinatesIn(n); err == nil {
			t.Errorf("%d stations taken", n)
		}
	}
}

var kept *Curve

// New and a table of 200: under 100 µs for arc and beam, 2 ms for elastica.
func BenchmarkNewAnd200(b *testing.B) {
	elastica := ledge()
	elastica.Rise = 4 * measure.Inch
	for _, bb := range []struct {
		name string
		spec Spec
	}{{"arc", sideboard()}, {"beam", ledge()}, {"elastica", elastica}} {
		b.Run(bb.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				c, err := New(bb.spec)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := c.OrdinatesIn(200); err != nil {
					b.Fatal(err)
				}
				kept = c
			}
		})
	}
}

func BenchmarkFlattenOffset(b *testing.B) {
	c := must(b, ledge())
	p, err := c.Offset(-measure.Inch)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		p.Flatten(p.from, p.to, 0.02)
	}
}
