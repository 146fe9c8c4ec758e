package measure

import (
	"math"
	"math/big"
	"strings"
	"unicode"
)

// Slope is how far a line leans: Rise sideways over Run along. Makers write
// 1:8, "one in eight". The zero value is no slope.
type Slope struct{ Rise, Run int64 }

// The slopes that are read: from all but square to all but flat.
var (
	leastSlope = big.NewRat(1, 1000)
	mostSlope  = big.NewRat(10, 1)
)

// SlopeOf is the slope of an angle from the long axis, true to a millionth of
// a millimetre in a metre of run.
func SlopeOf(a Angle) Slope {
	const run = 1_000_000_000
	rise := math.Tan(float64(a)) * run
	if math.IsNaN(rise) || math.Abs(rise) > 1e18 {
		return Slope{}
	}
	r := int64(math.RoundToEven(rise))
	d := gcd(max(r, -r), run)
	return Slope{Rise: r / d, Run: run / d}
}

// Angle is the angle between the sloping line and the long axis: 7.13° for
// 1:8.
func (s Slope) Angle() Angle {
	if s.Run == 0 {
		return 0
	}
	return Angle(math.Atan(float64(s.Rise) / float64(s.Run)))
}

// Offset is how far the line has moved sideways over a depth, computed exactly
// and rounded once, half to even.
func (s Slope) Offset(depth Length) Length {
	if s.Run == 0 {
		return 0
	}
	return depth.MulDiv(s.Rise, s.Run)
}

// String writes the slope as one in so many, to three decimals: "1:8",
// "1:7.5"; "none" for no slope.
func (s Slope) String() string {
	if s.Rise == 0 || s.Run == 0 {
		return "none"
	}
	n := big.NewRat(s.Run, 1)
	n.Quo(n, big.NewRat(s.Rise, 1))
	return "1:" + strings.TrimSuffix(strings.TrimRight(n.FloatString(3), "0"), ".")
}

// ParseSlope reads 1:8, 1:7.5, 1 in 8, 1/8, 8°, 8 deg or 8 degrees. A ratio is
// kept exactly, in lowest terms. Anything else, or a slope outside 1:1000 to
// 10:1, is a *ParseError.
func ParseSlope(text string) (Slope, error) {
	s, bad := parseSlope(text)
	if bad != nil {
		return Slope{}, bad
	}
	return s, nil
}

const slopeLike = "write it like 1:8 or 8°"

func parseSlope(text string) (Slope, *ParseError) {
	p := parser{text: text}
	if len(text) > maxText {
		return Slope{}, p.wrong(0, "this is far too long for a slope", slopeLike)
	}
	p.space()
	rise, _, bad := p.decimal()
	if bad != nil {
		return Slope{}, bad.orSlope()
	}
	switch p.between() {
	case "°", "deg", "degree", "degrees":
		return p.leaning(rise)
	case ":", "in", "/":
		return p.ratio(rise)
	}
	return Slope{}, p.wrong(p.pos, quote(text)+" is not a slope", slopeLike)
}

// between reads the sign or word behind the first number.
func (p *parser) between() string {
	p.space()
	defer p.space()
	if word := p.skip(unicode.IsLetter); word != "" {
		return strings.ToLower(word)
	}
	at := p.pos
	if !p.done() {
		p.next()
	}
	return p.text[at:p.pos]
}

// leaning is the slope of an angle in degrees.
func (p *parser) leaning(degrees *big.Rat) (Slope, *ParseError) {
	if !p.done() {
		return Slope{}, p.wrong(p.pos, quote(p.text[p.pos:])+" is left over behind the angle", slopeLike)
	}
	d, _ := degrees.Float64()
	if d >= 90 {
		return Slope{}, p.tooSteep()
	}
	s := SlopeOf(Degrees(d))
	return s, p.reasonable(big.NewRat(s.Rise, max(s.Run, 1)))
}

// ratio is the slope of rise over what follows.
func (p *parser) ratio(rise *big.Rat) (Slope, *ParseError) {
	at := p.pos
	run, bad := p.number()
	if bad != nil {
		return Slope{}, bad.orSlope()
	}
	if p.space(); !p.done() {
		return Slope{}, p.wrong(p.pos, quote(p.text[p.pos:])+" is left over behind the slope", slopeLike)
	}
	if run.Sign() == 0 {
		return Slope{}, p.wrong(at, "a slope cannot be one in 0", slopeLike)
	}
	r := rise.Quo(rise, run)
	if bad := p.reasonable(r); bad != nil {
		return Slope{}, bad
	}
	if !r.Num().IsInt64() || !r.Denom().IsInt64() {
		return Slope{}, p.wrong(0, quote(p.text)+" has more digits than a slope can use", slopeLike)
	}
	return Slope{Rise: r.Num().Int64(), Run: r.Denom().Int64()}, nil
}

func (p *parser) reasonable(r *big.Rat) *ParseError {
	switch {
	case r.Cmp(leastSlope) < 0:
		return p.wrong(0, quote(p.text)+" is hardly a slope at all (the least is 1:1000)", slopeLike)
	case r.Cmp(mostSlope) > 0:
		return p.tooSteep()
	}
	return nil
}

func (p *parser) tooSteep() *ParseError {
	return p.wrong(0, quote(p.text)+" is too steep (the most is 10:1)", slopeLike)
}

// orSlope replaces the general advice on lengths by that on slopes.
func (e *ParseError) orSlope() *ParseError {
	if e.Mend == likeThis {
		e.Mend = slopeLike
	}
	return e
}
