package book

import (
	"strings"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
)

// bodiesOf are the bodies of one assembly.
func (m *maker) bodiesOf(a *piece.Assembly) []*body {
	var out []*body
	for _, b := range m.bodies {
		if b.part.Assembly == a {
			out = append(out, b)
		}
	}
	return out
}

// assemblyViews are three views in projection and, of a case, a section.
func (m *maker) assemblyViews(a *piece.Assembly) *arrangement {
	bodies := m.bodiesOf(a)
	front, side, plan := look(bodies, fromFront), look(bodies, fromRight), look(bodies, fromAbove)
	sideName := "right side"
	if m.angle == sheet.FirstAngle {
		side, sideName = look(bodies, fromLeft), "left side"
	}
	out := &arrangement{m: m}
	planRow, frontRow := 0, 1
	if m.angle == sheet.FirstAngle {
		planRow, frontRow = 1, 0
	}
	f := &panel{name: "front", scene: front, model: front.bounds(), pen: clearPens, dims: m.frontDims(a)}
	s := &panel{name: sideName, scene: side, model: side.bounds(), pen: clearPens, dims: m.sideDims(a)}
	p := &panel{name: "from above", scene: plan, model: plan.bounds(), pen: clearPens, dims: m.topDims(a)}
	out.put(f, 0, frontRow)
	out.put(s, 1, frontRow)
	out.put(p, 0, planRow)
	panels := []*panel{f, p, s}
	if a.Kind == piece.CaseAssembly {
		x := m.sectionIn(a)
		cut := lookBehind(bodies, fromRight, -x.Millimetres())
		c := &panel{name: "section A–A", scene: cut, model: cut.bounds(), pen: clearPens}
		f.over = func(v sheet.View) []sheet.Item { return cuttingPlane(v, x) }
		f.avoid = func(v sheet.View) []sheet.Box { return planeRoom(v, x) }
		out.put(c, 2, frontRow)
		panels = []*panel{f, c, p, s}
	}
	if a.Kind == piece.DoorAssembly {
		f.over = func(v sheet.View) []sheet.Item { return front.hidden(v, tenoned(a)...) }
	}
	if a.Kind == piece.DrawerAssembly {
		f.over = func(v sheet.View) []sheet.Item { return front.hidden(v, behindFront(a)...) }
		s.over = func(v sheet.View) []sheet.Item { return side.hidden(v, behindFront(a)...) }
	}
	out.unseen = share(panels, bodies)
	m.placeMarks(out, a, planRow)
	return out
}

// share gives each body a balloon in the view where it shows most, and tells
// which show nowhere.
func share(panels []*panel, bodies []*body) (unseen []string) {
	for _, b := range bodies {
		var best *panel
		free := 0.0
		for i, p := range panels {
			t, ok := partBalloon(p.scene, b).best(p.scene, nil)
			if !ok {
				continue
			}
			if i == 0 {
				t.free *= 2 // the front, where it can be
			}
			if t.free > free*1.01 {
				best, free = p, t.free
			}
		}
		if best != nil {
			best.marks = append(best.marks, partBalloon(best.scene, b))
		} else {
			unseen = append(unseen, b.part.Mark)
		}
	}
	return unseen
}

// sectionIn is where a case is cut.
func (m *maker) sectionIn(a *piece.Assembly) measure.Length {
	for _, o := range m.p.Openings {
		if o.Case == a && (o.Fill.Door != nil || o.Fill.Drawer != nil) {
			return o.Corner.X + o.Width.Length()*3/8
		}
	}
	return a.Corner.X + a.Size[0].Length()*3/7
}

// tenoned are the parts of a door whose ends others hide.
func tenoned(a *piece.Assembly) []*piece.Part {
	var out []*piece.Part
	for _, p := range a.Parts {
		if strings.Contains(p.Path, ".rail.") || strings.Contains(p.Path, ".panel") {
			out = append(out, p)
		}
	}
	return out
}

// behindFront are the parts of a drawer that its front and sides hide.
func behindFront(a *piece.Assembly) []*piece.Part {
	var out []*piece.Part
	for _, p := range a.Parts {
		if p.Name == "bottom" || p.Name == "back" || strings.HasSuffix(p.Name, "side") {
			out = append(out, p)
		}
	}
	return out
}

