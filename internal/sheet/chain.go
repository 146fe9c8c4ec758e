package sheet

import "casewright/internal/measure"

// Chain is the dimensions between places of the model along one side of the
// view: from each stop to the next, in either order of rising. Two stops make
// a single dimension. Stops are in the model's own frame, x above and below, y
// to the left and right.
//
// The printed values add up to the printed distance of the outer stops: stops
// are rounded to the rule, counted from the first, and the values are what
// lies between the rounded stops. One value may so differ from its own nearest
// mark by one graduation, where rounding each alone would lose or gain it.
func (v View) Chain(side Side, style measure.Style, stops ...measure.Length) Dim {
	d := Dim{Side: side}
	for i, s := range stops {
		p := v.Pt(s.Millimetres(), s.Millimetres())
		at := p.X
		if side == LeftOf || side == RightOf {
			at = p.Y
		}
		d.Stops = append(d.Stops, at)
		if i > 0 {
			from, to := onRule(style, stops[i-1]-stops[0]), onRule(style, s-stops[0])
			d.Labels = append(d.Labels, style.Format((to - from).Abs()))
		}
	}
	return d
}

// onRule is the length as the style prints it.
func onRule(style measure.Style, l measure.Length) measure.Length {
	neg, whole, num, den := style.Parts(l)
	unit := style.Unit.Length()
	out := measure.Length(whole)*unit + unit.MulDiv(num, den)
	if neg {
		return -out
	}
	return out
}

// SizeText is a length as text, its fraction stacked: the number that matters
// on a sheet.
func SizeText(l measure.Length, style measure.Style, t Text) Text {
	t.Text = style.Format(l)
	return t
}
