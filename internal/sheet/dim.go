package sheet

import (
	"math"
	"sort"

	"casewright/internal/sheet/lettering"
)

// Side is a side of a view.
type Side uint8

// The sides. Dimensions above and below run across; those to the left and
// right run upwards and read from the right.
const (
	Below Side = iota
	Above
	LeftOf
	RightOf
)

// Dim is one dimension, or a chain of them along one line, at a side of a
// view. Stops are places on paper: x above and below, y to the left and right;
// in either order, at least two. Labels are the printed values, one for each
// space between stops; "" leaves a space without value. That the values of a
// chain add up is for measure to see to, before they come here.
type Dim struct {
	Side   Side
	Stops  []float64
	Labels []string
	Face   lettering.Face
}

// DimStyle is how dimensions look. Zero fields take the usual value.
type DimStyle struct {
	First   float64          // outline to first dimension line; 10 mm
	Further float64          // between dimension lines, at least; 8 mm
	Size    lettering.Points // of the values; SizeDim
	Pen     Pen              // Narrow
	Avoid   []Box            // room on paper that values keep clear of
}

// Usual distances: outline to first line 10 mm, further lines 8 mm (textbook
// on ISO and IS dimensioning). Arrowheads of 15°, narrow (ISO 129 text in a
// drawing book). The gaps are own choice, by eye.
const (
	firstLine   = 10.0
	furtherLine = 8.0
	arrowLong   = 2.5
	arrowAngle  = 15.0
	extGap      = 1.0 // outline to start of the extension line, as ASME Y14.5 has it
	extPast     = 1.5 // extension line beyond the dimension line
	textGap     = 0.7 // dimension line to the room of the value
	textPad     = 0.8 // value to the end of its space, each side
	leaderRise  = 3.0 // room for a leader's slope
	labelApart  = 1.5 // between values moved out beside each other
	strokeHalf  = 1.2 // half an oblique stroke, along each axis
)

func (s DimStyle) orUsual() DimStyle {
	if s.First <= 0 {
		s.First = firstLine
	}
	if s.Further <= 0 {
		s.Further = furtherLine
	}
	if s.Size <= 0 {
		s.Size = SizeDim
	}
	if s.Pen.Width <= 0 {
		s.Pen = Narrow
	}
	return s
}

// Room is what something needs around an outline, in millimetres each side.
type Room struct{ Left, Top, Right, Bottom float64 }

// Dimensioned is a view's dimensions laid out, ready to draw.
type Dimensioned struct {
	Group
	Room  Room  // needed around the outline
	Boxes []Box // room of each value, to keep other things clear of
}

// Dimensions lays out the dimensions around the outline of a view on paper.
// On each side the shortest stands nearest the view; dimensions that do not
// meet share a line. A value too wide for its space moves outside or to a
// leader, and no two values ever overlap, nor any box to avoid. Dims with
// fewer than two stops, or with stops that are no numbers, are left out.
func Dimensions(outline Box, style DimStyle, dims ...Dim) Dimensioned {
	style = style.orUsual()
	d := Dimensioned{Group: Group{Layer: "dimensions"}}
	taken := append([]Box(nil), style.Avoid...)
	for _, side := range []Side{Below, Above, LeftOf, RightOf} {
		s := sideLayout{side: side, outline: outline, style: style, taken: taken}
		for _, dim := range dims {
			if dim.Side == side {
				s.add(dim)
			}
		}
		room := s.place()
		d.Items = append(d.Items, s.lines...)
		d.Items = append(d.Items, s.texts...)
		d.Boxes = append(d.Boxes, s.boxes...)
		taken = append(taken, s.boxes...)
		d.Room.grow(side, room)
	}
	d.Room.cover(outline, d.Boxes)
	return d
}

func (r *Room) grow(side Side, room float64) {
	switch side {
	case Below:
		r.Bottom = math.Max(r.Bottom, room)
	case Above:
		r.Top = math.Max(r.Top, room)
	case LeftOf:
		r.Left = math.Max(r.Left, room)
	default:
		r.Right = math.Max(r.Right, room)
	}
}

// cover widens the room to values that stick out past the end of their side.
func (r *Room) cover(outline Box, boxes []Box) {
	for _, b := range boxes {
		r.Left = math.Max(r.Left, outline.X-b.X)
		r.Top = math.Max(r.Top, outline.Y-b.Y)
		r.Right = math.Max(r.Right, b.Right()-outline.Right())
		r.Bottom = math.Max(r.Bottom, b.Bottom()-outline.Bottom())
	}
}

// Around is the box with the room added on every side.
func (r Room) Around(b Box) Box { return b.Trim(-r.Left, -r.Top, -r.Right, -r.Bottom) }

// value is a label with its place: u along the side, v from its dimension
// line away from the view.
type value struct {
	text   string
	face   lettering.Face
	line   lettering.Line
	u, v   float64 // middle, baseline
	leader []Point // (u, v) steps, or nil
}

// bar is one Dim laid out by itself, before it has a line to stand on.
type bar struct {
	stops        []float64
	values       []value
	lo, hi       float64 // of everything on the line, along the side
	from, to     float64 // of the dimension line
	inner, outer float64 // room on both sides of the line
	arrows       bool
	outside      bool // arrows point in from outside
	row          int
}

// barLayout knows what a bar needs to know of its side.
type barLayout struct {
	b    bar
	high float64 // tallest value above its baseline
	deep float64 // and below
	away bool    // values stand on the far side of the line
}

