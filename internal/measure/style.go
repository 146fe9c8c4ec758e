package measure

import (
	"strconv"
	"strings"
)

// Style is how lengths are printed: the unit, and the graduation of the rule
// they will be read against. The zero value prints inches to 1/64.
//
// Printing rounds to the nearest mark and, half way between two, to the one
// further from zero.
type Style struct {
	Unit       Unit
	Graduation Graduation
}

// Format prints a length without its unit: "5 3/8", "3/8", "-1/2", "0" in
// inches, "136.5" in millimetres. Fractions are in lowest terms. Inches to a
// graduation that does not divide the inch, such as 0.5 mm, come out with up
// to four decimals instead.
func (s Style) Format(l Length) string {
	r, g := s.round(l)
	switch {
	case s.Unit == Millimetres:
		return Decimal(r, Millimetres, 6) // six decimals are nanometres: exact
	case Inch%g != 0:
		return Decimal(r, Inches, coarseDecimals)
	}
	return fraction(s.Parts(l))
}

// coarseDecimals are the decimals of an inch on a rule without inch fractions.
const coarseDecimals = 4

// FormatUnit is Format with the unit behind it: 5 3/8", 136.5 mm.
func (s Style) FormatUnit(l Length) string {
	if s.Unit == Millimetres {
		return s.Format(l) + " mm"
	}
	return s.Format(l) + `"`
}

// Exact is Format, and whether nothing was lost: reading the text in the
// style's unit gives l again.
func (s Style) Exact(l Length) (text string, exact bool) {
	r, g := s.round(l)
	exact = r == l
	if s.Unit != Millimetres && Inch%g != 0 {
		exact = exact && l%(Inch/10_000) == 0 // coarseDecimals
	}
	return s.Format(l), exact
}

// Mark is Format followed by "full" or "bare", as makers say when the exact
// length lies above or below the printed mark by more than an eighth of a
// graduation: "5 3/8 full".
func (s Style) Mark(l Length) string {
	r, g := s.round(l)
	switch over := l - r; {
	case over > g/8:
		return s.Format(l) + " full"
	case over < -g/8:
		return s.Format(l) + " bare"
	}
	return s.Format(l)
}

// Parts takes the printed length to pieces for drawing a stacked fraction: its
// value is whole + num/den of the unit, negative if neg. The fraction is in
// lowest terms; without one it is 0/1. Zero is never negative.
func (s Style) Parts(l Length) (neg bool, whole, num, den int64) {
	r, _ := s.round(l)
	unit := int64(s.Unit.Length())
	whole, num = int64(r.Abs())/unit, int64(r.Abs())%unit
	d := gcd(num, unit)
	return r < 0, whole, num / d, unit / d
}

// round is the length at the nearest mark, and the distance of marks.
func (s Style) round(l Length) (Length, Length) {
	g := s.Graduation.or(s.Unit)
	return g.Round(l), Length(g)
}

func fraction(neg bool, whole, num, den int64) string {
	var b strings.Builder
	if neg {
		b.WriteByte('-')
	}
	if whole != 0 || num == 0 {
		b.WriteString(strconv.FormatInt(whole, 10))
	}
	if num == 0 {
		return b.String()
	}
	if whole != 0 {
		b.WriteByte(' ')
	}
	b.WriteString(strconv.FormatInt(num, 10))
	b.WriteByte('/')
	b.WriteString(strconv.FormatInt(den, 10))
	return b.String()
}

// Decimal prints a length as a decimal number of units, rounded half away from
// zero to at most places decimals (0 to 9, others are held there) and without
// zeros at the end: "5.375", "0.03", "-12". Six decimals of a millimetre are
// exact.
func Decimal(l Length, unit Unit, places int) string {
	places = min(max(places, 0), 9)
	pow := uint64(1)
	for range places {
		pow *= 10
	}
	u := uint64(unit.Length())
	m := magnitude(int64(l))
	whole, n := m/u, marks(m%u*pow, u) // below 25.4e6 × 1e9, which fits
	whole, n = whole+n/pow, n%pow
	text := strconv.FormatUint(whole, 10)
	if n != 0 {
		tail := strconv.FormatUint(pow+n, 10)[1:] // the 1 in front keeps leading zeros
		text += "." + strings.TrimRight(tail, "0")
	}
	if l < 0 && (whole != 0 || n != 0) {
		text = "-" + text
	}
	return text
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
