package measure

import (
	"errors"
	"math/big"
	"strings"
	"testing"
	"unicode/utf8"

	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// nm is a length of num/den inches. One inch is 25.4 mm exactly: NIST Special
// Publication 811 (2008), Guide for the Use of the SI, appendix B.
func nm(t testing.TB, num, den int64) Length {
	t.Helper()
	if num*25_400_000%den != 0 {
		t.Fatalf("%d/%d in is no whole number of nanometres", num, den)
	}
	return Length(num * 25_400_000 / den)
}

func TestParseLengthInches(t *testing.T) {
	for _, c := range []struct {
		in       string
		num, den int64
	}{
		{"5 3/8", 43, 8},
		{"5-3/8", 43, 8},
		{"5–3/8", 43, 8},
		{`5 3/8"`, 43, 8},
		{"5-3/8 in", 43, 8},
		{"5 3/8 inches", 43, 8},
		{"5 3/8in.", 43, 8},
		{"5 3/8 IN", 43, 8},
		{"  5   3/8  ", 43, 8},
		{"5 3⁄8", 43, 8},
		{"5.375", 43, 8},
		{"5.3750000000000000000000000", 43, 8},
		{"0,375", 3, 8},
		{",5", 1, 2},
		{".5", 1, 2},
		{"5.", 5, 1},
		{"5", 5, 1},
		{"0", 0, 1},
		{"-0", 0, 1},
		{"1e1", 10, 1},
		{"1.25E-1", 1, 8},
		{"11/8", 11, 8},
		{"½", 1, 2},
		{"5½", 11, 2},
		{`5 ½"`, 11, 2},
		{"5-½", 11, 2},
		{"-1/2", -1, 2},
		{"−1/2", -1, 2},
		{"- 1/2", -1, 2},
		{"+1/2", 1, 2},
		{"-5 3/8", -43, 8},
		{`1' 4 1/2"`, 33, 2},
		{`1' 4 1/2`, 33, 2},
		{`1'-4 1/2"`, 33, 2},
		{`1' - 4 1/2"`, 33, 2},
		{`1'4-1/2"`, 33, 2},
		{`1′ 4½″`, 33, 2},
		{`1’ 4½”`, 33, 2},
		{"1' 4", 16, 1},
		{"1' 4''", 16, 1},
		{"16''", 16, 1},
		{"1'", 12, 1},
		{"1 1/2'", 18, 1},
		{"4 ft", 48, 1},
		{"4 feet", 48, 1},
		{"1 ft 4 in", 16, 1},
		{"1ft4in", 16, 1},
		{"1 ft. 4 in.", 16, 1},
		{"-1' 4", -16, 1},
		{"0' 6", 6, 1},
	} {
		got, err := ParseLength(c.in, Inches)
		if want := nm(t, c.num, c.den); err != nil || got != want {
			t.Errorf("%q: got %d, %v; want %d", c.in, got, err, want)
		}
	}
}

func TestParseLengthMetric(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Length // derived by moving the point: 1 mm is 1 000 000 nm
	}{
		{"136.5", 136_500_000},
		{"136.5 mm", 136_500_000},
		{"136.5mm", 136_500_000},
		{"136,5 mm", 136_500_000},
		{"13.65 cm", 136_500_000},
		{"0.1365 m", 136_500_000},
		{"1.2 m", 1_200_000_000},
		{"1.2 metres", 1_200_000_000},
		{"1 1/2 mm", 1_500_000},
		{"1/3 mm", 333_333}, // 333 333.3
		{"2/3 mm", 666_667}, // 666 666.6
		{"0.0000005 mm", 0}, // half a nanometre goes to the even 0
		{"0.0000015 mm", 2}, // one and a half to the even 2
		{"-0.0000025 mm", -2},
		{"1234,567", 1_234_567_000}, // four digits before: no group of thousands
		{"0,125", 125_000},
		{"1,2505 mm", 1_250_500},
		{`1"`, 25_400_000}, // SP 811, whatever the unit
		{"1' 4", 406_400_000},
		{"1000 m", MaxLength},
		{"-1000 m", -MaxLength},
	} {
		if got, err := ParseLength(c.in, Millimetres); err != nil || got != c.want {
			t.Errorf("%q: got %d, %v; want %d", c.in, got, err, c.want)
		}
	}
}

