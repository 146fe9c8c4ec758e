package piece

import (
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// caseSlope is the usual slope of case dovetails in hardwood: common practice,
// no source. Joyce goes from 1:5 for carcases to 1:8 for fine work.
var caseSlope = measure.Slope{Rise: 1, Run: 8}

// topRailWidth is the width of a top rail when the text is silent: common
// practice, no source.
const topRailWidth = 3 * measure.Inch

// cornerKind is the joint at the case's corners; dovetails if nothing is said.
func (w *caseWork) cornerKind() string {
	if k := w.spec.Corners.Joint.Value; k != "" {
		return k
	}
	return "through dovetail"
}

func (w *caseWork) dovetailed() bool {
	k := w.cornerKind()
	return k == "through dovetail" || k == "half-blind dovetail"
}

// tailsOnSides says which boards have the tails. Tails resist a pull along
// their own board: a hung case hangs from its sides, so they have them; an
// ordinary standing case keeps its sides from spreading with tails on top and
// bottom (derived from the direction in which the joint holds).
func (w *caseWork) tailsOnSides() bool {
	switch w.spec.Corners.TailsOn.Value {
	case "sides":
		return true
	case "ends":
		return false
	}
	return w.spec.Hung.Value
}

// cornerLap is what a half-blind corner leaves on the pin board.
func (b *builder) cornerLap(w *caseWork) why.Size {
	if w.cornerKind() != "half-blind dovetail" {
		return why.Size{}
	}
	pin := w.side
	if w.tailsOnSides() {
		pin = w.top
	}
	return w.spec.Corners.Lap.Or(why.Rule("lap", b.snap(pin.Length()/4), "a quarter of the board, to the nearest "+b.stepWord(), practice, pin))
}

// cornerLengths is how long the corner joint makes sides and ends.
func (b *builder) cornerLengths(w *caseWork) (side, end why.Size) {
	side, end = w.height.Named("length of the sides"), w.width.Named("length of top and bottom")
	lap := b.cornerLap(w)
	switch {
	case w.dovetailed() && lap.Given() && w.tailsOnSides():
		side = why.Sum("length of the sides", why.Plus(w.height), why.Times(-2, lap))
	case w.dovetailed() && lap.Given():
		end = why.Sum("length of top and bottom", why.Plus(w.width), why.Times(-2, lap))
	case w.cornerKind() == "rabbet":
		end = why.Sum("length of top and bottom", why.Plus(w.insideW), why.Times(2, b.cornerDepth(w)))
	case w.cornerKind() == "dado":
		end = why.Sum("length of top and bottom", why.Plus(w.insideW), why.Times(2, b.cornerDepth(w)))
	}
	return side, end
}

// cornerDepth is how deep top and bottom go into the sides.
func (b *builder) cornerDepth(w *caseWork) why.Size {
	if w.cornerKind() == "rabbet" {
		return why.Rule("rabbet depth", b.snap(w.side.Length()/2), "half the side, to the nearest "+b.stepWord(),
			"Building Furniture (Fine Woodworking, 2007), p. 79: half to two thirds", w.side)
	}
	return why.Rule("housing depth", b.usualHousing(w.side.Length(), false), "a third of the side, down to the next "+b.stepWord(), practice, w.side)
}

// sideDrop is how far above the case's bottom its sides start.
func (b *builder) sideDrop(w *caseWork) measure.Length {
	if w.tailsOnSides() {
		return b.cornerLap(w).Length()
	}
	return 0
}

// caseCorners joins the case's boards at its corners.
func (b *builder) caseCorners(w *caseWork) {
	ends := []*Part{w.floor}
	if w.hasTop() {
		ends = append(ends, w.ceiling)
	}
	for _, e := range ends {
		switch {
		case w.dovetailed():
			b.dovetailEnd(w, e)
		case w.cornerKind() == "rabbet":
			b.rabbetEnd(w, e)
		default:
			b.house(w.left, e, joinery.Near, b.cornerDepth(w), why.Size{}, w.spec.Corners.At)
			b.house(w.right, e, joinery.Far, b.cornerDepth(w), why.Size{}, w.spec.Corners.At)
		}
	}
}

// dovetailEnd lays the row out once for both ends of a top or bottom.
func (b *builder) dovetailEnd(w *caseWork, e *Part) {
	tail, pin := e, w.left
	if w.tailsOnSides() {
		tail, pin = w.left, e
	}
	spec := joinery.DovetailSpec{Width: w.depth.Length(), TailStock: tail.Thickness.Length(), PinStock: pin.Thickness.Length(),
		Slope: caseSlope, Lap: b.cornerLap(w).Length(), Tails: int(w.spec.Corners.Tails.Value), HalfPin: w.spec.Corners.HalfPin.Length(),
		Chisel: b.spec.Shop.SmallestChisel.Length(), Kerf: b.spec.Shop.DovetailKerf.Length(), Runs: b.backRuns(w)}
	if w.spec.Corners.HasSlope {
		spec.Slope = w.spec.Corners.Slope
	}
	spec.Step = b.fine()
	l, problems := joinery.LayDovetails(spec)
	problems = ours(problems, spec.Tails > 0 || spec.HalfPin > 0 || w.spec.Corners.HasSlope)
	sideEnd := joinery.Near
	if e != w.floor {
		sideEnd = joinery.Far
	}
	for _, s := range [2]*Part{w.left, w.right} {
		endOfE, inSide := joinery.Near, joinery.Low
		if s == w.right {
			endOfE, inSide = joinery.Far, joinery.High
		}
		inE := joinery.High
		if e != w.floor {
			inE = joinery.Low
		}
		c := corner{tail: e, tailEnd: endOfE, inTail: inE, pin: s, pinEnd: sideEnd, inPin: inSide, front: w.at}
		if w.tailsOnSides() {
			c = corner{tail: s, tailEnd: sideEnd, inTail: inSide, pin: e, pinEnd: endOfE, inPin: inE, front: w.at}
		}
		c.bowed = w.bow != nil
		b.dovetail(&l, problems, c, s.Name+" to "+e.Name, orSpan(w.spec.Corners.At, w.spec.At))
	}
}

// backRuns are the rabbets of the back, where they run out through a corner.
func (b *builder) backRuns(w *caseWork) []joinery.Run {
	if !w.rabbet.Given() {
		return nil
	}
	return []joinery.Run{{From: w.depth.Length() - w.inset.Length(), To: w.depth.Length(),
		TailDepth: w.rabbet.Length(), PinDepth: w.rabbet.Length()}}
}

// rabbetEnd lets a top or bottom into rabbets at the ends of the sides.
func (b *builder) rabbetEnd(w *caseWork, e *Part) {
	depth := b.cornerDepth(w)
	for _, s := range [2]*Part{w.left, w.right} {
		inside, end, own := joinery.LowSide, joinery.NearEnd, joinery.Near
		if s == w.right {
			inside, own = joinery.HighSide, joinery.Far
		}
		if e != w.floor {
			end = joinery.FarEnd
		}
		j := b.joint("rabbet", e.Name+" in "+s.Name, s, e, orSpan(w.spec.Corners.At, w.spec.At))
		j.Depth, j.Tongue, j.EndB, j.Glued = depth, e.Thickness, own, "all"
		f, p := joinery.RabbetSpec{Face: inside, Beside: end, Width: e.Thickness.Length(), Depth: depth.Length()}.Features(straight(s))
		j.cut(s, f, p)
	}
}

// topRails are two rails across the top, lapped into the sides by one
// dovetail each, where a loose top will cover them.
func (b *builder) topRails(w *caseWork) {
	r := w.spec.TopRails
	wide := r.Width.Or(b.webWidth("top rail width", topRailWidth, w.insideDepth, 3))
	if left := less("left between the top rails", w.insideDepth, wide, wide); left.Length() < 0 {
		b.report(diag.Diagnostic{Code: "E319", Severity: diag.Error, Subject: orSpan(wide.At(), r.At), Where: w.spec.Name,
			Summary: "the two top rails of case " + quote(w.spec.Name) + " overlap by " + b.fmt(-left.Length()),
			Detail:  "Inside the case is " + b.fmt(w.insideDepth.Length()) + " deep; make the rails no wider than half of that."})
	}
	tail := why.Rule("tail length", b.snap(w.side.Length().MulDiv(2, 3)), "two thirds of the side, to the nearest "+b.stepWord(),
		"Building Furniture (Fine Woodworking, 2007), p. 79: half to two thirds", w.side)
	length := why.Sum("length of the top rails", why.Plus(w.insideW), why.Times(2, tail))
	x := w.side.Length() - tail.Length()
	up := w.height.Length() - w.top.Length()
	front := &Part{Path: w.spec.Name + ".top_rail.front", Name: "front top rail", Wood: b.wood(r.Wood, w.spec.Wood), Length: length,
		Shoulder: w.insideW, Thickness: w.top, Show: joinery.High, At: r.At}
	b.flatTo(w, front, x, up, wide, "width of the front top rail")
	w.ceiling = b.add(w.asm, front)
	back := &Part{Path: w.spec.Name + ".top_rail.back", Name: "back top rail", Wood: front.Wood, Length: length, Width: wide,
		Shoulder: w.insideW, Thickness: w.top, Show: joinery.High, At: r.At,
		Place: level(w.at.Add(Vec{X: x, Y: w.insideDepth.Length() - wide.Length(), Z: up}))}
	b.pairRails(front, b.add(w.asm, back))
	for _, rail := range [2]*Part{front, back} {
		b.lapDovetail(w, rail, wide, tail)
	}
}

// lapDovetail lays one tail on each end of a top rail into the sides' tops.
func (b *builder) lapDovetail(w *caseWork, rail *Part, wide, tail why.Size) {
	slope := caseSlope
	if w.spec.Corners.HasSlope {
		slope = w.spec.Corners.Slope
	}
	spec := joinery.DovetailSpec{Width: wide.Length(), TailStock: rail.Thickness.Length(), PinStock: w.side.Length(), Slope: slope,
		Lap: w.side.Length() - tail.Length(), Tails: 1, Chisel: b.spec.Shop.SmallestChisel.Length()}
	spec.Step = b.fine()
	l, problems := joinery.LayDovetails(spec)
	problems = ours(problems, w.spec.Corners.HasSlope)
	front := Vec{X: w.at.X, Y: rail.Place.At.Y + rail.Width.Length() - wide.Length(), Z: w.at.Z}
	b.dovetail(&l, problems, corner{tail: rail, tailEnd: joinery.Near, pin: w.left, pinEnd: joinery.Far, inPin: joinery.Low, front: front, bowed: w.bow != nil},
		rail.Name+" to left side", rail.At)
	b.dovetail(&l, problems, corner{tail: rail, tailEnd: joinery.Far, pin: w.right, pinEnd: joinery.Far, inPin: joinery.High, front: front, bowed: w.bow != nil},
		rail.Name+" to right side", rail.At)
}

// bevelSides planes the front edges of the sides to a bow.
func (b *builder) bevelSides(w *caseWork) {
	if w.bow == nil {
		return
	}
	reach := w.reach(0, w.side.Length())
	if reach == 0 {
		return
	}
	for _, s := range [2]*Part{w.left, w.right} {
		outside := joinery.High
		if s == w.right {
			outside = joinery.Low
		}
		j := b.joint("bevel", "front edge of the "+s.Name+" to the bow", s, nil, w.spec.At)
		f, p := joinery.BevelSpec{Edge: joinery.Front, Side: outside, Width: reach, Depth: w.side.Length()}.Features(s.Box())
		j.cut(s, f, p)
	}
}
