package curve

import (
	"math"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// The sideboard's front: R = 57²/(8·2½) + 2½/2 = 162.45 + 1.25 = 163.7 in.
func TestArcRadius(t *testing.T) {
	r, ok := must(t, sideboard()).Radius()
	if want := measure.Length(1637) * measure.Inch / 10; !ok || r != want {
		t.Errorf("radius %v, want %v", say(r), say(want))
	}
	if _, ok := must(t, ledge()).Radius(); ok {
		t.Error("a batten has no one radius")
	}
}

// A 3-4-5 triangle makes every figure exact: radius 5, half chord 4, centre 3
// under the chord, so chord 8 and rise 2.
func TestArcOnThreeFourFive(t *testing.T) {
	c := must(t, Spec{Kind: Arc, Chord: 800 * measure.Millimetre, Rise: 200 * measure.Millimetre})
	for _, tt := range []struct{ x, y float64 }{
		{0, 0}, {400, 200}, {800, 0},
		{100, 100}, {700, 100}, // 3 from the middle: √(25−9) − 3 = 1
		{400 - 140, math.Sqrt(500*500-140*140) - 300}, // 7-24-25: 480 − 300
	} {
		testkit.Near(t, c.Y(tt.x), tt.y, 1e-10)
	}
	testkit.Near(t, c.Y(260), 180, 1e-10)
	testkit.Near(t, float64(c.EndAngle()), math.Atan2(4, 3), 1e-14)
	testkit.Near(t, c.Slope(100), 3.0/4, 1e-13)
	testkit.Near(t, c.Slope(700), -3.0/4, 1e-13)
	testkit.Near(t, c.Curvature(123), 1.0/500, 1e-15)
	if want := toLength(2 * 500 * math.Asin(0.8)); c.Length() != want {
		t.Errorf("length %v, want 2R·asin(c/2R) = %v", c.Length(), want)
	}
	r, at := c.MinRadius()
	if r != 500*measure.Millimetre || at != 400*measure.Millimetre {
		t.Errorf("tightest %v at %v", say(r), say(at))
	}
}

// Three nails draw an arc because the two nails at the ends are seen under the
// same angle from every point of it (inscribed angle).
func TestArcSeesItsChordUnderOneAngle(t *testing.T) {
	c := must(t, sideboard())
	w := c.to
	seen := func(x float64) float64 {
		y := c.Y(x)
		return math.Atan2(x, y) + math.Atan2(w-x, y)
	}
	for x := 1.0; x < w; x += 7 {
		testkit.Near(t, seen(x), seen(w/2), 1e-11)
	}
}

// A rise of a hundredth of a millimetre over a hundred metres has a radius of
// 1.25·10⁸ m; differences of squares would lose it altogether.
func TestFlatArcKeepsItsOrdinates(t *testing.T) {
	c := must(t, Spec{Kind: Arc, Chord: mostSize, Rise: leastRise})
	testkit.Near(t, c.Y(50_000), 0.01, 1e-15)
	testkit.Near(t, c.Y(25_000), 0.0075, 1e-15) // a parabola to far below this
	testkit.Near(t, c.Y(0), 0, 1e-15)
}

// Without a flat the arc goes on round its circle: (x−400)² + (y+300)² = 500².
func TestArcRunsOnPastItsEnds(t *testing.T) {
	c := must(t, Spec{Kind: Arc, Chord: 800 * measure.Millimetre, Rise: 200 * measure.Millimetre})
	testkit.Near(t, c.Y(-50), math.Sqrt(500*500-450*450)-300, 1e-10)
	testkit.Near(t, c.Y(850), c.Y(-50), 1e-10)
	if far := c.Y(-1e9); math.IsInf(far, 0) || math.IsNaN(far) {
		t.Errorf("far out: %v", far)
	}
}