// frontDims are the chains around an assembly's front.
func (m *maker) frontDims(a *piece.Assembly) []dimension {
	x, z := a.Corner.X, a.Corner.Z
	switch a.Kind {
	case piece.CaseAssembly:
		return distinct(append(m.caseChains(a), m.shelfChains(a)...))
	case piece.DoorAssembly:
		return m.doorChains(a)
	}
	return []dimension{
		strip{from: x, sizes: a.Size[:1]}.on(sheet.Below),
		strip{from: z, sizes: a.Size[1:2]}.on(sheet.LeftOf),
	}
}

// shelfChains stand within openings that have boards fixed across them.
func (m *maker) shelfChains(a *piece.Assembly) []dimension {
	var out []dimension
	for _, o := range m.p.Openings {
		if o.Case != a {
			continue
		}
		stops := []measure.Length{o.Corner.Z, o.Corner.Z + o.Height.Length()}
		for _, p := range a.Parts {
			lo, hi := p.Corners()
			within := lo.Z > o.Corner.Z && hi.Z < o.Corner.Z+o.Height.Length()
			if within && lo.X < o.Corner.X+o.Width.Length()/2 && hi.X > o.Corner.X+o.Width.Length()/2 && strings.HasPrefix(p.Path, o.Path+".") {
				stops = insert(insert(stops, lo.Z), hi.Z)
			}
		}
		if len(stops) > 2 {
			x := (o.Corner.X + o.Width.Length()/4).Millimetres()
			out = append(out, dimension{side: sheet.RightOf, stops: stops, at: &x})
		}
	}
	return out
}

// doorChains are stile, field, stile and rail, field, rail.
func (m *maker) doorChains(a *piece.Assembly) []dimension {
	x, z := a.Corner.X, a.Corner.Z
	out := []dimension{
		strip{from: x, sizes: a.Size[:1]}.on(sheet.Below),
		strip{from: z, sizes: a.Size[1:2]}.on(sheet.LeftOf),
	}
	for _, f := range m.p.Fillings() {
		switch {
		case f.Name == "width of the frame" && f.Total == a.Size[0]:
			out = append(out, strip{from: x, sizes: f.Members, total: f.Total}.on(sheet.Below))
		case f.Name == "height of the frame" && f.Total == a.Size[1]:
			out = append(out, strip{from: z, sizes: reversed(f.Members), total: f.Total}.on(sheet.RightOf))
		}
	}
	return distinct(out)
}

// sideDims are the depth and what the side view adds.
func (m *maker) sideDims(a *piece.Assembly) []dimension {
	sign := measure.Length(1)
	if m.angle == sheet.FirstAngle {
		sign = -1
	}
	lo, hi := spanOf(a)
	out := []dimension{{side: sheet.Below, stops: rising(sign*lo.Y, sign*hi.Y)}}
	if a.Kind == piece.DrawerAssembly {
		out = append(out, m.drawerSideDims(a, sign)...)
	}
	return distinct(out)
}

// drawerSideDims are how the bottom and back stand in the side.
func (m *maker) drawerSideDims(a *piece.Assembly, sign measure.Length) []dimension {
	stops := []measure.Length{a.Corner.Z, a.Corner.Z + a.Size[1].Length()}
	for _, p := range a.Parts {
		lo, hi := p.Corners()
		switch p.Name {
		case "bottom":
			stops = insert(insert(stops, lo.Z), hi.Z)
		case "back":
			stops = insert(stops, hi.Z)
		}
	}
	return []dimension{{side: sheet.RightOf, stops: stops}}
}

// spanOf is the room an assembly takes.
func spanOf(a *piece.Assembly) (lo, hi piece.Vec) {
	for i, p := range a.Parts {
		x, z := p.Corners()
		if i == 0 {
			lo, hi = x, z
		}
		lo = piece.Vec{X: min(lo.X, x.X), Y: min(lo.Y, x.Y), Z: min(lo.Z, x.Z)}
		hi = piece.Vec{X: max(hi.X, z.X), Y: max(hi.Y, z.Y), Z: max(hi.Z, z.Z)}
	}
	return lo, hi
}

// topDims are what only the plan shows.
func (m *maker) topDims(a *piece.Assembly) []dimension {
	switch a.Kind {
	case piece.DrawerAssembly:
		return m.drawerPlan(a)
	case piece.SlabAssembly:
		return m.slabPlan(a)
	case piece.CaseAssembly:
		return m.casePlan(a)
	}
	return nil
}

