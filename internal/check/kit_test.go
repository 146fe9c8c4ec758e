package check

import (
	"strings"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// job is a commission whose shop air brings wood to 7.4 % and whose season
// takes it from 6.2 to 11.0 % (Wood Handbook Eq. 4-5 at 70 °F: 38, 30, 60 %).
const job = `
commission "t" {
  units = "in"
}

season {
  dry         = 30
  damp        = 60
  temperature = 70
}

shop {
  humidity    = 38
  temperature = 70
}

wood "cherry" {
  species  = "black cherry"
  cut      = "flat"
  moisture = 7.5
}
`

// lines breaks a text at ; so that a block can be written on one line here:
// the language wants its entries on lines of their own.
func lines(text string) string {
	return strings.NewReplacer("; ", "\n", "{ ", "{\n", " }", "\n}").Replace(text) + "\n"
}

// checked runs all rules on a text and holds every finding to what all
// findings owe.
func checked(t testing.TB, text string) diag.List {
	t.Helper()
	list := Run(built(t, []byte(text)))
	sound(t, list)
	return list
}

// sound holds findings to the promise of doc.go: what, where, figure, limit,
// source and two ways out, in words.
func sound(t testing.TB, list diag.List) {
	t.Helper()
	for _, d := range list {
		for name, s := range map[string]string{"summary": d.Summary, "detail": d.Detail, "where": d.Where, "figure": d.Figure, "limit": d.Limit, "source": d.Source} {
			if strings.TrimSpace(s) == "" && !(d.Code == "dovetail.groove-shows" && name != "summary" && name != "detail") {
				t.Errorf("%s has no %s: %+v", d.Code, name, d)
			}
		}
		if strings.Contains(d.Summary, "{who}") || strings.HasPrefix(d.Summary, " ") {
			t.Errorf("%s: nobody is named in %q", d.Code, d.Summary)
		}
		if !strings.Contains(strings.ToLower(d.Detail), "or ") {
			t.Errorf("%s offers one way out only: %q", d.Code, d.Detail)
		}
		if !known(d.Code) {
			t.Errorf("%s is explained nowhere", d.Code)
		}
		if d.Severity != diag.Stop && d.Severity != diag.Warn && d.Severity != diag.Note {
			t.Errorf("%s is of severity %v", d.Code, d.Severity)
		}
	}
}

// of picks the findings with a code.
func of(list diag.List, code string) diag.List {
	var out diag.List
	for _, d := range list {
		if d.Code == code {
			out = append(out, d)
		}
	}
	return out
}

// grade is the gravest severity a code was found with, "" without any, in one
// word for tables.
func grade(list diag.List, code string) string {
	out := diag.Severity(0)
	for _, d := range of(list, code) {
		out = max(out, d.Severity)
	}
	if out == 0 {
		return ""
	}
	return out.String()
}

func inch(in float64) measure.Length { return measure.Length(in * float64(measure.Inch)) }

// size is a size somebody typed.
func size(in float64) why.Size { return why.Given("size", inch(in), diag.Span{}, "") }

// lookUp finds a species as a wood at a moisture.
func lookUp(t testing.TB, name string, cut wood.Cut, mc measure.MoistureContent) *piece.Wood {
	t.Helper()
	s, err := wood.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return &piece.Wood{Name: name, Species: s, Cut: cut, Moisture: mc}
}

// bench is a piece put together by hand, for what no text can ask for.
func bench(parts ...*piece.Part) *piece.Piece {
	a := &piece.Assembly{Letter: "A", Kind: piece.CaseAssembly, Name: "case", Path: "case", Parts: parts}
	for i, p := range parts {
		p.Assembly, p.Mark = a, "A"+string(rune('1'+i))
		p.Blank.Length = size(48)
	}
	return &piece.Piece{Spec: &design.Spec{}, Air: piece.Air{Shop: 8, Dry: 6, Damp: 12}, Assemblies: []*piece.Assembly{a}, Parts: parts}
}

func board(name string, w *piece.Wood, l, wd, th float64, place piece.Place) *piece.Part {
	return &piece.Part{Name: name, Path: "case." + name, Wood: w, Length: size(l), Width: size(wd), Thickness: size(th), Place: place}
}
