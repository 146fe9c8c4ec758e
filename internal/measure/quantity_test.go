package measure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"casewright/internal/testkit"
	"pgregory.net/rapid"
)

func TestSlopeAngles(t *testing.T) {
	// The angles usually given for dovetails, to the printed hundredth:
	// 1:6 is 9.46° and 1:8 is 7.13°, atan(1/n).
	for n, degrees := range map[int64]float64{6: 9.46, 8: 7.13, 1: 45} {
		s := Slope{Rise: 1, Run: n}
		testkit.Near(t, s.Angle().Degrees(), degrees, 0.005)
		back := SlopeOf(s.Angle())
		testkit.Near(t, float64(back.Run)/float64(back.Rise), float64(n), 1e-7)
	}
	if (Slope{}).Angle() != 0 || (Slope{}).Offset(Inch) != 0 || (Slope{}).String() != "none" {
		t.Error("no slope leans")
	}
	if got := SlopeOf(Angle(math.NaN())); got != (Slope{}) {
		t.Errorf("the slope of NaN is %v", got)
	}
}

func TestParseSlope(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Slope
		text string
		off  Length // over an inch
	}{
		{"1:8", Slope{1, 8}, "1:8", 3_175_000},        // 25 400 000 / 8
		{" 1 : 8 ", Slope{1, 8}, "1:8", 3_175_000},    //
		{"1 in 8", Slope{1, 8}, "1:8", 3_175_000},     //
		{"1/8", Slope{1, 8}, "1:8", 3_175_000},        //
		{"2:16", Slope{1, 8}, "1:8", 3_175_000},       // lowest terms
		{"1:7.5", Slope{2, 15}, "1:7.5", 3_386_667},   // × 2/15 = 3 386 666.6
		{"1:7 1/2", Slope{2, 15}, "1:7.5", 3_386_667}, //
		{"1:7½", Slope{2, 15}, "1:7.5", 3_386_667},    //
		{"1:7,5", Slope{2, 15}, "1:7.5", 3_386_667},   //
		{"45°", Slope{1, 1}, "1:1", Inch},             //
		{"45 deg", Slope{1, 1}, "1:1", Inch},
		{"45 degrees", Slope{1, 1}, "1:1", Inch},
	} {
		got, err := ParseSlope(c.in)
		if err != nil || got != c.want || got.String() != c.text || got.Offset(Inch) != c.off {
			t.Errorf("%q: got %v %v %d, %v", c.in, got, got.String(), got.Offset(Inch), err)
		}
	}
	eight, err := ParseSlope("8°")
	if err != nil || eight.String() != "1:7.115" { // 1/tan 8° = 7.11537
		t.Errorf("8°: %v, %v", eight, err)
	}
}

func TestParseSlopeErrors(t *testing.T) {
	for _, c := range []struct {
		in     string
		offset int
		says   string
	}{
		{"", 0, "missing"}, {"x", 0, "does not begin"}, {"1:", 2, "missing"}, {"1:0", 2, "one in 0"}, {"1:8 x", 4, "left over"},
		{"8° x", 4, "left over"}, {"8", 1, "not a slope"}, {"1;8", 2, "not a slope"}, {"1:1001", 0, "hardly a slope"}, {"0:8", 0, "hardly a slope"},
		{"0°", 0, "hardly a slope"}, {"90°", 0, "too steep"}, {"89.9°", 0, "too steep"}, {"11:1", 0, "too steep"}, {"1:-8", 2, "does not begin"},
		{"1:8.00000000000000000000001", 0, "more digits"}, {strings.Repeat("1", 300), 0, "too long"},
	} {
		_, err := ParseSlope(c.in)
		var bad *ParseError
		if !errors.As(err, &bad) || bad.Offset != c.offset || !strings.Contains(bad.Summary, c.says) || bad.Mend != slopeLike {
			t.Errorf("%q: got %#v", c.in, err)
		}
	}
}

// Conversion factors as printed in NIST Special Publication 811 (2008),
// appendix B.8, to the digits given there.
func TestConversionsAgainstSP811(t *testing.T) {
	rel := func(got, want float64) { t.Helper(); testkit.Near(t, got/want, 1, 5e-7) }
	rel(float64(AreaOf(Inch, Inch)), 645.16)               // mm², exact
	rel(1/Area(1e6).SquareFeet(), 9.290304e-2)             // m² in a square foot
	rel(1/Volume(1e9).CubicInches(), 1.638706e-5)          // m³ in a cubic inch
	rel(1/Volume(1e9).CubicFeet(), 2.831685e-2)            // m³ in a cubic foot
	rel(float64(PSI(1)), 6.894757e3)                       // Pa
	rel(Pounds(1).Kilograms(), 4.535924e-1)                // kg
	rel(1/Density(1).PoundsPerCubicFoot(), 1.601846e1)     // kg/m³ in a pound per cubic foot
	testkit.Near(t, Fahrenheit(212).Celsius(), 100, 1e-12) // by definition of the scale
	testkit.Near(t, Celsius(-40).Fahrenheit(), -40, 1e-12)
	testkit.Near(t, MPa(1).PSI(), 145.0377, 5e-5) // 1e6 / 6894.757
	testkit.Near(t, float64(MPa(2)), 2e6, 0)
	testkit.Near(t, AreaOf(2*Metre, 3*Metre).SquareMetres(), 6, 1e-12)
	testkit.Near(t, AreaOf(Foot, Foot).SquareInches(), 144, 1e-9)
	testkit.Near(t, AreaOf(Metre, Metre).Times(Metre).CubicMetres(), 1, 1e-12)
	testkit.Near(t, Density(700).Of(VolumeOf(Metre, Metre, 10*Millimetre)).Kilograms(), 7, 1e-9)
	testkit.Near(t, Mass(0.5).Grams(), 500, 1e-9)
	testkit.Near(t, Mass(1).Pounds(), 2.204623, 5e-7) // 1/0.45359237
}

