package solid_test

import (
	"math"
	"os"
	"slices"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid"
	"casewright/internal/testkit"
)

var commissions = []string{"hall-cabinet", "sideboard", "bookcase"}

func example(t testing.TB, name string) *piece.Piece {
	t.Helper()
	text, err := os.ReadFile("../../examples/" + name + "/commission.hcl")
	if err != nil {
		t.Fatal(err)
	}
	p, list := try(string(text))
	if list.Has(diag.Error) {
		t.Fatal(list)
	}
	return p
}

func try(text string) (*piece.Piece, diag.List) {
	spec, list := design.Read([]design.Source{{Name: "test.hcl", Text: []byte(text)}})
	p, more := piece.Build(spec)
	return p, append(list, more...)
}

func shaped(t testing.TB, p *piece.Piece) *solid.Model {
	t.Helper()
	m, list := solid.Build(p, nil)
	for _, d := range list {
		t.Errorf("%s %s: %s", d.Code, d.Where, d.Summary)
	}
	return m
}

func complain(t *testing.T, p solid.Proof) {
	t.Helper()
	for _, c := range p.Clashes {
		t.Errorf("%s and %s share %.3g mm³", c.A.Part.Path, c.B.Part.Path, float64(c.Overlap))
	}
	for _, j := range p.Loose {
		t.Errorf("%s %s does not touch", j.Kind, j.Name)
	}
	for _, s := range p.Open {
		t.Errorf("%s %s stands open", s.Joint.Kind, s.Joint.Name)
	}
}

// The three commissions have no two parts in one place and no open joint.
func TestCommissionsFit(t *testing.T) {
	for _, name := range commissions {
		m := shaped(t, example(t, name))
		meetings := m.Meetings()
		complain(t, m.Prove(meetings))
		if len(meetings) < len(m.Bodies) {
			t.Errorf("%s: only %d pairs of %d parts touch", name, len(meetings), len(m.Bodies))
		}
	}
}

// A proof that cannot fail proves nothing: a part moved by a hundredth of a
// millimetre clashes, one moved away leaves its joints open.
func TestProofCanFail(t *testing.T) {
	for _, c := range []struct {
		name, path string
		by         piece.Vec
		clash      bool
	}{
		{"divider raised", "cabinet.divider", piece.Vec{Z: measure.Millimetre}, true},
		{"top raised", "cabinet.top", piece.Vec{Z: 40 * measure.Millimetre}, false},
		{"shelf short", "cabinet.upper.letters.shelf", piece.Vec{X: measure.Millimetre / 10}, true},
		{"panel forward", "cabinet.upper.keys.door.panel.1", piece.Vec{Y: -2 * measure.Millimetre}, true},
		{"drawer side inward", "cabinet.drawers.left.side.left", piece.Vec{X: measure.Millimetre / 100}, true},
	} {
		p := example(t, "hall-cabinet")
		q := p.Part(c.path)
		q.Place.At = q.Place.At.Add(c.by)
		m := shaped(t, p)
		proof := m.Prove(m.Meetings())
		if c.clash && len(proof.Clashes) == 0 || !c.clash && len(proof.Loose) == 0 {
			t.Errorf("%s: %d clashes, %d open joints", c.name, len(proof.Clashes), len(proof.Loose))
		}
	}
}

// Joints touch over about what their faces have; runners' rear tenons are meant
// to stand open, and are the only ones that do.
func TestSeats(t *testing.T) {
	m := shaped(t, example(t, "sideboard"))
	open := 0
	for _, s := range m.Seats(m.Meetings()) {
		if s.Contact <= 0 {
			t.Errorf("%s %s has no contact", s.Joint.Kind, s.Joint.Name)
		}
		if !s.Closed {
			open++
			if !s.Meant {
				t.Errorf("%s %s stands open", s.Joint.Kind, s.Joint.Name)
			}
		}
	}
	if want := 2*5 + 2*3; open != want { // a pair of runners in each of five web frames, three pairs of kickers
		t.Errorf("%d joints stand open, want %d", open, want)
	}
	// The bottom in the left side by hand: a dado 3/16 × 1/2 along 4 1/2 touches the divider
	// on its bottom and both walls: 4 1/2 × (1/2 + 2 × 3/16) = 3.9375 square inches.
	h := shaped(t, example(t, "hall-cabinet"))
	for _, s := range h.Seats(h.Meetings()) {
		if s.Joint.Name == "divider in left side" {
			testkit.Near(t, s.Contact.SquareInches(), 4.5*(0.5+2*0.1875), 1e-9)
		}
	}
}

// A board with one dado by hand: 10 × 4 × 1 in less 4 × 1/2 × 1/4.
func TestVolumeByHand(t *testing.T) {
	p, list := try(`commission "t" {}
case "c" {
  width = 12
  height = 10
  depth = 4
  thickness = 1
  wood = "cherry"
  corners {
    joint = "dado"
  }
  back {
    style = "none"
  }
  inside {
    shelf {
      up = 3
      thickness = 1/2
      housed = 1/4
    }
  }
}
`)
	if list.Has(diag.Error) {
		t.Fatal(list)
	}
	m := shaped(t, p)
	side := m.Body(p.Part("c.side.left"))
	// Two dadoes for top and bottom, a third of the side down to a 1/16: 5/16 deep, 1 wide.
	want := 10*4*1 - 4*0.5*0.25 - 2*4*1*0.3125
	testkit.Near(t, side.Volume.CubicInches(), want, 1e-9)
	testkit.Near(t, side.Blank.CubicInches(), 40, 1e-9)
	shelf := m.Body(p.Part("c.inside.shelf"))
	if shelf == nil {
		shelf = m.Body(p.Part("c.shelf"))
	}
	testkit.Near(t, shelf.Volume.CubicInches(), 10.5*4*0.5, 1e-9)
	// Its centre: in the middle of the case across and from front to back, 1 + 3 + 1/4 in up.
	for i, in := range []float64{6, 2, 4.25} {
		testkit.Near(t, shelf.Centre[i], in*25.4, 1e-9)
	}
}

