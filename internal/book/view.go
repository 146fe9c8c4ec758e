package book

import (
	"cmp"
	"math"
	"slices"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
)

// gaze is a direction to look along: what runs to the right of the picture,
// what up, and what away from the eye, each with its sign.
type gaze struct {
	name    string
	u, v, d signed
}

type signed struct {
	axis int
	sign float64
}

func (s signed) of(c [3]float64) float64 { return s.sign * c[s.axis] }

// The six views. Seen from the right, the front is at the left, as it stands
// beside the front view in third angle.
var (
	fromFront = gaze{"front", signed{xAxis, 1}, signed{zAxis, 1}, signed{yAxis, 1}}
	fromRight = gaze{"right side", signed{yAxis, 1}, signed{zAxis, 1}, signed{xAxis, -1}}
	fromLeft  = gaze{"left side", signed{yAxis, -1}, signed{zAxis, 1}, signed{xAxis, 1}}
	fromAbove = gaze{"from above", signed{xAxis, 1}, signed{yAxis, 1}, signed{zAxis, -1}}
)

// scene is bodies seen one way, ready to paint: far things first.
type scene struct {
	gaze   gaze
	bodies []*body
	layers []layer // far to near
	cuts   []layer // what a section goes through
}

// layer is the wood of one body just behind one plane.
type layer struct {
	body  *body
	area  region
	depth float64
}

// look sees the bodies from outside.
func look(bodies []*body, g gaze) *scene { return lookBehind(bodies, g, math.Inf(-1)) }

// lookBehind sees what lies behind a plane square to the gaze at a depth, and
// what the plane cuts.
func lookBehind(bodies []*body, g gaze, depth float64) *scene {
	s := &scene{gaze: g, bodies: bodies}
	for _, b := range bodies {
		s.add(b, depth)
	}
	slices.SortStableFunc(s.layers, func(a, b layer) int {
		if math.Abs(a.depth-b.depth) > 2*same {
			return cmp.Compare(b.depth, a.depth)
		}
		return cmp.Compare(bowed(a.body), bowed(b.body)) // a bowed front laps what it is joined to
	})
	return s
}

func bowed(b *body) int {
	if b.part.Bow != nil {
		return 1
	}
	return 0
}

// add takes the body's wood at every plane where its section changes.
func (s *scene) add(b *body, from float64) {
	planes := s.planes(b)
	last := planes[len(planes)-1]
	if last <= from {
		return
	}
	if planes[0] < from-same {
		s.cuts = append(s.cuts, layer{b, s.section(b, from, true), from})
	}
	for i := 0; i+1 < len(planes); i++ {
		near, far := math.Max(planes[i], from), planes[i+1]
		if far-near < 4*same {
			continue
		}
		front, back := s.section(b, near+same, false), s.section(b, far-same, false)
		if !front.like(back) {
			s.layers = append(s.layers, layer{b, back, far})
		}
		s.layers = append(s.layers, layer{b, front, near})
	}
}

// planes are the depths at which the body's section changes, rising.
func (s *scene) planes(b *body) []float64 {
	lo, hi := s.gaze.d.of(b.lo), s.gaze.d.of(b.hi)
	lo, hi = math.Min(lo, hi), math.Max(lo, hi)
	out := []float64{lo, hi}
	for _, k := range b.cuts {
		if s.ignores(k) {
			continue
		}
		a, z := k.reach(s.gaze.d.axis)
		for _, d := range [2]float64{s.gaze.d.sign * a, s.gaze.d.sign * z} {
			if d > lo+same && d < hi-same {
				out = append(out, d)
			}
		}
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(b-a) < same })
}

// ignores a bow where it would be seen from the side.
func (s *scene) ignores(k prism) bool { return k.bow && s.gaze.d.axis != zAxis }

// section is the body's wood in the plane at a depth.
func (s *scene) section(b *body, depth float64, cut bool) region {
	axis := s.gaze.d.axis
	var outlines [][]sheet.Point
	for _, k := range b.cuts {
		if s.ignores(k) && !cut {
			continue
		}
		for _, ring := range k.slice(axis, depth*s.gaze.d.sign) {
			outlines = append(outlines, s.flat(ring))
		}
	}
	return cutOut(s.boxOf(b), outlines)
}

