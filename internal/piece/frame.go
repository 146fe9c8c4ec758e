package piece

import (
	"casewright/internal/joinery"
	"casewright/internal/measure"
)

// block is a square-edged stretch of a part's own frame, by axis L, W, T.
type block struct{ lo, hi [3]measure.Length }

// whole is all of the part.
func (p *Part) whole() block {
	b := p.Box()
	return block{hi: [3]measure.Length{b.L, b.W, b.T}}
}

// tip is the last stretch of the part at one end.
func (p *Part) tip(end joinery.End, deep measure.Length) block {
	b := p.whole()
	if end == joinery.Near {
		b.hi[joinery.L] = deep
	} else {
		b.lo[joinery.L] = b.hi[joinery.L] - deep
	}
	return b
}

// dir is where an axis of the placed part points.
func (p Place) dir(a joinery.Axis) Dir {
	switch a {
	case joinery.L:
		return p.L
	case joinery.W:
		return p.W
	}
	return p.T
}

// axis is which of the part's own axes lies along the direction, and whether
// it points the other way.
func (p Place) axis(d Dir) (a joinery.Axis, against bool) {
	for _, a := range [...]joinery.Axis{joinery.L, joinery.W, joinery.T} {
		if q := p.dir(a); q == d || q == -d {
			return a, q == -d
		}
	}
	panic("piece: a place without three directions")
}

// Local is where a point of the piece lies in the part's own frame.
func (p Place) Local(v Vec) [3]measure.Length {
	v = v.Sub(p.At)
	var out [3]measure.Length
	for _, a := range [...]joinery.Axis{joinery.L, joinery.W, joinery.T} {
		switch d := p.dir(a); d {
		case Right, Left:
			out[a] = v.X * measure.Length(d)
		case Back, Front:
			out[a] = v.Y * measure.Length(d/2)
		case Up, Down:
			out[a] = v.Z * measure.Length(d/3)
		}
	}
	return out
}

// Corners are two opposite corners of the part in the piece's frame, lowest
// first.
func (p *Part) Corners() (lo, hi Vec) { return p.Place.corners(p.whole()) }

func (p Place) corners(b block) (lo, hi Vec) {
	u, v := p.Point(b.lo[0], b.lo[1], b.lo[2]), p.Point(b.hi[0], b.hi[1], b.hi[2])
	return Vec{min(u.X, v.X), min(u.Y, v.Y), min(u.Z, v.Z)}, Vec{max(u.X, v.X), max(u.Y, v.Y), max(u.Z, v.Z)}
}

// in tells a stretch of one part in another part's frame.
func (p *Part) in(host *Part, b block) block {
	lo, hi := p.Place.corners(b)
	u, v := host.Place.Local(lo), host.Place.Local(hi)
	var out block
	for a := range u {
		out.lo[a], out.hi[a] = min(u[a], v[a]), max(u[a], v[a])
	}
	return out
}

// facing is the face of the host that looks towards the direction.
func (p *Part) facing(d Dir) joinery.Face {
	a, against := p.Place.axis(d)
	f := joinery.Face(2 * a)
	if !against {
		f++
	}
	return f
}

// away is the direction in which the part runs away from the joint at its end.
func (p *Part) away(end joinery.End) Dir {
	if end == joinery.Near {
		return p.Place.L
	}
	return -p.Place.L
}
