package book

import (
	"fmt"
	"reflect"
	"slices"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// layoutUse is one dovetail layout with every corner that is marked from it.
type layoutUse struct {
	name   string // "D1"
	layout *joinery.DovetailLayout
	joints []*piece.Joint
}

// findLayouts gathers joints by what their layout marks, not by who asked.
func (m *maker) findLayouts() []*layoutUse {
	var out []*layoutUse
next:
	for _, j := range m.p.Joints {
		if j.Dovetail == nil || len(j.Dovetail.Tails) == 0 {
			continue
		}
		for _, u := range out {
			if sameMarks(u.layout, j.Dovetail) && rowOf(u.joints[0]) == rowOf(j) {
				u.joints = append(u.joints, j)
				continue next
			}
		}
		out = append(out, &layoutUse{fmt.Sprintf("D%d", len(out)+1), j.Dovetail, []*piece.Joint{j}})
	}
	return out
}

// row is where a row of dovetails stands on its tail board: a drawer's back is
// narrower than its sides, so its row starts above their lower edge and ends
// below the upper one.
type row struct{ from, wide measure.Length }

func rowOf(j *piece.Joint) row {
	if j.A.Assembly.Kind != piece.DrawerAssembly {
		return row{0, j.Dovetail.Width}
	}
	return row{j.RowA, j.A.Width.Length()}
}

// on is the layout as it lies on the whole board, measured from the board's
// own edge.
func (r row) on(l *joinery.DovetailLayout) *joinery.DovetailLayout {
	out := *l
	out.Width = r.wide
	out.Tails, out.Runs = slices.Clone(l.Tails), slices.Clone(l.Runs)
	for i := range out.Tails {
		t := &out.Tails[i]
		t.TipFrom, t.TipTo, t.BaseFrom, t.BaseTo = t.TipFrom+r.from, t.TipTo+r.from, t.BaseFrom+r.from, t.BaseTo+r.from
	}
	for i := range out.Runs {
		out.Runs[i].From += r.from
		out.Runs[i].To += r.from
	}
	return &out
}

func sameMarks(a, b *joinery.DovetailLayout) bool {
	return a == b || a.Width == b.Width && a.TailStock == b.TailStock && a.PinStock == b.PinStock && a.Lap == b.Lap &&
		reflect.DeepEqual(a.Tails, b.Tails) && reflect.DeepEqual(a.Runs, b.Runs)
}

// layoutName is the layout a joint is marked from.
func (m *maker) layoutName(j *piece.Joint) string {
	for _, u := range m.layouts {
		for _, o := range u.joints {
			if o == j {
				return u.name + ", " + m.sheetOf(u.name)
			}
		}
	}
	return ""
}

// dovetails prints every layout in full size.
func (m *maker) dovetails() error {
	for _, u := range m.layouts {
		if err := m.layoutSheet(u); err != nil {
			return err
		}
	}
	return nil
}

// layoutSheet puts a layout on one sheet, turned if it is wide, or cuts it into
// tiles.
func (m *maker) layoutSheet(u *layoutUse) error {
	for _, paper := range []sheet.Paper{m.paper, m.paper.Landscape()} {
		for _, face := range []bool{true, false} {
			if m.oneSheet(u, paper, face) {
				return nil
			}
		}
	}
	return m.tiledSheets(u)
}

func (u *layoutUse) title() string { return "Dovetails " + u.name + ", full size" }

// barRoom is what the test bar takes at the foot of a sheet.
const barRoom = 14.0

// oneSheet draws the layout on a single sheet if it has room there, with or
// without the pin board's inside face, which repeats the numbers of its end.
func (m *maker) oneSheet(u *layoutUse, paper sheet.Paper, face bool) bool {
	box := writable(paper)
	words := sheet.Paragraph{At: sheet.Pt(box.X, box.Y+10), Width: box.W, Text: m.layoutWords(u), Size: 9.5}
	k := &dovetailDrawing{m: m, l: u.layout, row: rowOf(u.joints[0]), edge: u.edge()}
	k.tails()
	k.pinEnd()
	if face {
		k.pinFace()
	}
	room := sheet.Bounds(k.items...)
	y := words.At.Y + words.Height() + 5
	if room.W > box.W || y+room.Bottom() > box.Bottom()-barRoom {
		return false
	}
	d := m.page(u.title(), paper)
	m.mark(u.name)
	d.scale = "SCALE 1:1"
	d.add(sheet.Text{At: sheet.Pt(box.X, box.Y), Text: u.title(), Size: sheet.SizeHead, Level: sheet.Top}, words)
	x := min(box.X+(box.W-k.row.wide.Millimetres())/2, box.Right()-room.Right())
	d.add(sheet.Group{At: sheet.Move(x, y), Items: k.items}, sheet.TestBar{At: sheet.Pt(box.X+2, box.Bottom()-7)})
	bar := sheet.TestBar{At: sheet.Pt(box.Right()-7, y+4), Upright: true}
	if x+room.Right() < bar.At.X-9 && bar.At.Y+sheet.TestBarLength < box.Bottom()-barRoom {
		d.add(bar)
	}
	return true
}

// tiledSheets cuts a long layout into sheets that overlap by 20 mm.
func (m *maker) tiledSheets(u *layoutUse) error {
	k := &dovetailDrawing{m: m, l: u.layout, row: rowOf(u.joints[0]), edge: u.edge()}
	k.tails()
	k.pinEnd() // its inside face says the same as its end, and would need a second row of sheets
	words := sheet.Paragraph{At: sheet.Pt(0, -4), Width: min(u.layout.Width.Millimetres(), 150), Text: m.layoutWords(u), Size: 9.5}
	h := words.Height() + 2
	items := []sheet.Item{words, sheet.Group{At: sheet.Move(0, h), Items: k.items}}
	b := sheet.Bounds(items...)
	tiles, err := sheet.Tile(sheet.Drawing{Title: m.title() + ": dovetails " + u.name, Bounds: b.Inset(-1), Items: items}, m.paper, 20)
	if err != nil {
		return err
	}
	for _, p := range tiles.Pages {
		d := m.page(u.title(), p.Paper)
		d.tiled = true
		d.items = p.Items
		m.mark(u.name)
	}
	return nil
}

// layoutWords say which corners are marked from the layout and with what.
func (m *maker) layoutWords(u *layoutUse) string {
	l := u.layout
	kind := "Through dovetails"
	if !l.Through() {
		kind = "Half-blind dovetails, lap " + m.gap(l.Lap)
	}
	text := fmt.Sprintf("%s, slope %s. Tail boards %s thick, pin boards %s. ", kind, l.Slope, m.gap(l.TailStock), m.gap(l.PinStock))
	text += "For " + m.corners(u.joints) + ". "
	text += "Every number is the distance from the " + u.edge() + " edge, which is at the left: measure all from there, not from tail to tail. "
	if l.Narrowest > 0 {
		text += "Sockets between tails are " + m.gap(l.Narrowest) + " at the end, " + m.gap(l.Narrowest+2*l.Flare) + " at the baseline: " + m.chisel(l) + "."
	}
	return text
}

// edge is what the tail boards' edge is called at which the row starts.
func (u *layoutUse) edge() string {
	p := u.joints[0].A
	return edgeOf(-p.Place.W)
}

// corners are joints as pairs of boards.
func (m *maker) corners(joints []*piece.Joint) string {
	var out []string
	for _, j := range joints {
		out = append(out, j.A.Mark+" to "+j.B.Mark)
	}
	return listed(out) + " (tails on " + listed(firsts(joints)) + ")"
}

func firsts(joints []*piece.Joint) []string {
	var out []string
	for _, j := range joints {
		if !hasWord(out, j.A.Mark) {
			out = append(out, j.A.Mark)
		}
	}
	return out
}

// chisels are widths that are sold, for the words only.
var chisels = []measure.Length{measure.Inch / 2, 3 * measure.Inch / 8, measure.Inch / 4, 3 * measure.Inch / 16, measure.Inch / 8, measure.Inch / 16}

// metricChisels are widths sold in millimetres.
var metricChisels = []measure.Length{12 * measure.Millimetre, 10 * measure.Millimetre, 8 * measure.Millimetre, 6 * measure.Millimetre, 4 * measure.Millimetre, 3 * measure.Millimetre, 2 * measure.Millimetre}

func (m *maker) chisel(l *joinery.DovetailLayout) string {
	list := chisels
	if m.fine.Unit == measure.Millimetres {
		list = metricChisels
	}
	for _, c := range list {
		if c <= l.Narrowest+2*l.Flare {
			return "a " + m.unit(c) + " chisel enters at the baseline"
		}
	}
	return "no chisel enters; saw the waste out"
}

// dovetailDrawing draws a layout in full size, millimetres, from its upper left
// corner, the front or lower edge at the left.
type dovetailDrawing struct {
	m     *maker
	l     *joinery.DovetailLayout
	row   row    // where it stands on the tail board
	edge  string // what the edge is called from which everything is measured
	items []sheet.Item
	y     float64
}

// Room above and below the pictures for the distances.
const (
	figuresRoom = 19.0
	boardShown  = 15.0 // of a board beyond its joint
)

func (k *dovetailDrawing) add(items ...sheet.Item) { k.items = append(k.items, items...) }

func (k *dovetailDrawing) name(text, more string) {
	k.add(sheet.Text{At: sheet.Pt(0, k.y), Text: text, Face: lettering.Bold, Size: 10, Level: sheet.Top},
		sheet.Text{At: sheet.Pt(0, k.y+4.6), Text: more, Size: 8, Level: sheet.Top, Ink: sheet.Dark})
	k.y += 9
}

// tails is the tail board seen on its outside face, its end upwards.
func (k *dovetailDrawing) tails() {
	whole := k.l
	defer func() { k.l = whole }()
	more := "numbers above: at the end; below: at the baseline"
	if k.row.wide != whole.Width {
		more += "; the row starts " + k.m.gap(k.row.from) + " in, and the rest of the end stays whole"
	}
	k.l = k.row.on(whole)
	l := k.l
	k.name("Tail board, outside face", more)
	k.y += figuresRoom
	deep := l.TailLength.Millimetres()
	top, base, foot := k.y, k.y+deep, k.y+deep+boardShown
	k.distances(top, -1, edges(l.Tails, true))
	k.tailWaste(whole, top)
	k.board(top, foot)
	k.baseline(base, "baseline "+k.m.gap(l.TailLength)+" from the end")
	for _, t := range l.Tails {
		k.add(sheet.Line{A: sheet.Pt(t.TipFrom.Millimetres(), top), B: sheet.Pt(t.BaseFrom.Millimetres(), base), Pen: sheet.Wide},
			sheet.Line{A: sheet.Pt(t.TipTo.Millimetres(), top), B: sheet.Pt(t.BaseTo.Millimetres(), base), Pen: sheet.Wide})
	}
	k.runs(top, foot, sheet.Pen{Width: 0.15, Stroke: sheet.Dashed}, func(r joinery.Run) measure.Length { return r.TailDepth })
	k.y = foot
	k.distances(foot, 1, edges(l.Tails, false))
	k.y += figuresRoom + 4
}

// pinEnd is the pin board seen on its end, outside upwards.
func (k *dovetailDrawing) pinEnd() {
	l := k.l
	more := "outside above, inside below"
	if !l.Through() {
		more += "; the lap of " + k.m.gap(l.Lap) + " stays whole"
	}
	k.name("Pin board, end", more)
	k.y++
	w, t := l.Width.Millimetres(), l.PinStock.Millimetres()
	top, tip, inside := k.y, k.y+l.Lap.Millimetres(), k.y+t
	k.add(sheet.Rect(sheet.Box{Y: top, W: w, H: t}, sheet.Pen{Width: 0.35}, sheet.NoFill))
	for _, s := range l.Tails {
		ring := []sheet.Point{{X: s.TipFrom.Millimetres(), Y: tip}, {X: s.TipTo.Millimetres(), Y: tip}, {X: s.BaseTo.Millimetres(), Y: inside}, {X: s.BaseFrom.Millimetres(), Y: inside}}
		k.add(sheet.Polygon{Rings: [][]sheet.Point{ring}, Pen: sheet.Wide, Hatch: wasteHatch})
	}
	if !l.Through() {
		k.add(sheet.Line{A: sheet.Pt(0, tip), B: sheet.Pt(w, tip), Pen: sheet.Pen{Width: 0.18}})
	}
	k.rabbetsInEnd(inside)
	k.edgeName(top, inside)
	k.y = inside + 7
}

// rabbetsInEnd shows rabbets and grooves where they open on the inside face.
func (k *dovetailDrawing) rabbetsInEnd(inside float64) {
	for _, r := range k.l.Runs {
		if r.PinDepth == 0 {
			continue
		}
		b := sheet.Box{X: r.From.Millimetres(), Y: inside - r.PinDepth.Millimetres(), W: (r.To - r.From).Millimetres(), H: r.PinDepth.Millimetres()}
		k.add(sheet.Rect(b, sheet.Pen{Width: 0.15, Stroke: sheet.Dashed}, sheet.NoFill))
	}
}

// pinFace is the pin board's inside face, its end upwards.
func (k *dovetailDrawing) pinFace() {
	l := k.l
	k.name("Pin board, inside face", "numbers: at the inside face, the narrow side of the sockets")
	k.y++
	deep := l.SocketDepth.Millimetres()
	top, base, foot := k.y, k.y+deep, k.y+deep+boardShown
	for _, s := range l.Tails {
		b := sheet.Box{X: s.BaseFrom.Millimetres(), Y: top, W: s.Base().Millimetres(), H: deep}
		k.add(sheet.Polygon{Rings: [][]sheet.Point{b.Corners()}, Pen: sheet.Wide, Hatch: wasteHatch})
	}
	k.board(top, foot)
	k.baseline(base, "baseline "+k.m.gap(l.SocketDepth)+" from the end")
	k.runs(top, foot, sheet.Pen{Width: 0.18}, func(r joinery.Run) measure.Length { return r.PinDepth })
	k.y = foot
	k.distances(foot, 1, edges(l.Tails, false))
	k.y += figuresRoom
}

// board is three sides of a board and the ragged line where it is broken off.
func (k *dovetailDrawing) board(top, foot float64) {
	w := k.l.Width.Millimetres()
	k.add(sheet.Polyline{Points: []sheet.Point{{X: 0, Y: foot}, {X: 0, Y: top}, {X: w, Y: top}, {X: w, Y: foot}}, Pen: sheet.Pen{Width: 0.35}})
	k.torn(foot)
	k.edgeName(top, foot)
}

// wasteHatch is the saw side of a line.
var wasteHatch = sheet.Hatch{Kind: sheet.Section, Spacing: 1.6, Pen: sheet.Pen{Width: 0.13, Ink: sheet.Dark}}

// tailWaste hatches what is sawn out of the tail board: as the joint cuts it,
// so that the wood which fills the end of a rabbet stays.
func (k *dovetailDrawing) tailWaste(l *joinery.DovetailLayout, top float64) {
	box := joinery.Box{L: 4 * l.TailLength, W: k.row.wide, T: l.TailStock}
	cuts, _ := l.TailFeatures(joinery.Corner{Box: box, End: joinery.Near, At: k.row.from})
	for _, f := range cuts {
		var ring []sheet.Point
		for _, p := range f.Outline {
			ring = append(ring, sheet.Pt(p.V.Millimetres(), top+p.U.Millimetres()))
		}
		k.add(sheet.Polygon{Rings: [][]sheet.Point{ring}, Pen: sheet.Pen{Width: 0.25}, Hatch: wasteHatch})
	}
}

func (k *dovetailDrawing) baseline(y float64, words string) {
	w := k.l.Width.Millimetres()
	k.add(sheet.Line{A: sheet.Pt(0, y), B: sheet.Pt(w, y), Pen: sheet.Pen{Width: 0.18}},
		sheet.Text{At: sheet.Pt(w/2, y+1.4), Text: words, Size: 7.5, Align: sheet.Center, Level: sheet.Top})
}

// runs shows rabbets and grooves along a board that run out through the corner.
func (k *dovetailDrawing) runs(top, foot float64, pen sheet.Pen, depth func(joinery.Run) measure.Length) {
	for _, r := range k.l.Runs {
		if depth(r) == 0 {
			continue
		}
		for _, x := range [2]measure.Length{r.From, r.To} {
			if x > 0 && x < k.l.Width {
				k.add(sheet.Line{A: sheet.Pt(x.Millimetres(), top), B: sheet.Pt(x.Millimetres(), foot), Pen: pen})
			}
		}
		word := "groove"
		if r.From <= 0 || r.To >= k.l.Width {
			word = "rabbet"
		}
		mid := (r.From + r.To).Millimetres() / 2
		k.add(sheet.Text{At: sheet.Pt(mid, foot-2.5), Text: word + ", inside", Size: 6.5, Align: sheet.Center, Ink: sheet.Dark, Clear: true})
	}
}

// torn is the ragged line where a board is broken off.
func (k *dovetailDrawing) torn(y float64) {
	w := k.l.Width.Millimetres()
	pts := []sheet.Point{{X: 0, Y: y}}
	for i := 1; i < 24; i++ {
		off := 0.7
		if i%2 == 0 {
			off = -0.7
		}
		pts = append(pts, sheet.Pt(w*float64(i)/24, y+off))
	}
	k.add(sheet.Polyline{Points: append(pts, sheet.Pt(w, y)), Pen: sheet.Pen{Width: 0.13}})
}

// edgeName names the edge that everything is measured from.
func (k *dovetailDrawing) edgeName(top, foot float64) {
	k.add(sheet.Text{At: sheet.Pt(-2.2, (top+foot)/2), Text: k.edge + " edge", Size: 7.5, Align: sheet.Center, Turn: measure.Degrees(90)})
}

// edges are both sides of every tail.
func edges(tails []joinery.Wedge, tip bool) []measure.Length {
	var out []measure.Length
	for _, t := range tails {
		if tip {
			out = append(out, t.TipFrom, t.TipTo)
		} else {
			out = append(out, t.BaseFrom, t.BaseTo)
		}
	}
	return out
}

// distances prints how far each place lies from the reference edge, upright, on
// the side of a line: up for −1, down for +1.
func (k *dovetailDrawing) distances(y float64, up float64, at []measure.Length) {
	all := append(append([]measure.Length{0}, at...), k.l.Width)
	const pitch = 5.2
	xs := spread(all, pitch)
	for i, l := range all {
		x := l.Millimetres()
		line := []sheet.Point{{X: x, Y: y + up*1}, {X: x, Y: y + up*2.5}, {X: xs[i], Y: y + up*4.8}, {X: xs[i], Y: y + up*6.5}}
		k.add(sheet.Polyline{Points: line, Pen: sheet.Pen{Width: 0.15}})
		t := sheet.Text{At: sheet.Pt(xs[i], y+up*7.3), Text: k.m.gap(l), Size: 10, Turn: measure.Degrees(90), Level: sheet.Middle}
		if up > 0 {
			t.Align = sheet.Right
		}
		k.add(t)
	}
}

// spread moves places apart to a pitch, as little as it can, from the left and
// then back from the right.
func spread(at []measure.Length, pitch float64) []float64 {
	out := make([]float64, len(at))
	for i, l := range at {
		out[i] = l.Millimetres()
	}
	for range 200 {
		moved := false
		for i := 0; i+1 < len(out); i++ {
			if gap := pitch - (out[i+1] - out[i]); gap > 1e-6 {
				out[i] -= gap / 2
				out[i+1] += gap / 2
				moved = true
			}
		}
		if !moved {
			break
		}
	}
	return out
}
