package sheet

import (
	"math"

	"casewright/internal/measure"
)

// Point is a place in millimetres.
type Point struct{ X, Y float64 }

// Pt is Point{x, y}.
func Pt(x, y float64) Point { return Point{x, y} }

// Plus moves p by dx, dy.
func (p Point) Plus(dx, dy float64) Point { return Point{p.X + dx, p.Y + dy} }

// Box is an upright rectangle from (X, Y) to (X+W, Y+H). On paper (X, Y) is
// the upper left corner, in a model the lower left.
type Box struct{ X, Y, W, H float64 }

// Right is the greatest x.
func (b Box) Right() float64 { return b.X + b.W }

// Bottom is the greatest y: the lower edge on paper.
func (b Box) Bottom() float64 { return b.Y + b.H }

// Middle is the centre.
func (b Box) Middle() Point { return Point{b.X + b.W/2, b.Y + b.H/2} }

// Inset is b made smaller by d on every side, never less than nothing.
func (b Box) Inset(d float64) Box { return b.Trim(d, d, d, d) }

// Trim is b made smaller by these amounts, never less than nothing.
func (b Box) Trim(left, top, right, bottom float64) Box {
	return Box{b.X + left, b.Y + top, math.Max(0, b.W-left-right), math.Max(0, b.H-top-bottom)}
}

// CutTop splits b on paper into a strip h high at the top and the rest.
func (b Box) CutTop(h float64) (strip, rest Box) {
	h = math.Min(h, b.H)
	return Box{b.X, b.Y, b.W, h}, Box{b.X, b.Y + h, b.W, b.H - h}
}

// CutBottom splits b on paper into a strip h high at the bottom and the rest.
func (b Box) CutBottom(h float64) (strip, rest Box) {
	h = math.Min(h, b.H)
	return Box{b.X, b.Bottom() - h, b.W, h}, Box{b.X, b.Y, b.W, b.H - h}
}

// CutLeft splits b into a strip w wide at the left and the rest.
func (b Box) CutLeft(w float64) (strip, rest Box) {
	w = math.Min(w, b.W)
	return Box{b.X, b.Y, w, b.H}, Box{b.X + w, b.Y, b.W - w, b.H}
}

// CutRight splits b into a strip w wide at the right and the rest.
func (b Box) CutRight(w float64) (strip, rest Box) {
	w = math.Min(w, b.W)
	return Box{b.Right() - w, b.Y, w, b.H}, Box{b.X, b.Y, b.W - w, b.H}
}

// Columns splits b into n boxes side by side with gap between them; n below 1
// counts as 1.
func (b Box) Columns(n int, gap float64) []Box {
	n = max(n, 1)
	w := (b.W - gap*float64(n-1)) / float64(n)
	out := make([]Box, n)
	for i := range out {
		out[i] = Box{b.X + float64(i)*(w+gap), b.Y, w, b.H}
	}
	return out
}

// Union is the smallest box around both. A box without width and height at
// the origin counts as none.
func (b Box) Union(c Box) Box {
	if b == (Box{}) {
		return c
	}
	if c == (Box{}) {
		return b
	}
	x, y := math.Min(b.X, c.X), math.Min(b.Y, c.Y)
	return Box{x, y, math.Max(b.Right(), c.Right()) - x, math.Max(b.Bottom(), c.Bottom()) - y}
}

// Overlaps reports whether the insides of the boxes meet; touching is not
// overlapping.
func (b Box) Overlaps(c Box) bool {
	const touch = 1e-6
	return b.X+touch < c.Right() && c.X+touch < b.Right() && b.Y+touch < c.Bottom() && c.Y+touch < b.Bottom()
}

// Contains reports whether c lies within b, the edge included.
func (b Box) Contains(c Box) bool {
	const touch = 1e-6
	return c.X >= b.X-touch && c.Y >= b.Y-touch && c.Right() <= b.Right()+touch && c.Bottom() <= b.Bottom()+touch
}

// Corners are the four corners, going round from (X, Y).
func (b Box) Corners() []Point {
	return []Point{{b.X, b.Y}, {b.Right(), b.Y}, {b.Right(), b.Bottom()}, {b.X, b.Bottom()}}
}

// BoundsOf is the box around the points; the zero Box if there are none.
func BoundsOf(pts ...Point) Box {
	if len(pts) == 0 {
		return Box{}
	}
	lo, hi := pts[0], pts[0]
	for _, p := range pts[1:] {
		lo = Point{math.Min(lo.X, p.X), math.Min(lo.Y, p.Y)}
		hi = Point{math.Max(hi.X, p.X), math.Max(hi.Y, p.Y)}
	}
	return Box{lo.X, lo.Y, hi.X - lo.X, hi.Y - lo.Y}
}

// Transform carries a point over: x' = A·x + C·y + E, y' = B·x + D·y + F. The
// zero value is no transform at all: it leaves points where they are.
type Transform struct{ A, B, C, D, E, F float64 }

// Identity leaves points where they are.
var Identity = Transform{A: 1, D: 1}

// Move shifts by dx, dy.
func Move(dx, dy float64) Transform { return Transform{A: 1, D: 1, E: dx, F: dy} }

// Stretch scales about the origin.
func Stretch(sx, sy float64) Transform { return Transform{A: sx, D: sy} }

// Turn rotates about a point of the paper, counter-clockwise as seen.
func Turn(a measure.Angle, about Point) Transform {
	sin, cos := math.Sincos(float64(a))
	t := Transform{A: cos, B: -sin, C: sin, D: cos}
	return Move(-about.X, -about.Y).Then(t).Then(Move(about.X, about.Y))
}

func (t Transform) orIdentity() Transform {
	if t == (Transform{}) {
		return Identity
	}
	return t
}

// Then is t followed by u.
func (t Transform) Then(u Transform) Transform {
	t, u = t.orIdentity(), u.orIdentity()
	return Transform{
		A: u.A*t.A + u.C*t.B, B: u.B*t.A + u.D*t.B,
		C: u.A*t.C + u.C*t.D, D: u.B*t.C + u.D*t.D,
		E: u.A*t.E + u.C*t.F + u.E, F: u.B*t.E + u.D*t.F + u.F,
	}
}

// At is the place p is carried to.
func (t Transform) At(p Point) Point {
	t = t.orIdentity()
	return Point{t.A*p.X + t.C*p.Y + t.E, t.B*p.X + t.D*p.Y + t.F}
}

// turned is the angle a text has after the transform. Letters are never
// mirrored or stretched: they follow the direction of the x axis only.
func (t Transform) turned(a measure.Angle) measure.Angle {
	t = t.orIdentity()
	if math.Abs(t.A)+math.Abs(t.B) < 1e-12 {
		return a
	}
	return a + measure.Angle(math.Atan2(-t.B, t.A))
}

func (t Transform) finite() bool {
	for _, v := range [...]float64{t.A, t.B, t.C, t.D, t.E, t.F} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// finite is false for a box that no sheet can hold.
func (b Box) finite() bool {
	for _, v := range [...]float64{b.X, b.Y, b.W, b.H} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// quarter is a quarter of a turn.
const quarter = measure.Angle(math.Pi / 2)
