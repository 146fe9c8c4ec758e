package check

import (
	"fmt"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
)

// What machines hold safely, where the shop has not set its own.
const (
	usualShortest = 12 * measure.Inch     // machine manuals: 7 to 14, mostly 12
	usualThinnest = measure.Inch / 4      // machine manuals: 3/16 to 1/2
	leastThin     = 3 * measure.Inch / 16 // the least of any of those manuals
	leastNarrow   = 3 * measure.Inch / 4  // planer: one machine manual

	shortSource  = "the shop's own setting; machine manuals: 7 to 14 in, mostly 12, so that a board reaches both feed rollers"
	thinSource   = "the shop's own setting; machine manuals: 3/16 to 1/2 in"
	narrowSource = "one planer's manual: 3/4 in"
)

// machines looks for parts that are not safe at jointer and planer as they
// are: too short, too thin, too narrow. One note each says how to hold them.
func (r *run) machines() {
	least := r.p.Spec.Shop.ShortestPart.Or(why.Usual("shortest part", usualShortest, shortSource)).Length()
	thinnest := r.p.Spec.Shop.ThinnestPart.Or(why.Usual("thinnest part", usualThinnest, thinSource)).Length()
	for _, p := range r.p.Parts {
		r.short(p, least)
		r.thin(p, thinnest)
		r.narrow(p)
	}
	r.alone()
}

func (r *run) short(p *piece.Part, least measure.Length) {
	if p.Length.Length() >= least {
		return
	}
	blank := p.Blank.Length.Length()
	d := diag.Diagnostic{Code: "machine.short", Severity: diag.Note, Subject: typedAt(r.p.Spec.Shop.ShortestPart, p.At),
		Summary: "{who} would be too short for the machines alone: keep the wood in one longer blank until the last cut",
		Figure:  "finished " + r.style.FormatUnit(p.Length.Length()) + " long", Limit: "at least " + r.style.FormatUnit(least), Source: shortSource,
		Detail: "Joint, plane and rip each blank whole and crosscut last, with a stop and a backing board. A piece already cut short goes to the hand plane or between side rails glued flush to it, never to the machine alone."}
	f := finding{Diagnostic: d, parts: []*piece.Part{p}, many: "parts", matter: "short", worse: -int64(p.Length.Length())}
	switch {
	case blank < least:
		f.Severity, f.matter = diag.Stop, "short blank"
		f.Summary = "{who} would be machined from a blank too short to hold safely"
		f.Figure = "blank " + r.style.FormatUnit(blank) + " long"
		f.Detail = "Cut it from a blank of " + r.style.FormatUnit(least) + " or more and crosscut last, or work it by hand."
	case len(p.Blank.Joined) > 1 && p == p.Blank.Joined[0]: // once for all of them
		f.item = r.blankWords(p)
	case len(p.Blank.Joined) == 0:
		return // the allowance makes its own blank long enough
	}
	r.add(f)
}

// blankWords tells which parts come out of one blank.
func (r *run) blankWords(p *piece.Part) string {
	return fmt.Sprintf("%s together from one blank %s long.", shortened(marks(p.Blank.Joined), mostMarks), r.style.FormatUnit(p.Blank.Length.Length()))
}

func marks(parts []*piece.Part) []string {
	out := make([]string, len(parts))
	for i, p := range parts {
		out[i] = p.Mark
	}
	return out
}

// alone tells in one line which parts get a longer blank each of their own.
func (r *run) alone() {
	var parts []*piece.Part
	last := -1
	for i, f := range r.found {
		if f.Code == "machine.short" && f.Severity == diag.Note && len(f.parts[0].Blank.Joined) == 1 {
			parts, last = append(parts, f.parts...), i
		}
	}
	switch len(parts) {
	case 0:
	case 1:
		r.found[last].item = fmt.Sprintf("%s from a blank %s long.", parts[0].Mark, r.style.FormatUnit(parts[0].Blank.Length.Length()))
	default:
		r.found[last].item = shortened(marks(parts), mostMarks) + " each from a blank " + r.style.FormatUnit(parts[0].Blank.Length.Length()) + " long."
	}
}

func (r *run) thin(p *piece.Part, least measure.Length) {
	t := p.Thickness.Length()
	if t >= least {
		return
	}
	d := diag.Diagnostic{Code: "machine.thin", Severity: diag.Note, Subject: typedAt(p.Thickness, p.At),
		Summary: "{who} would be thinner than the planer takes safely",
		Figure:  r.fmt(t) + " thick", Limit: "at least " + r.fmt(least), Source: thinSource,
		Detail: "Plane it on a flat carrier board as wide as the part and longer, with a stop at its end, or finish it with the hand plane or a drum sander."}
	if t < leastThin {
		d.Severity = diag.Warn
		d.Summary = "{who} would be thinner than any planer takes safely, and could shatter in it"
		d.Limit = "at least " + r.fmt(leastThin)
		d.Detail = "Resaw it a little over and finish by hand plane or drum sander, or make it " + r.fmt(leastThin) + " thick and plane it on a carrier board."
	}
	r.add(finding{Diagnostic: d, parts: []*piece.Part{p}, matter: "thin", worse: -int64(t)})
}

func (r *run) narrow(p *piece.Part) {
	w := p.Width.Length()
	if w >= leastNarrow || p.Thickness.Length() >= leastNarrow {
		return
	}
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "machine.narrow", Severity: diag.Note, Subject: typedAt(p.Width, p.At),
		Summary: "{who} would be too narrow to stand steady in the planer",
		Figure:  r.fmt(w) + " wide", Limit: "at least " + r.fmt(leastNarrow), Source: narrowSource,
		Detail: "Plane the thickness in a wide blank and rip the part off it last with push sticks, or finish the edges by hand."},
		parts: []*piece.Part{p}, matter: "narrow", worse: -int64(w)})
}
