package csg

import (
	"cmp"
	"slices"
)

// arrangement is the work on one plane: the edges of all sections, split where
// they meet. Its memory is used again for the next plane.
type arrangement struct {
	k      *kernel
	number int32 // the plane
	flat   plane
	square int         // the axis the plane is square to, or -1
	drop   int         // the axis left out when looking at it
	s, t   int         // the axes seen, in that order
	focus  box         // where faces of the result can be
	places []box       // the same face by face
	reach  box         // where prisms have faces in the plane at all
	ends   [2][2]int64 // of a slanted plane, the corners of outlines at the ends of the reach

	prisms []localPrism
	groups [2]groupMask
	words  int // of 64 bits, per side

	edges     []edge
	splits    []split
	points    []int32 // vertex numbers in the order seen
	local     []int32 // by vertex number: its place in points
	subs      []sub
	states    []uint64
	blank     []uint64 // the state away from all edges
	signs     []int8
	crossings []crossing
	classes   []class
	sweeper   sweeper
	tracer    tracer
}

// localPrism is a prism that reaches into the focus. front is the number of its
// side that lies in the plane with the prism below it, back with the prism
// above; -1 if there is none.
type localPrism struct {
	prism       int32
	front, back int32
}

// groupMask says which bits of a state stand for the base and the cuts of a group.
type groupMask struct {
	base int
	cuts []uint64
}

// split is a place where an edge is cut in two.
type split struct{ edge, point int32 }

// sub is a stretch of edges between two neighbouring splits, from point a to
// point b of the arrangement; what lies on its left (above) and right (below)
// differs by the toggles in states.
type sub struct {
	a, b         int32
	left, right  int32 // classes
	state        int32 // offset of the toggles and, after the sweep, of the state on its left
	prism, sides int32
}

func (a *arrangement) run(k *kernel, number int32, faces []onPlane) {
	if a.begin(k, number, faces) {
		a.evaluate()
	}
}

// evaluate does the work once it is known which prisms matter.
func (a *arrangement) evaluate() {
	for i, l := range a.prisms {
		if p := &a.k.prisms[l.prism]; !a.covers(p, int32(i)) {
			a.section(p, int32(i))
		}
	}
	if len(a.edges) == 0 {
		return
	}
	a.split()
	a.order()
	a.merge()
	a.sweep()
	a.trace()
}

// begin sets up the plane and tells whether anything can come of it.
func (a *arrangement) begin(k *kernel, number int32, faces []onPlane) bool {
	a.look(k, number)
	empty := true
	for i, f := range faces {
		b := k.prisms[f.prism].faces[f.face].box
		if a.square < 0 {
			a.stretchEnds(&k.prisms[f.prism], f.face, i == 0)
		}
		if i == 0 {
			a.reach = b
		} else {
			a.reach = a.reach.join(b)
		}
		if b = b.meet(k.clip); !a.spreads(b) {
			continue
		}
		a.places = append(a.places, b)
		if empty {
			a.focus, empty = b, false
		} else {
			a.focus = a.focus.join(b)
		}
	}
	return !empty && a.gather(faces)
}

// stretchEnds widens the ends to a wall that lies in the slanted plane.
func (a *arrangement) stretchEnds(p *prism, face int32, first bool) {
	along := 0
	if abs(a.flat.n[(p.axis+2)%3]) < abs(a.flat.n[(p.axis+1)%3]) {
		along = 1
	}
	w := &p.walls[face-firstWall]
	for _, c := range [2][2]int64{w.p, w.q} {
		if first || c[along] < a.ends[0][along] {
			a.ends[0] = c
		}
		if first || c[along] > a.ends[1][along] {
			a.ends[1] = c
		}
		first = false
	}
}

// covers tells whether a prism without a face in the plane fills both sides of
// it wherever any other has one. It then needs no edges: away from those faces
// both sides are alike whatever is said of it.
func (a *arrangement) covers(p *prism, n int32) bool {
	if !p.block {
		return false
	}
	for k := range 3 {
		lo, hi := p.box.lo[k], p.box.hi[k]
		if lo > a.reach.lo[k] || hi < a.reach.hi[k] || k == a.square && (lo == a.reach.lo[k] || hi == a.reach.hi[k]) {
			return false
		}
	}
	a.fill(n)
	return true
}

