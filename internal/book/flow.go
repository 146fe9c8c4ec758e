package book

import (
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// flow writes down a sheet and on to the next when it is full.
type flow struct {
	m     *maker
	title string
	d     *draft
	box   sheet.Box // what may be written on
	y     float64
}

// Spaces of a written sheet, mm; by eye.
const (
	padding   = 8.0
	titleDrop = 13.0 // from the top of the box to below the title
	paraGap   = 2.6
	headGap   = 6.0
)

func (m *maker) flow(title string) *flow {
	f := &flow{m: m, title: title}
	f.page()
	return f
}

// body is what of a sheet's frame is written on.
func writable(paper sheet.Paper) sheet.Box {
	_, rest := sheet.Foot(paper.Frame())
	return rest.Trim(padding, padding, padding, padding-2)
}

func (f *flow) page() {
	title := f.title
	if f.d != nil {
		title += ", continued"
	}
	f.d = f.m.page(f.title, f.m.paper) // whatever the last one was turned to
	f.box = writable(f.m.paper)
	f.d.add(sheet.Text{At: sheet.Pt(f.box.X, f.box.Y), Text: title, Size: sheet.SizeHead, Level: sheet.Top})
	f.y = f.box.Y + titleDrop
}

func (f *flow) left() float64 { return f.box.Bottom() - f.y }

// fresh reports that nothing but the title stands on the sheet.
func (f *flow) fresh() bool { return f.y <= f.box.Y+titleDrop+1e-9 }

// need starts a new sheet unless h millimetres are left.
func (f *flow) need(h float64) {
	if f.left() < h && !f.fresh() {
		f.page()
	}
}

func (f *flow) skip(h float64) {
	if !f.fresh() {
		f.y += h
	}
}

// head is a heading that stays with what follows.
func (f *flow) head(text string, follows float64) {
	f.skip(headGap)
	f.need(8 + follows)
	f.d.add(sheet.Text{At: sheet.Pt(f.box.X, f.y), Text: text, Face: lettering.Bold, Size: 11.5, Level: sheet.Top})
	f.y += 7
}

// para writes a paragraph across measure millimetres, or the whole width.
func (f *flow) para(text string, style sheet.Paragraph) {
	p := style
	p.Text = text
	if p.Width <= 0 {
		p.Width = f.box.W
	}
	indent := p.At.X
	h := p.Height()
	f.need(h)
	p.At = sheet.Pt(f.box.X+indent, f.y)
	f.d.add(p)
	f.y += h + paraGap
}

// lead is the paragraph that says what a sheet is for.
func (f *flow) lead(text string) {
	f.para(text, sheet.Paragraph{Width: min(f.box.W, 150), Ink: sheet.Dark})
	f.y += 1.5
}

// item is a tick box or dot with a paragraph beside it.
func (f *flow) item(tick bool, text string) {
	p := sheet.Paragraph{Text: text, Width: f.box.W - 7}
	h := p.Height()
	f.need(h)
	p.At = sheet.Pt(f.box.X+7, f.y)
	f.d.add(p)
	if tick {
		f.d.add(sheet.TickBox(sheet.Pt(f.box.X, f.y-0.3), 3.4))
	} else {
		f.d.add(sheet.Circle{Centre: sheet.Pt(f.box.X+2, f.y+1.4), Radius: 0.55, Fill: sheet.Black})
	}
	f.y += h + paraGap
}

// table runs over as many sheets as it needs.
func (f *flow) table(t sheet.Table) {
	f.need(22)
	full := f.box.H - titleDrop
	for i, part := range t.Layout(f.box.W, f.left(), full) {
		if i > 0 {
			f.page()
		}
		if part.To > part.From || len(t.Rows) == 0 {
			f.d.add(part.At(sheet.Pt(f.box.X, f.y)))
			f.y += part.Height
		}
	}
	f.y += paraGap
}

// shareOfSheet is how much of a sheet a figure may take and leave the rest to
// words.
const shareOfSheet = 0.58

// assemblyFigure draws views above the words; on a sheet of their own, or that
// turned, where they can then be drawn larger.
func (f *flow) assemblyFigure(a *arrangement) {
	best := a.draw(sheet.Box{X: f.box.X, Y: f.y, W: f.box.W, H: f.left() * shareOfSheet}, f.m.scales)
	best.height += 3
	for _, paper := range []sheet.Paper{f.m.paper, f.m.paper.Landscape()} {
		box := writable(paper) // starts at the same corner on either
		room := sheet.Box{X: box.X, Y: f.y, W: box.W, H: box.Bottom() - f.y}
		alone := a.draw(room, f.m.scales)
		if alone.scale.Ratio() <= best.scale.Ratio() {
			continue
		}
		drop := max(0, (room.H-alone.height)*0.4)
		alone.items = []sheet.Item{sheet.Group{At: sheet.Move(0, drop), Items: alone.items}}
		alone.height = room.H
		best = alone
		f.d.paper, f.box = paper, box
	}
	f.d.add(best.items...)
	f.d.scale, f.d.views = best.scale.String(), true
	f.y += best.height
	if len(best.unseen) > 0 {
		text := "Not marked above, for others hide them: " + listed(best.unseen) + "."
		f.d.add(sheet.Text{At: sheet.Pt(f.box.X, min(f.y, f.box.Bottom())), Text: text, Size: 8, Ink: sheet.Dark})
		f.y += 4
	}
}
