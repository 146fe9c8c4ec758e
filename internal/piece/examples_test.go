package piece_test

import (
	"testing"

	"casewright/internal/piece"
)

// The hall cabinet reckoned by hand: 20 1/2 × 26 3/4 × 5 3/8 of 9/16 stock, back
// in 7/8 with 3/8 rabbets, housings 3/16.
func TestHallCabinetByHand(t *testing.T) {
	p := example(t, "hall-cabinet")
	for _, c := range []struct{ path, length, width, thick, sum string }{
		{"cabinet.side.left", "26 3/4", "5 3/8", "9/16", "outside height; through dovetails reach right across"},
		{"cabinet.top", "20 1/2", "5 3/8", "9/16", "outside width"},
		{"cabinet.divider", "19 3/4", "4 1/2", "1/2", "19 3/8 inside + 2 × 3/16; 5 3/8 − 7/8"},
		{"cabinet.upper.partition", "22 1/4", "4 1/2", "1/2", "25 5/8 − 1/2 − 3 1/4 = 21 7/8, + 2 × 3/16"},
		{"cabinet.upper.letters.shelf", "6 7/8", "4 1/2", "3/8", "6 1/2 + 2 × 3/16"},
		{"cabinet.drawers.partition", "3 5/8", "4 1/2", "3/8", "3 1/4 + 2 × 3/16"},
		{"cabinet.upper.keys.door.stile.left", "21 3/4", "1 3/4", "5/8", "21 7/8 − 2 × 1/16"},
		{"cabinet.drawers.left.side.left", "4", "3 11/64", "5/16", "4 1/2 − 3/8 behind − 1/8 lap"},
		{"cabinet.cleat.case", "20 1/8", "2", "9/16", "19 3/8 + 2 × 3/8"},
		{"ledge", "22 1/2", "6 7/8", "7/16", "5 3/8 + rise 1 1/2"},
	} {
		q := part(t, p, c.path)
		if got := p.Shown(q.Length); got != l(t, c.length) {
			t.Errorf("%s: length %v in, want %s (%s)", c.path, got.Inches(), c.length, c.sum)
		}
		if got := p.Shown(q.Width); got != l(t, c.width) {
			t.Errorf("%s: width %v in, want %s (%s)", c.path, got.Inches(), c.width, c.sum)
		}
		if got := p.Shown(q.Thickness); got != l(t, c.thick) {
			t.Errorf("%s: thickness %v in, want %s", c.path, got.Inches(), c.thick)
		}
	}
}

// The sideboard by hand: bays 17, 19 3/4, 17 in 55 1/4; the bank of three
// drawers in 21 less two rails of 3/4, each 5/8 higher than the one above:
// 3 × 5 7/8 + 5/8 + 2 × 5/8 = 19 1/2.
func TestSideboardByHand(t *testing.T) {
	p := example(t, "sideboard")
	want := map[string][2]string{
		"carcase.left.top":      {"17", "5 1/4"},
		"carcase.middle.top":    {"19 3/4", "5 1/4"},
		"carcase.middle.bank.1": {"19 3/4", "5 7/8"},
		"carcase.middle.bank.2": {"19 3/4", "6 1/2"},
		"carcase.middle.bank.3": {"19 3/4", "7 1/8"},
		"carcase.right.door":    {"17", "21"},
	}
	for _, o := range p.Openings {
		w, ok := want[o.Path]
		if !ok {
			continue
		}
		delete(want, o.Path)
		if o.Width.Length() != l(t, w[0]) || o.Height.Length() != l(t, w[1]) {
			t.Errorf("%s is %v × %v in, want %s × %s", o.Path, o.Width.Length().Inches(), o.Height.Length().Inches(), w[0], w[1])
		}
	}
	for path := range want {
		t.Errorf("no opening %s", path)
	}
	if got, want := part(t, p, "top").Width.Length(), l(t, "18 1/4"); got != want { // 15 + 3/4 + 2 1/2
		t.Errorf("top is %v in deep, want 18 1/4", got.Inches())
	}
}

