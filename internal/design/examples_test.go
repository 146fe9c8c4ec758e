package design

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// example reads one of the three commissions; its text is the reference for
// every value the tests below expect.
func example(t testing.TB, name string) Source {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", name, "commission.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	return Source{Name: "commission.hcl", Text: text}
}

func mustRead(t testing.TB, sources ...Source) *Spec {
	t.Helper()
	spec, l := Read(sources)
	for _, d := range l {
		t.Errorf("unexpected: %s", oneLine(d))
	}
	return spec
}

func oneLine(d diag.Diagnostic) string {
	return fmt.Sprintf("%s %s at %d:%d–%d:%d: %s", d.Severity, d.Code, d.Subject.Start.Line, d.Subject.Start.Column,
		d.Subject.End.Line, d.Subject.End.Column, d.Summary)
}

func wantSize(t *testing.T, what string, s why.Size, n, d int64) {
	t.Helper()
	want := measure.Inch * measure.Length(n) / measure.Length(d)
	if s.Length() != want {
		t.Errorf("%s is %d nm, want %d (%d/%d in)", what, s.Length(), want, n, d)
	}
}

func TestHallCabinet(t *testing.T) {
	spec := mustRead(t, example(t, "hall-cabinet"))
	c := spec.Cases[0]
	wantSize(t, "width", c.Width, 41, 2)
	wantSize(t, "height", c.Height, 107, 4)
	wantSize(t, "depth", c.Depth, 43, 8)
	wantSize(t, "back", c.Back.Thickness, 5, 16) // 7/8 less 9/16
	if got := c.Back.Thickness.Sum(inches); got != "7/8 − 9/16" {
		t.Errorf("the back's thickness is explained as %q", got)
	}
	if !c.Hung.Value || c.Corners.Slope != (measure.Slope{Rise: 1, Run: 8}) || c.Cleat.Bevel != measure.Degrees(45) {
		t.Errorf("hung %v, slope %v, bevel %v", c.Hung.Value, c.Corners.Slope, c.Cleat.Bevel)
	}
	upper, drawers := c.Inside.Rows[0], c.Inside.Rows[1]
	wantSize(t, "partition", upper.Space.Between[0].Thickness, 1, 2)
	wantSize(t, "housing", upper.Space.Between[0].Housed, 3, 16)
	wantSize(t, "letters", upper.Space.Columns[1].Size, 13, 2)
	wantSize(t, "shelf up", upper.Space.Columns[1].Space.Fill.Fixed[0].Up, 45, 4)
	wantSize(t, "drawer row", drawers.Size, 13, 4)
	if k := c.Inside.Between[0].Kind; k != Divider {
		t.Errorf("between the rows stands a %s", k)
	}
	d := drawers.Space.Columns[1].Space.Fill.Drawer
	wantSize(t, "drawer side, from the block drawers", d.Sides.Thickness, 5, 16)
	if d.Sides.Wood.Value != "ash" || d.Pull.Value != "drawer pull" {
		t.Errorf("drawer of %q with %q", d.Sides.Wood.Value, d.Pull.Value)
	}
	if door := upper.Space.Columns[0].Space.Fill.Door; door.Hinge.Value != "left" || door.Panel.Leaves.Value != 2 {
		t.Errorf("door %+v", door)
	}
	if spec.Commission.Budget != 500_000 || spec.Season.Usual || spec.Shop.Humidity != 38 {
		t.Errorf("budget %v, season usual %v, shop %v", spec.Commission.Budget, spec.Season.Usual, spec.Shop.Humidity)
	}
	wantSize(t, "second stud", spec.Site.Studs[1], 113, 4)
	wantSize(t, "ledge", spec.Slabs[0].Depth, 43, 8)
}

func TestSideboard(t *testing.T) {
	spec := mustRead(t, example(t, "sideboard"))
	c := spec.Cases[0]
	wantSize(t, "width", c.Width, 57, 1)
	wantSize(t, "height", c.Height, 229, 8)
	middle := c.Inside.Columns[1]
	if middle.Size.Given() {
		t.Error("the middle bay is what the others leave, and has a size")
	}
	bank := middle.Space.Rows[1].Space
	if len(bank.Rows) != 3 || len(bank.Between) != 2 || bank.Rows[2].Name != "3" {
		t.Fatalf("bank of %d rows, %d between", len(bank.Rows), len(bank.Between))
	}
	if bank.Rows[0].Step.Given() {
		t.Error("the first drawer of a bank has nothing above it to be higher than")
	}
	wantSize(t, "step", bank.Rows[1].Step, 5, 8)
	wantSize(t, "rail in the bank", bank.Between[1].Thickness, 3, 4)
	wantSize(t, "front of a drawer in the bank", bank.Rows[2].Space.Fill.Drawer.Front.Thickness, 7, 8)
	wantSize(t, "stile, from the block doors", c.Inside.Columns[0].Space.Rows[1].Space.Fill.Door.Stile, 9, 4)
	wantSize(t, "chord", spec.Curves[0].Chord, 57, 1)
	if m := spec.Matches[0].Parts[0].Value; m != "carcase.*.top.front" {
		t.Errorf("first part of the run is %q", m)
	}
}

func TestBookcase(t *testing.T) {
	spec := mustRead(t, example(t, "bookcase"))
	if len(spec.Cases) != 2 || spec.Cases[1].On.Value != "base top" {
		t.Fatalf("cases: %d", len(spec.Cases))
	}
	n := spec.Site.Niche
	if n.Widths[1].Is.Length() != 1004*measure.Millimetre || n.Ceiling[1].Length() != 2381*measure.Millimetre || n.FloorFall.Value != 9 {
		t.Errorf("niche %v %v %v", n.Widths, n.Ceiling, n.FloorFall)
	}
	if n.Widths[0].Up.Length() != 0 || !n.Widths[0].Up.Given() {
		t.Error("a niche's first width is taken at the floor: 0, and given")
	}
	doors := spec.Cases[0].Inside.Rows[1].Space.Fill
	if !doors.Door.Pair.Value || doors.Shelves.Count.Value != 1 || !doors.Shelves.Adjustable.Value {
		t.Errorf("behind the doors: %+v", doors)
	}
}

func inches(l measure.Length) string { return measure.Style{}.Format(l) }
