package book

import (
	"strings"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/solid"
	"casewright/internal/solid/view"
)

// manyParts is beyond what one picture can show with all its marks.
const manyParts = 40

// exploded shows how the parts come together: in one picture, or in one for
// what stands and one for each kind of drawer and door.
func (m *maker) exploded() error {
	if len(m.p.Parts) <= manyParts {
		m.explodedSheet("Exploded view", m.p.Assemblies, nil, "")
		return nil
	}
	for _, group := range m.alike() {
		words := ""
		if len(group) > 1 {
			words = "Drawn for " + group[0].Letter + ", and the same for " + lettersOf(group[1:]) + ", part for part: " + sameParts(group) + "."
		}
		m.explodedSheet("Exploded: "+assemblyTitle(group), group[:1], group[1:], words)
	}
	return nil
}

// explodedSheet draws assemblies apart, each part with its mark and those of
// the same part in assemblies that are alike.
func (m *maker) explodedSheet(title string, group, alike []*piece.Assembly, words string) {
	drawn, ok := m.apart(title, group)
	if !ok {
		return
	}
	d := m.page(title, m.paper)
	if len(m.p.Parts) > manyParts {
		d.entry = "Exploded views"
	}
	m.mark("exploded")
	if words == "" {
		words = "Every part moved straight away from where it belongs."
	}
	owners := m.ownersOf(drawn)
	// The paper is turned if the picture is then larger; so much white around it
	// is for the marks.
	upright, turned := m.explodedRoom(m.paper), m.explodedRoom(m.paper.Landscape())
	model := boundsOf(drawn)
	if fitted(model, turned).Scale.Ratio() > 1.1*fitted(model, upright).Scale.Ratio() {
		d.paper = m.paper.Landscape()
	}
	v := fitted(model, m.explodedRoom(d.paper))
	box := writable(d.paper)
	lead := sheet.Paragraph{At: sheet.Pt(box.X, box.Y+titleDrop), Width: box.W, Text: words, Ink: sheet.Dark, Size: 9.5}
	d.add(sheet.Text{At: sheet.Pt(box.X, box.Y), Text: title, Size: sheet.SizeHead, Level: sheet.Top}, lead)
	d.add(pictureQuill.ink(drawn, v)...)
	marked, unseen := balloonsIn(m.explodedRoom(d.paper).Inset(-marksRoom), v, owners, nil, m.grouped(drawn, group, alike))
	d.add(marked...)
	if len(unseen) > 0 {
		text := "Hidden behind others: " + listed(unseen) + "."
		d.add(sheet.Text{At: sheet.Pt(box.X, box.Bottom()), Text: text, Size: 8, Ink: sheet.Dark})
	}
}

// marksRoom is white left around an exploded view for marks.
const marksRoom = 9.0

func (m *maker) explodedRoom(paper sheet.Paper) sheet.Box {
	return writable(paper).Trim(marksRoom, titleDrop+9+marksRoom, marksRoom, marksRoom+5)
}

// apart draws a group of assemblies apart. ok is false where nothing of them
// has a shape.
func (m *maker) apart(key string, group []*piece.Assembly) (view.Drawing, bool) {
	drawn := m.drawing("apart "+key, func() view.Drawing {
		in, alone := map[*piece.Assembly]bool{}, map[*piece.Part]bool{}
		for _, a := range group {
			in[a] = true
			for _, r := range rows(a) {
				alone[a.Parts[r[0]]] = r[1]-r[0] == 1
			}
		}
		var bodies []view.Body
		for _, b := range m.model.Show(solid.Pose{Apart: apartBy(group)}) {
			if in[m.p.Parts[b.ID].Assembly] {
				bodies = append(bodies, b)
			}
		}
		return inTheOpen(bodies, apartBy(group).Millimetres(), func(id int) bool { return alone[m.p.Parts[id]] })
	})
	return drawn, len(drawn.Lines) > 0
}

// inTheOpen draws bodies apart, and moves those that others hide on until they
// are seen; of parts in a row, others carry the mark.
func inTheOpen(bodies []view.Body, by float64, alone func(id int) bool) view.Drawing {
	draw := func() view.Drawing {
		return view.Project(bodies, view.Isometric(view.Front), view.Options{Fills: true})
	}
	best := draw()
	for i, b := range bodies {
		if !alone(b.ID) || shows(best, b.ID) {
			continue
		}
		for _, d := range waysOut {
			bodies[i] = b.Moved(view.Vec3{X: by * d.X, Y: by * d.Y, Z: by * d.Z})
			if tried := draw(); shows(tried, b.ID) && hiding(tried) < hiding(best) {
				best = tried
				break
			}
			bodies[i] = b
		}
	}
	return best
}

