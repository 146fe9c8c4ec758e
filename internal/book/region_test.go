package book

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

// TestCutOutArea compares areas with a polygon library that shares no code:
// a box less some outlines, and the area enclosed by the rings.
func TestCutOutArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box := sheet.Box{W: 100, H: 60}
		var outlines [][]sheet.Point
		want := polygon(box.Corners())
		for range rapid.IntRange(0, 5).Draw(t, "outlines") {
			o := quad(t)
			outlines = append(outlines, o)
			less, err := geom.Difference(want, polygon(o))
			common, err2 := geom.Intersection(want, polygon(o))
			if err != nil || err2 != nil {
				t.Skip("the other library gave up: ", err, err2)
			}
			// Once in ten thousand it contradicts itself, with a difference
			// nowhere near the whole less what is common; it cannot judge then.
			if math.Abs(want.Area()-common.Area()-less.Area()) > 1e-6 {
				t.Skip("the other library contradicts itself")
			}
			want = less
		}
		r := cutOut(box, outlines)
		area := 0.0
		for _, k := range r.traps {
			area += (k.y1 - k.y0) * (k.r0 - k.l0 + k.r1 - k.l1) / 2
		}
		areaNear(t, area, want.Area(), 0.05)
		areaNear(t, enclosed(r.rings()), area, 0.05)
	})
}

// Where two cuts touch in a corner the rings must not cross there: a unit
// square at the corner of the box, a block beside it and a wedge that stands on
// both leave 6 000 − 1 − 0.375 − 0.75.
func TestCutsThatTouchInACorner(t *testing.T) {
	box := sheet.Box{W: 100, H: 60}
	pts := func(xy ...float64) (out []sheet.Point) {
		for i := 0; i < len(xy); i += 2 {
			out = append(out, sheet.Pt(xy[i], xy[i+1]))
		}
		return out
	}
	r := cutOut(box, [][]sheet.Point{pts(0, 0, 1, 0, 1, 1, 0, 1), pts(0.25, 0, 1.25, 0, 1.25, 1.125, 0.25, 1.125), pts(0, 1.125, 1, 1.125, 0.75, 2.125, 0.25, 2.125)})
	if got, want := enclosed(r.rings()), 6000-1-0.375-0.75; math.Abs(got-want) > 1e-6 {
		t.Errorf("rings enclose %v, want %v", got, want)
	}
}

func polygon(ring []sheet.Point) geom.Geometry {
	var xy []float64
	for _, p := range append(ring[:len(ring):len(ring)], ring[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

// quad is a convex four-sided outline, some level, some sloped, some beyond
// the box.
func quad(t *rapid.T) []sheet.Point {
	// In sixteenths of a millimetre: with edges a billionth apart the other
	// library answers nonsense.
	grid := func(name string, lo, hi int) float64 { return float64(rapid.IntRange(lo*16, hi*16).Draw(t, name)) / 16 }
	x, y := grid("x", -20, 110), grid("y", -20, 70)
	w, h := grid("w", 1, 60), grid("h", 1, 40)
	s := rapid.SampledFrom([]float64{0, 0, 0.25, -0.375}).Draw(t, "slope") * w
	return []sheet.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w - s, Y: y + h}, {X: x + s, Y: y + h}}
}

// enclosed is the area inside the rings by the even-odd rule: rings that lie
// in an odd number of others are holes.
func enclosed(rings [][]sheet.Point) float64 {
	sum := 0.0
	for i, r := range rings {
		deep := 0
		for j, o := range rings {
			if i != j && inside(o, inner(r)) {
				deep++
			}
		}
		a := math.Abs(shoelace(r))
		if deep%2 == 1 {
			a = -a
		}
		sum += a
	}
	return sum
}

// inner is a place just inside a ring, beside the middle of its first edge.
func inner(r []sheet.Point) sheet.Point {
	a, b := r[0], r[1]
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	off := 1e-4
	if shoelace(r) < 0 {
		off = -off
	}
	return sheet.Pt((a.X+b.X)/2-(b.Y-a.Y)/long*off, (a.Y+b.Y)/2+(b.X-a.X)/long*off)
}

func inside(ring []sheet.Point, p sheet.Point) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func shoelace(r []sheet.Point) float64 {
	sum := 0.0
	for i, a := range r {
		b := r[(i+1)%len(r)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum / 2
}

func TestCutOutCorner(t *testing.T) {
	// A 10 × 10 square without its lower right quarter is an L of six corners.
	r := cutOut(sheet.Box{W: 10, H: 10}, [][]sheet.Point{{{X: 5, Y: -1}, {X: 11, Y: -1}, {X: 11, Y: 5}, {X: 5, Y: 5}}})
	rings := r.rings()
	if len(rings) != 1 || len(rings[0]) != 6 {
		t.Errorf("got rings %v", rings)
	}
	testkit.Near(t, math.Abs(shoelace(rings[0])), 75, 1e-9)
	if r.holds(sheet.Pt(7, 3)) || !r.holds(sheet.Pt(3, 3)) {
		t.Error("the wrong side is wood")
	}
}

func areaNear(t *rapid.T, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("got area %v, want %v", got, want)
	}
}
