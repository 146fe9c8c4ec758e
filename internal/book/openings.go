package book

import (
	"strings"

	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// openings are the clear spaces, with blanks for what the rule says, and what
// fills each of them.
func (m *maker) openings() error {
	if len(m.p.Openings) == 0 {
		return nil
	}
	f := m.flow("Openings and gaps")
	m.mark("openings")
	f.lead("Planned clear sizes. Measure each at both ends, write the smaller down, and put it in the text as measured: what fits into it follows.")
	t := sheet.Table{RowPad: 1.8, Columns: []sheet.Column{
		{Title: "opening", Weight: 1.9, Face: lettering.Bold}, {Title: "filled by"},
		{Title: "width", Width: 15, Align: sheet.OnFigure}, {Title: "height", Width: 15, Align: sheet.OnFigure}, {Title: "depth", Width: 15, Align: sheet.OnFigure},
		{Title: "width measured", Width: 17}, {Title: "height measured", Width: 17}, {Title: "depth measured", Width: 17},
	}}
	for _, o := range m.p.Openings {
		t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
			{Text: strings.ReplaceAll(o.Path, ".", " · "), Tick: true}, {Text: filledBy(o)},
			{Text: m.size(o.Width)}, {Text: m.size(o.Height)}, {Text: m.size(o.Depth)},
			{Blank: true}, {Blank: true}, {Blank: true},
		}})
	}
	f.table(t)
	m.sums(f)
	return nil
}

func filledBy(o *piece.Opening) string {
	var out []string
	switch {
	case o.Fill.Drawer != nil:
		out = append(out, "a drawer")
	case o.Fill.Door != nil && o.Fill.Door.Pair.Value:
		out = append(out, "a pair of doors")
	case o.Fill.Door != nil:
		out = append(out, "a door")
	}
	if n := len(o.Fill.Fixed); n > 0 {
		out = append(out, count(n, "fixed shelf", "fixed shelves"))
	}
	if o.Fill.Shelves != nil {
		out = append(out, count(int(o.Fill.Shelves.Count.Value), "shelf", "shelves"))
	}
	if len(out) == 0 {
		return "nothing"
	}
	return listed(out)
}

// sums are all the spaces with what fills them; as printed, they add up.
func (m *maker) sums(f *flow) {
	fillings := m.p.Fillings()
	if len(fillings) == 0 {
		return
	}
	f.head("What fills what", 24)
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "space", Width: 50}, {Title: "is", Width: 20, Align: sheet.OnFigure, Face: lettering.Bold}, {Title: "filled by, in order"},
	}}
	var before sheet.Row
	for _, g := range fillings {
		row := sheet.Row{Cells: sheet.Words(strings.ReplaceAll(g.Name, ".", " · "), m.size(g.Total), m.membersWords(g))}
		if sameRow(row, before) {
			continue
		}
		t.Rows, before = append(t.Rows, row), row
	}
	f.table(t)
}

func sameRow(a, b sheet.Row) bool {
	if len(a.Cells) != len(b.Cells) {
		return false
	}
	for i := range a.Cells {
		if a.Cells[i] != b.Cells[i] {
			return false
		}
	}
	return true
}

// membersWords are the members of a filling, each with its name unless that
// only repeats the space's.
func (m *maker) membersWords(g piece.Filling) string {
	var out []string
	members := g.Members
	if strings.Contains(g.Name, " in ") { // cells first, then the boards between
		members = interleave(members, (len(members)+1)/2)
	}
	for _, s := range members {
		if s.Given() {
			out = append(out, m.size(s)+" "+memberName(s.Name()))
		}
	}
	return strings.Join(out, " + ")
}

// memberName shortens “width of column “keys”” to “keys”.
func memberName(name string) string {
	if i := strings.Index(name, "“"); i > 0 {
		return name[i:]
	}
	return name
}
