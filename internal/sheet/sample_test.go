package sheet_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

var samples = flag.String("samples", "", "write the sample book to this file, to be looked at")

const in = 25.4

// sample is a small book with everything a sheet can hold. The sizes are those
// of a small hung cabinet, 20 1/2 × 26 3/4 in.
func sample() sheet.Doc {
	doc := sheet.Doc{Title: "Sample sheets", Pages: []sheet.Page{
		elevation(), details(), benchCard(), cover(),
	}}
	doc.Pages = append(doc.Pages, schedule()...)
	tiles, err := sheet.Tile(dovetails(), sheet.Letter, 12)
	if err != nil {
		panic(err)
	}
	doc.Pages = append(doc.Pages, tiles.Pages...)
	return doc
}

func cabinet() []sheet.Item {
	t := 9.0 / 16 * in
	w, h := 20.5*in, 26.75*in
	inner := sheet.Box{X: t, Y: t, W: w - 2*t, H: h - 2*t}
	divider := sheet.Box{X: t, Y: t + 3.25*in, W: inner.W, H: 0.5 * in}
	column := sheet.Box{X: w - t - 6.5*in - 0.5*in, Y: divider.Bottom(), W: 0.5 * in, H: h - t - divider.Bottom()}
	shelf := sheet.Box{X: column.Right(), Y: divider.Bottom() + 11.25*in, W: 6.5 * in, H: 0.375 * in}
	drawer := sheet.Box{X: w/2 - 0.1875*in, Y: t, W: 0.375 * in, H: 3.25 * in}
	return []sheet.Item{
		sheet.Rect(sheet.Box{W: w, H: h}, sheet.Wide, 0),
		sheet.Rect(inner, sheet.Wide, 0),
		sheet.Rect(divider, sheet.Wide, 0), sheet.Rect(column, sheet.Wide, 0),
		sheet.Rect(shelf, sheet.Wide, 0), sheet.Rect(drawer, sheet.Wide, 0),
		sheet.Line{A: sheet.Pt(w/2, -15), B: sheet.Pt(w/2, h+15), Pen: sheet.Centre},
	}
}

func elevation() sheet.Page {
	p := sheet.Page{Paper: sheet.Letter, Title: "Front"}
	frame := p.Paper.Frame()
	_, room := sheet.Foot(frame)
	t := 9.0 / 16 * in
	w, h := 20.5*in, 26.75*in
	v := sheet.FitView(sheet.Box{W: w, H: h}, room.Trim(30, 20, 30, 45), sheet.InchScales)
	dims := sheet.Dimensions(v.OnPaper(), sheet.DimStyle{},
		sheet.Dim{Side: sheet.Below, Stops: v.Xs(0, w), Labels: []string{"20 1/2"}},
		sheet.Dim{Side: sheet.Below, Stops: v.Xs(0, t, w-t-7*in, w-t-6.5*in, w-t, w), Labels: []string{"9/16", "12 3/8", "1/2", "6 1/2", "9/16"}},
		sheet.Dim{Side: sheet.Above, Stops: v.Xs(0, t, w/2-0.1875*in, w/2+0.1875*in, w-t, w), Labels: []string{"9/16", "9 1/2", "3/8", "9 1/2", "9/16"}},
		sheet.Dim{Side: sheet.LeftOf, Stops: v.Ys(0, h), Labels: []string{"26 3/4"}},
		sheet.Dim{Side: sheet.LeftOf, Stops: v.Ys(0, t, t+3.25*in, t+3.75*in, h-t, h), Labels: []string{"9/16", "3 1/4", "1/2", "21 7/8", "9/16"}},
		sheet.Dim{Side: sheet.RightOf, Stops: v.Ys(t+3.75*in, t+15*in, t+15.375*in, h-t), Labels: []string{"11 1/4", "3/8", "10 1/4"}},
	)
	shelf := v.Pt(w-t-3*in, t+15.2*in)
	p.Add(p.Paper.Border(), sheet.Layer("outlines", v.Place(cabinet()...)), dims,
		sheet.Balloon{At: v.Pt(6.5*in, 15*in), Mark: "D1"},
		sheet.Balloon{At: v.Pt(6*in, 2*in), Mark: "W1"}, sheet.Balloon{At: v.Pt(14*in, 2*in), Mark: "W2"},
		sheet.Balloon{At: v.Pt(16.5*in, 19.5*in), Mark: "C-12", Target: &shelf},
		v.LabelAt("Front, door and drawers off", sheet.Pt(v.OnPaper().Middle().X, v.OnPaper().Bottom()+dims.Room.Bottom+6)),
		sheet.TitleBlock{Piece: "Hall cabinet for keys and post", Sheet: "Front, openings", Scale: v.Scale.String(), Number: 3, Of: 24, Units: "inches, to 1/32", Edition: "first", Projection: sheet.ThirdAngle}.In(frame))
	return p
}

