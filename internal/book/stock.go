package book

import (
	"fmt"
	"strings"

	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/why"
)

// stock is what to mill and what to buy.
func (m *maker) stock() error {
	f := m.flow("Blanks and hardware")
	m.mark("blanks")
	b := m.p.Parts[0].Blank
	f.lead("Rough sizes to bring parts down to before the last cuts: finished size with " + m.allowances(b) + ".")
	m.blankTable(f)
	m.sets(f)
	m.hardware(f)
	return nil
}

// allowances are the defaults a blank adds, from its own sums.
func (m *maker) allowances(b piece.Blank) string {
	var out []string
	for _, s := range []why.Size{b.Length, b.Width, b.Thickness} {
		for _, l := range s.Explain(m.fine.Format, 1) {
			if strings.HasPrefix(l.Name, "allowance") {
				out = append(out, m.unit(l.Value)+" more "+strings.TrimPrefix(l.Name, "allowance "))
			}
		}
	}
	return listed(out)
}

func (m *maker) blankTable(f *flow) {
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "for", Width: 24, Face: lettering.Bold},
		{Title: "part", Weight: 1},
		{Title: "length", Width: 16, Align: sheet.OnFigure},
		{Title: "width", Width: 15, Align: sheet.OnFigure},
		{Title: "thick", Width: 14, Align: sheet.OnFigure},
		{Title: "wood", Width: 16},
		{Title: "note"},
	}}
	for _, a := range m.p.Assemblies {
		var rows []sheet.Row
		for _, p := range a.Parts {
			if len(p.Blank.Joined) == 0 || p.Blank.Joined[0] == p {
				rows = append(rows, m.blankRow(p))
			}
		}
		if len(rows) > 0 { // else all of its blanks stand with another assembly's
			t.Rows = append(append(t.Rows, sheet.Row{Heading: a.Letter + " · " + assemblyName(a)}), rows...)
		}
	}
	f.table(t)
}

func (m *maker) blankRow(p *piece.Part) sheet.Row {
	mark, name, note := p.Mark, p.Name, ""
	if n := len(p.Blank.Joined); n > 1 {
		mark = marks(p.Blank.Joined)
		name = joinedNames(p.Blank.Joined)
		note = "one blank, too short alone: part last"
	} else if n == 1 {
		note = "a safe length: cut to size last"
	}
	if p.Blank.Staves > 1 {
		note = count(p.Blank.Staves, "board", "boards") + " edge to edge"
	}
	return sheet.Row{Cells: []sheet.Cell{
		{Text: mark, Tick: true}, {Text: name},
		{Text: m.size(p.Blank.Length)}, {Text: m.size(p.Blank.Width)}, {Text: m.size(p.Blank.Thickness)},
		{Text: woodName(p.Wood)}, {Text: note},
	}}
}

func joinedNames(parts []*piece.Part) string {
	var names []string
	for _, p := range parts {
		names = append(names, p.Name)
	}
	return listed(names)
}

// sets are the matched sets with the figure they use up.
func (m *maker) sets(f *flow) {
	if len(m.p.Sets) == 0 {
		return
	}
	f.head("Matched sets", 20)
	f.para("Lay each set out on the board before the first cut: losing one member breaks the set.", sheet.Paragraph{Size: 9.5})
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "set", Width: 36, Face: lettering.Bold}, {Title: "kind", Width: 16}, {Title: "members, in order"},
		{Title: "figure in all", Width: 24, Align: sheet.OnFigure}, {Title: "from board", Width: 26},
	}}
	for _, s := range m.p.Sets {
		t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
			{Text: s.Name, Tick: true}, {Text: s.Kind}, {Text: strings.Join(markList(s.Parts), " → ")}, {Text: m.size(s.Total)}, {Blank: true},
		}})
	}
	f.table(t)
	f.para("Figure in all counts the members and any loss named in the design, not the saw kerfs between them.", sheet.Paragraph{Size: 8.5, Ink: sheet.Dark})
}

func markList(parts []*piece.Part) []string {
	var out []string
	for _, p := range parts {
		out = append(out, p.Mark)
	}
	return out
}

// hardware is what to have in hand before the joints for it are cut.
func (m *maker) hardware(f *flow) {
	if len(m.p.Hardware) == 0 {
		return
	}
	f.head("Hardware", 20)
	f.para("Have it in hand and measure it before anything is cut for it.", sheet.Paragraph{Size: 9.5})
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "count", Width: 15}, {Title: "what", Width: 36, Face: lettering.Bold}, {Title: "sizes", Weight: 1.3}, {Title: "where", Weight: 1.3}, {Title: "as measured", Width: 26},
	}}
	for _, h := range m.p.Hardware {
		t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
			{Text: fmt.Sprint(h.Count), Tick: true}, {Text: h.Spec.Name}, {Text: m.hardwareSizes(h)}, {Text: strings.Join(h.Where, ", ")}, {Blank: true},
		}})
	}
	f.table(t)
}

func (m *maker) hardwareSizes(h *piece.HardwareLine) string {
	var out []string
	for _, s := range []struct {
		word string
		size why.Size
	}{{"long", h.Spec.Length}, {"wide", h.Spec.Width}, {"thick", h.Spec.Thickness}, {"across", h.Spec.Diameter}} {
		if s.size.Given() {
			out = append(out, m.size(s.size)+" "+s.word)
		}
	}
	if h.Spec.Note.Given() {
		out = append(out, h.Spec.Note.Value)
	}
	return strings.Join(out, ", ")
}