func (s *sideLayout) add(d Dim) {
	stops := append([]float64(nil), d.Stops...)
	labels := make([]string, max(len(stops)-1, 0))
	copy(labels, d.Labels)
	if len(stops) > 1 && stops[0] > stops[len(stops)-1] {
		reverse(stops)
		reverse(labels)
	}
	if len(stops) < 2 || !rising(stops) {
		return
	}
	l := barLayout{b: bar{stops: stops, from: stops[0], to: stops[len(stops)-1]}, away: s.away()}
	for i, text := range labels {
		line := lettering.Set(text, d.Face, s.style.Size)
		l.high, l.deep = math.Max(l.high, line.Ascent), math.Max(l.deep, line.Descent)
		v := value{face: d.Face, line: line, u: (stops[i] + stops[i+1]) / 2}
		if len(line.Runs) > 0 {
			v.text = line.Text
		}
		l.b.values = append(l.b.values, v)
	}
	l.ends()
	l.spread()
	l.measure()
	s.bars = append(s.bars, l.b)
}

func reverse[T any](s []T) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}

func rising(stops []float64) bool {
	for i, v := range stops {
		if math.IsNaN(v) || math.Abs(v) > 1e6 || (i > 0 && v < stops[i-1]) {
			return false
		}
	}
	return true
}

// ends chooses arrowheads where every space has room for two, else oblique
// strokes for the whole chain, so that one line never mixes both. A single
// narrow space has its arrows outside.
func (l *barLayout) ends() {
	narrowest := math.Inf(1)
	for i := 1; i < len(l.b.stops); i++ {
		narrowest = math.Min(narrowest, l.b.stops[i]-l.b.stops[i-1])
	}
	fits := narrowest >= 2*arrowLong+1
	l.b.arrows = fits || len(l.b.stops) == 2
	l.b.outside = !fits && l.b.arrows
	if l.b.outside {
		l.b.from -= 2 * arrowLong
		l.b.to += 2 * arrowLong
	}
}

// spread places the values: over their space where they fit; beyond the end of
// the line for the first and last space; out on a leader for those between.
func (l *barLayout) spread() {
	base := textGap + l.deep
	var out []int
	last := len(l.b.values) - 1
	lo, hi := l.b.from, l.b.to
	for i := range l.b.values {
		v := &l.b.values[i]
		v.v = base
		if !l.away {
			v.v = -base
		}
		w := v.line.Width
		switch {
		case v.text == "" || w+2*textPad <= l.b.stops[i+1]-l.b.stops[i]:
		case i == last:
			v.u = hi + textPad + w/2
			l.b.to = hi + textPad + w
		case i == 0:
			v.u = lo - textPad - w/2
			l.b.from = lo - textPad - w
		default:
			out = append(out, i)
		}
	}
	l.moveOut(out)
}

// moveOut stands the values side by side beyond the line, each as near its
// space as its neighbours allow, with a leader to it.
func (l *barLayout) moveOut(out []int) {
	if len(out) == 0 {
		return
	}
	want, wide := make([]float64, len(out)), make([]float64, len(out))
	for k, i := range out {
		want[k], wide[k] = l.b.values[i].u, l.b.values[i].line.Width+labelApart
	}
	start, bend := leaderRise, 0.0
	if l.away { // clear of the values that stand on the line
		bend = textGap + l.deep + l.high
		start += bend
	}
	for k, u := range apart(want, wide) {
		v := &l.b.values[out[k]]
		mid := v.u
		v.u = u
		v.v = start + l.deep
		if !l.away {
			v.v = start + l.high
		}
		v.leader = []Point{{mid, 0}, {mid, bend}, {u, start - 0.3}}
	}
}

// apart moves places as little as possible (least squares, by pooling
// neighbours that press on each other) until each has its width free.
func apart(want, wide []float64) []float64 {
	type pool struct {
		sum  float64
		n    int
		from int
	}
	var pools []pool
	shift := make([]float64, len(want))
	for i := range want {
		if i > 0 {
			shift[i] = shift[i-1] + (wide[i-1]+wide[i])/2
		}
		pools = append(pools, pool{want[i] - shift[i], 1, i})
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum/float64(a.n) <= b.sum/float64(b.n) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.sum + b.sum, a.n + b.n, a.from})
		}
	}
	out := make([]float64, len(want))
	for _, p := range pools {
		for i := p.from; i < p.from+p.n; i++ {
			out[i] = p.sum/float64(p.n) + shift[i]
		}
	}
	return out
}

// measure finds the room the bar takes.
func (l *barLayout) measure() {
	l.b.lo, l.b.hi = l.b.from, l.b.to
	on, out := false, false
	for _, v := range l.b.values {
		if v.text == "" {
			continue
		}
		l.b.lo = math.Min(l.b.lo, v.u-v.line.Width/2)
		l.b.hi = math.Max(l.b.hi, v.u+v.line.Width/2)
		on, out = on || v.leader == nil, out || v.leader != nil
	}
	on0 := textGap + l.deep + l.high
	switch {
	case l.away && out:
		l.b.outer = on0 + leaderRise + l.deep + l.high
	case l.away && on:
		l.b.outer = on0
	case out:
		l.b.outer = leaderRise + l.deep + l.high
	}
	if !l.away && on {
		l.b.inner = on0
	}
}

// sortBars puts the shortest first; of equals, the one farther left or up.
func sortBars(bars []bar) {
	span := func(b bar) float64 { return b.stops[len(b.stops)-1] - b.stops[0] }
	sort.SliceStable(bars, func(i, j int) bool {
		a, b := span(bars[i]), span(bars[j])
		if math.Abs(a-b) > 1e-6 {
			return a < b
		}
		if bars[i].stops[0] != bars[j].stops[0] {
			return bars[i].stops[0] < bars[j].stops[0]
		}
		return len(bars[i].stops) > len(bars[j].stops)
	})
}
