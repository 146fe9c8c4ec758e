package csg

import (
	"cmp"
	"slices"
)

// half is one side of a kept sub, with its class on its left.
type half struct {
	class    int32
	from, to int32
	next     int32
	trace    int32 // which walk took it, or -1
	sub      int32 // whose left side it is, or -1
}

// tracer joins halves to loops and loops to faces.
type tracer struct {
	halves []half
	loops  [][]int32 // of points
	owner  []int32   // by loop: its trace
	outer  []bool    // by loop
	parent []int32   // by trace: union-find
	class  []int32   // by trace
	seat   []int32   // by point: where the loop being cut has it, or -1
	sub    []int32   // by sub: its left half, or -1
	path   []int32
}

// trace joins the kept subs to faces and hands them to the kernel.
func (a *arrangement) trace() {
	t := &a.tracer
	t.halves, t.loops, t.owner, t.outer = t.halves[:0], t.loops[:0], t.owner[:0], t.outer[:0]
	t.parent, t.class = t.parent[:0], t.class[:0]
	for i := range a.subs {
		s := &a.subs[i]
		if s.left == s.right {
			continue
		}
		if s.left != 0 {
			t.halves = append(t.halves, half{s.left, s.a, s.b, -1, -1, int32(i)})
		}
		if s.right != 0 {
			t.halves = append(t.halves, half{s.right, s.b, s.a, -1, -1, -1})
		}
	}
	if len(t.halves) == 0 {
		return
	}
	slices.SortFunc(t.halves, func(g, h half) int {
		return cmp.Or(cmp.Compare(g.class, h.class), cmp.Compare(g.from, h.from), cmp.Compare(g.to, h.to))
	})
	t.sub = slices.Grow(t.sub[:0], len(a.subs))[:len(a.subs)]
	for i := range t.halves {
		if s := t.halves[i].sub; s >= 0 {
			t.sub[s] = int32(i)
		}
	}
	for i := range t.halves {
		t.halves[i].next = a.following(&t.halves[i])
	}
	for i := range t.halves {
		if t.halves[i].trace < 0 {
			a.walk(int32(i))
		}
	}
	a.assemble()
}

// following is the half that goes on from the end of one: the first of its
// class clockwise from the way back. So a trace stays within one corner of its
// face, and loops touch in points but never cross.
func (a *arrangement) following(h *half) int32 {
	t := &a.tracer
	lo, _ := slices.BinarySearchFunc(t.halves, h, func(g half, h *half) int {
		return cmp.Or(cmp.Compare(g.class, h.class), cmp.Compare(g.from, h.to))
	})
	best := int32(lo)
	for i := lo + 1; i < len(t.halves) && t.halves[i].class == h.class && t.halves[i].from == h.to; i++ {
		if a.sooner(h.to, h.from, t.halves[i].to, t.halves[best].to) {
			best = int32(i)
		}
	}
	return best
}

// sooner tells whether, turning clockwise about p from the direction of back,
// q comes before r.
func (a *arrangement) sooner(p, back, q, r int32) bool {
	p, back, q, r = a.points[p], a.points[back], a.points[q], a.points[r]
	// To the right of the way back lies the first half turn, to the left the second.
	if f, g := a.turn(p, back, q), a.turn(p, back, r); f != g {
		return f < g
	}
	return a.turn(p, q, r) < 0
}

// walk follows one trace and cuts it into simple loops wherever it comes back
// to a point.
func (a *arrangement) walk(start int32) {
	t := &a.tracer
	id := int32(len(t.parent))
	t.parent, t.class = append(t.parent, id), append(t.class, t.halves[start].class)
	for len(t.seat) < len(a.points) {
		t.seat = append(t.seat, -1)
	}
	path := t.path[:0]
	for i := start; t.halves[i].trace < 0; i = t.halves[i].next {
		h := &t.halves[i]
		h.trace = id
		if at := t.seat[h.from]; at >= 0 {
			path = a.cutLoop(path, at, id)
		}
		t.seat[h.from] = int32(len(path))
		path = append(path, h.from)
	}
	if len(path) > 0 {
		a.cutLoop(path, 0, id)
	}
	t.path = path[:0]
}

// cutLoop takes the loop that closes at place at off the path.
func (a *arrangement) cutLoop(path []int32, at, id int32) []int32 {
	t := &a.tracer
	for _, p := range path[at:] {
		t.seat[p] = -1
	}
	loop, outer := a.simplified(path[at:])
	t.loops, t.owner, t.outer = append(t.loops, loop), append(t.owner, id), append(t.outer, outer)
	return path[:at]
}

// simplified copies a loop without its corners of 180°, beginning at the point
// seen first, and tells whether it runs counter-clockwise.
func (a *arrangement) simplified(path []int32) ([]int32, bool) {
	n := len(path)
	first := 0
	for i, p := range path {
		if p < path[first] {
			first = i
		}
	}
	out := make([]int32, 0, n)
	turned := 0
	for i := range path {
		at := (first + i) % n
		p, q, r := path[(at+n-1)%n], path[at], path[(at+1)%n]
		side := a.turn(a.points[p], a.points[q], a.points[r])
		if i == 0 {
			turned = side
		}
		if side != 0 {
			out = append(out, q)
		}
	}
	return out, turned > 0
}

func (t *tracer) root(i int32) int32 {
	for t.parent[i] != i {
		t.parent[i] = t.parent[t.parent[i]]
		i = t.parent[i]
	}
	return i
}

// assemble gives every hole to the face it lies in and hands the faces over.
func (a *arrangement) assemble() {
	t := &a.tracer
	hasOuter := make([]bool, len(t.parent))
	for i, o := range t.outer {
		hasOuter[t.owner[i]] = hasOuter[t.owner[i]] || o
	}
	for i, loop := range t.loops {
		if id := t.owner[i]; !hasOuter[id] && t.parent[id] == id {
			a.adopt(id, loop)
		}
	}
	for i, loop := range t.loops {
		if !t.outer[i] {
			continue
		}
		f := rawFace{plane: a.number, class: a.classes[t.class[t.owner[i]]], loops: [][]int32{a.named(loop)}}
		for j, hole := range t.loops {
			if !t.outer[j] && t.root(t.owner[j]) == t.root(t.owner[i]) {
				f.loops = append(f.loops, a.named(hole))
			}
		}
		a.k.faces = append(a.k.faces, f)
	}
}

// adopt hands a trace without an outer loop to the trace that bounds the same
// cell from below at the point seen first. That one begins earlier, so there
// is no going in circles.
func (a *arrangement) adopt(id int32, first []int32) {
	t := &a.tracer
	at := first[0]
	for i, loop := range t.loops {
		if t.owner[i] == id {
			at = min(at, loop[0])
		}
	}
	s := a.sweeper.nest[at]
	if s < 0 || a.subs[s].left != t.class[id] {
		panic("csg: a hole lies in no face")
	}
	t.parent[id] = t.root(t.halves[t.sub[s]].trace)
}

// named copies a loop of points as vertex numbers.
func (a *arrangement) named(loop []int32) []int32 {
	out := make([]int32, len(loop))
	for i, p := range loop {
		out[i] = a.points[p]
	}
	return out
}
