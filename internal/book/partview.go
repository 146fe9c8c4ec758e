package book

import (
	"fmt"
	"slices"
	"strings"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/solid/view"
)

// looking draws the part by parallel rays, its setting-out corner at the
// picture's origin.
func (m *maker) looking(s *setOut, key string, away, up view.Vec3, hidden bool) view.Drawing {
	return m.drawing(key+" "+s.b.part.Mark, func() view.Drawing {
		cam, err := view.Looking(away, up)
		if err != nil {
			panic("book: a part has no such direction: " + err.Error())
		}
		return view.Project([]view.Body{m.solidOf(s.b).Lying()}, cam.At(s.corner), view.Options{Hidden: hidden})
	})
}

func opposite(v view.Vec3) view.Vec3 { return view.Vec3{X: -v.X, Y: -v.Y, Z: -v.Z} }

// partViews are the show face, the reference edge and an end, in projection.
func (m *maker) partViews(fam *family, s *setOut) *arrangement {
	l, w, t := s.size[0].Millimetres(), s.size[1].Millimetres(), s.size[2].Millimetres()
	a := &arrangement{m: m}
	face := m.looking(s, "face", s.down, s.up, true)
	edge := m.looking(s, "edge", s.up, opposite(s.down), true)
	show := &panel{name: "show face", model: sheet.Box{W: l, H: w}, paint: shopPaint(face)}
	from := &panel{name: "reference edge", model: sheet.Box{Y: -t, W: l, H: t}, paint: shopPaint(edge)}
	end := &panel{name: "far end", model: sheet.Box{W: t, H: w}, paint: shopPaint(m.looking(s, "far end", opposite(s.right), s.up, true))}
	sign := measure.Length(1)
	faceRow, edgeRow := 0, 1
	if m.angle == sheet.FirstAngle { // what is seen from the left stands at the right
		faceRow, edgeRow, sign = 1, 0, -1
		end = &panel{name: "reference end", model: sheet.Box{X: -t, W: t, H: w}, paint: shopPaint(m.looking(s, "near end", s.right, s.up, true))}
	}
	m.dimensionPart(s, show, from, end, sign)
	show.over = func(v sheet.View) []sheet.Item { return faceMarks(v) }
	from.over = func(v sheet.View) []sheet.Item { return edgeMark(v) }
	a.put(show, 0, faceRow)
	a.put(from, 0, edgeRow)
	a.put(end, 1, faceRow)
	return a
}

func shopPaint(d view.Drawing) func(v sheet.View) []sheet.Item {
	return func(v sheet.View) []sheet.Item { return shopQuill.ink(d, v) }
}

// mostChains is how many chains of joinery stand on one side of a view; what
// is beyond them is in the rows below.
const mostChains = 3

// dimensionPart sets the chains: along the part beside the show face, across it
// at the left, and its thickness at the edge and the end.
func (m *maker) dimensionPart(s *setOut, show, edge, end *panel, sign measure.Length) {
	along, below := sheet.Above, edge
	if m.angle == sheet.FirstAngle {
		along, below = sheet.Below, show
	}
	show.dims = m.partChains(s, joinery.L, along, 1, nil)
	show.dims = append(show.dims, m.partChains(s, joinery.W, sheet.LeftOf, 1, nil)...)
	edge.dims = m.partChains(s, joinery.T, sheet.LeftOf, -1, func(c cut) bool { return !s.whole(c, joinery.L) })
	end.dims = m.partChains(s, joinery.T, sheet.Above, sign, func(c cut) bool { return s.whole(c, joinery.L) })
	below.dims = append(below.dims, m.overAll(s, joinery.L, sheet.Below, 1))
	end.dims = append(end.dims, m.overAll(s, joinery.W, sheet.RightOf, 1), m.overAll(s, joinery.T, sheet.Below, sign))
}

// overAll is a size of the part over all.
func (m *maker) overAll(s *setOut, a joinery.Axis, side sheet.Side, sign measure.Length) dimension {
	return dimension{side: side, stops: turnedStops(sign, 0, m.printed(s, a)), fine: true}
}

// printed is the part's size as it is printed everywhere; a chain along it must
// come to that.
func (m *maker) printed(s *setOut, a joinery.Axis) measure.Length {
	p := s.b.part
	switch a {
	case joinery.L:
		return m.p.Shown(p.Length)
	case joinery.W:
		return m.p.Shown(p.Width)
	}
	return m.p.Shown(p.Thickness)
}

