package check

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

// leastGap is the tightest gap an inset door can be fitted to by hand: common
// practice, no source. Cabinetmakers take 1/16 for furniture.
const leastGap = measure.SixtyFourth

// doorGaps looks at the sides of inset doors where no wood moves: the hinges',
// the top and the bottom. There a gap is only for the plane and the finish, and
// without one the door binds all year.
func (r *run) doorGaps() {
	for _, a := range r.p.Assemblies {
		if a.Kind == piece.DoorAssembly && a.Opening != nil && !overlay(a) {
			r.doorGap(a)
		}
	}
}

func (r *run) doorGap(a *piece.Assembly) {
	o := a.Opening
	gap, where := a.Corner.Z-o.Corner.Z, "below"
	if above := o.Height.Length() - a.Size[1].Length() - gap; above < gap {
		gap, where = above, "above"
	}
	left := a.Corner.X - o.Corner.X
	right := o.Width.Length() - a.Size[0].Length() - left
	if side := min(left, right); side < gap { // of a pair's door one of the two is the other door's width
		gap, where = side, "at its hinges"
	}
	if gap >= leastGap {
		return
	}
	d := o.Fill.Door
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "fit.door", Severity: diag.Stop, Subject: orSpan(d.Gap.At(), d.At, o.At),
		Summary: "{who} would bind in its opening " + where, Figure: "gap of " + r.fmt(gap), Limit: "at least " + r.fmt(leastGap) + "; 1/16\" is usual for furniture",
		Source: "common practice, no source; cabinetmakers' forum thread, 2006: furniture 1/16",
		Detail: "Leave gap open and it is 1/16\" all round and more on the closing side, or give a gap you can plane to and finish."},
		whole: a, matter: where, worse: int64(leastGap - gap)})
}
