package piece

import (
	"fmt"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// What shelves are made of when the text is silent.
const (
	pinSlack   = measure.Inch / 16 // each end of a shelf on pins: common practice, no source
	shelfFront = measure.Inch / 8  // a shelf stays this far behind a door: common practice, no source
)

// fixedShelf is a board housed in the sides of an opening at a given height.
func (b *builder) fixedShelf(s *design.Shelf, c bay, i, n int) {
	name := shelfName(s.Name, i, n)
	thick := s.Thickness.Or(b.usual("shelf stock", usualStock, practice)).Named("shelf thickness")
	over := why.Sum("left above the "+name, why.Plus(c.height), why.Minus(s.Up), why.Minus(thick))
	if over.Length() < 0 {
		b.report(diag.Diagnostic{Code: "E316", Severity: diag.Error, Subject: orSpan(s.Up.At(), s.At), Where: c.path,
			Summary: fmt.Sprintf("the %s would be above its opening: it is up %s, the opening is %s high", name, b.fmt(s.Up.Length()), b.fmt(c.height.Length())),
			Detail:  "Set up to less than " + b.fmt(c.height.Length()-thick.Length()) + "."})
		return
	}
	housed := b.housingDepth(s.Housed, c.left, c.right)
	p := &Part{Path: c.path + "." + underscore(name), Name: name, Wood: b.wood(s.Wood, c.work.spec.Wood), Thickness: thick, Show: joinery.High, At: s.At,
		Length: why.Sum("length of the "+name, why.Plus(c.width), why.Times(2, housed)), Shoulder: c.width}
	deep := s.Depth.Or(c.depth)
	x, z := c.corner.X-c.work.at.X-housed.Length(), c.corner.Z+s.Up.Length()-c.work.at.Z
	b.flatTo(c.work, p, x, z, deep, "width of the "+name)
	b.toBack(p, c, deep)
	b.add(c.work.asm, p)
	b.house(c.left, p, joinery.Near, housed, why.Size{}, s.At)
	b.house(c.right, p, joinery.Far, housed, why.Size{}, s.At)
}

// shelfName is the shelf's own name, or "shelf" with its number where there
// are several: the language numbers those without a name.
func shelfName(label string, i, n int) string {
	switch {
	case label != "" && label != itoa(i+1):
		return label
	case n > 1:
		return "shelf " + itoa(i+1)
	}
	return "shelf"
}

// toBack moves a shelf shallower than its opening back against the case's back.
func (b *builder) toBack(p *Part, c bay, deep why.Size) {
	if back := c.depth.Length() - deep.Length(); back > 0 {
		p.Place.At.Y += back
		p.Bow, p.Width = nil, deep.Named(p.Width.Name())
		p.Place.At.Y = c.work.at.Y + back
	}
}

// shelves makes a set of like shelves: on pins, or housed and evenly spaced.
func (b *builder) shelves(s *design.Shelves, door *design.Door, c bay) {
	n := int(s.Count.Value)
	if n < 1 {
		return
	}
	thick := s.Thickness.Or(b.usual("shelf stock", usualStock, practice)).Named("shelf thickness")
	deep := s.Depth.Or(b.behindDoor(door, c)).Named("shelf depth")
	left := why.Sum("left between the shelves", why.Plus(c.height), why.Times(-int64(n), thick))
	if left.Length() < smallestOpening*measure.Length(n+1) {
		b.report(diag.Diagnostic{Code: "E317", Severity: diag.Error, Subject: s.At, Where: c.path,
			Summary: fmt.Sprintf("%d shelves leave nothing between them: %s of the opening's %s", n, b.fmt(left.Length()), b.fmt(c.height.Length())),
			Detail:  "Ask for fewer shelves or thinner ones."})
		return
	}
	gaps := measure.Split(left.Length(), n+1)
	up := measure.Length(0)
	var ups []measure.Length
	for i := range n {
		up += gaps[i]
		ups = append(ups, up)
		b.oneOfShelves(s, c, i, up, thick, deep)
		up += thick.Length()
	}
	if s.Adjustable.Value {
		b.pinHoles(s, c, ups, deep)
	}
}

func (b *builder) behindDoor(door *design.Door, c bay) why.Size {
	if door == nil || door.Mount.Value == "overlay" {
		return c.depth
	}
	thick := door.Thickness.Or(b.usual("door stock", doorStock, aws))
	return less("depth behind the door", c.depth, thick, b.usual("clear of the door", shelfFront, practice))
}

func (b *builder) oneOfShelves(s *design.Shelves, c bay, i int, up measure.Length, thick, deep why.Size) {
	if b.tooMany(s.At) {
		return
	}
	name := "shelf " + itoa(i+1)
	p := &Part{Path: c.path + ".shelf." + itoa(i+1), Name: name, Wood: b.wood(s.Wood, c.work.spec.Wood), Thickness: thick, Show: joinery.High, At: s.At}
	if s.Adjustable.Value {
		slack := b.usual("slack at each end", pinSlack, practice)
		p.Length = why.Sum("length of a shelf on pins", why.Plus(c.width), why.Times(-2, slack))
		b.layShelf(p, c, slack.Length(), up, deep)
		b.add(c.work.asm, p)
		return
	}
	housed := b.housingDepth(why.Size{}, c.left, c.right)
	p.Length, p.Shoulder = why.Sum("length of the "+name, why.Plus(c.width), why.Times(2, housed)), c.width
	b.layShelf(p, c, -housed.Length(), up, deep)
	b.add(c.work.asm, p)
	b.house(c.left, p, joinery.Near, housed, why.Size{}, s.At)
	b.house(c.right, p, joinery.Far, housed, why.Size{}, s.At)
}

func (b *builder) layShelf(p *Part, c bay, x, up measure.Length, deep why.Size) {
	b.flatTo(c.work, p, c.corner.X-c.work.at.X+x, c.corner.Z-c.work.at.Z+up, deep, "width of "+p.Name)
	b.toBack(p, c, deep)
}
