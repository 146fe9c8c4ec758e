package measure

import (
	"testing"

	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

var allStyles = []Style{
	{}, {Inches, Eighths}, {Inches, Sixteenths}, {Inches, ThirtySeconds}, {Inches, SixtyFourths},
	{Unit: Millimetres}, {Millimetres, WholeMillimetre}, {Millimetres, HalfMillimetre}, {Millimetres, TenthMillimetre},
	{Inches, HalfMillimetre}, {Millimetres, ThirtySeconds}, // a mixed shop
}

func TestFormat(t *testing.T) {
	in32, mm := Style{Inches, ThirtySeconds}, Style{Millimetres, HalfMillimetre}
	for _, c := range []struct {
		style      Style
		in         Length
		bare, unit string
	}{
		{in32, 0, "0", `0"`},
		{in32, 43 * Inch / 8, "5 3/8", `5 3/8"`},
		{in32, 3 * Inch / 8, "3/8", `3/8"`},
		{in32, 5 * Inch, "5", `5"`},
		{in32, -Inch / 2, "-1/2", `-1/2"`},
		{in32, -43 * Inch / 8, "-5 3/8", `-5 3/8"`},
		{in32, Inch / 64, "1/32", `1/32"`}, // half way: away from zero
		{in32, -Inch / 64, "-1/32", `-1/32"`},
		{in32, Inch/64 - 1, "0", `0"`},
		{in32, -Inch/64 + 1, "0", `0"`},                          // and no sign on nothing
		{in32, Inch - 1, "1", `1"`},                              // the fraction carries into the whole
		{in32, 10 * Millimetre, "13/32", `13/32"`},               // 10/25.4 × 32 = 12.6
		{Style{}, 10 * Millimetre, "25/64", `25/64"`},            // × 64 = 25.2
		{Style{Inches, Eighths}, 10 * Millimetre, "3/8", `3/8"`}, // × 8 = 3.1
		{mm, 0, "0", "0 mm"},
		{mm, 136_500_000, "136.5", "136.5 mm"},
		{mm, 136_250_000, "136.5", "136.5 mm"}, // half way: away from zero
		{mm, -136_250_000, "-136.5", "-136.5 mm"},
		{mm, 136_249_999, "136", "136 mm"},
		{mm, -1, "0", "0 mm"},
		{Style{Unit: Millimetres}, Inch, "25.4", "25.4 mm"},
		{Style{Millimetres, ThirtySeconds}, Inch / 32, "0.79375", "0.79375 mm"},        // 25.4/32
		{Style{Inches, WholeMillimetre}, 10 * Millimetre, "0.3937", `0.3937"`},         // 10/25.4 = 0.39370
		{in32, 9_223_372_036_854_775_807, "363124883340 23/32", `363124883340 23/32"`}, // 2^63−1 over 25.4e6 is …340.739; 24/32 would not fit
	} {
		if got := c.style.Format(c.in); got != c.bare {
			t.Errorf("%v of %d: got %q, want %q", c.style, c.in, got, c.bare)
		}
		if got := c.style.FormatUnit(c.in); got != c.unit {
			t.Errorf("%v of %d with its unit: got %q, want %q", c.style, c.in, got, c.unit)
		}
	}
}

func TestMark(t *testing.T) {
	style := Style{Inches, SixtyFourths} // an eighth of a graduation is 49 609 nm and a bit
	for _, c := range []struct {
		off  Length
		want string
	}{
		{0, "5 3/8"}, {49_609, "5 3/8"}, {49_610, "5 3/8 full"}, {-49_609, "5 3/8"}, {-49_610, "5 3/8 bare"},
		{198_437, "5 3/8 full"}, {198_438, "5 25/64 bare"}, // 1/128 in is 198 437.5
	} {
		if got := style.Mark(43*Inch/8 + c.off); got != c.want {
			t.Errorf("%d nm over: got %q, want %q", c.off, got, c.want)
		}
	}
	if got := style.Mark(-Inch / 200); got != "0 bare" {
		t.Errorf("just below zero: got %q", got)
	}
}

func TestParts(t *testing.T) {
	type parts struct {
		neg             bool
		whole, num, den int64
	}
	for _, c := range []struct {
		in   Length
		want parts
	}{
		{43 * Inch / 8, parts{false, 5, 3, 8}},
		{-Inch / 2, parts{true, 0, 1, 2}},
		{7 * Inch, parts{false, 7, 0, 1}},
		{-1, parts{false, 0, 0, 1}},
	} {
		var got parts
		got.neg, got.whole, got.num, got.den = Style{Inches, ThirtySeconds}.Parts(c.in)
		if got != c.want {
			t.Errorf("%d: got %v, want %v", c.in, got, c.want)
		}
	}
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		in     Length
		unit   Unit
		places int
		want   string
	}{
		{43 * Inch / 8, Inches, 5, "5.375"},
		{43 * Inch / 8, Inches, 2, "5.38"}, // half away
		{-43 * Inch / 8, Inches, 2, "-5.38"},
		{43 * Inch / 8, Inches, 0, "5"},
		{43 * Inch / 8, Inches, -3, "5"},
		{Inch / 32, Inches, 5, "0.03125"},
		{Inch / 64, Inches, 5, "0.01563"}, // 0.015625
		{Inch - 1, Inches, 3, "1"},
		{-1, Inches, 3, "0"},
		{1, Millimetres, 6, "0.000001"},
		{1, Millimetres, 99, "0.000001"},
		{-1_000_000_001, Millimetres, 6, "-1000.000001"},
		{120 * Millimetre, Millimetres, 6, "120"}, // zeros of the whole number stay
	} {
		if got := Decimal(c.in, c.unit, c.places); got != c.want {
			t.Errorf("%d to %d places of %v: got %q, want %q", c.in, c.places, c.unit, got, c.want)
		}
	}
}

