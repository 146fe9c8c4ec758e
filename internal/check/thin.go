package check

import (
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

// How much of a board a cut may take.
const (
	// A housing is a quarter to a third of its board and never over half:
	// trade forum answers. A groove for a drawer bottom is half or less: common
	// practice, no source.
	housingSource = "trade forum answers: a quarter to a third of the board, never over half"
	grooveSource  = "common practice, no source: half the board or less"
	// A rabbet may take half to two thirds.
	rabbetSource = fww + ", p. 79: half to two thirds"
	// Two housings back to back in 3/4 are cut 3/16 each: half between them.
	oppositeSource = "trade forum answers: back to back, 3/16 each in 3/4"

	leastRest  = measure.Inch / 16 // common practice, no source: under this the cut breaks through
	leastWall  = measure.Inch / 8  // common practice, no source: beside a panel's groove
	leastBelow = measure.Inch / 4  // common practice, no source: 3/8 to 1/2 is usual
)

// cut is a slot in a part: which way it goes in, how deep, and where it lies.
type cut struct {
	piece.Feature
	box    [3][2]measure.Length // by axis L, W, T
	into   joinery.Axis
	low    bool // opens on the low face
	deep   measure.Length
	across measure.Length // the part's size the way it goes in
}

// thinStock looks for housings, grooves and rabbets that leave too little.
func (r *run) thinStock() {
	bent := r.bentCuts()
	for _, p := range r.p.Parts {
		cuts := bent[p]
		if !bowed(p) {
			cuts = slotsOf(p)
		}
		for i, c := range cuts {
			r.deep(p, c)
			r.beside(p, c)
			for _, o := range cuts[i+1:] {
				r.opposite(p, c, o)
			}
		}
	}
}

// slotsOf is the housings, grooves and rabbets of a part.
func slotsOf(p *piece.Part) []cut {
	var out []cut
	size := [3]measure.Length{p.Length.Length(), p.Width.Length(), p.Thickness.Length()}
	for _, f := range p.Features {
		switch f.Kind {
		case joinery.Dado, joinery.Groove, joinery.Rabbet:
			if c, ok := slotOf(f, size); ok {
				out = append(out, c)
			}
		}
	}
	return out
}

// bowed reports a part whose face is curved: in its box its cuts do not show
// how deep they are in the wood.
func bowed(p *piece.Part) bool { return p.Bow != nil && p.Bow.Axis == joinery.T }

// bentCuts is the grooves of bowed parts as they are in the wood straightened
// out: for a drawer's bottom into the thickness, for a panel into the edge,
// in the middle of the thickness.
func (r *run) bentCuts() map[*piece.Part][]cut {
	out := map[*piece.Part][]cut{}
	for _, j := range r.p.Joints {
		if j.Kind != string(joinery.Groove) || j.A == nil || !bowed(j.A) {
			continue
		}
		p := j.A
		c := cut{Feature: piece.Feature{Feature: joinery.Feature{Kind: joinery.Groove}, Joint: j}, into: joinery.T, across: p.Thickness.Length(), deep: j.Depth.Length()}
		if j.B == nil {
			wall := (p.Thickness.Length() - j.Tongue.Length()) / 2
			c.into, c.across = joinery.W, p.Width.Length()
			c.box[joinery.T] = [2]measure.Length{wall, p.Thickness.Length() - wall}
		} else {
			c.box[joinery.W] = [2]measure.Length{leastBelow, leastBelow} // its sides tell how far up it is
		}
		out[p] = append(out[p], c)
	}
	return out
}

// slotOf finds the face a cut opens on. A rabbet opens on two: its depth is
// taken through the thickness.
func slotOf(f piece.Feature, size [3]measure.Length) (cut, bool) {
	c := cut{Feature: f, box: bounds(f.Feature)}
	for a := joinery.L; a <= joinery.T; a++ {
		c.box[a][0], c.box[a][1] = max(c.box[a][0], 0), min(c.box[a][1], size[a])
	}
	for _, a := range [...]joinery.Axis{joinery.T, joinery.W} {
		low, high := c.box[a][0] == 0, c.box[a][1] == size[a]
		if a == f.Axis || low == high {
			continue
		}
		c.into, c.low, c.across, c.deep = a, low, size[a], c.box[a][1]-c.box[a][0]
		return c, true
	}
	return c, false
}

// bounds is the feature's box in the part's own frame. The outline lies in the
// two axes that follow its own in cyclic order.
func bounds(f joinery.Feature) (b [3][2]measure.Length) {
	b[f.Axis] = [2]measure.Length{f.From, f.To}
	u, v := (f.Axis+1)%3, (f.Axis+2)%3
	for i, p := range f.Outline {
		if i == 0 {
			b[u], b[v] = [2]measure.Length{p.U, p.U}, [2]measure.Length{p.V, p.V}
		}
		b[u] = [2]measure.Length{min(b[u][0], p.U), max(b[u][1], p.U)}
		b[v] = [2]measure.Length{min(b[v][0], p.V), max(b[v][1], p.V)}
	}
	return b
}

// allowed is the most a cut may take, and who says so.
func (c cut) allowed() (measure.Length, string) {
	switch c.Kind {
	case joinery.Rabbet:
		return 2 * c.across / 3, rabbetSource
	case joinery.Groove:
		return c.across / 2, grooveSource
	}
	return c.across / 2, housingSource
}

func (r *run) deep(p *piece.Part, c cut) {
	most, by := c.allowed()
	if c.deep <= most {
		return
	}
	rest := c.across - c.deep
	d := diag.Diagnostic{Code: "stock.thin", Severity: diag.Warn, Subject: r.cutAt(p, c),
		Summary: "{who}: the " + string(c.Kind) + " would leave little of the board",
		Figure:  string(c.Kind) + " " + r.fmt(c.deep) + " deep in " + r.fmt(c.across) + ", leaves " + r.fmt(rest),
		Limit:   "at most " + r.fmt(most), Source: by,
		Detail: "Cut it " + r.fmt(c.deep-most) + " less deep, or take stock at least " + r.fmt(thicker(c)) + " thick."}
	if rest < leastRest {
		d.Severity, d.Summary = diag.Stop, "{who}: the "+string(c.Kind)+" would all but go through the board"
		d.Source += "; least rest: " + practice
	}
	if c.Joint != nil {
		d.Edits = r.mend(c.Joint.Depth, r.down(most), "depth of")
	}
	r.add(finding{Diagnostic: d, parts: []*piece.Part{p}, matter: string(c.Kind), worse: int64(c.deep - most)})
}

// thicker is the stock in which the cut would be as deep as it may be.
func thicker(c cut) measure.Length {
	if c.Kind == joinery.Rabbet {
		return (3*c.deep + 1) / 2
	}
	return 2 * c.deep
}

// down is the length rounded down to the gap graduation.
func (r *run) down(l measure.Length) measure.Length {
	if g := measure.Length(r.p.Spec.Commission.Gaps); g > 0 {
		return l - l%g
	}
	return l
}

func (r *run) cutAt(p *piece.Part, c cut) diag.Span {
	if c.Joint == nil {
		return p.At
	}
	return typedAt(c.Joint.Depth, orSpan(c.Joint.At, p.At))
}

// opposite looks at two cuts that go in from both faces at the same place.
func (r *run) opposite(p *piece.Part, c, o cut) {
	if c.into != o.into || c.low == o.low || c.Kind == joinery.Rabbet || o.Kind == joinery.Rabbet || !c.meets(o) {
		return
	}
	both, most := c.deep+o.deep, c.across/2
	if both <= most {
		return
	}
	d := diag.Diagnostic{Code: "stock.thin", Severity: diag.Warn, Subject: r.cutAt(p, o),
		Summary: "{who}: two housings lie back to back and would leave little between them",
		Figure:  r.fmt(c.deep) + " and " + r.fmt(o.deep) + " deep in " + r.fmt(c.across) + ", leaves " + r.fmt(c.across-both),
		Limit:   "at most " + r.fmt(most/2) + " each", Source: oppositeSource,
		Detail: "Make each " + r.fmt(most/2) + " deep (housed), take stock of " + r.fmt(2*both) + ", or move one so that they miss each other."}
	if c.across-both < leastRest {
		d.Severity, d.Summary = diag.Stop, "{who}: two housings back to back would meet or all but meet"
		d.Source += "; least rest: " + practice
	}
	r.add(finding{Diagnostic: d, parts: []*piece.Part{p}, matter: "back to back", worse: int64(both - most)})
}

// meets reports whether the two cuts lie over each other, seen the way they go in.
func (c cut) meets(o cut) bool {
	for a := joinery.L; a <= joinery.T; a++ {
		if a != c.into && (c.box[a][1] <= o.box[a][0] || o.box[a][1] <= c.box[a][0]) {
			return false
		}
	}
	return true
}

// beside looks at the wood next to a groove: the walls of a panel's groove in
// a frame, and what is left of a drawer side below its bottom.
func (r *run) beside(p *piece.Part, c cut) {
	switch {
	case c.Kind != joinery.Groove:
	case c.into == joinery.W:
		wall := min(c.box[joinery.T][0], p.Thickness.Length()-c.box[joinery.T][1])
		if wall < leastWall {
			r.thinBeside(p, c, wall, leastWall, "the wall beside the panel's groove would be thin", "a thinner panel edge, or a thicker frame")
		}
	case c.into == joinery.T && p.Assembly.Kind == piece.DrawerAssembly && p.Place.W == piece.Up:
		if below := c.box[joinery.W][0]; below < leastBelow {
			r.thinBeside(p, c, below, leastBelow, "little wood would be left below the groove for the bottom, and it could break out under load",
				"the groove further up (groove), or slips glued inside the sides to carry the bottom")
		}
	}
}

func (r *run) thinBeside(p *piece.Part, c cut, found, least measure.Length, what, ways string) {
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "stock.thin", Severity: diag.Warn, Subject: r.cutAt(p, c),
		Summary: "{who}: " + what, Figure: r.fmt(found), Limit: "at least " + r.fmt(least), Source: practice,
		Detail: "It is " + r.fmt(least-found) + " short. Two ways out: " + ways + "."},
		parts: []*piece.Part{p}, matter: what, worse: int64(least - found)})
}
