package csg

import "slices"

// triangulation cuts a face into triangles by walking over its vertices in the
// order seen (K. Hertel and K. Mehlhorn, Fast triangulation of simple
// polygons, Foundations of Computation Theory, LNCS 158, 1983). It
// adds no vertex, decides by exact turns only, and takes loops that touch in
// points as they are.
//
// Between two edges that it is passing, the uncut part of the face behind it
// is a chain of vertices from the lower edge's start to the upper edge's
// start. Seen from the walk's front no corner of the chain bulges forward on
// either side of its foremost vertex, so a new vertex sees it from an end.
type triangulation struct {
	verts  []Vertex
	drop   int
	points []int32 // vertex numbers in the order seen
	edges  []passing
	start  []int32 // by point: the first of edges that begins there
	active []int32
	out    [][3]int32
}

// passing is an edge from point a to a later point b, and the chain above it
// if the face lies there.
type passing struct {
	a, b  int32
	chain []int32
}

// triangulate appends the triangles of a face, counter-clockwise from outside.
func (s *Solid) triangulate(f *Face, out [][3]int32) [][3]int32 {
	drop := f.plane.drop()
	if len(f.Holes) == 0 && len(f.Outer) <= 4 {
		if quick, ok := s.quick(f, drop, out); ok {
			return quick
		}
	}
	t := triangulation{verts: s.Vertices, drop: drop, out: out}
	t.collect(f)
	for p := range int32(len(t.points)) {
		t.pass(p)
	}
	if f.Normal[drop] < 0 {
		for i := len(out); i < len(t.out); i++ {
			t.out[i][1], t.out[i][2] = t.out[i][2], t.out[i][1]
		}
	}
	return t.out
}

// quick cuts triangles and most faces of four corners.
func (s *Solid) quick(f *Face, drop int, out [][3]int32) ([][3]int32, bool) {
	o, v := f.Outer, s.Vertices
	if len(o) == 3 {
		return append(out, [3]int32{o[0], o[1], o[2]}), true
	}
	way := 1
	if f.Normal[drop] < 0 {
		way = -1
	}
	for i := range 2 {
		a, b, c, d := o[i], o[i+1], o[i+2], o[(i+3)%4]
		if turn(drop, &v[a], &v[b], &v[c]) == way && turn(drop, &v[a], &v[c], &v[d]) == way {
			return append(out, [3]int32{a, b, c}, [3]int32{a, c, d}), true
		}
	}
	return out, false
}

// collect lists the face's points and edges in the order seen.
func (t *triangulation) collect(f *Face) {
	loops := f.loops()
	for _, l := range loops {
		t.points = append(t.points, l...)
	}
	slices.SortFunc(t.points, func(p, q int32) int { return compareSeen(t.drop, &t.verts[p], &t.verts[q]) })
	t.points = slices.Compact(t.points)
	place := make(map[int32]int32, len(t.points))
	for i, p := range t.points {
		place[p] = int32(i)
	}
	for _, l := range loops {
		for i, p := range l {
			a, b := place[p], place[l[(i+1)%len(l)]]
			t.edges = append(t.edges, passing{a: min(a, b), b: max(a, b)})
		}
	}
	slices.SortFunc(t.edges, func(e, f passing) int {
		if e.a != f.a {
			return int(e.a - f.a)
		}
		return -t.turn(e.a, e.b, f.b)
	})
	for i := range t.edges {
		for len(t.start) <= int(t.edges[i].a) {
			t.start = append(t.start, int32(i))
		}
	}
	for len(t.start) <= len(t.points) {
		t.start = append(t.start, int32(len(t.edges)))
	}
}

func (t *triangulation) turn(p, q, r int32) int {
	return turn(t.drop, &t.verts[t.points[p]], &t.verts[t.points[q]], &t.verts[t.points[r]])
}

func (t *triangulation) emit(a, b, c int32) {
	t.out = append(t.out, [3]int32{t.points[a], t.points[b], t.points[c]})
}

// below counts the active edges that pass below p.
func (t *triangulation) below(p int32) int {
	lo, hi := 0, len(t.active)
	for lo < hi {
		mid := (lo + hi) / 2
		e := &t.edges[t.active[mid]]
		if e.b != p && t.turn(e.a, e.b, p) > 0 {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}

// pass deals with one vertex. Every other stretch between active edges, from
// the first one on, lies in the face.
func (t *triangulation) pass(p int32) {
	lo := t.below(p)
	hi := lo
	for hi < len(t.active) && t.edges[t.active[hi]].b == p {
		hi++
	}
	from, to := t.start[p], t.start[p+1]
	low, high := t.close(p, lo, hi)
	// low and high are the chains below and above p, nil where there is no face.
	switch {
	case low == nil && high == nil:
	case from == to && lo > 0 && low != nil: // the chains join behind p, which they share
		t.edges[t.active[lo-1]].chain = append(low, high[1:]...)
		high = nil
	case low != nil:
		t.edges[t.active[lo-1]].chain = low
	}
	t.active = replace(t.active, lo, hi, from, to)
	inside := lo%2 == 1 // whether the face lies below the next edge
	for i := from; i < to; i++ {
		inside = !inside
		switch {
		case !inside:
			t.edges[i].chain = nil
		case i == to-1 && high != nil:
			t.edges[i].chain = high
		default:
			t.edges[i].chain = []int32{p}
		}
	}
}

// close cuts what p sees of the chains around it: between edges that end at p
// everything, below and above them what an end of the chain allows.
func (t *triangulation) close(p int32, lo, hi int) (low, high []int32) {
	for i := lo; i+1 < hi; i++ {
		if c := t.edges[t.active[i]].chain; i%2 == 0 {
			for j := 0; j+1 < len(c); j++ {
				t.emit(p, c[j+1], c[j])
			}
		}
	}
	if lo%2 == 1 {
		chain := t.edges[t.active[lo-1]].chain
		if lo == hi { // p stands free within the face: the foremost vertex sees it
			at := foremost(chain)
			high = t.pushFront(p, slices.Clone(chain[at:]))
			low = t.pushBack(p, slices.Clone(chain[:at+1]))
			return low, high
		}
		low = t.pushBack(p, chain)
	}
	if hi > lo && (hi-1)%2 == 0 {
		high = t.pushFront(p, t.edges[t.active[hi-1]].chain)
	}
	return low, high
}

func foremost(chain []int32) int {
	at := 0
	for i, p := range chain {
		if p > chain[at] {
			at = i
		}
	}
	return at
}

// pushBack puts p on the upper end of a chain.
func (t *triangulation) pushBack(p int32, c []int32) []int32 {
	for n := len(c); n > 1 && t.turn(p, c[n-1], c[n-2]) > 0; n = len(c) {
		t.emit(p, c[n-1], c[n-2])
		c = c[:n-1]
	}
	return append(c, p)
}

// pushFront puts p on the lower end of a chain.
func (t *triangulation) pushFront(p int32, c []int32) []int32 {
	i := 0
	for i+1 < len(c) && t.turn(c[i], p, c[i+1]) > 0 {
		t.emit(c[i], p, c[i+1])
		i++
	}
	if i > 0 {
		i--
		c[i] = p
		return c[i:]
	}
	return append([]int32{p}, c...)
}
