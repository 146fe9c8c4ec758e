package piece

import (
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// slabStock is the thickness of a loose top when the text is silent: common
// practice, no source.
const slabStock = 7 * measure.Inch / 8

func (b *builder) slabThickness(s *design.Slab) why.Size {
	return s.Thickness.Or(b.usual("top stock", slabStock, practice))
}

// slabOver is the thickness of the loose top on a case; none without one.
func (b *builder) slabOver(name string) why.Size {
	for _, s := range b.spec.Slabs {
		if !s.Under && s.Of.Value == name {
			return b.slabThickness(s)
		}
	}
	return why.Size{}
}

// buildSlabs makes loose tops and ledges.
func (b *builder) buildSlabs() {
	for _, s := range b.spec.Slabs {
		w, ok := b.cases[s.Of.Value]
		if !ok || w.asm == nil {
			continue // reported by the language, or with the case
		}
		b.buildSlab(s, w)
	}
}

func (b *builder) buildSlab(s *design.Slab, w *caseWork) {
	a := b.assembly(SlabAssembly, s.Name, s.Name, s.At)
	ends := s.Overhang.Ends
	length := s.Width.Or(why.Sum("length of the "+s.Name, why.Plus(w.width), why.Times(2, ends))).Named("length of the " + s.Name)
	depth := s.Depth.Or(why.Sum("depth of the "+s.Name, why.Plus(w.depth), why.Plus(s.Overhang.Front), why.Plus(s.Overhang.Back)))
	back := w.depth.Length() + s.Overhang.Back.Length()
	thick := b.slabThickness(s).Named("thickness of the " + s.Name)
	p := &Part{Path: s.Name, Name: s.Name, Wood: b.wood(s.Wood, w.spec.Wood), Length: length, Width: depth.Named("width of the " + s.Name),
		Thickness: thick, Show: joinery.High, At: s.At}
	x := (w.width.Length() - length.Length()) / 2
	front := back - depth.Length()
	front -= b.slabBow(s, w, p, x)
	up := w.height.Length()
	if s.Under {
		up = -thick.Length()
	}
	p.Place = level(w.at.Add(Vec{X: x, Y: front, Z: up}))
	p.Blank.Staves = int(s.Staves.Value)
	b.add(a, p)
	a.Size, a.Corner = [3]why.Size{length, thick, p.Width}, p.Place.At
	b.fit(TopDepth, p, "on its case", why.Size{}, why.Size{}, p.Width.Length(), p.Wood)
}

// slabBow gives a slab its bowed front and returns how far it comes forward.
// A curve that spans the slab is its front; one that spans the case below is
// carried out by the overhang in front and runs on straight beyond the case.
func (b *builder) slabBow(s *design.Slab, w *caseWork, p *Part, x measure.Length) measure.Length {
	c, ok := b.curves[s.Front.Value]
	if !ok {
		return 0
	}
	span := c.Shape.Span()
	bow := b.bowFor(c, joinery.W, 0, span)
	switch span {
	case p.Length.Length():
	case w.width.Length():
		bow.From, bow.To = x, span-x
		bow.Offset = s.Overhang.Front.Length()
	default:
		b.report(diag.Diagnostic{Code: "E331", Severity: diag.Error, Subject: s.Front.At,
			Summary: "the curve " + quote(c.Name) + " spans " + b.fmt(span) + "; " + quote(s.Name) + " is " + b.fmt(p.Length.Length()) + " long and its case " + b.fmt(w.width.Length()) + " wide",
			Detail:  "Make chord and flats together one of the two.", Related: []diag.Related{{Span: c.Spec.At, Message: "the curve"}}})
		return 0
	}
	p.Bow = bow
	p.Width = why.Sum(p.Width.Name(), why.Plus(p.Width), why.Plus(why.Rule("rise of the bow", bow.Crown, "how far the curve stands before its chord", "", c.Spec.Chord, c.Spec.Rise)))
	c.Parts = append(c.Parts, p)
	return bow.Crown
}
