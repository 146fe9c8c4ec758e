package lettering

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"casewright/internal/testkit"
)

// TestWidth holds widths against the advances printed by the font itself: a
// figure of Go Regular is 1139 of 2048 units wide, which a PDF rounds to 556
// thousandths of an em.
func TestWidth(t *testing.T) {
	em := 10 * 25.4 / 72
	testkit.Near(t, Regular.Width("8", 10), 0.556*em, 1e-9)
	testkit.Near(t, Regular.Width("888", 10), 3*0.556*em, 1e-9)
	testkit.Near(t, Regular.Width("", 10), 0, 0)
	testkit.Near(t, Mono.Width("il", 10), Mono.Width("WM", 10), 1e-12)
	testkit.Near(t, Face(99).Width("8", 10), Regular.Width("8", 10), 0)
	testkit.Near(t, Points(72).Millimetres(), 25.4, 1e-12)
}

func TestHas(t *testing.T) {
	for _, r := range "¼½¾⅛⅜⅝⅞×Ø°±″′→…−–é" {
		if !Regular.Has(r) {
			t.Errorf("the face lacks %c, which the sheets print", r)
		}
	}
	for _, r := range []rune{0, '\n', '木', utf8.MaxRune, -1} {
		if Regular.Has(r) {
			t.Errorf("the face claims to have %U", r)
		}
	}
}

func TestPrintable(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"5 3/8", "5 3/8"},
		{"a\tb\nc", "a b c"},
		{"木 oak", "? oak"},
		{"bell\a", "bell"},
		{"bad\xff", "bad?"},
		{"cafe\u0301", "café"},
	} {
		if got := Regular.Printable(c.in); got != c.want {
			t.Errorf("Printable(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

// TestSplit pins what is a fraction of a rule and what is only a slash.
func TestSplit(t *testing.T) {
	for _, c := range []struct {
		in   string
		want string // fractions in brackets
	}{
		{"5 3/8", "5[3/8]"},
		{"5-3/8", "5[3/8]"},
		{"5 ⅜ x 7½", "5[3/8] x 7[1/2]"},
		{"3/64 in", "[3/64] in"},
		{"(1/2)", "([1/2])"},
		{"-3/8", "-[3/8]"},
		{"and/or", "and/or"},
		{"1/3", "1/3"},
		{"3/4/26", "3/4/26"},
		{"1:1/2", "1:[1/2]"},
		{"v1/2", "v1/2"},
		{"0.1/2", "0.1/2"},
		{"1/2x", "1/2x"},
		{"1/", "1/"},
		{"/2", "/2"},
		{"123/64", "123/64"},
		{"", ""},
	} {
		var got strings.Builder
		for _, p := range split(c.in) {
			got.WriteString(p.text)
			if p.den != "" {
				got.WriteString("[" + p.num + "/" + p.den + "]")
			}
		}
		if got.String() != c.want {
			t.Errorf("split(%q) = %s, want %s", c.in, got.String(), c.want)
		}
	}
}

// TestStack checks a stacked fraction: numerator above the bar, denominator
// below, both over the bar's length, nothing touching.
func TestStack(t *testing.T) {
	l := Set("5 13/32", Regular, 10)
	if len(l.Runs) != 3 || len(l.Bars) != 1 {
		t.Fatalf("got %d runs and %d bars, want 3 and 1", len(l.Runs), len(l.Bars))
	}
	whole, num, den, bar := l.Runs[0], l.Runs[1], l.Runs[2], l.Bars[0]
	if whole.Text != "5" || num.Text != "13" || den.Text != "32" {
		t.Errorf("runs %q %q %q", whole.Text, num.Text, den.Text)
	}
	digit := Regular.tables().digit * num.Size.Millimetres()
	if !(num.Y < bar.Y-bar.Thick/2 && den.Y-digit > bar.Y+bar.Thick/2) {
		t.Errorf("figures touch the bar: %v %v %v", num.Y, bar.Y, den.Y-digit)
	}
	for _, r := range []Run{num, den} {
		if r.X < bar.X1-1e-9 || r.X+r.Face.Width(r.Text, r.Size) > bar.X2+1e-9 {
			t.Errorf("%q sticks out beyond its bar", r.Text)
		}
	}
	if end := whole.X + whole.Face.Width("5", 10); end >= bar.X1 {
		t.Errorf("whole number runs into the bar")
	}
	testkit.Near(t, l.FractionWidth(), l.Width-bar.X1, 1e-12)
}

// words draws text as a shop writes it, with sizes, long words and nonsense.
func words() *rapid.Generator[string] {
	word := rapid.OneOf(
		rapid.SampledFrom([]string{"5 3/8", "26 3/4 in", "136.5 mm", "side", "3/16", "A1,", "1", "0", "7/8", "Rückwand", "in"}),
		rapid.StringMatching(`[a-z]{1,30}`),
		rapid.String(),
	)
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(word, 0, 25).Draw(t, "words"), " ")
	})
}

