package sheet

import (
	"math"

	"casewright/internal/measure"
)

// sideLayout stacks the bars of one side and draws them.
//
// u runs along the side as the paper's own x or y does, v away from the view,
// 0 at the outline.
type sideLayout struct {
	side    Side
	outline Box
	style   DimStyle
	taken   []Box
	bars    []bar
	lines   []Item
	texts   []Item
	boxes   []Box
}

// away says that the top of a value points away from the view, so that it
// stands on the far side of its line.
func (s *sideLayout) away() bool { return s.side == Above || s.side == LeftOf }

func (s *sideLayout) turn() measure.Angle {
	if s.side == LeftOf || s.side == RightOf {
		return math.Pi / 2
	}
	return 0
}

func (s *sideLayout) at(u, v float64) Point {
	switch s.side {
	case Below:
		return Point{u, s.outline.Bottom() + v}
	case Above:
		return Point{u, s.outline.Y - v}
	case LeftOf:
		return Point{s.outline.X - v, u}
	}
	return Point{s.outline.Right() + v, u}
}

// place stacks and draws all bars and returns the room they need.
func (s *sideLayout) place() float64 {
	sortBars(s.bars)
	rows := s.assignRows()
	offset, room := 0.0, 0.0
	reach := &extensions{}
	offsets := make([]float64, rows)
	for row := range rows {
		offset = s.rowOffset(row, offset)
		offsets[row] = offset
		for _, b := range s.bars {
			if b.row != row {
				continue
			}
			for _, u := range b.stops {
				reach.to(u, offset+extPast)
			}
			room = math.Max(room, offset+math.Max(b.outer, extPast))
		}
	}
	for i, u := range reach.u {
		s.lines = append(s.lines, Line{s.at(u, extGap), s.at(u, reach.v[i]), s.style.Pen})
	}
	for _, b := range s.bars {
		s.draw(b, offsets[b.row], reach)
	}
	return room
}

// assignRows gives each bar the lowest row outside all shorter bars it meets,
// and returns how many rows there are.
func (s *sideLayout) assignRows() int {
	rows := 0
	for i := range s.bars {
		b := &s.bars[i]
		for _, q := range s.bars[:i] {
			if b.lo < q.hi+labelApart && q.lo < b.hi+labelApart {
				b.row = max(b.row, q.row+1)
			}
		}
		rows = max(rows, b.row+1)
	}
	return rows
}

// rowOffset is where the row's dimension line stands: at the usual distance
// from the last one, farther out if values need the room, and farther still
// while a value would touch something already there.
func (s *sideLayout) rowOffset(row int, last float64) float64 {
	inner, before := 0.0, 0.0
	for _, b := range s.bars {
		if b.row == row {
			inner = math.Max(inner, b.inner)
		}
		if b.row == row-1 {
			before = math.Max(before, b.outer)
		}
	}
	offset := math.Max(s.style.First, inner+extGap)
	if row > 0 {
		offset = math.Max(last+s.style.Further, last+before+inner+2*textGap)
	}
	for tries := 0; tries < 2000 && s.blocked(row, offset); tries++ {
		offset++
	}
	return offset
}

func (s *sideLayout) blocked(row int, offset float64) bool {
	for _, b := range s.bars {
		if b.row != row {
			continue
		}
		for _, v := range b.values {
			if v.text == "" {
				continue
			}
			box := s.box(v, offset)
			for _, t := range s.taken {
				if box.Overlaps(t) {
					return true
				}
			}
		}
	}
	return false
}

func (s *sideLayout) text(v value, offset float64) Text {
	return Text{
		At: s.at(v.u, offset+v.v), Text: v.text, Face: v.face, Size: s.style.Size,
		Align: Center, Turn: s.turn(),
	}
}

func (s *sideLayout) box(v value, offset float64) Box {
	return TextBoxes(s.text(v, offset))[0]
}

func (s *sideLayout) draw(b bar, offset float64, reach *extensions) {
	s.lines = append(s.lines, Line{s.at(b.from, offset), s.at(b.to, offset), s.style.Pen})
	for i, u := range b.stops {
		s.terminator(b, i, u, offset)
	}
	for _, v := range b.values {
		if v.text == "" {
			continue
		}
		s.leader(v, offset)
		t := s.text(v, offset)
		t.Clear = reach.crosses(v.u-v.line.Width/2, v.u+v.line.Width/2, offset+v.v)
		s.texts = append(s.texts, t)
		s.boxes = append(s.boxes, s.box(v, offset))
	}
}

func (s *sideLayout) leader(v value, offset float64) {
	if len(v.leader) == 0 {
		return
	}
	pts := make([]Point, len(v.leader))
	for i, p := range v.leader {
		pts[i] = s.at(p.X, offset+p.Y)
	}
	s.lines = append(s.lines, Polyline{Points: pts, Pen: s.style.Pen})
	s.lines = append(s.lines, Circle{Centre: pts[0], Radius: 0.35, Fill: Black})
}

func (s *sideLayout) terminator(b bar, i int, u, offset float64) {
	p := s.at(u, offset)
	if !b.arrows {
		s.lines = append(s.lines, Line{p.Plus(-strokeHalf, strokeHalf), p.Plus(strokeHalf, -strokeHalf), s.style.Pen})
		return
	}
	along := s.at(u+1, offset)
	dir := Point{along.X - p.X, along.Y - p.Y}
	back := Point{-dir.X, -dir.Y}
	if b.outside { // the first arrow comes from below, the last from above
		dir, back = back, dir
	}
	if i > 0 {
		s.lines = append(s.lines, Arrowhead(p, dir))
	}
	if i < len(b.stops)-1 {
		s.lines = append(s.lines, Arrowhead(p, back))
	}
}

// Arrowhead is a slender filled head of 15° with its tip at a place, pointing
// in a direction on paper. A direction without length gives nothing to see.
func Arrowhead(tip, dir Point) Item {
	d := math.Hypot(dir.X, dir.Y)
	if d == 0 {
		return All()
	}
	x, y := dir.X/d, dir.Y/d
	half := arrowLong * math.Tan(arrowAngle/2*math.Pi/180)
	return Polygon{Rings: [][]Point{{
		tip,
		{tip.X - arrowLong*x - half*y, tip.Y - arrowLong*y + half*x},
		{tip.X - arrowLong*x + half*y, tip.Y - arrowLong*y - half*x},
	}}, Fill: Black}
}

// extensions are the extension lines: one at each place, as far as the
// farthest dimension that stops there.
type extensions struct{ u, v []float64 }

func (e *extensions) to(u, v float64) {
	for i, have := range e.u {
		if math.Abs(have-u) < 0.01 {
			e.v[i] = math.Max(e.v[i], v)
			return
		}
	}
	e.u, e.v = append(e.u, u), append(e.v, v)
}

// crosses reports whether an extension line runs through a value that spans
// lo to hi at v.
func (e *extensions) crosses(lo, hi, v float64) bool {
	for i, u := range e.u {
		if lo < u && u < hi && e.v[i] > v-2 {
			return true
		}
	}
	return false
}
