package view

// Kind is what a line stands for.
type Kind int

const (
	// Outline is where a body ends before the background or before something
	// further away. A hidden one is where its own body turns out of sight.
	Outline Kind = iota
	// Edge is an arris between two faces of one body, both seen.
	Edge
	// Joint is where two bodies meet, flush or in a corner.
	Joint
)

// String is the kind in small letters; "line" for what is no kind.
func (k Kind) String() string {
	if k < Outline || k > Joint {
		return "line"
	}
	return [...]string{"outline", "edge", "joint"}[k]
}

// Line is a straight line of a drawing. A comes before B: it has the smaller
// x, or the smaller y where they are level.
type Line struct {
	A, B   Point2
	Hidden bool
	Kind   Kind
	// Body and Tag are those of the nearer face the line bounds. Where both
	// are equally near it is the lower ID, then the lower tag. Of hidden lines
	// on one another the nearest counts, then the lower ID.
	Body, Tag int
}

// Fill is a part of a face that is seen, as one outline with holes.
type Fill struct {
	Body, Tag int
	// Normal is the face's in space, length 1, to shade by.
	Normal Vec3
	// Outer runs counter-clockwise in the picture, Holes clockwise.
	Outer []Point2
	Holes [][]Point2
}

// Seen sums up one body in a picture.
type Seen struct {
	Body int
	// Bounds is the room it takes, hidden parts included.
	Bounds Box2
	// Nearest and Farthest are its depths, see [Camera.Picture].
	Nearest, Farthest float64
	// Visible is how much of the picture it takes, in mm²; only with
	// [Options.Fills], else zero. Bodies of one ID are counted together.
	Visible float64
}

// Drawing is what a camera sees of some bodies.
type Drawing struct {
	// Lines are sorted: seen before hidden, then by kind, body, tag and place.
	// No two of them run along each other.
	Lines []Line
	// Fills are sorted by body, tag and place and do not overlap. Empty unless
	// asked for.
	Fills []Fill
	// Seen has one entry for each body drawn, by ID.
	Seen []Seen
	// Bounds holds everything; zero if there is nothing.
	Bounds Box2
	// Skipped is what was left out.
	Skipped []Skip
}

// Options say what a drawing should contain. The zero Options ask for seen
// lines only.
type Options struct {
	// Hidden asks for hidden lines too.
	Hidden bool
	// HiddenOf limits hidden lines to bodies with these IDs; empty means all.
	HiddenOf []int
	// Fills asks for the areas seen.
	Fills bool
}