func TestGraduation(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Graduation
		text string
	}{
		{"1/32", ThirtySeconds, "1/32 in"},
		{`1/16"`, Sixteenths, "1/16 in"},
		{"0.5 mm", HalfMillimetre, "0.5 mm"},
		{"1 mm", WholeMillimetre, "1 mm"},
		{"1/10 in", Graduation(2_540_000), "1/10 in"},
	} {
		got, err := ParseGraduation(c.in)
		if err != nil || got != c.want || got.String() != c.text {
			t.Errorf("%q: got %v, %v", c.in, got, err)
		}
	}
	for _, in := range []string{"", "0", "-1/32", "2 in", "x", "1 m"} {
		if g, err := ParseGraduation(in); err == nil || g != 0 {
			t.Errorf("%q: got %v, want an error", in, g)
		}
	}
}

func lengths() *rapid.Generator[Length] {
	return rapid.Custom(func(t *rapid.T) Length {
		if rapid.Bool().Draw(t, "on a mark") {
			return Length(rapid.Int64Range(-64*500, 64*500).Draw(t, "64ths")) * SixtyFourth
		}
		return Length(rapid.Int64Range(int64(-20*Metre), int64(20*Metre)).Draw(t, "nm"))
	})
}

// TestFormatParsesBack: within half a graduation always, and to the nanometre
// where Exact says so and only there.
func TestFormatParsesBack(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l, style := lengths().Draw(t, "length"), rapid.SampledFrom(allStyles).Draw(t, "style")
		text, exact := style.Exact(l)
		back, err := ParseLength(text, style.Unit)
		if err != nil {
			t.Fatalf("%v prints %d as %q, which does not read: %v", style, l, text, err)
		}
		if (back == l) != exact {
			t.Fatalf("%v prints %d as %q, exact %v, and reads %d", style, l, text, exact, back)
		}
		most := Length(style.Graduation.or(style.Unit)) / 2
		if style.Unit == Inches && Inch%Length(style.Graduation.or(style.Unit)) != 0 {
			most += Inch / 20_000 // four decimals
		}
		if (back - l).Abs() > most {
			t.Fatalf("%v prints %d as %q, %d off", style, l, text, back-l)
		}
		if again, err := ParseLength(style.FormatUnit(l), Inches); err != nil || again != back {
			t.Fatalf("with its unit %q reads %d, %v; without it %d", style.FormatUnit(l), again, err, back)
		}
	})
}

// TestDecimalIsExactInMillimetres: six decimals hold every nanometre.
func TestDecimalIsExactInMillimetres(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l := lengths().Draw(t, "length")
		if back, err := ParseLength(Decimal(l, Millimetres, 6), Millimetres); err != nil || back != l {
			t.Fatalf("%d comes back as %d, %v", l, back, err)
		}
	})
}

func BenchmarkFormat(b *testing.B) {
	style := Style{Inches, ThirtySeconds}
	b.ReportAllocs()
	for b.Loop() {
		if style.Format(43*Inch/8) != "5 3/8" {
			b.Fatal("wrong")
		}
	}
}
