package solid

import (
	"strings"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid/csg"
)

// Seat is how one joint sits.
type Seat struct {
	Joint   *piece.Joint
	Contact measure.Area // where the faces that the joint made touch the other part
	Meant   bool         // it is meant to stand open, to let the wood move
	Closed  bool         // pushed home it would run into the other part at once
}

// open is how far a joint may stand open before it counts as a gap: less than
// anybody sees, more than facets and whole nanometres leave.
const open = measure.Millimetre / 20

// Seats tells of every joint that one part is pushed into another by: how much
// of its faces touch, and whether it closes. Joints along an edge (grooves,
// rabbets, panels) have no end to push and are left to Prove.
func (m *Model) Seats(meetings []Meeting) []Seat {
	area := map[*piece.Joint]measure.Area{}
	for _, t := range meetings {
		for _, touch := range t.Touches {
			j, k := t.A.JointOf(touch.A), t.B.JointOf(touch.B)
			if j != nil {
				area[j] += touch.Area
			}
			if k != nil && k != j {
				area[k] += touch.Area
			}
		}
	}
	var out []Seat
	for _, j := range m.Piece.Joints {
		mover, fixed, end, ok := pushed(j)
		if !ok || !m.shaped(j) {
			continue
		}
		out = append(out, Seat{Joint: j, Contact: area[j], Meant: strings.HasPrefix(j.Glued, "loose") || strings.HasPrefix(j.Glued, "dry"),
			Closed: m.closes(m.Body(mover), m.Body(fixed), end)})
	}
	return out
}

// pushed says which part is pushed home, into which, with which of its ends.
func pushed(j *piece.Joint) (mover, fixed *piece.Part, end joinery.End, ok bool) {
	switch {
	case j.A == nil || j.B == nil:
		return nil, nil, 0, false
	case j.Dovetail != nil:
		return j.A, j.B, j.EndA, true
	case j.Kind == "dado" || j.Kind == "rabbet" || strings.Contains(j.Kind, "tenon"):
		return j.B, j.A, j.EndB, true
	}
	return nil, nil, 0, false
}

// closes pushes a part a hair further home and sees whether it hits wood.
func (m *Model) closes(mover, fixed *Body, end joinery.End) bool {
	place := mover.Part.Place
	home := -place.L // the near end points against the length
	if end == joinery.Far {
		home = place.L
	}
	place.At = place.At.Add(home.Times(open))
	fit, err := csg.FitOf(fixed.Shape, csg.Placed{Body: mover.Shape, At: relative(fixed.Part.Place, place)})
	return err == nil && fit.Overlap > 0
}
