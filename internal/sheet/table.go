package sheet

import (
	"math"

	"casewright/internal/sheet/lettering"
)

// Column is one column of a table. Width is in millimetres; columns with 0
// share what is left by their Weight, where 0 counts as 1. Cells wrap to the
// column, except in columns aligned [OnFigure].
type Column struct {
	Title  string
	Width  float64
	Weight float64
	Align  Align
	Face   lettering.Face
}

// Cell is what stands in a row under a column.
type Cell struct {
	Text  string
	Bold  bool
	Tick  bool // a box to tick, before the text
	Blank bool // a line to write on, where there is no text
	Ink   Shade
}

// Words is a cell of text for every string.
func Words(texts ...string) []Cell {
	out := make([]Cell, len(texts))
	for i, t := range texts {
		out[i].Text = t
	}
	return out
}

// Row is one row. With a Heading it runs across all columns, stands above the
// rows that follow and never ends a page.
type Row struct {
	Heading string
	Cells   []Cell // missing ones are empty, surplus ones left out
	Shade   Shade  // fill behind the row
}

// Table is a schedule. Size 0 is [SizeNote].
type Table struct {
	Columns []Column
	Rows    []Row
	Size    lettering.Points
	RowPad  float64 // above and below a row's text; 0 is the usual
}

// TablePart is what of a table goes on one page. Its items have their upper
// left corner at the origin.
type TablePart struct {
	Items    []Item
	Height   float64
	From, To int // rows From up to but not including To
}

// At is the part with its upper left corner at a place.
func (p TablePart) At(upperLeft Point) Item {
	return Group{At: Move(upperLeft.X, upperLeft.Y), Layer: "schedule", Items: p.Items}
}

// Layout breaks the table over pages: the first part may be first high, the
// others next. The column titles stand on every part. A row is never broken;
// one higher than a whole page is cut short with an ellipsis. Where the first
// room is too low for even one row, the first part is empty, 0 high. At least
// one part is returned, even with no rows.
func (t Table) Layout(width, first, next float64) []TablePart {
	l := t.newLayout(width)
	var out []TablePart
	for from := 0; ; {
		room := next
		if len(out) == 0 {
			room = first
		}
		p := l.part(from, room, len(out) == 0 && first < next)
		out = append(out, p)
		if p.To >= len(t.Rows) {
			return out
		}
		from = p.To
	}
}

type tableLayout struct {
	t        Table
	x, w     []float64 // columns
	width    float64
	fraction []float64 // widest fraction of columns aligned OnFigure
	lead     float64
	pad      float64
	head     float64
}

const cellPad = 1.5 // left and right within a cell

func (t Table) newLayout(width float64) *tableLayout {
	if t.Size <= 0 {
		t.Size = SizeNote
	}
	l := &tableLayout{t: t, width: width, lead: lettering.LineHeight(t.Size), pad: t.RowPad}
	if l.pad <= 0 {
		l.pad = 0.32 * t.Size.Millimetres()
	}
	l.columns()
	for i, c := range t.Columns {
		l.fraction = append(l.fraction, 0)
		if c.Align != OnFigure {
			continue
		}
		for _, r := range t.Rows {
			line := lettering.Set(r.cell(i).Text, r.cell(i).face(c), t.Size)
			l.fraction[i] = math.Max(l.fraction[i], line.FractionWidth())
		}
	}
	l.head = l.headHeight()
	return l
}

func (l *tableLayout) columns() {
	free, weight := l.width, 0.0
	for _, c := range l.t.Columns {
		free -= c.Width
		if c.Width <= 0 {
			weight += c.weight()
		}
	}
	x := 0.0
	for _, c := range l.t.Columns {
		w := c.Width
		if w <= 0 {
			w = math.Max(free, 0) * c.weight() / weight
		}
		l.x, l.w = append(l.x, x), append(l.w, w)
		x += w
	}
}

func (c Column) weight() float64 {
	if c.Weight <= 0 {
		return 1
	}
	return c.Weight
}

func (r Row) cell(i int) Cell {
	if i < len(r.Cells) {
		return r.Cells[i]
	}
	return Cell{}
}

func (c Cell) face(col Column) lettering.Face {
	if c.Bold {
		return lettering.Bold
	}
	return col.Face
}

// tick is the side of a tick box: as high as a capital and a bit.
func (l *tableLayout) tick() float64 { return 0.95 * l.t.Size.Millimetres() }

func (l *tableLayout) textWidth(i int, c Cell) float64 {
	w := l.w[i] - 2*cellPad
	if c.Tick {
		w -= l.tick() + 1.2
	}
	return math.Max(w, 0)
}

func (l *tableLayout) lines(i int, c Cell) []string {
	col := l.t.Columns[i]
	if col.Align == OnFigure {
		return []string{lettering.Ellipsis(c.Text, c.face(col), l.t.Size, l.textWidth(i, c))}
	}
	return lettering.WrapText(c.Text, c.face(col), l.t.Size, l.textWidth(i, c))
}

func (l *tableLayout) rowHeight(r Row) float64 {
	if r.Heading != "" {
		return l.lead + 3.2*l.pad
	}
	n := 1
	for i := range l.t.Columns {
		n = max(n, len(l.lines(i, r.cell(i))))
	}
	return float64(n)*l.lead + 2*l.pad
}

