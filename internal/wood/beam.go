package wood

import (
	"fmt"
	"math"

	"casewright/internal/measure"
)

// Loading is how a beam is loaded.
type Loading uint8

// The loadings of Table 9-1.
const (
	EvenLoad     Loading = iota // spread over the whole span, like books
	CentreLoad                  // all in the middle
	QuarterLoads                // half at each outer quarter point
	EndLoad                     // all at the free end
)

// Ends is how a beam is held.
type Ends uint8

// The ways of Table 9-1. A housed shelf stands between resting and clamped,
// nearer to resting (common practice, no source).
const (
	Resting  Ends = iota // both ends simply supported
	Clamped              // both ends held from turning
	OneEnded             // one end clamped, the other free
)

// Beam holds the constants of one way to load and hold a beam, at the place
// that sags most.
type Beam struct {
	Loading Loading
	Ends    Ends
	Bending Ratio // k_b: sag = k_b W L³ / (E I)
	Shear   Ratio // k_s: further sag = k_s W L / (G A′), A′ = 5/6 of the section
	Moment  Ratio // greatest bending moment over W L
	Source  string
	Status  Status // of the sag constants; the moments are standard statics
}

const beamSource = "FPL-GTR-190 (2010) Table 9-1 p. 9-2"

var beams = [...]Beam{
	{EvenLoad, Resting, 5. / 384, 1. / 8, 1. / 8, beamSource, Read},
	{EvenLoad, Clamped, 1. / 384, 1. / 8, 1. / 12, beamSource, Read},
	{CentreLoad, Resting, 1. / 48, 1. / 4, 1. / 4, beamSource, Read},
	{CentreLoad, Clamped, 1. / 192, 1. / 4, 1. / 8, beamSource, Read},
	{QuarterLoads, Resting, 11. / 768, 1. / 8, 1. / 8, beamSource, Read},
	{EvenLoad, OneEnded, 1. / 8, 1. / 2, 1. / 2, beamSource, Read},
	{EndLoad, OneEnded, 1. / 3, 1, 1, beamSource, Read},
}

// BeamFor finds the constants; not every loading is tabled for every way of
// holding.
func BeamFor(l Loading, e Ends) (Beam, error) {
	for _, b := range beams {
		if b.Loading == l && b.Ends == e {
			return b, nil
		}
	}
	return Beam{}, fmt.Errorf("no beam constants for loading %d with ends %d", l, e)
}

// Sag is how far a rectangular board gives in its middle, or at its free end.
// load is the whole load. The term for shear is left out, because the
// stiffness of the tables already carries it. Span, width, thickness and
// stiffness must be positive; else the answer is 0.
func (b Beam) Sag(load Force, span, width, thickness measure.Length, stiffness measure.Stress) measure.Length {
	if span <= 0 || width <= 0 || thickness <= 0 || stiffness <= 0 {
		return 0
	}
	l, w, h := metres(span), metres(width), metres(thickness)
	sag := float64(b.Bending) * float64(load) * l * l * l / (float64(stiffness) * w * h * h * h / 12)
	return measure.Length(math.Round(sag * float64(measure.Metre)))
}

// Stress is the bending stress at the face of a rectangular board where the
// moment is greatest, under the terms of Sag.
func (b Beam) Stress(load Force, span, width, thickness measure.Length) measure.Stress {
	if span <= 0 || width <= 0 || thickness <= 0 {
		return 0
	}
	w, h := metres(width), metres(thickness)
	return measure.Stress(6 * float64(b.Moment) * float64(load) * metres(span) / (w * h * h))
}

func metres(l measure.Length) float64 { return float64(l) / float64(measure.Metre) }
