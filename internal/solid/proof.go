package solid

import (
	"cmp"
	"fmt"
	"slices"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid/csg"
)

// Meeting is how two parts lie to each other.
type Meeting struct {
	A, B    *Body
	Overlap measure.Volume // wood that both would fill
	Contact measure.Area   // where they touch face to face
	Touches []csg.Touch    // Contact by pairs of faces, normals in A's frame
}

// tolerable is how much of the smaller part two parts may share: slopes and
// curves round to whole nanometres.
const tolerable = 1e-6

// Clashes reports whether the two parts cannot both be in their places.
func (t Meeting) Clashes() bool {
	return float64(t.Overlap) > tolerable*float64(min(t.A.Volume, t.B.Volume))
}

// Meetings finds every pair of parts that touch or overlap. Pairs are found by
// sweeping along the case, so that their number and not its square counts.
func (m *Model) Meetings() []Meeting {
	boxes := m.boxes()
	order := make([]int, 0, len(boxes))
	for i, b := range m.Bodies {
		if b.Solid != nil {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(boxes[i].lo.X, boxes[j].lo.X) })
	var out []Meeting
	var open []int
	for _, i := range order {
		open = slices.DeleteFunc(open, func(j int) bool { return boxes[j].hi.X < boxes[i].lo.X })
		for _, j := range open {
			if boxes[i].meets(boxes[j]) {
				out = m.meet(out, min(i, j), max(i, j))
			}
		}
		open = append(open, i)
	}
	slices.SortFunc(out, func(s, t Meeting) int {
		return cmp.Or(cmp.Compare(s.A.index, t.A.index), cmp.Compare(s.B.index, t.B.index))
	})
	return out
}

type extent struct{ lo, hi piece.Vec }

func (e extent) meets(f extent) bool {
	return e.lo.X <= f.hi.X && f.lo.X <= e.hi.X && e.lo.Y <= f.hi.Y && f.lo.Y <= e.hi.Y && e.lo.Z <= f.hi.Z && f.lo.Z <= e.hi.Z
}

func (m *Model) boxes() []extent {
	out := make([]extent, len(m.Bodies))
	for i, b := range m.Bodies {
		out[i].lo, out[i].hi = b.Part.Corners()
	}
	return out
}

func (m *Model) meet(out []Meeting, i, j int) []Meeting {
	a, b := m.Bodies[i], m.Bodies[j]
	fit, err := m.cache.fit(a, b)
	if err != nil || (fit.Overlap == 0 && fit.Contact == 0) {
		return out // a shape that cannot be was reported when it was built
	}
	return append(out, Meeting{A: a, B: b, Overlap: fit.Overlap, Contact: fit.Contact, Touches: fit.Touches})
}

func (c *Cache) fit(a, b *Body) (csg.Fit, error) {
	at := relative(a.Part.Place, b.Part.Place)
	k := a.key + "|" + b.key + "|" + fmt.Sprint(at)
	if f, ok := c.fits[k]; ok {
		return f, nil
	}
	f, err := csg.FitOf(a.Shape, csg.Placed{Body: b.Shape, At: at})
	if err == nil {
		c.fits[k] = f
	}
	return f, err
}

// relative is where b's frame lies in a's.
func relative(a, b piece.Place) csg.Placement {
	var out csg.Placement
	o := a.Local(b.Point(0, 0, 0))
	for k, d := range [3]piece.Dir{b.L, b.W, b.T} {
		for i, e := range [3]piece.Dir{a.L, a.W, a.T} {
			if d == e || d == -e {
				out.To[k], out.Flip[k] = csg.Axis(i), d == -e
			}
		}
	}
	out.Move = o
	return out
}

// Proof is what stands against the parts of a piece being where they are. The
// zero Proof is a piece that fits.
type Proof struct {
	Clashes []Meeting      // pairs that would fill one place
	Loose   []*piece.Joint // joints whose two parts do not touch
	Open    []Seat         // joints that stand open and are not meant to
}

// Prove holds every pair of parts and every joint against the exact shapes.
func (m *Model) Prove(meetings []Meeting) Proof {
	var out Proof
	touching := map[[2]*piece.Part]bool{}
	for _, t := range meetings {
		if t.Clashes() {
			out.Clashes = append(out.Clashes, t)
		}
		if t.Contact > 0 {
			touching[[2]*piece.Part{t.A.Part, t.B.Part}] = true
			touching[[2]*piece.Part{t.B.Part, t.A.Part}] = true
		}
	}
	for _, j := range m.Piece.Joints {
		if j.A != nil && j.B != nil && m.shaped(j) && !touching[[2]*piece.Part{j.A, j.B}] {
			out.Loose = append(out.Loose, j)
		}
	}
	for _, s := range m.Seats(meetings) {
		if !s.Closed && !s.Meant {
			out.Open = append(out.Open, s)
		}
	}
	return out
}

func (m *Model) shaped(j *piece.Joint) bool {
	a, b := m.Body(j.A), m.Body(j.B)
	return a != nil && b != nil && a.Solid != nil && b.Solid != nil
}

// Body is the solid of a part; nil for a part of another piece.
func (m *Model) Body(p *piece.Part) *Body { return m.byPart[p] }
