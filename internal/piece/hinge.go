package piece

import (
	"casewright/internal/design"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// hinges let the leaves of butt hinges into the door's stile and into the board
// it hangs on. Each leaf is let in by its thickness less half the gap, so that
// the knuckles close on the gap that was planned.
func (b *builder) hinges(d *doorWork, stiles [2]*Part) {
	h := b.buttHinge(d)
	if h == nil || d.spec.Mount.Value == "overlay" {
		return
	}
	stile, host, gap := stiles[0], d.c.left, d.gapLeft
	if d.hangsRight() {
		stile, host = stiles[1], d.c.right
		if !d.spec.Pair.Value { // of a pair gapRight is the one in the middle
			gap = d.gapRight
		}
	}
	deep := h.Thickness.Length() - gap.Length()/2
	if deep <= 0 {
		return // the leaves lie on the wood and fill the gap
	}
	depth := why.Rule("depth of a leaf", deep, "its thickness less half the gap", "common practice, no source", h.Thickness, gap)
	for i, up := range leaves(d.height.Length(), h.Length.Length(), hingeCount(h)) {
		b.leafIn(stile, d, h, depth, up, i)
		if host != nil {
			b.leafInHost(host, d, h, depth, up, i)
		}
	}
}

// hangsRight reports on which side the door hangs.
func (d *doorWork) hangsRight() bool {
	if d.spec.Pair.Value {
		return d.asm.hand == "right"
	}
	return d.spec.Hinge.Value == "right"
}

// buttHinge is the door's hinge if it is one that is let in, with all its
// sizes.
func (b *builder) buttHinge(d *doorWork) *design.Hardware {
	for _, h := range b.spec.Hardware {
		if h.Name == d.spec.Hinges.Value && h.Kind.Value == "butt hinge" && h.Length.Given() && h.Width.Given() && h.Thickness.Given() {
			return h
		}
	}
	return nil
}

func hingeCount(h *design.Hardware) int {
	if h.Count.Set {
		return max(1, int(h.Count.Value))
	}
	return 2
}

// leaves are the lower ends of n hinges along a door: the outer ones their own
// length from its ends (common practice, no source), the others evenly between.
func leaves(height, long measure.Length, n int) []measure.Length {
	first, last := long, height-2*long
	if n == 1 || last < first {
		return []measure.Length{(height - long) / 2}
	}
	var out []measure.Length
	for i := range n {
		out = append(out, first+(last-first).MulDiv(int64(i), int64(n-1)))
	}
	return out
}

func (b *builder) leafIn(stile *Part, d *doorWork, h *design.Hardware, depth why.Size, up measure.Length, i int) {
	j := b.joint("hinge mortise", h.Name+" "+itoa(i+1)+" in "+stile.Name, stile, nil, h.At)
	j.Depth, j.Tongue = depth, h.Width
	lo, hi := measure.Length(0), depth.Length()
	if d.hangsRight() {
		lo, hi = stile.Width.Length()-depth.Length(), stile.Width.Length()
	}
	j.cut(stile, []joinery.Feature{{Kind: joinery.Mortise, Axis: joinery.T, From: 0, To: h.Width.Length(),
		Outline: rectangle(up, up+h.Length.Length(), lo, hi)}}, nil)
}

// leafInHost lets the other leaf into the side or partition the door hangs on,
// from the front of the door backwards.
func (b *builder) leafInHost(host *Part, d *doorWork, h *design.Hardware, depth why.Size, up measure.Length, i int) {
	x, from := d.o.Corner.X, d.o.BowFrom
	if d.hangsRight() {
		x, from = x+d.o.Width.Length(), from+d.o.Width.Length()
	}
	y := d.o.Corner.Y
	if d.o.Bow != nil {
		y -= d.o.Bow.ordinate(from)
	}
	at := host.Place.Local(Vec{X: x, Y: y, Z: d.at.Z + up})
	j := b.joint("hinge mortise", h.Name+" "+itoa(i+1)+" in "+host.Name, host, nil, h.At)
	j.Depth, j.Tongue = depth, h.Width
	// Into the board from its face at x: upright boards' thickness runs to the
	// left, so the left board lies at higher T than its face.
	lo, hi := at[joinery.T], at[joinery.T]+depth.Length()
	if d.hangsRight() {
		lo, hi = at[joinery.T]-depth.Length(), at[joinery.T]
	}
	j.cut(host, []joinery.Feature{{Kind: joinery.Mortise, Axis: joinery.T, From: lo, To: hi,
		Outline: rectangle(at[joinery.L], at[joinery.L]+h.Length.Length(), at[joinery.W]-beyond, at[joinery.W]+h.Width.Length())}}, nil)
}
