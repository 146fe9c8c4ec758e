package piece

import "casewright/internal/measure"

// Vec is a place or a shift in the piece's frame: X to the right as seen from
// the front, Y from the front to the back, Z up. The origin is the left front
// bottom corner of the first case's outside, dropped to the floor.
type Vec struct{ X, Y, Z measure.Length }

// Add is v shifted by w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub is the shift from w to v.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Dir is one of the six directions of the piece's frame.
type Dir int8

// The six directions: right, to the back, up, and their opposites.
const (
	Right Dir = 1
	Back  Dir = 2
	Up    Dir = 3
	Left  Dir = -1
	Front Dir = -2
	Down  Dir = -3
)

// Times is a step of length d in this direction.
func (d Dir) Times(l measure.Length) Vec {
	if d < 0 {
		d, l = -d, -l
	}
	switch d {
	case Right:
		return Vec{X: l}
	case Back:
		return Vec{Y: l}
	}
	return Vec{Z: l}
}

// Place says where a part's own corner (0, 0, 0) stands and which way its
// length, width and thickness point. The three are square to each other and
// right-handed: a part is turned, never mirrored.
type Place struct {
	At      Vec
	L, W, T Dir
}

// Point is where the part's own point (l, w, t) stands in the piece.
func (p Place) Point(l, w, t measure.Length) Vec {
	return p.At.Add(p.L.Times(l)).Add(p.W.Times(w)).Add(p.T.Times(t))
}

// The four ways case furniture lays its boards. Each keeps width pointing to
// the back, so that w = 0 is the front edge, the reference edge of the trade.
func upright(at Vec) Place { return Place{at, Up, Back, Left} }  // sides, partitions
func level(at Vec) Place   { return Place{at, Right, Back, Up} } // tops, dividers, shelves

// acrossFront stands a board on edge across the front, lower edge at w = 0,
// its outside at the high face: drawer fronts, door rails.
func acrossFront(at Vec) Place { return Place{at, Right, Up, Front} }

// standingFront stands a board up in the front plane, left edge at w = 0, its
// outside at the low face: stiles, panels, back boards.
func standingFront(at Vec) Place { return Place{at, Up, Right, Back} }

// runningBack lays a board on edge from front to back, lower edge at w = 0:
// drawer sides.
func runningBack(at Vec) Place { return Place{at, Back, Up, Right} }
