package book

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// before is what to settle before the first cut.
func (m *maker) before() error {
	f := m.flow("Before you cut")
	m.mark("before")
	open, accepted := m.ranked()
	f.lead(m.standOfThings(open))
	for _, d := range open {
		f.finding(d)
	}
	if len(accepted) > 0 {
		f.head("Let stand by you", 14)
		for _, d := range accepted {
			f.accepted(d)
		}
	}
	m.waits(f)
	m.contents(f)
	return nil
}

// ranked parts the findings into open and accepted ones. They come ranked by
// danger and money; only what is graver goes first.
func (m *maker) ranked() (open, accepted diag.List) {
	ranked := slices.Clone(m.findings)
	slices.SortStableFunc(ranked, func(a, b diag.Diagnostic) int { return cmp.Compare(b.Severity, a.Severity) })
	for _, d := range ranked {
		if d.Accepted != "" {
			accepted = append(accepted, d)
		} else {
			open = append(open, d)
		}
	}
	return open, accepted
}

func (m *maker) standOfThings(open diag.List) string {
	if len(open) == 0 {
		return "The checks found nothing that stands against cutting. They know only what the design says: look at the wood."
	}
	var words []string
	for _, s := range []struct {
		grade     diag.Severity
		one, many string
	}{{diag.Error, "error in the text", "errors in the text"}, {diag.Stop, "stop", "stops"}, {diag.Warn, "warning", "warnings"}, {diag.Note, "note", "notes"}} {
		if n := open.Count(s.grade); n > 0 {
			words = append(words, count(n, s.one, s.many))
		}
	}
	text := listed(words) + "."
	if open.Has(diag.Stop) {
		text += " A stop means that wood or people would be hurt: settle it before anything is cut."
	}
	return text
}

// gradeWidth is the column of the words STOP, WARN, NOTE.
const gradeWidth = 17.0

// finding is one finding with its figure, limit and source.
func (f *flow) finding(d diag.Diagnostic) {
	head := sheet.Paragraph{Text: strings.TrimSuffix(capital(d.Summary), ".") + ".", Width: f.box.W - gradeWidth, Face: lettering.Bold, Size: 10}
	body := sheet.Paragraph{Text: d.Detail, Width: f.box.W - gradeWidth, Size: 9.5}
	facts := sheet.Paragraph{Text: factsOf(d), Width: f.box.W - gradeWidth, Size: 8.5, Ink: sheet.Dark}
	h := head.Height() + 1.5
	for _, p := range []sheet.Paragraph{facts, body} {
		if p.Text != "" {
			h += p.Height() + 2.2
		}
	}
	f.need(h + 3)
	f.d.add(grade(sheet.Pt(f.box.X, f.y), d.Severity))
	y := f.y
	for _, p := range []sheet.Paragraph{head, facts, body} {
		if p.Text == "" {
			continue
		}
		p.At = sheet.Pt(f.box.X+gradeWidth, y)
		f.d.add(p)
		y += p.Height() + 2.2
	}
	f.y = y + 1.5
	f.d.add(sheet.Line{A: sheet.Pt(f.box.X, f.y), B: sheet.Pt(f.box.Right(), f.y), Pen: sheet.Fine.Of(sheet.Mid)})
	f.y += 3
}

// factsOf is where, figure, limit and source on one line.
func factsOf(d diag.Diagnostic) string {
	var out []string
	add := func(label, text string) {
		if text != "" {
			out = append(out, label+text)
		}
	}
	add("at ", d.Where)
	add("found ", d.Figure)
	add("limit ", d.Limit)
	add("source: ", d.Source)
	if !d.Subject.IsZero() {
		add("line ", fmt.Sprint(d.Subject.Start.Line))
	}
	return strings.Join(out, "  ·  ")
}

