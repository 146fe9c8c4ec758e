package view

import (
	"math"
	"slices"
)

// The test solids. Each is a closed body with its faces counter-clockwise seen
// from outside; faces are tagged in the order they are made.

// frame places a profile: its x and y run along u and v, the prism along u×v.
type frame struct{ o, u, v Vec3 }

func (f frame) w() Vec3 { return f.u.cross(f.v) }

func (f frame) at(p Point2, h float64) Vec3 {
	return f.o.plus(f.u.times(p.X)).plus(f.v.times(p.Y)).plus(f.w().times(h))
}

var (
	flat  = frame{Vec3{}, Vec3{1, 0, 0}, Vec3{0, 1, 0}} // profile on the floor, prism upward
	front = frame{Vec3{}, Vec3{1, 0, 0}, Vec3{0, 0, 1}} // profile seen from the front, prism toward the eye
)

// prism is a profile (counter-clockwise, holes clockwise) drawn out from h0 to
// h1. Facets listed as curved get one tag.
func prism(id int, f frame, profile []Point2, holes [][]Point2, h0, h1 float64, curved func(i int) bool) Body {
	b := Body{ID: id}
	ring := func(r []Point2, h float64, backward bool) []Vec3 {
		out := make([]Vec3, len(r))
		for i, p := range r {
			if backward {
				p = r[len(r)-1-i]
			}
			out[i] = f.at(p, h)
		}
		return out
	}
	top := Face{Outer: ring(profile, h1, false), Normal: f.w(), Tag: 0}
	bottom := Face{Outer: ring(profile, h0, true), Normal: f.w().times(-1), Tag: 1}
	for _, h := range holes {
		top.Holes = append(top.Holes, ring(h, h1, false))
		bottom.Holes = append(bottom.Holes, ring(h, h0, true))
	}
	b.Faces = append(b.Faces, top, bottom)
	for n, r := range append([][]Point2{profile}, holes...) {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			s := Face{Outer: []Vec3{f.at(p, h0), f.at(q, h0), f.at(q, h1), f.at(p, h1)}, Tag: len(b.Faces)}
			if n == 0 && curved != nil && curved(i) {
				s.Curved, s.Tag = true, 1000
			}
			b.Faces = append(b.Faces, s)
		}
	}
	return b
}

