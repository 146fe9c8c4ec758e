package csg

import (
	"fmt"
	"math/big"
	"testing"

	"casewright/internal/measure"
)

const mm = measure.Millimetre

func block(tag Tag, axis Axis, x0, y0, z0, x1, y1, z1 measure.Length) Prism {
	return Box([3]measure.Length{x0, y0, z0}, [3]measure.Length{x1, y1, z1}, axis, tag)
}

// scaled multiplies every coordinate, so that cases can be written in small numbers.
func scaled(b Body, by measure.Length) Body {
	one := func(p Prism) Prism {
		p.From, p.To = p.From*by, p.To*by
		ring := func(r []Point2) []Point2 {
			out := make([]Point2, len(r))
			for i, c := range r {
				out[i] = Point2{c.U * by, c.V * by}
			}
			return out
		}
		p.Outline = ring(p.Outline)
		holes := p.Holes
		p.Holes = nil
		for _, h := range holes {
			p.Holes = append(p.Holes, ring(h))
		}
		return p
	}
	out := Body{Base: one(b.Base)}
	for _, c := range b.Cuts {
		out.Cuts = append(out.Cuts, one(c))
	}
	return out
}

func mustBuild(t testing.TB, b Body) *Solid {
	t.Helper()
	s, err := Build(b)
	if err != nil {
		t.Fatalf("Build: %v", err)
	}
	if wrong := unsound(s); wrong != "" {
		t.Fatalf("%s\n%s", wrong, dump(b))
	}
	return s
}

func dump(b Body) string {
	out := fmt.Sprintf("base %+v\n", b.Base)
	for i, c := range b.Cuts {
		out += fmt.Sprintf("cut %d %+v\n", i, c)
	}
	return out
}

// unsound tells what is wrong with a solid or its mesh, or "".
func unsound(s *Solid) string {
	for _, check := range []func(*Solid) string{facesPair, facesFlat, meshCloses, trianglesFill, noVertexInsideEdge} {
		if wrong := check(s); wrong != "" {
			return wrong
		}
	}
	return ""
}

func facesPair(s *Solid) string {
	count := map[[2]int32]int{}
	for i := range s.Faces {
		for _, l := range s.Faces[i].loops() {
			seen := map[int32]bool{}
			for j, p := range l {
				if seen[p] {
					return fmt.Sprintf("face %d: a loop comes twice to vertex %d", i, p)
				}
				seen[p] = true
				count[[2]int32{p, l[(j+1)%len(l)]}]++
			}
		}
	}
	for e, n := range count {
		if m := count[[2]int32{e[1], e[0]}]; m != n {
			return fmt.Sprintf("edge %v stands %d times, its opposite %d times", e, n, m)
		}
	}
	return ""
}

// facesFlat checks with rationals that vertices lie in their planes exactly.
func facesFlat(s *Solid) string {
	for i := range s.Faces {
		f := &s.Faces[i]
		d := new(big.Rat).SetInt(f.plane.d.big())
		for _, l := range f.loops() {
			for _, p := range l {
				sum := new(big.Rat)
				for k, x := range s.Vertices[p].Exact() {
					sum.Add(sum, x.Mul(x, new(big.Rat).SetInt64(f.plane.n[k])))
				}
				if sum.Cmp(d) != 0 {
					return fmt.Sprintf("face %d: vertex %d off its plane", i, p)
				}
			}
		}
	}
	return ""
}

