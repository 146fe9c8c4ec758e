package csg

import (
	"cmp"
	"slices"

	"casewright/internal/measure"
)

// Axis is a direction of the frame: X, Y or Z.
type Axis uint8

// The three axes, right-handed.
const (
	X Axis = iota
	Y
	Z
)

// Largest is the farthest from the origin that a coordinate may lie: 68.7 m.
// Beyond it the exact arithmetic would want more bits.
const Largest measure.Length = 1 << 36

// Point2 is a place in the plane square to a prism's axis. U and V are the two
// other axes in cyclic order: (Y, Z) for X, (Z, X) for Y, (X, Y) for Z.
type Point2 struct{ U, V measure.Length }

// Tag is the caller's name for what made a face. Adjoining faces in one plane
// are one face if their tags are equal, and two if not.
type Tag int32

// Prism is an outline carried along an axis from From to To, which must be
// greater. The outline is a simple polygon of at least three corners, in
// either sense, not closed by repeating the first; corners in line are allowed
// and repeated ones dropped. Holes lie strictly inside it and apart.
type Prism struct {
	Axis     Axis
	From, To measure.Length
	Outline  []Point2
	Holes    [][]Point2
	Tag      Tag
}

// Box is the prism of a straight block between two opposite corners.
func Box(lo, hi [3]measure.Length, axis Axis, tag Tag) Prism {
	u, v := (axis+1)%3, (axis+2)%3
	return Prism{Axis: axis, From: lo[axis], To: hi[axis], Tag: tag,
		Outline: []Point2{{lo[u], lo[v]}, {hi[u], lo[v]}, {hi[u], hi[v]}, {lo[u], hi[v]}}}
}

// Bounds is the smallest block around the prism's outline between its ends; for
// a body's base it holds the whole body. The prism must have an outline and a
// real axis.
func (p Prism) Bounds() (lo, hi [3]measure.Length) {
	u, v := (p.Axis+1)%3, (p.Axis+2)%3
	c := p.Outline[0]
	lo[p.Axis], lo[u], lo[v] = p.From, c.U, c.V
	hi[p.Axis], hi[u], hi[v] = p.To, c.U, c.V
	for _, c := range p.Outline[1:] {
		lo[u], hi[u] = min(lo[u], c.U), max(hi[u], c.U)
		lo[v], hi[v] = min(lo[v], c.V), max(hi[v], c.V)
	}
	return lo, hi
}

// Body is a prism less other prisms. These may reach beyond it, overlap each
// other and share faces, edges and corners exactly; what they have in common
// is taken away once, and their order does not matter.
type Body struct {
	Base Prism
	Cuts []Prism
}

// prism is a Prism made ready: whole numbers, rings turned counter-clockwise
// outside and clockwise for holes, each wall with its plane.
type prism struct {
	axis     int
	from, to int64
	walls    []wall // ring after ring
	box      box
	tag      Tag
	base     bool
	group    int
	turned   bool         // it was placed end for end, so that its ends have swapped names
	block    bool         // the outline is a rectangle along the axes
	fromAt   int32        // planes of the two ends, numbers in the kernel's list
	toAt     int32        //
	faces    []placedFace // every face with its plane
}

// wall is one side of an outline, from corner p to corner q with the inside on
// its left; side is its number as [Origin] counts.
type wall struct {
	p, q  [2]int64
	plane int32
	side  int32
}

// placedFace is a face of a prism: its plane's number, whether the plane's
// normal points out of the prism, its number among the prism's sides, and what
// it spans.
type placedFace struct {
	plane int32
	front bool
	side  int32
	box   box
}

// box is a block along the axes, both ends included.
type box struct{ lo, hi [3]int64 }

func (b box) meet(c box) box {
	for k := range 3 {
		b.lo[k] = max(b.lo[k], c.lo[k])
		b.hi[k] = min(b.hi[k], c.hi[k])
	}
	return b
}

func (b box) join(c box) box {
	for k := range 3 {
		b.lo[k] = min(b.lo[k], c.lo[k])
		b.hi[k] = max(b.hi[k], c.hi[k])
	}
	return b
}

// flat counts the axes along which the box has no extent, and is -1 if it is
// empty along any.
func (b box) flat() int {
	n := 0
	for k := range 3 {
		switch cmp.Compare(b.lo[k], b.hi[k]) {
		case 1:
			return -1
		case 0:
			n++
		}
	}
	return n
}

