package piece

import (
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// What a drawer is made of when the text is silent.
const (
	joyce        = "Joyce, The Technique of Furniture Making"
	practice     = "common practice, no source"
	noyesBottom  = "Noyes, Handwork in Wood (1910), ch. 8"
	drawerFront  = 3 * measure.Inch / 4  // Building Furniture (Fine Woodworking, 2007), p. 84
	smallSide    = 3 * measure.Inch / 8  // common practice, no source
	largeSide    = measure.Inch / 2      // common practice, no source
	largeDrawer  = 8 * measure.Inch      // opening height from which sides are large: common practice, no source
	drawerBack   = 5 * measure.Inch / 16 // Joyce: 1/4 to 5/16
	drawerBottom = 5 * measure.Inch / 16 // Joyce
	backBelow    = 3 * measure.Inch / 16 // Joyce: how far the back is lower than the sides
	bottomPast   = measure.Inch / 4      // Noyes, Handwork in Wood, ch. 8: the bottom runs past the back
	handGap      = measure.Inch / 32     // common practice, no source: side gap, and top gap beyond movement
	behindDrawer = 3 * measure.Inch / 8  // common practice, no source: 1/4 to 1/2 left behind
	grooveUp     = 3 * measure.Inch / 8  // common practice, no source: lower edge of the side to the groove
	mostGroove   = measure.Inch / 4      // common practice, no source
	leastLap     = 3 * measure.Inch / 32 // Building Furniture (Fine Woodworking, 2007), p. 84: under this it breaks easily
)

// drawerWork is a drawer while it is being built. Lengths across the drawer
// are along x, its height along z, its depth along y.
type drawerWork struct {
	spec *design.Drawer
	o    *Opening
	c    bay
	asm  *Assembly
	at   Vec // left bottom corner, on the case's front plane

	frontWood, sideWood, backWood, bottomWood *Wood

	frontT, sideT, backT, bottomT why.Size
	joinT                         why.Size // of the board in front that the sides are joined to
	sideGap, topGap, behind       why.Size
	width, height                 why.Size
	lap, up, groove               why.Size

	front, left, right, back *Part
}

func (b *builder) buildDrawer(s *design.Drawer, o *Opening, c bay) {
	if s.Mount.Value == "overlay" && b.overlayOnBow(o, "drawer", orSpan(s.Mount.At, s.At)) {
		return
	}
	d := &drawerWork{spec: s, o: o, c: c}
	b.drawerStock(d)
	b.drawerGaps(d)
	d.asm = b.assembly(DrawerAssembly, o.Name, o.Path, orSpan(s.At, o.At))
	d.at = o.Corner.Add(Vec{X: d.sideGap.Length()})
	d.asm.Corner = d.at
	if !b.drawerFits(d) {
		return
	}
	b.drawerFront(d)
	b.drawerSides(d)
	b.drawerBack(d)
	b.drawerJoints(d)
	b.drawerBottom(d)
	b.kickers(d)
	d.asm.Size = [3]why.Size{d.width, d.height, less("drawer depth", o.Depth, d.behind)}
	o.waits(d.asm)
	b.fits("width of "+o.Path, o.Width, d.sideGap, d.width, d.sideGap)
	b.fits("height of "+o.Path, o.Height, why.Size{}, d.height, d.topGap)
	b.drawerMoves(d)
}

func (b *builder) drawerStock(d *drawerWork) {
	s, inCase := d.spec, d.c.work.spec.Wood
	d.frontWood = b.wood(s.Front.Wood, inCase)
	d.sideWood = b.wood(s.Sides.Wood, inCase)
	d.backWood = b.wood(s.Back.Wood, s.Sides.Wood, inCase)
	d.bottomWood = b.wood(s.Bottom.Wood, s.Sides.Wood, inCase)
	side := smallSide
	if d.o.Height.Length() >= largeDrawer {
		side = largeSide
	}
	d.frontT = s.Front.Thickness.Or(b.usual("front stock", drawerFront, "Building Furniture (Fine Woodworking, 2007), p. 84")).Named("front thickness")
	d.sideT = s.Sides.Thickness.Or(b.usual("side stock", side, practice)).Named("side thickness")
	d.backT = s.Back.Thickness.Or(b.usual("back stock", drawerBack, joyce)).Named("back thickness")
	d.bottomT = s.Bottom.Thickness.Or(b.usual("bottom stock", drawerBottom, joyce)).Named("bottom thickness")
	d.joinT = d.frontT
	if d.overlay() {
		d.joinT = d.sideT.Named("box front thickness")
	}
	d.lap = s.Lap.Or(why.Rule("lap", max(leastLap, d.frontT.Length().MulDiv(1, 4)),
		"a quarter of the front, so that 3/4 keeps 3/16; not under 3/32", joyce+"; Building Furniture (Fine Woodworking, 2007), p. 84", d.frontT))
	if d.overlay() {
		d.lap = why.Size{} // the box is dovetailed through, its front hides that
	}
	d.up = s.Groove.Or(b.usual("groove above the lower edge", min(grooveUp, d.o.Height.Length()/8), practice))
	d.groove = why.Rule("groove depth", min(mostGroove, d.sideT.Length()/2), "half the side, not over 1/4", practice, d.sideT)
}

// drawerGaps works out the room a drawer needs from shop to damp season: the
// opening's width is held by long grain, its height by long grain too, but the
// drawer's height grows across the grain and its sides thicken.
func (b *builder) drawerGaps(d *drawerWork) {
	s, hand := d.spec, b.usual("hand gap", handGap, practice)
	thicker := b.growth(d.sideT.Length(), d.sideWood, wood.Thickness)
	d.sideGap = s.SideGap.Or(why.Sum("side gap", why.Plus(hand),
		why.Plus(b.moveRule("swelling of a side", thicker, d.sideT, d.sideWood))))
	// Front and sides are as high as each other; the wood that moves more rules.
	rule := d.frontWood
	if b.growth(d.o.Height.Length(), d.sideWood, wood.Width).Change > b.growth(d.o.Height.Length(), rule, wood.Width).Change {
		rule = d.sideWood
	}
	d.topGap = s.TopGap.Or(why.Sum("top gap", why.Plus(hand),
		why.Plus(b.moveRule("swelling of its height", b.growth(d.o.Height.Length(), rule, wood.Width), d.o.Height, rule))))
	d.behind = s.Behind.Or(b.roomBehind(d))
	d.width = less("drawer width", d.o.Width, d.sideGap, d.sideGap)
	d.height = less("drawer height", d.o.Height, d.topGap)
}

// roomBehind is what a drawer leaves free: enough for its bottom, which runs
// past the back and grows that way, and never less than 3/8.
func (b *builder) roomBehind(d *drawerWork) why.Size {
	least := b.usual("left free behind", behindDrawer, practice)
	grow := b.growth(d.o.Depth.Length(), d.bottomWood, wood.Width)
	past := b.usual("past the back", bottomPast, noyesBottom)
	need := why.Sum("left free behind", why.Plus(past), why.Plus(b.moveRule("growth of the bottom", grow, d.o.Depth, d.bottomWood)),
		why.Plus(b.usual("to spare", handGap, practice)))
	if need.Length() > least.Length() {
		return need
	}
	return least
}

// overlay reports a front planted on the box, lapping the case, and not part
// of the box.
func (d *drawerWork) overlay() bool { return d.spec.Mount.Value == "overlay" }

// leastDrawer is the least inside size that is still a drawer.
const leastDrawer = measure.Inch / 2

func (b *builder) drawerFits(d *drawerWork) bool {
	inside := less("inside of the drawer", d.width, d.sideT, d.sideT)
	deep := less("drawer depth", d.o.Depth, d.behind, d.joinT, d.backT)
	tall := less("height of the drawer's back", d.height, d.up, d.bottomT, b.usual("back below the sides", backBelow, joyce))
	for _, s := range []why.Size{inside, deep, tall} {
		if s.Length() >= leastDrawer {
			continue
		}
		b.report(diag.Diagnostic{Code: "E314", Severity: diag.Error, Subject: orSpan(d.spec.At, d.o.At), Where: d.o.Path,
			Summary: "no drawer fits opening " + quote(d.o.Name) + ": the " + s.Name() + " would be " + b.fmt(s.Length()),
			Detail:  "It is " + s.Sum(b.fmt) + ". Give the opening more room, or the drawer thinner stock."})
		return false
	}
	return true
}

// ends are the least ordinates of the bow over the thickness of the drawer's
// two sides, where they meet a flat landing inside the front; 0 without a bow.
func (d *drawerWork) ends() (left, right measure.Length) {
	if d.o.Bow == nil {
		return 0, 0
	}
	x, thick := d.o.BowFrom+d.sideGap.Length(), d.sideT.Length()
	end := x + d.width.Length()
	return d.o.Bow.least(x, x+thick), d.o.Bow.least(end-thick, end)
}

// drawerFront makes the board the sides are joined to: the front itself, or
// the front of the box behind a planted one.
func (b *builder) drawerFront(d *drawerWork) {
	p := &Part{Path: d.o.Path + ".front", Name: "front", Wood: d.frontWood, Length: d.width.Named("length of the front"),
		Width: d.height.Named("width of the front"), Thickness: d.joinT, Show: joinery.High,
		Shoulder: less("between the sides", d.width, d.sideT, d.sideT)}
	if d.overlay() {
		p.Path, p.Name, p.Wood = d.o.Path+".box_front", "box front", d.sideWood
		b.plantedFront(d)
	}
	low := measure.Length(0)
	if d.o.Bow != nil {
		x := d.o.BowFrom + d.sideGap.Length()
		p.Bow = b.bowFor(d.o.Bow, joinery.T, x, x+d.width.Length())
		p.Bow.Landing = d.sideT.Length()
		low = p.Bow.Crown - p.Bow.Fall
		d.o.Bow.Parts = append(d.o.Bow.Parts, p)
	}
	p.Place = acrossFront(d.at.Add(Vec{Y: d.joinT.Length() - low}))
	d.front = b.add(d.asm, p)
}

// plantedFront laps the case all round and is screwed on from inside the box.
func (b *builder) plantedFront(d *drawerWork) {
	by := b.overlay(d.spec.Overlay, d.c)
	b.add(d.asm, &Part{Path: d.o.Path + ".front", Name: "front", Wood: d.frontWood, Thickness: d.frontT, Show: joinery.High,
		Length: why.Sum("length of the front", why.Plus(d.o.Width), why.Times(2, by)),
		Width:  why.Sum("width of the front", why.Plus(d.o.Height), why.Times(2, by)),
		Place:  acrossFront(d.o.Corner.Add(Vec{X: -by.Length(), Z: -by.Length()}))})
}

func (b *builder) drawerSides(d *drawerWork) {
	l, r := d.ends()
	d.left = b.drawerSide(d, "left", joinery.Low, d.at.X, l)
	d.right = b.drawerSide(d, "right", joinery.High, d.at.X+d.width.Length()-d.sideT.Length(), r)
	if l == r {
		d.left.Mirror, d.right.Mirror = d.right, d.left
	}
}

func (b *builder) drawerSide(d *drawerWork, name string, show joinery.Side, x, reach measure.Length) *Part {
	terms := []why.Term{why.Plus(d.o.Depth)}
	if reach != 0 {
		terms = append(terms, why.Plus(why.Rule("reach of the bow", reach, "how far the bow stands before the case's front plane at this side", "",
			d.o.Bow.Spec.Chord, d.o.Bow.Spec.Rise)))
	}
	terms = append(terms, why.Minus(d.behind), why.Minus(d.lap))
	length := why.Sum("length of the "+name+" side", terms...)
	return b.add(d.asm, &Part{Path: d.o.Path + ".side." + name, Name: name + " side", Wood: d.sideWood,
		Length: length, Width: d.height.Named("width of the side"), Thickness: d.sideT, Show: show,
		Shoulder: why.Sum("between front and back", why.Plus(length), why.Plus(d.lap), why.Minus(d.joinT), why.Minus(d.backT)),
		Place:    runningBack(Vec{X: x, Y: d.at.Y - reach + d.lap.Length(), Z: d.at.Z})})
}

// drawerBack stands on the bottom and ends below the sides' upper edge.
func (b *builder) drawerBack(d *drawerWork) {
	below := b.usual("back below the sides", backBelow, joyce)
	p := &Part{Path: d.o.Path + ".back", Name: "back", Wood: d.backWood, Thickness: d.backT, Show: joinery.High,
		Width:    less("width of the back", d.height, d.up, d.bottomT, below),
		Shoulder: less("between the sides", d.width, d.sideT, d.sideT)}
	p.Length = d.width.Named("length of the back")
	x := measure.Length(0)
	if d.spec.BackJoint.Value == "dado" {
		in := why.Rule("housing of the back", d.sideT.Length()/3, "a third of the side", practice, d.sideT)
		p.Length = why.Sum("length of the back", why.Plus(p.Shoulder), why.Times(2, in))
		x = d.sideT.Length() - in.Length()
	}
	y := d.o.Depth.Length() - d.behind.Length()
	p.Place = acrossFront(d.at.Add(Vec{X: x, Y: y, Z: d.up.Length() + d.bottomT.Length()}))
	d.back = b.add(d.asm, p)
}

// drawerBottom runs its grain from side to side, is held in front and may move
// behind, under the back.
func (b *builder) drawerBottom(d *drawerWork) {
	slack := b.usual("slack in the grooves", handGap, practice)
	past := b.usual("past the back", bottomPast, noyesBottom)
	terms := []why.Term{why.Plus(d.o.Depth), why.Minus(d.behind), why.Minus(d.joinT), why.Plus(d.groove), why.Plus(past)}
	length := why.Sum("length of the bottom", why.Plus(d.width), why.Times(-2, d.sideT), why.Times(2, d.groove), why.Minus(slack))
	p := &Part{Path: d.o.Path + ".bottom", Name: "bottom", Wood: d.bottomWood, Thickness: d.bottomT, Show: joinery.High, Length: length}
	x := d.sideT.Length() - d.groove.Length() + slack.Length()/2
	reach := measure.Length(0)
	if d.front.Bow != nil {
		from := d.front.Bow.From + x
		p.Bow = b.bowFor(d.o.Bow, joinery.W, from, from+length.Length())
		p.Bow.Offset, reach = d.groove.Length()-d.joinT.Length(), p.Bow.Crown
		terms = append(terms, why.Plus(why.Rule("reach of the bow", reach, "how far the bow stands before the case's front plane along the bottom", "",
			d.o.Bow.Spec.Chord, d.o.Bow.Spec.Rise)))
	}
	p.Width = why.Sum("width of the bottom", terms...)
	p.Place = level(d.at.Add(Vec{X: x, Y: d.joinT.Length() - d.groove.Length() - reach, Z: d.up.Length()}))
	b.add(d.asm, p)
	for _, host := range []*Part{d.left, d.right, d.front} {
		b.groove(host, p, d.groove, "drawer bottom in "+host.Name, d.asm.At)
	}
	b.fit(BottomDepth, p, "room behind the drawer", less("room behind", d.behind, past), why.Size{}, p.Width.Length(), p.Wood)
}

func (b *builder) drawerMoves(d *drawerWork) {
	tall := d.left
	if b.growth(d.height.Length(), d.frontWood, wood.Width).Change > b.growth(d.height.Length(), d.sideWood, wood.Width).Change {
		tall = d.front
	}
	b.fit(DrawerHeight, tall, "opening "+d.o.Name, d.topGap, why.Size{}, d.height.Length(), tall.Wood)
}
