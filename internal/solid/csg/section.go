package csg

import (
	"cmp"
	"slices"
)

// Sections of prisms by a plane, as edges of an even-odd region. Where a prism
// has a face in the plane, its sections just below and just above differ;
// everything is done by that limit, so that coincident faces need no case of
// their own.

// Which side of the plane a section is taken on; a bit each.
const (
	below = 1
	above = 2
)

// edge is a stretch of the outline of a section, from a to b as seen. It lies
// in the arrangement's plane and in the plane named line.
type edge struct {
	a, b       int32
	line       int32
	prism      int32 // number within the arrangement
	sides      uint8
	lo, hi     [2]float64
	first, end int32 // its stretch of the list of splits, once sorted
}

func (a *arrangement) emit(from, to, line, prism int32, sides uint8) {
	if from == to {
		return
	}
	v, w := &a.k.verts[from], &a.k.verts[to]
	if compareSeen(a.drop, v, w) > 0 {
		from, to, v, w = to, from, w, v
	}
	e := edge{a: from, b: to, line: line, prism: prism, sides: sides}
	e.lo = [2]float64{v.near[a.s], min(v.near[a.t], w.near[a.t])}
	e.hi = [2]float64{w.near[a.s], max(v.near[a.t], w.near[a.t])}
	a.edges = append(a.edges, e)
}

// section emits the edges of prism p, which is the arrangement's number n.
func (a *arrangement) section(p *prism, n int32) {
	switch {
	case a.square == p.axis:
		a.endSection(p, n)
	case a.flat.n[p.axis] == 0:
		a.lengthSection(p, n)
	case p.block: // which of its axes a block goes by is all the same
		for axis := range 3 {
			if a.flat.n[axis] == 0 {
				turned := a.k.along(p, axis)
				a.lengthSection(&turned, n)
				return
			}
		}
	default:
		a.slantSection(p, n)
	}
}

// endSection is the outline itself.
func (a *arrangement) endSection(p *prism, n int32) {
	at := int64(a.flat.d.lo)
	var sides uint8
	if p.from < at && at <= p.to {
		sides |= below
	}
	if p.from <= at && at < p.to {
		sides |= above
	}
	if sides == 0 {
		return
	}
	for i := range p.walls {
		w := &p.walls[i]
		a.emit(a.k.wholeAt(p.place(at, w.p)), a.k.wholeAt(p.place(at, w.q)), w.plane, n, sides)
	}
}

// place puts a corner of the outline at a place on the axis.
func (p *prism) place(at int64, c [2]int64) (out [3]int64) {
	out[p.axis], out[(p.axis+1)%3], out[(p.axis+2)%3] = at, c[0], c[1]
	return out
}

// crossing is where a wall crosses the line along which the plane cuts the
// outline; on is the place if the wall has a corner there.
type crossing struct {
	key    float64 // where along the line, right to a small part of spare
	plane  int32   // that the strip's end lies in, other than the arrangement's
	corner bool
	on     [2]int64
}

// spare is far more than the error of a key, in nm.
const spare = 1

// lengthSection is made of strips: the plane contains the prism's direction.
// What is just below and what is just above differ by the walls that lie in the
// plane. So one of them is emitted for both sides, and those walls for one.
func (a *arrangement) lengthSection(p *prism, n int32) {
	u, v := (p.axis+1)%3, (p.axis+2)%3
	along := 0 // the outline's coordinate that grows fastest along the line
	if abs(a.flat.n[v]) < abs(a.flat.n[u]) {
		along = 1
	}
	signs := a.signs[:0]
	crossAbove, crossBelow := 0, 0
	for i := range p.walls {
		w := &p.walls[i]
		s, t := int8(a.flat.side(u, v, w.p[0], w.p[1])), int8(a.flat.side(u, v, w.q[0], w.q[1]))
		signs = append(signs, s, t)
		if (s > 0) != (t > 0) {
			crossAbove++
		}
		if (s >= 0) != (t >= 0) {
			crossBelow++
		}
	}
	a.signs = signs
	// Above the plane what lies on it counts as below, and the reverse. The side
	// that is crossed less often has fewer edges.
	limit, other := int8(0), uint8(below)
	if crossBelow < crossAbove {
		limit, other = -1, above
	}
	a.strips(p, n, along, limit)
	for i := range p.walls {
		if signs[2*i] == 0 && signs[2*i+1] == 0 {
			w, axis := &p.walls[i], [2]int{u, v}[along]
			c, d := crossing{corner: true, on: w.p}, crossing{corner: true, on: w.q}
			c.plane, d.plane = a.k.planeNumber(level(axis, w.p[along])), a.k.planeNumber(level(axis, w.q[along]))
			a.strip(stretch{p, p.from, p.to, p.fromAt, p.toAt}, n, &c, &d, other)
		}
	}
}

