package measure

// Unit is what a bare number is taken in, and what a length is printed in.
// The zero value is Inches.
type Unit uint8

const (
	// Inches are written whole, with a common fraction: 5 3/8.
	Inches Unit = iota
	// Millimetres are written with decimals: 136.5.
	Millimetres
)

// MaxLength is the longest length that is read, either side of zero. A
// kilometre is beyond any furniture and far within int64, so that hundreds of
// thousands of lengths may still be added up without running over.
const MaxLength = 1000 * Metre

// Length is how long one of the unit is. Values that are no unit count as
// inches.
func (u Unit) Length() Length {
	if u == Millimetres {
		return Millimetre
	}
	return Inch
}

// String is the unit's sign as it is typed: "in" or "mm".
func (u Unit) String() string {
	if u == Millimetres {
		return "mm"
	}
	return "in"
}
