package curve

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// beamOverRise is the chord over the rise down to which a batten is taken as a
// beam of small deflection, that is rise/chord ≤ 0.1.
//
// The two laws differ there: with the same chord and rise the elastica lies
// outside the beam shape by up to 0.000 55 of the chord (0.28 mm on 500 mm, a
// fifth of the chord from each end), meets the chord 0.22° steeper, and its
// radius at the middle is 3.1 % larger. TestStepBetweenLaws holds these.
const beamOverRise = 10

// checkBatten refuses a rise past half the chord.
func checkBatten(s Spec) *Error {
	if 2*s.Rise < s.Chord {
		return nil
	}
	return &Error{"rise", s.Chord / 2, fmt.Sprintf(
		"a batten held over a chord of %s cannot be sprung to a rise of %s: past half the chord, %s, it slips through its "+
			"supports; give less rise or a longer chord", say(s.Chord), say(s.Rise), say(s.Chord/2))}
}

func makeBatten(left, chord, rise float64) bow {
	// The last bits of the product must not decide for a rise of exactly a
	// tenth, which is the beam's.
	if rise*beamOverRise <= chord*(1+1e-12) {
		return bow{line: newBeam(left, chord, rise), law: "bent batten, beam shape"}
	}
	return bow{line: newElastica(left, chord, rise), law: "bent batten, elastica"}
}

// beam is the shape of a beam on two supports with one load at the middle,
// small deflections. Legend: h half the chord, w the rise, t the distance from
// the middle, u = 1 − |t|/h, so u is 0 at a support and 1 at the middle:
//
//	y = w(3u − u³)/2
//
// which is w(3L²x − 4x³)/L³ with L = 2h and x = hu (beam theory, central
// load; any strength-of-materials text).
type beam struct {
	cx, h, w float64
}

func newBeam(left, chord, rise float64) beam { return beam{left + chord/2, chord / 2, rise} }

func (b beam) at(x float64) spot {
	t := x - b.cx
	u := min(max(1-math.Abs(t)/b.h, 0), 1)
	slope := 1.5 * b.w / b.h * (1 - u*u)
	hyp := math.Hypot(1, slope)
	return spot{
		y:     b.w * u * (3 - u*u) / 2,
		angle: -math.Copysign(math.Atan(slope), t),
		bend:  3 * b.w * u / (b.h * b.h) / (hyp * hyp * hyp),
	}
}

// beamNodes is enough for √(1+y′²) on each half to the last place: y′ is at
// most 0.3 there and the integrand is analytic well outside the interval.
const beamNodes = 24

// length integrates on each side of the middle, where the law has its join.
func (b beam) length(x0, x1 float64) float64 {
	mid := min(max(b.cx, x0), x1)
	return b.halfLength(x0, mid) + b.halfLength(mid, x1)
}

func (b beam) halfLength(x0, x1 float64) float64 {
	if !(x1 > x0) {
		return 0
	}
	f := func(x float64) float64 { return 1 / math.Cos(b.at(x).angle) }
	return quad.Fixed(f, x0, x1, beamNodes, quad.Legendre{}, 1)
}

func (b beam) tightest(x0, x1 float64) float64 { return min(max(b.cx, x0), x1) }

func (b beam) offset(d float64) line { return parallelTo{b, d, b.cx - b.h, b.cx + b.h} }