// turnedStops are stops in a picture whose coordinate may run the other way.
func turnedStops(sign measure.Length, stops ...measure.Length) []measure.Length {
	for i := range stops {
		stops[i] *= sign
	}
	if sign < 0 {
		slices.Reverse(stops)
	}
	return stops
}

// partChains are chains from the reference side to the far one through
// everything cut along an axis. Cuts that overlap go to chains of their own.
func (m *maker) partChains(s *setOut, a joinery.Axis, side sheet.Side, sign measure.Length, of func(cut) bool) []dimension {
	whole := m.printed(s, a)
	var rows [][]stretch
next:
	for _, k := range s.stretches(a, whole, of) {
		for i, r := range rows {
			if r[len(r)-1].to <= k.from {
				rows[i] = append(r, k)
				continue next
			}
		}
		if len(rows) < mostChains {
			rows = append(rows, []stretch{k})
		}
	}
	var out []dimension
	for _, r := range rows {
		stops := []measure.Length{0}
		for _, k := range r {
			stops = insert(insert(stops, k.from), k.to)
		}
		out = append(out, dimension{side: side, stops: turnedStops(sign, insert(stops, whole)...), fine: true})
	}
	return out
}

// stretches are the different stretches that cuts take along an axis, by where
// they start. Of dovetails only the baselines count: the rest is laid out in
// full size on a sheet of its own.
func (s *setOut) stretches(a joinery.Axis, whole measure.Length, of func(cut) bool) []stretch {
	var out []stretch
	for _, c := range s.joined() {
		k := c.at[a]
		if s.whole(c, a) || of != nil && !of(c) || k.from >= whole || dovetailed(c) && a == joinery.W {
			continue
		}
		if k.to = min(k.to, whole); k.to > k.from && !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	slices.SortFunc(out, func(x, y stretch) int {
		if x.from != y.from {
			return int(min(max(x.from-y.from, -1), 1))
		}
		return int(min(max(x.to-y.to, -1), 1))
	})
	return out
}

func dovetailed(c cut) bool { return c.feature.Joint.Dovetail != nil }

// joined are the cuts with all of one dovetail joint as one.
func (s *setOut) joined() []cut {
	var out []cut
	for _, c := range s.cuts {
		if n := len(out); n > 0 && dovetailed(c) && out[n-1].feature.Joint == c.feature.Joint {
			out[n-1].at = together(out[n-1].at, c.at)
			continue
		}
		out = append(out, c)
	}
	return out
}

func together(a, b [3]stretch) [3]stretch {
	for i := range a {
		a[i] = stretch{min(a[i].from, b[i].from), max(a[i].to, b[i].to)}
	}
	return a
}

// faceMarks are the looped face mark, its tail at the reference edge, and the
// grain arrow.
func faceMarks(v sheet.View) []sheet.Item {
	b := v.OnPaper()
	var out []sheet.Item
	if b.W > 26 && b.H > 4 {
		out = append(out, sheet.GrainArrow{At: sheet.Pt(b.X+b.W*0.5, b.Y+b.H*0.5), Length: min(26, b.W*0.4)})
	}
	return append(out, loop(sheet.Pt(b.X+b.W*0.28, b.Bottom()), min(7, b.H*0.8)))
}

// loop is the face mark as it is pencilled, its tail at a place on the edge.
func loop(foot sheet.Point, high float64) sheet.Item {
	line := [][2]float64{{0, 0}, {0.02, 0.35}, {0.12, 0.75}, {0.3, 0.97}, {0.42, 0.85}, {0.36, 0.6}, {0.16, 0.42}, {-0.1, 0.32}}
	var pts []sheet.Point
	smooth := rounded(line, 6)
	for _, p := range smooth[:len(smooth)-6] { // open: without the way back
		pts = append(pts, foot.Plus(p[0]*high, -p[1]*high))
	}
	return sheet.Polyline{Points: pts, Pen: sheet.Pen{Width: 0.35}}
}

// edgeMark is the caret on the reference edge that points to the show face.
func edgeMark(v sheet.View) []sheet.Item {
	b := v.OnPaper()
	h := min(5, b.H*0.8)
	x := b.X + b.W*0.28
	return []sheet.Item{sheet.Polyline{Points: []sheet.Point{{X: x - h/2, Y: b.Y + h}, {X: x, Y: b.Y}, {X: x + h/2, Y: b.Y + h}}, Pen: sheet.Pen{Width: 0.35}}}
}

// asOne reports whether two cuts are one thing to mark out: all of a row of
// dovetails, or what leaves a tenon. The two rabbets of a back board are not.
func asOne(a, b cut) bool {
	return a.feature.Joint == b.feature.Joint && (dovetailed(a) || leavesTenon(a) && leavesTenon(b))
}

func leavesTenon(c cut) bool {
	return c.feature.Kind == joinery.TenonWaste || c.feature.Kind == joinery.Haunch
}

// cutTable is a row for each joint of the part: where, and how large.
func (m *maker) cutTable(s *setOut, width float64) sheet.Table {
	place := 25.0
	if width > 200 { // turned paper: keep each row on one line
		place = 32
	}
	t := sheet.Table{Size: 8.5, Columns: []sheet.Column{
		{Title: "cut", Width: place - 1}, {Title: "joint"}, {Title: "from the end", Width: place}, {Title: "from the edge", Width: place},
		{Title: "from the face", Width: place}, {Title: "sizes; laid out", Weight: 1.1},
	}}
	for i := 0; i < len(s.cuts); {
		n, at := i+1, s.cuts[i].at
		for n < len(s.cuts) && asOne(s.cuts[i], s.cuts[n]) {
			at = together(at, s.cuts[n].at)
			n++
		}
		j := s.cuts[i].feature.Joint
		last := m.jointSizes(j)
		if name := m.layoutName(j); name != "" {
			last += "; " + name
		}
		t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
			{Text: kinds(s.cuts[i:n])}, {Text: j.Name}, {Text: m.fromTo(s, at, joinery.L)}, {Text: m.fromTo(s, at, joinery.W)}, {Text: m.fromTo(s, at, joinery.T)}, {Text: last},
		}})
		i = n
	}
	return t
}

