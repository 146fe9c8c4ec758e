package piece_test

import (
	"testing"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/testkit/designs"
)

const drawn = 500

// TestDrawnDesigns holds what must be true of any piece, on random ones.
func TestDrawnDesigns(t *testing.T) {
	clean := 0
	for seed := range uint64(drawn) {
		p, list := try(designs.Draw(seed))
		if list.Has(diag.Error) {
			continue
		}
		clean++
		checkApart(t, p)
		checkPlaces(t, p)
		checkMirrors(t, p)
		checkPrinted(t, p)
		checkInset(t, p)
		if t.Failed() {
			t.Fatalf("seed %d:\n%s", seed, designs.Draw(seed))
		}
	}
	if clean < drawn*9/10 {
		t.Errorf("only %d of %d drawn designs compile clean", clean, drawn)
	}
}

// A part is turned into place, never mirrored: its axes are right-handed.
func checkPlaces(t *testing.T, p *piece.Piece) {
	t.Helper()
	for _, q := range p.Parts {
		origin := q.Place.Point(0, 0, 0)
		x, y, z := q.Place.Point(1, 0, 0).Sub(origin), q.Place.Point(0, 1, 0).Sub(origin), q.Place.Point(0, 0, 1).Sub(origin)
		det := x.X*(y.Y*z.Z-y.Z*z.Y) - x.Y*(y.X*z.Z-y.Z*z.X) + x.Z*(y.X*z.Y-y.Y*z.X)
		if det != 1 {
			t.Errorf("%s %s is not right-handed", q.Mark, q.Path)
		}
	}
}

// Mirror images have the same sizes, but for the odd nanometre of a width that
// two leaves share.
func checkMirrors(t *testing.T, p *piece.Piece) {
	t.Helper()
	for _, q := range p.Parts {
		m := q.Mirror
		if m == nil {
			continue
		}
		if m.Mirror != q {
			t.Errorf("%s mirrors %s, which mirrors something else", q.Mark, m.Mark)
		}
		if a, b := q.Box(), m.Box(); a.L != b.L || (a.W-b.W).Abs() > 1 || (a.T-b.T).Abs() > measure.Micrometre {
			t.Errorf("%s %v and its mirror image %s %v differ in size", q.Mark, q.Box(), m.Mark, m.Box())
		}
	}
}

// Printed sizes that fill a space add up to the printed space, and none is
// further than a graduation from the truth.
func checkPrinted(t *testing.T, p *piece.Piece) {
	t.Helper()
	for _, f := range p.Fillings() {
		var sum, exact measure.Length
		for _, m := range f.Members {
			sum += p.Shown(m)
			exact += m.Length()
			if off := (p.Shown(m) - m.Length()).Abs(); off >= 2*measure.Length(p.Spec.Commission.Rule) {
				t.Errorf("%s: %s is %v and prints %v", f.Name, m.Name(), m.Length(), p.Shown(m))
			}
		}
		if exact != f.Total.Length() {
			t.Errorf("%s: members add up to %d, the space is %d", f.Name, exact, f.Total.Length())
		}
		if sum != p.Shown(f.Total) {
			t.Errorf("%s: printed members add up to %d, the printed space is %d", f.Name, sum, p.Shown(f.Total))
		}
	}
}

// What is set into an opening stands inside it, clear on every side.
func checkInset(t *testing.T, p *piece.Piece) {
	t.Helper()
	for _, a := range p.Assemblies {
		o := a.Opening
		if o == nil || overlaid(o) {
			continue
		}
		left, right := o.Corner.X, o.Corner.X+o.Width.Length()
		floor, ceiling := o.Corner.Z, o.Corner.Z+o.Height.Length()
		for _, q := range a.Parts {
			lo, hi := q.Corners()
			if lo.X <= left || hi.X >= right || lo.Z < floor || hi.Z >= ceiling || (a.Kind == piece.DoorAssembly && lo.Z == floor) {
				t.Errorf("%s %s reaches out of opening %s", q.Mark, q.Path, o.Path)
			}
		}
	}
}

func overlaid(o *piece.Opening) bool {
	d, r := o.Fill.Door, o.Fill.Drawer
	return d != nil && d.Mount.Value == "overlay" || r != nil && r.Mount.Value == "overlay"
}
