package check

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
	"casewright/internal/testkit"
)

// The three commissions of the README, and the text of each.
var examples = []string{"hall-cabinet", "sideboard", "bookcase"}

func exampleText(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", name, "commission.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// built reads and builds a text that must be free of errors.
func built(t testing.TB, text []byte) *piece.Piece {
	t.Helper()
	spec, said := design.Read([]design.Source{{Name: "commission.hcl", Text: text}})
	p, more := piece.Build(spec)
	for _, d := range append(said, more...) {
		if d.Severity >= diag.Error {
			t.Fatalf("%s: %s", d.Code, d.Summary)
		}
	}
	return p
}

func rendered(list diag.List, text []byte) []byte {
	var out bytes.Buffer
	for i, d := range list {
		if i > 0 {
			fmt.Fprintln(&out)
		}
		diag.Render(&out, d, func(string) ([]byte, bool) { return text, true })
	}
	return out.Bytes()
}

func TestExamples(t *testing.T) {
	for _, name := range examples {
		t.Run(name, func(t *testing.T) {
			text := exampleText(t, name)
			list := Run(built(t, text))
			testkit.Golden(t, name+".txt", rendered(list, text))
			if n := list.Count(diag.Stop); n > 0 {
				t.Errorf("%d stops in a commission that can be built", n)
			}
		})
	}
}