// strips emits the strips on one side for both.
func (a *arrangement) strips(p *prism, n int32, along int, limit int8) {
	u, v := (p.axis+1)%3, (p.axis+2)%3
	list := a.crossings[:0]
	for i := range p.walls {
		s, t := a.signs[2*i], a.signs[2*i+1]
		if (s > limit) != (t > limit) {
			list = append(list, a.crossWall(&p.walls[i], u, v, along, s, t))
		}
	}
	a.crossings = list
	inOrder(list)
	axis := [2]int{u, v}[along]
	from, to := float64(a.reach.lo[axis])-spare, float64(a.reach.hi[axis])+spare
	s := a.stretch(p)
	whole := s.from == a.reach.lo[p.axis] && s.to == a.reach.hi[p.axis]
	for i := 0; i+1 < len(list); i += 2 {
		c, d := list[i], list[i+1]
		before, after := c.key < from, d.key > to
		switch {
		case c.key > to || d.key < from:
		case whole && before && after:
			a.fill(n)
		default:
			if before {
				c = a.limit(axis, along, 0)
			}
			if after {
				d = a.limit(axis, along, 1)
			}
			a.strip(s, n, &c, &d, below|above)
		}
	}
}

// stretch is a piece of a prism's length and the planes that it ends in.
type stretch struct {
	p            *prism
	from, to     int64
	fromAt, toAt int32
}

// stretch is as much of a prism's length as matters: beyond the reach both
// sides are alike whatever is said of it.
func (a *arrangement) stretch(p *prism) stretch {
	s := stretch{p, p.from, p.to, p.fromAt, p.toAt}
	if lo := a.reach.lo[p.axis]; lo > s.from {
		s.from, s.fromAt = lo, a.k.planeNumber(level(p.axis, lo))
	}
	if hi := a.reach.hi[p.axis]; hi < s.to {
		s.to, s.toAt = hi, a.k.planeNumber(level(p.axis, hi))
	}
	return s
}

// limit stands for a crossing beyond one end of the reach.
func (a *arrangement) limit(axis, along, end int) crossing {
	c := crossing{corner: true, on: a.ends[end]}
	if a.square >= 0 {
		c.on[1-along], c.on[along] = int64(a.flat.d.lo), [2]int64{a.reach.lo[axis], a.reach.hi[axis]}[end]
	}
	c.plane = a.k.planeNumber(level(axis, c.on[along]))
	return c
}

// inOrder sorts crossings, to be taken two by two. The order may be wrong where
// keys are nearly equal; stretches then overlap, but an even-odd region is the
// same however its crossings are paired.
func inOrder(list []crossing) {
	slices.SortFunc(list, func(c, d crossing) int { return cmp.Compare(c.key, d.key) })
}

// strip is a rectangle from one crossing to another.
func (a *arrangement) strip(s stretch, n int32, c, d *crossing, sides uint8) {
	c0, d0 := a.crossPlace(s.p, c, s.fromAt, s.from), a.crossPlace(s.p, d, s.fromAt, s.from)
	c1, d1 := a.crossPlace(s.p, c, s.toAt, s.to), a.crossPlace(s.p, d, s.toAt, s.to)
	a.emit(c0, c1, c.plane, n, sides)
	a.emit(d0, d1, d.plane, n, sides)
	a.emit(c0, d0, s.fromAt, n, sides)
	a.emit(c1, d1, s.toAt, n, sides)
}

// crossWall is where the plane crosses a wall whose corners lie on sides s and t.
func (a *arrangement) crossWall(w *wall, u, v, along int, s, t int8) crossing {
	switch {
	case s == 0:
		return crossing{float64(w.p[along]), w.plane, true, w.p}
	case t == 0:
		return crossing{float64(w.q[along]), w.plane, true, w.q}
	}
	e, f := a.flat.excess(u, v, w.p[0], w.p[1]).float(), a.flat.excess(u, v, w.q[0], w.q[1]).float()
	return crossing{float64(w.p[along]) + float64(w.q[along]-w.p[along])*(e/(e-f)), w.plane, false, [2]int64{}}
}