// cover shows the cabinet in three views, with the values in bench type.
func cover() sheet.Page {
	p := sheet.Page{Paper: sheet.Letter.Landscape(), Title: "Views"}
	frame := p.Paper.Frame()
	_, room := sheet.Foot(frame)
	w, h, d := measure.Inch*41/2, measure.Inch*107/4, measure.Inch*43/8
	thick := measure.Inch * 9 / 16
	style := measure.Style{Graduation: measure.ThirtySeconds}
	box := func(w, h measure.Length) sheet.Box { return sheet.Box{W: w.Millimetres(), H: h.Millimetres()} }
	cut := func(x, y, w, h float64, k sheet.HatchKind) sheet.Item {
		b := sheet.Box{X: x * in, Y: y * in, W: w * in, H: h * in}
		return sheet.Polygon{Rings: [][]sheet.Point{b.Corners()}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: k}}
	}
	f := sheet.Figures{
		Projection: sheet.ThirdAngle,
		Front: sheet.Figure{Name: "front", Model: box(w, h), Items: cabinet(), Dims: func(v sheet.View) []sheet.Dim {
			return []sheet.Dim{
				v.Chain(sheet.LeftOf, style, 0, h),
				v.Chain(sheet.LeftOf, style, 0, thick, thick+13*measure.Inch/4, thick+15*measure.Inch/4, h-thick, h),
				v.Chain(sheet.Below, style, 0, w),
				v.Chain(sheet.Below, style, 0, thick, w-thick-7*measure.Inch, w-thick-13*measure.Inch/2, w-thick, w),
			}
		}},
		Top: sheet.Figure{Name: "from above", Model: box(w, d), Items: []sheet.Item{sheet.Rect(box(w, d), sheet.Wide, 0), sheet.Rect(box(w, d).Trim(14.3, 0, 14.3, 22.2), sheet.Hidden, 0)}, Dims: func(v sheet.View) []sheet.Dim {
			return []sheet.Dim{v.Chain(sheet.RightOf, style, 0, d)}
		}},
		Side: sheet.Figure{Name: "section", Model: box(d, h), Items: []sheet.Item{
			sheet.Rect(box(d, h), sheet.Narrow, 0),
			cut(0, 0, 5.375, 0.5625, sheet.EndGrain), cut(0, 26.75-0.5625, 5.375, 0.5625, sheet.EndGrain),
			cut(0.25, 3.8125, 4.25, 0.5, sheet.EndGrain), cut(4.5, 0.5625, 0.3125, 25.625, sheet.Section),
		}, Dims: func(v sheet.View) []sheet.Dim {
			return []sheet.Dim{v.Chain(sheet.Above, style, 0, d-7*measure.Inch/8, d), v.Chain(sheet.Above, style, 0, d)}
		}},
	}
	a := f.Arrange(room.Inset(5), sheet.InchScales)
	p.Add(p.Paper.Border(), a, sheet.TitleBlock{Piece: "Hall cabinet for keys and post", Sheet: "The piece", Scale: a.Scale.String(), Number: 1, Of: 24, Units: "inches, to 1/32", Projection: sheet.ThirdAngle}.In(frame))
	return p
}

