package piece

import (
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// What a stand is made of when the text is silent.
const (
	legSection = 7 * measure.Inch / 4 // common practice, no source
	standRail  = 2 * measure.Inch     // common practice, no source
)

// standUnder is the stand that carries a case.
func (b *builder) standUnder(name string) *design.Stand {
	for _, s := range b.spec.Stands {
		if s.Under.Value == name {
			return s
		}
	}
	return nil
}

// standHeight is how high a case stands above what is below it.
func (b *builder) standHeight(name string) measure.Length {
	if s := b.standUnder(name); s != nil {
		return s.Height.Length()
	}
	return 0
}

// standWork is a stand while it is being built; at is the floor below the
// case's left front corner, at its front plane.
type standWork struct {
	spec         *design.Stand
	asm          *Assembly
	wood         *Wood
	w            *caseWork
	at           Vec
	height       why.Size
	width, depth why.Size // over all
	inset, front why.Size
}

func (b *builder) buildStands() {
	for _, s := range b.spec.Stands {
		w, ok := b.cases[s.Under.Value]
		if !ok || w.asm == nil {
			continue
		}
		k := &standWork{spec: s, w: w, wood: b.wood(s.Wood, w.spec.Wood), asm: b.assembly(StandAssembly, s.Name, s.Name, s.At)}
		k.at = w.at.Sub(Vec{Z: s.Height.Length()})
		k.height, k.inset, k.front = s.Height.Named("stand height"), s.Inset, s.Setback
		k.width = why.Sum("stand width", why.Plus(w.width), why.Times(-2, k.inset))
		k.depth = why.Sum("stand depth", why.Plus(w.depth), why.Minus(k.front))
		k.asm.Size, k.asm.Corner = [3]why.Size{k.width, k.height, k.depth}, k.at.Add(Vec{X: k.inset.Length(), Y: k.front.Length()})
		if !b.standFits(k) {
			continue
		}
		if s.Style.Value == "plinth" {
			b.plinth(k)
		} else {
			b.legs(k)
		}
	}
}

func (b *builder) standFits(k *standWork) bool {
	for _, s := range []why.Size{k.width, k.depth} {
		if s.Length() < 3*legSection {
			b.report(diag.Diagnostic{Code: "E318", Severity: diag.Error, Subject: orSpan(s.At(), k.spec.At), Where: k.spec.Name,
				Summary: "the " + s.Name() + " would be " + b.fmt(s.Length()) + ": too little to stand on",
				Detail:  "It is " + s.Sum(b.fmt) + ". Make inset or setback smaller."})
			return false
		}
	}
	return true
}

// plinth is four boards: front and back run through, the ends are dovetailed
// into them, half-blind in front.
func (b *builder) plinth(k *standWork) {
	thick := k.spec.Thickness.Or(b.usual("plinth stock", usualStock, practice)).Named("plinth thickness")
	name := k.spec.Name
	x, y := k.inset.Length(), k.front.Length()
	lap := why.Rule("lap", b.snap(thick.Length()/4), "a quarter of the board, to the nearest "+b.stepWord(), practice, thick)
	front := b.add(k.asm, &Part{Path: name + ".front", Name: "front", Wood: k.wood, Length: k.width.Named("length of the front"), Width: k.height.Named("width of the plinth"),
		Thickness: thick, Show: joinery.High, Place: acrossFront(k.at.Add(Vec{X: x, Y: y + thick.Length()}))})
	back := b.add(k.asm, &Part{Path: name + ".back", Name: "back", Wood: k.wood, Length: k.width.Named("length of the back"), Width: k.height.Named("width of the plinth"),
		Thickness: thick, Show: joinery.Low, Place: acrossFront(k.at.Add(Vec{X: x, Y: k.w.depth.Length()}))})
	between := why.Sum("between front and back", why.Plus(k.depth), why.Times(-2, thick))
	length := why.Sum("length of the ends", why.Plus(k.depth), why.Minus(lap))
	ends := [2]*Part{}
	for i, side := range [2]string{"left", "right"} {
		px, show := x, joinery.Low
		if i == 1 {
			px, show = x+k.width.Length()-thick.Length(), joinery.High
		}
		ends[i] = b.add(k.asm, &Part{Path: name + ".end." + side, Name: side + " end", Wood: k.wood, Length: length, Shoulder: between, Width: k.height.Named("width of the plinth"),
			Thickness: thick, Show: show, Place: runningBack(k.at.Add(Vec{X: px, Y: y + lap.Length()}))})
	}
	ends[0].Mirror, ends[1].Mirror = ends[1], ends[0]
	b.plinthCorners(k, front, back, ends, lap)
}

func (b *builder) plinthCorners(k *standWork, front, back *Part, ends [2]*Part, lap why.Size) {
	spec := joinery.DovetailSpec{Width: k.height.Length(), TailStock: front.Thickness.Length(), PinStock: front.Thickness.Length(), Slope: caseSlope,
		Chisel: b.spec.Shop.SmallestChisel.Length()}
	spec.Step = b.fine()
	through, p1 := joinery.LayDovetails(spec)
	spec.Lap = lap.Length()
	blind, p2 := joinery.LayDovetails(spec)
	p1, p2 = ours(p1, false), ours(p2, false)
	for i, e := range ends {
		pinEnd, inside := joinery.Near, joinery.High
		if i == 1 {
			pinEnd, inside = joinery.Far, joinery.Low
		}
		b.dovetail(&blind, p2, corner{tail: e, tailEnd: joinery.Near, inTail: inside, pin: front, pinEnd: pinEnd, inPin: joinery.Low, front: k.at}, e.Name+" to front", k.spec.At)
		b.dovetail(&through, p1, corner{tail: e, tailEnd: joinery.Far, inTail: inside, pin: back, pinEnd: pinEnd, inPin: joinery.High, front: k.at}, e.Name+" to back", k.spec.At)
	}
}

// legs stand in a front and a back row, tied by rails all round; each leg of
// the middle has a rail to either side.
func (b *builder) legs(k *standWork) {
	rows := max(2, int(k.spec.Legs.Value)/2)
	sec := k.spec.Leg.Or(b.usual("leg section", legSection, practice)).Named("leg section")
	rail := k.spec.Rail.Or(b.usual("stand rail", standRail, practice)).Named("rail width")
	thick := k.spec.Thickness.Or(b.usual("stand rail stock", usualStock, practice)).Named("rail thickness")
	gaps := measure.Split(k.width.Length()-measure.Length(rows)*sec.Length(), rows-1)
	fronts, backs := make([]*Part, rows), make([]*Part, rows)
	x := k.inset.Length()
	for i := range rows {
		fronts[i] = b.leg(k, "front", i, sec, Vec{X: x, Y: k.front.Length()})
		backs[i] = b.leg(k, "back", i, sec, Vec{X: x, Y: k.w.depth.Length() - sec.Length()})
		x += sec.Length()
		if i < rows-1 {
			x += gaps[i]
		}
	}
	for i := range rows / 2 {
		fronts[i].Mirror, fronts[rows-1-i].Mirror = fronts[rows-1-i], fronts[i]
		backs[i].Mirror, backs[rows-1-i].Mirror = backs[rows-1-i], backs[i]
	}
	for i := range rows - 1 {
		b.standRail(k, "front rail "+itoa(i+1), fronts[i], fronts[i+1], rail, thick, Right)
		b.standRail(k, "back rail "+itoa(i+1), backs[i], backs[i+1], rail, thick, Right)
	}
	for i := range rows {
		b.standRail(k, "cross rail "+itoa(i+1), fronts[i], backs[i], rail, thick, Back)
	}
	for i := range rows {
		b.taper(k, fronts[i], rail, i, rows, joinery.HighSide)
		b.taper(k, backs[i], rail, i, rows, joinery.LowSide)
	}
}

// taper planes a leg's inner faces to nothing at the rails: towards the middle
// of the stand, and towards the other row; a leg of the middle to both sides.
func (b *builder) taper(k *standWork, leg *Part, rail why.Size, i, rows int, inner joinery.Face) {
	by := k.spec.Taper.Length()
	run := leg.Length.Length() - rail.Length()
	if by <= 0 || run <= 0 {
		return
	}
	faces := []joinery.Face{inner}
	if i < rows-1 {
		faces = append(faces, joinery.BackEdge)
	}
	if i > 0 {
		faces = append(faces, joinery.FrontEdge)
	}
	if 2*by >= leg.Width.Length() {
		b.report(diag.Diagnostic{Code: "E325", Severity: diag.Error, Subject: k.spec.Taper.At(), Where: k.spec.Name,
			Summary: "a taper of " + b.fmt(by) + " leaves nothing of the foot of a leg " + b.fmt(leg.Width.Length()) + " thick",
			Detail:  "A leg in the middle loses it on two faces. Keep it under half the leg."})
		return
	}
	j := b.joint("taper", leg.Name+" below the rails", leg, nil, k.spec.At)
	j.Depth = k.spec.Taper
	for _, f := range faces {
		j.cut(leg, []joinery.Feature{tapered(straight(leg), f, by, run)}, nil)
	}
}

// tapered is the wedge off one long face: by wide at the near end, nothing at run.
func tapered(box joinery.Box, f joinery.Face, by, run measure.Length) joinery.Feature {
	wide := box.Along(f.Axis())
	at := func(in measure.Length) measure.Length {
		if f == joinery.BackEdge || f == joinery.HighSide {
			return wide - in
		}
		return in
	}
	if f.Axis() == joinery.W { // its plane is (L, W)
		return turned(joinery.Feature{Kind: joinery.Taper, Axis: joinery.T, To: box.T, Outline: []joinery.Point{{U: 0, V: at(0)}, {U: 0, V: at(by)}, {U: run, V: at(0)}}})
	}
	return turned(joinery.Feature{Kind: joinery.Taper, Axis: joinery.W, To: box.W, Outline: []joinery.Point{{U: at(0), V: 0}, {U: at(by), V: 0}, {U: at(0), V: run}}})
}

func (b *builder) leg(k *standWork, row string, i int, sec why.Size, at Vec) *Part {
	return b.add(k.asm, &Part{Path: k.spec.Name + ".leg." + row + "." + itoa(i+1), Name: row + " leg " + itoa(i+1), Wood: k.wood,
		Length: k.height.Named("length of the leg"), Width: sec, Thickness: sec, Show: joinery.Low, Place: standingFront(k.at.Add(at))})
}

// standRail ties two legs below the case, flush with their outside faces, by
// plain mortise and tenons.
func (b *builder) standRail(k *standWork, name string, from, to *Part, width, thick why.Size, run Dir) {
	sec := from.Width
	// Two tenons meet in a corner leg: half the leg less a little, so that they clear.
	tenon := why.Rule("tenon length", b.snap(sec.Length()/2)-measure.Inch/8, "half the leg less 1/8, so that two tenons clear each other", practice, sec)
	lo, _ := to.Corners()
	_, hi := from.Corners()
	gap := lo.X - hi.X
	at := Vec{X: hi.X - tenon.Length(), Y: from.Place.At.Y + thick.Length(), Z: k.at.Z + k.height.Length() - width.Length()}
	place := acrossFront(at)
	if run == Back {
		gap = lo.Y - hi.Y
		at = Vec{X: from.Place.At.X + (sec.Length()-thick.Length())/2, Y: hi.Y - tenon.Length(), Z: at.Z}
		place = runningBack(at)
	} else if from.Place.At.Y > k.front.Length()+k.at.Y { // the back row: flush behind
		place.At.Y = from.Place.At.Y + sec.Length()
	}
	shoulder := why.Rule("between the legs", gap, "what the legs leave of the stand", "", k.width, k.depth, sec)
	p := b.add(k.asm, &Part{Path: k.spec.Name + "." + underscore(name), Name: name, Wood: k.wood, Shoulder: shoulder, Width: width, Thickness: thick,
		Length: why.Sum("length of the "+name, why.Plus(shoulder), why.Times(2, tenon)), Show: joinery.High, Place: place})
	b.legTenon(from, p, joinery.Near, tenon, k)
	b.legTenon(to, p, joinery.Far, tenon, k)
}

func (b *builder) legTenon(leg, rail *Part, end joinery.End, tenon why.Size, k *standWork) {
	j := b.joint("mortise and tenon", rail.Name+" in "+leg.Name, leg, rail, k.spec.At)
	j.Depth, j.EndB, j.Glued = tenon, end, "all"
	l, problems := joinery.LayTenon(joinery.TenonSpec{Kind: joinery.PlainTenon, Rail: straight(rail), End: end, Seat: b.seat(leg, rail, end), Length: tenon.Length()})
	j.Tongue = why.Rule("tenon thickness", l.Thickness, "a third of the rail, to the nearest "+b.stepWord(), noyes, rail.Thickness)
	j.cut(rail, l.Rail, ours(problems, false))
	j.cut(leg, l.Host, nil)
}
