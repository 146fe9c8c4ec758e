package piece_test

import (
	"os"
	"path/filepath"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

const inch = measure.Inch

// commissions are the three pieces the project shows.
var commissions = []string{"hall-cabinet", "sideboard", "bookcase"}

// build compiles a text and fails on anything but a clean piece.
func build(t testing.TB, text string) *piece.Piece {
	t.Helper()
	p, list := try(text)
	for _, d := range list {
		t.Errorf("%s %s: %s: %s", d.Severity, d.Code, d.Summary, d.Detail)
	}
	return p
}

// try compiles a text and returns what was wrong with it from both stages.
func try(text string) (*piece.Piece, diag.List) {
	spec, list := design.Read([]design.Source{{Name: "test.hcl", Text: []byte(text)}})
	p, more := piece.Build(spec)
	return p, append(list, more...)
}

func example(t testing.TB, name string) *piece.Piece {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", name, "commission.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	return build(t, string(text))
}

func part(t testing.TB, p *piece.Piece, path string) *piece.Part {
	t.Helper()
	q := p.Part(path)
	if q == nil {
		t.Fatalf("no part %q", path)
	}
	return q
}

// l reads a length the way a maker writes it.
func l(t testing.TB, text string) measure.Length {
	t.Helper()
	v, err := measure.ParseLength(text, measure.Inches)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
