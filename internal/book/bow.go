package book

import (
	"fmt"

	"casewright/internal/curve"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// curves gives each curve a sheet.
func (m *maker) curves() error {
	for _, c := range m.p.Curves {
		if err := m.curveSheet(c); err != nil {
			return err
		}
	}
	return nil
}

// stationStep is the distance of ordinates: 1 in or 25 mm, more for long curves.
func (m *maker) stationStep(c *piece.Curve) measure.Length {
	step := measure.Inch
	if m.fine.Unit == measure.Millimetres {
		step = 25 * measure.Millimetre
	}
	for c.Shape.Span() > 44*step {
		step *= 2
	}
	return step
}

func (m *maker) curveSheet(c *piece.Curve) error {
	step := m.stationStep(c)
	stations, err := c.Shape.Ordinates(step)
	if err != nil {
		return fmt.Errorf("curve %q: %w", c.Name, err)
	}
	f := m.flow("The curve “" + c.Name + "”")
	m.mark("curve " + c.Name)
	f.lead("One line for every part that follows it: make one template, and mark all of them from it.")
	m.drawCurve(f, c, stations)
	m.curveFacts(f, c)
	m.ordinates(f, stations, step)
	m.curveParts(f, c)
	return nil
}

// drawCurve draws the line with its ordinates, true to scale both ways.
func (m *maker) drawCurve(f *flow, c *piece.Curve, stations []curve.Station) {
	span := c.Shape.Span().Millimetres()
	_, most := c.Shape.Reach(c.Shape.Ends())
	model := sheet.Box{W: span, H: most.Millimetres()}
	room := sheet.Box{X: f.box.X, Y: f.y + 8, W: f.box.W, H: 70}
	v := sheet.FitView(model, room.Inset(8), belowFull(m.scales))
	v = sheet.ViewAt(model, sheet.Pt(room.X+(room.W-v.OnPaper().W)/2, f.y+8), v.Scale)
	for _, s := range stations {
		f.d.add(sheet.Line{A: v.Pt(s.X, 0), B: v.Pt(s.X, s.Y), Pen: sheet.Pen{Width: 0.13, Ink: sheet.Dark}})
	}
	f.d.add(sheet.Line{A: v.Pt(0, 0), B: v.Pt(span, 0), Pen: sheet.Pen{Width: 0.25, Stroke: sheet.Chain}})
	f.d.add(bezierPath(c.Shape, v, 0, span))
	dims := sheet.Dimensions(v.OnPaper(), sheet.DimStyle{Size: 9, First: 7, Further: 7}, m.curveDims(c, v)...)
	f.d.add(dims.Group)
	f.d.scale, f.d.views = v.Scale.String(), false
	f.y = v.OnPaper().Bottom() + dims.Room.Bottom + 7
}

func belowFull(scales []sheet.Scale) []sheet.Scale {
	var out []sheet.Scale
	for _, s := range scales {
		if s.Ratio() <= 1 {
			out = append(out, s)
		}
	}
	return out
}

// bezierPath is the curve itself on paper.
func bezierPath(c *curve.Curve, v sheet.View, from, to float64) sheet.Item {
	pieces := c.Beziers(from, to, 0.01/v.Scale.Ratio())
	if len(pieces) == 0 {
		return sheet.All()
	}
	at := func(p curve.Point) sheet.Point { return v.Pt(p.X, p.Y) }
	path := sheet.Path{Start: at(pieces[0][0]), Pen: sheet.Wide}
	for _, b := range pieces {
		path.Segments = append(path.Segments, sheet.Segment{Curve: true, C1: at(b[1]), C2: at(b[2]), To: at(b[3])})
	}
	return path
}

func (m *maker) curveDims(c *piece.Curve, v sheet.View) []sheet.Dim {
	left, right := c.Shape.Bow()
	from, to := c.Shape.Ends()
	_, most := c.Shape.Reach(from, to)
	dims := []sheet.Dim{v.Chain(sheet.Below, m.rule, from, to), v.Chain(sheet.LeftOf, m.rule, 0, most)}
	if left > from || right < to {
		dims = append(dims, v.Chain(sheet.Below, m.rule, from, left, right, to))
	}
	return dims
}

// curveFacts are what the curve is, in a few lines.
func (m *maker) curveFacts(f *flow, c *piece.Curve) {
	radius, _ := c.Shape.MinRadius()
	word := "tightest radius"
	if r, ok := c.Shape.Radius(); ok {
		radius, word = r, "radius"
	}
	t := sheet.Table{Columns: []sheet.Column{{Title: "line", Weight: 2}, {Title: "chord"}, {Title: "rise"}, {Title: "length along it", Weight: 1.2}, {Title: word, Weight: 1.2}, {Title: "angle at its ends", Weight: 1.2}}}
	t.Rows = []sheet.Row{{Cells: sheet.Words(c.Shape.Law(), m.size(c.Spec.Chord), m.size(c.Spec.Rise), m.rule.Format(c.Shape.Length()),
		m.rule.Format(radius), fmt.Sprintf("%.1f°", c.Shape.EndAngle().Degrees()))}}
	f.table(t)
}

// ordinates is the table, in columns side by side. A curve that mirrors itself
// is given from the middle outwards, once.
func (m *maker) ordinates(f *flow, stations []curve.Station, step measure.Length) {
	f.head("Ordinates from the middle, the same to both sides", 30)
	f.para("Square up from the chord every "+m.unit(step)+"; the exact size stands beside the mark of the rule.", sheet.Paragraph{Size: 9.5})
	var half []curve.Station
	for _, s := range stations {
		if s.FromCentre >= -1e-6 {
			half = append(half, s)
		}
	}
	const columns = 3
	each := (len(half) + columns - 1) / columns
	t := sheet.Table{}
	for range columns {
		t.Columns = append(t.Columns, sheet.Column{Title: "from the middle", Width: 21, Align: sheet.OnFigure, Face: lettering.Bold},
			sheet.Column{Title: "up from the chord", Width: 20, Align: sheet.OnFigure}, sheet.Column{Title: "exact"})
	}
	for i := range each {
		var r sheet.Row
		for k := range columns {
			if j := k*each + i; j < len(half) {
				r.Cells = append(r.Cells, m.station(half[j])...)
			}
		}
		t.Rows = append(t.Rows, r)
	}
	f.table(t)
}

func (m *maker) station(s curve.Station) []sheet.Cell {
	x, y := lengthOf(s.FromCentre), lengthOf(s.Y)
	return []sheet.Cell{{Text: m.fine.Format(x)}, {Text: m.fine.Format(y)}, {Text: m.thousandths(y), Ink: sheet.Dark}}
}

func lengthOf(mm float64) measure.Length {
	return measure.Length(mm*float64(measure.Millimetre) + 0.5)
}

// offMiddle is a place along the chord, said from the middle.
func (m *maker) offMiddle(l measure.Length) string {
	switch {
	case l < 0:
		return m.gap(-l) + " left"
	case l > 0:
		return m.gap(l) + " right"
	}
	return "the middle"
}

// curveParts are the parts that follow it, each with its stretch.
func (m *maker) curveParts(f *flow, c *piece.Curve) {
	if len(c.Parts) == 0 {
		return
	}
	f.head("Parts that follow it", 24)
	f.para("Each follows its own stretch, measured along the chord from the middle.", sheet.Paragraph{Size: 9.5})
	middle := c.Shape.Span() / 2
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "part", Face: lettering.Bold, Weight: 1.2}, {Title: "assembly"}, {Title: "from", Width: 24},
		{Title: "to", Width: 24}, {Title: "bulge on its own chord", Width: 26}, {Title: "off the line", Width: 22},
	}}
	for _, p := range c.Parts {
		off := ""
		if p.Bow.Offset != 0 {
			off = m.gap(p.Bow.Offset.Abs()) + " inside"
			if p.Bow.Offset > 0 {
				off = m.gap(p.Bow.Offset) + " outside"
			}
		}
		t.Rows = append(t.Rows, sheet.Row{Cells: sheet.Words(called(p), assemblyName(p.Assembly), m.offMiddle(p.Bow.From-middle), m.offMiddle(p.Bow.To-middle), m.gap(p.Bow.Chordal), off)})
	}
	f.table(t)
}
