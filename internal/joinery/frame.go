package joinery

import "casewright/internal/measure"

// FrameSpec asks for a frame of two stiles and two rails round a panel whose
// grain runs with the stiles. Outside sizes, widths, Thickness and
// PanelThickness are needed; other sizes left zero are chosen.
type FrameSpec struct {
	Width, Height              measure.Length // outside
	Thickness                  measure.Length
	Stile, TopRail, BottomRail measure.Length // widths
	PanelThickness             measure.Length
	GrooveWidth, GrooveDepth   measure.Length
	GrooveAt                   measure.Length // outside face to the groove; 0 = in the middle
	Tenon                      measure.Length // length of the rails' tenons
	Kind                       TenonKind      // HaunchedTenon, StubTenon, PlainTenon or BridleTenon
	GapSide, GapEnd            measure.Length // room for movement at each side, and at each end
	Shrinkage                  measure.Length // of the whole panel across the grain, from now to the driest
	Leaves                     int            // boards side by side in the panel; 0 = 1
}

// FramePart is one part of a frame: its size, where it stands and what is cut
// from it.
//
// X and Y are the place of the part's lower left corner as seen from outside,
// from the frame's own; Depth is how far its outside lies behind the frame's.
// Stiles, panel and leaves have L upwards, W to the right and their outside at
// T = 0. Rails have L to the right, W upwards and their outside at T = Box.T.
type FramePart struct {
	Box         Box
	X, Y, Depth measure.Length
	Features    []Feature
}

// FrameLayout is a frame and its panel with every size settled.
type FrameLayout struct {
	Left, Right, Top, Bottom FramePart
	Panel                    FramePart   // as glued up; its features are cut after that
	Leaves                   []FramePart // the panel's boards from left to right, sum of widths = panel
	Shoulder                 measure.Length
	Groove                   GrooveSpec // as in the left stile
	OpeningWidth             measure.Length
	OpeningHeight            measure.Length
	Tongue                   measure.Length // of the panel in the groove, each side, now
	DriestTongue             measure.Length // what is left of it in the driest season
	TopTenon, BottomTenon    TenonLayout    // as on the rails' near ends
}

const (
	leastTongue = measure.Inch / 8 // follows from published frames with 1/4 in tongues in 3/8 in grooves
	leastGroove = measure.Inch / 8 // common practice, no source
)

// LayFrame settles a frame and panel.
//
// Left open, the groove is as wide as the panel is thick, but no wider than a
// third of the frame, when the panel gets a rabbet that leaves a tongue to fit;
// and as deep as wide (Noyes), or deeper where gap, shrinkage and an eighth of
// tongue need it. The tenons are as wide as the groove.
func LayFrame(spec FrameSpec) (FrameLayout, []Problem) {
	if p := spec.nonsense(); len(p) > 0 {
		return FrameLayout{}, p
	}
	s := spec.settle()
	if p := s.misfit(); len(p) > 0 {
		return FrameLayout{}, p
	}
	l := FrameLayout{OpeningWidth: s.Width - 2*s.Stile, OpeningHeight: s.Height - s.TopRail - s.BottomRail}
	l.Shoulder = l.OpeningWidth
	l.Tongue = s.GrooveDepth - s.GapSide
	l.DriestTongue = l.Tongue - (s.Shrinkage+1)/2
	if p := s.makeFrame(&l); AnyStop(p) {
		return FrameLayout{}, p
	}
	s.makePanel(&l)
	return l, s.judge(&l)
}

func (s FrameSpec) nonsense() []Problem {
	for _, v := range [...]struct {
		name string
		size measure.Length
	}{{"width", s.Width}, {"height", s.Height}, {"thickness", s.Thickness}, {"stile", s.Stile},
		{"top rail", s.TopRail}, {"bottom rail", s.BottomRail}, {"panel thickness", s.PanelThickness}} {
		if v.size <= 0 || v.size > largest {
			return []Problem{stop("frame.size", "the frame's "+v.name+" is no size", "give it a size above zero",
				length(v.name, v.size, 0, geometry))}
		}
	}
	for _, v := range [...]measure.Length{s.GrooveWidth, s.GrooveDepth, s.GrooveAt, s.Tenon, s.GapSide, s.GapEnd, s.Shrinkage} {
		if v < 0 || v > largest {
			return []Problem{stop("frame.size", "a size of the frame is below zero", "give it a size above zero, or leave it open",
				length("size", v, 0, geometry))}
		}
	}
	if s.Leaves < 0 || s.Leaves > 100 || s.Kind == TwinTenon {
		return []Problem{stop("frame.kind", "the frame cannot be made that way",
			"ask for one leaf or more, and for haunched, stub, plain or bridle tenons", nil)}
	}
	return nil
}

