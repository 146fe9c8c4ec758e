package check

import (
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

const (
	leastStuds = 2 // trade articles: into every stud behind the case, at least two
	// studEdge is how far a screw stays from the end of the wall cleat.
	studEdge   = measure.Inch // common practice, no source
	studSource = "trade articles on hanging cleats: screws into every stud behind the case, at least two"
	ownCode    = "What a wall carries is for local building practice: this counts studs and proves no strength."
)

// hanging looks for hung cases that cannot be screwed to two studs.
func (r *run) hanging() {
	for _, c := range r.p.Spec.Cases {
		if c.Hung.Value {
			r.hung(c)
		}
	}
}

func (r *run) hung(c *design.Case) {
	side := r.caseSide(c.Name)
	s := &r.p.Spec.Site
	switch {
	case side == nil || masonry(s.Wall.Value):
	case len(s.Studs) == 0:
		r.add(finding{Diagnostic: diag.Diagnostic{Code: "hang.studs", Severity: diag.Note, Subject: orSpan(c.Hung.At, c.At),
			Summary: "{who} is to hang, and no studs are known to hang it on",
			Figure:  "no studs in the text", Limit: "at least two behind the case", Source: studSource,
			Detail: "Find the studs and write their middles in site (studs). On brick, block or stone say so in wall. " + ownCode},
			whole: side.Assembly, matter: c.Name})
	default:
		r.onStuds(c, side)
	}
}

// masonry reports walls that have no studs to find.
func masonry(wall string) bool {
	for _, word := range [...]string{"brick", "block", "stone", "concrete", "masonry"} {
		if strings.Contains(strings.ToLower(wall), word) {
			return true
		}
	}
	return false
}

// cleatLength is how long the part on the wall is; the case where there is none.
func (r *run) cleatLength(c *design.Case) measure.Length {
	if p := r.p.Part(c.Name + ".cleat.wall"); p != nil {
		return p.Length.Length()
	}
	return c.Width.Length()
}

// onStuds counts the studs that can be had behind the case, wherever on the
// free wall it hangs.
func (r *run) onStuds(c *design.Case, side *piece.Part) {
	s := &r.p.Spec.Site
	reach := r.cleatLength(c) - 2*studEdge
	n, room := mostStuds(s, c.Width.Length(), reach)
	if n >= leastStuds {
		return
	}
	d := diag.Diagnostic{Code: "hang.studs", Severity: diag.Warn, Subject: orSpan(s.Studs[0].At(), s.At, c.At),
		Summary: "{who} would hang from " + hangs(n) + " wherever it goes on the free wall",
		Figure:  hangs(n) + " within " + r.style.FormatUnit(reach) + " of cleat", Limit: "at least two", Source: studSource,
		Detail: "Screw a board across two studs first and hang the case from that, or let the wall cleat run on to the next stud where it does not show. " + ownCode}
	if !room {
		d.Figure += "; the free wall is narrower than the case"
	}
	r.add(finding{Diagnostic: d, whole: side.Assembly, matter: c.Name})
}

// mostStuds is the greatest number of studs within reach of one place of a case
// on the free wall, and whether it has a place there at all. Only places where
// some stud is just reached at one end need be tried, and the wall's two ends.
func mostStuds(s *design.Site, wide, reach measure.Length) (n int, room bool) {
	if reach < 0 {
		return 0, true
	}
	lo, hi, bound := -measure.Metre*1000, measure.Metre*1000, len(s.FreeWall) == 2
	if bound {
		lo, hi = min(s.FreeWall[0].Length(), s.FreeWall[1].Length()), max(s.FreeWall[0].Length(), s.FreeWall[1].Length())-wide
	}
	if lo > hi {
		return 0, false
	}
	edge := (wide - reach) / 2
	for _, stud := range s.Studs {
		for _, x := range [...]measure.Length{stud.Length() - edge, stud.Length() - edge - reach, lo, hi} {
			x = min(max(x, lo), hi)
			n = max(n, count(s, x+edge, x+edge+reach))
		}
	}
	return n, true
}

func count(s *design.Site, from, to measure.Length) int {
	n := 0
	for _, stud := range s.Studs {
		if l := stud.Length(); l >= from && l <= to {
			n++
		}
	}
	return n
}
