package sheet

import "casewright/internal/measure"

// Chain is the dimensions between places of the model along one side of the
// view: from each stop to the next, in either order of rising. Two stops make
// a single dimension. Stops are in the model's own frame, x above and below, y
// to the left and right.
//
// The printed values add up to the printed distance of the outer stops, and
// equal spaces are printed alike where that is possible: see [measure.Fill].
func (v View) Chain(side Side, style measure.Style, stops ...measure.Length) Dim {
	d := Dim{Side: side}
	var spaces []measure.Length
	for i, s := range stops {
		p := v.Pt(s.Millimetres(), s.Millimetres())
		at := p.X
		if side == LeftOf || side == RightOf {
			at = p.Y
		}
		d.Stops = append(d.Stops, at)
		if i > 0 {
			spaces = append(spaces, (s - stops[i-1]).Abs())
		}
	}
	if len(spaces) == 0 {
		return d
	}
	whole := (stops[len(stops)-1] - stops[0]).Abs()
	for _, s := range measure.Fill(whole, spaces, graduation(style)) {
		d.Labels = append(d.Labels, style.Format(s))
	}
	return d
}

// graduation is the style's, or the finest usual one of its unit.
func graduation(s measure.Style) measure.Graduation {
	switch {
	case s.Graduation > 0:
		return s.Graduation
	case s.Unit == measure.Millimetres:
		return measure.TenthMillimetre
	}
	return measure.SixtyFourths
}