func (m *maker) drawerPlan(a *piece.Assembly) []dimension {
	var left, front, back *piece.Part
	for _, p := range a.Parts {
		switch p.Name {
		case "left side":
			left = p
		case "front":
			front = p
		case "back":
			back = p
		}
	}
	if left == nil || front == nil || back == nil || front.Bow != nil {
		return nil
	}
	lo, hi := left.Corners()
	x, w := a.Corner.X, a.Size[0].Length()
	t := hi.X - lo.X
	bl, bh := back.Corners()
	fl, fh := front.Corners()
	return []dimension{
		{side: sheet.Above, stops: []measure.Length{x, x + t, x + w - t, x + w}},
		{side: sheet.LeftOf, stops: []measure.Length{fl.Y, fh.Y, bl.Y, bh.Y}},
	}
}

func (m *maker) slabPlan(a *piece.Assembly) []dimension {
	p := a.Parts[0]
	lo, hi := p.Corners()
	out := []dimension{{side: sheet.RightOf, stops: []measure.Length{lo.Y, hi.Y}}}
	if p.Bow == nil || p.Bow.Axis != joinery.W {
		return out
	}
	out = append(out, dimension{side: sheet.LeftOf, stops: []measure.Length{lo.Y, lo.Y + p.Bow.Fall, hi.Y}})
	k := p.Bow.Curve
	left, right := k.Shape.Bow()
	shift := (lo.X+hi.X)/2 - (p.Bow.From+p.Bow.To)/2
	if a, z := left+shift, right+shift; a > lo.X && z < hi.X {
		out = append(out, dimension{side: sheet.Above, stops: []measure.Length{lo.X, a, z, hi.X}})
	}
	return out
}

// casePlan is the depth, and how deep the back sits.
func (m *maker) casePlan(a *piece.Assembly) []dimension {
	y := a.Corner.Y
	stops := []measure.Length{y, y + a.Size[2].Length()}
	for _, o := range m.p.Openings {
		if o.Case == a {
			stops = insert(stops, y+o.Depth.Length())
			break
		}
	}
	return []dimension{{side: sheet.RightOf, stops: stops}}
}

// placeMarks shows where the cabinetmaker's triangle goes, in the free corner.
func (m *maker) placeMarks(out *arrangement, a *piece.Assembly, row int) {
	g, turn, words := fromFront, measure.Angle(0), triangleWords(a)
	if words == "" {
		return
	}
	if a.Kind == piece.DrawerAssembly {
		g, turn = fromAbove, measure.Degrees(180)
	}
	s := look(m.bodiesOf(a), g)
	out.free, out.least = place{1, row}, sheet.Box{W: 34, H: 27}
	out.corner = func(room sheet.Box) []sheet.Item {
		box := sheet.Box{X: room.X, Y: room.Y, W: room.W, H: out.least.H}
		v := fitted(s.bounds(), sheet.Box{X: box.X, Y: box.Y, W: box.W, H: box.H - 8})
		items := s.paint(v, pens{sheet.Pen{Width: 0.13, Ink: sheet.Mid}, sheet.Pen{Width: 0.13}})
		items = append(items, sheet.Triangle{Box: v.OnPaper(), Turn: turn})
		p := sheet.Paragraph{At: sheet.Pt(box.X, box.Bottom()-6.5), Width: box.W, Text: words, Size: 7, Align: sheet.Center, Ink: sheet.Dark}
		return append(items, p)
	}
}

// triangleWords say where the cabinetmaker's triangle goes across an assembly's
// parts; "" for what has no set to mark.
func triangleWords(a *piece.Assembly) string {
	switch a.Kind {
	case piece.CaseAssembly:
		return "triangle on the front edges, pointing up"
	case piece.DrawerAssembly:
		return "triangle on the upper edges, pointing to the front"
	case piece.DoorAssembly:
		return "triangle on the show face, pointing up"
	}
	return ""
}

// fitted is a view that fills a box, to no scale in particular.
func fitted(model, box sheet.Box) sheet.View {
	r := min(box.W/model.W, box.H/model.H)
	return sheet.CenterView(model, box, sheet.Scale{Paper: int(r * 100000), Model: 100000})
}
