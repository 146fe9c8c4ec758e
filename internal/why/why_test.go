package why_test

import (
	"fmt"
	"testing"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/testkit"
	"casewright/internal/why"

	"pgregory.net/rapid"
)

const inch = measure.Inch

func inches(l measure.Length) string {
	return measure.Style{Graduation: measure.SixtyFourths}.Format(l)
}

func at(line int) diag.Span {
	return diag.Span{File: "a.hcl", Start: diag.Pos{Line: line, Column: 1}, End: diag.Pos{Line: line, Column: 5, Offset: 4}}
}

// 20 1/2 − 2 × 9/16 = 19 3/8, told in names, in figures and down to the text.
func TestExplain(t *testing.T) {
	width := why.Given("case width", 41*inch/2, at(3), "20 1/2")
	side := why.Usual("side thickness", 9*inch/16, "common practice, no source")
	inside := why.Sum("inside width", why.Plus(width), why.Times(-2, side))
	length := inside.Named("shoulder length").Named("length")
	tenoned := why.Sum("tenoned", why.Plus(inside.Named("opening")), why.Plus(side))
	if l := tenoned.Explain(inches, 1); len(l) != 3 || l[1].Called != "opening" || l[1].Name != "inside width" || l[1].Names != "case width − 2 × side thickness" {
		t.Errorf("a father does not keep both names: %+v", l)
	}
	var got []string
	for _, l := range length.Explain(inches, 0) {
		got = append(got, fmt.Sprintf("%d %s = %s %s | %s | %s | %s | line %d", l.Depth, l.Name, inches(l.Value), l.Kind, l.Names, l.Figures, l.Source, l.At.Start.Line))
	}
	testkit.Diff(t, []string{
		"0 length = 19 3/8 derived | case width − 2 × side thickness | 20 1/2 − 2 × 9/16 |  | line 0",
		"1 case width = 20 1/2 typed |  |  |  | line 3",
		"1 side thickness = 9/16 default |  |  | common practice, no source | line 0",
	}, got)
	if length.Root() != inside {
		t.Error("a renamed size has lost its root")
	}
	if length.At() != at(3) {
		t.Errorf("a derived size points at %v, want its typed father", length.At())
	}
}

func TestMissing(t *testing.T) {
	var none why.Size
	if none.Given() || none.Length() != 0 || none.Kind() != why.Missing || !none.At().IsZero() || none.Explain(inches, 0) != nil {
		t.Error("the zero size is something")
	}
	two := why.Given("two", 2*inch, at(1), "2")
	if none.Or(two) != two || two.Or(why.Size{}) != two {
		t.Error("Or does not take the given one")
	}
	if s := why.Sum("sum", why.Plus(two), why.Minus(none)); s.Root() != two {
		t.Errorf("a term that is not given shows: %q", s.Sum(inches))
	}
}

func TestRule(t *testing.T) {
	stile := why.Given("stile", 7*inch/4, at(2), "1 3/4")
	tenon := why.Rule("tenon", 19*inch/16, "two thirds of the stile", "a source", stile)
	lines := tenon.Explain(inches, 0)
	if len(lines) != 2 || lines[0].Rule != "two thirds of the stile" || lines[0].Source != "a source" || lines[1].Typed != "1 3/4" {
		t.Errorf("got %+v", lines)
	}
	if tenon.TypedAs() != "" || stile.TypedAs() != "1 3/4" {
		t.Error("only what was typed is typed")
	}
}

// A sum is exactly the sum of its terms, and nothing built on a size changes it.
func TestSumIsExact(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		sizes := []why.Size{why.Given("a", measure.Length(rapid.Int64Range(-1e12, 1e12).Draw(t, "first")), at(1), "a")}
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			var terms []why.Term
			var want measure.Length
			for range rapid.IntRange(1, 4).Draw(t, "terms") {
				s := sizes[rapid.IntRange(0, len(sizes)-1).Draw(t, "which")]
				n := rapid.Int64Range(-3, 3).Draw(t, "times")
				terms = append(terms, why.Times(n, s))
				want += measure.Length(n) * s.Length()
			}
			before := sizes[0].Length()
			s := why.Sum("s", terms...)
			if s.Length() != want || sizes[0].Length() != before {
				t.Fatalf("sum is %d, want %d", s.Length(), want)
			}
			sizes = append(sizes, s)
		}
		if n := len(sizes[len(sizes)-1].Explain(inches, 0)); n > len(sizes) {
			t.Fatalf("%d lines explain %d sizes", n, len(sizes))
		}
	})
}
