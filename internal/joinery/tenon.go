package joinery

import (
	"slices"

	"casewright/internal/measure"
)

// TenonKind says what stands on the end of a rail.
type TenonKind uint8

// The tenons a case piece needs.
const (
	// PlainTenon has four shoulders, or three where a groove takes the inner one.
	PlainTenon TenonKind = iota
	// HaunchedTenon keeps a short haunch at its outer edge, so that the joint
	// stays closed at the end of the stile and the groove is filled.
	HaunchedTenon
	// StubTenon fills the panel groove and goes no deeper.
	StubTenon
	// TwinTenon is two tenons side by side across a wide, thin rail.
	TwinTenon
	// BridleTenon goes through a slot open at the end of the stile.
	BridleTenon
)

// Seat says where the end of a rail meets the part that takes it, in that
// part's own frame. The rail's width runs along AlongW, its corner W = 0 at
// WAt; its thickness runs along the axis left over, its corner T = 0 at TAt.
// A Turned direction runs against the axis, from the same corner.
type Seat struct {
	Host     Box
	Face     Face // face of the host the rail's shoulders meet
	AlongW   Axis // host's axis along which the rail's width runs
	WAt, TAt measure.Length
	WTurned  bool
	TTurned  bool
}

func laid(at measure.Length, turned bool, s span) span {
	if turned {
		return span{at - s.to, at - s.from}
	}
	return span{at + s.from, at + s.to}
}

// TenonSpec asks for a tenon on one end of a rail. The rail's length includes
// the tenon. Sizes left zero are chosen.
type TenonSpec struct {
	Kind TenonKind
	Rail Box
	End  End
	Seat Seat

	Outer     Edge           // edge of the rail towards the end of the stile: haunch, bridle
	Thickness measure.Length // 0 = a third of the rail, or the groove's width
	Offset    measure.Length // rail's low face to the tenon; 0 = in the middle
	Flush     bool           // Offset 0 is meant: no shoulder on the low face
	Length    measure.Length // 0 = two thirds of the host, or the groove's depth for a stub
	Through   bool           // the mortise goes right through

	GrooveDepth measure.Length // panel groove in the inner edge; 0 = none
	GrooveWidth measure.Length
	Haunch      measure.Length // length of the haunch; 0 = as the groove is deep
	Clearance   measure.Length // mortise deeper than the tenon is long; 0 = 1/16 in
}

// TenonLayout is a tenon and its mortise with every size settled.
type TenonLayout struct {
	Thickness, Offset measure.Length
	Length            measure.Length
	Tenons            []Stretch // across the rail's width
	HaunchAt          Stretch   // across the rail's width; zero without a haunch
	Haunch            measure.Length
	MortiseDepth      measure.Length // the host's whole size if through
	Rail, Host        []Feature
}

// Stretch is a part of a width, from its front edge.
type Stretch struct{ From, To measure.Length }

const (
	usualClearance = measure.Inch / 16    // room for glue below a tenon: common practice, no source
	usualHaunch    = 3 * measure.Inch / 8 // where no groove sets it: common practice, no source
	plainShoulder  = measure.Inch / 4     // at the edges of a plain tenon: common practice, no source
)

// ShoulderLength is the length of a rail between its shoulders.
func ShoulderLength(rail Box, near, far measure.Length) measure.Length { return rail.L - near - far }

// LayTenon settles the proportions of a mortise and tenon and cuts both parts.
//
// Left open, a tenon is a third of the rail thick, or fills the groove; it
// takes half the rail's width less the groove where it has a haunch (all
// Noyes); and it is two thirds of the host deep (common practice, no source).
func LayTenon(spec TenonSpec) (TenonLayout, []Problem) {
	if p := spec.nonsense(); len(p) > 0 {
		return TenonLayout{}, p
	}
	s := spec.settle()
	l := TenonLayout{Thickness: s.Thickness, Offset: s.Offset, Length: s.Length}
	l.Tenons, l.HaunchAt = s.divide()
	if l.HaunchAt != (Stretch{}) {
		l.Haunch = s.Haunch
	}
	l.MortiseDepth = s.mortiseDepth()
	if p := s.misfit(l); len(p) > 0 {
		return TenonLayout{}, p
	}
	l.Rail, l.Host = s.railFeatures(l), s.hostFeatures(l)
	return l, s.judge(l)
}

