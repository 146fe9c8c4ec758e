package book

import (
	"math"
	"slices"

	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/why"
)

// panel is one view with its dimensions. Everything is made anew for each
// scale that is tried.
type panel struct {
	name  string
	scene *scene
	model sheet.Box // shared with the neighbours it is in line with
	pen   pens
	paint func(v sheet.View) []sheet.Item // instead of the scene's own lines
	dims  []dimension
	over  func(v sheet.View) []sheet.Item // drawn on the picture
	marks []balloonFor
	avoid func(v sheet.View) []sheet.Box // what dimensions must keep clear of
}

// dimension is a chain along one side of a view, in the picture's own
// millimetres. Sizes, where given, are what is printed between the stops.
type dimension struct {
	side  sheet.Side
	stops []measure.Length
	sizes []why.Size
	total why.Size
	fine  bool     // printed to the graduation of gaps
	at    *float64 // stands within the view, along this coordinate
}

// place is where in an arrangement a panel stands.
type place struct{ col, row int }

// arrangement is views in line with each other.
type arrangement struct {
	m      *maker
	panels []*panel
	places []place
	corner func(room sheet.Box) []sheet.Item // what fills the free corner, or nil
	free   place                             // where that is
	least  sheet.Box                         // the width and height it must have
	unseen []string                          // marks no view had room for or shows
}

func (a *arrangement) put(p *panel, col, row int) {
	a.panels = append(a.panels, p)
	a.places = append(a.places, place{col, row})
}

const (
	labelRoom = 8.5 // below a view, for its name
	viewGap   = 5.5
)

// tracks are the columns or rows of an arrangement: how much stands before,
// within and behind the outline.
type tracks struct{ before, within, after []float64 }

func newTracks(n int) tracks {
	return tracks{make([]float64, n), make([]float64, n), make([]float64, n)}
}

func (t tracks) widen(i int, before, within, after float64) {
	t.before[i] = math.Max(t.before[i], before)
	t.within[i] = math.Max(t.within[i], within)
	t.after[i] = math.Max(t.after[i], after)
}

func (t tracks) total() float64 {
	sum := -viewGap
	for i := range t.within {
		if t.within[i] > 0 {
			sum += t.before[i] + t.within[i] + t.after[i] + viewGap
		}
	}
	return sum
}

// starts is where each track's outline starts, the whole starting at from.
func (t tracks) starts(from float64) []float64 {
	out := make([]float64, len(t.within))
	for i := range t.within {
		out[i] = from + t.before[i]
		if t.within[i] > 0 {
			from += t.before[i] + t.within[i] + t.after[i] + viewGap
		}
	}
	return out
}

// set is an arrangement at one scale, each panel at its own origin.
type set struct {
	scale      sheet.Scale
	views      []sheet.View
	dims       []sheet.Dimensioned
	cols, rows tracks
}

func (a *arrangement) set(s sheet.Scale) set {
	nc, nr := 0, 0
	for _, p := range a.places {
		nc, nr = max(nc, p.col+1), max(nr, p.row+1)
	}
	out := set{scale: s, cols: newTracks(nc), rows: newTracks(nr)}
	for i, p := range a.panels {
		v := sheet.ViewAt(p.model, sheet.Pt(0, 0), s)
		d := p.dimensions(a.m, v)
		out.views, out.dims = append(out.views, v), append(out.dims, d)
		b := v.OnPaper()
		out.cols.widen(a.places[i].col, d.Room.Left, b.W, d.Room.Right)
		label := 0.0
		if p.name != "" {
			label = labelRoom
		}
		out.rows.widen(a.places[i].row, d.Room.Top, b.H, d.Room.Bottom+label)
	}
	if a.corner != nil && a.free.row < nr {
		out.rows.widen(a.free.row, 0, 0, a.least.H-out.rows.within[a.free.row])
	}
	return out
}

// figure is a drawn arrangement.
type figure struct {
	items  []sheet.Item
	scale  sheet.Scale
	height float64
	unseen []string
}

// draw takes the largest scale at which all views fit the room and draws them
// in its middle, at its top.
func (a *arrangement) draw(room sheet.Box, scales []sheet.Scale) figure {
	var best set
	sheet.Largest(scales, func(s sheet.Scale) bool {
		if s.Ratio() > 1 {
			return false
		}
		best = a.set(s)
		return best.cols.total() <= room.W && best.rows.total() <= room.H
	})
	out := figure{scale: best.scale, height: best.rows.total(), unseen: slices.Clone(a.unseen)}
	xs := best.cols.starts(room.X + (room.W-best.cols.total())/2)
	ys := best.rows.starts(room.Y)
	for i, p := range a.panels {
		at := a.places[i]
		items, unseen := p.draw(a.m, best.views[i], best.dims[i])
		out.unseen = append(out.unseen, unseen...)
		out.items = append(out.items, sheet.Group{At: sheet.Move(xs[at.col], ys[at.row]), Items: items})
	}
	if box, ok := a.freeCorner(best, xs, ys, room); ok {
		out.items = append(out.items, a.corner(box)...)
	}
	return out
}

