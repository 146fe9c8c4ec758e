package dxf

// Drawing is one file.
type Drawing struct {
	Name   string  // goes into the file as a comment
	Unit   Unit    // of the numbers in the file
	Layers []Layer // every layer that items use; layer 0 is always there
	Items  []Item  // at least one; drawn in this order
}

// Unit is the unit of the numbers in the file. Items are given in millimetres
// in either case.
type Unit uint8

// The units.
const (
	Millimetres Unit = iota
	Inches
)

// scale is what a millimetre is in the file.
func (u Unit) scale() float64 {
	if u == Inches {
		return 1 / 25.4
	}
	return 1
}

// word says the unit in a note.
func (u Unit) word() string {
	if u == Inches {
		return "INCHES"
	}
	return "MM"
}

// Layer is a sheet of film in the drawing: a cutter is told by it what to do.
type Layer struct {
	Name  string // 1 to 31 of A–Z, 0–9, - and _
	Color int    // AutoCAD colour index, 1 to 255
	Line  LineType
}

// LineType is how the lines of a layer are broken.
type LineType uint8

// The line types.
const (
	Whole LineType = iota
	Dashed
	DashDot
)

// Names of the usual layers.
const (
	Cut    = "CUT"    // cut right through
	Mark   = "MARK"   // mark, do not cut: where another part meets
	Score  = "SCORE"  // cut to a depth
	Dim    = "DIM"    // dimensions
	Words  = "TEXT"   // everything to be read
	Hidden = "HIDDEN" // edges behind the face
	Centre = "CENTER" // axes of holes and symmetry
)

// Layers are the usual layers. Colours are common practice, no source: red
// cuts, blue marks, green scores.
func Layers() []Layer {
	return []Layer{
		{Cut, 1, Whole}, {Mark, 5, Whole}, {Score, 3, Whole}, {Dim, 8, Whole},
		{Words, 7, Whole}, {Hidden, 9, Dashed}, {Centre, 6, DashDot},
	}
}

// Point is a place in the drawing, mm.
type Point struct{ X, Y float64 }

// Item is something drawn: Line, Polyline, Arc, Circle, Curve or Text.
type Item interface {
	layer() string
	// check finds what is wrong with the item.
	check() error
	// bounds are points whose box holds the item.
	bounds() []Point
	// write adds the item to a file.
	write(w *writer)
}

// Line is straight, from A to B, which must differ.
type Line struct {
	Layer string
	A, B  Point
}

// Corner is a point of a Polyline and what leads on from it: Bulge is the
// tangent of a quarter of the arc's angle, positive counter-clockwise, 0 for a
// straight line.
type Corner struct {
	Point
	Bulge float64
}

// Polyline is a chain of lines and arcs. Corners that follow each other must
// differ. The last bulge counts only if it is closed.
type Polyline struct {
	Layer   string
	Corners []Corner // two at least
	Closed  bool     // back to the first corner, which is not repeated
}

// Arc runs counter-clockwise between two angles, less than a full turn.
type Arc struct {
	Layer    string
	Centre   Point
	Radius   float64 // mm, positive
	From, To float64 // radians
}

// Circle is a full turn.
type Circle struct {
	Layer  string
	Centre Point
	Radius float64 // mm, positive
}

// Curve is a chain of cubic Bézier arcs: end, two handles, end, two handles,
// … end. R12 knows no such thing; there it becomes a polyline that is nowhere
// farther from it than Chord.
type Curve struct {
	Layer  string
	Points []Point // 4, 7, 10, …
}

// Chord is how far, in mm, a polyline may lie from the curve that it stands
// for.
const Chord = 0.02

// Align says which end of a text stands at its point.
type Align uint8

// The alignments.
const (
	Left Align = iota
	Middle
	Right
)

// Text is one line of words, put into ASCII by [ASCII].
type Text struct {
	Layer  string
	At     Point   // on the baseline
	Height float64 // of a capital, mm, positive
	Turn   float64 // radians
	Align  Align
	Text   string // must leave something to print
}

func (l Line) layer() string     { return l.Layer }
func (l Polyline) layer() string { return l.Layer }
func (a Arc) layer() string      { return a.Layer }
func (c Circle) layer() string   { return c.Layer }
func (c Curve) layer() string    { return c.Layer }
func (t Text) layer() string     { return t.Layer }