func (s TenonSpec) nonsense() []Problem {
	if !s.Rail.solid() {
		return noPart("tenon", s.Rail)
	}
	if !s.Seat.Host.solid() {
		return noPart("tenon", s.Seat.Host)
	}
	if s.Seat.AlongW > T || s.Seat.AlongW == s.Seat.Face.Axis() {
		return []Problem{stop("tenon.seat", "the rail cannot run into the face it lies along", "name another face", nil)}
	}
	if far := max(s.Seat.WAt, s.Seat.TAt); far > largest || min(s.Seat.WAt, s.Seat.TAt) < -largest {
		return []Problem{stop("tenon.off", "the rail does not meet the part it enters", "check where it stands",
			length("distance", far, largest, geometry))}
	}
	for _, v := range [...]measure.Length{s.Thickness, s.Offset, s.Length, s.GrooveDepth, s.GrooveWidth, s.Haunch, s.Clearance} {
		if v < 0 || v > largest {
			return []Problem{stop("tenon.size", "a size of the tenon is no size", "give sizes above zero, or leave them open",
				length("size", v, 0, geometry))}
		}
	}
	return nil
}

// deep is the host's size in the direction the tenon goes.
func (s TenonSpec) deep() measure.Length { return s.Seat.Host.Along(s.Seat.Face.Axis()) }

func (s TenonSpec) settle() TenonSpec {
	if s.Thickness == 0 {
		s.Thickness = s.usualThickness()
	}
	if s.Offset == 0 && !s.Flush {
		s.Offset = (s.Rail.T - s.Thickness) / 2
	}
	if s.Length == 0 {
		s.Length = s.usualLength()
	}
	if s.Haunch == 0 {
		s.Haunch = s.GrooveDepth
	}
	if s.Haunch == 0 {
		s.Haunch = min(usualHaunch, s.Length/2)
	}
	if s.Clearance == 0 {
		s.Clearance = usualClearance
	}
	return s
}

// usualThickness goes to the nearest 1/16 in, for that is how mortise chisels
// come.
func (s TenonSpec) usualThickness() measure.Length {
	if s.GrooveWidth > 0 {
		return s.GrooveWidth
	}
	if t := snapDown(s.Rail.T/3+sixteenth/2, sixteenth); t > 0 {
		return t
	}
	return s.Rail.T / 3
}

func (s TenonSpec) usualLength() measure.Length {
	switch {
	case s.Through || s.Kind == BridleTenon:
		return s.deep()
	case s.Kind == StubTenon && s.GrooveDepth > 0:
		return s.GrooveDepth
	case s.Kind == StubTenon || s.Kind == TwinTenon:
		return min(usualHaunch, s.deep()/2)
	}
	return min(snapUp(2*s.deep()/3, sixteenth), s.deep())
}

// divide says which stretches of the rail's width carry tenons and which the
// haunch. Everything is worked out with the outer edge at 0, then turned.
func (s TenonSpec) divide() (tenons []Stretch, haunch Stretch) {
	w, groove := s.Rail.W, s.GrooveDepth
	switch s.Kind {
	case HaunchedTenon:
		haunch = Stretch{0, w / 2}
		tenons = []Stretch{{w / 2, w - groove}}
	case StubTenon, BridleTenon:
		tenons = []Stretch{{0, w - groove}} // the panel's corner needs the rest
	case TwinTenon:
		tenons = []Stretch{{w / 8, 3 * w / 8}, {5 * w / 8, 7 * w / 8}}
	default:
		edge := min(plainShoulder, w/4)
		tenons = []Stretch{{edge, w - max(groove, edge)}}
	}
	if s.Outer == Front {
		return tenons, haunch
	}
	turn := func(t Stretch) Stretch { return Stretch{w - t.To, w - t.From} }
	slices.Reverse(tenons)
	for i := range tenons {
		tenons[i] = turn(tenons[i])
	}
	if haunch != (Stretch{}) {
		haunch = turn(haunch)
	}
	return tenons, haunch
}