// fill turns a prism's bits in the state away from all edges.
func (a *arrangement) fill(prism int32) {
	toggle(a.blank, a.words, prism, below|above)
}

// look sets up the plane itself.
func (a *arrangement) look(k *kernel, number int32) {
	a.k, a.number, a.flat = k, number, k.planes[number]
	a.square, a.drop = a.flat.square(), a.flat.drop()
	a.s, a.t = (a.drop+1)%3, (a.drop+2)%3
	a.edges, a.splits, a.subs, a.prisms = a.edges[:0], a.splits[:0], a.subs[:0], a.prisms[:0]
	a.places = a.places[:0]
	a.classes = append(a.classes[:0], class{})
}

// spreads tells whether a box can hold a face of this plane: flat along the
// axis that the plane is square to, and along no other.
func (a *arrangement) spreads(b box) bool {
	want := 0
	if a.square >= 0 {
		want = 1
	}
	flat := b.flat()
	return flat == want && (want == 0 || b.lo[a.square] == b.hi[a.square])
}

// gather lists the prisms that reach into the focus. faces are grouped by prism.
func (a *arrangement) gather(faces []onPlane) bool {
	for i := range a.k.prisms {
		p := &a.k.prisms[i]
		var mine []onPlane
		for len(faces) > 0 && faces[0].prism == int32(i) {
			n := 1
			for n < len(faces) && faces[n].prism == int32(i) {
				n++
			}
			mine, faces = faces[:n], faces[n:]
		}
		if !a.matters(p) {
			continue
		}
		l := localPrism{int32(i), -1, -1}
		for _, f := range mine {
			g := &p.faces[f.face]
			mark := &l.back
			if g.front {
				mark = &l.front
			}
			if *mark < 0 || g.side < *mark {
				*mark = g.side
			}
		}
		a.prisms = append(a.prisms, l)
	}
	a.words = (len(a.prisms) + 63) / 64
	for g := range a.k.groups {
		m := &a.groups[g]
		m.base, m.cuts = -1, slices.Grow(m.cuts[:0], a.words)[:a.words]
		clear(m.cuts)
	}
	a.blank = slices.Grow(a.blank[:0], 2*a.words)[:2*a.words]
	clear(a.blank)
	for i, l := range a.prisms {
		g := &a.groups[a.k.prisms[l.prism].group]
		if a.k.prisms[l.prism].base {
			g.base = i
		} else {
			g.cuts[i/64] |= 1 << (i % 64)
		}
	}
	return a.groups[0].base >= 0 && (a.k.groups == 1 || a.groups[1].base >= 0)
}

// matters tells whether a prism reaches over a place where a face of the result
// can be. Away from those the plane's two sides are alike, with it or without.
func (a *arrangement) matters(p *prism) bool {
	if !a.spreads(p.box.meet(a.focus)) {
		return false
	}
	if len(a.places) == 0 || len(a.places) > 64 { // a section, or too many to ask them all
		return true
	}
	return slices.ContainsFunc(a.places, func(b box) bool { return a.spreads(p.box.meet(b)) })
}

// split finds where edges meet and notes it on both.
func (a *arrangement) split() {
	slices.SortFunc(a.edges, func(e, f edge) int { return cmp.Compare(e.lo[0], f.lo[0]) })
	for i := range a.edges {
		e := &a.edges[i]
		for j := i + 1; j < len(a.edges); j++ {
			f := &a.edges[j]
			if f.lo[0] > e.hi[0] {
				break
			}
			if f.lo[1] <= e.hi[1] && e.lo[1] <= f.hi[1] && (e.a != f.a || e.b != f.b) {
				a.cross(int32(i), int32(j))
			}
		}
	}
}

