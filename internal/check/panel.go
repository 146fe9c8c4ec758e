package check

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

// leastTongue is what must stay in the groove at the driest: derived from a
// trade forum's 3/8 grooves with the panel 1/4 in, of which a season takes half.
const leastTongue = measure.Inch / 8

// leastOverlap is what must stay of a back's lap at the driest, so that no
// light comes through.
const leastOverlap = measure.Inch / 16 // common practice, no source

// panels looks for panels, backs and drawer bottoms without room to grow, or
// that shrink out of their grooves.
func (r *run) panels() {
	for _, f := range r.p.Fits {
		switch f.Kind {
		case piece.PanelWidth, piece.BackWidth:
			r.panel(f, r.lapped(f))
		case piece.BottomDepth:
			r.bottom(f)
		}
	}
}

// lapped reports whether the fit is that of one of several boards which lap
// each other, so that every joint takes up the movement of a whole board.
func (r *run) lapped(f *piece.Fit) bool {
	if f.Kind != piece.BackWidth {
		return false
	}
	for _, j := range r.p.Joints {
		if j.Kind == "shiplap" && j.A.Assembly == f.Part.Assembly {
			return true
		}
	}
	return false
}

// binds reports whether what grows fills its room and pushes.
func binds(room, grow measure.Length) bool { return grow > room }

// left is what stays engaged when the part has shrunk: a panel fixed at its
// middle leaves either groove by half, a lapped board its neighbour by all.
func left(f *piece.Fit, lapped bool) measure.Length {
	lost := -min(f.Shrink.Change, 0)
	if !lapped {
		lost = (lost + 1) / 2
	}
	return f.Tongue.Length() - lost
}

func (r *run) panel(f *piece.Fit, lapped bool) {
	if binds(f.Room.Length(), f.Grow.Change) {
		r.panelBinds(f)
		return
	}
	least := leastTongue
	if lapped {
		least = leastOverlap
	}
	if stays := left(f, lapped); f.Tongue.Given() && stays < least {
		r.panelLoose(f, stays, least)
	}
}

func (r *run) panelBinds(f *piece.Fit) {
	short := f.Grow.Change - f.Room.Length()
	d := diag.Diagnostic{Code: "movement.panel", Severity: diag.Stop, Subject: typedAt(f.Room, f.Part.At),
		Summary: "{who} would fill the " + f.In + " in the damp season and push them apart",
		Figure:  "grows " + r.fmt(f.Grow.Change) + " by " + points(f.Grow.To) + " moisture",
		Limit:   "room when made " + r.fmt(f.Room.Length()), Source: source(f.Grow),
		Detail: "Make the room " + r.fmt(short) + " more: a narrower panel, or deeper grooves. " + r.calmer(f.Part, f) + "or divide the width in two."}
	r.add(finding{Diagnostic: d, parts: []*piece.Part{f.Part}, matter: f.In + " full", worse: int64(short)})
}

// calmer offers quartersawn wood where that helps.
func (r *run) calmer(p *piece.Part, f *piece.Fit) string {
	if q, ok := quartered(p, f.Grow); ok {
		return "Or take quartersawn wood, which would grow " + r.fmt(q) + ", "
	}
	return "Or take a wood that moves less, "
}

func (r *run) panelLoose(f *piece.Fit, stays, least measure.Length) {
	d := diag.Diagnostic{Code: "movement.panel", Severity: diag.Warn, Subject: typedAt(f.Tongue, f.Part.At),
		Summary: "{who} could shrink until hardly anything holds it in the " + f.In,
		Figure:  r.fmt(stays) + " engaged at " + points(f.Shrink.To) + " moisture",
		Limit:   "at least " + r.fmt(least), Source: source(f.Shrink) + "; limit: derived from trade forum grooves of 3/8 with the panel 1/4 in",
		Detail: "Cut the grooves " + r.fmt(least-stays) + " deeper and make the panel wider by twice that, or let the wood dry towards " +
			points(f.Shrink.To) + " before it is cut. Pin it at the middle only, so that both edges share the movement."}
	if least == leastOverlap {
		d.Source = source(f.Shrink) + "; limit: " + practice
		d.Detail = "Make the laps " + r.fmt(least-stays) + " wider, or use more and narrower boards. Fix each board at its middle only."
	}
	if stays <= 0 {
		d.Severity = diag.Stop
		d.Summary = "{who} would shrink out of the " + f.In + " in the dry season"
		d.Figure = "nothing engaged at " + points(f.Shrink.To) + " moisture: " + r.fmt(-stays) + " short"
	}
	r.add(finding{Diagnostic: d, parts: []*piece.Part{f.Part}, matter: f.In + " loose", worse: -int64(stays)})
}

// bottom is a drawer bottom, held in front and free behind: when it grows
// beyond the room behind the drawer, the drawer cannot close.
func (r *run) bottom(f *piece.Fit) {
	if !binds(f.Room.Length(), f.Grow.Change) {
		return
	}
	short := f.Grow.Change - f.Room.Length()
	d := diag.Diagnostic{Code: "movement.panel", Severity: diag.Warn, Subject: typedAt(f.Room, f.Part.At),
		Summary: "{who} would meet the back of the case in the damp season, and the front would stand proud",
		Figure:  "grows " + r.fmt(f.Grow.Change) + " by " + points(f.Grow.To) + " moisture",
		Limit:   "room behind it " + r.fmt(f.Room.Length()), Source: source(f.Grow),
		Detail: "Leave " + r.fmt(short) + " more behind the drawer (behind), or let the bottom end nearer the drawer's back. " + r.calmer(f.Part, f) + "for the bottom."}
	r.add(finding{Diagnostic: d, parts: []*piece.Part{f.Part}, matter: "bottom", worse: int64(short)})
}
