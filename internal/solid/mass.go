package solid

import (
	"math"

	"casewright/internal/design"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

// Load is a mass at a place: its centre of gravity in the piece's frame, mm.
type Load struct {
	Mass   measure.Mass
	Centre [3]float64
}

// And is both loads as one.
func (l Load) And(m Load) Load {
	sum := l.Mass + m.Mass
	if sum == 0 {
		return Load{}
	}
	out := Load{Mass: sum}
	for i := range out.Centre {
		out.Centre[i] = (l.Centre[i]*float64(l.Mass) + m.Centre[i]*float64(m.Mass)) / float64(sum)
	}
	return out
}

// Content is what somebody puts into an opening: spread evenly over its floor,
// half its height up, unless it is a drawer's, which moves with the drawer.
type Content struct {
	Opening string // path
	Mass    measure.Mass
}

// State is how a piece stands when it is weighed. The zero State is empty and
// shut.
type State struct {
	Drawers  float64       // how far every drawer is out, as a share of its depth
	Doors    measure.Angle // how far every door is open
	Contents []Content
}

// Weights are the loads of a piece in a state.
type Weights struct {
	Assemblies []Load // in the order of the piece's assemblies, wood and contents
	Whole      Load
}

// Weigh adds up the wood, and the contents of a state. Hardware is left out:
// its weight is not in the text.
func (m *Model) Weigh(s State) Weights {
	var w Weights
	for _, a := range m.Piece.Assemblies {
		load := m.assembly(a)
		for _, c := range s.Contents {
			if o := a.Opening; o != nil && o.Path == c.Opening && a.Kind == piece.DrawerAssembly {
				load = load.And(Load{c.Mass, middle(o)})
			}
		}
		load.Centre = moved(a, load.Centre, s)
		w.Assemblies = append(w.Assemblies, load)
		w.Whole = w.Whole.And(load)
	}
	for _, o := range m.Piece.Openings {
		for _, c := range s.Contents {
			if o.Path == c.Opening && o.Fill.Drawer == nil {
				w.Whole = w.Whole.And(Load{c.Mass, middle(o)})
			}
		}
	}
	return w
}

// assembly is the wood of an assembly where it stands when shut.
func (m *Model) assembly(a *piece.Assembly) Load {
	var l Load
	for _, p := range a.Parts {
		if b := m.Body(p); b.Solid != nil {
			l = l.And(Load{b.Mass, b.Centre})
		}
	}
	return l
}

func middle(o *piece.Opening) [3]float64 {
	return [3]float64{
		(o.Corner.X + o.Width.Length()/2).Millimetres(),
		(o.Corner.Y + o.Depth.Length()/2).Millimetres(),
		(o.Corner.Z + o.Height.Length()/2).Millimetres(),
	}
}

// moved is where a place of a drawer or door goes when it is opened.
func moved(a *piece.Assembly, at [3]float64, s State) [3]float64 {
	switch a.Kind {
	case piece.DrawerAssembly:
		at[1] -= s.Drawers * a.Size[2].Length().Millimetres()
	case piece.DoorAssembly:
		at = swung(a, at, s.Doors)
	}
	return at
}

// swung turns a door about the edge it hangs on, at its face: inset doors turn
// about the corner of the frame that stays in the opening.
func swung(a *piece.Assembly, at [3]float64, by measure.Angle) [3]float64 {
	x, y := a.Corner.X.Millimetres(), a.Corner.Y.Millimetres()
	turn := -float64(by) // a door hung on the left comes forward to the left
	if hungRight(a) {
		x += a.Size[0].Length().Millimetres()
		turn = -turn
	}
	sin, cos := math.Sincos(turn)
	dx, dy := at[0]-x, at[1]-y
	return [3]float64{x + dx*cos - dy*sin, y + dx*sin + dy*cos, at[2]}
}

func hungRight(a *piece.Assembly) bool {
	d := a.Opening.Fill.Door
	if d.Pair.Value {
		return a.Corner.X > a.Opening.Corner.X+a.Opening.Width.Length()/4
	}
	return d.Hinge.Value == "right"
}

// ShelfContents is what the text says its shelves carry, for State: load times
// length for every shelf of an opening, as one content of that opening.
func (m *Model) ShelfContents() []Content {
	var out []Content
	for _, o := range m.Piece.Openings {
		s := o.Fill.Shelves
		if s == nil || !s.Load.Set {
			continue
		}
		out = append(out, Content{o.Path, shelfMass(s, o, m.Piece.Spec.Commission.Unit)})
	}
	return out
}

func shelfMass(s *design.Shelves, o *piece.Opening, unit measure.Unit) measure.Mass {
	shelves := float64(max(1, int(s.Count.Value))) + 1 // the floor of the opening carries too
	if unit == measure.Inches {
		return measure.Pounds(s.Load.Value * o.Width.Length().Inches() / 12 * shelves)
	}
	return measure.Mass(s.Load.Value * o.Width.Length().Millimetres() / 1000 * shelves)
}