// meshCloses checks that every directed edge has one opposite, that every
// point has one fan, and that points double up only where the skin touches itself.
func meshCloses(s *Solid) string {
	m := s.Mesh()
	next := map[[2]int32]int32{} // around a point: from one neighbour to the next
	edges := map[[2]int32]bool{}
	for i, t := range m.Triangles {
		for j := range 3 {
			a, b, c := t[j], t[(j+1)%3], t[(j+2)%3]
			if edges[[2]int32{a, b}] {
				return fmt.Sprintf("triangle %d: edge %d %d stands twice", i, a, b)
			}
			edges[[2]int32{a, b}] = true
			next[[2]int32{a, b}] = c
		}
	}
	degree := make([]int, len(m.Points))
	start := make([]int32, len(m.Points))
	for e := range edges {
		if !edges[[2]int32{e[1], e[0]}] {
			return fmt.Sprintf("edge %v has no opposite", e)
		}
		degree[e[0]]++
		start[e[0]] = e[1]
	}
	for p, n := range degree {
		at, steps := start[p], 0
		for {
			at = next[[2]int32{int32(p), at}]
			steps++
			if at == start[p] || steps > n {
				break
			}
		}
		if steps != n {
			return fmt.Sprintf("point %d has %d edges and a fan of %d", p, n, steps)
		}
	}
	return ""
}

// trianglesFill checks with rationals that triangles are wound as their face
// and that their areas add up to its area exactly.
func trianglesFill(s *Solid) string {
	m := s.Mesh()
	sum := make([]*big.Rat, len(s.Faces))
	for i := range sum {
		sum[i] = new(big.Rat)
	}
	for i, t := range m.Triangles {
		f := m.Face[i]
		a := loopArea(&s.Faces[f], [][3]*big.Rat{m.exact(s, t[0]), m.exact(s, t[1]), m.exact(s, t[2])})
		if a.Sign() <= 0 {
			return fmt.Sprintf("triangle %d of face %d is turned over or flat", i, f)
		}
		sum[f].Add(sum[f], a)
	}
	for i := range s.Faces {
		f := &s.Faces[i]
		want := new(big.Rat)
		for _, l := range f.loops() {
			want.Add(want, seenArea(s, f, l))
		}
		if want.Cmp(sum[i]) != 0 {
			return fmt.Sprintf("face %d: triangles have area %v of %v", i, sum[i].FloatString(3), want.FloatString(3))
		}
	}
	return ""
}

// exact is where a point of the mesh lies.
func (m *Mesh) exact(s *Solid, p int32) [3]*big.Rat {
	if v := m.Vertex[p]; v >= 0 {
		return s.Vertices[v].Exact()
	}
	i := len(m.between) - (len(m.Points) - int(p))
	a, b := m.exact(s, m.between[i][0]), m.exact(s, m.between[i][1])
	for k := range a {
		a[k].Mul(a[k].Add(a[k], b[k]), big.NewRat(1, 2))
	}
	return a
}

func seenArea(s *Solid, f *Face, loop []int32) *big.Rat {
	at := make([][3]*big.Rat, len(loop))
	for i, p := range loop {
		at[i] = s.Vertices[p].Exact()
	}
	return loopArea(f, at)
}

// loopArea is twice the area of a loop seen along the face's dropped axis,
// positive if it runs counter-clockwise from outside.
func loopArea(f *Face, at [][3]*big.Rat) *big.Rat {
	drop := f.plane.drop()
	u, v := (drop+1)%3, (drop+2)%3
	sum := new(big.Rat)
	for i, p := range at {
		q := at[(i+1)%len(at)]
		sum.Add(sum, new(big.Rat).Sub(new(big.Rat).Mul(p[u], q[v]), new(big.Rat).Mul(p[v], q[u])))
	}
	if f.Normal[drop] < 0 {
		sum.Neg(sum)
	}
	return sum
}

func noVertexInsideEdge(s *Solid) string {
	for i := range s.Faces {
		for _, l := range s.Faces[i].loops() {
			for j, p := range l {
				a, b := &s.Vertices[p], &s.Vertices[l[(j+1)%len(l)]]
				for k := range s.Vertices {
					if u := &s.Vertices[k]; u != a && u != b && strictlyBetween(a, u, b) {
						return fmt.Sprintf("vertex %d lies inside edge %d %d", k, p, l[(j+1)%len(l)])
					}
				}
			}
		}
	}
	return ""
}
