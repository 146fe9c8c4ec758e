package wood

import (
	"fmt"

	"casewright/internal/measure"
)

// shrinkFrom is the moisture content at which Eq. 4-9 lets shrinkage start.
const shrinkFrom measure.MoistureContent = 30

// unknownShrink is the volumetric shrinkage per basic specific gravity of a
// wood whose shrinkage is not known, percent (Eq. 4-12).
const unknownShrink = 26.5

// GravityFromBasic is the specific gravity over the volume at a moisture
// content, from the basic one over green volume, for a wood of which nothing
// else is known (FPL-GTR-282 (2021) Eq. 4-13).
func GravityFromBasic(basic Gravity, mc measure.MoistureContent) Gravity {
	return basic / (1 - Gravity(shrunk(unknownShrink*float64(basic), mc)))
}

// shrunk is the share of the green volume lost at a moisture content, given
// the whole volumetric shrinkage in percent (Eq. 4-9).
func shrunk(whole float64, mc measure.MoistureContent) float64 {
	return whole / 100 * float64(1-min(mc, shrinkFrom)/shrinkFrom)
}

// GravityAt is the specific gravity by oven-dry mass over the volume at a
// moisture content: Eq. 4-11 with the wood's own shrinkage, or Eq. 4-12 where
// that is not published. It passes through the printed value at 12 %, which is
// a measurement of its own, or starts from the green one where only that is
// printed. A wood with neither is a *[MissingError].
func (s *Species) GravityAt(mc measure.MoistureContent) (Figure[Gravity], error) {
	if err := checkMoisture(mc); err != nil {
		return Figure[Gravity]{}, err
	}
	anchor, at := s.Gravity12, measure.MoistureContent(12)
	if !anchor.Known() {
		anchor, at = s.GravityGreen, shrinkFrom
	}
	if !anchor.Known() {
		return Figure[Gravity]{}, &MissingError{Species: s.Name, What: "specific gravity"}
	}
	if mc == at {
		return anchor, nil
	}
	whole, rule, status := s.volumeShrinkage(anchor.Value, at)
	value := float64(anchor.Value) * (1 - shrunk(whole, at)) / (1 - shrunk(whole, mc))
	return Figure[Gravity]{
		Value:  Gravity(value),
		Source: "FPL-GTR-282 (2021) " + rule + " from " + anchor.Source,
		Status: calculated(anchor.Status, status),
	}, nil
}

// volumeShrinkage is the whole volumetric shrinkage in percent, with the
// equation it leads to.
func (s *Species) volumeShrinkage(g Gravity, at measure.MoistureContent) (whole float64, rule string, status Status) {
	if v := s.ShrinkVolumetric; v.Known() {
		return float64(v.Value), "Eq. 4-11", v.Status
	}
	// Eq. 4-13 solved for the basic gravity.
	basic := float64(g) / (1 + shrunk(unknownShrink, at)*float64(g))
	return unknownShrink * basic, "Eq. 4-13", Calculated
}

// DensityAt is the mass of wood and water in a volume at a moisture content
// (FPL-GTR-282 (2021) Eq. 4-14).
func (s *Species) DensityAt(mc measure.MoistureContent) (Figure[measure.Density], error) {
	g, err := s.GravityAt(mc)
	if err != nil {
		return Figure[measure.Density]{}, err
	}
	return Figure[measure.Density]{
		Value:  measure.Density(1000 * float64(g.Value) * (1 + float64(mc)/100)),
		Source: "FPL-GTR-282 (2021) Eq. 4-14 with " + g.Source,
		Status: calculated(g.Status),
	}, nil
}

// MassOf is the mass of a volume of this wood, both taken at the moisture
// content.
func (s *Species) MassOf(v measure.Volume, mc measure.MoistureContent) (measure.Mass, error) {
	d, err := s.DensityAt(mc)
	if err != nil {
		return 0, err
	}
	const cubicMillimetres = 1e9 // in a cubic metre
	m := measure.Mass(float64(d.Value) * float64(v) / cubicMillimetres)
	if !(m >= 0) {
		return 0, fmt.Errorf("a volume of %g mm³ has no mass", float64(v))
	}
	return m, nil
}
