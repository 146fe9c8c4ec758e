package csg

import "casewright/internal/measure"

// Placement carries a body's own frame into another one: by quarter turns,
// then a move. What lies along own axis k comes to lie along axis To[k], the
// other way round if Flip[k]; Move is along the new axes. The zero value leaves
// everything in place.
type Placement struct {
	To   [3]Axis // where own X, Y, Z go; all three X stands for X, Y, Z
	Flip [3]bool
	Move [3]measure.Length
}

// Placed is a body somewhere else.
type Placed struct {
	Body Body
	At   Placement
}

// axes is To with its zero value read.
func (p Placement) axes() [3]Axis {
	if p.To == [3]Axis{} {
		return [3]Axis{X, Y, Z}
	}
	return p.To
}

// valid tells whether To names each axis once and Move stays within reach.
func (p Placement) valid() bool {
	var seen [3]bool
	for k, a := range p.axes() {
		if a > Z || seen[a] || p.Move[k] > Largest || p.Move[k] < -Largest {
			return false
		}
		seen[a] = true
	}
	return true
}

// Mirrors tells whether the placement makes a mirror image.
func (p Placement) Mirrors() bool {
	a := p.axes()
	odd := (a[0]+1)%3 != a[1]
	for _, f := range p.Flip {
		odd = odd != f
	}
	return odd
}

// Apply is the prism where the placement puts it. Corners keep their numbers;
// a flip along the prism's axis swaps From and To.
func (p Placement) Apply(c Prism) Prism {
	axes := p.axes()
	u, v := (c.Axis+1)%3, (c.Axis+2)%3
	out := Prism{Axis: axes[c.Axis], Tag: c.Tag}
	out.From, out.To = p.coordinate(c.Axis, c.From), p.coordinate(c.Axis, c.To)
	if p.Flip[c.Axis] {
		out.From, out.To = out.To, out.From
	}
	swap := axes[u] != (out.Axis+1)%3
	ring := func(r []Point2) []Point2 {
		q := make([]Point2, len(r))
		for i, c := range r {
			q[i] = Point2{p.coordinate(u, c.U), p.coordinate(v, c.V)}
			if swap {
				q[i].U, q[i].V = q[i].V, q[i].U
			}
		}
		return q
	}
	out.Outline = ring(c.Outline)
	for _, h := range c.Holes {
		out.Holes = append(out.Holes, ring(h))
	}
	return out
}

// coordinate is where a place on own axis k comes to lie on its new axis.
func (p Placement) coordinate(k Axis, at measure.Length) measure.Length {
	if p.Flip[k] {
		at = -at
	}
	return at + p.Move[p.axes()[k]]
}

// Point is where the placement puts a point of the own frame.
func (p Placement) Point(at [3]measure.Length) (out [3]measure.Length) {
	for k, a := range p.axes() {
		out[a] = p.coordinate(Axis(k), at[k])
	}
	return out
}

// Millimetres is Point for float64 millimetres.
func (p Placement) Millimetres(at [3]float64) (out [3]float64) {
	for k, a := range p.axes() {
		if out[a] = at[k]; p.Flip[k] {
			out[a] = -at[k]
		}
		out[a] += p.Move[a].Millimetres()
	}
	return out
}

// Apply is the body with every prism placed. The placement must name each axis
// once, and every prism's axis be one; [FitOf] and [Common] check, this does not.
func (p Placed) Apply() Body {
	b := Body{Base: p.At.Apply(p.Body.Base), Cuts: make([]Prism, len(p.Body.Cuts))}
	for i, c := range p.Body.Cuts {
		b.Cuts[i] = p.At.Apply(c)
	}
	return b
}
