package measure

import "math"

// Graduation is the distance between two marks of a rule, in nanometres. The
// zero value, and any that is not positive, stands for the finest usual one:
// 1/64 in or 0.1 mm, by the unit it is used with.
type Graduation Length

// The graduations that rules are sold with.
const (
	Eighths         = Graduation(Inch / 8)
	Sixteenths      = Graduation(Inch / 16)
	ThirtySeconds   = Graduation(Inch / 32)
	SixtyFourths    = Graduation(Inch / 64)
	WholeMillimetre = Graduation(Millimetre)
	HalfMillimetre  = Graduation(Millimetre / 2)
	TenthMillimetre = Graduation(Millimetre / 10)
)

// ParseGraduation reads a graduation: 1/32, 1/16 in, 0.5 mm. A bare number is
// in inches. It must be above nothing and at most an inch; the error is a
// *ParseError.
func ParseGraduation(text string) (Graduation, error) {
	l, err := ParseLength(text, Inches)
	if err != nil {
		return 0, err
	}
	if l <= 0 || l > Inch {
		return 0, &ParseError{Summary: quote(text) + " is no graduation of a rule", Mend: "write it like 1/32 in or 0.5 mm"}
	}
	return Graduation(l), nil
}

// Round is the mark nearest to l; half way between two it is the one further
// from zero, as a maker rounds up.
func (g Graduation) Round(l Length) Length {
	step := uint64(g.or(Inches))
	n := marks(magnitude(int64(l)), step)
	return signed(min(n, math.MaxInt64/step)*step, l < 0)
}

// String writes the graduation with its unit: "1/32 in", "0.5 mm".
func (g Graduation) String() string {
	if g > 0 && Inch%Length(g) == 0 {
		return Style{Inches, g}.Format(Length(g)) + " in"
	}
	return Decimal(Length(g), Millimetres, 6) + " mm"
}

// or replaces what is no graduation by the finest usual one.
func (g Graduation) or(u Unit) Graduation {
	switch {
	case g > 0:
		return g
	case u == Millimetres:
		return TenthMillimetre
	}
	return SixtyFourths
}

// marks counts the marks from zero to the one nearest to m, half away.
func marks(m, step uint64) uint64 {
	n, rest := m/step, m%step
	if rest >= step-rest {
		n++
	}
	return n
}