// waysOut are tried one after the other, as shares of how far parts are moved.
var waysOut = []view.Vec3{{Y: 2}, {Z: 2}, {X: 2}, {Y: -2}, {Z: -2}, {X: -2}, {Y: 4}, {Z: 4}, {X: 4}, {Z: -4}, {X: -4}, {Y: 4, Z: 4}, {X: 7}, {Z: 7}}

// enoughSeen is the share of its room in the picture that a part must show.
const enoughSeen = 0.06

func shows(d view.Drawing, id int) bool {
	for _, s := range d.Seen {
		if s.Body == id {
			b := s.Bounds
			return s.Visible > enoughSeen*(b.Max.X-b.Min.X)*(b.Max.Y-b.Min.Y)
		}
	}
	return false
}

// hiding counts the parts that do not show enough.
func hiding(d view.Drawing) int {
	n := 0
	for _, s := range d.Seen {
		if !shows(d, s.Body) {
			n++
		}
	}
	return n
}

// apartBy is how far parts are moved: a share of the larger side, by eye.
func apartBy(group []*piece.Assembly) measure.Length {
	var most measure.Length
	for _, a := range group {
		most = max(most, a.Size[0].Length(), a.Size[1].Length())
	}
	return max(30*measure.Millimetre, most/5)
}

// grouped asks for one mark for each part, or for each row of parts of one
// name, such as the boards of a back.
func (m *maker) grouped(drawn view.Drawing, group, alike []*piece.Assembly) []balloonFor {
	rooms := map[*piece.Part]sheet.Box{}
	for _, s := range drawn.Seen {
		rooms[m.p.Parts[s.Body]] = sheet.Box{X: s.Bounds.Min.X, Y: s.Bounds.Min.Y, W: s.Bounds.Max.X - s.Bounds.Min.X, H: s.Bounds.Max.Y - s.Bounds.Min.Y}
	}
	var out []balloonFor
	for _, a := range group {
		for _, r := range rows(a) {
			w := rowBalloon(a.Parts[r[0]:r[1]], rooms)
			for _, o := range alike {
				w.mark += " " + rowMark(o.Parts[r[0]:r[1]])
			}
			out = append(out, w)
		}
	}
	return out
}

// rows are the parts that get one mark, as stretches of the assembly's list.
func rows(a *piece.Assembly) (out [][2]int) {
	for i := 0; i < len(a.Parts); {
		n := i + 1
		for n < len(a.Parts) && a.Parts[i].Name != a.Parts[n].Name && stem(a.Parts[n].Name) == stem(a.Parts[i].Name) && beside(a.Parts[n-1], a.Parts[n]) {
			n++
		}
		out = append(out, [2]int{i, n})
		i = n
	}
	return out
}

func rowBalloon(parts []*piece.Part, rooms map[*piece.Part]sheet.Box) balloonFor {
	w := balloonFor{mark: rowMark(parts)}
	in := map[*piece.Part]bool{}
	for _, p := range parts {
		in[p] = true
		if b := rooms[p]; b.W > 0 {
			w.room = w.room.Union(b)
		}
	}
	w.covers = func(b *body) bool { return b != nil && in[b.part] }
	return w
}

// rowMark is “A3”, or “A5–A9”.
func rowMark(parts []*piece.Part) string {
	if len(parts) == 1 {
		return parts[0].Mark
	}
	return parts[0].Mark + "–" + parts[len(parts)-1].Mark
}

// beside reports whether two parts lie side by side, but for a gap to move in.
func beside(a, b *piece.Part) bool {
	const gap = 5 * measure.Millimetre
	al, ah := a.Corners()
	bl, bh := b.Corners()
	return al.X <= bh.X+gap && bl.X <= ah.X+gap && al.Y <= bh.Y+gap && bl.Y <= ah.Y+gap && al.Z <= bh.Z+gap && bl.Z <= ah.Z+gap
}

// stem is a name without its number: “back board 3” is one of the back boards.
func stem(name string) string { return strings.TrimRight(name, " 0123456789") }
