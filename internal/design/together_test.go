package design

import (
	"slices"
	"strings"
	"testing"
)

// A size that is not written the language's way, and what each mend makes of
// it. E109: sizes with units; E120: commas in numbers.
func TestMendsOfSizes(t *testing.T) {
	for _, c := range []struct {
		typed string
		code  string
		mends []string
	}{
		{`42 in`, "E109", []string{`"42 in"`}},
		{`42in`, "E109", []string{`"42 in"`}},
		{`42 mm`, "E109", []string{`"42 mm"`}},
		{`1067mm`, "E109", []string{`"1067 mm"`}},
		{`42 inches`, "E109", []string{`"42 inches"`}},
		{`3 ft`, "E109", []string{`"3 ft"`}},
		{`3 ft 6 in`, "E109", []string{`"3 ft 6 in"`}},
		{`42 cm`, "E109", []string{`"42 cm"`}},
		{`13 / 16 in`, "E109", []string{`"13/16 in"`}},
		{`20 1/2 in // inside`, "E109", []string{`"20 1/2 in" // inside`}},
		{`32,5`, "E120", []string{`32.5`}},
		{`0,125`, "E120", []string{`0.125`}},
		{`32,5mm`, "E120", []string{`"32.5 mm"`}},
		{`32,5 mm`, "E120", []string{`"32.5 mm"`}},
		{`1,067`, "E120", []string{`1.067`, `1067`}},
		{`1,067 mm`, "E120", []string{`"1.067 mm"`, `"1067 mm"`}},
		{`1,067.5`, "E120", []string{`1067.5`}},
		{`1,234,567`, "E120", []string{`1234567`}},
		{`1,2,3`, "E120", nil},
		{`(32,5 + 1) * 2`, "E120", []string{`(32.5 + 1) * 2`}},
		{`max(32, 20) - 1,5`, "E120", []string{`max(32, 20) - 1.5`}},
	} {
		text := "commission \"x\" {}\nseason {\n  dry = " + c.typed + "\n}\n"
		_, l := Read([]Source{{"t.hcl", []byte(text)}})
		if len(l) != 1 || l[0].Code != c.code {
			t.Errorf("%s: want one %s, got\n%s", c.typed, c.code, renderAll(l, text))
			continue
		}
		var got []string
		for _, e := range l[0].Edits {
			mended := text[:e.Span.Start.Offset] + e.Text + text[e.Span.End.Offset:]
			got = append(got, strings.TrimSuffix(mended[strings.Index(mended, "= ")+2:], "\n}\n"))
		}
		if !slices.Equal(got, c.mends) {
			t.Errorf("%s: mends %q, want %q", c.typed, got, c.mends)
		}
	}
}

// In lists and among what a function takes a comma parts two numbers.
func TestCommasThatPartMembers(t *testing.T) {
	spec := mustRead(t, Source{"t.hcl", []byte("commission \"x\" {}\nsite {\n  studs = [12,20,max(30,25)]\n}\n")})
	if n := len(spec.Site.Studs); n != 3 {
		t.Errorf("%d studs, want 3", n)
	}
}