func (a *arrangement) crossPlace(p *prism, c *crossing, end int32, at int64) int32 {
	if c.corner {
		return a.k.wholeAt(p.place(at, c.on))
	}
	return a.k.meeting(a.number, c.plane, end)
}

// slantSection is a slanted cut through the prism: its outline seen askew,
// ended where the cut runs out at the prism's ends. The plane's normal has a
// part along the prism's axis and one along w, the outline's other coordinate.
func (a *arrangement) slantSection(p *prism, n int32) {
	w := (p.axis + 1) % 3
	if a.flat.n[w] == 0 {
		w = (p.axis + 2) % 3
	}
	s := slant{a: a, p: p, n: n, w: w, of: 0}
	if w == (p.axis+2)%3 {
		s.of = 1
	}
	s.low, s.high = p.fromAt, p.toAt
	s.lowAt, s.highAt = p.from, p.to
	s.grows = (a.flat.n[w] > 0) == (a.flat.n[p.axis] < 0) // the place on the axis grows with w
	if !s.grows {
		s.low, s.high, s.lowAt, s.highAt = s.high, s.low, s.highAt, s.lowAt
	}
	s.walls()
	s.chord(s.low, s.lowAt, 0)
	s.chord(s.high, s.highAt, -1)
}

// slant is a slanted cut under way. low is the end of the prism that the plane
// meets at the smaller w.
type slant struct {
	a             *arrangement
	p             *prism
	n             int32
	w, of         int // the axis w, and which of the outline's coordinates it is
	low, high     int32
	lowAt, highAt int64
	grows         bool
}

// beyond is the sign of w less the w at which the plane meets place at on the axis.
func (s *slant) beyond(w, at int64) int8 {
	sign := s.a.flat.side(s.p.axis, s.w, at, w)
	if s.a.flat.n[s.w] < 0 {
		sign = -sign
	}
	return int8(sign)
}

// walls emits of every wall what lies between the two ends.
func (s *slant) walls() {
	for i := range s.p.walls {
		w := &s.p.walls[i]
		p, q := w.p, w.q
		if p[s.of] > q[s.of] {
			p, q = q, p
		}
		if s.beyond(q[s.of], s.lowAt) <= 0 || s.beyond(p[s.of], s.highAt) >= 0 {
			continue
		}
		from, to := int32(-1), int32(-1)
		if s.beyond(p[s.of], s.lowAt) >= 0 {
			from = s.lift(p)
		} else {
			from = s.a.k.meeting(s.a.number, w.plane, s.low)
		}
		if s.beyond(q[s.of], s.highAt) <= 0 {
			to = s.lift(q)
		} else {
			to = s.a.k.meeting(s.a.number, w.plane, s.high)
		}
		s.a.emit(from, to, w.plane, s.n, below|above)
	}
}

// lift is the place on the plane above a corner of the outline.
func (s *slant) lift(c [2]int64) int32 {
	return s.a.k.vertex(onWall(&s.a.flat, s.p.axis, s.p.place(0, c)))
}

// chord emits the straight ends of the section at one end of the prism. Corners
// exactly there count as outside.
func (s *slant) chord(end int32, at int64, limit int8) {
	list := s.a.crossings[:0]
	other := 1 - s.of
	for i := range s.p.walls {
		w := &s.p.walls[i]
		g, h := s.beyond(w.p[s.of], at), s.beyond(w.q[s.of], at)
		if (g > limit) == (h > limit) {
			continue
		}
		c := crossing{plane: w.plane}
		switch {
		case g == 0:
			c.corner, c.on = true, w.p
		case h == 0:
			c.corner, c.on = true, w.q
		}
		if c.corner {
			c.key = float64(c.on[other])
		} else {
			e := s.a.flat.excess(s.p.axis, s.w, at, w.p[s.of]).float()
			f := s.a.flat.excess(s.p.axis, s.w, at, w.q[s.of]).float()
			c.key = float64(w.p[other]) + float64(w.q[other]-w.p[other])*(e/(e-f))
		}
		list = append(list, c)
	}
	s.a.crossings = list
	inOrder(list)
	for i := 0; i+1 < len(list); i += 2 {
		s.a.emit(s.a.crossPlace(s.p, &list[i], end, at), s.a.crossPlace(s.p, &list[i+1], end, at), end, s.n, below|above)
	}
}
