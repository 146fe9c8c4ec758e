package piece

import (
	"slices"

	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// This file is where placed parts become requests to package joinery: what a
// joint takes from each part follows from where the two stand, so that a
// tongue and its housing cannot disagree.

// joint opens a joint between two parts.
func (b *builder) joint(kind, name string, host, other *Part, at diag.Span) *Joint {
	j := &Joint{Number: len(b.p.Joints) + 1, Kind: kind, Name: name, A: host, B: other, At: at}
	b.p.Joints = append(b.p.Joints, j)
	return j
}

// cut gives a part what the joint takes from it. The joints of a bowed part are
// laid out as if it were straight and follow its curve in the end: see shape.go.
func (j *Joint) cut(p *Part, features []joinery.Feature, problems []joinery.Problem) {
	j.Problems = append(j.Problems, problems...)
	for _, f := range features {
		p.Features = append(p.Features, Feature{f, j})
	}
}

// ours drops the mere notes on proportions that the tool chose itself, having
// weighed them; what the text asked for is judged in full.
func ours(problems []joinery.Problem, asked bool) []joinery.Problem {
	if asked {
		return problems
	}
	return slices.DeleteFunc(slices.Clone(problems), func(p joinery.Problem) bool { return p.Grade == diag.Note })
}

// housingDepth is the depth of a housing: as given, else what the thinner of
// the boards that take it can spare. A board inside the case may have another
// housing opposite.
func (b *builder) housingDepth(given why.Size, hosts ...*Part) why.Size {
	if given.Given() {
		return given.Named("housing depth")
	}
	best := why.Size{}
	for _, h := range hosts {
		if h == nil {
			continue
		}
		backToBack := h.Mirror == nil && h != h.Assembly.Parts[0]
		d := why.Rule("housing depth", b.usualHousing(h.Thickness.Length(), backToBack),
			"a third of the board it is cut in, a quarter where another may lie opposite, down to the next "+b.stepWord(), practice, h.Thickness)
		if !best.Given() || d.Length() < best.Length() {
			best = d
		}
	}
	return best
}

// usualHousing is joinery's depth, in whole millimetres where the shop has them.
func (b *builder) usualHousing(thick measure.Length, backToBack bool) measure.Length {
	depth := joinery.UsualHousingDepth(thick, backToBack)
	if b.metric() {
		depth = max(thick.MulDiv(1, 3)/measure.Millimetre, 1) * measure.Millimetre
		if backToBack {
			depth = max(thick.MulDiv(1, 4)/measure.Millimetre, 1) * measure.Millimetre
		}
	}
	return depth
}

// house lets the end of one board into a dado across another.
func (b *builder) house(host, housed *Part, end joinery.End, depth, stopped why.Size, at diag.Span) *Joint {
	if host == nil {
		return nil
	}
	j := b.joint("dado", housed.Name+" in "+host.Name, host, housed, at)
	j.Depth, j.Tongue, j.EndB, j.Glued = depth, housed.Thickness, end, "all" // both boards move front to back alike
	in := housed.in(host, housed.tip(end, depth.Length()))
	face := host.facing(housed.away(end))
	if face.Axis() != joinery.T {
		return b.stubInto(j, host, housed, end, depth)
	}
	box := host.Box()
	setBack := max(in.lo[joinery.W], 0)
	l, problems := joinery.LayHousing(box, joinery.HousingSpec{Side: joinery.Side(face - joinery.LowSide), At: in.lo[joinery.L],
		Width: in.hi[joinery.L] - in.lo[joinery.L], Depth: depth.Length(),
		StopFront: setBack + stopped.Length(), StopBack: max(box.W-in.hi[joinery.W], 0)})
	j.cut(host, l.Features, problems)
	if b.behind[host] != nil || host.frameBack {
		return j // one of two rails: see houseInRails
	}
	own, problems := l.BoardFeatures(joinery.HousedBoard{Box: housed.Box(), End: end, SetBack: in.lo[joinery.W]})
	j.cut(housed, own, problems)
	return j
}

// houseInRails lets the end of a board into what bounds its space: a board, or
// a front rail with a back rail behind it. Between two rails the end is cut
// away, so that it clears the runners there.
func (b *builder) houseInRails(host, board *Part, end joinery.End, depth, stopped why.Size, at diag.Span) {
	j := b.house(host, board, end, depth, stopped, at)
	back := b.behind[host]
	if back == nil || j == nil {
		return
	}
	b.house(back, board, end, depth, why.Size{}, at)
	front, rear := host.in(board, host.whole()), back.in(board, back.whole())
	tip := board.tip(end, depth.Length())
	j.cut(board, []joinery.Feature{{Kind: joinery.Notch, Axis: joinery.T, From: 0, To: board.Thickness.Length(),
		Outline: rectangle(tip.lo[joinery.L], tip.hi[joinery.L], front.hi[joinery.W], rear.lo[joinery.W])}}, nil)
	if in := rear.hi[joinery.W]; in < board.Width.Length() { // what stands out behind the back rail
		j.cut(board, []joinery.Feature{{Kind: joinery.Notch, Axis: joinery.T, From: 0, To: board.Thickness.Length(),
			Outline: rectangle(tip.lo[joinery.L], tip.hi[joinery.L], in, board.Width.Length())}}, nil)
	}
}

func rectangle(u0, u1, v0, v1 measure.Length) []joinery.Point {
	return []joinery.Point{{U: u0, V: v0}, {U: u1, V: v0}, {U: u1, V: v1}, {U: u0, V: v1}}
}

// stubInto lets an end into the edge of another part: a stub tenon as thick as
// the rail, or a third of it where the host is no thicker.
func (b *builder) stubInto(j *Joint, host, rail *Part, end joinery.End, depth why.Size) *Joint {
	j.Kind = "stub tenon"
	l, problems := joinery.LayTenon(joinery.TenonSpec{Kind: joinery.StubTenon, Rail: straight(rail), End: end,
		Seat: b.seat(host, rail, end), Length: depth.Length(), Clearance: measure.Inch / 32})
	j.Tongue = why.Rule("tenon thickness", l.Thickness, "a third of the rail, to the nearest "+b.stepWord(), noyes, rail.Thickness)
	j.cut(rail, l.Rail, problems)
	j.cut(host, l.Host, nil)
	return j
}

// stubTenon joins a runner to a web frame's rail.
func (b *builder) stubTenon(host, rail *Part, end joinery.End, depth why.Size, at diag.Span) *Joint {
	j := b.joint("stub tenon", rail.Name+" in "+host.Name, host, rail, at)
	j.Depth, j.EndB, j.Glued = depth, end, "all"
	if end == joinery.Far {
		j.Glued = "loose, so that the sides can move"
	}
	return b.stubInto(j, host, rail, end, depth)
}

// straight is the part's size as if its bow were straightened out.
func straight(p *Part) joinery.Box {
	return joinery.Box{L: p.Length.Length(), W: p.Width.Length(), T: p.Thickness.Length()}
}

// seat says where a rail's end meets its host.
func (b *builder) seat(host, rail *Part, end joinery.End) joinery.Seat {
	along, against := host.Place.axis(rail.Place.W)
	t, tAgainst := host.Place.axis(rail.Place.T)
	corner := host.Place.Local(rail.Place.At)
	return joinery.Seat{Host: straight(host), Face: host.facing(rail.away(end)), AlongW: along,
		WAt: corner[along], WTurned: against, TAt: corner[t], TTurned: tAgainst}
}

// haunchedTenon joins a frame's rail to its stile.
func (b *builder) haunchedTenon(stile, rail *Part, end joinery.End, length, thick, groove why.Size, at diag.Span) *Joint {
	j := b.joint("haunched mortise and tenon", rail.Name+" in "+stile.Name, stile, rail, at)
	j.Depth, j.Tongue, j.EndB, j.Glued = length, thick, end, "all"
	seat := b.seat(stile, rail, end)
	if stile.Bow != nil { // both are laid out as if the frame were flat: outside at T = 0
		seat.TAt, seat.TTurned = straight(stile).T, true
	}
	l, problems := joinery.LayTenon(joinery.TenonSpec{Kind: joinery.HaunchedTenon, Rail: straight(rail), End: end, Seat: seat,
		Outer: otherEdge(rail.Edge), Thickness: thick.Length(), Length: length.Length(), GrooveDepth: groove.Length(), GrooveWidth: thick.Length()})
	j.cut(rail, l.Rail, ours(problems, length.Kind() == why.Typed))
	j.cut(stile, l.Host, nil)
	return j
}

func otherEdge(e joinery.Edge) joinery.Edge { return joinery.Back - e }

// panelGroove cuts the groove for a panel along a frame member's inner edge.
func (b *builder) panelGroove(host *Part, d *doorWork) {
	j := b.joint("groove", "panel in "+host.Name, host, nil, d.asm.At)
	j.Depth, j.Tongue = d.groove, d.tongue
	f, problems := joinery.GrooveSpec{Face: host.Edge.Face(), Along: joinery.L, From: (d.thick.Length() - d.tongue.Length()) / 2,
		Width: d.tongue.Length(), Depth: d.groove.Length()}.Features(straight(host))
	j.cut(host, f, problems)
}

// groove takes the edge of a thin board in a groove along its host.
func (b *builder) groove(host, thin *Part, depth why.Size, name string, at diag.Span) {
	j := b.joint("groove", name, host, thin, at)
	j.Depth, j.Tongue = depth, thin.Thickness
	in := thin.in(host, thin.whole())
	face := joinery.LowSide
	if host.Bow == nil && in.hi[joinery.T] > straight(host).T { // comes from beyond the high face
		face = joinery.HighSide
	}
	f, problems := joinery.GrooveSpec{Face: face, Along: joinery.L, From: in.lo[joinery.W],
		Width: in.hi[joinery.W] - in.lo[joinery.W], Depth: depth.Length()}.Features(straight(host))
	j.cut(host, f, problems)
}

// corner lays out a dovetailed corner once and cuts both boards. front is
// where its row starts, in the piece's frame.
type corner struct {
	tail, pin       *Part
	tailEnd, pinEnd joinery.End
	front           Vec
	inTail, inPin   joinery.Side
	bowed           bool // the case's front is, so that the boards reach beyond the row
}

// dovetail cuts an already laid out row into both boards of a corner.
func (b *builder) dovetail(l *joinery.DovetailLayout, problems []joinery.Problem, c corner, name string, at diag.Span) *Joint {
	kind := "through dovetail"
	if !l.Through() {
		kind = "half-blind dovetail"
	}
	j := b.joint(kind, name, c.tail, c.pin, at)
	j.Dovetail, j.EndA, j.EndB, j.Glued = l, c.tailEnd, c.pinEnd, "all"
	j.Problems = problems
	j.RowA = c.tail.Place.Local(c.front)[joinery.W]
	f, p := l.TailFeatures(c.side(c.tail, c.tailEnd, c.inTail))
	j.cut(c.tail, f, p)
	f, p = l.PinFeatures(c.side(c.pin, c.pinEnd, c.inPin))
	j.cut(c.pin, f, p)
	b.bowWaste(j, c)
	return j
}

func (c corner) side(p *Part, end joinery.End, inside joinery.Side) joinery.Corner {
	return joinery.Corner{Box: straight(p), End: end, At: p.Place.Local(c.front)[joinery.W], Inside: inside}
}

// bowWaste cuts off what the tail board of a bowed case has in front of its row
// of dovetails: there the end pin of the other board fills the corner.
func (b *builder) bowWaste(j *Joint, c corner) {
	row := c.tail.Place.Local(c.front)[joinery.W]
	if !c.bowed || row <= 0 {
		return
	}
	box := straight(c.tail)
	from, to := measure.Length(0), j.Dovetail.TailLength
	if c.tailEnd == joinery.Far {
		from, to = box.L-to, box.L
	}
	j.cut(c.tail, []joinery.Feature{{Kind: joinery.TailWaste, Axis: joinery.T, From: 0, To: box.T, Outline: rectangle(from, to, 0, row)}}, nil)
}
