package piece

import (
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// Web frame members, after a published case with solid sides (Building
// Furniture, Fine Woodworking, 2007, p. 64: front divider 3-1/2 to 4, back
// divider 2-1/2 to 3, runners about 2). A shallow case gets a third and a
// quarter of its depth instead: common practice, no source.
const (
	frontRailWidth = 7 * measure.Inch / 2
	backRailWidth  = 5 * measure.Inch / 2
	runnerWidth    = 2 * measure.Inch
	runnerTongue   = 3 * measure.Inch / 8 // common practice, no source
	webFrameSource = "Building Furniture (Fine Woodworking, 2007), p. 64"
)

// betweenThickness is the thickness of what stands between two cells.
func (b *builder) betweenThickness(s *design.Between, c bay, i int) why.Size {
	t := s.Thickness.Or(b.usual(string(s.Kind)+" stock", usualStock, "common practice, no source"))
	return t.Named(string(s.Kind) + " thickness")
}

// between makes what stands between two cells, and returns the part that the
// cells on both sides are bounded by.
func (b *builder) between(s *design.Between, d division, at, whole bay, i int) *Part {
	n := string(s.Kind)
	if len(d.between) > 1 {
		n += " " + itoa(i+1)
	}
	at.path = whole.path + "." + underscore(n)
	if inner := lastName(whole.path); whole.path != whole.work.spec.Name {
		n = inner + " " + n // "drawers partition": there are others
	}
	switch s.Kind {
	case design.Partition:
		return b.partition(s, n, at, d.between[i])
	case design.Rail:
		return b.webFrame(s, n, at, d.between[i])
	}
	return b.divider(s, n, at, d.between[i])
}

// divider is a board the full depth of the space, housed at both ends.
func (b *builder) divider(s *design.Between, name string, at bay, thick why.Size) *Part {
	w := at.work
	housed := b.housingDepth(s.Housed, at.left, at.right)
	p := &Part{Path: at.path, Name: name, Wood: b.wood(s.Wood, w.spec.Wood), Thickness: thick, Show: joinery.High, At: s.At,
		Length: why.Sum("length of the "+name, why.Plus(at.width.Named("opening width")), why.Times(2, housed)), Shoulder: at.width}
	b.flatTo(w, p, at.corner.X-w.at.X-housed.Length(), at.corner.Z-w.at.Z, at.depth, "width of the "+name)
	b.setBack(p, s.Setback)
	b.add(w.asm, p)
	b.house(at.left, p, joinery.Near, housed, s.Stopped, s.At)
	b.house(at.right, p, joinery.Far, housed, s.Stopped, s.At)
	return p
}

// setBack moves a flat board's front edge back.
func (b *builder) setBack(p *Part, by why.Size) {
	if !by.Given() {
		return
	}
	p.Width = why.Sum(p.Width.Name(), why.Plus(p.Width), why.Minus(by))
	p.Place.At.Y += by.Length()
	if p.Bow != nil {
		p.Bow.Offset -= by.Length()
	}
}

// partition is an upright board, housed above and below.
func (b *builder) partition(s *design.Between, name string, at bay, thick why.Size) *Part {
	w := at.work
	housed := b.housingDepth(s.Housed, at.below, at.above)
	x := at.corner.X - w.at.X
	reach := w.reach(x, x+thick.Length())
	p := &Part{Path: at.path, Name: name, Wood: b.wood(s.Wood, w.spec.Wood), Thickness: thick, Show: joinery.High, At: s.At,
		Length:   why.Sum("length of the "+name, why.Plus(at.height.Named("opening height")), why.Times(2, housed)),
		Shoulder: at.height, Width: at.depth.Named("width of the " + name)}
	if reach != 0 {
		p.Width = why.Sum("width of the "+name, why.Plus(at.depth), why.Plus(why.Rule("reach of the bow", reach,
			"how far the bow stands before the case's front plane at this "+name, "", w.bow.Spec.Chord, w.bow.Spec.Rise)))
	}
	p.Place = upright(at.corner.Add(Vec{X: thick.Length(), Y: -reach, Z: -housed.Length()}))
	if reach != 0 {
		p.Bow = b.bowFor(w.bow, joinery.W, x, x+thick.Length())
		p.Bow.Along, p.Bow.X = false, joinery.T
		w.bow.Parts = append(w.bow.Parts, p)
	}
	b.setBack(p, s.Setback)
	b.add(w.asm, p)
	b.houseInRails(at.below, p, joinery.Near, housed, s.Stopped, s.At)
	b.houseInRails(at.above, p, joinery.Far, housed, s.Stopped, s.At)
	return p
}

// webFrame is a front rail, a back rail and two runners between them: it holds
// the case and carries what is above without gluing wood across a solid side.
func (b *builder) webFrame(s *design.Between, name string, at bay, thick why.Size) *Part {
	w := at.work
	wd := b.wood(s.Wood, w.spec.Wood)
	housed := b.housingDepth(s.Housed, at.left, at.right)
	front := b.webRail(at, "front "+name, ".front_rail", wd, thick, housed, s.Width.Or(b.webWidth("front rail width", frontRailWidth, at.depth, 3)), true)
	b.setBack(front, s.Setback)
	b.add(w.asm, front)
	back := b.webRail(at, "back "+name, ".back_rail", wd, thick, housed, b.webWidth("back rail width", backRailWidth, at.depth, 4), false)
	b.add(w.asm, back)
	b.pairRails(front, back)
	for _, p := range []*Part{front, back} {
		p.At = s.At
		l := b.house(at.left, p, joinery.Near, housed, s.Stopped, s.At)
		r := b.house(at.right, p, joinery.Far, housed, s.Stopped, s.At)
		for _, j := range []*Joint{l, r} {
			if j != nil && p == back {
				j.Glued = "dry, so that the sides can move on the runners"
			}
		}
	}
	b.runners(s, name, at, wd, thick, front, back)
	return front
}

// pairRails remembers which rail stands behind which.
func (b *builder) pairRails(front, back *Part) {
	b.behind[front], back.frameBack = back, true
}

func (b *builder) webWidth(name string, most measure.Length, depth why.Size, share int64) why.Size {
	if l := depth.Length().MulDiv(1, share); l < most {
		return why.Rule(name, l, "1/"+itoa(int(share))+" of the depth, in a shallow case", "common practice, no source", depth)
	}
	return b.usual(name, most, webFrameSource)
}

func (b *builder) webRail(at bay, name, path string, wd *Wood, thick, housed, width why.Size, bowed bool) *Part {
	w := at.work
	p := &Part{Path: at.path + path, Name: name, Wood: wd, Thickness: thick, Show: joinery.High,
		Length:   why.Sum("length of the "+name, why.Plus(at.width.Named("opening width")), why.Times(2, housed)),
		Shoulder: at.width}
	x, z := at.corner.X-w.at.X-housed.Length(), at.corner.Z-w.at.Z
	if bowed {
		b.flatTo(w, p, x, z, width, "width of the "+name)
		return p
	}
	p.Width = width.Named("width of the " + name)
	p.Place = level(w.at.Add(Vec{X: x, Y: at.depth.Length() - width.Length(), Z: z}))
	return p
}

// runners carry the drawer's sides, between the two rails of a web frame.
func (b *builder) runners(s *design.Between, name string, at bay, wd *Wood, thick why.Size, front, back *Part) {
	b.sliders(at, "runner", at.path+".runner.", name+", ", wd, thick, front, back, s.At)
}

// kickers lie above the sides of a drawer under top rails and keep it from
// tipping when it is drawn: below a whole top or a web frame that is done already.
func (b *builder) kickers(d *drawerWork) {
	w := d.c.work
	if w.hasTop() || d.c.above != w.ceiling {
		return
	}
	at := d.c
	at.corner.Z += at.height.Length()
	b.sliders(at, "kicker", d.o.Path+".kicker.", strings.Join(strings.Split(d.o.Path, ".")[1:], " ")+", ", b.wood(w.spec.TopRails.Wood, w.spec.Wood), w.top, w.ceiling, b.behind[w.ceiling], w.spec.TopRails.At)
}

// sliders are a pair of bearers from a front to a back rail along both sides of
// a space: stub tenons in front, loose behind. A gap at the rear shoulder lets
// the case's sides shrink without pushing the rails apart.
func (b *builder) sliders(at bay, what, path, name string, wd *Wood, thick why.Size, front, back *Part, span diag.Span) {
	w := at.work
	frontEdge := front.Place.At.Y - w.at.Y + front.Width.Length()
	clearRun := why.Sum("between the rails", why.Plus(w.insideDepth), why.Minus(back.Width), why.Minus(b.rearEdge(front, frontEdge)))
	tongue := b.usual(what+" tongue", runnerTongue, practice)
	dry := b.move(clearRun.Length(), w.wood, b.p.Air.Dry, wood.Width)
	dry.Change = -dry.Change
	gap := b.moveRule("gap at the rear shoulder", dry, clearRun, w.wood)
	shoulder := less("between its shoulders", clearRun, gap)
	wide := b.usual(what+" width", min(runnerWidth, at.width.Length().MulDiv(1, 4)), webFrameSource)
	pair := [2]*Part{}
	for i, side := range [2]string{"left", "right"} {
		x, edge := at.corner.X+wide.Length(), joinery.Back // w runs to the left: the outer edge is the far one
		if i == 1 {
			x, edge = at.corner.X+at.width.Length(), joinery.Front
		}
		p := &Part{Path: path + side, Name: name + side + " " + what, Wood: wd, Thickness: thick, Width: wide, Show: joinery.High, Edge: edge, At: span,
			Length:   why.Sum("length of the "+what, why.Plus(shoulder), why.Times(2, tongue)),
			Shoulder: shoulder,
			Place:    Place{Vec{X: x, Y: w.at.Y + frontEdge - tongue.Length(), Z: at.corner.Z}, Back, Left, Up}}
		pair[i] = b.add(w.asm, p)
		b.stubTenon(front, p, joinery.Near, tongue, span)
		b.stubTenon(back, p, joinery.Far, tongue, span)
	}
	pair[0].Mirror, pair[1].Mirror = pair[1], pair[0]
}

// rearEdge is how far behind the case's front plane a front rail ends.
func (b *builder) rearEdge(front *Part, at measure.Length) why.Size {
	if front.Bow == nil && at == front.Width.Length() {
		return front.Width
	}
	return why.Rule("back edge of the front rail", at, "its width, from where it stands; less the reach of a bow", "", front.Width)
}
