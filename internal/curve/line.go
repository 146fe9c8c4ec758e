package curve

import "math"

// spot is what a line is at one x.
type spot struct {
	y     float64 // mm
	angle float64 // of the tangent, within ±π/2
	bend  float64 // 1/mm, positive where the line bulges outward
}

// line is one smooth law y(x). Its angle must be monotone in x over the range
// it is used on, so that extremes can be found by bracketing; a kind that
// waves is several lines. Outside its range a line may answer with its nearest
// point but never with NaN.
type line interface {
	at(x float64) spot
	// length is the arc length from x0 to x1, x0 ≤ x1.
	length(x0, x1 float64) float64
	// tightest is the x in [x0, x1] where it bulges outward hardest.
	tightest(x0, x1 float64) float64
	// offset is the line at distance d along the normal that points outward.
	// The caller has made sure that 1 + d·bend stays positive.
	offset(d float64) line
}

// run is a line used from one x to another.
type run struct {
	from, to float64
	line     line
	bow      bool // it is the bow itself, not a flat, overhang or rounding
}

// straight is a straight line through (x, y).
type straight struct{ x, y, angle float64 }

func (s straight) at(x float64) spot {
	return spot{y: s.y + (x-s.x)*math.Tan(s.angle), angle: s.angle}
}

func (s straight) length(x0, x1 float64) float64 { return (x1 - x0) / math.Cos(s.angle) }

func (s straight) tightest(x0, _ float64) float64 { return x0 }

func (s straight) offset(d float64) line {
	sin, cos := math.Sincos(s.angle)
	return straight{s.x - d*sin, s.y + d*cos, s.angle}
}

// parallelTo is the line at distance d from one that has no closed parallel.
// It covers the base from u0 to u1, millimetres along the base's x.
type parallelTo struct {
	base   line
	d      float64
	u0, u1 float64
}

// foot is the base's x whose normal passes through the parallel at x. The
// parallel's x is u − d·sin(angle), which grows with u at the rate 1 + d·bend.
func (p parallelTo) foot(x float64) float64 {
	return solve(func(u float64) (float64, float64) {
		s := p.base.at(u)
		return u - p.d*math.Sin(s.angle) - x, 1 + p.d*s.bend
	}, p.u0, p.u1)
}

func (p parallelTo) at(x float64) spot {
	s := p.base.at(p.foot(x))
	return spot{s.y + p.d*math.Cos(s.angle), s.angle, s.bend / (1 + p.d*s.bend)}
}

// length uses that a parallel is longer than its base by d times the angle
// turned.
func (p parallelTo) length(x0, x1 float64) float64 {
	u0, u1 := p.foot(x0), p.foot(x1)
	return p.base.length(u0, u1) + p.d*(p.base.at(u0).angle-p.base.at(u1).angle)
}

func (p parallelTo) tightest(x0, x1 float64) float64 {
	u := p.base.tightest(p.foot(x0), p.foot(x1))
	return min(max(u-p.d*math.Sin(p.base.at(u).angle), x0), x1)
}

func (p parallelTo) offset(d float64) line { p.d += d; return p }
