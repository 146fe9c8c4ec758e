package piece_test

import (
	"os"
	"testing"

	"casewright/internal/design"
	"casewright/internal/piece"
)

// BenchmarkSideboard is commission B from its parsed text to parts and joints.
func BenchmarkSideboard(b *testing.B) {
	text, err := os.ReadFile("../../examples/sideboard/commission.hcl")
	if err != nil {
		b.Fatal(err)
	}
	spec, _ := design.Read([]design.Source{{Name: "sideboard.hcl", Text: text}})
	b.ReportAllocs()
	for b.Loop() {
		if p, _ := piece.Build(spec); len(p.Parts) == 0 {
			b.Fatal("no parts")
		}
	}
}

// BenchmarkSideboardText is the same from the text.
func BenchmarkSideboardText(b *testing.B) {
	text, err := os.ReadFile("../../examples/sideboard/commission.hcl")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		spec, _ := design.Read([]design.Source{{Name: "sideboard.hcl", Text: text}})
		if p, _ := piece.Build(spec); len(p.Parts) == 0 {
			b.Fatal("no parts")
		}
	}
}
