package piece

import (
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// Allowances from finished size to blank. Joyce allows 1/2 in length and 3/16
// in width and takes thickness as it is; shop texts 1/4 in width.
const (
	blankLength    = measure.Inch          // shop practice; Joyce: 1/2
	blankWidth     = measure.Inch / 4      // shop texts; Joyce: 3/16
	blankThickness = 3 * measure.Inch / 32 // two faces cleaned up by the planer after resting: common practice, no source
)

// blanks works out the blank of every part and joins parts too short to
// machine alone into one longer blank.
func (b *builder) blanks() {
	over := [3]why.Size{
		b.usual("allowance in length", blankLength, joyce+": 1/2; shop practice: 1"),
		b.usual("allowance in width", blankWidth, joyce+": 3/16; shop texts: 1/4"),
		b.usual("allowance in thickness", blankThickness, practice),
	}
	short := map[blankKey][]*Part{}
	var order []blankKey
	for _, p := range b.p.Parts {
		b.blank(p, over)
		if p.Blank.Length.Length() >= b.spec.Shop.ShortestPart.Length() {
			continue
		}
		k := blankKey{p.Wood, p.Width.Length(), p.Thickness.Length()}
		if len(short[k]) == 0 {
			order = append(order, k)
		}
		short[k] = append(short[k], p)
	}
	for _, k := range order {
		for _, parts := range b.blankfuls(short[k], over[0]) {
			b.joinShort(parts, over[0])
		}
	}
}

// longestBlank is how long a blank of joined parts may get before it is no
// longer handy at the machines: common practice, no source.
const longestBlank = 48 * measure.Inch

// blankfuls shares short parts out among blanks of a handy length, in order.
func (b *builder) blankfuls(parts []*Part, over why.Size) [][]*Part {
	var out [][]*Part
	long := measure.Length(0)
	for _, p := range parts {
		need := p.Length.Length() + b.spec.Shop.SawKerf.Length()
		if len(out) == 0 || long+need > longestBlank {
			out, long = append(out, nil), over.Length()
		}
		out[len(out)-1] = append(out[len(out)-1], p)
		long += need
	}
	return out
}

// blankKey gathers short parts that can share one blank: same wood, width and
// thickness, whatever they are part of.
type blankKey struct {
	wood             *Wood
	width, thickness measure.Length
}

func (b *builder) blank(p *Part, over [3]why.Size) {
	p.Blank.Length = why.Sum("blank length", why.Plus(p.Length), why.Plus(over[0]))
	p.Blank.Width = why.Sum("blank width", why.Plus(p.Width), why.Plus(over[1]))
	thick := []why.Term{why.Plus(p.Thickness), why.Plus(over[2])}
	if p.Bow != nil && p.Bow.Axis == joinery.T && p.Bow.Chordal > 0 {
		thick = append(thick, why.Plus(why.Rule("bulge against its own chord", p.Bow.Chordal,
			"how far the curve stands off the straight line between this part's ends, if it is sawn from the solid", "", p.Bow.Curve.Spec.Chord, p.Bow.Curve.Spec.Rise)))
	}
	p.Blank.Thickness = why.Sum("blank thickness", thick...)
}

// joinShort makes one blank of several short parts with a saw kerf between
// them; a single short part is cut from a blank of the safe length.
func (b *builder) joinShort(parts []*Part, over why.Size) {
	kerf := b.spec.Shop.SawKerf
	least := b.spec.Shop.ShortestPart
	terms := []why.Term{why.Plus(over)}
	for _, p := range parts {
		terms = append(terms, why.Plus(p.Length))
	}
	terms = append(terms, why.Times(int64(len(parts)-1), kerf))
	length := why.Sum("blank length", terms...)
	if length.Length() < least.Length() {
		length = why.Rule("blank length", least.Length(), "the shortest length that is safe at the machines; cut to size last", "the shop's own setting", least)
	}
	for _, p := range parts {
		p.Blank.Length = length
		p.Blank.Joined = parts
	}
}
