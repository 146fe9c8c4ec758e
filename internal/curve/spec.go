package curve

import (
	"fmt"
	"strconv"

	"casewright/internal/measure"
)

// Limits of what is taken for a size at all. They are our own, wide of any
// workshop on both sides: they keep typing slips and unit mix-ups out, and the
// arithmetic far from the ends of its range.
const (
	leastChord = 1 * measure.Millimetre
	leastRise  = 10 * measure.Micrometre
	mostSize   = 100 * measure.Metre
)

// Spec is what a maker says of a curve. Flats are straight lengths along the
// chord's line at each end; zero is no flat.
type Spec struct {
	Kind                Kind
	Chord, Rise         measure.Length
	FlatLeft, FlatRight measure.Length
}

// Error says why a curve cannot be made, in shop words.
type Error struct {
	Field string         // "kind", "chord", "rise", "flat" or "offset": the size to change
	Limit measure.Length // the most or least that would do; 0 when there is no such size
	Says  string         // what is wrong and what would mend it
}

// Error is the message.
func (e *Error) Error() string { return e.Says }

// check finds the first size that cannot be, or nil.
func (s Spec) check() *Error {
	if !s.Kind.known() {
		return &Error{Field: "kind", Says: fmt.Sprintf("there is no such kind of curve; the kinds are %v", KindNames())}
	}
	if e := s.checkSizes(); e != nil {
		return e
	}
	return kinds[s.Kind].check(s)
}

func (s Spec) checkSizes() *Error {
	sizes := []struct {
		field string
		size  measure.Length
		least measure.Length
		why   string
	}{
		{"chord", s.Chord, leastChord, "the chord is the straight distance between the ends of the bow"},
		{"rise", s.Rise, leastRise, "a curve without rise is a straight line and needs no curve"},
		{"flat", s.FlatLeft, 0, "leave the left flat out where there is none"},
		{"flat", s.FlatRight, 0, "leave the right flat out where there is none"},
	}
	for _, z := range sizes {
		switch {
		case z.size < z.least:
			return &Error{z.field, z.least, fmt.Sprintf("the %s is %s, which is less than the least, %s: %s",
				z.field, say(z.size), say(z.least), z.why)}
		case z.size > mostSize:
			return &Error{z.field, mostSize, fmt.Sprintf("the %s is %s; nothing over %s is taken: check the unit",
				z.field, say(z.size), say(mostSize))}
		}
	}
	return nil
}

// say prints a length for a message in both units, since the curve does not
// know which one the maker works in.
func say(l measure.Length) string {
	short := func(v float64, digits int) string {
		s := strconv.FormatFloat(v, 'f', digits, 64)
		v, _ = strconv.ParseFloat(s, 64)
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return short(l.Millimetres(), 3) + " mm (" + short(l.Inches(), 4) + " in)"
}
