package sheet

import (
	"casewright/internal/measure"
	"casewright/internal/sheet/lettering"
)

// Item is anything that can be drawn. The set is closed: an item turns itself
// into strokes, fills and set lines of text.
type Item interface {
	lower(c *lowering)
}

// Line is a straight line.
type Line struct {
	A, B Point
	Pen  Pen
}

// Polyline runs through its points. Fewer than two draw nothing.
type Polyline struct {
	Points []Point
	Pen    Pen
}

// Polygon is the area between closed rings: the inside of one, less holes, by
// the even-odd rule. Rings need not repeat their first point.
type Polygon struct {
	Rings [][]Point
	Pen   Pen
	Fill  Shade
	Hatch Hatch // laid over the fill
}

// Rect is a box as a polygon.
func Rect(b Box, pen Pen, fill Shade) Polygon {
	return Polygon{Rings: [][]Point{b.Corners()}, Pen: pen, Fill: fill}
}

// Segment is one step of a path: a straight line to To, or, when Curve is
// set, a cubic Bézier curve over C1 and C2.
type Segment struct {
	Curve      bool
	C1, C2, To Point
}

// Path is a run of lines and cubic Bézier curves.
type Path struct {
	Start    Point
	Segments []Segment
	Closed   bool
	Pen      Pen
	Fill     Shade
}

// Circle is a full circle.
type Circle struct {
	Centre Point
	Radius float64
	Pen    Pen
	Fill   Shade
}

// Arc is part of a circle: from the angle From on by Sweep, counter-clockwise
// as seen where y points as in the frame the arc is drawn in. On paper that
// is counter-clockwise too; a model's arc keeps its look.
type Arc struct {
	Centre      Point
	Radius      float64
	From, Sweep measure.Angle
	Pen         Pen
}

// Align says which part of a text stands at its place.
type Align uint8

// Across: where the text starts, has its middle or ends. [OnFigure] is for
// columns of tables only and else behaves as Right.
const (
	Left Align = iota
	Center
	Right
	OnFigure // whole numbers flush right, fractions hanging
)

// Level says which height of a text stands at its place.
type Level uint8

// Baseline, middle of the capitals, top of the capitals, below the descenders.
const (
	Baseline Level = iota
	Middle
	Top
	Bottom
)

// Text is one line of lettering. Fractions of a rule such as "5 3/8" are
// stacked unless Plain is set. Size 0 means [SizeNote].
type Text struct {
	At    Point
	Text  string
	Face  lettering.Face
	Size  lettering.Points
	Align Align
	Level Level
	Turn  measure.Angle // counter-clockwise as seen
	Plain bool
	Ink   Shade // zero is full black
	Clear bool  // covers what lies below with paper white
}

// Sizes of type, the same on all sheets. MAKER's rule for what is read at
// arm's length: text at least 14 pt, the number that matters at least 28 pt.
const (
	SizeFine  lettering.Points = 7
	SizeNote  lettering.Points = 9
	SizeDim   lettering.Points = 10
	SizeBody  lettering.Points = 10.5
	SizeBench lettering.Points = 14
	SizeHead  lettering.Points = 18
	SizeKey   lettering.Points = 28
)

// Paragraph is text wrapped to a width, its first line's capitals at the top
// of At. Size 0 means [SizeBody].
type Paragraph struct {
	At    Point
	Width float64
	Text  string
	Face  lettering.Face
	Size  lettering.Points
	Align Align
	Lead  float64 // between baselines; 0 is the usual for the size
	Ink   Shade
}

// Group holds items together. The zero At leaves them where they are. Clip, if
// given, is a closed outline in the group's own frame outside of which nothing
// shows. A Layer name puts the items on that layer of the PDF unless a group
// inside names another. Pens and type keep their size on paper whatever At is.
type Group struct {
	At    Transform
	Clip  []Point
	Layer string
	Items []Item
}

// Layer puts items on a named layer.
func Layer(name string, items ...Item) Group { return Group{Layer: name, Items: items} }

// All is the items as one.
func All(items ...Item) Group { return Group{Items: items} }

// Page is one sheet.
type Page struct {
	Paper Paper  // zero is Letter
	Title string // for the outline in the PDF; "" stays out of it
	Items []Item
}

// Add puts items on the page, above those it has.
func (p *Page) Add(items ...Item) { p.Items = append(p.Items, items...) }

// Doc is a set of sheets for one file.
type Doc struct {
	Title string
	Pages []Page
}
