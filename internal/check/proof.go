package check

import (
	"fmt"

	"casewright/internal/diag"
	"casewright/internal/piece"
	"casewright/internal/solid"
)

// proof words what the exact shapes of the parts say against their places.
func (r *run) proof() {
	for _, proof := range r.proofs {
		for _, t := range proof.Clashes {
			r.clash(t)
		}
		for _, j := range proof.Loose {
			r.loose(j)
		}
		for _, s := range proof.Open {
			r.open(s.Joint)
		}
	}
}

func (r *run) open(j *piece.Joint) {
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "solid.open", Severity: diag.Warn, Subject: j.At,
		Summary: "the " + j.Kind + " " + j.Name + " would stand open when it is pushed home",
		Detail:  "Its parts leave a gap that a joint of this kind does not want. Check the sizes of the two parts, or the depth of the housing.",
		Figure:  "more than 1/20 mm of air", Limit: "none", Source: "geometry of the joint"},
		parts: []*piece.Part{j.A, j.B}, matter: j.Name})
}

func (r *run) clash(t solid.Meeting) {
	a, b := t.A.Part, t.B.Part
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "solid.clash", Severity: diag.Stop, Subject: a.At,
		Summary: "{who} would be in one place",
		Detail:  "Both cannot be where the text puts them: make a size smaller so that one ends before the other begins, or join the two.",
		Figure:  fmt.Sprintf("%.2g %s of wood in common", r.volume(t), r.cubic()), Limit: "none, but for a millionth of the smaller part",
		Source: "geometry of the parts", Related: []diag.Related{{Span: b.At, Message: b.Mark + " " + b.Name}}},
		parts: []*piece.Part{a, b}, matter: b.Mark, worse: int64(t.Overlap)})
}

func (r *run) loose(j *piece.Joint) {
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "solid.loose", Severity: diag.Stop, Subject: j.At,
		Summary: "the " + j.Kind + " " + j.Name + " would not close: its two parts do not touch",
		Detail:  "Between them is air. Check the sizes of the two parts, or take the joint away.",
		Figure:  "no contact", Limit: "faces that touch", Source: "geometry of the joint"},
		parts: []*piece.Part{j.A, j.B}, matter: j.Name})
}

// volume is the wood in common in the commission's unit cubed.
func (r *run) volume(t solid.Meeting) float64 {
	u := r.style.Unit.Length().Millimetres()
	return float64(t.Overlap) / (u * u * u)
}

func (r *run) cubic() string { return "cubic " + r.style.Unit.String() }
