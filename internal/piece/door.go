package piece

import (
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// What a frame-and-panel door is made of when the text is silent.
const (
	noyes       = "Noyes, Handwork in Wood (1910), ch. 7"
	aws         = "Architectural Woodwork Standards (1st ed. 2009), 4.4.6.10"
	doorStock   = 3 * measure.Inch / 4 // Architectural Woodwork Standards (1st ed. 2009), 4.4.6.10.1.3
	doorStile   = 2 * measure.Inch     // common practice, no source
	bottomRail  = 5 * measure.Inch / 2 // common practice, no source
	insetGap    = measure.Inch / 16    // cabinetmakers' forum thread of 2006: furniture 1/16
	panelGroove = 3 * measure.Inch / 8 // trade forum answer: groove 3/8 for panels up to about 15 wide
	endGrainGap = measure.Inch / 16    // the same answer
	overlayLap  = 3 * measure.Inch / 8 // common practice, no source
	panelSpare  = measure.Inch / 32    // common practice, no source: beyond computed movement, for finish and hands
)

// doorWork is one door while it is being built.
type doorWork struct {
	spec *design.Door
	o    *Opening
	c    bay
	path string
	asm  *Assembly
	at   Vec // left front bottom corner, its face in the case's front plane

	frame, panelWood *Wood

	width, height, thick          why.Size
	stile, topRail, lowRail       why.Size
	tenon, tongue, groove, panelT why.Size
	fieldW, fieldH                why.Size // clear inside the frame
	gapLeft, gapRight, gapUp      why.Size
	lap                           why.Size // of an overlay door over the case
}

// buildDoors makes a door or a pair that meets in the middle.
func (b *builder) buildDoors(s *design.Door, o *Opening, c bay) {
	if s.Mount.Value == "overlay" && b.overlayOnBow(o, "door", orSpan(s.Mount.At, s.At)) {
		return
	}
	first := &doorWork{lap: b.overlay(s.Overlay, c), spec: s, o: o, c: c, path: o.Path + ".door", at: o.Corner, frame: b.wood(s.Wood, c.work.spec.Wood)}
	first.panelWood = b.wood(s.Panel.Wood, s.Wood, c.work.spec.Wood)
	b.doorStock(first)
	if !s.Pair.Value {
		b.doorSize(first, 1)
		b.buildDoor(first, "")
		b.doorFillings(first)
		return
	}
	second := *first
	b.doorSize(first, 2)
	second.width, second.height, second.fieldW, second.fieldH = first.width, first.height, first.fieldW, first.fieldH
	second.gapLeft, second.gapRight, second.gapUp = first.gapLeft, first.gapRight, first.gapUp
	first.path, second.path = o.Path+".door.left", o.Path+".door.right"
	second.at = first.at
	second.at.X = o.Corner.X + o.Width.Length() - first.gapLeft.Length() - first.width.Length()
	b.buildDoor(first, "left")
	b.buildDoor(&second, "right")
	b.mirrorPair(first.asm, second.asm)
	b.doorFillings(first)
}

// doorFillings ties doors and their gaps to the opening on paper.
func (b *builder) doorFillings(d *doorWork) {
	if d.spec.Mount.Value == "overlay" || d.asm == nil {
		return
	}
	if d.spec.Pair.Value {
		both := why.Sum("both doors and the gap between", why.Times(2, d.width), why.Plus(d.gapRight))
		b.fits("width of "+d.o.Path, d.o.Width, d.gapLeft, both, d.gapLeft)
		b.fits("doors of "+d.o.Path, both, d.width, d.gapRight, d.width)
	} else {
		b.fits("width of "+d.o.Path, d.o.Width, d.gapLeft, d.width, d.gapRight)
	}
	b.fits("height of "+d.o.Path, d.o.Height, d.gapUp, d.height, d.gapUp)
	b.fits("width of the frame", d.width, d.stile, d.fieldW, d.stile)
	b.fits("height of the frame", d.height, d.topRail, d.fieldH, d.lowRail)
}

// overlay is how far a front laps the case: as given, else half of the thinnest
// board round its opening less a little, so that two neighbours clear.
func (b *builder) overlay(given why.Size, c bay) why.Size {
	lap := b.usual("overlay", overlayLap, practice)
	for _, p := range []*Part{c.left, c.right, c.below, c.above} {
		if p == nil {
			continue
		}
		if most := p.Thickness.Length()/2 - handGap; most < lap.Length() {
			lap = why.Rule("overlay", most, "half the board it laps, less 1/32, so that two fronts clear each other", practice, p.Thickness)
		}
	}
	return given.Or(lap)
}

// overlayOnBow reports a front that would have to lap a bowed case.
func (b *builder) overlayOnBow(o *Opening, what string, at diag.Span) bool {
	if o.Bow == nil {
		return false
	}
	b.report(diag.Diagnostic{Code: "E324", Severity: diag.Error, Subject: at, Where: o.Path,
		Summary: "the overlay " + what + " of opening " + quote(o.Name) + " cannot lap a bowed front",
		Detail:  "Set it into its opening: mount = \"inset\". Or leave the curve out.", Related: []diag.Related{{Span: o.Bow.Spec.At, Message: "the curve"}}})
	return true
}

// mirrorPair ties each part of the left door to its mirror image in the right.
func (b *builder) mirrorPair(l, r *Assembly) {
	if l == nil || r == nil || len(l.Parts) != len(r.Parts) {
		return
	}
	for i, p := range l.Parts {
		q := r.Parts[i]
		if p.Mirror == nil && q.Mirror == nil { // the stiles of one door mirror each other already
			mirror(p, q)
		}
	}
}

// mirror ties two parts as mirror images, unless a bow makes them differ.
func mirror(p, q *Part) {
	if p.Bow != nil && (p.Bow.Fall-q.Bow.Fall).Abs() > measure.Micrometre {
		return
	}
	p.Mirror, q.Mirror = q, p
}

func (b *builder) doorStock(d *doorWork) {
	s := d.spec
	d.thick = s.Thickness.Or(b.usual("door stock", doorStock, aws)).Named("door thickness")
	d.stile = s.Stile.Or(b.usual("stile", doorStile, practice)).Named("stile width")
	d.topRail = s.TopRail.Or(d.stile).Named("top rail width")
	d.lowRail = s.BottomRail.Or(b.usual("bottom rail", bottomRail, practice)).Named("bottom rail width")
	third := why.Rule("tenon thickness", b.snap(d.thick.Length()/3), "a third of the frame, to the nearest "+b.stepWord(), noyes, d.thick)
	d.panelT = s.Panel.Thickness.Or(third).Named("panel thickness")
	d.tongue = third
	if s.Panel.Thickness.Given() && d.panelT.Length() <= d.thick.Length()/2 {
		d.tongue = why.Rule("tenon thickness", d.panelT.Length(), "the groove takes the panel and the tenon takes the groove", noyes, d.panelT)
	}
	d.groove = s.Panel.Groove.Or(b.usual("panel groove", min(panelGroove, d.stile.Length()/3), "trade forum answer: 3/8 deep for panels up to about 15 wide")).Named("groove depth")
	d.tenon = s.Tenon.Or(why.Rule("tenon length", b.snapUp(d.stile.Length().MulDiv(2, 3)), "two thirds of the stile, up to the next "+b.stepWord(), practice, d.stile))
}

// doorSize works out gaps and the size that they leave for each of n doors.
// Rails do not grow, but each stile does: the closing side gets that too.
func (b *builder) doorSize(d *doorWork, n int64) {
	gap := d.spec.Gap.Or(b.usual("gap", insetGap, "cabinetmakers' forum thread, 2006: furniture 1/16"))
	if d.spec.Mount.Value == "overlay" {
		lap := d.lap
		d.gapLeft = why.Sum("reach over the case", why.Minus(lap))
		d.gapRight, d.gapUp = d.gapLeft, d.gapLeft
		d.width = why.Sum("door width", why.Plus(d.o.Width), why.Times(2, lap))
		d.height = why.Sum("door height", why.Plus(d.o.Height), why.Times(2, lap))
		d.at = d.at.Add(Vec{X: -lap.Length(), Y: -d.thick.Length(), Z: -lap.Length()})
	} else {
		stiles := b.moveRule("swelling of the stiles", b.growth(measure.Length(2*n)*d.stile.Length(), d.frame, wood.Width), d.stile, d.frame)
		d.gapLeft = gap.Named("gap")
		d.gapRight = why.Sum("gap at the closing side", why.Plus(gap), why.Plus(stiles))
		d.gapUp = gap.Named("gap")
		d.width = why.Sum("door width", why.Plus(d.o.Width), why.Minus(d.gapLeft), why.Minus(d.gapRight))
		d.height = less("door height", d.o.Height, d.gapUp, d.gapUp)
		if d.spec.Hinge.Value == "right" {
			d.gapLeft, d.gapRight = d.gapRight, d.gapLeft
		}
		d.at = d.at.Add(Vec{X: d.gapLeft.Length(), Z: d.gapUp.Length()})
	}
	if n == 2 {
		b.halveWidth(d, gap)
	}
	d.fieldW = why.Sum("clear width of the frame", why.Plus(d.width), why.Times(-2, d.stile))
	d.fieldH = less("clear height of the frame", d.height, d.topRail, d.lowRail)
}

// halveWidth shares the opening between two doors with a gap between them.
func (b *builder) halveWidth(d *doorWork, gap why.Size) {
	both := why.Sum("both doors", why.Plus(d.o.Width), why.Times(-2, d.gapLeft), why.Minus(d.gapRight))
	if d.spec.Mount.Value == "overlay" {
		both = less("both doors", d.width, gap)
	}
	d.width = why.Rule("door width", both.Length()/2, "half of what the gaps leave", "", both)
	if d.spec.Mount.Value != "overlay" {
		d.gapRight = why.Sum("gap in the middle", why.Plus(d.o.Width), why.Times(-2, d.gapLeft), why.Times(-2, d.width))
	}
}

func (b *builder) buildDoor(d *doorWork, hand string) {
	if !b.doorFits(d) {
		return
	}
	d.asm = b.assembly(DoorAssembly, d.o.Name, d.path, orSpan(d.spec.At, d.o.At))
	d.asm.hand = hand
	d.asm.Corner, d.asm.Size = d.at, [3]why.Size{d.width, d.height, d.thick}
	stiles := b.stiles(d)
	rails := b.rails(d)
	for _, r := range rails {
		b.haunchedTenon(stiles[0], r, joinery.Near, d.tenon, d.tongue, d.groove, d.asm.At)
		b.haunchedTenon(stiles[1], r, joinery.Far, d.tenon, d.tongue, d.groove, d.asm.At)
	}
	b.doorPanel(d, stiles, rails)
	b.hinges(d, stiles)
	d.o.waits(d.asm)
	moving := 2 * d.stile.Length()
	if d.spec.Pair.Value { // both doors grow into the gap between them
		moving *= 2
	}
	b.fit(DoorWidth, stiles[0], "opening "+d.o.Name, d.gapRight, why.Size{}, moving, d.frame)
}

// leastField is the least clear size inside a frame that still takes a panel.
const leastField = measure.Inch

func (b *builder) doorFits(d *doorWork) bool {
	for _, s := range []why.Size{d.fieldW, d.fieldH} {
		if s.Length() >= leastField {
			continue
		}
		b.report(diag.Diagnostic{Code: "E315", Severity: diag.Error, Subject: orSpan(d.spec.At, d.o.At), Where: d.o.Path,
			Summary: "the frame of the door in opening " + quote(d.o.Name) + " leaves no panel: the " + s.Name() + " would be " + b.fmt(s.Length()),
			Detail:  "It is " + s.Sum(b.fmt) + ". Make stiles and rails narrower or the opening larger."})
		return false
	}
	return true
}

func (b *builder) stiles(d *doorWork) [2]*Part {
	var out [2]*Part
	for i, side := range [2]string{"left", "right"} {
		x := d.at.X
		if i == 1 {
			x += d.width.Length() - d.stile.Length()
		}
		p := &Part{Path: d.path + ".stile." + side, Name: side + " stile", Wood: d.frame, Length: d.height.Named("length of the stile"),
			Width: d.stile, Thickness: d.thick, Show: joinery.Low, Edge: innerEdge(i), Place: standingFront(Vec{X: x, Y: d.at.Y, Z: d.at.Z})}
		b.bowAcross(d, p, x)
		out[i] = b.add(d.asm, p)
	}
	mirror(out[0], out[1])
	return out
}

// innerEdge is the stile's reference edge: the one the panel groove runs in.
func innerEdge(i int) joinery.Edge {
	if i == 0 {
		return joinery.Back
	}
	return joinery.Front
}

// bowAcross gives a part of a curved door its stretch of the curve; width is
// taken along the case.
func (b *builder) bowAcross(d *doorWork, p *Part, x measure.Length) {
	if d.o.Bow == nil || d.spec.Mount.Value == "overlay" {
		return
	}
	along := p.Width.Length()
	if p.Place.L == Right {
		along = p.Length.Length()
	}
	from := d.o.BowFrom + x - d.o.Corner.X
	p.Bow = b.bowFor(d.o.Bow, joinery.T, from, from+along)
	if p.Bow.Along = p.Place.L == Right; !p.Bow.Along {
		p.Bow.X = joinery.W
	}
	p.Place.At.Y -= p.Bow.Crown
	if p.Place.T == Front {
		p.Place.At.Y += p.Bow.Fall
	}
	d.o.Bow.Parts = append(d.o.Bow.Parts, p)
}

func (b *builder) rails(d *doorWork) [2]*Part {
	var out [2]*Part
	for i, r := range []struct {
		name  string
		width why.Size
		up    measure.Length
		edge  joinery.Edge
	}{{"top", d.topRail, d.height.Length() - d.topRail.Length(), joinery.Front}, {"bottom", d.lowRail, 0, joinery.Back}} {
		x := d.at.X + d.stile.Length() - d.tenon.Length()
		p := &Part{Path: d.path + ".rail." + r.name, Name: r.name + " rail", Wood: d.frame, Width: r.width, Thickness: d.thick,
			Length: why.Sum("length of the "+r.name+" rail", why.Plus(d.fieldW), why.Times(2, d.tenon)), Shoulder: d.fieldW,
			Show: joinery.High, Edge: r.edge, Place: acrossFront(Vec{X: x, Y: d.at.Y + d.thick.Length(), Z: d.at.Z + r.up})}
		b.bowAcross(d, p, x)
		out[i] = b.add(d.asm, p)
	}
	return out
}

// doorPanel makes the field: whole or of leaves, with room to grow sideways
// in its grooves.
func (b *builder) doorPanel(d *doorWork, stiles, rails [2]*Part) {
	inGroove := why.Sum("between groove bottoms", why.Plus(d.fieldW), why.Times(2, d.groove))
	grow := b.growth(inGroove.Length(), d.panelWood, wood.Width)
	each := why.Rule("room each side", half(grow.Change)+panelSpare, "half of what the panel grows to the damp season, and 1/32 to spare",
		"derived from the panel's movement", inGroove)
	ends := b.usual("room at each end", min(endGrainGap, d.groove.Length()/2), "trade forum answer: end-grain gap 1/16")
	width := why.Sum("width of the panel", why.Plus(inGroove), why.Times(-2, each))
	length := why.Sum("length of the panel", why.Plus(d.fieldH), why.Times(2, d.groove), why.Times(-2, ends))
	low := Vec{X: d.at.X + d.stile.Length() - d.groove.Length() + each.Length(), Y: d.at.Y + (d.thick.Length()-d.panelT.Length())/2,
		Z: d.at.Z + d.lowRail.Length() - d.groove.Length() + ends.Length()}
	leaves := b.leaves(d, width, length, low)
	b.panelTongues(d, leaves)
	for _, host := range []*Part{stiles[0], stiles[1], rails[0], rails[1]} {
		b.panelGroove(host, d)
	}
	tongue := less("tongue each side", d.groove, each)
	b.fit(PanelWidth, leaves[0], "grooves of the frame", why.Sum("room in all", why.Times(2, each)), tongue, width.Length(), d.panelWood)
	b.leafSet(d, leaves)
}

// panelTongues thins a panel thicker than its grooves to a tongue round its
// edges, on both faces alike. Its shoulders stay as far from the frame as its
// edges from the bottoms of the grooves, so that it moves as freely.
func (b *builder) panelTongues(d *doorWork, leaves []*Part) {
	off := (d.panelT.Length() - d.tongue.Length()) / 2
	if off <= 0 {
		return
	}
	for i, p := range leaves {
		beside := []joinery.Face{joinery.NearEnd, joinery.FarEnd}
		if i == 0 {
			beside = append(beside, joinery.FrontEdge)
		}
		if i == len(leaves)-1 {
			beside = append(beside, joinery.BackEdge)
		}
		j := b.joint("rabbet", "tongue of the "+p.Name, p, nil, orSpan(d.spec.Panel.At, d.asm.At))
		j.Depth, j.Tongue = why.Rule("rabbet depth", off, "half of what the panel is thicker than its grooves", "", d.panelT, d.tongue), d.tongue
		for _, edge := range beside {
			for _, face := range [2]joinery.Face{joinery.LowSide, joinery.HighSide} {
				f, problems := joinery.RabbetSpec{Face: face, Beside: edge, Width: d.groove.Length(), Depth: off}.Features(straight(p))
				j.cut(p, f, problems)
			}
		}
	}
}

func (b *builder) leaves(d *doorWork, width, length why.Size, low Vec) []*Part {
	n := 1
	if d.spec.Panel.Leaves.Set {
		n = max(1, int(d.spec.Panel.Leaves.Value))
	}
	shares := measure.Split(width.Length(), n)
	var out []*Part
	for i, share := range shares {
		p := &Part{Path: d.path + ".panel", Name: "panel", Wood: d.panelWood, Length: length, Width: width, Thickness: d.panelT,
			Show: joinery.Low, Place: standingFront(low)}
		if n > 1 {
			p.Path, p.Name = d.path+".panel."+itoa(i+1), "panel leaf "+itoa(i+1)
			p.Width = why.Rule("width of a leaf", share, "1 of "+itoa(n)+" leaves side by side", "", width)
		}
		b.bowAcross(d, p, low.X)
		low.X += share
		out = append(out, b.add(d.asm, p))
	}
	for i := 0; i+1 < len(out); i += 2 {
		mirror(out[i], out[i+1])
	}
	return out
}

// leafSet ties the leaves of a matched panel together.
func (b *builder) leafSet(d *doorWork, leaves []*Part) {
	if len(leaves) < 2 || !d.spec.Panel.Match.Given() {
		return
	}
	s := &Set{of: d.asm, Kind: d.spec.Panel.Match.Value, Parts: leaves, At: d.spec.Panel.At,
		Total: leaves[0].Width}
	for _, p := range leaves {
		p.Set = s
	}
	b.p.Sets = append(b.p.Sets, s)
}

func half(l measure.Length) measure.Length { return (l + 1) / 2 }
