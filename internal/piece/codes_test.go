package piece_test

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
)

// box wraps what stands inside a case, or beside it, into a whole text.
func box(attrs, inside, beside string) string {
	return `commission "test" {}
case "box" {
  width  = 30
  height = 30
  depth  = 12
` + attrs + `
  inside {
` + inside + `
  }
}
` + beside
}

// manyCases is a text of tall cases with a hundred shelves each.
func manyCases(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "case \"c%d\" {\n width = 30\n height = 200\n depth = 12\n inside {\n shelves {\n count = 100\n}\n}\n}\n", i)
	}
	return b.String()
}

var wrong = []struct {
	name, text, code, under string
}{
	{"parts beyond reason", box("", "", "") + manyCases(250), "E301", ""},
	{"rows too high", box("", "row \"a\" {\n height = 20\n}\ndivider {\n thickness = 1/2\n}\nrow \"b\" {\n height = 10\n}", ""), "E310", "inside"},
	{"nothing left", box("", "row \"a\" {\n height = 28 1/2\n}\nrow \"b\" {}", ""), "E311", "row \"b\""},
	{"shelf without length", box("", "column \"a\" {\n width = 1/8\n shelves {\n count = 1\n adjustable = true\n}\n}\ncolumn \"b\" {}", ""), "E312", "1/8"},
	{"boards fill the case", box("thickness = 15", "", ""), "E313", "15"},
	{"drawer too low", box("", "row \"a\" {\n height = 3/4\n drawer {}\n}\nrow \"b\" {}", ""), "E314", "drawer"},
	{"frame without panel", box("", "door {\n hinge = \"left\"\n stile = 14\n}", ""), "E315", "door"},
	{"shelf above the opening", box("", "shelf {\n up = 28 1/4\n}", ""), "E316", "28 1/4"},
	{"too many shelves", box("", "shelves {\n count = 40\n}", ""), "E317", "shelves"},
	{"stand too narrow", box("", "", "stand \"s\" {\n under = \"box\"\n height = 4\n style = \"legs\"\n inset = 14\n}"), "E318", "30"},
	{"top rails overlap", box("top_rails {\n width = 8\n}", "", "top \"t\" {\n on = \"box\"\n}"), "E319", "8"},
	{"unknown wood", box("wood = \"cherrry\"", "", ""), "E321", `"cherrry"`},
	{"impossible species", box("wood = \"plum\"", "", "species \"plum\" {\n radial = 90\n tangential = 95\n specific_gravity = 0.6\n}"), "E322", "species"},
	{"no radial figure", box("wood = \"w\"", "drawer {}", "wood \"w\" {\n species = \"wenge\"\n cut = \"quarter\"\n}"), "E323", "wood"},
	{"arc too round", box("front = \"bow\"", "", "curve \"bow\" {\n shape = \"arc\"\n chord = 30\n rise = 16\n}"), "E330", "curve"},
	{"overlay on a bow", box("front = \"bow\"", "door {\n hinge = \"left\"\n mount = \"overlay\"\n}", "curve \"bow\" {\n shape = \"arc\"\n chord = 30\n rise = 1\n}"), "E324", `"overlay"`},
	{"taper too steep", box("", "", "stand \"s\" {\n under = \"box\"\n height = 6\n leg = 1 1/2\n taper = 3/4\n}"), "E325", "3/4"},
	{"curve too short", box("front = \"bow\"", "", "curve \"bow\" {\n shape = \"arc\"\n chord = 29\n rise = 1\n}"), "E331", `"bow"`},
	{"no such part", box("", "", "match \"m\" {\n kind = \"ring\"\n parts = [\"box.side.middle\"]\n}"), "E340", `"box.side.middle"`},
	{"part in two sets", box("", "", "match \"m\" {\n kind = \"ring\"\n parts = [\"box.side.*\"]\n}\nmatch \"n\" {\n kind = \"run\"\n parts = [\"box.side.left\", \"box.top\"]\n}"), "E341", `"box.side.left"`},
	{"nothing measured", box("", "", "measured \"box.nowhere\" {\n width = 3\n}"), "E342", `"box.nowhere"`},
}

// Each mistake gets its own code, at the text that made it.
func TestDiagnostics(t *testing.T) {
	for _, c := range wrong {
		t.Run(c.name, func(t *testing.T) {
			_, list := try(c.text)
			i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == c.code })
			if i < 0 {
				t.Fatalf("no %s in %v", c.code, list)
			}
			d := list[i]
			under := c.text[d.Subject.Start.Offset:d.Subject.End.Offset]
			if !strings.HasPrefix(under, c.under) {
				t.Errorf("%s points at %q, want %q", d.Code, under, c.under)
			}
			if d.Summary == "" || d.Detail == "" {
				t.Errorf("%s does not say what to do", d.Code)
			}
		})
	}
}

// Which number gives? Every fixed size is offered, with what it would become.
func TestOverConstrainedOffersEachSize(t *testing.T) {
	_, list := try(box("", "row \"a\" {\n height = 20\n}\ndivider {\n thickness = 1/2\n}\nrow \"b\" {\n height = 10\n}", ""))
	d := list[0]
	// 30 − 2 × 3/4 = 28 1/2 inside; 20 + 1/2 + 10 = 30 1/2, 2 too much.
	if !strings.Contains(d.Summary, "30 1/2") || !strings.Contains(d.Summary, "28 1/2") || !strings.Contains(d.Summary, `2" too much`) {
		t.Errorf("summary: %s", d.Summary)
	}
	var mends []string
	for _, e := range d.Edits {
		mends = append(mends, e.Text)
	}
	if !slices.Equal(mends, []string{"18", "8"}) {
		t.Errorf("mends %q, want 18 or 8", mends)
	}
}

// The language keeps air within reason; a spec made by hand may not.
func TestAirOutsideTheFormula(t *testing.T) {
	_, list := piece.Build(&design.Spec{Season: design.Season{Dry: 30, Damp: 130}})
	if len(list) == 0 || list[0].Code != "E320" {
		t.Errorf("got %v, want E320", list)
	}
}

// Every code that the source reports is explained, and none besides.
func TestExplanations(t *testing.T) {
	var used []string
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	code := regexp.MustCompile(`Code:\s+"(E\d+)", Severity`)
	for _, f := range files {
		text, err := os.ReadFile(f.Name())
		if err != nil || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		for _, m := range code.FindAllStringSubmatch(string(text), -1) {
			used = append(used, m[1])
		}
	}
	slices.Sort(used)
	used = slices.Compact(used)
	var told []string
	for _, e := range piece.Explanations() {
		told = append(told, e.Code)
	}
	if !slices.Equal(used, told) {
		t.Errorf("reported %v\nexplained %v", used, told)
	}
}
