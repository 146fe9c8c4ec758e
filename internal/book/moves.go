package book

import (
	"fmt"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
)

// movement says how the wood of this piece moves through its year.
func (m *maker) movement() error {
	f := m.flow("How the wood moves here")
	m.mark("movement")
	m.seasonWords(f)
	m.woodTable(f)
	m.fitTable(f)
	return nil
}

func (m *maker) seasonWords(f *flow) {
	s, shop, air := m.p.Spec.Season, m.p.Spec.Shop, m.p.Air
	text := fmt.Sprintf("The room goes from %.0f to %.0f %% relative humidity through the year, at %s. ", float64(s.Dry), float64(s.Damp), m.degrees(s.Temperature))
	if s.Usual {
		text = "The text names no season; the usual range is taken: " + text
	}
	text += fmt.Sprintf("Wood in it comes to %.1f %% moisture in the dry season and %.1f %% in the damp one. In the shop, at %.0f %% and %s, it comes to %.1f %%. ",
		float64(air.Dry), float64(air.Damp), float64(shop.Humidity), m.degrees(shop.Temperature), float64(air.Shop))
	f.lead(text + "Averages of the species: single boards scatter about them.")
}

func (m *maker) degrees(t measure.Temperature) string {
	if m.fine.Unit == measure.Millimetres {
		return fmt.Sprintf("%.0f °C", float64(t))
	}
	return fmt.Sprintf("%.0f °F", float64(t)*9/5+32)
}

// woodTable is what a board of each wood does, per foot or per 100 mm of width.
func (m *maker) woodTable(f *flow) {
	per, word := 12*measure.Inch, "a board 12 wide"
	if m.fine.Unit == measure.Millimetres {
		per, word = 100*measure.Millimetre, "a board 100 wide"
	}
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "wood", Weight: 1.2}, {Title: "species", Weight: 1.5}, {Title: "cut"}, {Title: "moisture today"},
		{Title: word + " gains to the damp", Weight: 1.5}, {Title: "loses to the dry", Weight: 1.2},
	}}
	var seen []*piece.Wood
next:
	for _, p := range m.p.Parts {
		for _, w := range seen {
			if w == p.Wood {
				continue next
			}
		}
		seen = append(seen, p.Wood)
		t.Rows = append(t.Rows, m.woodRow(p.Wood, per))
	}
	f.table(t)
}

func (m *maker) woodRow(w *piece.Wood, per measure.Length) sheet.Row {
	grow, err1 := w.Species.Move(per, w.Moisture, m.p.Air.Damp, w.Cut, widthwise)
	shrink, err2 := w.Species.Move(per, w.Moisture, m.p.Air.Dry, w.Cut, widthwise)
	gains, loses := m.thousandths(grow.Change), m.thousandths(-shrink.Change)
	if err1 != nil || err2 != nil {
		gains, loses = "not known", "not known"
	}
	return sheet.Row{Cells: sheet.Words(w.Name, w.Species.Name, w.Cut.String(), fmt.Sprintf("%.1f %%", float64(w.Moisture)), gains, loses)}
}

// fitTable is every place where a part must have room.
func (m *maker) fitTable(f *flow) {
	if len(m.p.Fits) == 0 {
		return
	}
	f.head("Where it must have room", 26)
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "part", Weight: 1.6}, {Title: "moves in", Weight: 1.7}, {Title: "size that moves", Width: 18, Align: sheet.OnFigure},
		{Title: "gains to the damp", Width: 18, Align: sheet.Right}, {Title: "loses to the dry", Width: 18, Align: sheet.Right},
		{Title: "room when made", Width: 18, Align: sheet.Right}, {Title: "left in the damp", Width: 18, Align: sheet.Right}, {Title: "held when made, each side", Width: 20, Align: sheet.Right},
	}}
	for _, k := range m.p.Fits {
		room, left := "free", "free"
		if k.Room.Given() {
			room, left = m.thousandths(k.Room.Length()), m.thousandths(k.Room.Length()-max(k.Grow.Change, 0))
		}
		held := ""
		if k.Tongue.Given() {
			held = m.thousandths(k.Tongue.Length())
		}
		t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
			{Text: called(k.Part)}, {Text: string(k.Kind) + ", " + k.In}, {Text: m.rule.Format(k.Across)},
			{Text: m.thousandths(k.Grow.Change)}, {Text: m.thousandths(-k.Shrink.Change)},
			{Text: room}, {Text: left}, {Text: held},
		}})
	}
	f.table(t)
	unit := "thousandths of an inch as decimals"
	if m.fine.Unit == measure.Millimetres {
		unit = "millimetres"
	}
	f.para("Movements are "+unit+". A minus sign under “loses” or “gains” means the other way: the wood is drier, or wetter, today than the room will make it.", sheet.Paragraph{Size: 8.5, Ink: sheet.Dark})
}
