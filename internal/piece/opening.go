package piece

import (
	"strings"

	"casewright/internal/design"
	"casewright/internal/why"
)

// fillOpening records a clear opening and builds what fills it.
func (b *builder) fillOpening(s *design.Space, c bay) {
	o := &Opening{Path: c.path, Name: lastName(c.path), Width: c.width.Named("opening width"), Height: c.height.Named("opening height"),
		Depth: c.depth.Named("opening depth"), Corner: c.corner, Case: c.work.asm, Fill: s.Fill, Bow: c.work.bow,
		BowFrom: c.corner.X - c.work.at.X, At: s.At}
	b.p.Openings = append(b.p.Openings, o)
	b.takeOpening(o)
	c.width, c.height, c.depth = o.Width, o.Height, o.Depth
	f := s.Fill
	for i, shelf := range f.Fixed {
		b.fixedShelf(shelf, c, i, len(f.Fixed))
	}
	if f.Shelves != nil {
		b.shelves(f.Shelves, f.Door, c)
	}
	if f.Drawer != nil {
		b.buildDrawer(f.Drawer, o, c)
	}
	if f.Door != nil {
		b.buildDoors(f.Door, o, c)
	}
}

func lastName(path string) string { return path[strings.LastIndexByte(path, '.')+1:] }

// takeOpening lets what the rule said override what the design says, from the
// opening on: the parts that fill it follow.
func (b *builder) takeOpening(o *Opening) {
	for _, m := range b.spec.Measured {
		if m.Path.Value != o.Path {
			continue
		}
		o.Width, o.Height, o.Depth = m.Width.Or(o.Width), m.Height.Or(o.Height), m.Depth.Or(o.Depth)
		o.Measured = true
		b.used(m)
	}
}

// waits marks every part of an assembly that must fit an opening not yet
// measured.
func (o *Opening) waits(a *Assembly) {
	a.Opening = o
	for _, p := range a.Parts {
		if !o.Measured {
			p.Standing, p.WaitsFor = Waits, o
		}
	}
}

// openingName is how a drawer or door is called: by the names of its opening
// below the case.
func openingName(o *Opening, what string) string {
	names := strings.Split(o.Path, ".")
	if len(names) > 1 {
		names = names[1:]
	}
	return strings.Join(names, " ") + " " + what
}

// less is a size with others taken away from it, like ones together.
func less(name string, from why.Size, by ...why.Size) why.Size {
	return why.Sum(name, append([]why.Term{why.Plus(from)}, gather(by)...)...)
}