// Sizes worked out by the rule: width × whole feet / 12.
func TestSurfaceMeasure(t *testing.T) {
	for _, c := range []struct {
		width, length string
		want          int
	}{
		{"12", "12'", 12},
		{"6", "8'", 4},
		{"6 1/4", "8'", 4},        // 4.17
		{"8 1/2", "10'", 7},       // 7.08
		{"9", "10'", 8},           // 7.5, a half: to the even 8
		{"6 1/2", "12'", 6},       // 6.5, a half: to the even 6
		{"6 9/16", "12'", 7},      // 6.56
		{"12", `7' 11 15/16"`, 7}, // odd inches are dropped
		{"12", `11"`, 0},
		{"0", "8'", 0},
		{"-6", "8'", 0},
		{"6", "-8'", 0},
	} {
		w, werr := ParseLength(c.width, Inches)
		l, lerr := ParseLength(c.length, Inches)
		if got := SurfaceMeasure(w, l); got != c.want || werr != nil || lerr != nil {
			t.Errorf("%s × %s: got %d, want %d", c.width, c.length, got, c.want)
		}
	}
}

func TestBoardFeet(t *testing.T) {
	for _, c := range []struct {
		t, w, l Length
		want    float64 // T × W × L / 144 in inches
	}{
		{Inch, 12 * Inch, Foot, 1},
		{2 * Inch, 6 * Inch, 8 * Foot, 8},                 // 2 × 6 × 96 / 144
		{5 * Inch / 4, 6 * Inch, 96 * Inch, 5},            // 5/4 stock
		{Inch / 2, 6 * Inch, 96 * Inch, 4},                // as if an inch thick
		{33 * Inch / 16, 29 * Inch / 4, 62 * Inch, 6.438}, // 2.0625 × 7.25 × 62 / 144 = 6.43815
		{0, Inch, Inch, 0},
		{Inch, -Inch, -Inch, 0},
	} {
		testkit.Near(t, float64(BoardFeetOf(c.t, c.w, c.l)), c.want, 0.0005)
	}
}

func TestMoney(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Money
		text string
	}{
		{"68", 6800, "68.00"},
		{"68.5", 6850, "68.50"},
		{"68.50", 6850, "68.50"},
		{"68,50", 6850, "68.50"},
		{"1 240.00", 124000, "1 240.00"},
		{"1,240.00", 124000, "1 240.00"},
		{"1,240", 124000, "1 240.00"},
		{"1 234 567.89", 123456789, "1 234 567.89"},
		{"1 240,50", 124050, "1 240.50"},
		{"-0.05", -5, "-0.05"},
		{" 0 ", 0, "0.00"},
		{"10 000 000 000", mostCents, "10 000 000 000.00"},
	} {
		if got, err := ParseMoney(c.in); err != nil || got != c.want || got.Format() != c.text {
			t.Errorf("%q: got %d %q, %v", c.in, got, got.Format(), err)
		}
	}
	for _, in := range []string{"", "-", "x", "$5", "1.234", "1 24", "1234 567", "12,34,567", "1 240,000", "1  240", "5.", ".5", "1e5", "10 000 000 001", "1.2.3", strings.Repeat("9", 300), "٣"} {
		var bad *ParseError
		if m, err := ParseMoney(in); m != 0 || !errors.As(err, &bad) {
			t.Errorf("%q: got %d, %v", in, m, err)
		}
	}
}

func TestMoneyTimesHours(t *testing.T) {
	for _, c := range []struct {
		rate   Money
		worked WorkTime
		want   Money
	}{
		{6800, 2 * Hour, 13600},
		{6800, 90 * Minute, 10200},
		{6825, 2*Hour + 30*Minute, 17062}, // 17 062.5 to the even cent
		{6827, 2*Hour + 30*Minute, 17068}, // 17 067.5
		{-6825, 150 * Minute, -17062},
		{6800, 0, 0},
	} {
		if got := c.rate.For(c.worked); got != c.want {
			t.Errorf("%d for %v h: got %d, want %d", c.rate, c.worked.Hours(), got, c.want)
		}
	}
}

func TestMoneyReadsBack(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		m := Money(rapid.Int64Range(-mostCents, mostCents).Draw(t, "cents"))
		if back, err := ParseMoney(m.Format()); err != nil || back != m {
			t.Fatalf("%d prints %q and reads %d, %v", m, m.Format(), back, err)
		}
	})
}

func TestOtherTextsNeverPanic(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("0123456789 .,:/°-e½ indeg\u00a0\xff"))).Draw(t, "text")
		_, slope := ParseSlope(text)
		_, money := ParseMoney(text)
		_, grad := ParseGraduation(text)
		for _, err := range []error{slope, money, grad} {
			var bad *ParseError
			if err != nil && (!errors.As(err, &bad) || bad.Offset < 0 || bad.Offset > len(text)) {
				t.Fatalf("%q: %#v", text, err)
			}
		}
	})
}
