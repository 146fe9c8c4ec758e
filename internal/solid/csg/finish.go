package csg

import (
	"cmp"
	"slices"
)

// lines finds vertices that lie on edges. It keeps the vertices in three
// orders: by (x, y, z), (y, z, x) and (z, x, y).
type lines struct {
	verts []Vertex
	order [3][]int32
}

func newLines(verts []Vertex, used []int32) *lines {
	l := &lines{verts: verts}
	for k := range l.order {
		l.order[k] = slices.Clone(used)
		slices.SortFunc(l.order[k], func(p, q int32) int {
			return cmp.Or(compareOn(k, &verts[p], &verts[q]), compareOn((k+1)%3, &verts[p], &verts[q]), compareOn((k+2)%3, &verts[p], &verts[q]))
		})
	}
	return l
}

// between appends the vertices that lie strictly between p and q, in order from p.
func (l *lines) between(p, q int32, out []int32) []int32 {
	v, w := &l.verts[p], &l.verts[q]
	// The order that narrows most: both its leading coordinates equal, or one.
	k, fixed := 0, -1
	for i := range 3 {
		n := 0
		if v.near[i] == w.near[i] {
			if n = 1; v.near[(i+1)%3] == w.near[(i+1)%3] {
				n = 2
			}
		}
		if n > fixed {
			k, fixed = i, n
		}
	}
	start := len(out)
	out = l.scan(v, w, k, fixed, out)
	found := out[start:]
	slices.SortFunc(found, func(i, j int32) int { return compareAll(&l.verts[i], &l.verts[j]) })
	if compareAll(v, w) > 0 {
		slices.Reverse(found)
	}
	return out
}

// scan runs over the stretch of order k in which such vertices can be: the
// first fixed coordinates are those of v and w, the next lies between theirs.
func (l *lines) scan(v, w *Vertex, k, fixed int, out []int32) []int32 {
	list := l.order[k]
	var lo, hi [3]float64
	for i := range 3 {
		a, b := v.near[(k+i)%3], w.near[(k+i)%3]
		lo[i], hi[i] = min(a, b), max(a, b)
	}
	from, _ := slices.BinarySearchFunc(list, lo, func(p int32, lo [3]float64) int {
		u := &l.verts[p]
		for i := range fixed + 1 {
			if c := cmp.Compare(u.near[(k+i)%3], lo[i]); c != 0 {
				return c
			}
		}
		return 0
	})
	for _, p := range list[from:] {
		u := &l.verts[p]
		past := false
		for i := range fixed {
			past = past || u.near[(k+i)%3] > hi[i]
		}
		if past || u.near[(k+fixed)%3] > hi[fixed] {
			break
		}
		if u != v && u != w && strictlyBetween(v, u, w) {
			out = append(out, p)
		}
	}
	return out
}

func strictlyBetween(v, u, w *Vertex) bool {
	for i := range 3 {
		if a, b := v.near[i], w.near[i]; u.near[i] < min(a, b) || u.near[i] > max(a, b) {
			return false
		}
	}
	return collinear(v, u, w) && compareAll(v, u)*compareAll(u, w) > 0
}

// solid makes the result of what the planes gave: vertices and faces in an
// order that depends on the solid alone, every vertex part of every edge it
// lies on.
func (k *kernel) solid() *Solid {
	s := &Solid{}
	used := k.renumber(s)
	l := newLines(s.Vertices, used)
	s.Faces = make([]Face, 0, len(k.faces))
	for i := range k.faces {
		s.Faces = append(s.Faces, k.face(&k.faces[i], l))
	}
	slices.SortFunc(s.Faces, func(f, g Face) int { return f.compare(&g) })
	return s
}

// renumber moves the vertices that faces use to the solid, in order.
func (k *kernel) renumber(s *Solid) []int32 {
	const unused, seen = -1, -2
	number := make([]int32, len(k.verts))
	for i := range number {
		number[i] = unused
	}
	var list []int32
	for _, f := range k.faces {
		for _, loop := range f.loops {
			for _, p := range loop {
				if number[p] == unused {
					number[p] = seen
					list = append(list, p)
				}
			}
		}
	}
	slices.SortFunc(list, func(p, q int32) int { return compareAll(&k.verts[p], &k.verts[q]) })
	s.Vertices = make([]Vertex, len(list))
	used := make([]int32, len(list))
	for i, p := range list {
		s.Vertices[i], number[p], used[i] = k.verts[p], int32(i), int32(i)
	}
	for _, f := range k.faces {
		for _, loop := range f.loops {
			for i, p := range loop {
				loop[i] = number[p]
			}
		}
	}
	return used
}

// face turns a raw face outward and puts in the vertices on its edges.
func (k *kernel) face(raw *rawFace, l *lines) Face {
	p := &k.planes[raw.plane]
	f := Face{Normal: p.n, Origin: raw.class.origin[0], Against: raw.class.origin[1], plane: *p}
	f.back = raw.class.kind == backFace || raw.class.kind == backMeet
	f.contact = raw.class.kind == frontMeet || raw.class.kind == backMeet
	if f.back {
		for i := range f.Normal {
			f.Normal[i] = -f.Normal[i]
		}
	}
	// Loops run counter-clockwise seen against the dropped axis.
	flip := f.Normal[p.drop()] < 0
	for i, loop := range raw.loops {
		if flip {
			slices.Reverse(loop)
		}
		full := make([]int32, 0, len(loop)+2)
		for j, q := range loop {
			full = append(full, q)
			full = l.between(q, loop[(j+1)%len(loop)], full)
		}
		loop = fromLowest(full)
		if i == 0 {
			f.Outer = loop
		} else {
			f.Holes = append(f.Holes, loop)
		}
	}
	slices.SortFunc(f.Holes, slices.Compare[[]int32])
	return f
}

// fromLowest turns a loop so that it begins at its lowest number.
func fromLowest(loop []int32) []int32 {
	at := 0
	for i, p := range loop {
		if p < loop[at] {
			at = i
		}
	}
	return append(slices.Clone(loop[at:]), loop[:at]...)
}

func (f *Face) compare(g *Face) int {
	return cmp.Or(f.plane.compare(&g.plane), order(f.back, g.back), cmp.Compare(f.Origin.Tag, g.Origin.Tag),
		cmp.Compare(f.Against.Tag, g.Against.Tag), slices.Compare(f.Outer, g.Outer))
}
