package sheet

import (
	"math"

	"casewright/internal/measure"
	"casewright/internal/sheet/lettering"
)

// Everything on a page comes down to two kinds of marks, which each writer
// draws in order: a path with a pen and a fill, or a line of letters.
type mark struct {
	layer string
	clip  *clip
	path  *outline
	text  *letters
}

// clip is a chain: the innermost outline and those around it.
type clip struct {
	outer *clip
	ring  []Point
}

type contour struct {
	start  Point
	segs   []Segment
	closed bool
}

type outline struct {
	contours []contour
	pen      Pen
	fill     Shade
}

// letters is a set line whose baseline starts at At and runs at Turn.
type letters struct {
	at   Point
	turn measure.Angle
	line lettering.Line
	ink  Shade
}

type lowering struct {
	t     Transform
	layer string
	clip  *clip
	marks []mark
}

func lower(items []Item) []mark {
	c := lowering{t: Identity}
	for _, it := range items {
		if it != nil {
			it.lower(&c)
		}
	}
	return c.marks
}

func (c *lowering) path(pen Pen, fill Shade, contours ...contour) {
	if (pen.Width <= 0 && fill == NoFill) || !c.t.finite() {
		return
	}
	out := make([]contour, 0, len(contours))
	for _, k := range contours {
		moved := contour{start: c.t.At(k.start), closed: k.closed, segs: make([]Segment, len(k.segs))}
		for i, s := range k.segs {
			moved.segs[i] = Segment{s.Curve, c.t.At(s.C1), c.t.At(s.C2), c.t.At(s.To)}
		}
		if moved.drawable() {
			out = append(out, moved)
		}
	}
	if len(out) > 0 {
		c.marks = append(c.marks, mark{layer: c.layer, clip: c.clip, path: &outline{out, pen, fill}})
	}
}

// drawable keeps numbers no file can hold out of the file. They come from
// degenerate models; leaving one line out beats a sheet no reader opens.
func (k contour) drawable() bool {
	ok := onPaper(k.start) && len(k.segs) > 0
	for _, s := range k.segs {
		ok = ok && onPaper(s.To) && (!s.Curve || onPaper(s.C1) && onPaper(s.C2))
	}
	return ok
}

// onPaper is false for NaN and for places farther away than any roll of paper
// is long, 1 km.
func onPaper(p Point) bool { return math.Abs(p.X) < 1e6 && math.Abs(p.Y) < 1e6 }

func open(pts []Point) contour {
	k := contour{start: pts[0]}
	for _, p := range pts[1:] {
		k.segs = append(k.segs, Segment{To: p})
	}
	return k
}

func closed(pts []Point) contour {
	k := open(pts)
	k.closed = true
	return k
}

func (l Line) lower(c *lowering) { c.path(l.Pen, NoFill, open([]Point{l.A, l.B})) }

func (l Polyline) lower(c *lowering) {
	if len(l.Points) > 1 {
		c.path(l.Pen, NoFill, open(l.Points))
	}
}

func (p Polygon) lower(c *lowering) {
	var rings []contour
	for _, r := range p.Rings {
		if len(r) > 1 {
			rings = append(rings, closed(r))
		}
	}
	if p.Fill != NoFill {
		c.path(NoPen, p.Fill, rings...)
	}
	p.hatch(c)
	c.path(p.Pen, NoFill, rings...)
}

func (p Path) lower(c *lowering) {
	c.path(p.Pen, p.Fill, contour{start: p.Start, segs: p.Segments, closed: p.Closed})
}

func (k Circle) lower(c *lowering) {
	start, segs := arcSegments(k.Centre, k.Radius, 0, 2*math.Pi)
	c.path(k.Pen, k.Fill, contour{start: start, segs: segs, closed: true})
}

func (a Arc) lower(c *lowering) {
	// On paper y points down, so counter-clockwise as seen is a falling angle;
	// a model's transform turns y over and the arc with it.
	from, sweep := -float64(a.From), -float64(a.Sweep)
	if c.t.turnsOver() {
		from, sweep = -from, -sweep
	}
	start, segs := arcSegments(a.Centre, a.Radius, from, sweep)
	c.path(a.Pen, NoFill, contour{start: start, segs: segs})
}

func (t Transform) turnsOver() bool { return t.A*t.D-t.B*t.C < 0 }

// arcSegments draws an arc as cubic curves of at most 30° by the usual
// 4/3·tan(φ/4) rule. For a quarter circle that is off by 2.73e-4 of the radius
// (from memory) and the error falls with the sixth power of the angle: 4e-7.
func arcSegments(c Point, r, from, sweep float64) (Point, []Segment) {
	n := int(math.Ceil(math.Abs(sweep)/(math.Pi/6) - 1e-9))
	n = min(max(n, 1), 720)
	step := sweep / float64(n)
	h := 4.0 / 3 * math.Tan(step/4)
	at := func(a float64) Point { return Point{c.X + r*math.Cos(a), c.Y + r*math.Sin(a)} }
	segs := make([]Segment, n)
	for i := range segs {
		a0, a1 := from+float64(i)*step, from+float64(i+1)*step
		p0, p1 := at(a0), at(a1)
		segs[i] = Segment{
			Curve: true,
			C1:    Point{p0.X - h*r*math.Sin(a0), p0.Y + h*r*math.Cos(a0)},
			C2:    Point{p1.X + h*r*math.Sin(a1), p1.Y - h*r*math.Cos(a1)},
			To:    p1,
		}
	}
	return at(from), segs
}

