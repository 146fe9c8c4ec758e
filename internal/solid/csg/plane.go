package csg

import "cmp"

// plane is n·x = d with n primitive (no common divisor) and its first
// component that is not zero positive, so that one plane has one value. At
// most two components of n differ from zero: every face of a prism is square
// to an axis or contains its direction.
type plane struct {
	n [3]int64
	d int128
}

// level is the plane square to an axis at a place on it.
func level(axis int, at int64) plane {
	p := plane{d: wide(at)}
	p.n[axis] = 1
	return p
}

// wallPlane is the plane through a segment of an outline along its prism's
// axis; front tells whether the plane's normal points out of the prism, whose
// inside lies to the left of the segment.
func wallPlane(axis int, p, q [2]int64) (w plane, front bool) {
	u, v := (axis+1)%3, (axis+2)%3
	w.n[u], w.n[v] = q[1]-p[1], p[0]-q[0]
	g := gcd(w.n[u], w.n[v])
	first := w.n[min(u, v)]
	if first == 0 {
		first = w.n[max(u, v)]
	}
	front = first > 0
	if !front {
		g = -g
	}
	w.n[u] /= g
	w.n[v] /= g
	w.d = mul(w.n[u], p[0]).plus(mul(w.n[v], p[1]))
	return w, front
}

// square is the axis that the plane is square to, or -1.
func (p *plane) square() int {
	for k := range 3 {
		if p.n[(k+1)%3] == 0 && p.n[(k+2)%3] == 0 {
			return k
		}
	}
	return -1
}

// drop is the axis along which the plane is seen best: leaving that
// coordinate out maps the plane onto two others without losing anything.
func (p *plane) drop() int {
	d := 0
	for k := 1; k < 3; k++ {
		if abs(p.n[k]) > abs(p.n[d]) {
			d = k
		}
	}
	return d
}

// side is the sign of n·x - d for the point whose coordinates on axes i and j
// are given; the plane must contain the direction of the third.
func (p *plane) side(i, j int, a, b int64) int {
	return p.excess(i, j, a, b).sign()
}

func (p *plane) excess(i, j int, a, b int64) int128 {
	return mul(p.n[i], a).plus(mul(p.n[j], b)).minus(p.d)
}

func (p *plane) compare(q *plane) int {
	for k := range 3 {
		if c := cmp.Compare(p.n[k], q.n[k]); c != 0 {
			return c
		}
	}
	return p.d.cmp(q.d)
}

func abs(n int64) int64 {
	if n < 0 {
		return -n
	}
	return n
}
