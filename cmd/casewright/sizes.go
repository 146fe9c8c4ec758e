package main

import (
	"casewright/internal/design"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
)

// printer prints lengths the way one commission does.
type printer struct {
	rule, gaps measure.Style
}

func newPrinter(c design.Commission) printer { return printer{c.Style(), c.GapStyle()} }

// settled prints a length that was rounded for print: to the rule, or to the
// finer graduation of gaps where it was rounded to that.
func (f printer) settled(l measure.Length) string {
	if text, exact := f.rule.Exact(l); exact {
		return text
	}
	return f.gaps.Format(l)
}

// exact prints a length without rounding it away: as a fraction where it lies
// on a mark, else to a hundred-thousandth of an inch or a thousandth of a
// millimetre.
func (f printer) exact(l measure.Length) string {
	for _, s := range []measure.Style{f.rule, f.gaps} {
		if text, exact := s.Exact(l); exact {
			return text
		}
	}
	if f.rule.Unit == measure.Millimetres {
		return measure.Decimal(l, measure.Millimetres, 3)
	}
	return measure.Decimal(l, measure.Inches, 5)
}

// unit puts the unit behind a printed length.
func (f printer) unit(text string) string {
	if f.rule.Unit == measure.Millimetres {
		return text + " mm"
	}
	return text + `"`
}

// waits reports whether a size of the part hangs on an opening that is still
// to be measured.
func waits(p *piece.Part, s why.Size) bool {
	o := p.WaitsFor
	return p.Standing == piece.Waits && o != nil && (s.Follows(o.Width) || s.Follows(o.Height) || s.Follows(o.Depth))
}

// The directions below are seen by somebody standing before the piece.

// grainRuns tells which way a part's grain, and its length, runs.
func grainRuns(p *piece.Part) string {
	switch p.Place.L {
	case piece.Up, piece.Down:
		return "upright"
	case piece.Front, piece.Back:
		return "to the back"
	}
	return "across"
}

// showFace tells which face of a part is seen.
func showFace(p *piece.Part) string {
	if p.Show == 0 { // the low face, where thickness begins
		return sideWord(-p.Place.T)
	}
	return sideWord(p.Place.T)
}

// reference tells which long edge of a part the others are measured from.
func reference(p *piece.Part) string {
	if p.Edge == 0 { // where width begins
		return sideWord(-p.Place.W)
	}
	return sideWord(p.Place.W)
}

func sideWord(d piece.Dir) string {
	switch d {
	case piece.Front:
		return "front"
	case piece.Back:
		return "back"
	case piece.Up:
		return "upper"
	case piece.Down:
		return "lower"
	case piece.Left:
		return "left"
	}
	return "right"
}
