package piece

import (
	"strings"

	"casewright/internal/design"
	"casewright/internal/why"
)

// fillOpening records a clear opening and builds what fills it.
func (b *builder) fillOpening(s *design.Space, c bay) {
	o := &Opening{Path: c.path, Name: openingName(c.path), Width: c.width.Named("opening width"), Height: c.height.Named("opening height"),
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

// openingName is the last name of a path, with the one before it where it is
// but a number: "bank 1".
func openingName(path string) string {
	names := strings.Split(path, ".")
	from := len(names) - 1
	for from > 0 && strings.Trim(names[from], "0123456789") == "" {
		from--
	}
	return strings.Join(names[from:], " ")
}

// takeOpening lets what the rule said override what the design says, from the
// opening on: the parts that fill it follow.
func (b *builder) takeOpening(o *Opening) {
	for _, m := range b.spec.Measured {
		if m.Path.Value != o.Path {
			continue
		}
		o.Planned = [3]why.Size{o.Width, o.Height, o.Depth}
		o.Width, o.Height, o.Depth = read(m.Width).Or(o.Width), read(m.Height).Or(o.Height), read(m.Depth).Or(o.Depth)
		o.Measured = m.Width.Given() && m.Height.Given() // until both are, what fills it still waits
		b.used(m)
	}
}

// read is a size of the text that was read off the rule and not chosen.
func read(s why.Size) why.Size {
	if !s.Given() {
		return s
	}
	return why.Read("measured "+s.Name(), s.Length(), s.At(), s.TypedAs())
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

// nameFills calls each drawer and door by as few of the names of its opening,
// from the inside out, as tell it from the others: "left drawer", "keys door".
func (b *builder) nameFills() {
	for _, a := range b.p.Assemblies {
		if a.Opening == nil {
			continue
		}
		for n := 1; ; n++ {
			name, all := a.fillName(n)
			a.Name = name
			if all || b.unique(a, n) {
				break
			}
		}
	}
}

func (b *builder) unique(a *Assembly, n int) bool {
	for _, o := range b.p.Assemblies {
		if o != a && o.Opening != nil && o.Kind == a.Kind {
			if name, _ := o.fillName(n); name == a.Name {
				return false
			}
		}
	}
	return true
}

// fillName is the name from the last n names of the opening; all reports that
// there are no more. A name that only says what fills the opening adds
// nothing, and a number is nothing without the name before it.
func (a *Assembly) fillName(n int) (name string, all bool) {
	what := string(a.Kind)
	names := strings.Split(a.Opening.Path, ".")
	if k := len(names); strings.HasPrefix(names[k-1], what) {
		names, n = names[:k-1], n-1
	}
	from := max(0, len(names)-n)
	for from > 0 && from < len(names) && strings.Trim(names[from], "0123456789") == "" {
		from--
	}
	words := append(names[from:], what)
	if a.hand != "" {
		words = append(names[from:], a.hand, what)
	}
	return strings.Join(words, " "), from == 0
}

// less is a size with others taken away from it, like ones together.
func less(name string, from why.Size, by ...why.Size) why.Size {
	return why.Sum(name, append([]why.Term{why.Plus(from)}, gather(by)...)...)
}