func (s FrameSpec) settle() FrameSpec {
	if s.GrooveWidth == 0 {
		s.GrooveWidth = s.usualGrooveWidth()
	}
	if s.GrooveDepth == 0 {
		need := max(s.GapSide+(s.Shrinkage+1)/2, s.GapEnd) + leastTongue
		s.GrooveDepth = max(s.GrooveWidth, snapUp(need, sixteenth))
	}
	if s.GrooveAt == 0 {
		s.GrooveAt = (s.Thickness - s.GrooveWidth) / 2
	}
	s.Leaves = max(s.Leaves, 1)
	return s
}

// usualGrooveWidth lets a thin panel in whole; a thicker one gets a tongue the
// width of the nearest cutter to a third of the frame.
func (s FrameSpec) usualGrooveWidth() measure.Length {
	third := max(snapDown(s.Thickness/3+sixteenth/2, sixteenth), min(leastGroove, s.Thickness/3))
	return min(s.PanelThickness, third)
}

func (s FrameSpec) misfit() []Problem {
	var out []Problem
	bad := func(is bool, code, summary, mend string, f []Figure) {
		if is {
			out = append(out, stop("frame."+code, summary, mend, f))
		}
	}
	bad(2*s.Stile >= s.Width, "stiles", "the two stiles leave no opening", "make the stiles narrower",
		length("both stiles", 2*s.Stile, s.Width, geometry))
	bad(s.TopRail+s.BottomRail >= s.Height, "rails", "the two rails leave no opening", "make the rails narrower",
		length("both rails", s.TopRail+s.BottomRail, s.Height, geometry))
	bad(s.GrooveWidth > s.PanelThickness, "loose-panel", "the groove is wider than the panel is thick",
		"make the groove as wide as the panel, or narrower", length("groove width", s.GrooveWidth, s.PanelThickness, geometry))
	bad(s.GrooveAt+s.GrooveWidth >= s.Thickness, "groove", "the groove does not lie inside the frame's thickness",
		"make it narrower or move it", length("groove's far wall", s.GrooveAt+s.GrooveWidth, s.Thickness, geometry))
	bad(s.GapSide >= s.GrooveDepth || s.GapEnd >= s.GrooveDepth, "gap", "the room left for movement takes the panel out of its groove",
		"make the groove deeper", length("gap", max(s.GapSide, s.GapEnd), s.GrooveDepth, geometry))
	return out
}

// makeFrame sizes and cuts stiles and rails.
func (s FrameSpec) makeFrame(l *FrameLayout) []Problem {
	l.Left = FramePart{Box: Box{s.Height, s.Stile, s.Thickness}}
	l.Right = FramePart{Box: l.Left.Box, X: s.Width - s.Stile}
	tenon := s.tenonLength()
	l.Bottom = FramePart{Box: Box{l.Shoulder + 2*tenon, s.BottomRail, s.Thickness}, X: s.Stile - tenon}
	l.Top = FramePart{Box: Box{l.Shoulder + 2*tenon, s.TopRail, s.Thickness}, X: s.Stile - tenon, Y: s.Height - s.TopRail}
	var problems []Problem
	problems = append(problems, s.join(l, &l.Bottom, &l.BottomTenon, Front)...)
	problems = append(problems, s.join(l, &l.Top, &l.TopTenon, Back)...)
	return append(problems, s.plough(l)...)
}

func (s FrameSpec) tenonLength() measure.Length {
	if s.Tenon > 0 {
		return s.Tenon
	}
	t := TenonSpec{Kind: s.Kind, GrooveDepth: s.GrooveDepth, Seat: Seat{Host: Box{s.Height, s.Stile, s.Thickness}, Face: BackEdge}}
	return t.usualLength()
}

