package check

import (
	"cmp"
	"slices"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid"
	"casewright/internal/why"
)

// Run looks the piece over by every rule. The list is in the order to read it:
// stops, warnings, notes, and within each what hurts people first, then what
// costs most; sorting it again loses that. Findings that the text accepts
// carry the reason in Accepted and keep their place. The piece must come from
// [piece.Build]; one that could only be built in part is checked in part. A
// proof of the piece's exact shapes is worded along with the rest if there is one.
func Run(p *piece.Piece, proofs ...solid.Proof) diag.List {
	r := &run{p: p, style: p.Spec.Commission.GapStyle(), proofs: proofs}
	for _, find := range finders {
		find(r)
	}
	r.takeAccepts()
	out := make(diag.List, 0, len(r.found))
	for _, g := range r.gather() {
		out = append(out, g.diagnostic(r))
	}
	slices.SortStableFunc(out, graver)
	return out
}

// finders are the rules, those first whose findings are read first.
var finders = [...]func(*run){
	(*run).proof,
	(*run).hanging,
	(*run).machines,
	(*run).crossGrain,
	(*run).panels,
	(*run).thinStock,
	(*run).joints,
	(*run).drawerFits,
	(*run).doorFits,
	(*run).doorGaps,
	(*run).unitSlips,
	(*run).asMeasured,
	(*run).site,
	(*run).passages,
	(*run).moisture,
	(*run).sets,
	(*run).wideBottoms,
	(*run).slots,
}

// graver orders findings for reading. Equal ones keep the order of finders,
// and within a rule that of the piece.
func graver(a, b diag.Diagnostic) int {
	return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(rank(a.Code), rank(b.Code)))
}

// run is one look over one piece.
type run struct {
	p     *piece.Piece
	style measure.Style
	found []finding

	proofs []solid.Proof
}

func (r *run) add(f finding) { r.found = append(r.found, f) }

// fmt prints a length to the commission's gap graduation. What lies between
// two marks is printed as a decimal beside it, for a found value and its limit
// must not look alike when they are not.
func (r *run) fmt(l measure.Length) string {
	if r.style.Unit == measure.Millimetres {
		return measure.Decimal(l, measure.Millimetres, 2) + " mm"
	}
	text, exact := r.style.Exact(l)
	if exact || l.Abs() >= measure.Inch {
		return text + `"`
	}
	decimal := measure.Decimal(l, measure.Inches, 3) + `"`
	if text == "0" {
		return decimal
	}
	return text + `" (` + decimal + `)`
}

// literal writes a length, rounded up to the gap graduation, as the text takes it.
func (r *run) literal(l measure.Length) (measure.Length, string) {
	if g := measure.Length(r.p.Spec.Commission.Gaps); g > 0 && l > 0 {
		l = (l + g - 1) / g * g
	}
	if text, exact := r.style.Exact(l); exact {
		return l, text
	}
	return l, measure.Decimal(l, r.style.Unit, 5)
}

// mend is the edit that gives a size the text holds another value; none where
// the size follows from others, for then another number has to give.
func (r *run) mend(s why.Size, l measure.Length, what string) []diag.Edit {
	if s.Root().Kind() != why.Typed || s.Root().At().IsZero() {
		return nil
	}
	l, text := r.literal(l)
	return []diag.Edit{{Span: s.Root().At(), Text: text, Says: what + " " + r.style.FormatUnit(l)}}
}

// typedAt is where the text gives a size, if it gives just that size; a size
// that follows from others would point at one of its fathers, which may be
// anywhere, so the place of what it belongs to is better.
func typedAt(s why.Size, home diag.Span) diag.Span {
	if s.Root().Kind() == why.Typed {
		return orSpan(s.Root().At(), home)
	}
	return home
}

// orSpan is the first span that points anywhere.
func orSpan(spans ...diag.Span) diag.Span {
	for _, s := range spans {
		if !s.IsZero() {
			return s
		}
	}
	return diag.Span{}
}
