package book

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"casewright/internal/check"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
)

var lookAt = flag.String("look", "", "write the books of the examples as PDF into this folder")

func example(t testing.TB, name string) *piece.Piece {
	t.Helper()
	file := filepath.Join("..", "..", "examples", name, "commission.hcl")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	spec, d := design.Read([]design.Source{{Name: "commission.hcl", Text: text}})
	if d.Has(diag.Error) {
		t.Fatalf("%s: %v", name, d)
	}
	p, d := piece.Build(spec)
	if d.Has(diag.Error) {
		t.Fatalf("%s: %v", name, d)
	}
	return p
}

var examples = []string{"hall-cabinet", "sideboard", "bookcase"}

// TestLook writes the books for a person to look at: go test -run TestLook
// -args -look FOLDER.
func TestLook(t *testing.T) {
	if *lookAt == "" {
		t.Skip("give -look FOLDER to see the books")
	}
	pieces := map[string]*piece.Piece{"metric": metricPiece(t)}
	for _, name := range examples {
		pieces[name] = example(t, name)
	}
	for name, p := range pieces {
		pdf, err := PDF(p, check.Run(p), Options{Paper: paperOf(p)})
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(*lookAt, name+".pdf"), pdf, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func paperOf(p *piece.Piece) sheet.Paper {
	if p.Spec.Commission.Unit == measure.Millimetres {
		return sheet.A4
	}
	return sheet.Letter
}
