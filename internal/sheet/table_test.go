package sheet_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

func randomTable(t *rapid.T) sheet.Table {
	tab := sheet.Table{Columns: []sheet.Column{
		{Title: "mark", Width: 14}, {Title: "part"}, {Title: "length", Width: 20, Align: sheet.OnFigure}, {Title: "a long title for a column", Weight: 0.5, Align: sheet.Center},
	}}
	for i := range rapid.IntRange(0, 60).Draw(t, "rows") {
		if rapid.IntRange(0, 5).Draw(t, "kind") == 0 {
			tab.Rows = append(tab.Rows, sheet.Row{Heading: fmt.Sprintf("group %d", i)})
			continue
		}
		words := strings.Repeat("maple side ", rapid.IntRange(0, 40).Draw(t, "words"))
		tab.Rows = append(tab.Rows, sheet.Row{Cells: append(sheet.Words(fmt.Sprintf("R%d", i), words, "26 3/4"), sheet.Cell{Tick: true, Blank: true})})
	}
	return tab
}

// TestTableOverPages: every row stands on exactly one part, in order; no part
// is higher than its room, nothing in it sticks out; a heading never ends a
// part that is followed by another; cells of one part do not overlap.
func TestTableOverPages(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		tab := randomTable(t)
		first := rapid.Float64Range(30, 200).Draw(t, "first")
		next := rapid.Float64Range(30, 200).Draw(t, "next")
		parts := tab.Layout(150, first, next)
		row := 0
		for i, p := range parts {
			room := next
			if i == 0 {
				room = first
			}
			if p.From != row || p.To < p.From {
				t.Fatalf("part %d has rows %d to %d, want from %d", i, p.From, p.To, row)
			}
			row = p.To
			if p.Height > room+1e-6 {
				t.Fatalf("part %d is %.2f high in %.2f", i, p.Height, room)
			}
			if b := sheet.Bounds(p.Items...); !(sheet.Box{X: -0.5, Y: -0.5, W: 151, H: p.Height + 1}).Contains(b) {
				t.Fatalf("part %d takes %v of %.2f", i, b, p.Height)
			}
			if p.To > p.From && p.To < len(tab.Rows) && tab.Rows[p.To-1].Heading != "" && p.To-p.From > 1 {
				t.Fatalf("part %d ends with a heading", i)
			}
			apart(t, sheet.TextBoxes(p.Items...))
		}
		if row != len(tab.Rows) {
			t.Fatalf("%d rows printed of %d", row, len(tab.Rows))
		}
	})
}

func apart(t *rapid.T, boxes []sheet.Box) {
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.Overlaps(b) {
				t.Fatalf("texts print over each other: %v %v", a, b)
			}
		}
	}
}

// TestFiguresLineUp: in a column of sizes the whole numbers end at one place,
// whatever fractions follow.
func TestFiguresLineUp(t *testing.T) {
	sizes := []string{"26 3/4", "9 13/32", "7", "119 1/2"}
	tab := sheet.Table{Columns: []sheet.Column{{Title: "length", Width: 30, Align: sheet.OnFigure}}}
	for _, s := range sizes {
		tab.Rows = append(tab.Rows, sheet.Row{Cells: sheet.Words(s)})
	}
	p := tab.Layout(30, 100, 100)[0]
	svg := string(sheet.SVGOf(sheet.Box{W: 30, H: 60}, p.Items, sheet.TextByFont))
	ends := wholeEnds(svg)
	if len(ends) != len(sizes) {
		t.Fatalf("found %d sizes", len(ends))
	}
	for _, e := range ends {
		testkit.Near(t, e, ends[0], 0.5) // a fraction's own gap more or less
	}
}

// wholeEnds is where the whole number of each size ends, read from the SVG.
func wholeEnds(svg string) []float64 {
	var out []float64
	for _, g := range strings.Split(svg, "<g transform=\"translate(")[2:] { // the first is the title
		at := numbers(g[:strings.Index(g, ")")])
		_, l, _ := strings.Cut(g, `textLength="`)
		l, _, _ = strings.Cut(l, `"`)
		out = append(out, at[0]+numbers(l)[0])
	}
	return out
}

