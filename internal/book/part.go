package book

import (
	"fmt"
	"slices"
	"strings"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/solid/view"
)

// family is parts that one sheet serves: those equal to the first, and the
// mirror images of it.
type family struct {
	first  *body
	equal  []*body // the first among them
	mirror []*body
}

// families gathers the parts in the order of their marks.
func (m *maker) families() []*family {
	var out []*family
	equal, mirrored := map[string]*family{}, map[string]*family{}
	for _, b := range m.bodies {
		k := m.shapeKey(b.part, handed{})
		switch {
		case equal[k] != nil:
			equal[k].equal = append(equal[k].equal, b)
		case mirrored[k] != nil:
			mirrored[k].mirror = append(mirrored[k].mirror, b)
		default:
			f := &family{first: b, equal: []*body{b}}
			out = append(out, f)
			equal[k] = f
			for _, h := range mirrors {
				mirrored[m.shapeKey(b.part, h)] = f
			}
		}
	}
	return out
}

// handed says along which axes a part is turned about.
type handed [3]bool

// mirrors are the three ways to see a part in a mirror; the rest are turns of
// these.
var mirrors = []handed{{true, false, false}, {false, true, false}, {false, false, true}}

// shapeKey is equal for parts of one shape, wood, show face and edge, after one
// of them was seen in a mirror.
func (m *maker) shapeKey(p *piece.Part, h handed) string {
	box := p.Box()
	size := [3]measure.Length{box.L, box.W, box.T}
	show, edge := p.Show == joinery.High, p.Edge == joinery.Back
	var lines []string
	for _, f := range append([]piece.Feature{{Feature: p.Base()}}, p.Features...) {
		lines = append(lines, featureKey(f, size, h))
	}
	slices.Sort(lines)
	return fmt.Sprint(p.Wood.Name, size, show != h[joinery.T], edge != h[joinery.W], m.size(p.Shoulder), p.Bow != nil, lines)
}

func featureKey(f piece.Feature, size [3]measure.Length, h handed) string {
	flip := func(axis joinery.Axis, l measure.Length) measure.Length {
		if h[axis] {
			return size[axis] - l
		}
		return l
	}
	var pts []string
	for _, q := range f.Outline {
		pts = append(pts, fmt.Sprint(flip((f.Axis+1)%3, q.U), " ", flip((f.Axis+2)%3, q.V)))
	}
	slices.Sort(pts)
	from, to := flip(f.Axis, f.From), flip(f.Axis, f.To)
	kind := ""
	if f.Joint != nil {
		kind = f.Joint.Kind
	}
	return fmt.Sprint(f.Kind, kind, f.Axis, min(from, to), max(from, to), pts)
}

func (f *family) marks() string { return runOf(f.equal) }

// runOf cites bodies by their marks.
func runOf(list []*body) string {
	var out []string
	for _, b := range list {
		out = append(out, b.part.Mark)
	}
	return listed(out)
}

// partSheets give each family of parts its sheet.
func (m *maker) partSheets() error {
	for _, f := range m.families() {
		if m.solidOf(f.first) != nil {
			m.partSheet(f)
		}
	}
	return nil
}

// partSheet is the shop drawing of a part: what it is and its sizes over all,
// three views, and a row for each thing cut into it.
func (m *maker) partSheet(fam *family) {
	s := m.setOut(fam.first)
	var best partDraft
	for _, rows := range []bool{true, false} {
		for _, paper := range []sheet.Paper{m.paper, m.paper.Landscape()} {
			tried := m.partOn(paper, fam, s, rows)
			if best.draft == nil || tried.worth() > best.worth() {
				best = tried
			}
		}
	}
	m.drafts = append(m.drafts, best.draft)
	for _, b := range slices.Concat(fam.equal, fam.mirror) {
		m.mark("part " + b.part.Mark)
	}
	best.entry = "Part by part: " + assemblyTitle([]*piece.Assembly{fam.first.part.Assembly})
	if best.rest != nil { // the rows do not fit below the views
		f := m.flow(best.title)
		f.d.entry = best.entry
		f.table(*best.rest)
	}
}

// partDraft is a part's sheet on one paper.
type partDraft struct {
	*draft
	scale sheet.Scale
	rest  *sheet.Table // what has to go on a sheet of its own
}

// worth is the scale, but views must be larger by more than one step of the
// usual scales (1:5 to 1:2 is one) before their rows go to a second sheet.
func (d partDraft) worth() float64 {
	if d.rest != nil {
		return d.scale.Ratio() / 2.6
	}
	return d.scale.Ratio()
}

