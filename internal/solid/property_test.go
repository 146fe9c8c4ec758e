package solid_test

import (
	"testing"

	"casewright/internal/diag"
	"casewright/internal/solid"
	"casewright/internal/testkit/designs"
)

// drawn is how many random pieces are proved.
const drawn = 500

// TestDrawnPiecesFit proves random pieces: nothing in one place, every joint
// closed, no part that cannot be.
func TestDrawnPiecesFit(t *testing.T) {
	clean := 0
	for seed := range uint64(drawn) {
		p, list := try(designs.Draw(seed))
		if list.Has(diag.Error) {
			continue
		}
		clean++
		m, list := solid.Build(p, nil)
		proof := m.Prove(m.Meetings())
		for _, d := range list {
			t.Errorf("seed %d: %s %s: %s", seed, d.Code, d.Where, d.Summary)
		}
		complain(t, proof)
	}
	if clean < drawn*9/10 {
		t.Errorf("only %d of %d drawn designs compile clean", clean, drawn)
	}
}