func TestTableHeadRepeats(t *testing.T) {
	tab := sheet.Table{Columns: []sheet.Column{{Title: "mark"}}}
	for i := range 50 {
		tab.Rows = append(tab.Rows, sheet.Row{Cells: sheet.Words(fmt.Sprint("R", i))})
	}
	doc := sheet.Doc{}
	for _, p := range tab.Layout(100, 60, 100) {
		doc.Pages = append(doc.Pages, sheet.Page{Items: []sheet.Item{p.At(sheet.Pt(30, 30))}})
	}
	text := poppler(t, mustPDF(t, doc), "pdftotext", "FILE", "-")
	if n := strings.Count(text, "mark"); n != len(doc.Pages) || n < 3 {
		t.Errorf("title printed %d times on %d sheets", n, len(doc.Pages))
	}
}

// TestTitleBlockStaysInside: long words are cut, never printed over each other
// or out of the strip.
func TestTitleBlockStaysInside(t *testing.T) {
	long := strings.Repeat("hall cabinet for keys and post ", 5)
	block := sheet.TitleBlock{Piece: long, Sheet: long, Scale: long, Number: 188, Of: 210, Units: long, Replaces: long, Edition: long, Projection: sheet.FirstAngle}
	for _, paper := range sheet.Papers() {
		frame := paper.Frame()
		strip, _ := sheet.Foot(frame)
		item := block.In(frame)
		boxes := sheet.TextBoxes(item)
		for i, a := range boxes {
			if !strip.Contains(a) {
				t.Errorf("%s: text %v leaves the strip %v", paper.Name, a, strip)
			}
			for _, b := range boxes[:i] {
				if a.Overlaps(b) {
					t.Errorf("%s: texts overlap: %v %v", paper.Name, a, b)
				}
			}
		}
	}
}

// TestTilesCoverDrawing: each place of the drawing is on a sheet, at true
// size, and neighbours share the overlap.
func TestTilesCoverDrawing(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := sheet.Box{
			X: rapid.Float64Range(-500, 500).Draw(t, "x"), Y: rapid.Float64Range(-500, 500).Draw(t, "y"),
			W: rapid.Float64Range(0, 1500).Draw(t, "w"), H: rapid.Float64Range(0, 1500).Draw(t, "h"),
		}
		paper := rapid.SampledFrom(sheet.Papers()).Draw(t, "paper")
		overlap := rapid.Float64Range(0, 30).Draw(t, "overlap")
		tiles, err := sheet.Tile(sheet.Drawing{Title: "rod", Bounds: b, Items: []sheet.Item{sheet.Rect(b, sheet.Wide, 0)}}, paper, overlap)
		if err != nil {
			t.Fatal(err)
		}
		if len(tiles.Pages) != tiles.Columns*tiles.Rows {
			t.Fatalf("%d sheets for %d × %d", len(tiles.Pages), tiles.Columns, tiles.Rows)
		}
		windows := tileWindows(tiles)
		for i, w := range windows {
			if col := i % tiles.Columns; col > 0 {
				nearly(t, windows[i-1].Right()-w.X, overlap)
			}
			if i >= tiles.Columns {
				nearly(t, windows[i-tiles.Columns].Bottom()-w.Y, overlap)
			}
		}
		first, last := windows[0], windows[len(windows)-1]
		if !first.Union(last).Contains(b.Inset(-1)) {
			t.Fatalf("sheets from %v to %v do not hold %v", first, last, b)
		}
	})
}

func nearly(t *rapid.T, got, want float64) {
	if d := got - want; d > 1e-6 || d < -1e-6 {
		t.Fatalf("overlap %v, want %v", got, want)
	}
}

// tileWindows is the part of the drawing each sheet shows, from its clip and
// the place its content is moved to.
func tileWindows(tiles sheet.Tiles) []sheet.Box {
	var out []sheet.Box
	for _, p := range tiles.Pages {
		g := p.Items[0].(sheet.Group)
		w := sheet.BoundsOf(g.Clip...)
		at := g.Items[0].(sheet.Group).At
		out = append(out, sheet.Box{X: w.X - at.E, Y: w.Y - at.F, W: w.W, H: w.H})
	}
	return out
}