func details() sheet.Page {
	p := sheet.Page{Paper: sheet.A4.Landscape(), Title: "Details"}
	frame := p.Paper.Frame()
	_, room := sheet.Foot(frame)
	a := sheet.Box{X: room.X + 20, Y: room.Y + 25, W: 70, H: 14}
	b := sheet.Box{X: a.X, Y: a.Bottom(), W: 14, H: 50}
	end := sheet.Box{X: a.X + 110, Y: a.Y, W: 60, H: 22}
	long := sheet.Box{X: end.X, Y: end.Bottom() + 12, W: 90, H: 26}
	arcFrom := sheet.Pt(room.X+30, room.Bottom()-18)
	p.Add(p.Paper.Border(),
		sheet.Polygon{Rings: [][]sheet.Point{a.Corners()}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.Section}},
		sheet.Polygon{Rings: [][]sheet.Point{b.Corners()}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.SectionOpposed}},
		sheet.Polygon{Rings: [][]sheet.Point{end.Corners()}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.EndGrain}},
		sheet.Polygon{Rings: [][]sheet.Point{long.Corners()}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.LongGrain}},
		sheet.GrainArrow{At: sheet.Pt(long.Middle().X, long.Bottom()+5), Length: 40},
		sheet.Triangle{Box: sheet.Box{X: long.Right() + 4, Y: end.Y, W: 30, H: 60}},
		sheet.Leader{Target: sheet.Pt(a.Right()-20, a.Y), Elbow: sheet.Pt(a.Right()-8, a.Y-9), Text: "rabbet 3/8 deep, 7/8 wide"},
		sheet.Leader{Target: b.Middle(), Elbow: b.Middle().Plus(16, 10), Text: "side, cherry, hangs from these tails", Width: 34, Dot: true},
		sheet.AlignedDim{A: arcFrom, B: arcFrom.Plus(80, -30), Offset: 8, Label: "5 13/32"},
		sheet.AlignedDim{A: arcFrom.Plus(80, -30), B: arcFrom.Plus(81.5, -26), Offset: -8, Label: "11/64"},
		sheet.Polyline{Points: []sheet.Point{arcFrom, arcFrom.Plus(80, -30), arcFrom.Plus(81.5, -26)}, Pen: sheet.Wide},
		sheet.Arc{Centre: sheet.Pt(190, 175), Radius: 40, From: 30 * math.Pi / 180, Sweep: 120 * math.Pi / 180, Pen: sheet.Wide},
		sheet.Line{A: sheet.Pt(190, 130), B: sheet.Pt(190, 180), Pen: sheet.Centre},
		sheet.Line{A: sheet.Pt(150, 172), B: sheet.Pt(232, 172), Pen: sheet.Hidden},
		sheet.Line{A: sheet.Pt(150, 166), B: sheet.Pt(232, 166), Pen: sheet.Ghost},
		sheet.TestBar{At: sheet.Pt(frame.X+4, frame.Bottom()-26)},
		sheet.TitleBlock{Piece: "Hall cabinet for keys and post", Sheet: "Details", Number: 4, Of: 24, Units: "inches, to 1/32", Replaces: "2", Projection: sheet.FirstAngle}.In(frame))
	return p
}

func benchCard() sheet.Page {
	p := sheet.Page{Paper: sheet.Letter, Title: "Left side"}
	frame := p.Paper.Frame()
	_, room := sheet.Foot(frame)
	text := sheet.Paragraph{At: sheet.Pt(room.X+6, room.Y+34), Width: 110, Size: sheet.SizeBench,
		Text: "Cut the left side A1 and the right side A2 to length together, show faces out, from board CH-2. Keep 1/16 in at each end for the shooting board."}
	p.Add(p.Paper.Border(),
		sheet.Text{At: sheet.Pt(room.X+6, room.Y+18), Text: "26 3/4", Face: lettering.Bold, Size: sheet.SizeKey},
		sheet.Text{At: sheet.Pt(room.X+52, room.Y+18), Text: "× 5 3/8 × 9/16", Size: sheet.SizeBench},
		text)
	for i, s := range []string{"stop block set to 26 3/4", "both ends square", "triangle on the show faces"} {
		y := room.Y + 40 + text.Height() + float64(i)*10
		p.Add(sheet.TickBox(sheet.Pt(room.X+6, y), 5), sheet.Text{At: sheet.Pt(room.X+14, y+4.3), Text: s, Size: sheet.SizeBench})
	}
	// the board with its dovetails, half size, values in bench type
	style := measure.Style{Graduation: measure.ThirtySeconds}
	board := sheet.Box{W: 5 * in, H: 5.375 * in}
	v := sheet.ViewAt(board, sheet.Pt(room.X+60, room.Y+150), sheet.InchScales[2])
	up := []measure.Length{0}
	for i, s := range []measure.Length{4, 10, 5, 14, 5, 14, 5, 14, 4, 11} {
		up = append(up, up[i]+s*measure.Inch/16)
	}
	tails := []sheet.Item{sheet.Rect(board, sheet.Wide, 0)}
	for i := 1; i+1 < len(up); i += 2 {
		a, b := up[i].Millimetres(), up[i+1].Millimetres()
		tails = append(tails, sheet.Polygon{Rings: [][]sheet.Point{{{X: 0, Y: a - 1}, {X: 14.3, Y: a}, {X: 14.3, Y: b}, {X: 0, Y: b + 1}}}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.LongGrain}})
	}
	p.Add(v.Place(tails...), sheet.Dimensions(v.OnPaper(), sheet.DimStyle{Size: sheet.SizeBench},
		v.Chain(sheet.LeftOf, style, up...), v.Chain(sheet.LeftOf, style, 0, up[len(up)-1]),
		v.Chain(sheet.Below, style, 0, 9*measure.Inch/16, 5*measure.Inch), v.Chain(sheet.Above, style, 0, 9*measure.Inch/16)))
	p.Add(sheet.TitleBlock{Piece: "Hall cabinet for keys and post", Sheet: "Sides to length", Number: 9, Of: 24, Units: "inches, to 1/32"}.In(frame))
	return p
}

