package curve

import (
	"math"
	"slices"
)

// Point is a point of the plane, mm, in the curve's frame.
type Point struct{ X, Y float64 }

// MinTolerance is the finest tolerance of Flatten and Beziers, mm. Anything
// less, and NaN, is taken as this.
const MinTolerance = 1e-6

// depth bounds how often a piece is halved; each halving quarters the error at
// least, and 100 m over MinTolerance is 2^37.
const depth = 24

// Flatten is points on the curve from x0 to x1 (mm, in either order; the
// points go the same way) such that the curve is nowhere farther than
// tolerance mm from the line through them. Corners are always points. Where x0
// and x1 are the same there is one point.
func (c *Curve) Flatten(x0, x1, tolerance float64) []Point {
	tolerance = tolerable(tolerance)
	lo, hi := c.order(x0, x1)
	pts := []Point{{lo, c.Y(lo)}}
	for _, n := range c.clipped(lo, hi) {
		k := pieces(n, tolerance)
		at := n.from
		for i := 1; i <= k; i++ {
			to := n.from + (n.to-n.from)*float64(i)/float64(k)
			pts = flattenPiece(pts, run{from: at, to: to, line: n.line}, tolerance, depth)
			at = to
		}
	}
	if c.inReach(x1) < c.inReach(x0) {
		slices.Reverse(pts)
	}
	return pts
}

func tolerable(t float64) float64 {
	if !(t > MinTolerance) {
		return MinTolerance
	}
	return min(t, farthest)
}

// pieces guesses into how many a run should be cut: the error of a chord falls
// with the square of its length.
func pieces(n run, tolerance float64) int {
	return max(1, int(math.Ceil(math.Sqrt(chordError(n)/tolerance))))
}

// chordError is how far a run goes from its own chord; its angle is monotone,
// so the farthest point is where it runs parallel.
func chordError(n run) float64 {
	y0, y1 := n.line.at(n.from).y, n.line.at(n.to).y
	angle := math.Atan2(y1-y0, n.to-n.from)
	x := parallelAt(n, angle)
	sin, cos := math.Sincos(angle)
	return math.Abs((n.line.at(x).y-y0)*cos - (x-n.from)*sin)
}

// flattenPiece adds the points of n after its first.
func flattenPiece(pts []Point, n run, tolerance float64, depth int) []Point {
	if depth == 0 || chordError(n) <= tolerance {
		return append(pts, Point{n.to, n.line.at(n.to).y})
	}
	a, b := n, n
	a.to = n.from + (n.to-n.from)/2
	b.from = a.to
	return flattenPiece(flattenPiece(pts, a, tolerance, depth-1), b, tolerance, depth-1)
}

// Bezier is a cubic Bézier: two ends with the two handles between them.
type Bezier [4]Point

// At is the point at parameter t, 0 to 1.
func (b Bezier) At(t float64) Point {
	s := 1 - t
	w := [4]float64{s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t}
	var p Point
	for i, q := range b {
		p.X += w[i] * q.X
		p.Y += w[i] * q.Y
	}
	return p
}

// Beziers is cubics along the curve from x0 to x1 (mm, either order; they run
// from the smaller to the larger x), each starting where the last ended, that
// stay within tolerance mm of it. A straight stretch is one cubic, half a beam
// shape is one and exact.
func (c *Curve) Beziers(x0, x1, tolerance float64) []Bezier {
	tolerance = tolerable(tolerance)
	var out []Bezier
	lo, hi := c.order(x0, x1)
	for _, n := range c.clipped(lo, hi) {
		// The laws of a batten have a join at the middle, where it bends most.
		mid := n.line.tightest(n.from, n.to)
		for _, h := range [...]run{{n.from, mid, n.line, n.bow}, {mid, n.to, n.line, n.bow}} {
			if h.from < h.to {
				out = fit(out, h, tolerance, depth)
			}
		}
	}
	return out
}

// fit adds the cubics of a run, halving it until each is near enough.
func fit(out []Bezier, n run, tolerance float64, depth int) []Bezier {
	b := cubicOn(n)
	if depth == 0 || cubicError(n, b) <= 0.8*tolerance {
		return append(out, b)
	}
	l, r := n, n
	l.to = n.from + (n.to-n.from)/2
	r.from = l.to
	return fit(fit(out, l, tolerance, depth-1), r, tolerance, depth-1)
}

// cubicOn is the cubic with the run's ends and tangents. Handles a third of the
// way along x make it a polynomial in x, which a beam's half is.
func cubicOn(n run) Bezier {
	if k, ok := n.line.(circle); ok {
		return k.cubic(n.from, n.to)
	}
	a, b := n.line.at(n.from), n.line.at(n.to)
	h := (n.to - n.from) / 3
	return Bezier{
		{n.from, a.y}, {n.from + h, a.y + h*math.Tan(a.angle)},
		{n.to - h, b.y - h*math.Tan(b.angle)}, {n.to, b.y},
	}
}

// cubicError is the greatest distance between cubic and run at fifteen places;
// the fifth of the tolerance kept in hand by fit covers what lies between.
func cubicError(n run, b Bezier) float64 {
	most := 0.0
	for i := 1; i < 16; i++ {
		p := b.At(float64(i) / 16)
		s := n.line.at(p.X)
		most = max(most, math.Abs(p.Y-s.y)*math.Cos(s.angle))
	}
	return most
}
