package check

import (
	"fmt"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/wood"
)

// mostStrain is how far two glued parts may come to differ over the width that
// is glued. Common practice, no source; it lets pass what makers do without
// harm: 4 in of a flat-sawn web frame glued to a solid side (Building
// Furniture, Fine Woodworking, 2007, p. 64: only the front 3 to 4 in), which
// in red oak over five points of moisture is 4 × 0.00369 × 5 = 0.074 in at the
// worst and in most woods under 1/16.
const mostStrain = measure.Inch / 16

// splits is where it cannot but split: twice that, common practice, no source.
const splits = 2 * mostStrain

// crossGrain looks for parts that are glued all along while one moves and the
// other does not: rails or runners across a solid side, a case whose boards'
// grain does not run round, boards of different cut at one corner.
func (r *run) crossGrain() {
	for _, j := range r.p.Joints {
		if j.Glued != "all" || j.A == nil || j.B == nil {
			continue
		}
		for _, axis := range [...]piece.Dir{acrossCase, frontBack, upright} {
			r.glued(j, axis)
		}
	}
}

// shared is how much of an axis the two parts have in common.
func shared(a, b *piece.Part, axis piece.Dir) measure.Length {
	alo, ahi := extent(a, axis)
	blo, bhi := extent(b, axis)
	return max(min(ahi, bhi)-max(alo, blo), 0)
}

func (r *run) glued(j *piece.Joint, axis piece.Dir) {
	wide := shared(j.A, j.B, axis)
	if wide == 0 || side(j.A, axis) == side(j.B, axis) && j.A.Wood == j.B.Wood {
		return
	}
	strain, m := r.strain(j.A, j.B, wide, axis)
	if strain <= mostStrain {
		return
	}
	d := diag.Diagnostic{Code: "movement.crossgrain", Severity: diag.Warn, Subject: orSpan(j.At, j.A.At),
		Summary: "{who} would move apart by " + r.fmt(strain) + " where they are glued together, and could split",
		Figure:  fmt.Sprintf("%s over %s of glued %s, %s to %s moisture", r.fmt(strain), r.style.FormatUnit(wide), m.Direction, points(m.From), points(m.To)),
		Limit:   r.fmt(mostStrain), Source: source(m) + "; limit: " + practice + "; " + fww + ", p. 64: glue only the front 3 to 4 in of a frame across a solid side"}
	if strain > splits {
		d.Severity = diag.Stop
		d.Summary = "{who} would move apart by " + r.fmt(strain) + " where they are glued together, and must split"
	}
	d.Detail = r.crossWays(j, axis)
	r.add(finding{Diagnostic: d, parts: []*piece.Part{j.A, j.B}, matter: j.Kind + fmt.Sprint(axis), worse: int64(strain)})
}

// crossWays tells the ways out, by what makes the two differ.
func (r *run) crossWays(j *piece.Joint, axis piece.Dir) string {
	a, b := side(j.A, axis), side(j.B, axis)
	if a == b {
		return "The grain runs the same way in both, but their wood or its cut moves differently. Take one wood in one cut for both, or join them dry and let one slide."
	}
	if a == wood.Length || b == wood.Length {
		return "In one of them the grain runs along the joint, in the other across it. Turn the grain of one so that it runs round the piece in both, " +
			"or glue only the front 3 to 4 in and let the rest slide in a dry housing or on slotted screws."
	}
	return "One is glued by its width and the other by its thickness. Turn one of them, or glue a short stretch and let the rest slide."
}

// slotFrom is the movement under which a screw in a plain hole gives enough.
const slotFrom = measure.Inch / 32 // common practice, no source

// slots tells how long the slots must be where a stand or a loose top is
// fixed to a case and the two do not move alike: one finding for the piece.
func (r *run) slots() {
	for _, f := range r.p.Fits {
		if f.Kind == piece.TopDepth {
			r.slotted(f.Part, r.carried(f.Part))
		}
	}
	for _, s := range r.p.Spec.Stands {
		r.slotted(r.crossMember(s.Name), r.caseSide(s.Under.Value))
	}
}

// carried is a side of the case that a top or ledge is fixed to.
func (r *run) carried(p *piece.Part) *piece.Part {
	for _, s := range r.p.Spec.Slabs {
		if s.Name == p.Path {
			return r.caseSide(s.Of.Value)
		}
	}
	return nil
}

func (r *run) caseSide(name string) *piece.Part { return r.p.Part(name + ".side.left") }

// crossMember is the part of a stand that runs from front to back.
func (r *run) crossMember(stand string) *piece.Part {
	if p := r.p.Part(stand + ".end.left"); p != nil {
		return p
	}
	return r.p.Part(stand + ".cross_rail_1")
}

// slotted compares two parts over what they share from front to back. What is
// fixed at the front edge must give at the back by the whole difference.
func (r *run) slotted(on, under *piece.Part) {
	if on == nil || under == nil {
		return
	}
	wide := shared(on, under, frontBack)
	mo := move(on, wide, frontBack, r.p.Air.Dry, r.p.Air.Damp)
	mu := move(under, wide, frontBack, r.p.Air.Dry, r.p.Air.Damp)
	play := (mo.Change - mu.Change).Abs()
	if play <= slotFrom {
		return
	}
	m := mo
	if mu.Change.Abs() > mo.Change.Abs() {
		m = mu
	}
	d := diag.Diagnostic{Code: "movement.slots", Severity: diag.Note, Subject: on.At,
		Summary: "{who} must be able to slide on the case it is fixed to",
		Figure:  r.fmt(play) + " between the driest and the dampest season", Limit: r.fmt(slotFrom) + " for screws in plain holes",
		Source: source(m) + "; limit: " + practice,
		Detail: "Screw it tight at the front edge only and through slots behind, longer towards the back: there at least " + r.fmt(play) +
			" more than the screw is thick. Or hold it with buttons in a groove. Never glue it all along."}
	r.add(finding{Diagnostic: d, whole: on.Assembly, matter: "slots", worse: int64(play)})
}