func TestTileRefuses(t *testing.T) {
	d := sheet.Drawing{Bounds: sheet.Box{W: 300, H: 300}}
	if _, err := sheet.Tile(d, sheet.Letter, 170); err == nil {
		t.Error("an overlap as wide as the paper was taken")
	}
	if _, err := sheet.Tile(d, sheet.Letter, -1); err == nil {
		t.Error("a gap was taken for an overlap")
	}
	d.Bounds.W = 1e7
	if _, err := sheet.Tile(d, sheet.Letter, 10); err == nil || !strings.Contains(err.Error(), "larger paper") {
		t.Errorf("a drawing 10 km wide: %v", err)
	}
}

// TestTilesMeasure: a distance across two sheets is right on paper. Two lines
// 380 mm apart are read off their sheets against the registration mark both
// share, which stands in the middle of the 20 mm overlap.
func TestTilesMeasure(t *testing.T) {
	tick := sheet.Pen{Width: 0.2, Butt: true}
	b := sheet.Box{W: 400, H: 100}
	d := sheet.Drawing{Title: "rod", Bounds: b, Items: []sheet.Item{
		sheet.Line{A: sheet.Pt(10, 0), B: sheet.Pt(10, 100), Pen: tick}, sheet.Line{A: sheet.Pt(390, 0), B: sheet.Pt(390, 100), Pen: tick},
	}}
	tiles, err := sheet.Tile(d, sheet.Letter, 20)
	if err != nil || len(tiles.Pages) != 2 {
		t.Fatalf("%d sheets, %v; want 2", len(tiles.Pages), err)
	}
	pdf := mustPDF(t, sheet.Doc{Pages: tiles.Pages})
	dots := 1200 / 25.4
	w := sheet.BoundsOf(tiles.Pages[0].Items[0].(sheet.Group).Clip...)
	y := int((w.Y + w.H/4 - 3) * dots) // through the upright stroke of a mark, above its circle
	wide := int(tiles.Pages[0].Paper.W * dots)
	left := drawn(t, pdf, 1, 0, y, wide, 4).middles(1)
	right := drawn(t, pdf, 2, 0, y, wide, 4).middles(1)
	// left: window edge, line, mark …; right: … mark, line, window edge …
	from, to := tileWindows(tiles)[0].X, tileWindows(tiles)[1].X
	fromLine := nearest(left, (w.Right()-10)*dots) - nearest(left, (w.X+10-from)*dots)
	toLine := nearest(right, (w.X+390-to)*dots) - nearest(right, (w.X+10)*dots)
	testkit.Near(t, (fromLine+toLine)/dots, 380, 0.05)
}

// nearest is the stroke nearest to where one is expected.
func nearest(at []float64, want float64) float64 {
	best := -1e9
	for _, v := range at {
		if (v-want)*(v-want) < (best-want)*(best-want) {
			best = v
		}
	}
	return best
}

func TestTileNames(t *testing.T) {
	b := sheet.Box{W: 500, H: 500}
	tiles, err := sheet.Tile(sheet.Drawing{Title: "rod", Bounds: b, Items: []sheet.Item{sheet.Rect(b, sheet.Wide, 0)}}, sheet.A4, 10)
	if err != nil {
		t.Fatal(err)
	}
	text := poppler(t, mustPDF(t, sheet.Doc{Pages: tiles.Pages}), "pdftotext", "FILE", "-")
	for _, want := range []string{"A1", "A2", "B1", "full size"} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is on no sheet", want)
		}
	}
	if n := strings.Count(text, "print at 100 %"); n != 2*len(tiles.Pages) {
		t.Errorf("%d test bars on %d sheets, want two each", n, len(tiles.Pages))
	}
	if !bytes.Contains(sheet.SVG(tiles.Pages[0], sheet.TextByFont), []byte("clip-path")) {
		t.Error("the drawing is not cut to its window")
	}
}
