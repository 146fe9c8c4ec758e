package solid_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid"
)

// BenchmarkSideboardCold is commission B from its parts to exact solids, masses
// and proof of fit, with nothing remembered. Target: under 250 ms.
func BenchmarkSideboardCold(b *testing.B) {
	p := example(b, "sideboard")
	for b.Loop() {
		prove(b, p, nil)
	}
}

// BenchmarkSideboardOneDrawerChanged is the same after the depth of one
// drawer's side changed, with the rest remembered. Target: under 30 ms.
func BenchmarkSideboardOneDrawerChanged(b *testing.B) {
	text, err := os.ReadFile("../../examples/sideboard/commission.hcl")
	if err != nil {
		b.Fatal(err)
	}
	before := parts(b, string(text))
	var cache solid.Cache
	var changed []*piece.Piece
	for i := range 64 {
		one := strings.Replace(string(text), "        drawer {}\n", fmt.Sprintf("        drawer {\n behind = %d/256\n}\n", 100+i), 1)
		changed = append(changed, parts(b, one))
	}
	i := 0
	for b.Loop() {
		if i%len(changed) == 0 { // a cache that has seen none of them
			b.StopTimer()
			cache = solid.Cache{}
			prove(b, before, &cache)
			b.StartTimer()
		}
		prove(b, changed[i%len(changed)], &cache)
		i++
	}
}

// BenchmarkManyParts proves cases of about 200 and 2 000 parts. Target: 2 000
// in under 5 s.
func BenchmarkManyParts(b *testing.B) {
	for _, cases := range []int{5, 51} {
		var t strings.Builder
		for i := range cases {
			fmt.Fprintf(&t, "case \"c%d\" {\n width = %d\n height = 60\n depth = 14\n wood = \"cherry\"\n inside {\n", i, 30+i)
			for r := range 6 {
				if r > 0 {
					fmt.Fprintf(&t, "divider {}\n")
				}
				fmt.Fprintf(&t, "row \"r%d\" {\n drawer {}\n}\n", r)
			}
			t.WriteString("}\n}\n")
		}
		p := parts(b, "commission \"many\" {}\n"+t.String())
		for _, q := range p.Parts { // side by side, not in one place
			var n int
			if _, err := fmt.Sscanf(q.Path, "c%d", &n); err != nil {
				b.Fatal(err)
			}
			q.Place.At.X += measure.Length(n) * 3 * measure.Metre
		}
		b.Run(fmt.Sprintf("%d parts", len(p.Parts)), func(b *testing.B) {
			for b.Loop() {
				prove(b, p, nil)
			}
		})
	}
}

func prove(b *testing.B, p *piece.Piece, cache *solid.Cache) {
	m, list := solid.Build(p, cache)
	if proof := m.Prove(m.Meetings()); len(list)+len(proof.Clashes)+len(proof.Loose) > 0 {
		b.Fatal("it does not fit", list)
	}
	m.Weigh(solid.State{})
}

func parts(b *testing.B, text string) *piece.Piece {
	spec, list := design.Read([]design.Source{{Name: "bench.hcl", Text: []byte(text)}})
	p, more := piece.Build(spec)
	if list = append(list, more...); list.Has(diag.Error) {
		b.Fatal(list)
	}
	return p
}
