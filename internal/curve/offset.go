package curve

import (
	"fmt"
	"math"

	"casewright/internal/measure"
)

// smooth is the turn at a join, radians, below which it is no corner.
const smooth = 1e-9

// leastRadius is what must be left of the tightest radius inside, mm.
const leastRadius = 1e-3

// Offset is the parallel curve at distance d, positive outward. It keeps the
// frame: x is still measured from the left end of the curve it was made from.
// Corners are treated as the true distance has it: inside a corner the two
// sides are trimmed where they cross, outside it the gap is rounded with
// radius |d|. An arc gives an arc, exactly; other kinds are found along the
// normal. Offsets add up: the offset of a parallel is counted from the first
// curve. An inside distance that reaches the tightest radius would fold the
// line into a cusp; the *[Error] then tells the limit.
func (c *Curve) Offset(d measure.Length) (*Curve, error) {
	base, total := c, d
	if c.base != nil {
		base, total = c.base, c.d+d // past int64 it wraps to something refused too
	}
	if e := base.checkOffset(total); e != nil {
		return nil, e
	}
	if total == 0 {
		return base, nil
	}
	return base.parallel(total), nil
}

func (c *Curve) checkOffset(d measure.Length) *Error {
	if d > mostSize || d < -mostSize {
		return &Error{"offset", mostSize, fmt.Sprintf("an offset of %s is more than the %s that is taken: check the unit",
			say(d), say(mostSize))}
	}
	bend, x := c.hardest()
	if -d.Millimetres()*bend < 1-leastRadius*bend {
		return nil
	}
	limit := toLength(1/bend - leastRadius)
	return &Error{"offset", limit, fmt.Sprintf(
		"a parallel %s inside the curve folds over itself: at x %s the curve bends to a radius of %s, so the inside may be no "+
			"farther away than that; stay under it, or flatten the curve", say(-d), say(toLength(x)), say(toLength(1/bend)))}
}

// parallel joins the parallels of the runs.
func (c *Curve) parallel(by measure.Length) *Curve {
	d := by.Millimetres()
	p := &Curve{spec: c.spec, law: c.law, base: c, d: by, end: c.end}
	p.from, p.to = c.normalAt(c.from, d), c.normalAt(c.to, d)
	for i, n := range c.runs {
		n.line = n.line.offset(d)
		if i > 0 {
			p.runs, n.from = joined(p.runs, n, corner(c.runs[i-1], c.runs[i], d))
		}
		p.runs = append(p.runs, n)
	}
	p.l, p.r = p.bowEnds()
	return p
}

// turn is a join of two runs as their parallels at d see it.
type turn struct {
	xa, xb float64 // where the parallels of the left and of the right run end
	round  circle  // about the join with radius |d|
	smooth bool
}

func corner(left, right run, d float64) turn {
	x := right.from
	a, b := left.line.at(x), right.line.at(x)
	return turn{
		xa: x - d*math.Sin(a.angle), xb: x - d*math.Sin(b.angle),
		round:  circle{x, a.y + d, math.Abs(d), math.Copysign(1, d)},
		smooth: math.Abs(a.angle-b.angle) < smooth,
	}
}

// joined ends the last of runs at the turn, rounds a gap there, and tells
// where the next run begins.
func joined(runs []run, next run, t turn) ([]run, float64) {
	last := &runs[len(runs)-1]
	last.to = t.xa
	switch {
	case t.smooth:
		return runs, t.xa
	case t.xa < t.xb:
		return append(runs, run{from: t.xa, to: t.xb, line: t.round}), t.xb
	}
	last.to = crossing(last.line, next.line, t.xb, t.xa)
	return runs, last.to
}

// normalAt is the x where the normal at x meets the parallel at d.
func (c *Curve) normalAt(x, d float64) float64 {
	return x - d*math.Sin(c.spot(x).angle)
}

// crossing is the x between lo and hi where two lines meet.
func crossing(a, b line, lo, hi float64) float64 {
	return solve(func(x float64) (float64, float64) {
		p, q := a.at(x), b.at(x)
		return p.y - q.y, math.Tan(p.angle) - math.Tan(q.angle)
	}, lo, hi)
}

// bowEnds is where the bow, with the rounding of its corners, meets the flats;
// the curve's ends where there are none.
func (c *Curve) bowEnds() (l, r float64) {
	l, r = c.from, c.to
	if c.spec.FlatLeft > 0 {
		l = c.runs[0].to
	}
	if c.spec.FlatRight > 0 {
		r = c.runs[len(c.runs)-1].from
	}
	return l, r
}
