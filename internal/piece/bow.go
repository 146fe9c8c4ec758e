package piece

import (
	"casewright/internal/curve"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// declareCurves shapes every curve the text names, once: all parts that follow
// one cite the same.
func (b *builder) declareCurves() {
	for _, c := range b.spec.Curves {
		shape, err := curve.New(curve.Spec{Kind: curveKind(c.Shape.Value), Chord: c.Chord.Length(), Rise: c.Rise.Length(),
			FlatLeft: c.Flats.Length(), FlatRight: c.Flats.Length()})
		if err != nil {
			b.report(diag.Diagnostic{Code: "E330", Severity: diag.Error, Subject: c.At, Where: c.Name,
				Summary: "the curve " + quote(c.Name) + " cannot be drawn", Detail: err.Error()})
			continue
		}
		k := &Curve{Name: c.Name, Spec: c, Shape: shape}
		b.curves[c.Name] = k
		b.p.Curves = append(b.p.Curves, k)
	}
}

func curveKind(shape string) curve.Kind {
	if shape == "batten" {
		return curve.Batten
	}
	return curve.Arc
}

// bowOf finds the curve a front follows and checks that it spans the width.
func (b *builder) bowOf(name design.Text, width why.Size) *Curve {
	c, ok := b.curves[name.Value]
	if !ok {
		return nil // not given, or reported already
	}
	if off := width.Length() - c.Shape.Span(); off != 0 {
		b.report(diag.Diagnostic{Code: "E331", Severity: diag.Error, Subject: name.At,
			Summary: "the curve " + quote(c.Name) + " spans " + b.fmt(c.Shape.Span()) + ", what follows it is " + b.fmt(width.Length()) + " wide",
			Detail:  "Make chord and flats together " + b.fmt(width.Length()) + ", or the width " + b.fmt(c.Shape.Span()) + ".",
			Related: []diag.Related{{Span: c.Spec.At, Message: "the curve"}}})
		return nil
	}
	return c
}

// ordinate is how far the curve stands before the line between its ends.
func (c *Curve) ordinate(x measure.Length) measure.Length { return c.Shape.Ordinate(x) }

// least is the smallest ordinate on a stretch.
func (c *Curve) least(x0, x1 measure.Length) measure.Length {
	least, _ := c.Shape.Reach(x0, x1)
	return least
}

// reach is the greatest ordinate of the case's bow between two places of its
// width; none without a bow.
func (w *caseWork) reach(x0, x1 measure.Length) measure.Length {
	if w.bow == nil {
		return 0
	}
	_, most := w.bow.Shape.Reach(x0, x1)
	return most
}

// bowFor describes the stretch of a curve that one part follows.
func (b *builder) bowFor(c *Curve, axis joinery.Axis, x0, x1 measure.Length) *Bow {
	least, most := c.Shape.Reach(x0, x1)
	return &Bow{Curve: c, Axis: axis, Along: true, From: x0, To: x1, Crown: most, Fall: most - least, Chordal: c.Shape.Sagitta(x0, x1)}
}
