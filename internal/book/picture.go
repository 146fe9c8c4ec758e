package book

import (
	"math"
	"slices"

	"casewright/internal/sheet"
	"casewright/internal/solid"
	"casewright/internal/solid/view"
)

// quill is how the lines of a picture are drawn.
type quill struct {
	outline, edge, hidden sheet.Pen
	fill                  func(f view.Fill) sheet.Shade // nil for no shading
}

var (
	shopQuill    = quill{outline: sheet.Pen{Width: 0.5}, edge: sheet.Pen{Width: 0.25}, hidden: sheet.Pen{Width: 0.18, Stroke: sheet.Dashed}}
	smallQuill   = quill{outline: sheet.Pen{Width: 0.3}, edge: sheet.Pen{Width: 0.18}, hidden: sheet.Pen{Width: 0.13, Stroke: sheet.Dashed}}
	pictureQuill = quill{outline: sheet.Pen{Width: 0.35}, edge: sheet.Pen{Width: 0.18}, fill: daylight}
)

// daylight shades a face by how it stands to a light from the upper left in
// front. What a section cut through is darker than any face.
func daylight(f view.Fill) sheet.Shade {
	if f.Tag == view.CapTag {
		return 22
	}
	n := f.Normal
	light := (-0.35*n.X - 0.65*n.Y + 0.68*n.Z) // the light's direction has length one
	return sheet.Shade(2 + math.Round(8*(1-math.Max(-0.4, light))))
}

// ink draws a picture on paper: areas first, then thin lines, then outlines.
func (q quill) ink(d view.Drawing, v sheet.View) []sheet.Item {
	var out []sheet.Item
	if q.fill != nil {
		for _, f := range d.Fills {
			rings := [][]sheet.Point{ring(f.Outer)}
			for _, h := range f.Holes {
				rings = append(rings, ring(h))
			}
			out = append(out, sheet.Polygon{Rings: onPaper(rings, v), Fill: q.fill(f)})
		}
	}
	for _, l := range []struct {
		pen  sheet.Pen
		mine func(l view.Line) bool
	}{
		{q.hidden, func(l view.Line) bool { return l.Hidden }},
		{q.edge, func(l view.Line) bool { return !l.Hidden && l.Kind != view.Outline }},
		{q.outline, func(l view.Line) bool { return !l.Hidden && l.Kind == view.Outline }},
	} {
		if l.pen.Width == 0 {
			continue
		}
		for _, run := range onPaper(strokes(d.Lines, l.mine), v) {
			out = append(out, sheet.Polyline{Points: run, Pen: l.pen})
		}
	}
	return out
}

func ring(pts []view.Point2) []sheet.Point {
	out := make([]sheet.Point, len(pts))
	for i, p := range pts {
		out[i] = sheet.Pt(p.X, p.Y)
	}
	return out
}

// strokes joins lines that follow one another, so that dashes run on round the
// facets of a curve.
func strokes(lines []view.Line, mine func(view.Line) bool) [][]sheet.Point {
	var k linker
	for _, l := range lines {
		if mine(l) {
			k.add(sheet.Pt(l.A.X, l.A.Y), sheet.Pt(l.B.X, l.B.Y))
		}
	}
	return k.runs()
}

// runs walks the edges to lines that end where none or several others meet.
func (k *linker) runs() [][]sheet.Point {
	at := map[spot][]int{}
	for i, e := range k.edges {
		at[spotOf(e[0])] = append(at[spotOf(e[0])], i)
		at[spotOf(e[1])] = append(at[spotOf(e[1])], i)
	}
	used := make([]bool, len(k.edges))
	follow := func(run []sheet.Point) []sheet.Point {
		for {
			last := run[len(run)-1]
			if len(at[spotOf(last)]) != 2 {
				return run
			}
			i, p := k.next(at, used, run[len(run)-2], last)
			if i < 0 {
				return run
			}
			used[i] = true
			run = append(run, p)
		}
	}
	var out [][]sheet.Point
	for i, e := range k.edges {
		if used[i] {
			continue
		}
		used[i] = true
		run := follow([]sheet.Point{e[0], e[1]})
		slices.Reverse(run)
		out = append(out, follow(run))
	}
	return out
}

// boundsOf is the room a picture takes, as a model of the sheet.
func boundsOf(d view.Drawing) sheet.Box {
	b := d.Bounds
	return sheet.Box{X: b.Min.X, Y: b.Min.Y, W: b.Max.X - b.Min.X, H: b.Max.Y - b.Min.Y}
}

// owners tells which body is seen where, on a grid over a picture.
type owners struct {
	m     *maker
	box   sheet.Box
	cell  float64
	w, h  int
	cells []int32 // place in the model's bodies, -1 for none
}

// gridAcross is fine enough for a part that has room for a dot.
const gridAcross = 420

func (m *maker) ownersOf(d view.Drawing) *owners {
	b := boundsOf(d)
	o := &owners{m: m, box: b, cell: math.Max(b.W, b.H) / gridAcross}
	o.w, o.h = int(b.W/o.cell)+1, int(b.H/o.cell)+1
	o.cells = make([]int32, o.w*o.h)
	for i := range o.cells {
		o.cells[i] = -1
	}
	for _, f := range d.Fills {
		o.paint(f)
	}
	return o
}

// paint fills an outline with its body, row by row.
func (o *owners) paint(f view.Fill) {
	rings := append([][]view.Point2{f.Outer}, f.Holes...)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range f.Outer {
		lo, hi = math.Min(lo, p.Y), math.Max(hi, p.Y)
	}
	for j := max(0, int((lo-o.box.Y)/o.cell)); j < o.h && o.box.Y+float64(j)*o.cell <= hi; j++ {
		y := o.box.Y + (float64(j)+0.5)*o.cell
		var xs []float64
		for _, r := range rings {
			for i, p := range r {
				q := r[(i+1)%len(r)]
				if (p.Y <= y) != (q.Y <= y) {
					xs = append(xs, p.X+(y-p.Y)/(q.Y-p.Y)*(q.X-p.X))
				}
			}
		}
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			for c := max(0, int((xs[i]-o.box.X)/o.cell+0.5)); c < o.w && o.box.X+(float64(c)+0.5)*o.cell <= xs[i+1]; c++ {
				o.cells[j*o.w+c] = int32(f.Body)
			}
		}
	}
}

// at is the part seen at a place of the picture, nil where there is none.
func (o *owners) at(p sheet.Point) *body {
	c, j := int(math.Floor((p.X-o.box.X)/o.cell)), int(math.Floor((p.Y-o.box.Y)/o.cell))
	if c < 0 || j < 0 || c >= o.w || j >= o.h || o.cells[j*o.w+c] < 0 {
		return nil
	}
	return o.m.bodies[o.cells[j*o.w+c]]
}

// drawing makes a picture once for all the times the book is written.
func (m *maker) drawing(key string, draw func() view.Drawing) view.Drawing {
	if d, ok := m.drawings[key]; ok {
		return d
	}
	d := draw()
	m.drawings[key] = d
	return d
}

// solidOf is the solid of a part, nil where it has no shape.
func (m *maker) solidOf(b *body) *solid.Body {
	s := m.model.Body(b.part)
	if s == nil || s.Solid == nil {
		return nil
	}
	return s
}
