package book

import (
	"fmt"
	"maps"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/solid"
	"casewright/internal/solid/view"
)

// Options say how the book is printed. The zero value is Letter, in silence.
type Options struct {
	Paper    sheet.Paper                        // the zero paper is Letter
	Model    *solid.Model                       // of the piece; nil has it made
	Progress func(done, total int, what string) // called before each chapter and once at the end; may be nil
}

// PDF writes the book of a piece with what the checks found in it. The same
// piece, findings and paper give the same bytes. It is an error if the piece
// has no parts, or if something in full size does not fit 400 sheets.
func PDF(p *piece.Piece, findings diag.List, opt Options) ([]byte, error) {
	doc, err := compose(p, findings, opt)
	if err != nil {
		return nil, err
	}
	pdf, err := sheet.PDF(doc)
	if err != nil {
		return nil, fmt.Errorf("printing the book: %w", err)
	}
	return pdf, nil
}

// chapters are the book in the order it is read.
var chapters = []struct {
	what  string
	write func(m *maker) error
}{
	{"cover", (*maker).cover},
	{"before you cut", (*maker).before},
	{"views", (*maker).views},
	{"exploded", (*maker).exploded},
	{"parts", (*maker).schedule},
	{"blanks and hardware", (*maker).stock},
	{"assemblies", (*maker).assemblies},
	{"part by part", (*maker).partSheets},
	{"joints", (*maker).joints},
	{"dovetails", (*maker).dovetails},
	{"curves", (*maker).curves},
	{"openings", (*maker).openings},
	{"how the wood moves", (*maker).movement},
	{"sources", (*maker).sources},
}

// compose lays the book out.
func compose(p *piece.Piece, findings diag.List, opt Options) (sheet.Doc, error) {
	if len(p.Parts) == 0 {
		return sheet.Doc{}, fmt.Errorf("the piece has no parts, so there is nothing to build from")
	}
	// Sheets cite later ones by number: write once to learn the numbers, and
	// again with them. A third time only if a number's width moved a line.
	m := newMaker(p, findings, opt)
	for range 3 {
		if err := m.write(); err != nil {
			return sheet.Doc{}, err
		}
		if maps.Equal(m.first, m.cited) {
			break
		}
		m.again()
	}
	m.progress(len(chapters), len(chapters), "done")
	return m.finish(), nil
}

func (m *maker) write() error {
	for i, c := range chapters {
		if m.cited == nil { // the first time, which is the one that takes long
			m.progress(i, len(chapters), c.what)
		}
		if err := c.write(m); err != nil {
			return fmt.Errorf("%s: %w", c.what, err)
		}
	}
	return nil
}

// again starts over, citing the numbers found.
func (m *maker) again() {
	m.cited, m.first, m.drafts = m.first, map[string]int{}, nil
}

// maker writes the book: sheets are drafted one after the other and numbered
// at the end.
type maker struct {
	p          *piece.Piece
	findings   diag.List
	paper      sheet.Paper
	progress   func(done, total int, what string)
	rule, fine measure.Style
	scales     []sheet.Scale
	angle      sheet.Projection
	bodies     []*body // in the order of the parts
	drafts     []*draft
	first      map[string]int // what stands on which sheet, from 1
	cited      map[string]int // the same as it was known before writing
	layouts    []*layoutUse
	model      *solid.Model
	drawings   map[string]view.Drawing // made once, whatever the sheets around them
}

func newMaker(p *piece.Piece, findings diag.List, opt Options) *maker {
	m := &maker{p: p, findings: findings, paper: opt.Paper, progress: opt.Progress, first: map[string]int{}}
	if m.paper == (sheet.Paper{}) {
		m.paper = sheet.Letter
	}
	if m.progress == nil {
		m.progress = func(int, int, string) {}
	}
	c := p.Spec.Commission
	m.rule, m.fine = c.Style(), c.GapStyle()
	m.scales, m.angle = sheet.InchScales, sheet.ThirdAngle
	if c.Unit == measure.Millimetres {
		m.scales, m.angle = sheet.MetricScales, sheet.FirstAngle
	}
	for _, q := range p.Parts {
		m.bodies = append(m.bodies, bodyOf(q))
	}
	m.layouts = m.findLayouts()
	m.drawings = map[string]view.Drawing{}
	if m.model = opt.Model; m.model == nil || m.model.Piece != p {
		m.model, _ = solid.Build(p, nil) // what it has to say, the checks have said
	}
	return m
}

// draft is a sheet before it has a number.
type draft struct {
	paper sheet.Paper
	title string
	entry string // in the list of sheets, where several share one; "" is the title
	scale string
	views bool // shows views, so that the projection must be stated
	tiled bool // has no title block of its own
	items []sheet.Item
	late  []func() []sheet.Item // what needs the numbers of other sheets
}

func (d *draft) add(items ...sheet.Item) { d.items = append(d.items, items...) }

// page opens a new sheet on the paper given.
func (m *maker) page(title string, paper sheet.Paper) *draft {
	d := &draft{paper: paper, title: title}
	m.drafts = append(m.drafts, d)
	return d
}

// mark remembers that a thing stands on the sheet opened last.
func (m *maker) mark(key string) {
	if m.first[key] == 0 {
		m.first[key] = len(m.drafts)
	}
}

// sheetOf is “sheet 7”; two figures keep its place while it is not known.
func (m *maker) sheetOf(key string) string {
	if n := m.cited[key]; n > 0 {
		return fmt.Sprintf("sheet %d", n)
	}
	return "sheet 00"
}

func (m *maker) title() string {
	if t := m.p.Spec.Commission.Title.Value; t != "" {
		return t
	}
	return m.p.Spec.Commission.Name
}

// finish numbers the sheets.
func (m *maker) finish() sheet.Doc {
	doc := sheet.Doc{Title: m.title()}
	for i, d := range m.drafts {
		for _, f := range d.late {
			d.add(f()...)
		}
		page := sheet.Page{Paper: d.paper, Title: fmt.Sprintf("%d  %s", i+1, d.title)}
		page.Add(d.items...)
		if d.tiled {
			page.Add(m.tileNumber(d, i+1))
		} else {
			page.Add(d.paper.Border(), m.titleBlock(d, i+1))
		}
		doc.Pages = append(doc.Pages, page)
	}
	return doc
}

func (m *maker) titleBlock(d *draft, n int) sheet.Item {
	t := sheet.TitleBlock{Piece: m.title(), Sheet: d.title, Scale: d.scale, Number: n, Of: len(m.drafts), Units: m.units()}
	if d.views {
		t.Projection = m.angle
	}
	return t.In(d.paper.Frame())
}

func (m *maker) tileNumber(d *draft, n int) sheet.Item {
	f := d.paper.Frame()
	text := fmt.Sprintf("%s · sheet %d of %d", m.title(), n, len(m.drafts))
	return sheet.Text{At: sheet.Pt(f.Right()-18, f.Bottom()), Text: text, Size: sheet.SizeFine, Align: sheet.Right}
}

// units is the unit and the graduations that sizes are printed to.
func (m *maker) units() string {
	c := m.p.Spec.Commission
	if c.Unit == measure.Millimetres {
		return "mm, to " + m.rule.Format(measure.Length(c.Rule))
	}
	text := "inches, to " + m.fine.Format(measure.Length(c.Rule))
	if c.Gaps != c.Rule {
		text += ", gaps " + m.fine.Format(measure.Length(c.Gaps))
	}
	return text
}
