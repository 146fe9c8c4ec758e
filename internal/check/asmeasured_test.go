package check_test

import (
	"strings"
	"testing"

	"casewright/internal/check"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
)

// cabinet is a small case with a door over a drawer.
func cabinet(gap, measured, width string) string {
	return `commission "t" {}
case "c" {
  width  = ` + width + `
  height = 24
  depth  = 12
  wood   = "cherry"
  back {}
  inside {
    row "door" {
      door {
        hinge = "left"
` + gap + `
      }
    }
    row "drawer" {
      height = 5
      drawer {}
    }
  }
}
` + measured
}

func codes(t *testing.T, text string) string {
	t.Helper()
	spec, list := design.Read([]design.Source{{Name: "t.hcl", Text: []byte(text)}})
	p, more := piece.Build(spec)
	if list = append(list, more...); list.Has(diag.Error) {
		t.Fatal(list)
	}
	var out []string
	for _, d := range check.Run(p) {
		if d.Severity >= diag.Warn {
			out = append(out, d.Severity.String()+" "+d.Code)
		}
	}
	return strings.Join(out, ", ")
}

// A gap of 1/64 can be fitted by hand, a tighter one binds; an opening 3/16 off
// its plan is taken as measured, one further off is asked about; a case of 12
// feet is large, one longer has likely slipped its unit.
func TestAsked(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"gap of 1/64", cabinet("gap = 1/64", "", "20"), ""},
		{"gap of 1/128", cabinet("gap = 1/128", "", "20"), "stop fit.door"},
		{"no gap", cabinet("gap = 0", "", "20"), "stop fit.door"},
		{"3/16 off", cabinet("", "measured \"c.drawer\" {\n width = 18 5/16\n height = 5\n}", "20"), ""},
		{"1/4 off", cabinet("", "measured \"c.drawer\" {\n width = 18 1/4\n height = 5\n}", "20"), "warn measured.far"},
		{"wider than its case", cabinet("", "measured \"c.drawer\" {\n width = 20\n height = 5\n}", "20"), "warn measured.far"},
		{"12 feet", cabinet("", "", "\"12 ft\""), "not case.huge"},
		{"12 feet and an inch", cabinet("", "", "145"), "warn case.huge"},
	} {
		got := codes(t, c.text)
		if out, not := strings.CutPrefix(c.want, "not "); not && !strings.Contains(got, out) {
			continue // its panel and its drawer are another matter at that width
		}
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}
