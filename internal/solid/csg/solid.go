package csg

// Solid is a bounded body by its plane faces. Faces meet in whole edges: each
// edge from p to q of one face is an edge from q to p of another. What was
// built is read only.
type Solid struct {
	Vertices []Vertex // by x, then y, then z
	Faces    []Face

	pieces int
	plain  bool // two faces at every edge, one fan of faces round every vertex
}

// Pieces is how many bodies that touch in edges and corners at most the solid
// consists of. A cavity is no piece.
func (s *Solid) Pieces() int { return s.pieces }

// Plain tells whether the skin nowhere touches itself: two faces at every edge
// and one fan of faces round every vertex. Readers of solid models want that.
func (s *Solid) Plain() bool { return s.plain }

// Face is a connected flat face, seen from outside: Outer counter-clockwise,
// Holes clockwise, as numbers of vertices. Loops of one face may touch in a
// vertex; no loop touches itself. Corners of 180° stand where another face has
// a corner.
type Face struct {
	Normal  [3]int64 // outward, with no common divisor; not of unit length
	Outer   []int32
	Holes   [][]int32
	Origin  Origin // what made it
	Against Origin // of a contact, what made the other body's face

	plane   plane
	back    bool // Normal is opposite to the plane's own
	contact bool // not of a solid, but where two touch
}

// loops lists the outer loop and the holes.
func (f *Face) loops() [][]int32 { return append([][]int32{f.Outer}, f.Holes...) }

// Build makes the solid of a body. The error is always Faults; with FallsApart
// the solid is returned as well, with any other none is.
func Build(b Body) (*Solid, error) {
	if faults := b.check(); len(faults) > 0 {
		return nil, faults
	}
	k := newKernel(skin, [][]prism{b.ready()})
	k.run()
	if len(k.faces) == 0 {
		return nil, Faults{{Nothing, Base, b.Base.Tag}}
	}
	s := k.solid()
	s.join()
	if s.pieces > 1 {
		return s, Faults{{FallsApart, Base, b.Base.Tag}}
	}
	return s, nil
}

// ready lists the body's prisms in the kernel's form, base first.
func (b Body) ready() []prism {
	out := make([]prism, 0, len(b.Cuts)+1)
	out = append(out, ready(b.Base))
	for i := range b.Cuts {
		out = append(out, ready(b.Cuts[i]))
	}
	return out
}
