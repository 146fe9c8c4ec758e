package book

import (
	"strings"

	"casewright/internal/design"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// views are the whole piece square on, with its chains of sizes.
func (m *maker) views() error {
	a := m.coverViews()
	upright, turned := m.coverOn(m.paper, a), m.coverOn(m.paper.Landscape(), a)
	d := upright.draft
	if turned.scale.Ratio() > upright.scale.Ratio() {
		d = turned.draft
	}
	m.drafts = append(m.drafts, d)
	m.mark("views")
	return nil
}

// coverDraft is the cover on one paper.
type coverDraft struct {
	*draft
	scale sheet.Scale
}

func (m *maker) coverOn(paper sheet.Paper, a *arrangement) coverDraft {
	d := &draft{paper: paper, title: "Views", views: true}
	box := writable(paper)
	d.add(sheet.Text{At: sheet.Pt(box.X, box.Y), Text: d.title, Size: sheet.SizeHead, Level: sheet.Top})
	y := box.Y + titleDrop
	legend := m.legend(sheet.Pt(box.X, box.Bottom()-1), box.W)
	room := sheet.Box{X: box.X, Y: y, W: box.W, H: legend.At.Y - 3 - y}
	drawn := a.draw(room, m.scales)
	drop := max(0, (room.H-drawn.height)/2-2)
	d.add(sheet.Group{At: sheet.Move(0, drop), Items: drawn.items}, legend)
	d.scale = drawn.scale.String()
	return coverDraft{d, drawn.scale}
}

// coverSizes are the sizes over all and the woods, in the corner the views
// leave free.
func (m *maker) coverSizes(room sheet.Box) []sheet.Item {
	lo, hi := m.extent()
	var out []sheet.Item
	at := sheet.Pt(room.X, room.Y)
	line := func(label, text string, bold bool) {
		face := lettering.Regular
		if bold {
			face = lettering.Bold
		}
		out = append(out, sheet.Text{At: at, Text: label, Size: 8, Level: sheet.Top, Ink: sheet.Dark},
			sheet.Text{At: at.Plus(13, 0), Text: text, Face: face, Size: 10, Level: sheet.Top})
		at.Y += 5.4
	}
	line("width", m.rule.FormatUnit(hi.X-lo.X), true)
	line("height", m.rule.FormatUnit(hi.Z-lo.Z), true)
	line("depth", m.rule.FormatUnit(hi.Y-lo.Y), true)
	line("wood", listed(m.woods()), false)
	return out
}

// extent is the room the whole piece takes.
func (m *maker) extent() (lo, hi piece.Vec) {
	for i, p := range m.p.Parts {
		a, z := p.Corners()
		if i == 0 {
			lo, hi = a, z
		}
		lo = piece.Vec{X: min(lo.X, a.X), Y: min(lo.Y, a.Y), Z: min(lo.Z, a.Z)}
		hi = piece.Vec{X: max(hi.X, z.X), Y: max(hi.Y, z.Y), Z: max(hi.Z, z.Z)}
	}
	return lo, hi
}

// woods are the names of all woods in the order of the parts.
func (m *maker) woods() []string {
	var out []string
	for _, p := range m.p.Parts {
		if !hasWord(out, p.Wood.Name) {
			out = append(out, p.Wood.Name)
		}
	}
	return out
}

func hasWord(list []string, s string) bool {
	for _, o := range list {
		if o == s {
			return true
		}
	}
	return false
}

// coverViews are the elevation, the plan, the end and a section.
func (m *maker) coverViews() *arrangement {
	a := &arrangement{m: m}
	front, end, plan := look(m.bodies, fromFront), look(m.bodies, fromRight), look(m.bodies, fromAbove)
	cut := m.sectionAt()
	through := lookBehind(m.bodies, fromRight, -cut.Millimetres())
	planRow, frontRow := 0, 1
	if m.angle == sheet.FirstAngle {
		planRow, frontRow = 1, 0
	}
	f := &panel{name: "front", scene: front, model: front.bounds(), pen: finePens, dims: m.coverDims()}
	f.over = func(v sheet.View) []sheet.Item { return append(m.leaves(v), cuttingPlane(v, cut)...) }
	f.avoid = func(v sheet.View) []sheet.Box { return planeRoom(v, cut) }
	for _, s := range m.p.Assemblies {
		f.marks = append(f.marks, assemblyBalloon(front, s))
	}
	a.corner, a.free, a.least = m.coverSizes, place{1, planRow}, sheet.Box{W: 44, H: 22}
	a.put(f, 0, frontRow)
	a.put(&panel{name: "from above", scene: plan, model: plan.bounds(), pen: finePens, dims: m.planDims()}, 0, planRow)
	a.put(m.endPanel(end), 1, frontRow)
	a.put(&panel{name: "section A–A", scene: through, model: through.bounds(), pen: finePens}, 2, frontRow)
	return a
}

// endPanel is the end view; in first angle, what is seen from the left stands
// at the right.
func (m *maker) endPanel(end *scene) *panel {
	name, sign := "right side", measure.Length(1)
	if m.angle == sheet.FirstAngle {
		end, name, sign = look(m.bodies, fromLeft), "left side", -1
	}
	p := &panel{name: name, scene: end, model: end.bounds(), pen: finePens}
	lo, hi := m.extent()
	p.dims = append(p.dims, dimension{side: sheet.Below, stops: rising(sign*lo.Y, sign*hi.Y)})
	for _, a := range m.p.Assemblies {
		if a.Kind == piece.CaseAssembly && a.Size[2].Length() != hi.Y-lo.Y {
			y := a.Corner.Y
			p.dims = append(p.dims, across(sheet.Above, a.Size[2], rising(sign*y, sign*(y+a.Size[2].Length()))...))
		}
	}
	return p
}

func rising(a, b measure.Length) []measure.Length {
	if b < a {
		a, b = b, a
	}
	return []measure.Length{a, b}
}

// coverDims are the chains of every case and the sizes over all.
func (m *maker) coverDims() []dimension {
	var out []dimension
	lo, hi := m.extent()
	stack := []measure.Length{lo.Z}
	for _, a := range m.p.Assemblies {
		if a.Kind == piece.CaseAssembly || a.Kind == piece.StandAssembly || a.Kind == piece.SlabAssembly {
			stack = insert(insert(stack, a.Corner.Z), a.Corner.Z+a.Size[1].Length())
		}
	}
	if len(stack) > 2 {
		out = append(out, dimension{side: sheet.LeftOf, stops: stack})
	}
	for _, a := range m.p.Assemblies {
		if a.Kind == piece.CaseAssembly {
			out = append(out, m.caseChains(a)...)
		}
	}
	out = append(out, dimension{side: sheet.Below, stops: []measure.Length{lo.X, hi.X}}, dimension{side: sheet.LeftOf, stops: []measure.Length{lo.Z, hi.Z}})
	return distinct(out)
}

// insert keeps a row of stops rising and without repeats.
func insert(stops []measure.Length, l measure.Length) []measure.Length {
	for i, s := range stops {
		if s == l {
			return stops
		}
		if s > l {
			return append(stops[:i], append([]measure.Length{l}, stops[i:]...)...)
		}
	}
	return append(stops, l)
}

// distinct leaves out what another chain on the same side says already.
func distinct(dims []dimension) []dimension {
	var out []dimension
	for _, d := range dims {
		if !said(out, d) {
			out = append(out, d)
		}
	}
	return out
}

func said(dims []dimension, d dimension) bool {
	for _, o := range dims {
		if o.side != d.side || o.at != nil || d.at != nil || len(o.stops) < len(d.stops) {
			continue
		}
		all := true
		for i := 0; i+1 < len(d.stops); i++ {
			all = all && adjacent(o.stops, d.stops[i], d.stops[i+1])
		}
		if all {
			return true
		}
	}
	return false
}

func adjacent(stops []measure.Length, a, b measure.Length) bool {
	for i := 0; i+1 < len(stops); i++ {
		if stops[i] == a && stops[i+1] == b {
			return true
		}
	}
	return false
}

// planDims are depth at the ends, and over all where a front is bowed.
func (m *maker) planDims() []dimension {
	lo, hi := m.extent()
	out := []dimension{{side: sheet.RightOf, stops: []measure.Length{lo.Y, hi.Y}}}
	deepest := measure.Length(0)
	for _, p := range m.p.Parts {
		a, z := p.Corners()
		if p.Bow == nil || p.Bow.Axis != joinery.W || z.Y-a.Y <= deepest {
			continue
		}
		deepest = z.Y - a.Y
		out = append(out[:1], dimension{side: sheet.LeftOf, stops: []measure.Length{a.Y, a.Y + p.Bow.Fall, z.Y}})
	}
	return out
}

// sectionAt is the x of the section: through the first opening with a door,
// else with a drawer, else any; beside its middle, where leaves may meet.
func (m *maker) sectionAt() measure.Length {
	var best *piece.Opening
	rank := -1
	for _, o := range m.p.Openings {
		r := 0
		switch {
		case o.Fill.Door != nil:
			r = 2
		case o.Fill.Drawer != nil:
			r = 1
		}
		if r > rank {
			best, rank = o, r
		}
	}
	if best == nil {
		lo, hi := m.extent()
		return lo.X + (hi.X-lo.X)*3/7
	}
	return best.Corner.X + best.Width.Length()*3/8
}

// cuttingPlane marks where the section is taken.
func cuttingPlane(v sheet.View, x measure.Length) []sheet.Item {
	b := v.OnPaper()
	at := v.Pt(x.Millimetres(), 0).X
	var out []sheet.Item
	for _, y := range [2]float64{b.Y - 1.2, b.Bottom() + 4.2} {
		out = append(out,
			sheet.Line{A: sheet.Pt(at, y), B: sheet.Pt(at, y-3), Pen: sheet.Pen{Width: 0.5}},
			sheet.Line{A: sheet.Pt(at, y-1.5), B: sheet.Pt(at-3, y-1.5), Pen: sheet.Narrow},
			sheet.Arrowhead(sheet.Pt(at-4, y-1.5), sheet.Pt(-1, 0)),
			sheet.Text{At: sheet.Pt(at+1.2, y-1.5), Text: "A", Size: sheet.SizeFine, Level: sheet.Middle})
	}
	return out
}

// planeRoom is the room those marks take.
func planeRoom(v sheet.View, x measure.Length) []sheet.Box {
	b := v.OnPaper()
	at := v.Pt(x.Millimetres(), 0).X
	return []sheet.Box{{X: at - 4.5, Y: b.Y - 4.6, W: 8.5, H: 4}, {X: at - 4.5, Y: b.Bottom() + 0.8, W: 8.5, H: 4}}
}

// leaves are the dashes of doors, which meet at the hinges.
func (m *maker) leaves(v sheet.View) []sheet.Item {
	var out []sheet.Item
	pen := sheet.Pen{Width: 0.13, Stroke: sheet.Dashed}
	for _, a := range m.p.Assemblies {
		if a.Kind != piece.DoorAssembly {
			continue
		}
		x0, z0 := a.Corner.X.Millimetres(), a.Corner.Z.Millimetres()
		x1, z1 := x0+a.Size[0].Length().Millimetres(), z0+a.Size[1].Length().Millimetres()
		if hingedRight(a) {
			x0, x1 = x1, x0
		}
		mid := v.Pt(x0, (z0+z1)/2)
		out = append(out, sheet.Line{A: v.Pt(x1, z0), B: mid, Pen: pen}, sheet.Line{A: v.Pt(x1, z1), B: mid, Pen: pen})
	}
	return out
}

// hingedRight reports on which side a door hangs; of a pair, each on its own.
func hingedRight(a *piece.Assembly) bool {
	var d *design.Door
	if a.Opening != nil {
		d = a.Opening.Fill.Door
	}
	if d == nil {
		return false
	}
	if d.Pair.Value {
		return strings.HasSuffix(a.Path, ".right")
	}
	return d.Hinge.Value == "right"
}

// legend names the letters.
func (m *maker) legend(at sheet.Point, width float64) sheet.Paragraph {
	var names []string
	for _, a := range m.p.Assemblies {
		names = append(names, a.Letter+" "+assemblyName(a))
	}
	text := strings.Join(names, "  ·  ")
	if m.hasDoors() {
		text += ".  The dashes on a door meet at its hinges."
	}
	p := sheet.Paragraph{Text: text, Width: width, Size: 8, Ink: sheet.Dark}
	p.At = at.Plus(0, -p.Height())
	return p
}

func (m *maker) hasDoors() bool {
	for _, a := range m.p.Assemblies {
		if a.Kind == piece.DoorAssembly {
			return true
		}
	}
	return false
}