func (g Group) lower(c *lowering) {
	inner := lowering{t: g.At.Then(c.t), layer: c.layer, clip: c.clip, marks: c.marks}
	if g.Layer != "" {
		inner.layer = g.Layer
	}
	if len(g.Clip) > 2 {
		ring := make([]Point, len(g.Clip))
		for i, p := range g.Clip {
			ring[i] = inner.t.At(p)
		}
		inner.clip = &clip{outer: c.clip, ring: ring}
	}
	for _, it := range g.Items {
		if it != nil {
			it.lower(&inner)
		}
	}
	c.marks = inner.marks
}

// set is the text as a set line.
func (t Text) set() lettering.Line {
	size := t.Size
	if size <= 0 {
		size = SizeNote
	}
	if t.Plain {
		return lettering.SetPlain(t.Text, t.Face, size)
	}
	return lettering.Set(t.Text, t.Face, size)
}

func (t Text) lower(c *lowering) {
	l := t.set()
	if len(l.Runs) == 0 {
		return
	}
	size := max(t.Size, 0)
	if size == 0 {
		size = SizeNote
	}
	dx := [...]float64{0, -l.Width / 2, -l.Width, -l.Width}[t.Align&3]
	dy := [...]float64{0, t.Face.CapHeight(size) / 2, t.Face.CapHeight(size), -l.Descent}[t.Level&3]
	k := letters{at: c.t.At(t.At), turn: c.t.turned(t.Turn), line: l, ink: Pen{Ink: t.Ink}.ink()}
	k.at = k.local(dx, dy)
	if upsideDown(k.turn) && !upsideDown(t.Turn) {
		k = k.turnedRound()
	}
	if !onPaper(k.at) || math.IsNaN(float64(k.turn)) {
		return
	}
	if t.Clear {
		c.clearBehind(k)
	}
	c.marks = append(c.marks, mark{layer: c.layer, clip: c.clip, text: &k})
}

// local is the place dx along the baseline and dy below it.
func (k letters) local(dx, dy float64) Point {
	sin, cos := math.Sincos(float64(k.turn))
	return Point{k.at.X + dx*cos + dy*sin, k.at.Y - dx*sin + dy*cos}
}

// upsideDown is true for text that would have to be read standing on one's
// head. Reading from the right (90°) is allowed, from the left is not.
func upsideDown(a measure.Angle) bool {
	return math.Cos(float64(a)) < -1e-9 || (math.Abs(math.Cos(float64(a))) <= 1e-9 && math.Sin(float64(a)) < 0)
}

// turnedRound reads the other way in the same room.
func (k letters) turnedRound() letters {
	k.at = k.local(k.line.Width, k.line.Descent-k.line.Ascent)
	k.turn += math.Pi
	return k
}

// corners is the room the letters take, going round.
func (k letters) corners(pad float64) []Point {
	a, d, w := k.line.Ascent+pad, k.line.Descent+pad, k.line.Width+pad
	return []Point{k.local(-pad, -a), k.local(w, -a), k.local(w, d), k.local(-pad, d)}
}

func (c *lowering) clearBehind(k letters) {
	ring := closed(k.corners(0.4))
	c.marks = append(c.marks, mark{layer: c.layer, clip: c.clip, path: &outline{contours: []contour{ring}, fill: PaperWhite}})
}

func (p Paragraph) lower(c *lowering) { All(p.texts()...).lower(c) }

func (p Paragraph) size() lettering.Points {
	if p.Size <= 0 {
		return SizeBody
	}
	return p.Size
}

func (p Paragraph) lead() float64 {
	if p.Lead > 0 {
		return p.Lead
	}
	return lettering.LineHeight(p.size())
}

func (p Paragraph) texts() []Item {
	var out []Item
	x := p.At.X + [...]float64{0, p.Width / 2, p.Width, p.Width}[p.Align&3]
	y := p.At.Y + p.Face.CapHeight(p.size())
	for i, s := range lettering.WrapText(p.Text, p.Face, p.size(), p.Width) {
		at := Point{x, y + float64(i)*p.lead()}
		out = append(out, Text{At: at, Text: s, Face: p.Face, Size: p.size(), Align: p.Align, Ink: p.Ink})
	}
	return out
}

// Height is the room the paragraph takes downwards, from the top of its first
// capitals to below its last line.
func (p Paragraph) Height() float64 {
	n := len(lettering.WrapText(p.Text, p.Face, p.size(), p.Width))
	return p.Face.CapHeight(p.size()) + float64(n-1)*p.lead() + 0.22*p.size().Millimetres()
}

// Bounds is the room on paper that the items take, lettering included, clips
// and line widths not; around curves it may be a little wide. The zero Box if they draw nothing.
func Bounds(items ...Item) Box {
	var pts []Point
	for _, m := range lower(items) {
		if m.text != nil {
			pts = append(pts, m.text.corners(0)...)
			continue
		}
		for _, k := range m.path.contours {
			pts = append(pts, k.outer()...)
		}
	}
	return BoundsOf(pts...)
}

// outer is points that the contour does not reach beyond: a curve never leaves
// the box around its control points, which for an arc is at most 1 % too far.
func (k contour) outer() []Point {
	pts := []Point{k.start}
	for _, s := range k.segs {
		if s.Curve {
			pts = append(pts, s.C1, s.C2)
		}
		pts = append(pts, s.To)
	}
	return pts
}

// TextBoxes is the upright room each text of the items takes, in drawing
// order. It is how layouts are tested for texts printed over each other.
func TextBoxes(items ...Item) []Box {
	var out []Box
	for _, m := range lower(items) {
		if m.text != nil {
			out = append(out, BoundsOf(m.text.corners(0)...))
		}
	}
	return out
}
