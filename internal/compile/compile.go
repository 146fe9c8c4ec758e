package compile

import (
	"cmp"
	"slices"

	"casewright/internal/check"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
	"casewright/internal/solid"
)

// Result is what one run makes of the texts. Spec and Piece are never nil and
// read-only.
type Result struct {
	Spec *design.Spec

	// Piece is whole when the texts are sound. Otherwise it holds what could be
	// built, which is good for a picture and for nothing that is cut.
	Piece *piece.Piece

	// Text is what the texts themselves give to say: errors first, then notes.
	Text diag.List

	// Model is the piece in exact solids; nil until [Result.Shape] was called.
	Model *solid.Model

	// Findings are what the checks say about the piece, in the order to read
	// them. A piece from texts with errors is not checked.
	Findings diag.List
}

// Run compiles the texts of one commission.
func Run(sources []design.Source) Result {
	var r Result
	r.Spec, r.Text = design.Read(sources)
	unsound := r.Text.Has(diag.Error)
	p, said := piece.Build(r.Spec)
	r.Piece = p
	if unsound {
		said = independent(r.Spec, said, r.Text)
	}
	r.Text = append(r.Text, said...).Sort()
	if r.Sound() {
		r.Findings = check.Run(p)
	}
	return r
}

// Shape works out the exact solids of a sound piece, proves that its parts fit
// and checks it again with that proof. It takes ten times as long as Run, so
// it is asked for; a cache kept between calls makes it quick after a small
// change. A part that cannot be shaped is an error of the text.
func (r *Result) Shape(cache *solid.Cache) {
	if !r.Sound() {
		return
	}
	m, said := solid.Build(r.Piece, cache)
	r.Model = m
	r.Text = append(r.Text, said...).Sort()
	r.Findings = check.Run(r.Piece, m.Prove(m.Meetings()))
}

// Sound reports whether the texts have no errors: only then is the piece whole.
func (r Result) Sound() bool { return !r.Text.Has(diag.Error) }

// Safe reports whether the texts have no errors and nothing was found that
// stops the work, save what the maker has accepted.
func (r Result) Safe() bool { return r.Sound() && !r.Findings.Has(diag.Stop) }

// Diags is everything there is to say, in the order to read it: errors, stops,
// warnings, notes.
func (r Result) Diags() diag.List {
	all := slices.Concat(r.Findings, r.Text)
	slices.SortStableFunc(all, func(a, b diag.Diagnostic) int { return cmp.Compare(b.Severity, a.Severity) })
	return all
}
