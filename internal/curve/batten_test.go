package curve

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// Beam theory, central load (any strength-of-materials text): y at quarter
// span is 11/16 of the middle, end slope 3w/L, least radius L²/(12w).
func TestBeamShape(t *testing.T) {
	c := must(t, ledge())
	L, w, flat := 20*inch, 1.5*inch, 1.25*inch
	for x := 0.0; x <= L/2; x += L / 64 {
		want := w * (3*L*L*x - 4*x*x*x) / (L * L * L)
		testkit.Near(t, c.Y(flat+x), want, 1e-12)
		testkit.Near(t, c.Y(flat+L-x), want, 1e-12)
	}
	testkit.Near(t, c.Y(flat+L/4), w*11/16, 1e-12)
	testkit.Near(t, c.Slope(flat), 3*w/L, 1e-14)
	testkit.Near(t, math.Tan(float64(c.EndAngle())), 3*w/L, 1e-14)
	r, at := c.MinRadius()
	// 400/(12·1½) = 22 2/9 in, at the middle, 11 1/4 in from the left end.
	if want := toLength(L * L / (12 * w)); r != want || at != 45*measure.Inch/4 {
		t.Errorf("tightest %v at %v, want %v at the middle", say(r), say(at), say(want))
	}
	if got := c.Law(); got != "bent batten, beam shape" {
		t.Errorf("law %q", got)
	}
}

// √(1+y′²) by Simpson's rule on its own formula, y′ = 3w(1−u²)/L at u = x/(L/2).
func TestBeamLength(t *testing.T) {
	c := must(t, ledge())
	L, w := 20*inch, 1.5*inch
	f := func(u float64) float64 { return math.Hypot(1, 3*w/L*(1-u*u)) }
	want := 2*1.25*inch + L*simpson(f, 0, 1)
	testkit.Near(t, c.Length().Millimetres(), want, 1e-6)
	whole := c.LengthBetween(0, c.Span())
	parts := c.LengthBetween(0, 3*measure.Inch) + c.LengthBetween(c.Span(), 3*measure.Inch)
	testkit.Near(t, float64(whole), float64(parts), 2)
}

// The radii of batten and circle at the middle are as 2 to 3 for small rises:
// L²/(12w) against about L²/(8w).
func TestBattenIsTighterThanArc(t *testing.T) {
	s := Spec{Kind: Batten, Chord: measure.Metre, Rise: 10 * measure.Millimetre}
	batten, _ := must(t, s).MinRadius()
	s.Kind = Arc
	arc, _ := must(t, s).MinRadius()
	testkit.Near(t, float64(batten)/float64(arc), 2.0/3, 1e-3)
}

// A cubic in x is one cubic Bézier, so each half of a beam shape is one.
func TestBeamIsTwoBeziers(t *testing.T) {
	c := must(t, Spec{Kind: Batten, Chord: 500 * measure.Millimetre, Rise: 40 * measure.Millimetre})
	b := c.Beziers(0, 500, MinTolerance)
	if len(b) != 2 {
		t.Fatalf("%d cubics, want 2", len(b))
	}
	for _, k := range b {
		for i := range 11 {
			p := k.At(float64(i) / 10)
			testkit.Near(t, p.Y, c.Y(p.X), 1e-12)
		}
	}
}

func simpson(f func(float64) float64, a, b float64) float64 {
	const n = 2000
	h := (b - a) / n
	sum := f(a) + f(b)
	for i := 1; i < n; i++ {
		sum += f(a+float64(i)*h) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// Beyond its supports an unloaded batten is straight.
func TestBattenOverhangsStraight(t *testing.T) {
	for _, rise := range []measure.Length{50, 150} {
		c := must(t, Spec{Kind: Batten, Chord: measure.Metre, Rise: rise * measure.Millimetre})
		testkit.Near(t, c.Y(-80), -80*math.Tan(float64(c.EndAngle())), 1e-9)
		testkit.Near(t, c.Curvature(-80), 0, 0)
	}
}

func TestBendStrain(t *testing.T) {
	// 1/8 in bent to 12 in: 1/(8·2·12) = 1/192.
	testkit.Near(t, BendStrain(measure.Inch/8, 12*measure.Inch), 1.0/192, 1e-15)
	if got := BendRadius(measure.Inch/8, 1.0/192); got != 12*measure.Inch {
		t.Errorf("radius %v", say(got))
	}
	if !math.IsInf(BendStrain(1, 0), 1) || BendStrain(0, 0) != 0 || BendRadius(1, 0) != math.MaxInt64 {
		t.Error("limits of strain")
	}
	testkit.Check(t, func(t *rapid.T) {
		s := BendStrain(measure.Length(rapid.Int64().Draw(t, "t")), measure.Length(rapid.Int64().Draw(t, "r")))
		if math.IsNaN(s) || s < 0 {
			t.Fatalf("strain %v", s)
		}
		if BendRadius(measure.Length(rapid.Int64().Draw(t, "t2")), rapid.Float64().Draw(t, "s")) < 0 {
			t.Fatal("negative radius")
		}
	})
}
