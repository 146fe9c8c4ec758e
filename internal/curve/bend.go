package curve

import (
	"math"

	"casewright/internal/measure"
)

// BendStrain is the strain in the outer skin of a strip of the given thickness
// bent to the radius of its middle, t/(2R): 0.01 means stretched by one part
// in a hundred (beam theory). Thickness and radius count without sign; a
// radius of nothing gives +Inf, unless the thickness is nothing too.
func BendStrain(thickness, radius measure.Length) float64 {
	t, r := math.Abs(float64(thickness)), math.Abs(float64(radius))
	if t == 0 {
		return 0
	}
	return t / (2 * r)
}

// BendRadius is the smallest radius to which a strip of the given thickness
// bends before its skin is strained by more than strain, t/(2·strain). What
// strain a wood bears is for package wood. A strain that is not positive, and
// one so small that no length is long enough, gives the largest length.
func BendRadius(thickness measure.Length, strain float64) measure.Length {
	if !(strain > 0) {
		return math.MaxInt64
	}
	return toLength(math.Abs(thickness.Millimetres()) / (2 * strain))
}