// cross splits two edges where one ends on the other or both cross.
func (a *arrangement) cross(i, j int32) {
	e, f := &a.edges[i], &a.edges[j]
	if e.line == f.line {
		a.overlap(i, j)
		return
	}
	o1, o2 := a.turn(e.a, e.b, f.a), a.turn(e.a, e.b, f.b)
	if o1 == 0 && o2 == 0 {
		a.overlap(i, j)
		return
	}
	if o1*o2 > 0 || e.a == f.a || e.a == f.b || e.b == f.a || e.b == f.b {
		return
	}
	o3, o4 := a.turn(f.a, f.b, e.a), a.turn(f.a, f.b, e.b)
	switch {
	case o3*o4 > 0:
	case o1 == 0:
		a.splits = append(a.splits, split{i, f.a})
	case o2 == 0:
		a.splits = append(a.splits, split{i, f.b})
	case o3 == 0:
		a.splits = append(a.splits, split{j, e.a})
	case o4 == 0:
		a.splits = append(a.splits, split{j, e.b})
	default:
		x := a.k.meeting(a.number, e.line, f.line)
		a.splits = append(a.splits, split{i, x}, split{j, x})
	}
}

// overlap splits two edges of one line at each other's ends.
func (a *arrangement) overlap(i, j int32) {
	for range 2 {
		e, f := &a.edges[i], &a.edges[j]
		for _, p := range [2]int32{f.a, f.b} {
			if p != e.a && p != e.b && a.compare(e.a, p) < 0 && a.compare(p, e.b) < 0 {
				a.splits = append(a.splits, split{i, p})
			}
		}
		i, j = j, i
	}
}

func (a *arrangement) turn(p, q, r int32) int {
	if r == p || r == q {
		return 0
	}
	v := a.k.verts
	return turn(a.drop, &v[p], &v[q], &v[r])
}

func (a *arrangement) compare(p, q int32) int {
	return compareSeen(a.drop, &a.k.verts[p], &a.k.verts[q])
}

// order numbers the points by the order in which they are seen, and edges and
// splits with them.
func (a *arrangement) order() {
	a.points = a.points[:0]
	for len(a.local) < len(a.k.verts) {
		a.local = append(a.local, -1)
	}
	add := func(p int32) {
		if a.local[p] < 0 {
			a.local[p] = 0
			a.points = append(a.points, p)
		}
	}
	for i := range a.edges {
		add(a.edges[i].a)
		add(a.edges[i].b)
	}
	for i := range a.splits {
		add(a.splits[i].point)
	}
	slices.SortFunc(a.points, a.compare)
	for i, p := range a.points {
		a.local[p] = int32(i)
	}
	for i := range a.edges {
		e := &a.edges[i]
		e.a, e.b = a.local[e.a], a.local[e.b]
	}
	for i := range a.splits {
		a.splits[i].point = a.local[a.splits[i].point]
	}
	for _, p := range a.points {
		a.local[p] = -1
	}
	slices.SortFunc(a.splits, func(x, y split) int {
		return cmp.Or(cmp.Compare(x.edge, y.edge), cmp.Compare(x.point, y.point))
	})
}

// merge cuts the edges at their splits and makes one of stretches that coincide.
func (a *arrangement) merge() {
	next := 0
	for i := range a.edges {
		e := &a.edges[i]
		from := e.a
		for ; next < len(a.splits) && a.splits[next].edge == int32(i); next++ {
			if to := a.splits[next].point; to != from {
				a.subs = append(a.subs, sub{a: from, b: to, prism: e.prism, sides: int32(e.sides)})
				from = to
			}
		}
		a.subs = append(a.subs, sub{a: from, b: e.b, prism: e.prism, sides: int32(e.sides)})
	}
	slices.SortFunc(a.subs, func(x, y sub) int { return cmp.Or(cmp.Compare(x.a, y.a), cmp.Compare(x.b, y.b)) })
	a.states = a.states[:0]
	kept := 0
	for _, s := range a.subs {
		if kept == 0 || a.subs[kept-1].a != s.a || a.subs[kept-1].b != s.b {
			s.state = int32(len(a.states))
			for range 2 * a.words {
				a.states = append(a.states, 0)
			}
			a.subs[kept] = s
			kept++
		}
		toggle(a.states[a.subs[kept-1].state:], a.words, s.prism, s.sides)
	}
	a.subs = a.subs[:kept]
}

// toggle turns a prism's bits in a state of so many words a side.
func toggle(state []uint64, words int, prism, sides int32) {
	word, bit := int(prism/64), uint64(1)<<(prism%64)
	if sides&below != 0 {
		state[word] ^= bit
	}
	if sides&above != 0 {
		state[words+word] ^= bit
	}
}
