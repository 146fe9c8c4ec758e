package csg

// Origin names what made a face.
type Origin struct {
	Tag  Tag  // of the prism
	Base bool // the base prism made it, not a cut
	// Side is FromEnd, ToEnd, or 2 + i for the wall from corner i of the
	// outline to the next; the corners of the holes count on. If several walls
	// or prisms made the face, it is the lowest of the first prism.
	Side int
}

// The numbers of a prism's sides.
const (
	FromEnd   = 0
	ToEnd     = 1
	firstWall = 2
)

// kind is what a cell of an arrangement is to the result.
type kind uint8

const (
	nothing   kind = iota
	frontFace      // the solid lies below, the face looks along the plane's normal
	backFace       // the reverse
	frontMeet      // the first body lies below and the second above
	backMeet       // the reverse
	cutFace        // a section
)

// class is what a cell is, and of which faces; number 0 is nothing.
type class struct {
	kind   kind
	origin [2]Origin // of a meeting, both bodies' faces
	rank   [2]int32  // of the prisms named
}

// same tells whether two cells belong to one face if they adjoin.
func (c *class) same(d *class) bool {
	return c.kind == d.kind && c.origin[0].Tag == d.origin[0].Tag && c.origin[1].Tag == d.origin[1].Tag &&
		c.origin[0].Base == d.origin[0].Base && c.origin[1].Base == d.origin[1].Base
}

// classify reads a state: one bit per prism and side of the plane.
func (a *arrangement) classify(state []uint64) int32 {
	low, high := state[:a.words], state[a.words:]
	var in [2][2]bool // by group, then below and above
	for g := range a.k.groups {
		in[g] = [2]bool{a.groups[g].holds(low), a.groups[g].holds(high)}
	}
	if a.k.groups == 1 {
		in[1] = [2]bool{true, true}
	}
	switch a.k.mode {
	case under:
		return a.cutClass(in[0][0])
	case over:
		return a.cutClass(in[0][1])
	}
	both := [2]bool{in[0][0] && in[1][0], in[0][1] && in[1][1]}
	switch {
	case both[0] != both[1]:
		g := 0
		if in[0][0] == in[0][1] {
			g = 1
		}
		c := class{kind: backFace}
		if both[0] {
			c.kind = frontFace
		}
		c.origin[0], c.rank[0] = a.origin(g, low, high, both[0])
		return a.intern(c)
	case a.k.mode == fitting && in[0][0] != in[0][1] && in[1][0] == in[0][1] && in[1][1] == in[0][0]:
		c := class{kind: backMeet}
		if in[0][0] {
			c.kind = frontMeet
		}
		c.origin[0], c.rank[0] = a.origin(0, low, high, in[0][0])
		c.origin[1], c.rank[1] = a.origin(1, low, high, in[1][0])
		return a.intern(c)
	}
	return 0
}

func (m *groupMask) holds(state []uint64) bool {
	if state[m.base/64]>>(m.base%64)&1 == 0 {
		return false
	}
	for i, cuts := range m.cuts {
		if state[i]&cuts != 0 {
			return false
		}
	}
	return true
}

func (a *arrangement) cutClass(in bool) int32 {
	if !in {
		return 0
	}
	return a.intern(class{kind: cutFace})
}

// origin tells which prism makes group g end at the plane; lower says that the
// group lies below. A cell has a state on each side; the base made the face if
// it ends there itself, else the first cut that begins there.
func (a *arrangement) origin(g int, low, high []uint64, lower bool) (Origin, int32) {
	m := &a.groups[g]
	inside, outside := low, high
	if !lower {
		inside, outside = high, low
	}
	n := int32(m.base)
	if outside[n/64]>>(n%64)&1 != 0 {
		n = firstBit(inside, outside, m.cuts)
	}
	l := &a.prisms[n]
	p := &a.k.prisms[l.prism]
	side, other := l.front, l.back // the base's, where it lies below the plane
	if lower != p.base {
		side, other = other, side
	}
	if side < 0 { // of a ring that goes through one of its corners twice, lobes may run either way round
		side = other
	}
	return Origin{p.tag, p.base, int(side)}, l.prism
}

func firstBit(inside, outside, cuts []uint64) int32 {
	for i := range cuts {
		if w := outside[i] &^ inside[i] & cuts[i]; w != 0 {
			n := int32(64 * i)
			for ; w&1 == 0; w >>= 1 {
				n++
			}
			return n
		}
	}
	panic("csg: a body ends where none of its prisms does")
}

// intern numbers the class. Of two prisms with one tag the first one names the side.
func (a *arrangement) intern(c class) int32 {
	for i := 1; i < len(a.classes); i++ {
		d := &a.classes[i]
		if !d.same(&c) {
			continue
		}
		for j := range c.rank {
			if c.rank[j] < d.rank[j] || c.rank[j] == d.rank[j] && c.origin[j].Side < d.origin[j].Side {
				d.rank[j], d.origin[j] = c.rank[j], c.origin[j]
			}
		}
		return int32(i)
	}
	a.classes = append(a.classes, c)
	return int32(len(a.classes) - 1)
}