// TestWrapKeepsWords: no letter is lost or added, and every line fits unless it
// is one letter.
func TestWrapKeepsWords(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s, width := words().Draw(t, "text"), rapid.Float64Range(1, 120).Draw(t, "width")
		face := rapid.SampledFrom(Faces()).Draw(t, "face")
		lines := Wrap(s, face, 10, width)
		var got strings.Builder
		for _, l := range lines {
			got.WriteString(l.Text)
			if l.Width > width+1e-3 && utf8.RuneCountInString(l.Text) > 1 {
				t.Errorf("line %q is %.3f wide, more than %.3f", l.Text, l.Width, width)
			}
		}
		var want strings.Builder
		for _, para := range strings.Split(s, "\n") {
			want.WriteString(face.Printable(para))
		}
		if squeeze(got.String()) != squeeze(want.String()) {
			t.Errorf("letters changed: %q became %q", want.String(), got.String())
		}
	})
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), "") }

func TestWrapKeepsSizesWhole(t *testing.T) {
	for width := 14.0; width < 60; width += 0.7 {
		for _, line := range WrapText("cut the rail to 26 3/4 in and the stile to 9 13/32 in long", Regular, 10, width) {
			if strings.HasSuffix(line, "26") || strings.HasSuffix(line, "9") || strings.HasPrefix(line, "in ") || strings.HasPrefix(line, "3/4") {
				t.Errorf("at %.1f mm a size is torn: %q", width, line)
			}
		}
	}
}

func TestWrapParagraphs(t *testing.T) {
	testkit.Diff(t, []string{"one", "", "two"}, WrapText("one\n\ntwo", Regular, 10, 100))
	testkit.Diff(t, []string{""}, WrapText("", Regular, 10, 100))
}

func TestEllipsis(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s, width := words().Draw(t, "text"), rapid.Float64Range(0, 80).Draw(t, "width")
		got := Ellipsis(s, Regular, 10, width)
		switch {
		case got == s:
			if w := Set(s, Regular, 10).Width; w > width+1e-3 {
				t.Errorf("%q kept whole at %.2f in %.2f mm", s, w, width)
			}
		case got == "":
			if w := Regular.Width("…", 10); w <= width {
				t.Errorf("nothing left of %q in %.2f mm", s, width)
			}
		default:
			if !strings.HasSuffix(got, "…") || !strings.HasPrefix(s, strings.TrimSuffix(got, "…")) {
				t.Errorf("%q cut to %q", s, got)
			}
			if Set(got, Regular, 10).Width > width+1e-3 {
				t.Errorf("%q still too wide for %.2f", got, width)
			}
		}
	})
}

// TestOutline: the outline of a word lies within the room that was measured.
func TestOutline(t *testing.T) {
	r := Run{X: 3, Y: -2, Face: Bold, Size: 14, Text: "HEH"}
	lo, hi, top := math.Inf(1), math.Inf(-1), 0.0
	for _, s := range Outline(r) {
		lo, hi, top = math.Min(lo, s.To[0]), math.Max(hi, s.To[0]), math.Min(top, s.To[1])
	}
	w := Bold.Width(r.Text, r.Size)
	if lo < 3 || hi > 3+w || hi < 3+0.8*w {
		t.Errorf("outline from %.3f to %.3f, room 3 to %.3f", lo, hi, 3+w)
	}
	testkit.Near(t, top, -2-Bold.CapHeight(r.Size), 1e-6)
}
