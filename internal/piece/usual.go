package piece

import (
	"casewright/internal/measure"
	"casewright/internal/why"
)

// usual is a default of the trade. The figures are published in inches; a shop
// that works in millimetres takes the round size nearest to them, because it
// has no cutter and no plane iron for 12.7.
func (b *builder) usual(name string, v measure.Length, source string) why.Size {
	if b.metric() {
		if round := rounded(v); round != v {
			return why.Usual(name, round, source+", in round millimetres")
		}
	}
	return why.Usual(name, v, source)
}

func (b *builder) metric() bool { return b.spec.Commission.Unit == measure.Millimetres }

// rounded is a size in round millimetres: to 5 from 40 up, to 1 from 5 up, to a
// half below: common practice, no source.
func rounded(l measure.Length) measure.Length {
	step := measure.Millimetre / 2
	switch {
	case l >= 40*measure.Millimetre:
		step = 5 * measure.Millimetre
	case l >= 5*measure.Millimetre:
		step = measure.Millimetre
	}
	return max(measure.Graduation(step).Round(l), step)
}

// step is what sizes are chosen in: what a rule and a cutter have.
func (b *builder) step() measure.Length {
	if b.metric() {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

// stepWord is the step in words.
func (b *builder) stepWord() string {
	if b.metric() {
		return "millimetre"
	}
	return "1/16"
}

// snap rounds a chosen size to the step.
func (b *builder) snap(l measure.Length) measure.Length { return measure.Graduation(b.step()).Round(l) }

// snapUp is the next step up.
func (b *builder) snapUp(l measure.Length) measure.Length {
	return (l + b.step() - 1) / b.step() * b.step()
}

// fine is the step of dovetails and seen widths.
func (b *builder) fine() measure.Length {
	if b.metric() {
		return measure.Millimetre / 2
	}
	return measure.SixtyFourth
}
