package sheet

import (
	"fmt"
	"math"

	"casewright/internal/sheet/lettering"
)

// Drawing is a drawing in full size, not bound to a sheet: millimetres, y
// down, anywhere. Bounds is what must be on paper.
type Drawing struct {
	Title  string
	Bounds Box
	Items  []Item
}

// Tiles are the sheets a full-size drawing was cut into.
type Tiles struct {
	Pages         []Page // row by row from the upper left
	Columns, Rows int
	Overlap       float64 // as it came out
}

// tileFoot is the strip at the foot of a tile for its name, its place among
// the others and a test bar; tileSide the strip at the right for the other
// test bar.
const (
	tileFoot = 16.0
	tileSide = 14.0
)

// maxTiles bounds what a wrong size in a design can print.
const maxTiles = 400

// Tile cuts the drawing into sheets of the paper that overlap by at least
// overlap millimetres. Marks in the overlap stand at the same places of the
// drawing on both sheets: lay cross upon cross. Every sheet has its name
// (A1, A2 … B1), a map of all sheets, and both test bars. A drawing that fits
// one sheet gives one, centred. The paper is turned if that takes fewer sheets.
// It is an error if nothing remains of the paper
// beside the overlap or the drawing would need more than 400 sheets.
func Tile(d Drawing, paper Paper, overlap float64) (Tiles, error) {
	cut, err := newCutting(d.Bounds, paper.orLetter(), overlap)
	turned, errTurned := newCutting(d.Bounds, paper.orLetter().turned(), overlap)
	if errTurned == nil && (err != nil || turned.nx*turned.ny < cut.nx*cut.ny) {
		cut, err = turned, nil
	}
	if err != nil {
		return Tiles{}, err
	}
	out := Tiles{Columns: cut.nx, Rows: cut.ny, Overlap: overlap}
	for row := range cut.ny {
		for col := range cut.nx {
			out.Pages = append(out.Pages, cut.page(d, col, row))
		}
	}
	return out, nil
}

// cutting is how a drawing is spread over sheets. The window is the part of a
// sheet that shows the drawing; windows step by less than their size.
type cutting struct {
	paper        Paper
	window       Box
	stepX, stepY float64
	nx, ny       int
	origin       Point // of the drawing at the first window's corner
	overlap      float64
}

func newCutting(bounds Box, paper Paper, overlap float64) (*cutting, error) {
	// A window keeps 1 mm of white around the drawing so that lines on its
	// edge are printed in full.
	w := paper.Frame().Trim(0, 0, tileSide, tileFoot)
	if !bounds.finite() || bounds.W < 0 || bounds.H < 0 || !(overlap >= 0) {
		return nil, fmt.Errorf("a drawing %g × %g mm with %g mm overlap cannot be cut into sheets", bounds.W, bounds.H, overlap)
	}
	k := &cutting{paper: paper, window: w, stepX: w.W - overlap, stepY: w.H - overlap, overlap: overlap}
	if k.stepX < 20 || k.stepY < 20 {
		return nil, fmt.Errorf("%s paper leaves nothing beside an overlap of %g mm: use larger paper or less overlap", paper.Name, overlap)
	}
	nx := math.Max(1, math.Ceil((bounds.W+2-overlap)/k.stepX-1e-9))
	ny := math.Max(1, math.Ceil((bounds.H+2-overlap)/k.stepY-1e-9))
	if nx*ny > maxTiles {
		return nil, fmt.Errorf("a drawing %.0f × %.0f mm would need %.0f sheets of %s in full size, more than %d: use larger paper or draw only a part", bounds.W, bounds.H, nx*ny, paper.Name, maxTiles)
	}
	k.nx, k.ny = int(nx), int(ny)
	wide, high := float64(k.nx-1)*k.stepX+w.W, float64(k.ny-1)*k.stepY+w.H
	k.origin = Point{bounds.X - (wide-bounds.W)/2, bounds.Y - (high-bounds.H)/2}
	return k, nil
}

