package joinery

import "casewright/internal/measure"

// Stops says how far short of the two ends of its run a rabbet, groove or
// dado stops: Near at the end where the run's axis starts, Far at the other.
// The zero Stops runs right through.
type Stops struct{ Near, Far measure.Length }

// GrooveSpec is a square channel. It opens on Face and runs along the axis Along,
// which must lie in that face; From is the distance of its nearer wall from
// the part's corner along the third axis. A groove for a drawer bottom opens
// on a broad face, one for a panel on an edge; both run along L. One that runs
// across the grain is a dado: see [HousingSpec].
type GrooveSpec struct {
	Face         Face
	Along        Axis
	From         measure.Length
	Width, Depth measure.Length
	Stops        Stops
}

// Features is the wood the groove takes from the part, or what forbids it.
func (g GrooveSpec) Features(b Box) ([]Feature, []Problem) {
	return slot{Groove, "groove", g.Face, g.Along, g.From, g.Width, g.Depth, g.Stops}.cut(b)
}

// RabbetSpec is a step along the border between two faces: Width is measured on
// Face, inwards from the border with Beside; Depth into Face. A back rabbet
// opens on the inside face beside the back edge.
type RabbetSpec struct {
	Face, Beside Face
	Width, Depth measure.Length
	Stops        Stops
}

// Features is the wood the rabbet takes from the part, or what forbids it.
func (r RabbetSpec) Features(b Box) ([]Feature, []Problem) {
	if r.Face.Axis() == r.Beside.Axis() {
		return nil, []Problem{stop("rabbet.faces", "a rabbet needs two faces that meet", "name an edge or end beside the face", nil)}
	}
	across := b.inward(r.Beside, 0, r.Width)
	along := third(r.Face.Axis(), r.Beside.Axis())
	return slot{Rabbet, "rabbet", r.Face, along, across.from, r.Width, r.Depth, r.Stops}.cut(b)
}

// slot is what grooves, rabbets and dadoes share.
type slot struct {
	kind         FeatureKind
	code         string
	face         Face
	along        Axis
	from         measure.Length
	width, depth measure.Length
	stops        Stops
}

func (s slot) cut(b Box) ([]Feature, []Problem) {
	if p := s.misfit(b); len(p) > 0 {
		return nil, p
	}
	var at [3]span
	at[s.face.Axis()] = b.inward(s.face, 0, s.depth)
	at[s.along] = span{s.stops.Near, b.Along(s.along) - s.stops.Far}
	at[third(s.face.Axis(), s.along)] = span{s.from, s.from + s.width}
	return []Feature{block(s.kind, s.along, at)}, s.judge(b)
}

func (s slot) misfit(b Box) []Problem {
	if !b.solid() {
		return noPart(s.code, b)
	}
	if s.along > T || s.along == s.face.Axis() {
		return []Problem{stop(s.code+".along", "a "+s.code+" cannot run square into the face it opens on",
			"let it run along another direction", nil)}
	}
	var out []Problem
	thick, wide, long := b.Along(s.face.Axis()), b.Along(third(s.face.Axis(), s.along)), b.Along(s.along)
	if s.depth <= 0 || s.depth >= thick {
		out = append(out, stop(s.code+".depth", "the "+s.code+" has no depth, or goes right through",
			"give a depth above zero and below the wood it is cut into", length("depth", s.depth, thick, geometry)))
	}
	if s.width <= 0 || s.from < 0 || s.width > wide || s.from > wide-s.width {
		out = append(out, stop(s.code+".width", "the "+s.code+" does not lie on the part",
			"check where it starts and how wide it is", length("far wall", s.from+s.width, wide, geometry)))
	}
	if s.stops.Near < 0 || s.stops.Far < 0 || s.stops.Near > long || s.stops.Far > long-s.stops.Near-1 {
		out = append(out, stop(s.code+".stops", "the "+s.code+" stops before it starts",
			"stop it nearer to the ends", length("stopped in all", s.stops.Near+s.stops.Far, long, geometry)))
	}
	return out
}

// judge warns of a cut deeper than half the wood. Rabbets may go deeper: half
// to two thirds is usual for a corner (FWW07 page 79).
func (s slot) judge(b Box) []Problem {
	thick, deepest, source := b.Along(s.face.Axis()), b.Along(s.face.Axis())/2, practice
	if s.kind == Rabbet {
		deepest, source = 2*thick/3, fww07+", page 79"
	}
	if s.depth <= deepest {
		return nil
	}
	return []Problem{warn(s.code+".deep", "the "+s.code+" weakens the part: little wood is left behind it",
		"make it shallower or the part thicker", length("depth", s.depth, deepest, source))}
}

// BevelSpec is a slope planed along a long edge: a triangle that takes Width off
// Side, inwards from Edge, and Depth off Edge, down from Side. With Depth the
// whole thickness it is the hook of a hanging cleat.
type BevelSpec struct {
	Edge         Edge
	Side         Side
	Width, Depth measure.Length
	Stops        Stops
}

// CleatBevel is the bevel of a hanging cleat: 45° through the whole thickness.
func CleatBevel(b Box, edge Edge, side Side) BevelSpec {
	return BevelSpec{Edge: edge, Side: side, Width: b.T, Depth: b.T}
}

// Features is the wood the bevel takes from the part, or what forbids it.
func (v BevelSpec) Features(b Box) ([]Feature, []Problem) {
	if !b.solid() {
		return nil, noPart("bevel", b)
	}
	if v.Width <= 0 || v.Width >= b.W || v.Depth <= 0 || v.Depth > b.T {
		return nil, []Problem{stop("bevel.size", "the bevel is larger than the edge it is planed on, or nothing",
			"keep it within the thickness and the width", length("bevel", max(v.Width, v.Depth), b.T, geometry))}
	}
	if v.Stops.Near < 0 || v.Stops.Far < 0 || v.Stops.Near > b.L || v.Stops.Far >= b.L-v.Stops.Near {
		return nil, []Problem{stop("bevel.stops", "the bevel stops before it starts", "stop it nearer to the ends",
			length("stopped in all", v.Stops.Near+v.Stops.Far, b.L, geometry))}
	}
	edge := func(in measure.Length) measure.Length { return b.inward(v.Edge.Face(), in, in).from }
	side := func(in measure.Length) measure.Length { return b.inward(v.Side.Face(), in, in).from }
	return []Feature{prism(Bevel, L, span{v.Stops.Near, b.L - v.Stops.Far},
		Point{edge(0), side(0)}, Point{edge(v.Width), side(0)}, Point{edge(0), side(v.Depth)})}, nil
}
