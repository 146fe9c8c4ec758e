package csg

import (
	"cmp"
	"slices"
)

// Mesh is a solid's skin in triangles: closed, wound counter-clockwise seen
// from outside, without vertices inside edges. Every directed edge has exactly
// one opposite. Where the skin touches itself in an edge or a vertex, that
// place stands among Points once per sheet that passes through it.
type Mesh struct {
	Points    [][3]float64 // mm
	Triangles [][3]int32   // numbers of Points
	Face      []int32      // by triangle: the number of the solid's face
	Vertex    []int32      // by point: the number of the solid's vertex, or -1 in the middle of an edge

	between [][2]int32 // the points in whose middle those without a vertex lie, in their order
}

// Mesh cuts the faces into triangles. No triangle is without area in exact
// coordinates; places closer than float64 can tell apart are still two.
func (s *Solid) Mesh() *Mesh {
	m := &Mesh{Triangles: make([][3]int32, 0, 2*len(s.Vertices))}
	for i := range s.Faces {
		m.Triangles = s.triangulate(&s.Faces[i], m.Triangles)
		for len(m.Face) < len(m.Triangles) {
			m.Face = append(m.Face, int32(i))
		}
	}
	if s.plain && !m.doubled() {
		m.Vertex = make([]int32, len(s.Vertices))
		for i := range m.Vertex {
			m.Vertex[i] = int32(i)
		}
	} else {
		m.part(s)
	}
	m.locate(s)
	return m
}

func (m *Mesh) locate(s *Solid) {
	m.Points = make([][3]float64, len(m.Vertex))
	middles := m.between
	for i, v := range m.Vertex {
		if v >= 0 {
			m.Points[i] = s.Vertices[v].Millimetres()
			continue
		}
		p, q := m.Points[middles[0][0]], m.Points[middles[0][1]]
		middles = middles[1:]
		for k := range p {
			m.Points[i][k] = (p[k] + q[k]) / 2
		}
	}
}

// doubled tells whether some edge stands twice although no edge of the solid
// does: a diagonal of a face may run along an edge that touches the face from
// within.
func (m *Mesh) doubled() bool {
	keys := make([]uint64, 0, 3*len(m.Triangles)/2)
	for _, t := range m.Triangles {
		for j := range 3 {
			if a, b := t[j], t[(j+1)%3]; a < b {
				keys = append(keys, uint64(a)<<32|uint64(b))
			}
		}
	}
	slices.Sort(keys)
	n := len(keys)
	return len(slices.Compact(keys)) < n
}

// part gives every fan of triangles round a vertex a point of its own.
func (m *Mesh) part(s *Solid) {
	darts := make([]dart, 0, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		for j := range 3 {
			darts = append(darts, dart{from: t[j], to: t[(j+1)%3], face: m.Face[i], prev: int32(3*i + (j+2)%3)})
		}
	}
	pair(darts, s.units(), s.Vertices)
	parent := make([]int32, len(darts)) // corners, by the dart that leaves them
	for i := range parent {
		parent[i] = int32(i)
	}
	for i := range darts {
		union(parent, int32(i), darts[darts[i].prev].twin)
	}
	var fans []int32
	for i := range parent {
		if find(parent, int32(i)) == int32(i) {
			fans = append(fans, int32(i))
		}
	}
	slices.SortFunc(fans, func(i, j int32) int { return cmp.Or(cmp.Compare(darts[i].from, darts[j].from), cmp.Compare(i, j)) })
	number := make([]int32, len(darts))
	for n, i := range fans {
		number[i] = int32(n)
		m.Vertex = append(m.Vertex, darts[i].from)
	}
	for i := range darts {
		m.Triangles[i/3][i%3] = number[find(parent, int32(i))]
	}
	m.relieve(darts)
}

// relieve puts a point of its own inside every edge but one that joins the same
// two points: sheets that touch along an edge may hang together at both its
// ends, and would otherwise share it.
func (m *Mesh) relieve(darts []dart) {
	taken := map[[2]int32]bool{}
	middle := map[int32]int32{} // by dart
	for i := range int32(len(darts)) {
		j := darts[i].twin
		if j < i {
			continue
		}
		t := m.Triangles[i/3]
		a, b := t[i%3], t[(i+1)%3]
		key := [2]int32{min(a, b), max(a, b)}
		if taken[key] {
			middle[i], middle[j] = int32(len(m.Vertex)), int32(len(m.Vertex))
			m.Vertex = append(m.Vertex, -1)
			m.between = append(m.between, key)
		}
		taken[key] = true
	}
	if len(middle) > 0 {
		m.subdivide(middle)
	}
}

// subdivide cuts triangles at the points inside their edges.
func (m *Mesh) subdivide(middle map[int32]int32) {
	for i := range int32(len(m.Face)) {
		var ring []int32
		at := -1 // the first such point
		for j := range int32(3) {
			ring = append(ring, m.Triangles[i][j])
			if p, ok := middle[3*i+j]; ok {
				if at < 0 {
					at = len(ring)
				}
				ring = append(ring, p)
			}
		}
		if at < 0 {
			continue
		}
		ring = append(ring[at:len(ring):len(ring)], ring[:at]...)
		m.Triangles[i] = [3]int32{ring[0], ring[1], ring[2]}
		for n := 2; n+1 < len(ring); n++ {
			m.Triangles = append(m.Triangles, [3]int32{ring[0], ring[n], ring[n+1]})
			m.Face = append(m.Face, m.Face[i])
		}
	}
}