// mapping carries the drawing to the sheet at a column and row.
func (k *cutting) mapping(col, row int) Transform {
	return Move(k.window.X-k.origin.X-float64(col)*k.stepX, k.window.Y-k.origin.Y-float64(row)*k.stepY)
}

func tileName(col, row int) string {
	letters := ""
	for row++; row > 0; row = (row - 1) / 26 {
		letters = string(rune('A'+(row-1)%26)) + letters
	}
	return fmt.Sprintf("%s%d", letters, col+1)
}

func (k *cutting) page(d Drawing, col, row int) Page {
	name := tileName(col, row)
	p := Page{Paper: k.paper, Title: d.Title + " " + name}
	p.Add(Group{Clip: k.window.Corners(), Items: []Item{Group{At: k.mapping(col, row), Items: d.Items}}})
	p.Add(Layer("tiling", append(k.marks(col, row), Rect(k.window, Fine.Of(Mid), NoFill))...))
	p.Add(k.foot(d, col, row)...)
	return p
}

// marks are the crosses in the overlaps: in the middle of each band, a quarter
// in from both ends of the window, at places counted on the drawing; and the
// line to cut along, which is the middle of the band.
func (k *cutting) marks(col, row int) []Item {
	var out []Item
	w := k.window
	band := k.overlap / 2
	if band < 0.5 {
		return nil
	}
	cut := Pen{Width: 0.13, Stroke: Dashed, Ink: Mid}
	upright := func(x float64) {
		out = append(out, Line{Pt(x, w.Y), Pt(x, w.Bottom()), cut})
		out = append(out, RegistrationMark(Pt(x, w.Y+w.H/4)), RegistrationMark(Pt(x, w.Y+w.H*3/4)))
	}
	across := func(y float64) {
		out = append(out, Line{Pt(w.X, y), Pt(w.Right(), y), cut})
		out = append(out, RegistrationMark(Pt(w.X+w.W/4, y)), RegistrationMark(Pt(w.X+w.W*3/4, y)))
	}
	if col > 0 {
		upright(w.X + band)
	}
	if col < k.nx-1 {
		upright(w.Right() - band)
	}
	if row > 0 {
		across(w.Y + band)
	}
	if row < k.ny-1 {
		across(w.Bottom() - band)
	}
	return out
}

func (k *cutting) foot(d Drawing, col, row int) []Item {
	f := k.paper.Frame()
	y := f.Bottom() - tileFoot
	corner := f.Right() - tileSide + 1.5
	name := Text{At: Pt(corner, f.Bottom()-1), Text: tileName(col, row), Face: lettering.Bold, Size: SizeBench}
	out := []Item{k.sheetMap(Pt(corner, y+1.5), col, row), name}
	if f.H-tileFoot >= TestBarLength+8 {
		out = append(out, TestBar{At: Pt(f.Right()-tileSide/2, f.Y+4), Upright: true})
	}
	if f.W >= TestBarLength+6 {
		out = append(out, TestBar{At: Pt(f.X+2, y+6)})
	}
	text := lettering.Ellipsis(d.Title+", full size", lettering.Regular, 7, f.W-tileSide-4)
	return append(out, Text{At: Pt(f.X, f.Bottom()), Text: text, Size: 7})
}

// sheetMap is a small picture of all tiles with this one filled.
func (k *cutting) sheetMap(at Point, col, row int) Item {
	side := math.Min(math.Min((tileSide-2)/float64(k.nx), (tileFoot-8)/float64(k.ny)), 3)
	var out []Item
	for r := range k.ny {
		for c := range k.nx {
			fill := NoFill
			if c == col && r == row {
				fill = Black
			}
			out = append(out, Rect(Box{at.X + float64(c)*side, at.Y + float64(r)*side, side, side}, Fine, fill))
		}
	}
	return Layer("tiling", out...)
}
