package solid

import (
	"math"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid/csg"
	"casewright/internal/solid/view"
)

// Pose is how the parts of a piece are shown. The zero Pose is the piece as it
// stands, shut.
type Pose struct {
	Drawers float64        // how far every drawer is out, as a share of its depth
	Doors   measure.Angle  // how far every door is open
	Apart   measure.Length // drawn apart: how far neighbours are moved from each other
}

// BowTag marks the facets of a bowed front in a view; other faces have the tag
// of what made them, see [Body.JointOf].
const BowTag = math.MaxInt32

// Show gives every part as a body of a picture, in the piece's frame; its ID is
// its place in Bodies. Parts without a shape are left out.
func (m *Model) Show(pose Pose) []view.Body {
	var out []view.Body
	for i, b := range m.Bodies {
		if b.Solid == nil {
			continue
		}
		body := b.inView(i, func(at [3]float64) view.Vec3 { return m.posed(b, at, pose) })
		out = append(out, body)
	}
	return out
}

// Lying is one part in its own frame as seen at the bench: length to the right,
// width to the back, thickness up.
func (b *Body) Lying() view.Body {
	return b.inView(0, func(at [3]float64) view.Vec3 { return view.Vec3{X: at[0], Y: at[1], Z: at[2]} })
}

// inView turns a solid into faces somewhere else.
func (b *Body) inView(id int, place func([3]float64) view.Vec3) view.Body {
	at := make([]view.Vec3, len(b.Solid.Vertices))
	for i := range at {
		at[i] = place(b.Solid.Vertices[i].Millimetres())
	}
	ring := func(loop []int32) []view.Vec3 {
		out := make([]view.Vec3, len(loop))
		for i, v := range loop {
			out[i] = at[v]
		}
		return out
	}
	out := view.Body{ID: id, Faces: make([]view.Face, len(b.Solid.Faces))}
	for i := range b.Solid.Faces {
		f := &b.Solid.Faces[i]
		face := view.Face{Outer: ring(f.Outer), Tag: tagOf(b, f), Curved: b.curved(f)}
		for _, h := range f.Holes {
			face.Holes = append(face.Holes, ring(h))
		}
		out.Faces[i] = face
	}
	return out
}

func tagOf(b *Body, f *csg.Face) int {
	if b.curved(f) && b.JointOf(f.Origin) == nil {
		return BowTag
	}
	return int(f.Origin.Tag)
}

// posed is where a place of a part's own frame is in the pose.
func (m *Model) posed(b *Body, at [3]float64, pose Pose) view.Vec3 {
	v := InPiece(b.Part.Place, at)
	a := b.Part.Assembly
	v = moved(a, v, State{Drawers: pose.Drawers, Doors: pose.Doors})
	if pose.Apart != 0 {
		d := m.apart(b.Part, pose.Apart.Millimetres())
		for i := range v {
			v[i] += d[i]
		}
	}
	return view.Vec3{X: v[0], Y: v[1], Z: v[2]}
}

// apart is where a part goes in an exploded view: drawers and doors forward,
// tops up, stands down, and within an assembly every part along its own
// thickness, away from the middle.
func (m *Model) apart(p *piece.Part, by float64) [3]float64 {
	var d [3]float64
	if o := p.Assembly.Opening; o != nil { // fronts side by side make room for each other
		off := middleOfAssembly(p.Assembly)[0] - middleOfAssembly(o.Case)[0]
		d[0] += 2 * by * off / (1 + o.Case.Size[0].Length().Millimetres()/4)
	}
	switch p.Assembly.Kind {
	case piece.DrawerAssembly:
		d[1] -= p.Assembly.Size[2].Length().Millimetres() + 2*by
		by *= 0.6 // small parts need not go so far
	case piece.DoorAssembly:
		d[1] -= 3 * by
		by *= 0.6
	case piece.SlabAssembly:
		d[2] += 2 * by
		if p.Place.At.Z < 0 {
			d[2] -= 4 * by
		}
	case piece.StandAssembly:
		d[2] -= 2 * by
	}
	axis, _ := axisOf(p.Place.T)
	if p.Assembly.Kind == piece.StandAssembly && p.Length == p.Assembly.Size[1] {
		return d // a leg: it stays with its stand
	}
	if off := middleOf(p)[axis] - middleOfAssembly(p.Assembly)[axis]; math.Abs(off) > 1 {
		d[axis] += math.Copysign(by, off)
	}
	return d
}

func middleOf(p *piece.Part) [3]float64 {
	lo, hi := p.Corners()
	return [3]float64{(lo.X + hi.X).Millimetres() / 2, (lo.Y + hi.Y).Millimetres() / 2, (lo.Z + hi.Z).Millimetres() / 2}
}

func middleOfAssembly(a *piece.Assembly) [3]float64 {
	lo, hi := a.Parts[0].Corners()
	for _, p := range a.Parts[1:] {
		l, h := p.Corners()
		lo = piece.Vec{X: min(lo.X, l.X), Y: min(lo.Y, l.Y), Z: min(lo.Z, l.Z)}
		hi = piece.Vec{X: max(hi.X, h.X), Y: max(hi.Y, h.Y), Z: max(hi.Z, h.Z)}
	}
	return [3]float64{(lo.X + hi.X).Millimetres() / 2, (lo.Y + hi.Y).Millimetres() / 2, (lo.Z + hi.Z).Millimetres() / 2}
}

// Grain is the direction of the part's grain in the piece, of length one.
func (b *Body) Grain() view.Vec3 {
	axis, sign := axisOf(b.Part.Place.L)
	var v [3]float64
	v[axis] = sign
	return view.Vec3{X: v[0], Y: v[1], Z: v[2]}
}
