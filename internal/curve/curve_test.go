package curve

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

func TestFlatsJoinTheBow(t *testing.T) {
	c := must(t, ledge())
	if got, want := c.Span(), 45*measure.Inch/2; got != want {
		t.Errorf("span %v, want 22½ in", say(got))
	}
	l, r := c.Bow()
	if l != 5*measure.Inch/4 || r != 85*measure.Inch/4 {
		t.Errorf("bow from %v to %v", say(l), say(r))
	}
	for _, x := range []float64{0, 10, 31.7, 31.75, 22.5 * inch, 22.5*inch - 20} {
		testkit.Near(t, c.Y(x), 0, 1e-12)
	}
	testkit.Near(t, c.Slope(31.7), 0, 0)
	// The corner itself answers for the bow: 3w/L = 0.225, and so mirrored.
	testkit.Near(t, c.Slope(31.75), 0.225, 1e-12)
	testkit.Near(t, c.Slope(21.25*inch), -0.225, 1e-12)
	if got := c.Ordinate(45 * measure.Inch / 4); got != 3*measure.Inch/2 {
		t.Errorf("crown %v", say(got))
	}
}

func TestErrors(t *testing.T) {
	const mm = measure.Millimetre
	for _, tt := range []struct {
		name  string
		spec  Spec
		field string
		limit measure.Length
		says  []string
	}{
		{"no kind", Spec{Chord: 500 * mm, Rise: 20 * mm}, "kind", 0, []string{"arc", "batten"}},
		{"odd kind", Spec{Kind: 200, Chord: 500 * mm, Rise: 20 * mm}, "kind", 0, []string{"kinds are"}},
		{"no chord", Spec{Kind: Arc, Rise: 20 * mm}, "chord", leastChord, []string{"chord is 0 mm", "straight distance"}},
		{"negative chord", Spec{Kind: Batten, Chord: -mm, Rise: mm}, "chord", leastChord, []string{"-1 mm"}},
		{"no rise", Spec{Kind: Arc, Chord: 500 * mm}, "rise", leastRise, []string{"straight line"}},
		{"negative rise", Spec{Kind: Arc, Chord: 500 * mm, Rise: -20 * mm}, "rise", leastRise, []string{"-20 mm"}},
		{"gigantic chord", Spec{Kind: Arc, Chord: math.MaxInt64, Rise: mm}, "chord", mostSize, []string{"check the unit"}},
		{"gigantic rise", Spec{Kind: Arc, Chord: mm, Rise: math.MaxInt64}, "rise", mostSize, []string{"check the unit"}},
		{"negative flat", Spec{Kind: Arc, Chord: 500 * mm, Rise: mm, FlatRight: -1}, "flat", 0, []string{"right flat"}},
		{"gigantic flat", Spec{Kind: Arc, Chord: 500 * mm, Rise: mm, FlatLeft: math.MaxInt64}, "flat", mostSize, []string{"unit"}},
		{"half circle", Spec{Kind: Arc, Chord: 500 * mm, Rise: 250 * mm}, "rise", 250 * mm, []string{"half circle", "250 mm (9.8425 in)", "less rise"}},
		{"batten too high", Spec{Kind: Batten, Chord: 500 * mm, Rise: 300 * mm}, "rise", 250 * mm, []string{"supports", "less rise"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c, err := New(tt.spec)
			var e *Error
			if c != nil || !errors.As(err, &e) {
				t.Fatalf("New = %v, %v; want an *Error", c, err)
			}
			if e.Field != tt.field || e.Limit != tt.limit {
				t.Errorf("field %q limit %v, want %q %v", e.Field, e.Limit, tt.field, tt.limit)
			}
			for _, w := range tt.says {
				if !strings.Contains(e.Says, w) {
					t.Errorf("%q does not say %q", e.Says, w)
				}
			}
		})
	}
}

func TestKindNames(t *testing.T) {
	for _, n := range KindNames() {
		k, ok := ParseKind(n)
		if !ok || k.String() != n {
			t.Errorf("%q parses to %v, %v", n, k, ok)
		}
	}
	if _, ok := ParseKind(""); ok || Kind(0).String() != "unknown" || len(KindNames()) < 2 {
		t.Error("no kind must not be one")
	}
}