// grade is the word of a severity: white on black for what stops, framed for a
// warning, plain for a note, so that they differ without colour.
func grade(at sheet.Point, s diag.Severity) sheet.Item {
	word := strings.ToUpper(s.String())
	box := sheet.Box{X: at.X, Y: at.Y - 1, W: 13, H: 4.6}
	text := sheet.Text{At: box.Middle(), Text: word, Face: lettering.Bold, Size: 7.5, Align: sheet.Center, Level: sheet.Middle}
	switch {
	case s >= diag.Stop:
		text.Ink = sheet.PaperWhite
		return sheet.All(sheet.Rect(box, sheet.NoPen, sheet.Black), text)
	case s == diag.Warn:
		return sheet.All(sheet.Rect(box, sheet.Narrow, sheet.NoFill), text)
	}
	text.Face = lettering.Regular
	return text
}

func (f *flow) accepted(d diag.Diagnostic) {
	text := capital(d.Summary) + ". Let stand because: " + d.Accepted + "."
	if facts := factsOf(d); facts != "" {
		text += " (" + facts + ")"
	}
	f.item(false, text)
}

// waits lists what waits for what, with blanks to write in.
func (m *maker) waits(f *flow) {
	var rows []sheet.Row
	for _, o := range m.p.Openings {
		parts := m.waitingFor(o)
		if len(parts) == 0 {
			continue
		}
		rows = append(rows, sheet.Row{Cells: []sheet.Cell{
			{Text: o.Name + " opening"},
			{Text: m.size(o.Width) + " × " + m.size(o.Height), Ink: sheet.Dark},
			{Blank: true}, {Blank: true}, {Blank: true},
			{Text: waitingWords(parts)},
		}})
	}
	if len(rows) == 0 {
		return
	}
	f.head("What waits for what", 40)
	f.para("Sizes of parts that must fit an opening are planned only. Measure the opening when the case is dry, write it here and in the text, and print these sheets again; or take the planned size.", sheet.Paragraph{Size: 9.5})
	f.table(sheet.Table{RowPad: 1.6, Columns: []sheet.Column{
		{Title: "opening", Width: 32}, {Title: "planned width × height", Width: 33},
		{Title: "width", Width: 17}, {Title: "height", Width: 17}, {Title: "depth", Width: 17}, {Title: "these wait"},
	}, Rows: rows})
}

func (m *maker) waitingFor(o *piece.Opening) []*piece.Part {
	var out []*piece.Part
	for _, p := range m.p.Parts {
		if p.WaitsFor == o {
			out = append(out, p)
		}
	}
	return out
}

// waitingWords shortens a whole assembly to its letter.
func waitingWords(parts []*piece.Part) string {
	var out []string
	for i := 0; i < len(parts); {
		a := parts[i].Assembly
		n := i
		for n < len(parts) && parts[n].Assembly == a {
			n++
		}
		if n-i == len(a.Parts) {
			out = append(out, fmt.Sprintf("all of %s %s (%s to %s)", a.Letter, assemblyName(a), parts[i].Mark, parts[n-1].Mark))
		} else {
			out = append(out, marks(parts[i:n]))
		}
		i = n
	}
	return strings.Join(out, "; ")
}

// contents says which sheet shows what; known when all are drafted.
func (m *maker) contents(f *flow) {
	f.head("Sheets", 20)
	room := sheet.Box{X: f.box.X, Y: f.y, W: f.box.W, H: f.left()}
	d := f.d
	d.late = append(d.late, func() []sheet.Item { return m.contentsIn(room) })
}

func (m *maker) contentsIn(room sheet.Box) []sheet.Item {
	var out []sheet.Item
	const lead = 4.6
	cols := room.Columns(2, 8)
	var lines []string
	var from []int
	for i, d := range m.drafts {
		entry := cmp.Or(d.entry, d.title)
		if n := len(lines); n > 0 && lines[n-1] == entry {
			continue
		}
		lines, from = append(lines, entry), append(from, i+1)
	}
	each := (len(lines) + 1) / 2
	for i, text := range lines {
		c := cols[min(i/each, 1)]
		y := c.Y + 2 + float64(i%each)*lead
		if y > room.Bottom() {
			continue
		}
		out = append(out,
			sheet.Text{At: sheet.Pt(c.X+6, y), Text: fmt.Sprint(from[i]), Size: 9, Align: sheet.Right, Level: sheet.Top},
			sheet.Text{At: sheet.Pt(c.X+9, y), Text: lettering.Ellipsis(text, lettering.Regular, 9, c.W-10), Size: 9, Level: sheet.Top})
	}
	return out
}
