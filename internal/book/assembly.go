package book

import (
	"fmt"
	"strings"

	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// assemblies gives each assembly its sheet; those that are alike share one.
func (m *maker) assemblies() error {
	for _, group := range m.alike() {
		m.assembly(group)
	}
	return nil
}

// alike gathers assemblies whose parts have the same names, sizes and woods.
func (m *maker) alike() [][]*piece.Assembly {
	var out [][]*piece.Assembly
	at := map[string]int{}
	for _, a := range m.p.Assemblies {
		k := m.likeness(a)
		if i, ok := at[k]; ok {
			out[i] = append(out[i], a)
			continue
		}
		at[k] = len(out)
		out = append(out, []*piece.Assembly{a})
	}
	return out
}

// likeness is equal for assemblies that can be built from one sheet. A bow
// makes each of its stretches its own.
func (m *maker) likeness(a *piece.Assembly) string {
	var b strings.Builder
	b.WriteString(string(a.Kind))
	for _, p := range a.Parts {
		fmt.Fprintf(&b, "|%s %d %d %d %s", p.Name, p.Length.Length(), p.Width.Length(), p.Thickness.Length(), p.Wood.Name)
		if p.Bow != nil {
			fmt.Fprintf(&b, " %d-%d", p.Bow.From, p.Bow.To)
		}
	}
	return b.String()
}

func (m *maker) assembly(group []*piece.Assembly) {
	a := group[0]
	f := m.flow(assemblyTitle(group))
	for _, g := range group {
		m.mark("assembly " + g.Letter)
	}
	if len(group) > 1 {
		f.lead("Drawn for " + a.Letter + ", and the same for " + lettersOf(group[1:]) + ", part for part: " + sameParts(group) + "." + m.hands(group))
	}
	f.assemblyFigure(m.assemblyViews(a))
	m.assemblyCare(f, a) // before anything is cut by the tables that follow
	m.assemblyParts(f, group)
	m.assemblyJoints(f, a)
	m.assemblyFit(f, a)
}

func lettersOf(group []*piece.Assembly) string {
	var out []string
	for _, g := range group {
		out = append(out, g.Letter)
	}
	return listed(out)
}

func sameParts(group []*piece.Assembly) string {
	var out []string
	for _, g := range group[1:] {
		out = append(out, g.Parts[0].Mark)
	}
	return listed(out) + " as " + group[0].Parts[0].Mark + ", and so on"
}

// hands says on which side each of several doors hangs.
func (m *maker) hands(group []*piece.Assembly) string {
	if group[0].Kind != piece.DoorAssembly {
		return ""
	}
	var out []string
	for _, g := range group {
		side := "left"
		if hingedRight(g) {
			side = "right"
		}
		out = append(out, g.Letter+" hangs on the "+side)
	}
	return " " + capital(listed(out)) + "."
}

// assemblyParts lists the parts with the sums their lengths come from.
func (m *maker) assemblyParts(f *flow, group []*piece.Assembly) {
	f.head("Parts", 30)
	marks := "Mark the face side on the show face and the face edge on the reference edge named here; work every size from them."
	if words := triangleWords(group[0]); words != "" {
		marks += " Across the set: the cabinetmaker's " + words + "."
	}
	f.para(marks, sheet.Paragraph{Size: 9.5})
	t := sheet.Table{Columns: []sheet.Column{
		{Title: "mark", Width: 12 + 8*float64(min(len(group), 4)), Face: lettering.Bold},
		{Title: "part", Width: 27}, {Title: "length × width × thickness", Width: 42},
		{Title: "show face, reference edge", Width: 27}, {Title: "length is"},
	}}
	for i, p := range group[0].Parts {
		var names []string
		for _, g := range group {
			names = append(names, g.Parts[i].Mark)
		}
		ink := sheet.Shade(0)
		if p.Standing == piece.Waits {
			ink = sheet.Dark
		}
		t.Rows = append(t.Rows, sheet.Row{Cells: []sheet.Cell{
			{Text: strings.Join(names, " "), Tick: true}, {Text: p.Name},
			{Text: m.three(p.Length, p.Width, p.Thickness), Ink: ink},
			{Text: showFace(p) + ", " + edgeName(p)},
			{Text: m.origin(p.Length)},
		}})
	}
	f.table(t)
}

// assemblyJoints names the joints, with the sheets that lay them out.
func (m *maker) assemblyJoints(f *flow, a *piece.Assembly) {
	var rows []sheet.Row
	for _, j := range m.p.Joints {
		if j.A == nil || j.A.Assembly != a {
			continue
		}
		rows = append(rows, sheet.Row{Cells: []sheet.Cell{
			{Text: j.Kind}, {Text: j.Name}, {Text: m.jointSizes(j)}, {Text: j.Glued}, {Text: m.layoutName(j)},
		}})
	}
	if len(rows) == 0 {
		return
	}
	f.head("Joints", 24)
	f.table(sheet.Table{Columns: []sheet.Column{
		{Title: "joint", Width: 36}, {Title: "between"}, {Title: "sizes", Weight: 1.1}, {Title: "glue", Width: 17}, {Title: "laid out", Width: 25},
	}, Rows: rows})
}

func (m *maker) jointSizes(j *piece.Joint) string {
	if l := j.Dovetail; l != nil {
		text := fmt.Sprintf("%s, slope %s", count(len(l.Tails), "tail", "tails"), l.Slope)
		if !l.Through() {
			text += ", lap " + m.gap(l.Lap)
		}
		return text + ", tails on " + j.A.Mark
	}
	var out []string
	if j.Depth.Given() {
		word := "deep"
		if strings.Contains(j.Kind, "tenon") {
			word = "long"
		}
		out = append(out, m.size(j.Depth)+" "+word)
	}
	if j.Tongue.Given() {
		word := "wide"
		if strings.Contains(j.Kind, "tenon") {
			word = "thick"
		}
		out = append(out, m.size(j.Tongue)+" "+word)
	}
	return strings.Join(out, ", ")
}

// assemblyFit says how a drawer or door sits in its opening.
func (m *maker) assemblyFit(f *flow, a *piece.Assembly) {
	if a.Opening == nil {
		return
	}
	var lines []string
	for _, g := range m.p.Fillings() {
		if strings.HasSuffix(g.Name, " of "+a.Opening.Path) {
			word, _, _ := strings.Cut(g.Name, " of ")
			lines = append(lines, capital(word)+": "+m.membersWords(g)+" = "+m.size(g.Total)+".")
		}
	}
	if len(lines) == 0 {
		return
	}
	f.head("In the opening “"+a.Opening.Name+"”", 12)
	for _, l := range lines {
		f.item(false, l)
	}
}

// assemblyCare prints cautions where the hand is.
func (m *maker) assemblyCare(f *flow, a *piece.Assembly) {
	lines := m.smallParts(a)
	if c := m.caseOf(a); c != nil && c.Hung.Value {
		lines = append(lines, "This case hangs on a wall. Screw the wall cleat into studs, at least two, never into plaster alone; fix the bottom so that the case cannot lift off. What a wall must carry is a matter of local codes and licensed practice: ask where in doubt.")
	}
	if m.several(a.Kind) && a.Opening != nil {
		lines = append(lines, "Prove the first: dry-fit this one in its opening before the next is cut.")
	}
	if len(lines) == 0 {
		return
	}
	f.head("Take care", 14)
	for _, l := range lines {
		f.item(false, l)
	}
}

// several reports whether more than one assembly of a kind is made.
func (m *maker) several(kind piece.AssemblyKind) bool {
	n := 0
	for _, a := range m.p.Assemblies {
		if a.Kind == kind {
			n++
		}
	}
	return n > 1
}

// smallParts are what must not go over the machines alone.
func (m *maker) smallParts(a *piece.Assembly) []string {
	least := m.p.Spec.Shop.ShortestPart
	thinnest := m.p.Spec.Shop.ThinnestPart
	var short, thin []string
	for _, p := range a.Parts {
		if least.Given() && p.Length.Length() < least.Length() {
			short = append(short, p.Mark)
		}
		if thinnest.Given() && p.Thickness.Length() < thinnest.Length() {
			thin = append(thin, p.Mark)
		}
	}
	var out []string
	if len(short) > 0 {
		out = append(out, listed(short)+": shorter than "+m.unit(least.Length())+", the shortest that is safe at jointer and planer here. Leave them joined in a longer blank until the last cut; push blocks, never fingers.")
	}
	if len(thin) > 0 {
		out = append(out, listed(thin)+": thinner than "+m.unit(thinnest.Length())+". Plane them on a carrier board or by hand.")
	}
	return out
}