// partOn is the sheet on one paper, with the rows below the views or without.
func (m *maker) partOn(paper sheet.Paper, fam *family, s *setOut, withRows bool) partDraft {
	d := &draft{paper: paper, title: fam.title(), views: true}
	box := writable(paper)
	y := m.partWords(d, box, fam)
	notes := m.partNotes(fam)
	notes.Width = box.W
	notes.At = sheet.Pt(box.X, box.Bottom()-notes.Height())
	room := sheet.Box{X: box.X, Y: y, W: box.W, H: notes.At.Y - 3 - y}
	out := partDraft{draft: d}
	if rows := m.cutTable(s, box.W); len(rows.Rows) > 0 && withRows {
		part := rows.Layout(box.W, 1e4, 1e4)[0]
		d.add(part.At(sheet.Pt(box.X, room.Bottom()+1.5-part.Height)))
		room.H -= part.Height
	} else if len(rows.Rows) > 0 {
		out.rest = &rows
	}
	if len(fam.mirror) > 0 {
		room.H -= handsRoom + 4
		d.add(m.handsOf(fam, sheet.Box{X: box.X, Y: room.Bottom() + 2, W: box.W, H: handsRoom})...)
	}
	drawn := m.partViews(fam, s).draw(room, m.scales)
	if drawn.height > room.H+1e-9 { // not even at the smallest scale
		drawn.scale = sheet.Scale{Paper: 1, Model: 10000}
	}
	d.add(sheet.Group{At: sheet.Move(0, max(0, (room.H-drawn.height)*0.4)), Items: drawn.items}, notes)
	d.scale, out.scale = drawn.scale.String(), drawn.scale
	return out
}

func (f *family) title() string {
	name := f.first.part.Name
	for _, b := range f.equal {
		if b.part.Name != name {
			name = stem(name)
		}
	}
	all := append(slices.Clone(f.equal), f.mirror...)
	switch marks := runOf(all); {
	case len(all) > 4:
		return fmt.Sprintf("%s and %d more · %s", f.first.part.Mark, len(all)-1, name)
	case len(f.mirror) > 0:
		return marks + " · " + name + ", a pair"
	default:
		return marks + " · " + name
	}
}

// partWords are the mark, the name, the sizes over all and what the part is of;
// it returns where they end.
func (m *maker) partWords(d *draft, box sheet.Box, fam *family) float64 {
	p := fam.first.part
	mark, size := fam.marks(), lettering.Points(32)
	if len(fam.mirror) > 0 {
		mark += " / " + runOf(fam.mirror)
	}
	for size > sheet.SizeKey && lettering.Set(mark, lettering.Bold, size).Width > box.W*0.5 {
		size--
	}
	if lettering.Set(mark, lettering.Bold, size).Width > box.W*0.5 { // many alike: the first big, all of them named below
		mark = p.Mark
	}
	d.add(sheet.Text{At: sheet.Pt(box.X, box.Y), Text: mark, Face: lettering.Bold, Size: size, Level: sheet.Top})
	x := box.X + lettering.Set(mark, lettering.Bold, size).Width + 7
	name := sheet.Text{At: sheet.Pt(x, box.Y), Text: capital(p.Name) + " of the " + assemblyName(p.Assembly), Size: 11, Level: sheet.Top}
	three := sheet.Text{At: sheet.Pt(x, box.Y+6.5), Text: m.three(p.Length, p.Width, p.Thickness), Face: lettering.Bold, Size: 16, Level: sheet.Top}
	if p.Standing == piece.Waits {
		three.Ink = sheet.Dark
	}
	words := sheet.Paragraph{At: sheet.Pt(box.X, box.Y+17), Width: box.W, Text: m.partFacts(fam), Size: 9.5}
	blanks, least := sheet.Pt(box.Right()-asCutRoom, box.Y+1), box.Y+17
	end := x + max(lettering.Set(name.Text, name.Face, name.Size).Width, lettering.Set(three.Text, three.Face, three.Size).Width)
	if end+4 > blanks.X { // no room in line with the sizes
		blanks.Y, words.Width, least = box.Y+17, box.W-asCutRoom-5, box.Y+17+14
		for name.Size > 7.5 && lettering.Set(name.Text, name.Face, name.Size).Width > box.Right()-x {
			name.Size -= 0.5
		}
	}
	d.add(name, three, words)
	m.asCut(d, blanks)
	return max(words.At.Y+words.Height(), least) + 3
}

// asCutRoom is the width of the lines for sizes as cut.
const asCutRoom = 50.0

// asCut are lines to write on what the work gave.
func (m *maker) asCut(d *draft, at sheet.Point) {
	for i, w := range []string{"length", "width", "thick"} {
		x := at.X + 17.3*float64(i)
		d.add(sheet.Text{At: sheet.Pt(x, at.Y), Text: w + ", as cut", Size: sheet.SizeFine, Level: sheet.Top, Ink: sheet.Dark}, sheet.Blank(sheet.Pt(x, at.Y+10), 15))
	}
}

