package model_test

import (
	"math"

	"casewright/internal/model"
)

// Bodies for the tests, built face by face, with volumes worked out by hand.

type vec = model.Vec

// at is a corner in the plane of a prism's base.
type at struct{ x, y float64 }

// prism stands on z = low and reaches to z = high. Outer runs
// counter-clockwise seen from above, holes clockwise.
func prism(low, high float64, outer []at, holes ...[]at) *model.Shell {
	up, down := vec{0, 0, 1}, vec{0, 0, -1}
	top := model.PlanarFace{Outer: raised(outer, high), Normal: up, Name: "top"}
	bottom := model.PlanarFace{Outer: backwards(raised(outer, low)), Normal: down, Name: "bottom"}
	s := &model.Shell{}
	for _, ring := range append([][]at{outer}, holes...) {
		for k, a := range ring {
			b := ring[(k+1)%len(ring)]
			s.Faces = append(s.Faces, model.PlanarFace{
				Outer:  []vec{{a.x, a.y, low}, {b.x, b.y, low}, {b.x, b.y, high}, {a.x, a.y, high}},
				Normal: vec{b.y - a.y, a.x - b.x, 0}, Name: "side",
			})
		}
	}
	for _, h := range holes {
		top.Holes = append(top.Holes, raised(h, high))
		bottom.Holes = append(bottom.Holes, backwards(raised(h, low)))
	}
	s.Faces = append(s.Faces, top, bottom)
	return s
}

func raised(ring []at, z float64) []vec {
	out := make([]vec, len(ring))
	for k, p := range ring {
		out[k] = vec{p.x, p.y, z}
	}
	return out
}

func backwards[T any](ring []T) []T {
	out := make([]T, len(ring))
	for k, p := range ring {
		out[len(ring)-1-k] = p
	}
	return out
}

func rectangle(x0, y0, x1, y1 float64) []at { return []at{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }

// regular is a polygon of n corners on a circle.
func regular(n int, x, y, r float64) []at {
	out := make([]at, n)
	for k := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
		out[k] = at{x + r*cos, y + r*sin}
	}
	return out
}

// Three dovetails, 1:8, between boards 20 thick and 120 wide, each 200 long
// without tails or pins. A tail is 32 at its end and 32 − 2·20/8 = 27 at the
// baseline, so it has 590 mm² of face.

// tailBoard: 200·120·20 + 3·590·20 = 515 400 mm³.
func tailBoard() *model.Shell {
	outline := []at{{0, 0}, {200, 0}, {200, 120}, {0, 120}}
	for _, y := range []float64{84, 44, 4} { // from the far edge back
		outline = append(outline, at{0, y + 29.5}, at{-20, y + 32}, at{-20, y}, at{0, y + 2.5})
	}
	return prism(0, 20, outline)
}

// pinBoard: 200·120·20 + (120·20 − 3·590)·20 = 492 600 mm³. The pins stand
// along z, from 200 to 220; the tails come in from y = 0, where they are wide.
func pinBoard() *model.Shell {
	s := &model.Shell{}
	face := func(name string, normal vec, corners ...vec) {
		s.Faces = append(s.Faces, model.PlanarFace{Outer: corners, Normal: normal, Name: name})
	}
	left, right := vec{-1, 0, 0}, vec{1, 0, 0}
	face("end", vec{0, 0, -1}, backwards(raised(rectangle(0, 0, 120, 20), 0))...)
	face("edge", left, vec{0, 20, 0}, vec{0, 0, 0}, vec{0, 0, 220}, vec{0, 20, 220})
	face("edge", right, vec{120, 0, 0}, vec{120, 20, 0}, vec{120, 20, 220}, vec{120, 0, 220})
	narrow := []float64{0, 4, 36, 44, 76, 84, 116, 120} // pins at y = 0
	wide := []float64{0, 6.5, 33.5, 46.5, 73.5, 86.5, 113.5, 120}
	front := []vec{{0, 0, 0}, {120, 0, 0}}
	back := []vec{{0, 20, 0}, {120, 20, 0}}
	for k := 6; k >= 0; k -= 2 {
		front = append(front, comb(narrow, k, 0)...)
		back = append(back, comb(wide, k, 20)...)
		face("pin end", vec{0, 0, 1}, vec{narrow[k], 0, 220}, vec{narrow[k+1], 0, 220}, vec{wide[k+1], 20, 220}, vec{wide[k], 20, 220})
	}
	face("outside", vec{0, -1, 0}, front...)
	face("inside", vec{0, 1, 0}, backwards(back)...)
	for k := 1; k < 7; k += 2 {
		a, b, c, d := narrow[k], narrow[k+1], wide[k], wide[k+1]
		face("socket", vec{0, 0, 1}, vec{a, 0, 200}, vec{b, 0, 200}, vec{d, 20, 200}, vec{c, 20, 200})
		face("cheek", vec{20, a - c, 0}, vec{a, 0, 200}, vec{c, 20, 200}, vec{c, 20, 220}, vec{a, 0, 220})
		face("cheek", vec{-20, d - b, 0}, vec{d, 20, 200}, vec{b, 0, 200}, vec{b, 0, 220}, vec{d, 20, 220})
	}
	return s
}