func schedule() []sheet.Page {
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "mark", Width: 14, Face: lettering.Bold},
		{Title: "part", Weight: 1.6},
		{Title: "length", Width: 18, Align: sheet.OnFigure},
		{Title: "width", Width: 18, Align: sheet.OnFigure},
		{Title: "thick", Width: 16, Align: sheet.OnFigure},
		{Title: "species", Width: 20},
		{Title: "note", Weight: 2},
		{Title: "measured", Width: 24},
	}}
	for g := range 6 {
		t.Rows = append(t.Rows, sheet.Row{Heading: []string{"Case", "Door", "Left drawer", "Right drawer", "Ledge", "Back"}[g]})
		for i := range 7 {
			note := []string{"", "waits for the left drawer opening", "book-matched with its neighbour"}[i%3]
			t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
				{Text: fmt.Sprintf("%c%d", 'A'+g, i+1)}, {Text: "Side, left"},
				{Text: []string{"26 3/4", "9 13/32", "119 1/2", "7"}[i%4]}, {Text: "5 3/8"}, {Text: "9/16"},
				{Text: "cherry"}, {Text: note}, {Tick: true, Blank: true},
			}})
		}
	}
	frame := sheet.Letter.Frame()
	_, room := sheet.Foot(frame)
	room = room.Inset(4)
	var pages []sheet.Page
	for i, part := range t.Layout(room.W, room.H-12, room.H) {
		p := sheet.Page{Paper: sheet.Letter, Title: fmt.Sprintf("Parts %d", i+1)}
		at := sheet.Pt(room.X, room.Y)
		if i == 0 {
			p.Add(sheet.Text{At: at.Plus(0, 7), Text: "Parts", Size: sheet.SizeHead})
			at.Y += 12
		}
		p.Add(p.Paper.Border(), part.At(at), sheet.TitleBlock{Piece: "Hall cabinet for keys and post", Sheet: "Parts", Number: 1 + i, Of: 24, Units: "inches, to 1/32"}.In(frame))
		pages = append(pages, p)
	}
	return pages
}

func dovetails() sheet.Drawing {
	d := sheet.Drawing{Title: "Left side, tails 1:8", Bounds: sheet.Box{W: 26.75 * in, H: 5.375 * in}}
	d.Items = append(d.Items, sheet.Rect(d.Bounds, sheet.Wide, 0))
	for i := range 4 {
		y := 12 + float64(i)*30
		d.Items = append(d.Items, sheet.Polygon{Rings: [][]sheet.Point{{{X: 0, Y: y}, {X: 14.2875, Y: y + 1.8}, {X: 14.2875, Y: y + 8}, {X: 0, Y: y + 9.8}}}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.Section}})
	}
	d.Items = append(d.Items, sheet.GrainArrow{At: d.Bounds.Middle(), Length: 60})
	return d
}

func TestMain(m *testing.M) {
	flag.Parse()
	if *samples != "" {
		pdf, err := sheet.PDF(sample())
		if err == nil {
			err = os.WriteFile(*samples, pdf, 0o644)
		}
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}