func TestParseLengthErrors(t *testing.T) {
	for _, c := range []struct {
		in            string
		offset        int
		summary, mend string // parts of the message
	}{
		{"", 0, "no size", "5 3/8"},
		{"   ", 0, "no size", "5 3/8"},
		{"abc", 0, "“abc” does not begin with a number", "5 3/8"},
		{"NaN", 0, "“NaN” does not begin", ""},
		{"Inf", 0, "“Inf” does not begin", ""},
		{"-infinity", 1, "“infinity” does not begin", ""},
		{"-", 1, "number is missing", ""},
		{".", 0, "does not begin", ""},
		{"--5", 1, "does not begin", ""},
		{"3/0", 2, "0 below", ""},
		{"5 3/0", 4, "0 below", ""},
		{"5 3/000", 4, "0 below", ""},
		{"5 3/", 4, "nothing below", ""},
		{"5 3", 2, "second number, “3”", "5' 3"},
		{"5-3", 1, "dash", "5-3/8"},
		{"5 - 3/8", 2, "dash", "5-3/8"},
		{"5 -3/8", 2, "dash", "5-3/8"},
		{"1/2/3", 3, "stroke", ""},
		{"5.5 1/2", 0, "cannot follow a decimal", ""},
		{"5.5/2", 0, "top of a fraction", ""},
		{"5 11/8", 1, "not below one", "write 6 3/8"},
		{"5 8/8", 1, "not below one", "write 6"},
		{"1.2.3", 0, "more than one decimal point", ""},
		{"1,250", 0, "two ways", "1250 or 1.250"},
		{"1,234,567", 0, "commas", "leave out"},
		{"1,234.5", 0, "commas", "leave out"},
		{"5 3/8 junk", 6, "“junk” is not a unit", "in, ft, mm, cm or m"},
		{"5 inchs", 2, "“inchs” is not a unit", "did you mean inch"},
		{"5 milimetres", 2, "not a unit", "did you mean millimetres"},
		{"5 mmm", 2, "not a unit", "did you mean mm"},
		{"5 yd", 2, "not a unit", "in, ft, mm, cm or m"},
		{"5 mm 3", 5, "second number", ""},
		{"5 mm!", 4, "“!” is left over", ""},
		{"1' 4 mm", 4, "followed by inches", ""},
		{"1' x", 3, "left over", ""},
		{"1' -", 4, "number is missing", ""},
		{"1001 m", 0, "longer than a kilometre", "unit"},
		{"-1001 m", 0, "longer than a kilometre", "unit"},
		{strings.Repeat("9", 200), 0, "longer than a kilometre", ""},
		{"1e24", 0, "longer than a kilometre", ""},
		{"1e25", 1, "beyond all reason", ""},
		{"1e-99999999999999999999", 1, "beyond all reason", ""},
		{strings.Repeat("1", 257), 0, "far too long", ""},
		{"5\xff", 1, "“·” is left over", ""},
		{"\x00", 0, "“·” does not begin", ""},
	} {
		_, err := ParseLength(c.in, Inches)
		var bad *ParseError
		switch {
		case !errors.As(err, &bad):
			t.Errorf("%q: want a *ParseError, got %v", c.in, err)
		case bad.Offset != c.offset, !strings.Contains(bad.Summary, c.summary), !strings.Contains(bad.Mend, c.mend), bad.Mend == "":
			t.Errorf("%q: got at %d %q / %q; want at %d %q / %q", c.in, bad.Offset, bad.Summary, bad.Mend, c.offset, c.summary, c.mend)
		}
	}
}

func TestParseTypedKeepsTheText(t *testing.T) {
	got, err := ParseTyped(" 5-3/8 ", Inches)
	if want := (Typed{Length: 43 * Inch / 8, Text: " 5-3/8 "}); err != nil || got != want {
		t.Errorf("got %+v, %v; want %+v", got, err, want)
	}
	if got, err := ParseTyped("x", Inches); err == nil || got != (Typed{}) {
		t.Errorf("bad text: got %+v, %v", got, err)
	}
}

// checkParse holds whatever the text is.
func checkParse(t interface{ Fatalf(string, ...any) }, text string) {
	for _, unit := range []Unit{Inches, Millimetres} {
		l, err := ParseLength(text, unit)
		if err == nil {
			if l.Abs() > MaxLength {
				t.Fatalf("%q: %d is beyond MaxLength", text, l)
			}
			continue
		}
		bad, ok := err.(*ParseError)
		if !ok || l != 0 || bad.Offset < 0 || bad.Offset > len(text) || bad.Summary == "" || bad.Mend == "" ||
			!utf8.ValidString(bad.Error()) || len(bad.Error()) > 400 {
			t.Fatalf("%q: %d with %#v", text, l, err)
		}
	}
}

func TestParseLengthNeverPanics(t *testing.T) {
	pieces := rapid.SampledFrom([]string{"5", "3/8", "/", "-", " ", ".", ",", "'", "\"", "′", "”", "½", "ft", "in", "mm", "e9", "0", "−", "\xff", "é", "1e-3"})
	testkit.Check(t, func(t *rapid.T) {
		checkParse(t, strings.Join(rapid.SliceOfN(pieces, 0, 12).Draw(t, "pieces"), ""))
		checkParse(t, rapid.String().Draw(t, "text"))
	})
}

// TestParseLengthAgreesWithRat builds the value a second way.
func TestParseLengthAgreesWithRat(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, 30_000).Draw(t, "whole")
		den := rapid.Int64Range(2, 1000).Draw(t, "den")
		num := rapid.Int64Range(1, den-1).Draw(t, "num")
		r := new(big.Rat).Add(big.NewRat(whole, 1), big.NewRat(num, den))
		want, ok := FromRat(r, Inches)
		if !ok {
			t.Fatalf("%v in is refused", r)
		}
		for _, form := range []string{"W N/D", "W-N/D", `W N/D"`, "W N/D in"} {
			text := strings.NewReplacer("W", big.NewInt(whole).String(), "N", big.NewInt(num).String(), "D", big.NewInt(den).String()).Replace(form)
			if got, err := ParseLength(text, Inches); err != nil || got != want {
				t.Fatalf("%q: got %d, %v; want %d", text, got, err, want)
			}
		}
	})
}

func FuzzParseLength(f *testing.F) {
	f.Fuzz(func(t *testing.T, text string) { checkParse(t, text) })
}

func BenchmarkParseLength(b *testing.B) {
	for _, text := range []string{"5 3/8", `1' 4 1/2"`, "136.5 mm"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := ParseLength(text, Inches); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
