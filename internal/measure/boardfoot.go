package measure

// BoardFeetOf is the board feet of rough wood of that size: thickness × width
// × length in inches, over 144. Wood under an inch thick is sold as if it were
// an inch (William Noyes, Handwork in Wood, 1910, chapter 3). A size that is
// not above zero has none.
func BoardFeetOf(thickness, width, length Length) BoardFeet {
	if thickness <= 0 || width <= 0 || length <= 0 {
		return 0
	}
	const cubicInches = 144
	return BoardFeet(VolumeOf(max(thickness, Inch), width, length).CubicInches() / cubicInches)
}

// SurfaceMeasure is the face of a board in whole square feet, as hardwood is
// graded and tallied: the width in inches with its fraction, times the length
// in whole feet with odd inches dropped, over 12, to the nearest whole number
// (National Hardwood Lumber Association, Rules for the Measurement and
// Inspection of Hardwood and Cypress, 2015).
//
// A tally takes exact halves up and down in turn (from memory). One board
// knows no turn, so a half goes to the even number here, which over a pile
// comes to the same. A size that is not above zero has none.
func SurfaceMeasure(width, length Length) int {
	if width <= 0 || length <= 0 {
		return 0
	}
	return int(width.MulDiv(int64(length/Foot), int64(12*Inch)))
}