func TestSagittaOfStretch(t *testing.T) {
	// From −300 to +300 of a radius of 500: 500 − 400 = 100.
	arc := must(t, Spec{Kind: Arc, Chord: 800 * measure.Millimetre, Rise: 200 * measure.Millimetre})
	if got := arc.Sagitta(700*measure.Millimetre, 100*measure.Millimetre); got != 100*measure.Millimetre {
		t.Errorf("middle stretch %v", say(got))
	}
	// Any stretch of an arc with the chord k has R − √(R² − k²/4).
	k := math.Hypot(400, 200)
	want := toLength(500 - math.Sqrt(500*500-k*k/4))
	if got := arc.Sagitta(0, 400*measure.Millimetre); got != want {
		t.Errorf("half %v, want %v", say(got), say(want))
	}
	if got := arc.Sagitta(5, 5); got != 0 {
		t.Errorf("no stretch %v", say(got))
	}
	c := must(t, ledge())
	if got := c.Sagitta(0, c.Span()); got != 3*measure.Inch/2 {
		t.Errorf("whole ledge %v", say(got))
	}
	if got := c.Sagitta(0, measure.Inch); got != 0 {
		t.Errorf("flat %v", say(got))
	}
	lo, hi := c.Reach(measure.Inch, 20*measure.Inch)
	if lo != 0 || hi != 3*measure.Inch/2 {
		t.Errorf("reach %v to %v", say(lo), say(hi))
	}
}

// Where a flat and a bow share a stretch the corner falls behind its chord.
func TestSagittaCountsTheCorner(t *testing.T) {
	c := must(t, Spec{Arc, 800 * measure.Millimetre, 200 * measure.Millimetre, 100 * measure.Millimetre, 0})
	got := c.Sagitta(0, 200*measure.Millimetre).Millimetres()
	// The chord goes from (0,0) to (200,100), so the corner (100,0) lies
	// 100·sin(atan ½) behind it; the arc is steeper than the chord all the way
	// and comes up to it from behind, so nothing stands out.
	testkit.Near(t, got, 100/math.Sqrt(5), 1e-6)
}

func TestAgainstGrain(t *testing.T) {
	c := must(t, Spec{Kind: Arc, Chord: 800 * measure.Millimetre, Rise: 200 * measure.Millimetre})
	const mm = measure.Millimetre
	for _, tt := range []struct {
		from, to measure.Length
		grain    float64
		want     float64
	}{
		{0, 800 * mm, 0, math.Atan2(4, 3)},
		{250 * mm, 550 * mm, 0, math.Asin(0.3)},
		{550 * mm, 250 * mm, 0, math.Asin(0.3)},
		{700 * mm, 700 * mm, 0, math.Asin(0.6)},
		{400 * mm, 640 * mm, -math.Asin(0.48), math.Asin(0.48)},
		{0, 800 * mm, math.Pi / 2, math.Pi / 2}, // square to the crown
		{0, 800 * mm, 2 * math.Pi, math.Atan2(4, 3)},
	} {
		got := float64(c.AgainstGrain(tt.from, tt.to, measure.Angle(tt.grain)))
		testkit.Near(t, got, tt.want, 1e-12)
	}
	if got := c.AgainstGrain(0, mm, measure.Angle(math.NaN())); math.IsNaN(float64(got)) {
		t.Error("NaN")
	}
}

func TestSymmetric(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		s.FlatRight = s.FlatLeft
		c, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		x := rapid.Float64Range(0, c.to).Draw(t, "x")
		for _, d := range []struct{ a, b float64 }{
			{c.Y(x), c.Y(c.to - x)},
			{float64(c.Tangent(x)), -float64(c.Tangent(c.to - x))},
			{c.Curvature(x) * c.to, c.Curvature(c.to-x) * c.to},
			{c.lengthBetween(0, x), c.lengthBetween(c.to-x, c.to)},
		} {
			// At a corner itself the last bit of x decides between flat and bow.
			if math.Abs(d.a-d.b) > 1e-8*max(1, c.to/1000) && math.Abs(x-c.l) > 1e-9 && math.Abs(x-c.r) > 1e-9 {
				t.Fatalf("at %v: %v and %v", x, d.a, d.b)
			}
		}
	})
}