func (b box) holds(c box) bool {
	for k := range 3 {
		if c.lo[k] < b.lo[k] || c.hi[k] > b.hi[k] {
			return false
		}
	}
	return true
}

// ready turns a checked prism into the form the kernel works on.
func ready(p Prism) prism {
	out := prism{axis: int(p.Axis), from: int64(p.From), to: int64(p.To), tag: p.Tag}
	u, v := (out.axis+1)%3, (out.axis+2)%3
	out.box.lo[out.axis], out.box.hi[out.axis] = out.from, out.to
	n := len(p.Outline)
	for _, h := range p.Holes {
		n += len(h)
	}
	out.walls = make([]wall, 0, n)
	side := int32(firstWall)
	for i, ring := range rings(p) {
		out.addRing(ring, i == 0, side)
		side += int32(len(ring))
	}
	w := out.walls[0]
	out.box.lo[u], out.box.hi[u] = w.p[0], w.p[0]
	out.box.lo[v], out.box.hi[v] = w.p[1], w.p[1]
	for _, w := range out.walls {
		out.box.lo[u], out.box.hi[u] = min(out.box.lo[u], w.p[0]), max(out.box.hi[u], w.p[0])
		out.box.lo[v], out.box.hi[v] = min(out.box.lo[v], w.p[1]), max(out.box.hi[v], w.p[1])
	}
	out.block = len(out.walls) == 4 && rectangle(out.walls)
	return out
}

// trim cuts off what of a cut reaches beyond its base along the axis, and if it
// is a block all round; the fewer edges lie outside, the less there is to do.
// It tells whether anything is left.
func (p *prism) trim(base box) bool {
	if p.box.meet(base).flat() != 0 {
		return false
	}
	p.from, p.to = max(p.from, base.lo[p.axis]), min(p.to, base.hi[p.axis])
	p.box.lo[p.axis], p.box.hi[p.axis] = p.from, p.to
	if !p.block {
		return true
	}
	p.box = p.box.meet(base)
	u, v := (p.axis+1)%3, (p.axis+2)%3
	p.walls = slices.Clone(p.walls)
	for i := range p.walls {
		w := &p.walls[i]
		for j, k := range [2]int{u, v} {
			w.p[j] = min(max(w.p[j], p.box.lo[k]), p.box.hi[k])
			w.q[j] = min(max(w.q[j], p.box.lo[k]), p.box.hi[k])
		}
	}
	return true
}

func rings(p Prism) [][]Point2 { return append([][]Point2{p.Outline}, p.Holes...) }

// addRing appends the walls of one ring, dropping repeated corners and turning
// it so that the prism's inside lies to the left.
func (p *prism) addRing(ring []Point2, outer bool, side int32) {
	start := len(p.walls)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if a != b {
			p.walls = append(p.walls, wall{[2]int64{int64(a.U), int64(a.V)}, [2]int64{int64(b.U), int64(b.V)}, 0, side + int32(i)})
		}
	}
	ws := p.walls[start:]
	if (doubleArea(ws).sign() > 0) != outer {
		slices.Reverse(ws)
		for i := range ws {
			ws[i].p, ws[i].q = ws[i].q, ws[i].p
		}
	}
}

// doubleArea is twice the area that walls enclose, positive if they run
// counter-clockwise.
func doubleArea(ws []wall) int128 {
	var sum int128
	for _, w := range ws {
		sum = sum.plus(mul(w.p[0], w.q[1])).minus(mul(w.p[1], w.q[0]))
	}
	return sum
}

func rectangle(ws []wall) bool {
	for i, w := range ws {
		flat := w.p[i%2] == w.q[i%2]
		if other := w.p[1-i%2] == w.q[1-i%2]; flat == other || (i > 0 && flat != (ws[0].p[0] == ws[0].q[0])) {
			return false
		}
	}
	return true
}

// compare orders prisms by all that shapes them, so that the order in which
// cuts were listed shows nowhere.
func (p *prism) compare(q *prism) int {
	if c := cmp.Or(cmp.Compare(p.group, q.group), order(q.base, p.base), cmp.Compare(p.tag, q.tag),
		cmp.Compare(p.axis, q.axis), cmp.Compare(p.from, q.from), cmp.Compare(p.to, q.to)); c != 0 {
		return c
	}
	return slices.CompareFunc(p.walls, q.walls, func(a, b wall) int {
		return cmp.Or(cmp.Compare(a.p[0], b.p[0]), cmp.Compare(a.p[1], b.p[1]), cmp.Compare(a.side, b.side))
	})
}

// order puts false before true.
func order(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}
