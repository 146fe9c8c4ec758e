package check

import (
	"fmt"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/wood"
)

// thicknesses is how many times its thickness a solid drawer bottom may span
// from side to side before it wants a muntin: 18 in of 1/4, 27 of 3/8. Common
// practice, no source; a trade page says that 1/4 bends or cracks when wide and
// asks for 3/8 to 1/2, Joyce adds a muntin to wide drawers and tells no width.
const thicknesses = 72

// wideBottoms looks for solid drawer bottoms that are thin for their span.
func (r *run) wideBottoms() {
	for _, f := range r.p.Fits {
		if f.Kind != piece.BottomDepth || side(f.Part, acrossCase) != wood.Length {
			continue
		}
		p := f.Part
		span, most := p.Length.Length(), thicknesses*p.Thickness.Length()
		if span <= most {
			continue
		}
		need := (span + thicknesses - 1) / thicknesses
		r.add(finding{Diagnostic: diag.Diagnostic{Code: "drawer.wide-bottom", Severity: diag.Note, Subject: typedAt(p.Thickness, p.At),
			Summary: "{who} would be thin for the width it spans and could sag on its load",
			Figure:  r.style.FormatUnit(span) + " of " + r.fmt(p.Thickness.Length()) + " wood",
			Limit:   fmt.Sprintf("%s: %d times the thickness", r.style.FormatUnit(most), thicknesses), Source: practice + "; " + joyce + ": a muntin in wide drawers",
			Detail: r.stiffer(need, span, most)},
			parts: []*piece.Part{p}, matter: "wide", worse: int64(need)})
	}
}

// thickest is the most a drawer bottom is made of; wider ones are divided.
const thickest = measure.Inch / 2 // a trade page: 3/8 to 1/2 for wide

// stiffer tells the ways out: thicker wood where that is still a bottom, and
// muntins that divide the span.
func (r *run) stiffer(need, span, most measure.Length) string {
	n := (span+most-1)/most - 1
	muntins := "a muntin 2 in wide and 5/8 thick from front to back in the middle"
	if n > 1 {
		muntins = fmt.Sprintf("%d muntins 2 in wide and 5/8 thick from front to back", n)
	}
	if need > thickest {
		return "Add " + muntins + ", or divide the opening so that two narrower drawers share it."
	}
	return "Make it " + r.fmt(r.sixteenthUp(need)) + " thick and feather its edges to the groove, or add " + muntins + "."
}

// sixteenthUp rounds up to what stock is planed to.
func (r *run) sixteenthUp(l measure.Length) measure.Length {
	step := measure.Inch / 16
	if r.style.Unit == measure.Millimetres {
		step = measure.Millimetre
	}
	return (l + step - 1) / step * step
}
