package piece

import (
	"cmp"
	"slices"

	"casewright/internal/joinery"
	"casewright/internal/measure"
)

// This file gives bowed parts their shape. Every part along a curve uses the
// same facets: the curve is flattened once, with a corner wherever any part
// along it begins or ends, so that a groove and the board in it, or two fronts
// side by side, agree to the nanometre. What is sawn to the curve is the
// straight part moved forward by the ordinate at each place, as a template
// carried along the case would mark it.

// facets is how far a facet may stand off the true curve.
const facets = measure.Millimetre / 20

// point is a place on a curve: along the chord, and before it.
type point struct{ x, y measure.Length }

// beyond is how far a cut that opens on a face is carried past it.
const beyond = measure.Millimetre

// Base is the part before any joint is cut: a prism, square-edged but for the
// front of a bowed part.
func (p *Part) Base() joinery.Feature {
	if p.base != nil {
		return *p.base
	}
	b := p.Box()
	return joinery.Feature{Axis: joinery.T, To: b.T, Outline: []joinery.Point{{}, {U: b.L}, {U: b.L, V: b.W}, {V: b.W}}}
}

func (b *builder) shapeBows() {
	for _, c := range b.p.Curves {
		c.line = c.flatten(b.stops(c))
	}
	for _, p := range b.p.Parts {
		if p.Bow != nil {
			p.takeShape()
		}
	}
}

// stops are the places on the curve where a facet must end.
func (b *builder) stops(c *Curve) []measure.Length {
	var out []measure.Length
	for _, p := range b.p.Parts {
		if k := p.Bow; k != nil && k.Curve == c {
			out = append(out, k.From, k.To)
			if k.Landing != 0 {
				out = append(out, k.From+k.Landing, k.To-k.Landing)
			}
			out = append(out, p.jointStops()...)
		}
	}
	return out
}

// jointStops are where the joints of a part that bends with the curve begin and
// end along it: two cuts that share an edge must share it to the nanometre.
func (p *Part) jointStops() []measure.Length {
	if p.Bow.Axis != joinery.T {
		return nil
	}
	var out []measure.Length
	for _, f := range p.Features {
		lo, hi := bounds(f.Feature)
		out = append(out, p.Bow.From+lo[p.Bow.X], p.Bow.From+hi[p.Bow.X])
	}
	return out
}

func (c *Curve) flatten(stops []measure.Length) []point {
	for _, q := range c.Shape.Flatten(0, c.Shape.Span().Millimetres(), facets.Millimetres()) {
		stops = append(stops, measure.Length(q.X*float64(measure.Millimetre)))
	}
	slices.Sort(stops)
	stops = slices.Compact(stops)
	out := make([]point, len(stops))
	for i, x := range stops {
		out[i] = point{x, c.ordinate(x)}
	}
	return out
}

// stretch is the curve's facets from one place to another; both must be on it
// or the ends are put between.
func (c *Curve) stretch(from, to measure.Length) []point {
	out := []point{{from, c.between(from)}}
	for _, q := range c.line {
		if q.x > from && q.x < to {
			out = append(out, q)
		}
	}
	return append(out, point{to, c.between(to)})
}

// between is the ordinate on the facet at x; beyond the last facet, the last.
func (c *Curve) between(x measure.Length) measure.Length {
	i, found := slices.BinarySearchFunc(c.line, x, func(q point, x measure.Length) int { return cmp.Compare(q.x, x) })
	switch {
	case found:
		return c.line[i].y
	case i == 0:
		return c.line[0].y
	case i == len(c.line):
		return c.line[i-1].y
	}
	a, z := c.line[i-1], c.line[i]
	return a.y + (z.y-a.y).MulDiv(int64(x-a.x), int64(z.x-a.x))
}

// takeShape gives a bowed part its base and moves its joints to the curve.
func (p *Part) takeShape() {
	if p.Bow.Axis == joinery.W {
		base := p.flatBase()
		p.base = &base
		return
	}
	flat := joinery.Feature{Axis: joinery.T, To: p.Thickness.Length(), Outline: []joinery.Point{{}, {U: p.Length.Length()},
		{U: p.Length.Length(), V: p.Width.Length()}, {V: p.Width.Length()}}}
	base := p.bend(flat, false)
	if p.Bow.Landing != 0 {
		p.land(&base)
	}
	p.base = &base
	for i := range p.Features {
		p.Features[i].Feature = p.shaped(p.Features[i].Feature)
	}
}

// shaped is a feature of the straight part where the bowed part has it. The
// sockets of a drawer's sides lie in the flat landings and only move; all else
// follows the curve.
func (p *Part) shaped(f joinery.Feature) joinery.Feature {
	if f.Kind != joinery.PinWaste {
		return p.bend(f, true)
	}
	by := p.landing(f.From+f.To > p.Length.Length())
	out := f
	out.Outline = slices.Clone(f.Outline)
	for i := range out.Outline { // its plane is (W, T)
		out.Outline[i].V += by
	}
	return out
}