// kinds names the cuts of a joint once each.
func kinds(cuts []cut) string {
	var out []string
	for _, c := range cuts {
		if k := string(c.feature.Kind); !hasWord(out, k) {
			out = append(out, k)
		}
	}
	return strings.Join(out, ", ")
}

// fromTo is a stretch from the reference side, or a word for all of it.
func (m *maker) fromTo(s *setOut, at [3]stretch, a joinery.Axis) string {
	k := at[a]
	switch {
	case k.from <= 0 && k.to >= s.size[a]:
		return [3]string{"whole length", "whole width", "through"}[a]
	case k.to >= s.size[a]:
		return m.gap(k.from) + " to the far " + [3]string{"end", "edge", "face"}[a]
	}
	return m.gap(k.from) + " to " + m.gap(k.to)
}

// handsRoom is the height of the two small pictures of a pair.
const handsRoom = 25.0

// handsOf shows a part and its mirror image side by side, each with its mark.
func (m *maker) handsOf(fam *family, room sheet.Box) []sheet.Item {
	var out []sheet.Item
	halves := room.Columns(2, 12)
	for i, list := range [][]*body{fam.equal, fam.mirror} {
		s := m.setOut(list[0])
		model := sheet.Box{W: s.size[0].Millimetres(), H: s.size[1].Millimetres()}
		v := fitted(model, halves[i].Trim(0, 0, 0, 7))
		out = append(out, smallQuill.ink(m.looking(s, "face", s.down, s.up, true), v)...)
		b := v.OnPaper()
		out = append(out, loop(sheet.Pt(b.X+b.W*0.28, b.Bottom()), min(5, b.H*0.7)),
			sheet.Text{At: sheet.Pt(halves[i].X+halves[i].W/2, b.Bottom()+1.8), Text: handName(list, halves[i].W), Face: lettering.Bold, Size: 10, Align: sheet.Center, Level: sheet.Top})
	}
	return out
}

// handName is "A1 · left side"; of more than have room, the first and how many.
func handName(list []*body, width float64) string {
	name := " · " + list[0].part.Name
	if text := runOf(list) + name; lettering.Set(text, lettering.Bold, 10).Width <= width {
		return text
	}
	return list[0].part.Mark + " and " + fmt.Sprint(len(list)-1) + " more" + name
}