// freeCorner is the room beside the plan: in line with the column below or
// above it, or further left where the sheet ends. ok is false where that is
// less than the corner needs.
func (a *arrangement) freeCorner(s set, xs, ys []float64, room sheet.Box) (box sheet.Box, ok bool) {
	if a.corner == nil || a.free.col >= len(xs) || a.free.row >= len(ys) {
		return box, false
	}
	r := a.free.row
	box = sheet.Box{X: min(xs[a.free.col], room.Right()-a.least.W), Y: ys[r], H: s.rows.within[r] + s.rows.after[r]}
	box.W = min(room.Right()-box.X, max(a.least.W, s.cols.within[a.free.col]))
	for i, p := range a.places {
		taken := xs[p.col] + s.views[i].OnPaper().W + s.dims[i].Room.Right
		if p.row == r && p.col < a.free.col && taken+3 > box.X {
			return box, false
		}
	}
	return box, true
}

// dimensions lays out the chains around the view.
func (p *panel) dimensions(m *maker, v sheet.View) sheet.Dimensioned {
	var dims []sheet.Dim
	for _, d := range p.dims {
		if d.at == nil {
			dims = append(dims, d.on(m, v))
		}
	}
	style := sheet.DimStyle{Size: 9, First: 7, Further: 6.5}
	if p.avoid != nil {
		style.Avoid = p.avoid(v)
	}
	return sheet.Dimensions(v.OnPaper(), style, dims...)
}

// on is the chain on paper. Where the sizes are known they are printed as
// everywhere in the book, if they then add up; else the stops themselves are
// rounded, which always does.
func (d dimension) on(m *maker, v sheet.View) sheet.Dim {
	style := m.rule
	if d.fine {
		style = m.fine
	}
	out := v.Chain(d.side, style, d.stops...)
	if len(d.sizes) != len(d.stops)-1 {
		return out
	}
	var sum measure.Length
	for _, s := range d.sizes {
		if !s.Given() {
			return out
		}
		sum += m.p.Shown(s)
	}
	if d.total.Given() && sum != m.p.Shown(d.total) {
		return out
	}
	for i, s := range d.sizes {
		out.Labels[i] = m.size(s)
	}
	return out
}

// draw is the view with everything on it, and the marks that found no place.
func (p *panel) draw(m *maker, v sheet.View, d sheet.Dimensioned) (out []sheet.Item, unseen []string) {
	if p.paint != nil {
		out = p.paint(v)
	} else {
		out = p.scene.paint(v, p.pen)
	}
	if p.over != nil {
		out = append(out, p.over(v)...)
	}
	inner, taken := p.inner(m, v)
	out = append(append(out, inner...), d.Group)
	marked, unseen := balloons(v, p.scene, append(taken, d.Boxes...), p.marks)
	out = append(out, marked...)
	if p.name != "" {
		b := v.OnPaper()
		out = append(out, sheet.Text{At: sheet.Pt(b.X+b.W/2, b.Bottom()+d.Room.Bottom+3), Text: p.name, Size: sheet.SizeNote, Align: sheet.Center, Level: sheet.Top})
	}
	return out, unseen
}

// inner draws the chains that stand within the view, and tells what room they
// take.
func (p *panel) inner(m *maker, v sheet.View) (out []sheet.Item, taken []sheet.Box) {
	for _, d := range p.dims {
		if d.at == nil {
			continue
		}
		line := v.OnPaper()
		if d.side == sheet.LeftOf || d.side == sheet.RightOf {
			line.X, line.W = v.Pt(*d.at, 0).X, 0
		} else {
			line.Y, line.H = v.Pt(0, *d.at).Y, 0
		}
		drawn := sheet.Dimensions(line, sheet.DimStyle{Size: 8, First: 0.01}, d.on(m, v))
		for _, b := range drawn.Boxes { // edges run behind these values
			out = append(out, sheet.Rect(b.Inset(-0.3), sheet.NoPen, sheet.PaperWhite))
		}
		out = append(out, drawn.Group)
		taken = append(taken, sheet.Bounds(drawn.Group))
	}
	return out, taken
}
