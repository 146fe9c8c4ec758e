package check

import (
	"slices"
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
)

// takeAccepts gives every finding that the text lets stand its reason, and
// notes accepts that let nothing stand: the matter is gone or its name is wrong.
func (r *run) takeAccepts() {
	for _, a := range r.p.Spec.Accepts {
		used := false
		for i := range r.found {
			f := &r.found[i]
			if f.Code != a.Code.Value || !f.at(a.Of.Value) {
				continue
			}
			used = true
			if f.Accepted == "" {
				f.Accepted = reason(a)
			}
		}
		if !used {
			r.unused(a)
		}
	}
}

func reason(a *design.Accept) string {
	if a.Reason.Given() {
		return a.Reason.Value
	}
	return "no reason given"
}

// at reports whether the finding is about what the words name: a mark, a path,
// an assembly or opening that holds the part, a place, or a wood. Nothing and * name
// everything; within a path * stands for any one name.
func (f *finding) at(of string) bool {
	if of == "" || of == "*" || of == f.place || of == f.one {
		return true
	}
	want := strings.Split(of, ".")
	parts := f.parts
	if f.whole != nil {
		if of == f.whole.Letter || of == f.whole.Name || holds(want, f.whole.Path) {
			return true
		}
		parts = f.whole.Parts
	}
	return slices.ContainsFunc(parts, func(p *piece.Part) bool { return p.Mark == of || holds(want, p.Path) })
}

// holds reports whether the path wanted is this one or leads to it.
func holds(want []string, path string) bool {
	names := strings.Split(path, ".")
	return len(names) >= len(want) && pathMatches(want, strings.Join(names[:len(want)], "."))
}

func (r *run) unused(a *design.Accept) {
	d := diag.Diagnostic{Code: "accept.unused", Severity: diag.Note, Subject: orSpan(a.Of.At, a.Code.At, a.At),
		Summary: "accept “" + a.Code.Value + "” finds nothing to accept",
		Figure:  "no such finding", Limit: "one at least", Source: "the design text"}
	switch elsewhere := r.elsewhere(a.Code.Value); {
	case !known(a.Code.Value):
		d.Detail = "No finding goes by that name. Correct the name, or take the block away."
		d.Subject = orSpan(a.Code.At, a.At)
	case elsewhere != "":
		d.Detail = "The matter is found at " + elsewhere + ", not at “" + a.Of.Value + "”. Correct of, or take the block away."
	default:
		d.Detail = "The matter is gone. Take the block away, or keep it if the matter may come back."
	}
	r.add(finding{Diagnostic: d, place: "accept " + a.Code.Value, matter: a.Code.Value + " " + a.Of.Value})
}

// elsewhere tells one place where the code was found.
func (r *run) elsewhere(code string) string {
	for _, f := range r.found {
		switch {
		case f.Code != code:
		case f.whole != nil:
			return f.whole.Path
		case len(f.parts) > 0:
			return f.parts[0].Path
		case f.place != "":
			return f.place
		}
	}
	return ""
}
