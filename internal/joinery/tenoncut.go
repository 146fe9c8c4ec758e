package joinery

import "casewright/internal/measure"

// railFeatures takes away what stands round the tenons. No two of them overlap.
func (s TenonSpec) railFeatures(l TenonLayout) []Feature {
	var out []Feature
	deep, wide := s.fromTip(0, s.Length), span{0, s.Rail.W}
	cheek := func(t span) {
		if t.width() > 0 {
			out = append(out, block(TenonWaste, W, [3]span{deep, wide, t}))
		}
	}
	cheek(span{0, s.Offset})
	cheek(span{s.Offset + s.Thickness, s.Rail.T})
	thick := span{s.Offset, s.Offset + s.Thickness}
	for _, gap := range s.gaps(l) {
		cut := deep
		if gap == l.HaunchAt {
			cut = s.fromTip(0, s.Length-l.Haunch)
		}
		out = append(out, block(TenonWaste, T, [3]span{cut, {gap.From, gap.To}, thick}))
	}
	return out
}

// fromTip is a stretch of the rail's length measured from the tip of the tenon.
func (s TenonSpec) fromTip(a, z measure.Length) span { return s.Rail.inward(s.End.Face(), a, z) }

// gaps lists what of the rail's width carries no full tenon, front to back.
func (s TenonSpec) gaps(l TenonLayout) []Stretch {
	var out []Stretch
	var at measure.Length
	until := func(to measure.Length) {
		if h := l.HaunchAt; h != (Stretch{}) && h.From >= at && h.To <= to {
			out = appendStretch(out, Stretch{at, h.From})
			out = appendStretch(out, h)
			at = h.To
		}
		out = appendStretch(out, Stretch{at, to})
	}
	for _, t := range l.Tenons {
		until(t.From)
		at = t.To
	}
	until(s.Rail.W)
	return out
}

func appendStretch(list []Stretch, s Stretch) []Stretch {
	if s.To > s.From {
		return append(list, s)
	}
	return list
}

// hostFeatures cuts the mortises, and the socket for a haunch where no groove
// of the same depth already makes it.
func (s TenonSpec) hostFeatures(l TenonLayout) []Feature {
	var out []Feature
	if s.Kind == StubTenon && s.Length == s.GrooveDepth && s.Thickness == s.GrooveWidth {
		return nil // the groove is the mortise
	}
	for _, t := range l.Tenons {
		out = append(out, s.socket(Mortise, s.openAtEnd(t), l.MortiseDepth))
	}
	if l.HaunchAt != (Stretch{}) && (l.Haunch > s.GrooveDepth || s.Thickness != s.GrooveWidth) {
		out = append(out, s.socket(Haunch, l.HaunchAt, l.Haunch))
	}
	return out
}

// openAtEnd lets the slot of a bridle reach past the rail's outer edge to the
// end of the stile, for the rail may be set in a little.
func (s TenonSpec) openAtEnd(t Stretch) Stretch {
	if s.Kind != BridleTenon {
		return t
	}
	size, w := s.Seat.Host.Along(s.Seat.AlongW), s.Seat.WAt
	low, high := -w, size-w // the host's ends in the rail's width
	if s.Seat.WTurned {
		low, high = w-size, w
	}
	if s.Outer == Front {
		return Stretch{min(t.From, low), t.To}
	}
	return Stretch{t.From, max(t.To, high)}
}

func (s TenonSpec) socket(kind FeatureKind, across Stretch, depth measure.Length) Feature {
	seat, into := s.Seat, s.Seat.Face.Axis()
	var at [3]span
	at[into] = seat.Host.inward(seat.Face, 0, depth)
	at[seat.AlongW] = laid(seat.WAt, seat.WTurned, span{across.From, across.To})
	at[third(into, seat.AlongW)] = laid(seat.TAt, seat.TTurned, span{s.Offset, s.Offset + s.Thickness})
	return block(kind, into, at)
}
