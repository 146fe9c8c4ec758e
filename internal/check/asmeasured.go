package check

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// farOff is how far a measured opening may lie from its plan before one asks
// whether it was read or written wrongly: common practice, no source. A case
// that came out further off than this is worth a second look anyway.
const farOff = 3 * measure.Inch / 16

// largest is the longest case that goes up a stair or through a door in one
// piece; beyond it the unit has likely slipped: common practice, no source.
const largest = 12 * measure.Foot

// asMeasured asks about measured openings that lie far from their plan.
func (r *run) asMeasured() {
	for _, o := range r.p.Openings {
		for i, now := range [3]why.Size{o.Width, o.Height, o.Depth} {
			planned := o.Planned[i]
			if !planned.Given() || now == planned {
				continue
			}
			off := now.Length() - planned.Length()
			if off.Abs() <= farOff {
				continue
			}
			word := [3]string{"width", "height", "depth"}[i]
			r.add(finding{Diagnostic: diag.Diagnostic{Code: "measured.far", Severity: diag.Warn, Subject: orSpan(now.At(), o.At),
				Summary: "the measured " + word + " of opening “" + o.Name + "” lies far from its plan: is it so?",
				Figure:  r.style.FormatUnit(now.Length()) + ", " + r.fmt(off.Abs()) + moreOrLess(off), Limit: "within " + r.fmt(farOff) + " of " + r.style.FormatUnit(planned.Length()),
				Source: "common practice, no source",
				Detail: "What fills the opening follows what was measured. Read the rule once more; if it is so, accept this, or change the row or column in the text to what it became, so that its neighbours follow too."},
				place: o.Path, matter: o.Path + word, worse: int64(off.Abs())})
		}
	}
}

func moreOrLess(off measure.Length) string {
	if off < 0 {
		return " less than planned"
	}
	return " more than planned"
}

// unitSlips asks about cases larger than rooms.
func (r *run) unitSlips() {
	for _, c := range r.p.Spec.Cases {
		for _, s := range []why.Size{c.Width, c.Height, c.Depth} {
			if s.Length() <= largest {
				continue
			}
			r.add(finding{Diagnostic: diag.Diagnostic{Code: "case.huge", Severity: diag.Warn, Subject: orSpan(s.At(), c.At),
				Summary: "case “" + c.Name + "” would be larger than goes through a house: did its unit slip?",
				Figure:  r.style.FormatUnit(s.Length()), Limit: r.style.FormatUnit(largest), Source: "common practice, no source",
				Detail: "A bare number is in the commission's unit, " + r.style.Unit.String() + "; a size in another stands in quotes with its unit. Or divide the piece into several cases."},
				place: c.Name, matter: c.Name, worse: int64(s.Length())})
		}
	}
}
