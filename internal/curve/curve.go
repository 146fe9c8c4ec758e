package curve

import (
	"math"
	"slices"

	"casewright/internal/measure"
)

// farthest is how far from the left end a curve is evaluated, mm. An x beyond
// is taken as this one, so that no answer is infinite.
const farthest = 1e6

// Curve is a line that parts follow. Make one with [New]; the zero Curve is of
// no use. It never changes.
type Curve struct {
	spec     Spec
	law      string
	base     *Curve         // what a parallel was made from; nil for a curve of its own
	d        measure.Length // distance from base, positive outward
	runs     []run          // from −Inf to +Inf without gap
	from, to float64        // its two ends
	l, r     float64        // where the bow begins and ends
	end      float64        // angle of the bow at its left end
}

// New makes the curve a Spec asks for. The error is an *[Error] and says in
// shop words what is wrong with which size.
func New(s Spec) (*Curve, error) {
	if e := s.check(); e != nil {
		return nil, e
	}
	l := s.FlatLeft.Millimetres()
	r := (s.FlatLeft + s.Chord).Millimetres()
	b := kinds[s.Kind].make(l, s.Chord.Millimetres(), s.Rise.Millimetres())
	c := &Curve{
		spec: s, law: b.law, l: l, r: r,
		to:  (s.FlatLeft + s.Chord + s.FlatRight).Millimetres(),
		end: b.line.at(l).angle,
	}
	left, right := c.tail(b, l, -1, s.FlatLeft), c.tail(b, r, +1, s.FlatRight)
	mid := run{from: left.to, to: right.from, line: b.line, bow: true}
	c.runs = []run{left, mid, right}
	return c, nil
}

// tail is the run outside the bow on one side: the flat, or what carries on
// where there is none.
func (c *Curve) tail(b bow, end, side float64, flat measure.Length) run {
	t := run{from: math.Inf(-1), to: math.Inf(1)}
	x := end
	t.line = straight{x: end}
	if flat == 0 {
		x = end + side*b.beyond
		s := b.line.at(x)
		t.line = straight{x, s.y, s.angle}
	}
	if side < 0 {
		t.to = x
	} else {
		t.from = x
	}
	return t
}

// Spec is what the curve was made from; a parallel tells that of its base.
func (c *Curve) Spec() Spec { return c.spec }

// Law names the law that was used, in words for the page: a batten says
// whether it is the beam shape or the elastica.
func (c *Curve) Law() string { return c.law }

// Ends are the x of the curve's two ends: 0 and Span for one made by New. A
// parallel of a bow without flats ends where the normals at the ends meet it,
// a little outside or inside of those.
func (c *Curve) Ends() (left, right measure.Length) { return toLength(c.from), toLength(c.to) }

// Bow is where the bow begins and ends along x: between its corners with the
// flats, or the two ends where there are none.
func (c *Curve) Bow() (left, right measure.Length) { return toLength(c.l), toLength(c.r) }

// Span is the straight distance from end to end, flats included.
func (c *Curve) Span() measure.Length { return toLength(c.to - c.from) }

// Length is the length along the curve from end to end, flats included.
func (c *Curve) Length() measure.Length { return toLength(c.lengthBetween(c.from, c.to)) }

// EndAngle is the angle, positive, between the bow and its chord at its ends.
func (c *Curve) EndAngle() measure.Angle { return measure.Angle(math.Abs(c.end)) }

// Y is the ordinate at x, both mm.
func (c *Curve) Y(x float64) float64 { return c.spot(x).y }

// Ordinate is the ordinate at x as an exact length.
func (c *Curve) Ordinate(x measure.Length) measure.Length { return toLength(c.Y(x.Millimetres())) }

// Slope is dy/dx at x mm, a ratio.
func (c *Curve) Slope(x float64) float64 { return math.Tan(c.spot(x).angle) }

// Tangent is the angle between the curve and the x axis at x mm.
func (c *Curve) Tangent(x float64) measure.Angle { return measure.Angle(c.spot(x).angle) }

// Curvature is 1/radius at x mm, in 1/mm, positive where the curve bulges
// outward; 0 on a flat.
func (c *Curve) Curvature(x float64) float64 { return c.spot(x).bend }

// MinRadius is the smallest radius the bow bends to, and the x where. Corners
// with the flats do not count.
func (c *Curve) MinRadius() (radius, at measure.Length) {
	bend, x := c.hardest()
	if bend <= 0 {
		return measure.Length(math.MaxInt64), toLength(x)
	}
	return toLength(1 / bend), toLength(x)
}

// hardest is the greatest outward bend between the ends, and where.
func (c *Curve) hardest() (bend, x float64) {
	x = (c.l + c.r) / 2
	for _, n := range c.clipped(c.from, c.to) {
		t := n.line.tightest(n.from, n.to)
		if b := n.line.at(t).bend; b > bend {
			bend, x = b, t
		}
	}
	return bend, x
}

// spot evaluates at any x.
func (c *Curve) spot(x float64) spot {
	x = c.inReach(x)
	return c.runs[c.runAt(x)].line.at(x)
}

// runAt finds the run that answers for x: at a join, the one nearer the middle.
func (c *Curve) runAt(x float64) int {
	if x < (c.l+c.r)/2 {
		i, found := slices.BinarySearchFunc(c.runs, x, func(n run, x float64) int { return compare(n.from, x) })
		if !found {
			i--
		}
		return max(i, 0)
	}
	i, _ := slices.BinarySearchFunc(c.runs, x, func(n run, x float64) int { return compare(n.to, x) })
	return min(i, len(c.runs)-1)
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// inReach replaces an x that makes no sense: NaN by the left end, the very far
// by the farthest.
func (c *Curve) inReach(x float64) float64 {
	if math.IsNaN(x) {
		return c.from
	}
	return min(max(x, -farthest), farthest)
}

// toLength rounds millimetres to the nanometre; what is too large for a length
// becomes the largest.
func toLength(mm float64) measure.Length {
	nm := math.Round(mm * float64(measure.Millimetre))
	switch {
	case math.IsNaN(nm):
		return 0
	case nm >= math.MaxInt64:
		return math.MaxInt64
	case nm <= math.MinInt64:
		return math.MinInt64
	}
	return measure.Length(nm)
}
