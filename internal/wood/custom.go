package wood

import (
	"fmt"
	"strings"

	"casewright/internal/measure"
)

// Own are the figures of a wood defined in the text. A zero figure is one that
// was not given; movement may be given as shrinkage or as coefficients.
type Own struct {
	Name             string
	ShrinkRadial     Shrinkage // green to oven-dry
	ShrinkTangential Shrinkage
	Radial           Coefficient // instead of the shrinkage
	Tangential       Coefficient
	Gravity12        Gravity        // oven-dry mass over volume at 12 %
	Stiffness        measure.Stress // optional
	Rupture          measure.Stress // optional
	Source           string         // where the figures are from; optional
}

// GivenSource is the source of figures whose text names none.
const GivenSource = "given in the design text"

// Problem is one thing wrong with a wood defined in the text.
type Problem struct {
	Field string // radial, tangential, specific_gravity, stiffness, strength or name
	Says  string // what is wrong and what would do, in shop words
}

// OwnError is all that is wrong with a wood defined in the text.
type OwnError struct {
	Name     string
	Problems []Problem
}

// Error lists the problems in one line.
func (e *OwnError) Error() string {
	says := make([]string, len(e.Problems))
	for i, p := range e.Problems {
		says[i] = p.Says
	}
	return fmt.Sprintf("the wood %q: %s", short(e.Name), strings.Join(says, "; "))
}

// Limits that let every wood in the tables pass with room to spare and stop a
// slipped unit or decimal point (common practice, no source).
const (
	leastShrink, mostShrink   = 0.5, 20.0
	leastGravity, mostGravity = 0.08, 1.4
	leastStiff, mostStiff     = 1e9, 40e9
	leastRupture, mostRupture = 5e6, 400e6
)

// Custom makes a wood from figures of one's own. All that is wrong with them
// is in one *[OwnError]. What was not given stays missing.
func Custom(o Own) (*Species, error) {
	s := &Species{Key: plain(o.Name), Name: strings.TrimSpace(o.Name), Group: OwnWood, PairAgrees: true, TestedAt: 12}
	source := o.Source
	if strings.TrimSpace(source) == "" {
		source = GivenSource
	}
	s.FibreSaturation = Figure[measure.MoistureContent]{Value: 30, Source: "FPL-GTR-190 (2010) Eq. 13-3 p. 13-17", Status: Read}
	p := problems{}
	if s.Key == "" {
		p.add("name", "give it a name")
	}
	s.ShrinkRadial, s.Radial = p.movement("radial", o.ShrinkRadial, o.Radial, source)
	s.ShrinkTangential, s.Tangential = p.movement("tangential", o.ShrinkTangential, o.Tangential, source)
	if s.Radial.Known() && s.Tangential.Known() && s.Radial.Value > s.Tangential.Value {
		p.add("radial", "the radial movement is larger than the tangential; in wood it is the other way round, are the two swapped?")
	}
	s.Gravity12 = given(&p, "specific_gravity", "the specific gravity", o.Gravity12, leastGravity, mostGravity, 1, "", source)
	if o.Gravity12 == 0 {
		p.add("specific_gravity", "give its specific gravity (oven-dry mass, volume at 12 % moisture), about 0.35 for pine to 0.7 for oak")
	}
	s.Stiffness = given(&p, "stiffness", "the stiffness", o.Stiffness, leastStiff, mostStiff, 1e9, " GPa", source)
	s.Rupture = given(&p, "strength", "the bending strength", o.Rupture, leastRupture, mostRupture, 1e6, " MPa", source)
	if len(p) > 0 {
		return nil, &OwnError{Name: o.Name, Problems: p}
	}
	s.setWorking()
	return s, nil
}

type problems []Problem

func (p *problems) add(field, says string) { *p = append(*p, Problem{field, says}) }

// movement takes shrinkage or coefficient and works out the other.
func (p *problems) movement(field string, shrink Shrinkage, c Coefficient, source string) (Figure[Shrinkage], Figure[Coefficient]) {
	const fs = 30
	switch {
	case shrink == 0 && c == 0:
		p.add(field, "give its "+field+" shrinkage from green to oven-dry in percent")
	case shrink != 0 && c != 0:
		p.add(field, "give its "+field+" shrinkage or its movement per percent of moisture, not both")
	case c != 0:
		s := ShrinkageFor(c, fs)
		if !within(float64(s), leastShrink, mostShrink) {
			p.add(field, fmt.Sprintf("a %s movement of %.5g for one percent of moisture is not that of a wood; between %.4f and %.4f is",
				field, float64(c), float64(CoefficientFor(leastShrink, fs)), float64(CoefficientFor(mostShrink, fs))))
			break
		}
		return Figure[Shrinkage]{s, "worked from the movement " + source, Calculated}, Figure[Coefficient]{c, source, Given}
	case !within(float64(shrink), leastShrink, mostShrink):
		p.add(field, fmt.Sprintf("a %s shrinkage of %.4g %% is not that of a wood; between %g and %g %% is", field, float64(shrink), leastShrink, mostShrink))
	default:
		return Figure[Shrinkage]{shrink, source, Given}, Figure[Coefficient]{CoefficientFor(shrink, fs), "worked from the shrinkage " + source, Calculated}
	}
	return Figure[Shrinkage]{}, Figure[Coefficient]{}
}

// given checks one optional figure; unit is what one of the printed unit is.
func given[T ~float64](p *problems, field, what string, v T, low, high, unit float64, says, source string) Figure[T] {
	if v == 0 {
		return Figure[T]{}
	}
	if !within(float64(v), low, high) {
		p.add(field, fmt.Sprintf("%s of %.4g%s is not that of a wood; between %.4g and %.4g%s is", what, float64(v)/unit, says, low/unit, high/unit, says))
		return Figure[T]{}
	}
	return Figure[T]{v, source, Given}
}
