package csg

import (
	"cmp"
	"math"
	"slices"
)

// dart is a directed edge of a face, or of a triangle, with the face on its left.
type dart struct {
	from, to int32
	face     int32
	prev     int32 // the dart before it round its loop
	twin     int32
}

// pair finds for every dart the one that runs the other way and bounds the
// same wedge of the solid. Where more than two faces meet in an edge, that is
// the face met first when turning through the solid.
func pair(darts []dart, normals [][3]float64, verts []Vertex) (crowded bool) {
	order := make([]int32, len(darts))
	for i := range order {
		order[i] = int32(i)
	}
	key := func(i int32) uint64 {
		d := &darts[i]
		return uint64(min(d.from, d.to))<<32 | uint64(max(d.from, d.to))
	}
	slices.SortFunc(order, func(i, j int32) int { return cmp.Or(cmp.Compare(key(i), key(j)), cmp.Compare(i, j)) })
	for len(order) > 0 {
		n := 1
		for n < len(order) && key(order[n]) == key(order[0]) {
			n++
		}
		if n == 2 {
			darts[order[0]].twin, darts[order[1]].twin = order[1], order[0]
		} else {
			pairMany(darts, order[:n], normals, verts)
			crowded = true
		}
		order = order[n:]
	}
	return crowded
}

// pairMany pairs the darts of one crowded edge: first those of one face, which
// are a diagonal of its own, then by angle.
func pairMany(darts []dart, list []int32, normals [][3]float64, verts []Vertex) {
	for _, i := range list {
		darts[i].twin = -1
	}
	match := func(i int32, better func(j int32) float64) {
		best, least := int32(-1), math.Inf(1)
		for _, j := range list {
			if darts[j].twin < 0 && darts[j].from == darts[i].to {
				if b := better(j); b < least {
					best, least = j, b
				}
			}
		}
		if best >= 0 {
			darts[i].twin, darts[best].twin = best, i
		}
	}
	for _, i := range list {
		if d := &darts[i]; d.from < d.to {
			match(i, func(j int32) float64 {
				if darts[j].face == d.face {
					return 0
				}
				return math.Inf(1)
			})
		}
	}
	for _, i := range list {
		d := &darts[i]
		if d.from > d.to || d.twin >= 0 {
			continue
		}
		along := minus(verts[d.to].near, verts[d.from].near)
		n := normals[d.face]
		into := times(n, along)
		match(i, func(j int32) float64 {
			m := normals[darts[j].face]
			other := times(along, m) // its own edge runs the other way
			angle := math.Atan2(-dot(other, n)*math.Sqrt(dot(along, along)), dot(other, into))
			if angle <= 0 {
				angle += 2 * math.Pi
			}
			return angle
		})
	}
}

func minus(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func times(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// Unit is the face's normal at unit length.
func (f *Face) Unit() [3]float64 {
	n := [3]float64{float64(f.Normal[0]), float64(f.Normal[1]), float64(f.Normal[2])}
	l := math.Sqrt(dot(n, n))
	return [3]float64{n[0] / l, n[1] / l, n[2] / l}
}

func (s *Solid) units() [][3]float64 {
	out := make([][3]float64, len(s.Faces))
	for i := range s.Faces {
		out[i] = s.Faces[i].Unit()
	}
	return out
}

// darts lists the edges of all faces, paired, and tells whether any is crowded.
func (s *Solid) darts() (out []dart, crowded bool) {
	n := 0
	for i := range s.Faces {
		for _, loop := range s.Faces[i].loops() {
			n += len(loop)
		}
	}
	out = make([]dart, 0, n)
	for i := range s.Faces {
		for _, loop := range s.Faces[i].loops() {
			first := int32(len(out))
			for j, p := range loop {
				out = append(out, dart{from: p, to: loop[(j+1)%len(loop)], face: int32(i), prev: first + int32(j) - 1})
			}
			out[first].prev = int32(len(out)) - 1
		}
	}
	return out, pair(out, s.units(), s.Vertices)
}

// join finds out how the faces hang together: how many pieces there are, and
// whether the surface is a plain one, with two faces at every edge and one fan
// of faces at every vertex.
func (s *Solid) join() {
	darts, crowded := s.darts()
	parent := make([]int32, len(s.Faces))
	for i := range parent {
		parent[i] = int32(i)
	}
	for i := range darts {
		union(parent, darts[i].face, darts[darts[i].twin].face)
	}
	volume := make([]float64, len(parent))
	at := s.corner()
	for i := range s.Faces {
		volume[find(parent, int32(i))] += s.cone(&s.Faces[i], at)
	}
	s.pieces = 0
	for _, v := range volume {
		if v > 0 { // a cavity's skin is turned inward and counts negative
			s.pieces++
		}
	}
	s.plain = !crowded && plain(darts, len(s.Vertices))
}

// plain tells whether one fan of faces stands round every vertex. A face whose
// loops touch in a vertex is not plain there, for its darts do not tell which
// of its corners is which.
func plain(darts []dart, vertices int) bool {
	count, first := make([]int32, vertices), make([]int32, vertices)
	for i := range darts {
		v := darts[i].from
		if count[v] > 0 && darts[first[v]].face == darts[i].face {
			return false
		}
		count[v]++
		first[v] = int32(i)
	}
	for v, n := range count {
		if n == 0 {
			continue
		}
		i := first[v]
		for ; n > 0; n-- {
			if i = darts[darts[i].prev].twin; i == first[v] {
				break
			}
		}
		if n != 1 {
			return false
		}
	}
	return true
}

func find(parent []int32, i int32) int32 {
	for parent[i] != i {
		parent[i] = parent[parent[i]]
		i = parent[i]
	}
	return i
}

func union(parent []int32, i, j int32) {
	i, j = find(parent, i), find(parent, j)
	parent[max(i, j)] = min(i, j)
}
