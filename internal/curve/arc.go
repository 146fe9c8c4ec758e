package curve

import (
	"fmt"
	"math"

	"casewright/internal/measure"
)

// checkArc refuses a rise that no arc over this chord can have.
func checkArc(s Spec) *Error {
	if 2*s.Rise < s.Chord {
		return nil
	}
	return &Error{"rise", s.Chord / 2, fmt.Sprintf(
		"an arc over a chord of %s cannot rise %s: at half the chord, %s, it is already a half circle and square to the flats; "+
			"give less rise or a longer chord", say(s.Chord), say(s.Rise), say(s.Chord/2))}
}

// makeArc lays a circle over the chord: R = c²/(8s) + s/2 for chord c and
// rise (sagitta) s.
func makeArc(left, chord, rise float64) bow {
	c := circle{cx: left + chord/2, apex: rise, r: chord*chord/(8*rise) + rise/2, side: 1}
	// Past the ends a maker swings the trammel farther; the last twentieth of
	// the radius is left out, where the circle turns steep and then ends.
	return bow{c, "circular arc", max(0, 0.95*c.r-chord/2)}
}

// circle is the part of a circle above its centre (side 1, a bow) or below it
// (side −1, the rounding of a corner), as y(x).
type circle struct {
	cx   float64 // x of the centre
	apex float64 // y of its highest (side 1) or lowest (side −1) point
	r    float64
	side float64
}

func (c circle) at(x float64) spot {
	t := min(max(x-c.cx, -c.r), c.r)
	// (r−t)(r+t) and t²/(r+…) rather than differences of squares: a flat arc
	// has a radius of hundreds of metres and a rise of millimetres.
	w := math.Sqrt((c.r - t) * (c.r + t))
	return spot{
		y:     c.apex - c.side*t*t/(c.r+w),
		angle: -c.side * math.Atan2(t, w),
		bend:  c.side / c.r,
	}
}

func (c circle) length(x0, x1 float64) float64 {
	return c.r * math.Abs(c.at(x1).angle-c.at(x0).angle)
}

func (c circle) tightest(x0, x1 float64) float64 { return min(max(c.cx, x0), x1) }

func (c circle) offset(d float64) line {
	c.apex += d
	c.r += c.side * d
	return c
}

// cubic is the usual cubic for an arc that turns by δ: handles of
// 4/3·tan(δ/4) radii, so that it touches the circle at the middle too.
func (c circle) cubic(x0, x1 float64) Bezier {
	a, b := c.at(x0), c.at(x1)
	h := c.r * 4 / 3 * math.Tan(math.Abs(b.angle-a.angle)/4)
	sa, ca := math.Sincos(a.angle)
	sb, cb := math.Sincos(b.angle)
	return Bezier{{x0, a.y}, {x0 + h*ca, a.y + h*sa}, {x1 - h*cb, b.y - h*sb}, {x1, b.y}}
}

// Radius is the radius of an arc, or of the arc a parallel of it is; ok is
// false for every other kind.
func (c *Curve) Radius() (r measure.Length, ok bool) {
	for _, n := range c.runs {
		if k, is := n.line.(circle); is && n.bow {
			return toLength(k.r), true
		}
	}
	return 0, false
}
