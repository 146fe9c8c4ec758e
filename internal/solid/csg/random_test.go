package csg

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// wild draws a body whose prisms meet in every awkward way: small whole
// coordinates on all axes, so that faces coincide, edges run along each other
// and corners touch; then carried to nanometres by an odd factor.
func wild(t *rapid.T) Body {
	const size = 6
	coord := rapid.IntRange(-1, size+1)
	ring := func(name string) []Point2 {
		n := rapid.IntRange(3, 6).Draw(t, name)
		out := make([]Point2, n)
		for i := range out {
			out[i] = Point2{measure.Length(coord.Draw(t, "u")), measure.Length(coord.Draw(t, "v"))}
		}
		return out
	}
	prism := func(tag Tag) Prism {
		a := coord.Draw(t, "from")
		p := Prism{Axis: Axis(rapid.IntRange(0, 2).Draw(t, "axis")), From: measure.Length(a),
			To: measure.Length(a + rapid.IntRange(1, size).Draw(t, "depth")), Tag: tag}
		if rapid.Bool().Draw(t, "block") {
			u, v := measure.Length(coord.Draw(t, "u")), measure.Length(coord.Draw(t, "v"))
			w, h := measure.Length(rapid.IntRange(1, 3).Draw(t, "w")), measure.Length(rapid.IntRange(1, 3).Draw(t, "h"))
			p.Outline = []Point2{{u, v}, {u + w, v}, {u + w, v + h}, {u, v + h}}
			return p
		}
		for range 20 {
			if p.Outline = ring("corners"); p.fault() == 0 {
				return p
			}
		}
		p.Outline = []Point2{{0, 0}, {3, 1}, {1, 3}}
		return p
	}
	b := Body{Base: block(0, X, 0, 0, 0, size, size, size)}
	if rapid.IntRange(0, 3).Draw(t, "shape") == 0 {
		b.Base = prism(0)
	}
	for i := range rapid.IntRange(0, 8).Draw(t, "cuts") {
		b.Cuts = append(b.Cuts, prism(Tag(1+i%3)))
	}
	return scaled(b, measure.Length(rapid.SampledFrom([]int{1, 7, 396_875, 1_000_003}).Draw(t, "unit")))
}

// anyBuild builds what may be empty or in pieces.
func anyBuild(t interface{ Fatalf(string, ...any) }, b Body) *Solid {
	defer func() {
		if r := recover(); r != nil {
			t.Fatalf("panic: %v\n%s", r, dump(b))
		}
	}()
	s, err := Build(b)
	if err != nil {
		for _, f := range err.(Faults) {
			if f.Kind < Nothing {
				t.Fatalf("Build: %v", err)
			}
		}
	}
	if s == nil {
		return &Solid{}
	}
	if wrong := unsound(s); wrong != "" {
		t.Fatalf("%s\n%s", wrong, dump(b))
	}
	return s
}

func TestRandomBodiesAreSound(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) { anyBuild(t, wild(t)) })
}

// What a cut takes away is the part of the body inside the cut; it is built as
// a body of its own by swapping the roles of solid and air one cut at a time:
// volume(base less all) + Σ volume(cut i ∩ base less cuts before i) = volume(base).
func TestRemovedVolumesAddUp(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := wild(t)
		whole := float64(anyBuild(t, Body{Base: b.Base}).Volume())
		sum := float64(anyBuild(t, b).Volume())
		for i, c := range b.Cuts {
			got, err := Common(Body{Base: b.Base}, Placed{Body: Body{c, b.Cuts[:i]}})
			if err != nil {
				t.Fatalf("Common: %v", err)
			}
			sum += float64(got.Volume())
		}
		if math.Abs(sum-whole) > 1e-12*whole {
			t.Fatalf("part and waste are %v, the blank %v\n%s", sum, whole, dump(b))
		}
	})
}
