package book

import (
	"strings"

	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/why"
	"casewright/internal/wood"
)

const widthwise = wood.Width

// sources lists what was taken where the text is silent, and who says so.
func (m *maker) sources() error {
	f := m.flow("Sources and settings")
	m.mark("sources")
	k := &cited{m: m, sizes: map[string]int{}}
	k.pieceSizes()
	m.defaults(f, k)
	k.others()
	m.sourceList(f, k)
	return nil
}

// cited gathers defaults and sources in the order they first come up.
type cited struct {
	m        *maker
	defaults []setting
	sizes    map[string]int // name and value → place in defaults
	sources  []string
}

// setting is a size the text does not give.
type setting struct {
	name, source string
	value        measure.Length
	uses         int
}

// pieceSizes walks every size of every part, opening, fit and set.
func (k *cited) pieceSizes() {
	for _, p := range k.m.p.Parts {
		k.size(p.Length, p.Width, p.Thickness, p.Blank.Length, p.Blank.Width, p.Blank.Thickness)
	}
	for _, j := range k.m.p.Joints {
		k.size(j.Depth, j.Tongue)
	}
	for _, o := range k.m.p.Openings {
		k.size(o.Width, o.Height, o.Depth)
	}
	for _, f := range k.m.p.Fits {
		k.size(f.Room, f.Tongue)
	}
	for _, f := range k.m.p.Fillings() {
		k.size(f.Members...)
	}
}

func (k *cited) size(sizes ...why.Size) {
	for _, s := range sizes {
		for _, l := range s.Explain(k.m.fine.Format, 0) {
			k.source(l.Source)
			if l.Kind == why.Default {
				k.usual(l)
			}
		}
	}
}

func (k *cited) usual(l why.Line) {
	key := l.Name + "|" + k.m.fine.Format(l.Value)
	i, ok := k.sizes[key]
	if !ok {
		i = len(k.defaults)
		k.sizes[key] = i
		k.defaults = append(k.defaults, setting{name: l.Name, source: l.Source, value: l.Value})
	}
	k.defaults[i].uses++
}

func (k *cited) source(s string) {
	for one := range strings.SplitSeq(s, ";") {
		one, _, _ = strings.Cut(strings.TrimSpace(one), ": ") // what it says there stands with the setting
		if !published(one) || hasWord(k.sources, one) {
			continue
		}
		k.sources = append(k.sources, one)
	}
}

// published tells a source from the words for having none.
func published(s string) bool {
	for _, no := range []string{"no source", "derived", "own setting", "geometry of", "shop practice", "shop texts"} {
		if strings.Contains(s, no) {
			return false
		}
	}
	return s != ""
}

// others adds the sources of movements, problems and findings.
func (k *cited) others() {
	for _, f := range k.m.p.Fits {
		for _, w := range []wood.Move{f.Grow, f.Shrink} {
			k.source(w.Equation)
			s := w.Source
			if w.Status.FromMemory() && !strings.Contains(s, "memory") {
				s += " (from memory)"
			}
			k.source(s)
		}
	}
	for _, j := range k.m.p.Joints {
		for _, p := range j.Problems {
			for _, g := range p.Figures {
				k.source(g.Source)
			}
		}
	}
	for _, d := range k.m.findings {
		k.source(d.Source)
	}
}

// defaults are settings nobody typed.
func (m *maker) defaults(f *flow, k *cited) {
	if len(k.defaults) == 0 {
		return
	}
	f.lead("Not said in the text, so the usual was taken. To change one, say it in the text.")
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "setting", Width: 52}, {Title: "taken as", Width: 24, Align: sheet.OnFigure}, {Title: "because"},
	}}
	for _, s := range k.defaults {
		t.Rows = append(t.Rows, sheet.Row{Cells: sheet.Words(s.name, m.length(s.value), s.source)})
	}
	f.table(t)
}

func (m *maker) sourceList(f *flow, k *cited) {
	f.head("Sources", 14)
	f.para("Each once. What says “from memory” was not looked up; what says “no source” is common practice.", sheet.Paragraph{Size: 9.5})
	for _, s := range k.sources {
		f.item(false, capital(s)+".")
	}
}