// Mirror images are mirror images, corner for corner, about the plane midway:
// all of them that lose as many pieces of wood. The hall cabinet's right side
// has a shelf's dado that its left side has not.
func TestMirrorImages(t *testing.T) {
	pairs := 0
	for _, name := range commissions {
		m := shaped(t, example(t, name))
		for _, b := range m.Bodies {
			if b.Part.Mirror == nil || b.Part.Mark > b.Part.Mirror.Mark {
				continue
			}
			o := m.Body(b.Part.Mirror)
			if len(o.Part.Features) != len(b.Part.Features) {
				continue
			}
			pairs++
			testkit.Near(t, float64(b.Volume), float64(o.Volume), 1e-9*float64(b.Volume)+1e-3)
			if b.Part.Place.L == o.Part.Place.L && !mirrored(corners(b), corners(o)) {
				t.Errorf("%s: %s and %s are no mirror images", name, b.Part.Path, o.Part.Path)
			}
		}
	}
	if pairs < 20 { // sides, stiles, drawer sides, legs, panel leaves
		t.Errorf("only %d pairs were compared", pairs)
	}
}

// corners are the vertices of a body in the piece, to a tenth of a micrometre.
func corners(b *solid.Body) [][3]float64 {
	var out [][3]float64
	for i := range b.Solid.Vertices {
		at := b.Solid.Vertices[i].Millimetres()
		out = append(out, solid.InPiece(b.Part.Place, at))
	}
	return out
}

func mirrored(a, b [][3]float64) bool {
	if len(a) != len(b) {
		return false
	}
	var lo, hi float64 = math.Inf(1), math.Inf(-1)
	for _, v := range append(slices.Clone(a), b...) {
		lo, hi = min(lo, v[0]), max(hi, v[0])
	}
	for _, v := range a {
		w := [3]float64{lo + hi - v[0], v[1], v[2]}
		if !slices.ContainsFunc(b, func(u [3]float64) bool {
			return math.Abs(u[0]-w[0]) < 2e-3 && math.Abs(u[1]-w[1]) < 2e-3 && math.Abs(u[2]-w[2]) < 2e-3
		}) {
			return false
		}
	}
	return true
}

// Faces know their joints: every joint that takes wood from a part made a face.
func TestFacesKnowTheirJoints(t *testing.T) {
	m := shaped(t, example(t, "hall-cabinet"))
	for _, b := range m.Bodies {
		made := map[*piece.Joint]bool{}
		for _, f := range b.Solid.Faces {
			made[b.JointOf(f.Origin)] = true
		}
		if !made[nil] {
			t.Errorf("%s has no face of its own", b.Part.Path)
		}
		for _, f := range b.Part.Features {
			if !made[f.Joint] {
				t.Errorf("%s: no face for %s %s", b.Part.Path, f.Joint.Kind, f.Joint.Name)
			}
		}
	}
}

// Degenerate joints are said at the text that caused them, never panic.
func TestDegenerateShapes(t *testing.T) {
	p := example(t, "hall-cabinet")
	side := p.Part("cabinet.side.left")
	side.Features[0].To = side.Features[0].From
	top := p.Part("cabinet.top")
	top.Features = append(top.Features, piece.Feature{Joint: top.Features[0].Joint, Feature: joinery.Feature{Kind: joinery.Dado, Axis: joinery.W,
		From: -measure.Inch, To: 10 * measure.Inch, Outline: []joinery.Point{{U: -measure.Inch, V: 3 * measure.Inch}, {U: 2 * measure.Inch, V: 3 * measure.Inch},
			{U: 2 * measure.Inch, V: 4 * measure.Inch}, {U: -measure.Inch, V: 4 * measure.Inch}}}})
	m, list := solid.Build(p, nil)
	var got []string
	for _, d := range list {
		got = append(got, d.Code)
		if d.Subject.IsZero() {
			t.Errorf("%s points nowhere", d.Code)
		}
	}
	testkit.Diff(t, []string{"E401", "E403"}, slices.Sorted(slices.Values(got)))
	if m.Body(side).Solid != nil {
		t.Error("a part that cannot be has a solid")
	}
	m.Prove(m.Meetings())
	m.Weigh(solid.State{})
}

// One drawer's size changed: what is not changed comes out of the cache, and
// the result is the same as from a cold start.
func TestCacheChangesNothing(t *testing.T) {
	var cache solid.Cache
	for _, name := range []string{"hall-cabinet", "sideboard", "hall-cabinet"} {
		p := example(t, name)
		warm, _ := solid.Build(p, &cache)
		cold, _ := solid.Build(p, nil)
		a, b := warm.Meetings(), cold.Meetings()
		if len(a) != len(b) {
			t.Fatalf("%d meetings warm, %d cold", len(a), len(b))
		}
		for i := range a {
			if a[i].Overlap != b[i].Overlap || a[i].Contact != b[i].Contact || a[i].A.Part.Mark != b[i].A.Part.Mark {
				t.Fatalf("meeting %d differs", i)
			}
		}
	}
}