// partFacts are wood, blank, shoulders, standing and kin.
func (m *maker) partFacts(fam *family) string {
	p := fam.first.part
	out := []string{capital(woodName(p.Wood)), "blank " + m.three(p.Blank.Length, p.Blank.Width, p.Blank.Thickness)}
	if p.Shoulder.Given() {
		out = append(out, "between shoulders "+m.size(p.Shoulder))
	}
	out = append(out, "show face: "+showFace(p), "reference edge: "+edgeName(p))
	if n := len(fam.equal) + len(fam.mirror); n > 1 {
		who := fam.marks()
		if len(fam.mirror) > 0 {
			who += "; mirrored " + runOf(fam.mirror)
		}
		out = append(out, fmt.Sprintf("make %d: %s", n, who))
	}
	switch {
	case p.WaitsFor != nil:
		out = append(out, "planned sizes only: waits for the "+p.WaitsFor.Name+" opening")
	case p.Standing == piece.Measured:
		out = append(out, "measured")
	default:
		out = append(out, "planned")
	}
	if p.Bow != nil {
		out = append(out, "follows the "+p.Bow.Curve.Name+", "+m.sheetOf("curve "+p.Bow.Curve.Name))
	}
	return strings.Join(out, "  ·  ")
}

// partNotes say what is seen and what the other hand is.
func (m *maker) partNotes(fam *family) sheet.Paragraph {
	p := fam.first.part
	text := "Show face towards you, reference edge below, reference end at the left: all sizes are from these. Dashed: behind."
	switch {
	case len(fam.mirror) > 0:
		text += " Drawn: " + fam.marks() + ". " + capital(runOf(fam.mirror)) + " is the mirror image: lay both side by side as shown small, and mark them before anything is cut."
		if len(fam.mirror) > 1 {
			text = strings.Replace(text, " is the mirror image", " are mirror images", 1)
		}
	case p.Mirror != nil && !fam.serves(p.Mirror):
		text += " Pairs with " + p.Mirror.Mark + ", " + m.sheetOf("part "+p.Mirror.Mark) + ", but is cut differently."
	}
	return sheet.Paragraph{Text: text, Size: 8, Ink: sheet.Dark}
}

func (f *family) serves(p *piece.Part) bool {
	return slices.ContainsFunc(slices.Concat(f.equal, f.mirror), func(b *body) bool { return b.part == p })
}

// setOut is a part as it lies to be marked: positions along it from its
// reference end, across it from its reference edge, and down from its show
// face.
type setOut struct {
	b               *body
	right, up, down view.Vec3 // in the part's own frame
	corner          view.Vec3 // where reference end, edge and show face meet
	size            [3]measure.Length
	turned          handed
	cuts            []cut
}

// setOut lays a part down: show face up, reference edge towards the maker. The
// end at the left is then the reference end.
func (m *maker) setOut(b *body) *setOut {
	p := b.part
	box := p.Box()
	s := &setOut{b: b, size: [3]measure.Length{box.L, box.W, box.T}}
	s.turned[joinery.W] = p.Edge == joinery.Back
	s.turned[joinery.T] = p.Show == joinery.High // down from the show face runs against T
	// right × up points at the eye, which is −down.
	s.turned[joinery.L] = s.turned[joinery.W] == s.turned[joinery.T]
	s.right, s.up, s.down = s.axis(joinery.L), s.axis(joinery.W), s.axis(joinery.T)
	s.corner = view.Vec3{X: s.start(joinery.L), Y: s.start(joinery.W), Z: s.start(joinery.T)}
	s.cuts = m.cutsOf(s)
	return s
}

// axis is the direction in which positions along one of the part's axes grow.
func (s *setOut) axis(a joinery.Axis) view.Vec3 {
	k := 1.0
	if s.turned[a] {
		k = -1
	}
	return [3]view.Vec3{{X: k}, {Y: k}, {Z: k}}[a]
}

func (s *setOut) start(a joinery.Axis) float64 {
	if s.turned[a] {
		return s.size[a].Millimetres()
	}
	return 0
}

// stretch is from where to where something lies, in setting-out positions.
type stretch struct{ from, to measure.Length }

// cut is one thing cut into a part, with the room it takes.
type cut struct {
	feature piece.Feature
	at      [3]stretch
}

// cutsOf are the part's features within its box, in setting-out positions.
func (m *maker) cutsOf(s *setOut) []cut {
	var out []cut
	for _, f := range s.b.part.Features {
		lo, hi := [3]measure.Length{}, [3]measure.Length{}
		u, v := (f.Axis+1)%3, (f.Axis+2)%3
		lo[f.Axis], hi[f.Axis] = f.From, f.To
		lo[u], hi[u], lo[v], hi[v] = f.Outline[0].U, f.Outline[0].U, f.Outline[0].V, f.Outline[0].V
		for _, q := range f.Outline {
			lo[u], hi[u] = min(lo[u], q.U), max(hi[u], q.U)
			lo[v], hi[v] = min(lo[v], q.V), max(hi[v], q.V)
		}
		c := cut{feature: f}
		for a := range c.at {
			from, to := max(0, lo[a]), min(s.size[a], hi[a])
			if s.turned[a] {
				from, to = s.size[a]-to, s.size[a]-from
			}
			c.at[a] = stretch{from, to}
		}
		out = append(out, c)
	}
	return out
}

// whole reports whether the cut runs over all of the part along an axis.
func (s *setOut) whole(c cut, a joinery.Axis) bool {
	return c.at[a].from <= 0 && c.at[a].to >= s.size[a]
}
