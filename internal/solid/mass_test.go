package solid_test

import (
	"testing"

	"casewright/internal/measure"
	"casewright/internal/solid"
	"casewright/internal/testkit"
)

// The whole weighs what its parts weigh, wherever drawers and doors stand; a
// drawer drawn out takes the centre with it by its share of the weight.
func TestWeigh(t *testing.T) {
	for _, name := range commissions {
		m := shaped(t, example(t, name))
		shut := m.Weigh(solid.State{})
		var parts measure.Mass
		for _, b := range m.Bodies {
			parts += b.Mass
		}
		testkit.Near(t, float64(shut.Whole.Mass), float64(parts), 1e-9)
		open := m.Weigh(solid.State{Drawers: 0.5, Doors: measure.Degrees(90)})
		testkit.Near(t, float64(open.Whole.Mass), float64(parts), 1e-9)
		testkit.Near(t, open.Whole.Centre[2], shut.Whole.Centre[2], 1e-9) // nothing is lifted
		if open.Whole.Centre[1] >= shut.Whole.Centre[1] {
			t.Errorf("%s: opening it does not bring its weight forward", name)
		}
	}
}

// A symmetric piece has its weight in the middle: the bookcase is 38 1/2 wide
// and its two doors balance each other.
func TestCentreOfASymmetricPiece(t *testing.T) {
	m := shaped(t, example(t, "bookcase"))
	w := m.Weigh(solid.State{})
	testkit.Near(t, w.Whole.Centre[0], 38.5/2*25.4, 0.5) // back boards share out unevenly by a mark of the rule
}

// The bookcase's upper case by its text: 34 lb a foot on four shelves and the
// floor, 36 3/4 in each: 34 × 36.75/12 × 5 = 520.6 lb.
func TestStatedContents(t *testing.T) {
	m := shaped(t, example(t, "bookcase"))
	contents := m.ShelfContents()
	var upper measure.Mass
	for _, c := range contents {
		if c.Opening == "upper" {
			upper = c.Mass
		}
	}
	testkit.Near(t, upper.Pounds(), 34*36.75/12*5, 1e-6)
	empty, full := m.Weigh(solid.State{}), m.Weigh(solid.State{Contents: contents})
	if full.Whole.Mass <= empty.Whole.Mass+upper {
		t.Error("the contents are not weighed")
	}
}

// A door opened square hangs beside its case: its middle is half its width
// before its hinge.
func TestDoorSwings(t *testing.T) {
	p := example(t, "hall-cabinet")
	m := shaped(t, p)
	a := p.Part("B1").Assembly
	i := 1 // B
	shut, open := m.Weigh(solid.State{}).Assemblies[i], m.Weigh(solid.State{Doors: measure.Degrees(90)}).Assemblies[i]
	hinge := [2]float64{a.Corner.X.Millimetres(), a.Corner.Y.Millimetres()}
	testkit.Near(t, hinge[1]-open.Centre[1], shut.Centre[0]-hinge[0], 1e-9)
	testkit.Near(t, open.Centre[0]-hinge[0], shut.Centre[1]-hinge[1], 1e-9)
}