// flat carries an outline of the two axes next to the gaze's own to the
// picture.
func (s *scene) flat(ring [][2]float64) []sheet.Point {
	a := s.gaze.d.axis
	out := make([]sheet.Point, len(ring))
	for i, p := range ring {
		var c [3]float64
		c[(a+1)%3], c[(a+2)%3] = p[0], p[1]
		out[i] = sheet.Pt(s.gaze.u.of(c), s.gaze.v.of(c))
	}
	return out
}

// boxOf is the room a body takes in the picture.
func (s *scene) boxOf(b *body) sheet.Box {
	return sheet.BoundsOf(sheet.Pt(s.gaze.u.of(b.lo), s.gaze.v.of(b.lo)), sheet.Pt(s.gaze.u.of(b.hi), s.gaze.v.of(b.hi)))
}

// bounds is the room everything takes in the picture.
func (s *scene) bounds() sheet.Box {
	var out sheet.Box
	for _, b := range s.bodies {
		out = out.Union(s.boxOf(b))
	}
	return out
}

// at is the body seen at a place of the picture, nil where there is none.
func (s *scene) at(p sheet.Point) *body {
	for i := len(s.cuts) - 1; i >= 0; i-- {
		if s.cuts[i].area.holds(p) {
			return s.cuts[i].body
		}
	}
	for i := len(s.layers) - 1; i >= 0; i-- {
		if s.layers[i].area.holds(p) {
			return s.layers[i].body
		}
	}
	return nil
}

// pens for a picture: edges seen, and edges cut.
type pens struct{ edge, cut sheet.Pen }

var (
	finePens  = pens{sheet.Pen{Width: 0.18}, sheet.Pen{Width: 0.4}}
	clearPens = pens{sheet.Pen{Width: 0.25}, sheet.Pen{Width: 0.5}}
)

// paint draws the scene on paper, far things first, each covering what lies
// behind it.
func (s *scene) paint(v sheet.View, pen pens) []sheet.Item {
	var out []sheet.Item
	for _, l := range s.layers {
		if rings := onPaper(l.area.rings(), v); len(rings) > 0 {
			out = append(out, sheet.Polygon{Rings: rings, Pen: pen.edge, Fill: sheet.PaperWhite})
		}
	}
	for _, l := range s.cuts {
		if rings := onPaper(l.area.rings(), v); len(rings) > 0 {
			out = append(out, sheet.Polygon{Rings: rings, Pen: pen.cut, Fill: sheet.PaperWhite, Hatch: s.hatch(l.body.part)})
		}
	}
	return out
}

// hatch is end grain where the gaze runs along the part's grain, else its long
// grain.
func (s *scene) hatch(p *piece.Part) sheet.Hatch {
	switch worldAxis(p.Place.L) {
	case s.gaze.d.axis:
		return sheet.Hatch{Kind: sheet.EndGrain, Spacing: 1}
	case s.gaze.u.axis:
		return sheet.Hatch{Kind: sheet.LongGrain, Spacing: 1}
	}
	return sheet.Hatch{Kind: sheet.LongGrain, Spacing: 1, Along: measure.Degrees(90)}
}

func onPaper(rings [][]sheet.Point, v sheet.View) [][]sheet.Point {
	t := v.Transform()
	for _, r := range rings {
		for i, p := range r {
			r[i] = t.At(p)
		}
	}
	return rings
}

// hidden draws the outlines of bodies that others cover, dashed.
func (s *scene) hidden(v sheet.View, parts ...*piece.Part) []sheet.Item {
	var out []sheet.Item
	for _, b := range s.bodies {
		if !slices.Contains(parts, b.part) {
			continue
		}
		box := s.boxOf(b)
		pen := sheet.Pen{Width: 0.15, Stroke: sheet.Dashed}
		out = append(out, sheet.Polygon{Rings: onPaper([][]sheet.Point{box.Corners()}, v), Pen: pen})
	}
	return out
}
