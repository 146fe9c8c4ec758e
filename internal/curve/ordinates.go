package curve

import (
	"fmt"
	"math"
	"slices"

	"casewright/internal/measure"
)

// Station is one line of a table of ordinates, mm.
type Station struct {
	X          float64 // along the curve's frame
	FromCentre float64 // from the middle of the bow, negative to the left
	Y          float64
}

// mostStations is more than fits on any page and few enough to be harmless.
const mostStations = 10_000

// sameStation is the distance below which two stations are one, mm.
const sameStation = 1e-3

// Ordinates is a table with stations at every spacing to both sides of the
// middle of the bow, as a batten is set out, and at the ends and corners of
// the curve, from left to right. Spacing must be positive and give no more
// than 10 000 stations.
func (c *Curve) Ordinates(spacing measure.Length) ([]Station, error) {
	if spacing <= 0 {
		return nil, fmt.Errorf("stations %s apart make no table: give a spacing greater than nothing", say(spacing))
	}
	step := spacing.Millimetres()
	centre := (c.l + c.r) / 2
	left, right := math.Floor((centre-c.from)/step), math.Floor((c.to-centre)/step)
	if left+right+1 > mostStations {
		return nil, fmt.Errorf("stations %s apart along %s are more than %d: give a wider spacing",
			say(spacing), say(c.Span()), mostStations)
	}
	xs := []float64{c.from, c.l, c.r, c.to}
	for i := -left; i <= right; i++ {
		xs = append(xs, centre+i*step)
	}
	return c.table(xs), nil
}

// OrdinatesIn is a table with n stations, ends included, that part the bow
// equally; an odd n has one at the middle. n is from 2 to 10 000.
func (c *Curve) OrdinatesIn(n int) ([]Station, error) {
	if n < 2 || n > mostStations {
		return nil, fmt.Errorf("%d stations cannot be laid along the bow: ask for 2 to %d", n, mostStations)
	}
	centre, half := (c.l+c.r)/2, (c.r-c.l)/2
	xs := make([]float64, n)
	for i := range xs {
		// From the centre, so that the two sides agree to the last bit.
		xs[i] = centre + half*float64(2*i-(n-1))/float64(n-1)
	}
	return c.table(xs), nil
}

// table sorts the stations, drops repeats and looks the ordinates up.
func (c *Curve) table(xs []float64) []Station {
	slices.Sort(xs)
	centre := (c.l + c.r) / 2
	out := make([]Station, 0, len(xs))
	for _, x := range xs {
		if len(out) > 0 && x-out[len(out)-1].X < sameStation {
			continue
		}
		out = append(out, Station{x, x - centre, c.Y(x)})
	}
	return out
}
