package sheet

import "math"

// Figure is one view of a piece before it has a place: what it shows in
// millimetres of the model, and its dimensions once the view is known. The
// zero Figure is left out.
type Figure struct {
	Name  string // printed below: "Front"
	Model Box
	Items []Item           // in the model, y up
	Dims  func(View) []Dim // nil for none
	Notes func(View) []Item
}

// Figures are the views of one piece that stand in projection: Top shares its
// x with Front, Side its y.
type Figures struct {
	Front, Top, Side Figure
	Projection       Projection // FirstAngle puts Top below Front, else above
	Style            DimStyle
}

// Arranged is a set of figures laid out.
type Arranged struct {
	Group
	Scale            Scale
	Front, Top, Side View
	Fits             bool // false if even the smallest scale is too large for the frame
}

// Room for a figure's name below it, and least white between figures.
const (
	nameRoom  = 8.0
	figureGap = 12.0
)

// Arrange lays the figures out in the frame at the largest scale at which
// they fit with their dimensions and names, in projection with each other, and
// centred.
func (f Figures) Arrange(frame Box, scales []Scale) Arranged {
	var p projected
	var fits bool
	s := Largest(scales, func(s Scale) bool {
		p = f.project(s)
		fits = p.w <= frame.W+1e-9 && p.h <= frame.H+1e-9
		return fits
	})
	if !fits {
		p = f.project(s)
	}
	out := f.draw(p, Point{frame.X + (frame.W-p.w)/2, frame.Y + (frame.H-p.h)/2})
	out.Scale, out.Fits = s, fits
	return out
}

func (f Figure) shown() bool { return f.Model.W > 0 && f.Model.H > 0 && f.Model.finite() }

func (f Figure) dims(v View, style DimStyle) Dimensioned {
	if f.Dims == nil {
		return Dimensions(v.OnPaper(), style)
	}
	return Dimensions(v.OnPaper(), style, f.Dims(v)...)
}

// projected is a layout at one scale: where the views' upper left corners
// stand, and how large all is with what hangs around it.
type projected struct {
	scale            Scale
	front, top, side Point
	w, h             float64
}

// project finds the places. The front figure and the top one share a column,
// the front and the side one a row; each is as large as both models together
// ask, with the larger room on each side.
func (f Figures) project(s Scale) projected {
	front, top, side := f.room(f.Front, s), f.room(f.Top, s), f.room(f.Side, s)
	r := s.Ratio()
	p := projected{scale: s}
	column, row := together(f.Front, f.Top), together(f.Front, f.Side)

	left := math.Max(front.Left, top.Left)
	p.front.X = left + r*(f.Front.Model.X-column.X)
	p.top.X = left + r*(f.Top.Model.X-column.X)
	p.w = left + r*column.W + math.Max(front.Right, top.Right)
	if f.Side.shown() {
		p.side.X = p.w + figureGap + side.Left
		p.w = p.side.X + r*f.Side.Model.W + side.Right
	}

	above := 0.0
	over := math.Max(front.Top, side.Top)
	p.h = over + r*row.H + math.Max(front.Bottom, side.Bottom)
	if f.Top.shown() {
		high := top.Top + r*f.Top.Model.H + top.Bottom
		p.top.Y = top.Top
		if f.Projection == FirstAngle {
			p.top.Y += p.h + figureGap
		} else {
			above = high + figureGap
		}
		p.h += high + figureGap
	}
	// the greatest y of a model is its upper edge
	p.front.Y = above + over + r*(row.Bottom()-f.Front.Model.Bottom())
	p.side.Y = above + over + r*(row.Bottom()-f.Side.Model.Bottom())
	return p
}

// together is the box around the models of the figures that are shown.
func together(a, b Figure) Box {
	switch {
	case !b.shown():
		return a.Model
	case !a.shown():
		return b.Model
	}
	return a.Model.Union(b.Model)
}

// room is what a figure needs around its outline, its name included.
func (f Figures) room(g Figure, s Scale) Room {
	if !g.shown() {
		return Room{}
	}
	r := g.dims(ViewAt(g.Model, Point{}, s), f.Style).Room
	if g.Name != "" {
		r.Bottom += nameRoom
	}
	return r
}

func (f Figures) draw(p projected, at Point) Arranged {
	var out Arranged
	put := func(g Figure, corner Point) View {
		if !g.shown() {
			return View{}
		}
		v := ViewAt(g.Model, corner.Plus(at.X, at.Y), p.scale)
		d := g.dims(v, f.Style)
		out.Items = append(out.Items, Layer("outlines", v.Place(g.Items...)), d)
		if g.Notes != nil {
			out.Items = append(out.Items, Layer("notes", g.Notes(v)...))
		}
		b := v.OnPaper()
		name := Pt(b.X+b.W/2, b.Bottom()+d.Room.Bottom+nameRoom-3)
		out.Items = append(out.Items, Text{At: name, Text: g.Name, Size: SizeNote, Align: Center, Ink: Dark})
		return v
	}
	out.Front = put(f.Front, p.front)
	out.Top = put(f.Top, p.top)
	out.Side = put(f.Side, p.side)
	return out
}
