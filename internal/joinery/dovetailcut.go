package joinery

import "casewright/internal/measure"

// Corner says where one board meets a dovetailed corner.
//
// The row starts at width At of the board (its front edge as laid out) and
// runs towards the board's back edge, or towards its front edge if Turned.
// Inside is the face that looks into the case.
type Corner struct {
	Box    Box
	End    End
	At     measure.Length
	Turned bool
	Inside Side
}

// across turns a stretch of the corner into the board's own width.
func (c Corner) across(from, to measure.Length) span {
	if c.Turned {
		return span{c.At - to, c.At - from}
	}
	return span{c.At + from, c.At + to}
}

func (c Corner) width(at measure.Length) measure.Length { return c.across(at, at).from }

// along is the place on the board's length that lies depth inwards of the end.
func (c Corner) along(depth measure.Length) measure.Length {
	return c.Box.inward(c.End.Face(), depth, depth).from
}

// misfit tells why the layout does not fit the board; thickness and depth are
// what the layout takes the board to be and how far it cuts in.
func (c Corner) misfit(width, thickness, depth measure.Length) []Problem {
	if !c.Box.solid() {
		return noPart("dovetail", c.Box)
	}
	var out []Problem
	if c.At < -largest || c.At > largest || !c.across(0, width).within(span{0, c.Box.W}) {
		out = append(out, stop("dovetail.too-wide", "the row of dovetails is wider than the board",
			"check the widths of the two boards", length("width of the corner", width, c.Box.W, geometry)))
	}
	if c.Box.T != thickness {
		out = append(out, stop("dovetail.stock", "the dovetails were laid out for stock of another thickness",
			"lay them out again for this board", length("thickness", c.Box.T, thickness, geometry)))
	}
	if depth >= c.Box.L {
		out = append(out, stop("dovetail.short", "the board is shorter than its joint is deep",
			"make the board longer", length("depth of the joint", depth, c.Box.L, geometry)))
	}
	return out
}

// TailFeatures is the waste between the tails, for the board that has them:
// trapezoids as seen on its face, cut through its thickness. Where a rabbet
// runs out of the pin board, the tail board keeps as much wood as fills the
// end of that rabbet, so that no hole is left in the corner.
func (l *DovetailLayout) TailFeatures(c Corner) ([]Feature, []Problem) {
	if len(l.Tails) == 0 {
		return nil, nil
	}
	if p := c.misfit(l.Width, l.TailStock, l.TailLength); len(p) > 0 {
		return nil, p
	}
	var out []Feature
	through := span{0, c.Box.T}
	cut := func(w Wedge, depth measure.Length) {
		tip, base := c.along(0), c.along(depth)
		out = append(out, prism(TailWaste, T, through,
			Point{tip, c.width(w.TipFrom)}, Point{tip, c.width(w.TipTo)},
			Point{base, c.width(w.BaseTo)}, Point{base, c.width(w.BaseFrom)}))
	}
	for i, p := range l.Pins {
		from, to := span{0, 0}, span{l.Width, l.Width}
		if i == 0 {
			from = l.frontSteps(min(p.TipTo, p.BaseTo), cut)
		}
		if i == len(l.Pins)-1 {
			to = l.backSteps(max(p.TipFrom, p.BaseFrom), cut)
		}
		cut(Wedge{max(p.TipFrom, from.to), min(p.TipTo, to.from), max(p.BaseFrom, from.to), min(p.BaseTo, to.from)}, l.TailLength)
	}
	return out, nil
}

// frontSteps cuts the shallower waste beside a rabbet at the front edge and
// returns the stretch it has dealt with; limit is where the end pin ends.
func (l *DovetailLayout) frontSteps(limit measure.Length, cut func(Wedge, measure.Length)) span {
	done := span{0, 0}
	for _, r := range l.Runs {
		if r.From <= 0 && r.PinDepth > 0 && r.To <= limit && done.to == 0 {
			cut(Wedge{0, r.To, 0, r.To}, l.TailLength-r.PinDepth)
			done.to = r.To
		}
	}
	return done
}

// backSteps does the same at the back edge.
func (l *DovetailLayout) backSteps(limit measure.Length, cut func(Wedge, measure.Length)) span {
	done := span{l.Width, l.Width}
	for _, r := range l.Runs {
		if r.From > 0 && r.To >= l.Width && r.PinDepth > 0 && r.From >= limit && done.from == l.Width {
			cut(Wedge{r.From, l.Width, r.From, l.Width}, l.TailLength-r.PinDepth)
			done.from = r.From
		}
	}
	return done
}

// PinFeatures is the waste between the pins, for the board that has them: the
// sockets the tails fill, trapezoids as seen on its end, cut along its length
// by the thickness of the tail board. A half-blind joint leaves the lap on the
// outside.
func (l *DovetailLayout) PinFeatures(c Corner) ([]Feature, []Problem) {
	if len(l.Tails) == 0 {
		return nil, nil
	}
	if p := c.misfit(l.Width, l.PinStock, l.SocketDepth); len(p) > 0 {
		return nil, p
	}
	out := make([]Feature, 0, len(l.Tails))
	inside := c.Inside.Face()
	base, tip := c.Box.inward(inside, 0, 0).from, c.Box.inward(inside, l.TailLength, l.TailLength).from
	deep := c.Box.inward(c.End.Face(), 0, l.SocketDepth)
	for _, t := range l.Tails {
		out = append(out, prism(PinWaste, L, deep,
			Point{c.width(t.TipFrom), tip}, Point{c.width(t.TipTo), tip},
			Point{c.width(t.BaseTo), base}, Point{c.width(t.BaseFrom), base}))
	}
	return out, nil
}
