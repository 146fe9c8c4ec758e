package check

import (
	"fmt"
	"math"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/wood"
)

// What wood may be like on the day it is worked.
const (
	// apart is how far two boards of one glue-up may differ: edge-glued strips
	// under veneer, so that the joint does not show later.
	apart       measure.MoistureContent = 2
	apartSource                         = "trade magazine column (Wengert): edge-glued strips within 2 points; Wood Handbook FPL-GTR-190 (2010), p. 13-5: laminations within 5"
	// glueFrom to glueTo is furniture lumber at gluing.
	glueFrom   measure.MoistureContent = 6
	glueTo     measure.MoistureContent = 8
	glueSource                         = "Wood Handbook FPL-GTR-113 (1999), ch. 9, p. 9-16 (from memory): 6 to 8 % at gluing; FPL-GTR-190 (2010), p. 13-13: furniture lumber is dried to 6 to 8 %"
	// wettest is the most at making.
	wettest       measure.MoistureContent = 10
	wettestSource                         = "ANSI/KCMA A161.1 (2012), 2.8: 10 % or less at making"
	// unlike is how far wood may be from what the shop's air will bring it to.
	unlike measure.MoistureContent = 2
)

// moisture looks at the wood as it is today: too wet or too dry to glue, not
// yet at home in the shop, or boards of one glue-up that differ.
func (r *run) moisture() {
	order, parts := r.woods()
	for _, w := range order {
		r.today(w, parts[w])
	}
	r.differing()
}

// woods lists the woods in use in the order of their first part.
func (r *run) woods() (order []*piece.Wood, parts map[*piece.Wood][]*piece.Part) {
	parts = map[*piece.Wood][]*piece.Part{}
	for _, p := range r.p.Parts {
		if parts[p.Wood] == nil {
			order = append(order, p.Wood)
		}
		parts[p.Wood] = append(parts[p.Wood], p)
	}
	return order, parts
}

func (r *run) today(w *piece.Wood, parts []*piece.Part) {
	mc, shop := w.Moisture, r.p.Air.Shop
	off := mc - shop
	d := diag.Diagnostic{Code: "moisture.today", Severity: diag.Note, Subject: orSpan(w.At, parts[0].At), Figure: points(mc) + " today"}
	switch {
	case mc > wettest:
		d.Severity = diag.Warn
		d.Summary = "{who} would be worked wet: it will shrink and its joints will open"
		d.Limit, d.Source = "at most "+points(wettest), wettestSource
	case mc < glueFrom || mc > glueTo:
		d.Summary = "{who} would be glued outside what furniture wood should be"
		d.Limit, d.Source = points(glueFrom)+" to "+points(glueTo)+" at gluing", glueSource
	case math.Abs(float64(off)) > float64(unlike):
		d.Summary = "{who} must still come to the shop's air"
		d.Limit, d.Source = fmt.Sprintf("within %.0f points of the %s this shop's air brings it to", float64(unlike), points(shop)), practice
	default:
		return
	}
	d.Detail = r.restWords(w, parts)
	r.add(finding{Diagnostic: d, one: w.Name, place: "wood " + w.Name, matter: w.Name})
}

// restWords tells what waiting changes, by the widest part of the wood.
func (r *run) restWords(w *piece.Wood, parts []*piece.Part) string {
	widest := parts[0]
	for _, p := range parts {
		if p.Width.Length() > widest.Width.Length() {
			widest = p
		}
	}
	m, err := w.Species.Move(widest.Width.Length(), w.Moisture, r.p.Air.Shop, w.Cut, wood.Width)
	changed := ""
	if err == nil && m.Change != 0 {
		word := "narrower"
		if m.Change > 0 {
			word = "wider"
		}
		changed = fmt.Sprintf("; %s %s would become %s %s", widest.Mark, widest.Name, r.fmt(m.Change.Abs()), word)
	}
	return "Sticker it in the shop, whose air brings wood to " + points(r.p.Air.Shop) + changed +
		". Rough it out first and let it rest 7 to 14 days (adhesive makers' guides) until two readings agree, or take drier wood for what is glued first. The gaps reckon with today's moisture, so measure again before the fitting."
}

// differing looks for glued joints between woods of unlike moisture.
func (r *run) differing() {
	for _, j := range r.p.Joints {
		if j.Glued != "all" || j.A == nil || j.B == nil {
			continue
		}
		a, b := j.A.Wood, j.B.Wood
		off := math.Abs(float64(a.Moisture - b.Moisture))
		if off <= float64(apart) {
			continue
		}
		r.add(finding{Diagnostic: diag.Diagnostic{Code: "moisture.apart", Severity: diag.Warn, Subject: orSpan(b.At, j.At),
			Summary: "{who} would be glued together at unlike moisture, and the joint would work as they even out",
			Figure:  fmt.Sprintf("%s and %s: %.1f points apart", points(a.Moisture), points(b.Moisture), off),
			Limit:   fmt.Sprintf("%.0f points", float64(apart)), Source: apartSource,
			Detail: "Let both rest in the shop until they read alike, or take both from one lot."},
			parts: []*piece.Part{j.A, j.B}, one: a.Name + " and " + b.Name, matter: a.Name + b.Name, worse: int64(off * 1000)})
	}
}
