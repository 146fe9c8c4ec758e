package book

import (
	"strings"

	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// schedule lists every part, by assembly.
func (m *maker) schedule() error {
	f := m.flow("Parts")
	m.mark("parts")
	f.lead("One of each. Finished sizes, joints included: length runs with the grain. Grey sizes are planned only and wait for an opening: write down what the work gives.")
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "mark", Width: 15, Face: lettering.Bold},
		{Title: "part", Width: 27},
		{Title: "length", Width: 16, Align: sheet.OnFigure},
		{Title: "width", Width: 14, Align: sheet.OnFigure},
		{Title: "thick", Width: 12, Align: sheet.OnFigure},
		{Title: "between shoulders", Width: 17, Align: sheet.OnFigure},
		{Title: "wood", Width: 15},
		{Title: "pair, set, curve; waits for"},
		{Title: "as cut", Width: 14},
	}}
	for _, a := range m.p.Assemblies {
		t.Rows = append(t.Rows, sheet.Row{Heading: a.Letter + " · " + assemblyName(a) + ", " + m.sheetOf("assembly "+a.Letter) + "; part by part from " + m.sheetOf("part "+a.Parts[0].Mark)})
		for _, p := range a.Parts {
			t.Rows = append(t.Rows, m.scheduleRow(p))
		}
	}
	f.table(t)
	return nil
}

func (m *maker) scheduleRow(p *piece.Part) sheet.Row {
	ink := sheet.Shade(0)
	if p.Standing == piece.Waits {
		ink = sheet.Dark
	}
	return sheet.Row{Cells: []sheet.Cell{
		{Text: p.Mark, Tick: true},
		{Text: p.Name},
		{Text: m.size(p.Length), Ink: ink},
		{Text: m.size(p.Width), Ink: ink},
		{Text: m.size(p.Thickness), Ink: ink},
		{Text: m.size(p.Shoulder), Ink: ink},
		{Text: woodName(p.Wood)},
		{Text: m.remarks(p)},
		{Blank: true},
	}}
}

// remarks are what a part belongs with and waits for.
func (m *maker) remarks(p *piece.Part) string {
	var out []string
	add := func(s string) {
		if s != "" {
			out = append(out, s)
		}
	}
	add(pair(p))
	if p.Set != nil {
		add("set “" + p.Set.Name + "”")
	}
	if p.Bow != nil {
		add("follows the " + p.Bow.Curve.Name + ", " + m.sheetOf("curve "+p.Bow.Curve.Name))
	}
	switch {
	case p.WaitsFor != nil:
		add("waits for the " + p.WaitsFor.Name + " opening")
	case p.Standing == piece.Measured:
		add("measured")
	}
	return strings.Join(out, "; ")
}