// comb is the outline of pin k seen on a face, from right to left, with the
// floors beside it; the outermost corners have no floor.
func comb(x []float64, k int, y float64) []vec {
	var out []vec
	if k < 6 {
		out = append(out, vec{x[k+1], y, 200})
	}
	out = append(out, vec{x[k+1], y, 220}, vec{x[k], y, 220})
	if k > 0 {
		out = append(out, vec{x[k], y, 200})
	}
	return out
}

// body is one of the test solids.
type body struct {
	name   string
	shell  *model.Shell
	volume float64 // mm³
	genus  int     // holes right through
}

func bodies() []body {
	return []body{
		{"unit box", prism(0, 1, rectangle(0, 0, 1, 1)), 1, 0},
		{"box with a square hole", prism(0, 20, rectangle(0, 0, 100, 60), backwards(rectangle(40, 20, 60, 40))), 100*60*20 - 20*20*20, 1},
		{"plate with two holes", prism(-3, 3, rectangle(0, 0, 100, 60), backwards(regular(6, 25, 30, 10)), backwards(regular(6, 75, 30, 10))),
			// a regular hexagon has 3√3/2 r²
			6 * (6000 - 2*1.5*math.Sqrt(3)*100), 2},
		{"L", prism(0, 30, []at{{0, 0}, {80, 0}, {80, 20}, {20, 20}, {20, 50}, {0, 50}}), (80*20 + 20*30) * 30, 0},
		{"tail board", tailBoard(), 515400, 0},
		{"pin board", pinBoard(), 492600, 0},
	}
}

// mesh cuts the faces of a shell into triangles by clipping ears, one face tag
// for each face. It is for the sound bodies of these tests only.
func mesh(s *model.Shell) *model.Mesh {
	m := &model.Mesh{}
	number := map[vec]int32{}
	for f, face := range s.Faces {
		m.Faces = append(m.Faces, model.FaceTag{Name: face.Name})
		ring := face.Outer
		for _, h := range face.Holes {
			ring = bridged(ring, h, face.Normal)
		}
		for _, t := range ears(ring, face.Normal) {
			var corners [3]int32
			for k, v := range t {
				if _, ok := number[v]; !ok {
					number[v] = int32(len(m.Positions))
					m.Positions = append(m.Positions, v)
				}
				corners[k] = number[v]
			}
			m.Triangles = append(m.Triangles, corners)
			m.Face = append(m.Face, int32(f))
		}
	}
	return m
}

func sub(a, b vec) vec { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func dot(a, b vec) float64 {
	return a[0]*b[0] + a[1]*b[1] + a[2]*b[2]
}
func cross(a, b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// turn is twice the area of a triangle about a normal.
func turn(a, b, c, normal vec) float64 { return dot(cross(sub(b, a), sub(c, a)), normal) }

// bridged joins a hole to the outline over the shortest bridge that crosses
// nothing.
func bridged(outer, hole []vec, normal vec) []vec {
	best, bi, bj := math.Inf(1), 0, 0
	for i, a := range outer {
		for j, b := range hole {
			if d := dot(sub(a, b), sub(a, b)); d < best && free(a, b, outer, normal) && free(a, b, hole, normal) {
				best, bi, bj = d, i, j
			}
		}
	}
	out := append([]vec{}, outer[:bi+1]...)
	out = append(append(out, hole[bj:]...), hole[:bj+1]...)
	return append(out, outer[bi:]...)
}

func free(a, b vec, ring []vec, normal vec) bool {
	for k, c := range ring {
		d := ring[(k+1)%len(ring)]
		if turn(a, b, c, normal)*turn(a, b, d, normal) < 0 && turn(c, d, a, normal)*turn(c, d, b, normal) < 0 {
			return false
		}
	}
	return true
}

func ears(ring []vec, normal vec) (all [][3]vec) {
	for ring = append([]vec{}, ring...); len(ring) > 3; {
		k := ear(ring, normal)
		n := len(ring)
		all = append(all, [3]vec{ring[(k+n-1)%n], ring[k], ring[(k+1)%n]})
		ring = append(ring[:k:k], ring[k+1:]...)
	}
	return append(all, [3]vec{ring[0], ring[1], ring[2]})
}

func ear(ring []vec, normal vec) int {
	n := len(ring)
	for k := range ring {
		a, b, c := ring[(k+n-1)%n], ring[k], ring[(k+1)%n]
		if turn(a, b, c, normal) > 1e-9 && !holds(a, b, c, ring, normal) {
			return k
		}
	}
	panic("no ear: the test body is not sound")
}

func holds(a, b, c vec, ring []vec, normal vec) bool {
	for _, p := range ring {
		if p != a && p != b && p != c && turn(a, b, p, normal) >= 0 && turn(b, c, p, normal) >= 0 && turn(c, a, p, normal) >= 0 {
			return true
		}
	}
	return false
}

// tube is the round wall and the two ends of a cylinder of n facets, the wall
// one curved face.
func tube(n int, r, high float64) *model.Mesh {
	m := mesh(prism(0, high, regular(n, 0, 0, r)))
	for i, f := range m.Face {
		m.Face[i] = max(0, f-int32(n)+1)
	}
	m.Faces = []model.FaceTag{{Name: "wall", Curved: true}, {Name: "top"}, {Name: "bottom"}}
	return m
}
