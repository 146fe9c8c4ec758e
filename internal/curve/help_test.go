package curve

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
)

const inch = 25.4 // mm

func must(t testing.TB, s Spec) *Curve {
	t.Helper()
	c, err := New(s)
	if err != nil {
		t.Fatalf("New(%+v): %v", s, err)
	}
	return c
}

func mustOffset(t testing.TB, c *Curve, d measure.Length) *Curve {
	t.Helper()
	p, err := c.Offset(d)
	if err != nil {
		t.Fatalf("Offset(%v): %v", say(d), err)
	}
	return p
}

// ledge is the bowed ledge of the hall cabinet, sideboard the front of the
// sideboard: the two real curves of the examples.
func ledge() Spec {
	return Spec{Batten, 20 * measure.Inch, 3 * measure.Inch / 2, 5 * measure.Inch / 4, 5 * measure.Inch / 4}
}

func sideboard() Spec {
	return Spec{Arc, 57 * measure.Inch, 5 * measure.Inch / 2, 0, 0}
}

// anySpec draws curves a workshop could want, and some stranger ones.
func anySpec(t *rapid.T) Spec {
	chord := rapid.Int64Range(int64(10*measure.Millimetre), int64(5*measure.Metre)).Draw(t, "chord")
	share := rapid.Float64Range(0.001, 0.499).Draw(t, "rise/chord")
	flat := rapid.SampledFrom([]measure.Length{0, measure.Inch / 2, 40 * measure.Millimetre})
	return Spec{
		Kind:     rapid.SampledFrom([]Kind{Arc, Batten}).Draw(t, "kind"),
		Chord:    measure.Length(chord),
		Rise:     max(leastRise, measure.Length(float64(chord)*share)),
		FlatLeft: flat.Draw(t, "left"), FlatRight: flat.Draw(t, "right"),
	}
}

// distance is the shortest way from p to the line of c, by sampling and then
// narrowing; it shares nothing with Offset but Y.
func distance(c *Curve, p Point, from, to float64) float64 {
	const n = 4000
	far := func(x float64) float64 { return math.Hypot(x-p.X, c.Y(x)-p.Y) }
	best, at := math.Inf(1), from
	for i := range n + 1 {
		x := from + (to-from)*float64(i)/n
		if d := far(x); d < best {
			best, at = d, x
		}
	}
	lo, hi := at-(to-from)/n, at+(to-from)/n
	for range 120 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if far(a) < far(b) {
			hi = b
		} else {
			lo = a
		}
	}
	return min(best, far(lo))
}

func toSegment(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := ((p.X-a.X)*dx + (p.Y-a.Y)*dy) / (dx*dx + dy*dy)
	t = min(max(t, 0), 1)
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}