// mortiseDepth leaves room for glue, but breaks through only if meant.
func (s TenonSpec) mortiseDepth() measure.Length {
	if s.Length >= s.deep() {
		return s.deep()
	}
	if s.Kind == StubTenon && s.GrooveDepth > 0 {
		return s.Length // the groove is the mortise
	}
	return min(s.Length+s.Clearance, s.deep()-1)
}

func (s TenonSpec) misfit(l TenonLayout) []Problem {
	var out []Problem
	if s.Length > s.deep() || (s.Length == s.deep() && !s.Through && s.Kind != BridleTenon) {
		out = append(out, stop("tenon.long", "the tenon is longer than the part it enters is deep",
			"make the tenon shorter, the stile wider, or ask for a through tenon", length("tenon length", s.Length, s.deep(), geometry)))
	}
	if s.Length >= s.Rail.L {
		out = append(out, stop("tenon.rail", "the rail is shorter than its tenon", "make the rail longer",
			length("tenon length", s.Length, s.Rail.L, geometry)))
	}
	if s.Thickness >= s.Rail.T || s.Offset+s.Thickness > s.Rail.T {
		out = append(out, stop("tenon.thick", "the tenon is thicker than the rail leaves room for",
			"make it thinner: a third of the rail is usual", length("tenon thickness", s.Thickness, s.Rail.T/3, noyes)))
	}
	for _, t := range l.Tenons {
		if t.To <= t.From {
			out = append(out, stop("tenon.wide", "groove and haunch leave nothing of the tenon",
				"make the rail wider or the groove shallower", length("groove depth", s.GrooveDepth, s.Rail.W/2, noyes)))
		}
	}
	if l.Haunch >= s.Length && l.HaunchAt != (Stretch{}) {
		out = append(out, stop("tenon.haunch", "the haunch is as long as the tenon", "make the haunch shorter",
			length("haunch", l.Haunch, s.Length, geometry)))
	}
	if len(out) > 0 {
		return out // a mortise off the mark merely follows
	}
	return s.offHost(l)
}

// offHost reports a mortise that does not lie inside the host. A bridle's
// slot is open at the end and may reach it.
func (s TenonSpec) offHost(l TenonLayout) []Problem {
	seat := s.Seat
	wide := span{0, seat.Host.Along(seat.AlongW)}
	thick := span{0, seat.Host.Along(third(seat.Face.Axis(), seat.AlongW))}
	ok := laid(seat.TAt, seat.TTurned, span{s.Offset, s.Offset + s.Thickness}).within(thick)
	for _, t := range l.Tenons {
		ok = ok && laid(seat.WAt, seat.WTurned, span{t.From, t.To}).within(wide)
	}
	if ok {
		return nil
	}
	return []Problem{stop("tenon.off", "the mortise does not lie inside the part it is cut into",
		"check where the rail meets the stile and how wide both are", length("rail width", s.Rail.W, wide.to, geometry))}
}

func (s TenonSpec) judge(l TenonLayout) []Problem {
	var out []Problem
	blind := s.Length < s.deep()
	if blind && 8*s.Length > 7*s.deep() {
		out = append(out, warn("tenon.deep", "the blind mortise leaves a thin wall behind it",
			"make the tenon shorter, or let it go through", length("tenon length", s.Length, 7*s.deep()/8, "a period cabinet text, title not recorded")))
	}
	if (s.Kind == PlainTenon || s.Kind == HaunchedTenon) && 3*s.Length < 2*s.deep() {
		out = append(out, note("tenon.short", "the tenon is short for the stile it holds",
			"make it two thirds of the stile or more", length("tenon length", s.Length, 2*s.deep()/3, practice)))
	}
	if 2*s.Thickness > s.Rail.T {
		out = append(out, warn("tenon.thin-cheeks", "the tenon leaves little wood at its cheeks",
			"make it about a third of the thickness", length("tenon thickness", s.Thickness, s.Rail.T/3, noyes)))
	}
	return out
}
