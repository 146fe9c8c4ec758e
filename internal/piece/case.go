package piece

import (
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// caseWork is a case while it is being built.
type caseWork struct {
	spec *design.Case
	asm  *Assembly
	wood *Wood
	at   Vec // left front bottom corner, outside
	bow  *Curve

	width, height, depth          why.Size // outside; depth at the sides
	side, top, bottom             why.Size // thicknesses
	insideW, insideH, insideDepth why.Size
	rabbet, inset                 why.Size // of the back; not given without one

	left, right, ceiling, floor *Part // the case's boards
}

// hasTop reports whether the case has a whole top and not two rails.
func (w *caseWork) hasTop() bool { return w.spec.TopRails == nil }

// usualStock is the thickness of case boards when the text is silent.
const usualStock = 3 * measure.Inch / 4

func (b *builder) buildCase(c *design.Case) {
	w := &caseWork{spec: c, wood: b.wood(c.Wood)}
	b.cases[c.Name] = w
	if !b.caseSizes(w) {
		return
	}
	w.asm = b.assembly(CaseAssembly, c.Name, c.Name, c.At)
	w.at = b.caseCorner(w)
	w.asm.Corner, w.asm.Size = w.at, [3]why.Size{w.width, w.height, w.depth}
	b.fills("width of "+c.Name, w.width, w.side, w.insideW, w.side)
	b.fills("height of "+c.Name, w.height, w.top, w.insideH, w.bottom)
	b.caseBoards(w)
	b.caseCorners(w)
	b.buildBack(w)
	b.buildCleat(w)
	b.fillSpace(&c.Inside, bay{
		path: c.Name, work: w,
		width: w.insideW, height: w.insideH, depth: w.insideDepth,
		corner: w.at.Add(Vec{X: w.side.Length(), Z: w.bottom.Length()}),
		left:   w.left, right: w.right, below: w.floor, above: w.ceiling,
	})
}

// caseSizes works out the case's thicknesses and what they leave inside.
func (b *builder) caseSizes(w *caseWork) bool {
	c := w.spec
	w.width, w.height, w.depth = c.Width.Named("case width"), c.Height.Named("case height"), c.Depth.Named("case depth")
	stock := c.Thickness.Or(b.usual("case stock", usualStock, "common practice, no source"))
	w.side = c.Sides.Or(stock).Named("side thickness")
	w.top = c.Top.Or(stock).Named("top thickness")
	w.bottom = c.Bottom.Or(stock).Named("bottom thickness")
	if c.TopRails != nil {
		w.top = c.TopRails.Thickness.Or(stock).Named("top rail thickness")
	}
	w.insideW = why.Sum("inside width", why.Plus(w.width), why.Times(-2, w.side))
	w.insideH = why.Sum("inside height", append([]why.Term{why.Plus(w.height)}, gather([]why.Size{w.top, w.bottom})...)...)
	w.insideDepth = w.depth.Named("inside depth")
	if c.Back != nil && c.Back.Style.Value != "none" {
		b.backSizes(w)
		w.insideDepth = why.Sum("inside depth", why.Plus(w.depth), why.Minus(w.inset))
	}
	w.bow = b.bowOf(c.Front, c.Width)
	return b.roomInside(w)
}

// roomInside reports a case whose boards leave nothing inside.
func (b *builder) roomInside(w *caseWork) bool {
	for _, s := range []why.Size{w.insideW, w.insideH, w.insideDepth} {
		if s.Length() >= smallestOpening {
			continue
		}
		b.report(diag.Diagnostic{Code: "E313", Severity: diag.Error, Subject: orSpan(w.side.At(), orSpan(s.At(), w.spec.At)), Where: w.spec.Name,
			Summary: "the boards of case " + quote(w.spec.Name) + " leave nothing inside: its " + s.Name() + " would be " + b.fmt(s.Length()),
			Detail:  s.Name() + " is " + s.Sum(b.fmt) + ". Make the case larger or its boards thinner."})
		return false
	}
	return true
}

func orSpan(a, b diag.Span) diag.Span {
	if a.IsZero() {
		return b
	}
	return a
}

// caseCorner is where the case stands: on what carries it, backs flush and
// middles in line.
func (b *builder) caseCorner(w *caseWork) Vec {
	z := b.standHeight(w.spec.Name)
	below := b.caseBelow(w.spec)
	if below == nil {
		return Vec{Z: z}
	}
	under, ok := b.cases[below.Name]
	if !ok {
		return Vec{Z: z}
	}
	at := under.at
	at.X += (under.width.Length() - w.width.Length()) / 2
	at.Y += under.depth.Length() - w.depth.Length()
	at.Z += under.height.Length() + b.slabOver(below.Name).Length() + z
	return at
}

// caseBoards makes sides, top (or top rails) and bottom. What a joint adds to
// a board's length is decided with the joint, in corners.go.
func (b *builder) caseBoards(w *caseWork) {
	sideLength, endLength := b.cornerLengths(w)
	sideWidth := w.depth.Named("width of the sides")
	if w.bow != nil {
		sideWidth = why.Sum("width of the sides", why.Plus(w.depth),
			why.Plus(why.Rule("bevel to the bow", w.reach(0, w.side.Length()), "how far the bow comes forward across the side's thickness", "", w.side)))
	}
	y := w.depth.Length() - sideWidth.Length()
	drop := b.sideDrop(w)
	w.left = b.add(w.asm, &Part{Path: w.spec.Name + ".side.left", Name: "left side", Wood: w.wood,
		Length: sideLength, Width: sideWidth, Thickness: w.side, Show: joinery.High,
		Place: upright(w.at.Add(Vec{X: w.side.Length(), Y: y, Z: drop}))})
	w.right = b.add(w.asm, &Part{Path: w.spec.Name + ".side.right", Name: "right side", Wood: w.wood,
		Length: sideLength, Width: sideWidth, Thickness: w.side, Show: joinery.Low,
		Place: upright(w.at.Add(Vec{X: w.width.Length(), Y: y, Z: drop}))})
	w.left.Mirror, w.right.Mirror = w.right, w.left
	w.left.Shoulder, w.right.Shoulder = w.insideH, w.insideH
	if w.hasTop() {
		w.ceiling = b.endBoard(w, "top", w.top, endLength, w.height.Length()-w.top.Length(), joinery.High)
	} else {
		b.topRails(w)
	}
	w.floor = b.endBoard(w, "bottom", w.bottom, endLength, 0, joinery.Low)
	b.bevelSides(w)
}

// endBoard is a top or a bottom.
func (b *builder) endBoard(w *caseWork, name string, thick, length why.Size, up measure.Length, show joinery.Side) *Part {
	p := &Part{Path: w.spec.Name + "." + name, Name: name, Wood: w.wood, Length: length, Shoulder: w.insideW,
		Thickness: thick, Show: show}
	x := (w.width.Length() - length.Length()) / 2
	b.flatTo(w, p, x, up, w.depth, "width of the "+name)
	return b.add(w.asm, p)
}

// flatTo lays a board flat in the case with its front on the case's front, be
// that straight or bowed: deep is its depth at the case's front plane.
func (b *builder) flatTo(w *caseWork, p *Part, x, up measure.Length, deep why.Size, name string) {
	p.Width = deep.Named(name)
	front := measure.Length(0)
	if w.bow != nil {
		x0 := max(x, 0)
		x1 := min(x+p.Length.Length(), w.width.Length())
		p.Bow = b.bowFor(w.bow, joinery.W, x0, x1)
		front = p.Bow.Crown
		p.Width = why.Sum(name, why.Plus(deep), why.Plus(why.Rule("reach of the bow", front,
			"how far the bow stands before the case's front plane along this board", "", w.bow.Spec.Chord, w.bow.Spec.Rise)))
		w.bow.Parts = append(w.bow.Parts, p)
	}
	p.Place = level(w.at.Add(Vec{X: x, Y: -front, Z: up}))
}
