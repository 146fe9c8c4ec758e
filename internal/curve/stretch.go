package curve

import (
	"math"

	"casewright/internal/measure"
)

// clipped is the runs between x0 and x1, x0 ≤ x1, cut to size.
func (c *Curve) clipped(x0, x1 float64) []run {
	var out []run
	for _, n := range c.runs {
		n.from, n.to = max(n.from, x0), min(n.to, x1)
		if n.from < n.to {
			out = append(out, n)
		}
	}
	return out
}

// order brings two x within reach and the smaller to the front.
func (c *Curve) order(x0, x1 float64) (lo, hi float64) {
	x0, x1 = c.inReach(x0), c.inReach(x1)
	return min(x0, x1), max(x0, x1)
}

func (c *Curve) lengthBetween(x0, x1 float64) float64 {
	sum := 0.0
	for _, n := range c.clipped(x0, x1) {
		sum += n.line.length(n.from, n.to)
	}
	return sum
}

// LengthBetween is the length along the curve between two x, in either order.
func (c *Curve) LengthBetween(from, to measure.Length) measure.Length {
	return toLength(c.lengthBetween(c.order(from.Millimetres(), to.Millimetres())))
}

// Reach is the least and the greatest ordinate between two x, in either
// order: how far a part on that stretch comes forward, and how little.
func (c *Curve) Reach(from, to measure.Length) (least, most measure.Length) {
	x0, x1 := c.order(from.Millimetres(), to.Millimetres())
	lo, hi := c.deviation(x0, x1, 0)
	y := c.Y(x0)
	return toLength(y + lo), toLength(y + hi)
}

// Sagitta is the bulge of the stretch between two x, in either order, against
// its own chord: the depth of the strip, parallel to that chord, which just
// holds the line. A blank for the stretch needs this on top of the part's
// thickness. Where a flat and a bow share the stretch, what falls behind the
// chord counts too.
func (c *Curve) Sagitta(from, to measure.Length) measure.Length {
	x0, x1 := c.order(from.Millimetres(), to.Millimetres())
	if x0 == x1 {
		return 0
	}
	lo, hi := c.deviation(x0, x1, math.Atan2(c.Y(x1)-c.Y(x0), x1-x0))
	return toLength(hi - lo)
}

// deviation is how far the curve goes to either side of the line through its
// point at x0 with the given angle, between x0 and x1: lo ≤ 0 ≤ hi.
func (c *Curve) deviation(x0, x1, angle float64) (lo, hi float64) {
	sin, cos := math.Sincos(angle)
	y0 := c.Y(x0)
	for _, n := range c.clipped(x0, x1) {
		// Either end, because of corners, and where the line runs parallel.
		for _, x := range [...]float64{n.from, parallelAt(n, angle), n.to} {
			d := (n.line.at(x).y-y0)*cos - (x-x0)*sin
			lo, hi = min(lo, d), max(hi, d)
		}
	}
	return lo, hi
}

// parallelAt is the x in the run where its tangent has the given angle, or the
// end nearest to having it.
func parallelAt(n run, angle float64) float64 {
	return solve(func(x float64) (float64, float64) {
		s := n.line.at(x)
		return s.angle - angle, -s.bend / math.Cos(s.angle)
	}, n.from, n.to)
}

// AgainstGrain is the greatest angle, from 0 to a right angle, between the
// curve and the grain between two x, in either order. grain is the direction
// of the fibres from the x axis: 0 for grain along the chord. Corners count
// for both of their sides.
func (c *Curve) AgainstGrain(from, to measure.Length, grain measure.Angle) measure.Angle {
	x0, x1 := c.order(from.Millimetres(), to.Millimetres())
	g := float64(grain)
	if math.IsNaN(g) || math.IsInf(g, 0) {
		g = 0
	}
	most := acute(c.spot(x0).angle - g)
	for _, n := range c.clipped(x0, x1) {
		// The angle between two directions has its greatest value at an end of
		// the run or where the curve stands square to the grain.
		a, b := n.line.at(n.from).angle-g, n.line.at(n.to).angle-g
		most = max(most, acute(a), acute(b))
		if squareBetween(min(a, b), max(a, b)) {
			return math.Pi / 2
		}
	}
	return measure.Angle(most)
}

// acute is the angle between a line turned by a and one that is not.
func acute(a float64) float64 { return math.Abs(math.Remainder(a, math.Pi)) }

// squareBetween reports whether a right angle, an odd number of quarter turns,
// lies between a and b.
func squareBetween(a, b float64) bool {
	return math.Floor(b/math.Pi-0.5) > math.Floor(a/math.Pi-0.5)
}