// Scaling a curve scales its ordinates: the laws have no size of their own.
func TestScales(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s := anySpec(t)
		const k = 7
		big := Spec{s.Kind, s.Chord * k, s.Rise * k, s.FlatLeft * k, s.FlatRight * k}
		a, err := New(s)
		b, err2 := New(big)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		x := rapid.Float64Range(0, a.to).Draw(t, "x")
		if d := a.Y(x)*k - b.Y(x*k); math.Abs(d) > 1e-7 {
			t.Fatalf("off by %v", d)
		}
	})
}

// everything asks a curve all there is to ask at x and reports what is no
// number.
func everything(c *Curve, x float64) string {
	l, r := c.Ends()
	rad, at := c.MinRadius()
	lo, hi := c.Reach(toLength(x), r)
	for _, v := range []struct {
		name string
		v    float64
	}{
		{"Y", c.Y(x)}, {"Slope", c.Slope(x)}, {"Tangent", float64(c.Tangent(x))}, {"Curvature", c.Curvature(x)},
		{"Length", float64(c.Length())}, {"Span", float64(c.Span())}, {"EndAngle", float64(c.EndAngle())},
		{"MinRadius", float64(rad) + float64(at)}, {"Reach", float64(lo) + float64(hi)},
		{"Sagitta", float64(c.Sagitta(l, toLength(x)))}, {"Grain", float64(c.AgainstGrain(toLength(x), r, 0.1))},
		{"Between", float64(c.LengthBetween(toLength(x), l))},
	} {
		if math.IsNaN(v.v) || math.IsInf(v.v, 0) {
			return v.name
		}
	}
	if rad <= 0 || c.Length() < c.Span()-1 || lo > hi {
		return "sizes"
	}
	for _, p := range c.Flatten(x, r.Millimetres(), 1) {
		if math.IsNaN(p.X + p.Y) {
			return "Flatten"
		}
	}
	return ""
}

func FuzzCurve(f *testing.F) {
	s, a := sideboard(), ledge()
	f.Add(uint8(s.Kind), int64(s.Chord), int64(s.Rise), int64(0), int64(0), int64(-1), 0.5)
	f.Add(uint8(a.Kind), int64(a.Chord), int64(a.Rise), int64(a.FlatLeft), int64(0), int64(measure.Inch), math.NaN())
	f.Add(uint8(Arc), int64(mostSize), int64(mostSize)/2-1, int64(1), int64(0), int64(mostSize), math.Inf(1))
	f.Add(uint8(Arc), int64(leastChord), int64(leastRise), int64(1), int64(0), int64(1), math.Inf(-1))
	f.Add(uint8(Batten), int64(mostSize), int64(mostSize)/2-1, int64(0), int64(9), int64(1), -1e300)
	f.Add(uint8(Batten), int64(math.MinInt64), int64(math.MaxInt64), int64(-1), int64(0), int64(math.MinInt64), 1e-300)
	f.Fuzz(func(t *testing.T, kind uint8, chord, rise, left, right, offset int64, x float64) {
		length := func(n int64) measure.Length { return measure.Length(n) }
		c, err := New(Spec{Kind(kind), length(chord), length(rise), length(left), length(right)})
		if err != nil {
			return
		}
		if bad := everything(c, x); bad != "" {
			t.Fatalf("%+v at %v: %s", c.spec, x, bad)
		}
		p, err := c.Offset(length(offset))
		if err != nil {
			return
		}
		if math.IsNaN(p.Y(x) + p.Slope(x) + p.Curvature(x) + float64(p.Length())) {
			t.Fatalf("%+v offset %v at %v", c.spec, offset, x)
		}
	})
}

// What New takes answers everywhere.
func TestNeverNaN(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		c, err := New(anySpec(t))
		if err != nil {
			t.Fatal(err)
		}
		if bad := everything(c, rapid.Float64().Draw(t, "x")); bad != "" {
			t.Fatal(bad)
		}
	})
}
