package piece

import (
	"casewright/internal/design"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// What a back and a cleat are made of when the text is silent.
const (
	backStock    = 3 * measure.Inch / 8 // common practice, no source
	backBoard    = 5 * measure.Inch     // widest back board aimed at: common practice, no source
	backEnds     = measure.Inch / 16    // shorter than the rabbets, in all: common practice, no source
	backLap      = 3 * measure.Inch / 8 // common practice, no source
	cleatHeight  = 5 * measure.Inch / 2 // AWS 4.4.18: anchor strip at least 1/2 × 2-1/2
	cleatShorter = measure.Inch         // wall half, to slide and hide: common practice, no source
)

// backSizes settles how deep the back sits and how far it is let in.
func (b *builder) backSizes(w *caseWork) {
	k := w.spec.Back
	w.rabbet = k.Rabbet.Or(why.Rule("back rabbet", b.snap(w.side.Length()/2), "half the side, to the nearest "+b.stepWord(), practice, w.side)).Named("back rabbet")
	terms := []why.Term{why.Plus(b.backThickness(k))}
	if w.spec.Hung.Value {
		terms = append(terms, why.Plus(b.cleatStock(w)))
	}
	w.inset = k.Inset.Or(why.Sum("inset of the back", terms...)).Named("inset of the back")
}

// cleatStock is the thickness of the hanging cleat: as given, else what the
// inset leaves behind the back, else 3/4 stock.
func (b *builder) cleatStock(w *caseWork) why.Size {
	if w.spec.Cleat != nil && w.spec.Cleat.Thickness.Given() {
		return w.spec.Cleat.Thickness
	}
	if k := w.spec.Back; k != nil && k.Inset.Given() {
		return less("cleat stock", k.Inset, b.backThickness(k))
	}
	return b.usual("cleat stock", usualStock, "common practice, no source: 3/4 stock")
}

func (b *builder) backThickness(k *design.Back) why.Size {
	return k.Thickness.Or(b.usual("back stock", backStock, practice)).Named("back thickness")
}

// backSpan is the width and height a back must cover, rabbets included. Behind
// top rails it runs on to the top.
func (w *caseWork) backSpan() (width, height why.Size) {
	width = why.Sum("between the back rabbets", why.Plus(w.insideW), why.Times(2, w.rabbet))
	if !w.hasTop() {
		return width, why.Sum("height of the back", why.Plus(w.insideH), why.Plus(w.rabbet), why.Plus(w.top))
	}
	return width, why.Sum("height of the back", why.Plus(w.insideH), why.Times(2, w.rabbet))
}

// buildBack closes the case behind with shiplapped boards or one panel, upright
// grain, loose so that it can move.
func (b *builder) buildBack(w *caseWork) {
	k := w.spec.Back
	if k == nil || k.Style.Value == "none" {
		return
	}
	b.backRabbets(w)
	width, height := w.backSpan()
	ends := b.usual("ends clear of the rabbets", backEnds, practice)
	length := why.Sum("length of the back", why.Plus(height), why.Minus(ends))
	at := w.at.Add(Vec{X: w.side.Length() - w.rabbet.Length(), Y: w.insideDepth.Length(),
		Z: w.bottom.Length() - w.rabbet.Length() + ends.Length()/2})
	thick := b.backThickness(k)
	wd := b.wood(k.Wood, w.spec.Wood)
	if k.Style.Value == "panel" {
		b.panelBack(w, wd, width, length, thick, at)
		return
	}
	b.shiplapBack(w, wd, width, length, thick, at)
}

func (b *builder) backRabbets(w *caseWork) {
	boards := []*Part{w.left, w.right, w.floor}
	inside := []joinery.Face{joinery.LowSide, joinery.HighSide, joinery.HighSide}
	if w.hasTop() {
		boards, inside = append(boards, w.ceiling), append(inside, joinery.LowSide)
	}
	for i, p := range boards {
		j := b.joint("rabbet", "back in "+p.Name, p, nil, w.spec.Back.At)
		j.Depth, j.Tongue = w.rabbet, w.inset
		f, problems := joinery.RabbetSpec{Face: inside[i], Beside: joinery.BackEdge, Width: w.inset.Length(), Depth: w.rabbet.Length()}.Features(p.Box())
		j.cut(p, f, problems)
	}
}

// shiplapBack covers the width with loose boards that lap, each with a gap for
// the damp season.
func (b *builder) shiplapBack(w *caseWork, wd *Wood, width, length, thick why.Size, at Vec) {
	n := int(w.spec.Back.Boards.Value)
	if n < 1 {
		n = int((width.Length() + backBoard - 1) / backBoard)
	}
	lap := measure.Length(0)
	if n > 1 {
		lap = backLap
	}
	about := why.Rule("width of a board, about", width.Length()/measure.Length(n)+lap, "the width shared among "+itoa(n)+", with the lap, which grows too", "", width)
	grow := b.growth(about.Length(), wd, wood.Width)
	gap := b.moveRule("gap at each joint", grow, about, wd)
	shrink := b.move(about.Length(), wd, b.p.Air.Dry, wood.Width)
	l, problems := joinery.LayBoarding(joinery.BoardingSpec{Cover: width.Length(), Length: length.Length(), Thickness: thick.Length(), Boards: n, Lap: lap, Widest: about.Length() + measure.Inch,
		Gap: gap.Length(), EndGap: endGap(width.Length(), gap.Length(), n, measure.Length(b.spec.Commission.Rule)), Shrinkage: -min(shrink.Change, 0), Growth: max(grow.Change, 0), Step: measure.Length(b.spec.Commission.Rule)})
	j := b.joint("shiplap", "back boards", w.left, nil, w.spec.Back.At)
	j.Depth = why.Rule("lap", l.Lap, "the width of the rabbets that lie over each other", practice, thick)
	j.Problems = ours(problems, w.spec.Back.Boards.Set)
	for i, board := range l.Boards {
		name := "back board " + itoa(i+1)
		p := b.add(w.asm, &Part{Path: w.spec.Name + ".back." + itoa(i+1), Name: name, Wood: wd, Length: length, Thickness: thick,
			Show: joinery.Low, At: w.spec.Back.At, Place: standingFront(at.Add(Vec{X: board.X})),
			Width: why.Rule("width of "+name, board.Box.W, "its share of the width between the rabbets, with its lap and without the gaps", "", width, gap, j.Depth)})
		j.cut(p, board.Features, nil)
		if i == 0 {
			b.fit(BackWidth, p, "gaps between back boards", gap, why.Rule("overlap", l.Overlap, "what two boards share", "", j.Depth, gap), p.Width.Length(), wd)
		}
	}
}

// endGap is half a gap at each side of the back, and what else leaves the
// boards whole marks of the rule.
func endGap(cover, gap measure.Length, n int, mark measure.Length) measure.Length {
	seen := cover - measure.Length(n)*gap
	if mark <= 0 {
		return gap / 2
	}
	return gap/2 + (seen%mark)/2
}

// panelBack is one board or glued-up panel in the rabbets, with room both sides.
func (b *builder) panelBack(w *caseWork, wd *Wood, width, length, thick why.Size, at Vec) {
	grow := b.growth(width.Length(), wd, wood.Width)
	each := why.Rule("room each side", half(grow.Change)+panelSpare, "half of what it grows to the damp season, and 1/32 to spare",
		"derived from the panel's movement", width)
	p := &Part{Path: w.spec.Name + ".back", Name: "back panel", Wood: wd, Length: length, Thickness: thick, Show: joinery.Low, At: w.spec.Back.At,
		Width: why.Sum("width of the back panel", why.Plus(width), why.Times(-2, each)), Place: standingFront(at.Add(Vec{X: each.Length()}))}
	b.add(w.asm, p)
	b.fit(BackWidth, p, "rabbets of the case", why.Sum("room in all", why.Times(2, each)), less("tongue each side", w.rabbet, each), p.Width.Length(), wd)
}

// buildCleat makes the two halves of a hanging cleat: the upper stays with the
// case, the lower goes on the wall.
func (b *builder) buildCleat(w *caseWork) {
	if !w.spec.Hung.Value || !w.rabbet.Given() {
		return
	}
	width, height := w.backSpan()
	k := w.spec.Cleat
	high := b.usual("cleat height", cleatHeight, "Architectural Woodwork Standards (1st ed. 2009), 4.4.18: at least 1/2 × 2-1/2")
	bevel, wd := measure.Degrees(45), b.wood(w.spec.Wood)
	if k != nil {
		high = k.Height.Or(high)
		wd = b.wood(k.Wood, w.spec.Wood)
		if k.Bevel != 0 {
			bevel = k.Bevel
		}
	}
	thick := b.cleatStock(w)
	y := w.depth.Length() - thick.Length()
	top := w.bottom.Length() - w.rabbet.Length() + height.Length()
	shorter := b.usual("wall half shorter", cleatShorter, practice)
	upper := b.cleatHalf(w, "case", wd, width.Named("length of the cleat"), high, thick, Vec{X: w.side.Length() - w.rabbet.Length(), Y: y, Z: top - high.Length()})
	overlap := measure.Length(float64(thick.Length()) * tangent(bevel))
	lower := b.cleatHalf(w, "wall", wd, less("length of the wall cleat", width, shorter), high, thick,
		Vec{X: w.side.Length() - w.rabbet.Length() + shorter.Length()/2, Y: y, Z: top - 2*high.Length() + overlap})
	b.bevelCleat(w, upper, joinery.Front, overlap)
	b.bevelCleat(w, lower, joinery.Back, overlap)
}

func (b *builder) cleatHalf(w *caseWork, half string, wd *Wood, length, high, thick why.Size, at Vec) *Part {
	return b.add(w.asm, &Part{Path: w.spec.Name + ".cleat." + half, Name: half + " cleat", Wood: wd, Length: length, Width: high.Named("width of the cleat"),
		Thickness: thick.Named("thickness of the cleat"), Show: joinery.High, Place: Place{w.at.Add(Vec{X: at.X, Y: at.Y + thick.Length(), Z: at.Z}), Right, Up, Front}})
}

// bevelCleat planes the hook. The wall half's upper edge is lowest at the wall
// and the case half's lower edge hangs behind it, so that the weight draws the
// case to the wall.
func (b *builder) bevelCleat(w *caseWork, p *Part, edge joinery.Edge, rise measure.Length) {
	side := joinery.High // the case half loses the corner towards the case
	if edge == joinery.Back {
		side = joinery.Low // the wall half the one towards the wall
	}
	at := w.spec.At
	if w.spec.Cleat != nil {
		at = w.spec.Cleat.At
	}
	j := b.joint("bevel", "hook of the "+p.Name, p, nil, at)
	f, problems := joinery.BevelSpec{Edge: edge, Side: side, Width: rise, Depth: p.Thickness.Length()}.Features(p.Box())
	j.cut(p, f, problems)
}