// flatBase is a board lying flat, or a partition, with its front on the curve.
func (p *Part) flatBase() joinery.Feature {
	k, b := p.Bow, straight(p)
	line := k.Curve.stretch(k.From, k.To)
	if k.X == joinery.T { // a partition: its thickness runs to the left
		out := joinery.Feature{Axis: joinery.L, To: b.L, Outline: []joinery.Point{{U: b.W, V: b.T}, {U: b.W}}}
		for _, q := range slices.Backward(line) {
			out.Outline = append(out.Outline, joinery.Point{U: k.Crown - q.y, V: k.To - q.x})
		}
		return turned(out)
	}
	out := joinery.Feature{Axis: joinery.T, To: b.T}
	for _, q := range line {
		out.Outline = append(out.Outline, joinery.Point{U: q.x - k.From, V: k.Crown - q.y})
	}
	out.Outline = append(out.Outline, joinery.Point{U: b.L, V: b.W}, joinery.Point{V: b.W})
	return turned(out)
}

// bend turns a square-edged stretch of the straight part into the same stretch
// of the bowed one: a prism upright in the piece. With open, what reaches a
// face is carried past it.
func (p *Part) bend(f joinery.Feature, open bool) joinery.Feature {
	lo, hi := bounds(f)
	x, up := joinery.L, joinery.W
	if p.Bow.X == joinery.W {
		x, up = joinery.W, joinery.L
	}
	thick, deep := p.Thickness.Length(), p.Thickness.Length()+p.Bow.Fall
	out := joinery.Feature{Kind: f.Kind, Axis: up, From: lo[up], To: hi[up]}
	line := p.Bow.Curve.stretch(p.Bow.From+lo[x], p.Bow.From+hi[x])
	side := func(t measure.Length, line []point) {
		for _, q := range line {
			at := t + p.shift(q.y)
			switch {
			case open && t <= 0:
				at = -beyond
			case open && t >= thick:
				at = deep + beyond
			}
			out.Outline = append(out.Outline, p.plane(q.x-p.Bow.From, at))
		}
	}
	side(lo[joinery.T], line)
	slices.Reverse(line)
	side(hi[joinery.T], line)
	return turned(straightened(out))
}

// shift is how far the bow moves the straight part along its own thickness,
// where the curve stands y before its chord.
func (p *Part) shift(y measure.Length) measure.Length {
	if p.Place.T == Front {
		return y - (p.Bow.Crown - p.Bow.Fall)
	}
	return p.Bow.Crown - y
}

// plane is a point of the piece's plan in the plane a bent prism is drawn in.
func (p *Part) plane(x, t measure.Length) joinery.Point {
	if p.Bow.X == joinery.W { // upright along L: its plane is (W, T)
		return joinery.Point{U: x, V: t}
	}
	return joinery.Point{U: t, V: x} // upright along W: its plane is (T, L)
}

// landing is where the flat at one end lies along the part's thickness.
func (p *Part) landing(far bool) measure.Length {
	from, to := p.Bow.From, p.Bow.From+p.Bow.Landing
	if far {
		from, to = p.Bow.To-p.Bow.Landing, p.Bow.To
	}
	return p.shift(p.Bow.Curve.least(from, to))
}

// land leaves the inside of a drawer front flat where its sides meet it. The
// inside is the stretch of the outline on the low side of the thickness.
func (p *Part) land(base *joinery.Feature) {
	k := p.Bow
	inside := []joinery.Point{p.plane(0, p.landing(false)), p.plane(k.Landing, p.landing(false))}
	for _, q := range k.Curve.stretch(k.From+k.Landing, k.To-k.Landing) {
		inside = append(inside, p.plane(q.x-k.From, p.shift(q.y)))
	}
	long := k.To - k.From
	inside = append(inside, p.plane(long-k.Landing, p.landing(true)), p.plane(long, p.landing(true)))
	for _, q := range slices.Backward(k.Curve.stretch(k.From, k.To)) {
		inside = append(inside, p.plane(q.x-k.From, p.Thickness.Length()+p.shift(q.y)))
	}
	base.Outline = inside
	*base = turned(straightened(*base))
}

// bounds is the stretch of a square-edged prism along each axis.
func bounds(f joinery.Feature) (lo, hi [3]measure.Length) {
	u, v := (f.Axis+1)%3, (f.Axis+2)%3
	lo[f.Axis], hi[f.Axis] = f.From, f.To
	lo[u], hi[u], lo[v], hi[v] = f.Outline[0].U, f.Outline[0].U, f.Outline[0].V, f.Outline[0].V
	for _, q := range f.Outline {
		lo[u], hi[u] = min(lo[u], q.U), max(hi[u], q.U)
		lo[v], hi[v] = min(lo[v], q.V), max(hi[v], q.V)
	}
	return lo, hi
}

// straightened drops corners that repeat or lie on a straight line along an
// axis, such as facets of a side that was carried past its face.
func straightened(f joinery.Feature) joinery.Feature {
	outline := slices.Compact(slices.Clone(f.Outline))
	if n := len(outline); n > 1 && outline[0] == outline[n-1] {
		outline = outline[:n-1]
	}
	n := len(outline)
	f.Outline = f.Outline[:0:0]
	for i, q := range outline {
		before, after := outline[(i+n-1)%n], outline[(i+1)%n]
		if (q.U == before.U && q.U == after.U) || (q.V == before.V && q.V == after.V) {
			continue
		}
		f.Outline = append(f.Outline, q)
	}
	return f
}

// turned is the feature with its outline counter-clockwise.
func turned(f joinery.Feature) joinery.Feature {
	if area(f.Outline) < 0 {
		slices.Reverse(f.Outline)
	}
	return f
}

// area is twice the signed area of an outline, for its sign.
func area(outline []joinery.Point) float64 {
	sum := 0.0
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		sum += a.U.Millimetres()*b.V.Millimetres() - b.U.Millimetres()*a.V.Millimetres()
	}
	return sum
}
