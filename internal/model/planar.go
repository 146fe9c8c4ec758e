package model

import "math"

// planar works out plane and area of a face and finds what is wrong with its
// outlines.
func (w *woven) planar(i int, given Vec) *Fault {
	f := &w.faces[i]
	f.area = w.ringArea(f.rings[0])
	f.normal = f.area.unit()
	if !(f.area.length() > Weld*Weld) {
		return &Fault{Kind: Degenerate, At: w.corners[f.rings[0][0]], Detail: "face without area"}
	}
	for _, look := range []func(*wovenFace) *Fault{w.flat, w.holed, w.outlined} {
		if fault := look(f); fault != nil {
			return fault
		}
	}
	if !given.finite() || given.unit().dot(f.normal) < 1-agree {
		return &Fault{Kind: Inverted, At: w.corners[f.rings[0][0]], Detail: "corners do not run counter-clockwise about the normal"}
	}
	return nil
}

func (w *woven) flat(f *wovenFace) *Fault {
	first := w.corners[f.rings[0][0]]
	for _, ring := range f.rings {
		for _, c := range ring {
			if !(math.Abs(w.corners[c].minus(first).dot(f.normal)) <= Flat) {
				return &Fault{Kind: NotFlat, At: w.corners[c]}
			}
		}
	}
	return nil
}

// holed takes the holes off the area.
func (w *woven) holed(f *wovenFace) *Fault {
	for _, hole := range f.rings[1:] {
		a := w.ringArea(hole)
		if !(a.dot(f.normal) < 0) {
			return &Fault{Kind: Inverted, At: w.corners[hole[0]], Detail: "hole does not run the other way"}
		}
		f.area = f.area.plus(a)
	}
	return nil
}

// agree is how far the cosine between a face's normal and the one that was
// given may be from 1: a thousandth of a radian, which tells a wrong normal
// from a rounded one.
const agree = 5e-7

// ringArea is the vector area of a ring: half the sum of the crossed spokes
// (Newell's method).
func (w *woven) ringArea(ring []int) Vec {
	from, sum := w.corners[ring[0]], Vec{}
	for k := 1; k+1 < len(ring); k++ {
		sum = sum.plus(w.corners[ring[k]].minus(from).cross(w.corners[ring[k+1]].minus(from)))
	}
	return sum.by(0.5)
}

// point is a corner seen in the plane of its face.
type point struct{ x, y float64 }

// stroke is one edge there.
type stroke struct {
	from, to int // corners
	a, b     point
}

// outlined finds outlines that cross, and holes outside the outline.
func (w *woven) outlined(f *wovenFace) *Fault {
	flatten := w.flattener(f)
	var all []stroke
	for _, ring := range f.rings {
		for k, c := range ring {
			d := ring[(k+1)%len(ring)]
			all = append(all, stroke{c, d, flatten(c), flatten(d)})
		}
	}
	for i, s := range all {
		for _, t := range all[:i] {
			if s.crosses(t) {
				return &Fault{Kind: Crossing, At: w.corners[s.from].plus(w.corners[s.to]).by(0.5)}
			}
		}
	}
	outer := all[:len(f.rings[0])]
	for _, hole := range f.rings[1:] {
		if c, ok := apart(hole, f.rings[0]); ok && !inside(flatten(c), outer) {
			return &Fault{Kind: Crossing, At: w.corners[c], Detail: "hole outside its face"}
		}
	}
	return nil
}

// flattener drops the axis in which the face extends least, so that
// coordinates stay as they are.
func (w *woven) flattener(f *wovenFace) func(corner int) point {
	x, y := 0, 1
	switch n := f.normal; {
	case math.Abs(n[0]) >= math.Abs(n[1]) && math.Abs(n[0]) >= math.Abs(n[2]):
		x, y = 1, 2
	case math.Abs(n[1]) >= math.Abs(n[2]):
		x, y = 2, 0
	}
	return func(c int) point { return point{w.corners[c][x], w.corners[c][y]} }
}

// apart is a corner of one ring that the other does not have.
func apart(ring, other []int) (int, bool) {
	has := map[int]bool{}
	for _, c := range other {
		has[c] = true
	}
	for _, c := range ring {
		if !has[c] {
			return c, true
		}
	}
	return 0, false
}

// crosses tells whether two edges meet anywhere but in a corner that they
// share. Corners nearer to an edge than Weld are taken to touch it.
func (s stroke) crosses(t stroke) bool {
	if !s.beside(t) {
		return false
	}
	shared := s.from == t.from || s.from == t.to || s.to == t.from || s.to == t.to
	c, d := s.side(t.a), s.side(t.b)
	a, b := t.side(s.a), t.side(s.b)
	if shared {
		// Two edges from one corner meet again only if they run over each other.
		return c == 0 && d == 0 && s.over(t)
	}
	return c*d <= 0 && a*b <= 0 && (c != 0 || d != 0 || s.over(t))
}

// beside tells whether the boxes round two edges meet.
func (s stroke) beside(t stroke) bool {
	return min(s.a.x, s.b.x) <= max(t.a.x, t.b.x)+Weld && min(t.a.x, t.b.x) <= max(s.a.x, s.b.x)+Weld &&
		min(s.a.y, s.b.y) <= max(t.a.y, t.b.y)+Weld && min(t.a.y, t.b.y) <= max(s.a.y, s.b.y)+Weld
}

// side is 1, −1 or 0 for a point left of, right of or on the line of s.
func (s stroke) side(p point) int {
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	d := (float64(dx*(p.y-s.a.y)) - float64(dy*(p.x-s.a.x))) / math.Hypot(dx, dy)
	switch {
	case d > Weld:
		return 1
	case d < -Weld:
		return -1
	}
	return 0
}

// over tells whether two edges on one line have more than a corner in common.
func (s stroke) over(t stroke) bool {
	along := func(p point) float64 {
		if math.Abs(s.b.x-s.a.x) >= math.Abs(s.b.y-s.a.y) {
			return p.x
		}
		return p.y
	}
	low := max(min(along(s.a), along(s.b)), min(along(t.a), along(t.b)))
	high := min(max(along(s.a), along(s.b)), max(along(t.a), along(t.b)))
	return high-low > Weld
}

// inside counts how often a ray from p to the right meets the outline.
func inside(p point, outline []stroke) bool {
	in := false
	for _, s := range outline {
		if (s.a.y > p.y) != (s.b.y > p.y) && p.x < s.a.x+float64((s.b.x-s.a.x)*((p.y-s.a.y)/(s.b.y-s.a.y))) {
			in = !in
		}
	}
	return in
}