// join cuts a rail's two tenons and their mortises. The near end of a rail
// meets the left stile.
func (s FrameSpec) join(l *FrameLayout, rail *FramePart, tenon *TenonLayout, outer Edge) []Problem {
	var problems []Problem
	for end, stile := range [...]*FramePart{&l.Left, &l.Right} {
		face := BackEdge // the inner edge of the left stile
		if stile == &l.Right {
			face = FrontEdge
		}
		// A rail's outside is its high face, a stile's its low one.
		made, p := LayTenon(TenonSpec{
			Kind: s.Kind, Rail: rail.Box, End: End(end), Outer: outer,
			Seat:      Seat{Host: stile.Box, Face: face, AlongW: L, WAt: rail.Y, TAt: s.Thickness, TTurned: true},
			Thickness: s.GrooveWidth, Offset: s.Thickness - s.GrooveAt - s.GrooveWidth, Flush: true,
			Length: s.tenonLength(), GrooveDepth: s.GrooveDepth, GrooveWidth: s.GrooveWidth,
		})
		rail.Features = append(rail.Features, made.Rail...)
		stile.Features = append(stile.Features, made.Host...)
		if end == 0 {
			*tenon, problems = made, p // the far end has the same to say
		}
	}
	return problems
}

// plough cuts the panel groove: the whole length of the stiles, where the
// haunches fill it, and between the shoulders of the rails.
func (s FrameSpec) plough(l *FrameLayout) []Problem {
	var problems []Problem
	groove := func(p *FramePart, edge Edge, at measure.Length, stops Stops) {
		g := GrooveSpec{edge.Face(), L, at, s.GrooveWidth, s.GrooveDepth, stops}
		f, pr := g.Features(p.Box)
		p.Features = append(p.Features, f...)
		problems = append(problems, pr...)
		if p == &l.Left {
			l.Groove = g
		}
	}
	tenon, fromBack := s.tenonLength(), s.Thickness-s.GrooveAt-s.GrooveWidth
	groove(&l.Left, Back, s.GrooveAt, Stops{})
	groove(&l.Right, Front, s.GrooveAt, Stops{})
	groove(&l.Bottom, Back, fromBack, Stops{tenon, tenon})
	groove(&l.Top, Front, fromBack, Stops{tenon, tenon})
	return problems
}

// makePanel sizes the panel and its leaves. A panel thicker than the groove is
// rabbeted on its outside, as far in as the groove is deep, so that its field
// still clears the frame when the panel is at its widest.
func (s FrameSpec) makePanel(l *FrameLayout) {
	wide, long := l.OpeningWidth+2*l.Tongue, l.OpeningHeight+2*(s.GrooveDepth-s.GapEnd)
	step := s.PanelThickness - s.GrooveWidth
	l.Panel = FramePart{
		Box: Box{long, wide, s.PanelThickness},
		X:   s.Stile - l.Tongue, Y: s.BottomRail - (s.GrooveDepth - s.GapEnd), Depth: s.GrooveAt - step,
	}
	if step > 0 {
		l.Panel.Features = s.panelRabbets(l.Panel.Box, step)
	}
	at := l.Panel.X
	for i := range s.Leaves {
		w := measure.Length(i+1)*wide/measure.Length(s.Leaves) - measure.Length(i)*wide/measure.Length(s.Leaves)
		leaf := l.Panel
		leaf.Box.W, leaf.X, leaf.Features = w, at, nil
		l.Leaves = append(l.Leaves, leaf)
		at += w
	}
}

// panelRabbets runs along the two long edges right through and across the ends
// between them, so that no corner is cut twice.
func (s FrameSpec) panelRabbets(b Box, depth measure.Length) []Feature {
	var out []Feature
	w := s.GrooveDepth
	for _, beside := range [...]Face{FrontEdge, BackEdge, NearEnd, FarEnd} {
		stops := Stops{}
		if beside.Axis() == L {
			stops = Stops{w, w}
		}
		f, _ := RabbetSpec{LowSide, beside, w, depth, stops}.Features(b)
		out = append(out, f...)
	}
	return out
}

func (s FrameSpec) judge(l *FrameLayout) []Problem {
	var out []Problem
	if l.DriestTongue < leastTongue {
		out = append(out, warn("frame.tongue", "in the driest season too little of the panel stays in its groove",
			"make the groove deeper or the gap smaller, or take quartersawn wood",
			length("tongue left", l.DriestTongue, leastTongue, "follows from frames of 8 to 15 in published on a trade forum")))
	}
	if l.Panel.Depth < 0 {
		out = append(out, note("frame.proud", "the panel stands proud of the frame",
			"make the panel thinner, or set the groove further back", length("proud by", -l.Panel.Depth, 0, geometry)))
	}
	if 2*s.GrooveWidth > s.Thickness {
		out = append(out, warn("frame.thin-cheeks", "the groove leaves thin walls",
			"make it about a third of the frame's thickness", length("groove width", s.GrooveWidth, s.Thickness/3, noyes)))
	}
	return out
}