func (l *tableLayout) headSize() lettering.Points { return l.t.Size * 0.85 }

func (l *tableLayout) headLines(i int) []string {
	return lettering.WrapText(l.t.Columns[i].Title, lettering.Regular, l.headSize(), math.Max(l.w[i]-2*cellPad, 0))
}

func (l *tableLayout) headHeight() float64 {
	n := 1
	for i := range l.t.Columns {
		n = max(n, len(l.headLines(i)))
	}
	return float64(n)*lettering.LineHeight(l.headSize()) + 2*l.pad
}

// part fills one page from a row on. mayWait lets the first part stay empty
// where the row would fit a later, higher page.
func (l *tableLayout) part(from int, room float64, mayWait bool) TablePart {
	p := TablePart{From: from, To: from}
	p.Items = l.header()
	y := l.head
	for p.To < len(l.t.Rows) {
		r := l.t.Rows[p.To]
		h := l.rowHeight(r)
		need := h
		for k := p.To; l.t.Rows[k].Heading != "" && k+1 < len(l.t.Rows); k++ {
			need += l.rowHeight(l.t.Rows[k+1])
		}
		if y+need > room+1e-9 && (p.To > from || mayWait) {
			break
		}
		if y+h > room+1e-9 { // alone on its page and still too high
			h = math.Max(room-y, l.lead+2*l.pad)
		}
		p.Items = append(p.Items, l.row(r, y, h)...)
		y += h
		p.To++
	}
	if p.To == from && len(l.t.Rows) > 0 {
		return TablePart{From: from, To: from} // titles alone help nobody
	}
	p.Items = append(p.Items, Line{Pt(0, y), Pt(l.width, y), Narrow})
	p.Height = y
	return p
}

func (l *tableLayout) header() []Item {
	out := []Item{Line{Pt(0, l.head), Pt(l.width, l.head), Narrow}}
	size := l.headSize()
	for i, c := range l.t.Columns {
		lines := l.headLines(i)
		for k, s := range lines {
			up := float64(len(lines)-1-k) * lettering.LineHeight(size)
			x, a := l.edge(i, c.Align, 0)
			out = append(out, Text{At: Pt(x, l.head-l.pad-0.22*size.Millimetres()-up), Text: s, Size: size, Align: a, Ink: Dark})
		}
	}
	return out
}

// edge is where text of a column is hung up, and by which end.
func (l *tableLayout) edge(i int, a Align, indent float64) (float64, Align) {
	switch a {
	case Center:
		return l.x[i] + (l.w[i]+indent)/2, Center
	case Right, OnFigure:
		return l.x[i] + l.w[i] - cellPad, Right
	}
	return l.x[i] + cellPad + indent, Left
}

func (l *tableLayout) row(r Row, y, h float64) []Item {
	var out []Item
	if r.Shade != NoFill {
		out = append(out, Rect(Box{0, y, l.width, h}, NoPen, r.Shade))
	}
	if r.Heading != "" {
		s := lettering.Ellipsis(r.Heading, lettering.Bold, l.t.Size, l.width-2*cellPad)
		at := Pt(cellPad, y+h-l.pad-0.3*l.t.Size.Millimetres())
		return append(out, Text{At: at, Text: s, Face: lettering.Bold, Size: l.t.Size})
	}
	for i := range l.t.Columns {
		out = append(out, l.cell(i, r.cell(i), y, h)...)
	}
	return append(out, Line{Pt(0, y+h), Pt(l.width, y+h), Fine.Of(Dark)})
}

func (l *tableLayout) cell(i int, c Cell, y, h float64) []Item {
	var out []Item
	em := l.t.Size.Millimetres()
	base := y + l.pad + l.lead - 0.35*em
	indent := 0.0
	if c.Tick {
		side := l.tick()
		out = append(out, TickBox(Pt(l.x[i]+cellPad, base-side+0.1*em), side))
		indent = side + 1.2
	}
	if c.Text == "" {
		if c.Blank {
			out = append(out, Blank(Pt(l.x[i]+cellPad+indent, base+0.15*em), math.Max(l.w[i]-2*cellPad-indent, 0)))
		}
		return out
	}
	col := l.t.Columns[i]
	lines := l.lines(i, c)
	for k, s := range lines {
		t := Text{At: Pt(0, base+float64(k)*l.lead), Text: s, Face: c.face(col), Size: l.t.Size, Ink: c.Ink}
		if k+1 < len(lines) && base+float64(k+1)*l.lead+0.25*em > y+h {
			t.Text = lettering.Ellipsis(s+" …", t.Face, t.Size, l.textWidth(i, c))
			return append(out, l.hang(i, t, indent))
		}
		out = append(out, l.hang(i, t, indent))
	}
	return out
}

// hang puts a text in its column. In columns of sizes the whole numbers end
// at one line and the fractions follow it.
func (l *tableLayout) hang(i int, t Text, indent float64) Item {
	a := l.t.Columns[i].Align
	t.At.X, t.Align = l.edge(i, a, indent)
	if a == OnFigure {
		t.At.X += lettering.Set(t.Text, t.Face, t.Size).FractionWidth() - l.fraction[i]
	}
	return t
}