func rect(x0, y0, x1, y1 float64) []Point2 {
	return []Point2{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

func reversed(r []Point2) []Point2 {
	out := make([]Point2, len(r))
	for i, p := range r {
		out[len(r)-1-i] = p
	}
	return out
}

// box is a board along the axes. Tags: 0 top, 1 bottom, 2 front, 3 right,
// 4 back, 5 left.
func box(id int, x0, y0, z0, x1, y1, z1 float64) Body {
	return prism(id, flat, rect(x0, y0, x1, y1), nil, z0, z1, nil)
}

// boredBox has a rectangular hole from front to back. Tags: 0 front, 1 back.
func boredBox(id int, x0, y0, z0, x1, y1, z1 float64, hole []Point2) Body {
	return prism(id, front, rect(x0, z0, x1, z1), [][]Point2{reversed(hole)}, -y1, -y0, nil)
}

// dovetail sizes, in mm.
type dovetail struct {
	width, thickness, long float64
	tails                  int
	slope                  float64 // rise over run
	reach                  float64 // length of the tail board; 0 means long
}

// edges are where the tails begin and end along the width, at their root
// (narrow) and at their end (wide).
func (d dovetail) edges() (root, end []float64) {
	pitch := d.width / float64(d.tails)
	flare := d.slope * d.thickness
	for i := range d.tails {
		mid := (float64(i) + 0.5) * pitch
		half := pitch/2 - 5 // half a pin is 5 mm where it is widest
		root = append(root, mid-half, mid+half)
		end = append(end, mid-half-flare, mid+half+flare)
	}
	return root, end
}

// tailBoard lies on top, its tails over the pin board at the left: x from 0,
// z from long−thickness to long, y the width.
func (d dovetail) tailBoard(id int) Body {
	root, end := d.edges()
	t := d.thickness
	far := d.reach
	if far == 0 {
		far = d.long
	}
	profile := []Point2{{far, 0}, {far, d.width}, {t, d.width}}
	for i := len(root) - 2; i >= 0; i -= 2 {
		profile = append(profile, Point2{t, root[i+1]}, Point2{0, end[i+1]}, Point2{0, end[i]}, Point2{t, root[i]})
	}
	profile = append(profile, Point2{t, 0})
	return prism(id, flat, profile, nil, d.long-t, d.long, nil)
}

// pinBoard stands at the left under and between the tails.
func (d dovetail) pinBoard(id int) Body {
	root, end := d.edges()
	t, low, high := d.thickness, d.long-d.thickness, d.long
	b := Body{ID: id}
	add := func(outer ...Vec3) { b.Faces = append(b.Faces, Face{Outer: outer, Tag: len(b.Faces)}) }
	add(Vec3{0, 0, 0}, Vec3{0, d.width, 0}, Vec3{t, d.width, 0}, Vec3{t, 0, 0})                   // below
	add(Vec3{0, 0, 0}, Vec3{t, 0, 0}, Vec3{t, 0, high}, Vec3{0, 0, high})                         // front
	add(Vec3{t, d.width, 0}, Vec3{0, d.width, 0}, Vec3{0, d.width, high}, Vec3{t, d.width, high}) // back
	outside := []Vec3{{0, 0, 0}, {0, 0, high}}
	inside := []Vec3{{t, 0, 0}, {t, d.width, 0}, {t, d.width, high}}
	var inner []Vec3
	o, r := 0.0, 0.0 // where the pin at hand begins
	for i := 0; i < len(root); i += 2 {
		add(Vec3{0, o, high}, Vec3{t, r, high}, Vec3{t, root[i], high}, Vec3{0, end[i], high})                  // pin top
		add(Vec3{0, end[i], low}, Vec3{0, end[i], high}, Vec3{t, root[i], high}, Vec3{t, root[i], low})         // socket's near side
		add(Vec3{0, end[i], low}, Vec3{t, root[i], low}, Vec3{t, root[i+1], low}, Vec3{0, end[i+1], low})       // socket floor
		add(Vec3{t, root[i+1], low}, Vec3{t, root[i+1], high}, Vec3{0, end[i+1], high}, Vec3{0, end[i+1], low}) // far side
		outside = append(outside, Vec3{0, end[i], high}, Vec3{0, end[i], low}, Vec3{0, end[i+1], low}, Vec3{0, end[i+1], high})
		inner = append(inner, Vec3{t, root[i], high}, Vec3{t, root[i], low}, Vec3{t, root[i+1], low}, Vec3{t, root[i+1], high})
		o, r = end[i+1], root[i+1]
	}
	add(Vec3{0, o, high}, Vec3{t, r, high}, Vec3{t, d.width, high}, Vec3{0, d.width, high})
	add(append(outside, Vec3{0, d.width, high}, Vec3{0, d.width, 0})...)
	for i := len(inner) - 1; i >= 0; i-- {
		inside = append(inside, inner[i])
	}
	add(append(inside, Vec3{t, 0, high})...)
	return b
}

// bowRail is a rail whose front bulges: chord along x from 0 to long, rise
// toward the eye, n facets.
func bowRail(id int, at Vec3, long, rise, deep, high float64, n int) Body {
	profile := []Point2{{long, deep}, {0, deep}, {0, 0}}
	r := (long*long/4 + rise*rise) / (2 * rise)
	half := math.Asin(long / 2 / r)
	for i := 1; i < n; i++ {
		a := half * (2*float64(i)/float64(n) - 1)
		profile = append(profile, Point2{long/2 + r*math.Sin(a), -rise + r*(1-math.Cos(a))})
	}
	profile = append(profile, Point2{long, 0})
	f := frame{at, Vec3{1, 0, 0}, Vec3{0, 1, 0}}
	return prism(id, f, profile, nil, 0, high, func(i int) bool { return i >= 2 && i < 2+n })
}

// turned is a body moved by a rotation.
func turned(b Body, turn func(Vec3) Vec3) Body {
	out := b.Moved(Vec3{})
	out.Box = Box{}
	for i := range out.Faces {
		f := &out.Faces[i]
		f.Normal = turn(f.Normal)
		for k := range f.Outer {
			f.Outer[k] = turn(f.Outer[k])
		}
		for _, h := range f.Holes {
			for k := range h {
				h[k] = turn(h[k])
			}
		}
	}
	return out
}

// mirrored is a body seen in a mirror across the plane x = at.
func mirrored(b Body, at float64) Body {
	out := turned(b, func(v Vec3) Vec3 { return Vec3{2*at - v.X, v.Y, v.Z} })
	for i := range out.Faces {
		f := &out.Faces[i]
		slices.Reverse(f.Outer)
		f.Normal = Vec3{}
		for _, h := range f.Holes {
			slices.Reverse(h)
		}
	}
	return out
}

// sideboard is the scene the speed is measured on: a dovetailed case with
// twelve dovetailed drawers, bowed rails of 100 facets, dividers, a back of
// boards and a stand. About 110 bodies and 2 500 faces; everything touches.
func sideboard() []Body {
	s := &scenery{}
	const wide, deep, high = 1500, 450, 800
	side := dovetail{width: deep, thickness: 20, long: high, tails: 15, slope: 1.0 / 7, reach: wide / 2}
	s.pair(side.pinBoard(0), wide/2)
	s.pair(side.tailBoard(0), wide/2)
	s.add(box(0, 20, 0, 60, wide-20, deep, 80))
	for c := 1; c < 4; c++ {
		x := 20 + 365*float64(c)
		s.add(box(0, x-10, 60, 80, x+10, deep-10, high-20))
	}
	for r := range 3 {
		z := 80 + 220*float64(r)
		for half := range 2 {
			s.add(bowRail(0, Vec3{20 + 730*float64(half), 0, z}, 730, 25, 60, 20, 100))
		}
		for c := range 4 {
			x := 20 + 365*float64(c)
			s.drawer(x+10, x+355, z+21, z+200)
		}
	}
	for i := range 20 { // back, in boards that touch
		x := 20 + 73*float64(i)
		s.add(box(0, x, deep-10, 80, x+73, deep, high-20))
	}
	for i := range 4 {
		x, y := float64(i%2)*(wide-60), float64(i/2)*(deep-60)
		s.add(box(0, x, y, -100, x+60, y+60, 0))
	}
	return s.bodies
}

type scenery struct{ bodies []Body }

func (s *scenery) add(b Body) {
	b.ID = len(s.bodies) + 1
	s.bodies = append(s.bodies, b)
}

func (s *scenery) pair(b Body, middle float64) {
	s.add(b)
	s.add(mirrored(b, middle))
}

// drawer is dovetailed at its front, which is in two halves.
func (s *scenery) drawer(x0, x1, z0, z1 float64) {
	half := (x1 - x0) / 2
	d := dovetail{width: z1 - z0, thickness: 12, long: half, tails: 5, slope: 1.0 / 6, reach: 380}
	at := Vec3{x0 + half, 0, z0}
	lie := func(b Body) Body { // length to the right, width up
		return turned(b, func(v Vec3) Vec3 { return Vec3{v.Z, v.X, v.Y}.plus(at) })
	}
	s.pair(lie(d.pinBoard(0)), x0+half)
	s.pair(lie(d.tailBoard(0)), x0+half)
	s.add(box(0, x0+12, 368, z0, x1-12, 380, z1))
	s.add(box(0, x0+12, 12, z0, x1-12, 368, z0+6))
}
