package wood

import (
	"math"

	"casewright/internal/measure"
)

// AtMoisture is a strength or stiffness at a moisture content, from its values
// at 12 % and green (FPL-GTR-282 (2021) Eq. 5-3). intersection is the moisture
// content below which the property changes; above it the green value holds.
// dry and green must be positive and intersection above 12.
func AtMoisture(dry, green measure.Stress, intersection, mc measure.MoistureContent) measure.Stress {
	if mc >= intersection {
		return green
	}
	return dry * measure.Stress(math.Pow(float64(dry/green), float64((12-mc)/(intersection-12))))
}

// RuptureAt is the modulus of rupture at a moisture content. A wood whose green
// value the tables lack answers with the value it was tested at, and the
// Source says so; one without any is a *[MissingError].
func (s *Species) RuptureAt(mc measure.MoistureContent) (Figure[measure.Stress], error) {
	return s.strengthAt(s.Rupture, s.RuptureGreen, mc, "bending strength")
}

// StiffnessAt is the modulus of elasticity at a moisture content, under the
// terms of RuptureAt.
func (s *Species) StiffnessAt(mc measure.MoistureContent) (Figure[measure.Stress], error) {
	return s.strengthAt(s.Stiffness, s.StiffnessGreen, mc, "stiffness")
}

func (s *Species) strengthAt(dry, green Figure[measure.Stress], mc measure.MoistureContent, what string) (Figure[measure.Stress], error) {
	if err := checkMoisture(mc); err != nil {
		return Figure[measure.Stress]{}, err
	}
	switch {
	case !dry.Known():
		return dry, &MissingError{Species: s.Name, What: what}
	case mc == s.TestedAt:
		return dry, nil
	case s.TestedAt != 12 || !green.Known() || !s.Intersection.Known():
		dry.Source += ", not adjusted for moisture"
		return dry, nil
	}
	return Figure[measure.Stress]{
		Value:  AtMoisture(dry.Value, green.Value, s.Intersection.Value, mc),
		Source: "FPL-GTR-282 (2021) Eq. 5-3 from " + dry.Source,
		Status: calculated(dry.Status, green.Status),
	}, nil
}