// The bookcase by hand: 38 1/2 less two boards of 7/8 is 36 3/4; its upper case
// stands on the base's top, backs flush.
func TestBookcaseByHand(t *testing.T) {
	p := example(t, "bookcase")
	upper := part(t, p, "upper.bottom")
	lo, _ := upper.Corners()
	// plinth 3 1/2 + case 26 1/4 + top 3/4 = 30 1/2 up; 14 − 10 3/4 = 3 1/4 back
	if lo.Z != l(t, "30 1/2") || lo.Y != l(t, "3 1/4") || lo.X != 0 {
		t.Errorf("upper case stands at %v, want up 30 1/2, back 3 1/4", lo)
	}
	if got, want := part(t, p, "upper.shelf.1").Length.Length(), l(t, "36 5/8"); got != want { // 36 3/4 − 2 × 1/16
		t.Errorf("shelf is %v in long, want 36 5/8", got.Inches())
	}
}

// What must fit an opening waits for it until the opening is measured; then
// its parts follow the rule.
func TestMeasuredOpeningIsFollowed(t *testing.T) {
	text := box("", "row \"a\" {\n height = 5\n drawer {}\n}\nrow \"b\" {}", "")
	before := part(t, build(t, text), "box.a.front")
	if before.Standing != piece.Waits || before.WaitsFor.Path != "box.a" {
		t.Errorf("the front is %s before its opening is measured", before.Standing)
	}
	after := part(t, build(t, text+"measured \"box.a\" {\n width = 28 7/16\n height = 5\n}\n"), "box.a.front")
	if after.Standing != piece.Planned {
		t.Errorf("the front is %s after its opening was measured", after.Standing)
	}
	if half := part(t, build(t, text+"measured \"box.a\" {\n width = 28 7/16\n}\n"), "box.a.front"); half.Standing != piece.Waits {
		t.Errorf("the front is %s with only the width of its opening measured", half.Standing)
	}
	// The opening came out 1/16 smaller than the 28 1/2 planned.
	if got, want := before.Length.Length()-after.Length.Length(), l(t, "1/16"); got != want {
		t.Errorf("the front followed by %v in, want 1/16", got.Inches())
	}
}

// A hung case hangs from tails on its sides; a standing one has them on top
// and bottom; the maker may say otherwise.
func TestTailsGoWhereTheLoadAsks(t *testing.T) {
	for _, c := range []struct{ name, attrs, tails string }{
		{"hung", "hung = true", "left side"},
		{"standing", "", "bottom"},
		{"standing, overruled", "corners {\n joint = \"through dovetail\"\n tails_on = \"sides\"\n}", "left side"},
	} {
		p := build(t, box(c.attrs, "", ""))
		for _, j := range p.Joints {
			if j.Name == "left side to bottom" && j.A.Name != c.tails {
				t.Errorf("%s: tails on the %s, want the %s", c.name, j.A.Name, c.tails)
			}
		}
	}
}

// Marks run through an assembly from 1, and assemblies through the letters but
// for I and O.
func TestMarks(t *testing.T) {
	p := example(t, "sideboard")
	last := p.Assemblies[len(p.Assemblies)-1]
	// case, 6 drawers, 2 doors, stand, top: eleven, so A to L without I
	if len(p.Assemblies) != 11 || last.Letter != "L" {
		t.Errorf("%d assemblies, the last is %s", len(p.Assemblies), last.Letter)
	}
	for _, q := range p.Parts {
		if p.Part(q.Mark) != q || p.Part(q.Path) != q {
			t.Errorf("%s %s is not found by its mark and path", q.Mark, q.Path)
		}
	}
}

// A panel thicker than half its frame is rabbeted to a tongue on both faces: 1/2
// in a 3/4 frame leaves the 1/4 that the groove has, 1/8 off each face.
func TestThickPanelGetsATongue(t *testing.T) {
	p := build(t, box("", "door {\n hinge = \"left\"\n thickness = 3/4\n panel {\n thickness = 1/2\n}\n}", ""))
	panel := part(t, p, "box.door.panel")
	if len(panel.Features) != 8 { // four edges, two faces
		t.Fatalf("%d rabbets, want 8", len(panel.Features))
	}
	j := panel.Features[0].Joint
	if j.Depth.Length() != l(t, "1/8") || j.Tongue.Length() != l(t, "1/4") {
		t.Errorf("rabbets %v in deep leave %v", j.Depth.Length().Inches(), j.Tongue.Length().Inches())
	}
	checkApart(t, p)
}
