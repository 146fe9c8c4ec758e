package sheet

import (
	"math"

	"casewright/internal/measure"
	"casewright/internal/sheet/lettering"
)

// AlignedDim is a single dimension along the line from A to B, at any slope,
// Offset to the left of that direction as seen. The value stands on the line,
// readable from below or from the right.
type AlignedDim struct {
	A, B   Point
	Offset float64
	Label  string
	Size   lettering.Points // 0 is SizeDim
}

func (d AlignedDim) lower(c *lowering) {
	long := math.Hypot(d.B.X-d.A.X, d.B.Y-d.A.Y)
	if !(long > 0) {
		return
	}
	along := Point{(d.B.X - d.A.X) / long, (d.B.Y - d.A.Y) / long}
	left := Point{along.Y, -along.X}
	out := func(p Point, by float64) Point { return p.Plus(left.X*by, left.Y*by) }
	side := math.Copysign(1, d.Offset)
	a, b := out(d.A, d.Offset), out(d.B, d.Offset)
	size := d.Size
	if size <= 0 {
		size = SizeDim
	}
	text := Text{Text: d.Label, Size: size, Align: Center, Turn: readable(along)}
	line := text.set()
	sin, cos := math.Sincos(float64(text.Turn))
	up := textGap + line.Descent
	mid := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	inside := long >= 2*arrowLong+1
	items := []Item{
		Line{out(d.A, side*extGap), out(a, side*extPast), Narrow},
		Line{out(d.B, side*extGap), out(b, side*extPast), Narrow},
	}
	tail, head := a, b
	if !inside {
		tail, head = a.Plus(-2*arrowLong*along.X, -2*arrowLong*along.Y), b.Plus(2*arrowLong*along.X, 2*arrowLong*along.Y)
	}
	if line.Width+2*textPad > long { // beside the line's far end
		far := line.Width/2 + textPad
		mid = head.Plus(along.X*far, along.Y*far)
		head = head.Plus(along.X*2*far, along.Y*2*far)
	}
	back := Point{-along.X, -along.Y}
	if inside {
		items = append(items, Arrowhead(a, back), Arrowhead(b, along))
	} else {
		items = append(items, Arrowhead(a, along), Arrowhead(b, back))
	}
	text.At = mid.Plus(-sin*up, -cos*up)
	items = append(items, Line{tail, head, Narrow}, text)
	All(items...).lower(c)
}

// readable is the angle of a text along a direction on paper, turned so that
// it reads from below or from the right.
func readable(along Point) measure.Angle {
	a := measure.Angle(math.Atan2(-along.Y, along.X))
	if upsideDown(a) {
		a += math.Pi
	}
	return a
}

// Leader is a note with a line to what it speaks of. The text stands beside
// Elbow, on the side away from Target; more lines of it go below the first.
// Dot ends the line in a dot on an area instead of an arrow at an edge.
type Leader struct {
	Target, Elbow Point
	Text          string
	Size          lettering.Points // 0 is SizeNote
	Width         float64          // wraps the text; 0 does not
	Dot           bool
}

func (l Leader) lower(c *lowering) {
	size := l.Size
	if size <= 0 {
		size = SizeNote
	}
	dir := math.Copysign(1, l.Elbow.X-l.Target.X)
	shelf := l.Elbow.Plus(dir*3, 0)
	align := Left
	if dir < 0 {
		align = Right
	}
	items := []Item{Polyline{Points: []Point{l.Target, l.Elbow, shelf}, Pen: Narrow}}
	if l.Dot {
		items = append(items, Circle{Centre: l.Target, Radius: 0.5, Fill: Black})
	} else {
		items = append(items, Arrowhead(l.Target, Point{l.Target.X - l.Elbow.X, l.Target.Y - l.Elbow.Y}))
	}
	lines := []string{l.Text}
	if l.Width > 0 {
		lines = lettering.WrapText(l.Text, lettering.Regular, size, l.Width)
	}
	for i, s := range lines {
		at := shelf.Plus(dir, float64(i)*lettering.LineHeight(size))
		items = append(items, Text{At: at, Text: s, Size: size, Align: align, Level: Middle})
	}
	All(items...).lower(c)
}

// Balloon is a part mark in a circle; with a Target the circle has a line to
// a dot on the part. The circle widens to hold a long mark as a lozenge.
type Balloon struct {
	At     Point
	Mark   string
	Target *Point
	Size   lettering.Points // 0 is SizeNote
}

func (b Balloon) lower(c *lowering) {
	size := b.Size
	if size <= 0 {
		size = SizeNote
	}
	text := Text{At: b.At, Text: b.Mark, Face: lettering.Bold, Size: size, Align: Center, Level: Middle, Plain: true}
	r := 0.85 * size.Millimetres()
	half := math.Max(0, text.set().Width/2+0.8-r*0.92)
	var items []Item
	if b.Target != nil {
		items = append(items, Line{*b.Target, b.At, Narrow}, Circle{Centre: *b.Target, Radius: 0.5, Fill: Black})
	}
	items = append(items, lozenge(b.At, half, r), text)
	All(items...).lower(c)
}

// lozenge is a circle drawn out by half to each side.
func lozenge(at Point, half, r float64) Item {
	right, segs := arcSegments(at.Plus(half, 0), r, -math.Pi/2, math.Pi)
	left, more := arcSegments(at.Plus(-half, 0), r, math.Pi/2, math.Pi)
	segs = append(append(segs, Segment{To: left}), more...)
	return Path{Start: right, Segments: segs, Closed: true, Pen: Narrow, Fill: PaperWhite}
}

// GrainArrow is the two-headed arrow that says which way the grain runs,
// Length long about its middle.
type GrainArrow struct {
	At     Point
	Length float64
	Turn   measure.Angle // 0 is across the paper
}

func (g GrainArrow) lower(c *lowering) {
	sin, cos := math.Sincos(float64(g.Turn))
	dir := Point{cos, -sin}
	h := g.Length / 2
	a, b := g.At.Plus(-dir.X*h, -dir.Y*h), g.At.Plus(dir.X*h, dir.Y*h)
	items := []Item{Line{a, b, Narrow}}
	items = append(items, openHead(b, dir)...)
	items = append(items, openHead(a, Point{-dir.X, -dir.Y})...)
	All(items...).lower(c)
}

// openHead is the open head that sets the grain arrow apart from a dimension.
func openHead(tip, dir Point) []Item {
	const long, half = 2.6, 1.0
	p := Point{tip.X - long*dir.X - half*dir.Y, tip.Y - long*dir.Y + half*dir.X}
	q := Point{tip.X - long*dir.X + half*dir.Y, tip.Y - long*dir.Y - half*dir.X}
	return []Item{Polyline{Points: []Point{p, tip, q}, Pen: Narrow}}
}

// Triangle is the cabinetmaker's triangle across a set of parts: it points to
// the top or away from the maker, and each part carries its share of it.
type Triangle struct {
	Box  Box           // the set on paper
	Turn measure.Angle // where it points: 0 is up the paper
}

func (t Triangle) lower(c *lowering) {
	m := t.Box.Middle()
	r := 0.38 * math.Min(t.Box.W, t.Box.H)
	apex, base := m.Plus(0, -r), m.Y+r*0.8
	tri := []Point{apex, {m.X + r*0.85, base}, {m.X - r*0.85, base}}
	Group{At: Turn(t.Turn, m), Items: []Item{Polygon{Rings: [][]Point{tri}, Pen: Pen{Width: 0.35}}}}.lower(c)
}
