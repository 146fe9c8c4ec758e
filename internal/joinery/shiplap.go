package joinery

import "casewright/internal/measure"

// BoardJoint says how boards lying side by side overlap.
type BoardJoint uint8

// The joints of a back of loose boards.
const (
	// Shiplap is two rabbets that lie over each other.
	Shiplap BoardJoint = iota
	// TongueAndGroove has a tongue on one edge and a groove in the next.
	TongueAndGroove
)

// BoardingSpec asks for boards side by side that cover a width and stay free
// to move. Cover, Length and Thickness are needed.
type BoardingSpec struct {
	Joint     BoardJoint
	Cover     measure.Length // from the first board's outer edge to the last one's, gaps at the ends included
	Length    measure.Length // of the boards
	Thickness measure.Length
	Boards    int            // 0 = the fewest that keep to Widest
	Widest    measure.Length // widest board, tongue included; 0 = 4 in
	Lap       measure.Length // width of rabbet or tongue; 0 = 3/8 in
	Gap       measure.Length // between two boards, now
	EndGap    measure.Length // outside the first and the last board, now
	Shrinkage measure.Length // of one board across the grain, from now to the driest
	Growth    measure.Length // of one board across the grain, from now to the dampest
	Step      measure.Length // seen widths are whole multiples; 0 = 1/64 in
}

// LaidBoard is one board of the boarding.
//
// Its frame has L along the board, W across the row in the order of the boards
// and the seen face at T = 0. X is where its W = 0 lies, from where the cover
// starts. Seen is the width that shows; Box.W has the tongue on top.
type LaidBoard struct {
	Box      Box
	X        measure.Length
	Seen     measure.Length
	Features []Feature
}

// BoardingLayout is a row of boards. Seen widths, gaps and end gaps add up to
// the cover exactly; spare steps go to the boards in the middle.
type BoardingLayout struct {
	Boards    []LaidBoard
	Lap, Gap  measure.Length
	Overlap   measure.Length // of two neighbours now
	DryLap    measure.Length // what is left of it in the driest season
	Thickness measure.Length
}

const (
	usualWidest = 4 * measure.Inch     // common practice, no source
	usualLap    = 3 * measure.Inch / 8 // common practice, no source
	leastLap    = measure.Inch / 16    // common practice, no source
	mostBoards  = 1000                 // not a figure of the trade; keeps nonsense small
)

// LayBoarding shares a width out among boards that overlap.
func LayBoarding(spec BoardingSpec) (BoardingLayout, []Problem) {
	s := spec.withDefaults()
	if p := s.nonsense(); len(p) > 0 {
		return BoardingLayout{}, p
	}
	if s.Boards == 0 {
		s.Boards = s.fewest()
	}
	seen, ok := s.share()
	if !ok {
		return BoardingLayout{}, []Problem{stop("boards.narrow", "there is no room for that many boards",
			"ask for fewer boards or smaller gaps", length("width to cover", s.Cover, s.gaps(s.Boards), geometry))}
	}
	l := BoardingLayout{Lap: s.Lap, Gap: s.Gap, Overlap: s.Lap - s.Gap, Thickness: s.Thickness}
	l.DryLap = l.Overlap - s.Shrinkage
	x := s.EndGap
	for i, w := range seen {
		b := LaidBoard{X: x, Seen: w, Box: Box{s.Length, w, s.Thickness}}
		if i < len(seen)-1 {
			b.Box.W += s.Lap
		}
		b.Features = s.cut(b.Box, i > 0, i < len(seen)-1)
		l.Boards = append(l.Boards, b)
		x += w + s.Gap
	}
	return l, s.judge(&l)
}

func (s BoardingSpec) withDefaults() BoardingSpec {
	if s.Widest == 0 {
		s.Widest = usualWidest
	}
	if s.Lap == 0 {
		s.Lap = usualLap
	}
	if s.Step == 0 {
		s.Step = measure.SixtyFourth
	}
	return s
}

func (s BoardingSpec) nonsense() []Problem {
	if b := (Box{s.Length, s.Cover, s.Thickness}); !b.solid() {
		return noPart("boards", b)
	}
	for _, v := range [...]measure.Length{s.Widest, s.Lap, s.Gap, s.EndGap, s.Shrinkage, s.Growth, s.Step} {
		if v < 0 || v > largest {
			return []Problem{stop("boards.size", "a size of the boarding is below zero", "give it a size above zero, or leave it open",
				length("size", v, 0, geometry))}
		}
	}
	if s.Boards < 0 || s.Boards > mostBoards {
		return []Problem{stop("boards.count", "that is no number of boards", "ask for one board or more, or leave it open",
			ratio("boards", float64(s.Boards), mostBoards, geometry))}
	}
	if s.Gap >= s.Lap {
		return []Problem{stop("boards.open", "the gap between the boards is as wide as their lap, so light shows through",
			"make the lap wider or the gap smaller", length("gap", s.Gap, s.Lap, geometry))}
	}
	if s.Widest <= s.Lap {
		return []Problem{stop("boards.widest", "the widest board allowed is no wider than its lap",
			"allow wider boards or make the lap smaller", length("widest board", s.Widest, s.Lap, geometry))}
	}
	return nil
}

// gaps is the room n boards leave open.
func (s BoardingSpec) gaps(n int) measure.Length {
	return measure.Length(n-1)*s.Gap + 2*s.EndGap
}

// fewest is the least number of boards that keep to the widest allowed.
func (s BoardingSpec) fewest() int {
	for n := 1; n < mostBoards; n++ {
		seen, ok := s.withCount(n).share()
		if !ok {
			return max(n-1, 1)
		}
		widest := seen[n/2]
		if n > 1 {
			widest += s.Lap
		}
		if widest <= s.Widest {
			return n
		}
	}
	return mostBoards
}

func (s BoardingSpec) withCount(n int) BoardingSpec {
	s.Boards = n
	return s
}

// share divides what the gaps leave into seen widths that differ by no more
// than a step, wider ones in the middle, what is less than a step in the
// middle board.
func (s BoardingSpec) share() ([]measure.Length, bool) {
	n := measure.Length(s.Boards)
	rest := s.Cover - s.gaps(s.Boards)
	if rest < n {
		return nil, false
	}
	step := s.Step
	if rest/n < step {
		step = 1
	}
	each := snapDown(rest/n, step)
	left := rest - n*each
	spare, crumb := int(left/step), left%step
	out := make([]measure.Length, s.Boards)
	for i := range out {
		out[i] = each
	}
	out[s.Boards/2] += crumb
	for i := range spare {
		out[(s.Boards-spare)/2+i] += step
	}
	return out, true
}

// cut makes the edges of one board; the outermost edges stay plain. The tongue
// lies behind the next board: it is left by a rabbet on the seen face, and the
// next board is rabbeted behind to lie over it.
func (s BoardingSpec) cut(b Box, lapped, tongued bool) []Feature {
	var out []Feature
	add := func(f []Feature, _ []Problem) { out = append(out, f...) }
	third := s.Thickness / 3
	if s.Joint == TongueAndGroove {
		if lapped {
			add(GrooveSpec{FrontEdge, L, third, s.Thickness - 2*third, s.Lap, Stops{}}.Features(b))
		}
		if tongued {
			add(RabbetSpec{LowSide, BackEdge, s.Lap, third, Stops{}}.Features(b))
			add(RabbetSpec{HighSide, BackEdge, s.Lap, third, Stops{}}.Features(b))
		}
		return out
	}
	half := s.Thickness / 2
	if lapped {
		add(RabbetSpec{HighSide, FrontEdge, s.Lap, s.Thickness - half, Stops{}}.Features(b))
	}
	if tongued {
		add(RabbetSpec{LowSide, BackEdge, s.Lap, half, Stops{}}.Features(b))
	}
	return out
}

func (s BoardingSpec) judge(l *BoardingLayout) []Problem {
	var out []Problem
	var widest measure.Length
	narrow := l.Boards[0].Seen
	for _, b := range l.Boards {
		widest, narrow = max(widest, b.Box.W), min(narrow, b.Seen)
	}
	if len(l.Boards) > 1 && narrow <= s.Lap {
		out = append(out, stop("boards.narrow", "the boards are no wider than their laps", "ask for fewer boards",
			length("narrowest board seen", narrow, s.Lap, geometry)))
	}
	if widest > s.Widest {
		out = append(out, note("boards.wide", "a board is wider than the widest wished for",
			"ask for more boards", length("widest board", widest, s.Widest, practice)))
	}
	if len(l.Boards) > 1 && l.DryLap < leastLap {
		out = append(out, warn("boards.dry", "in the driest season the boards hardly overlap",
			"make the lap wider, the gap smaller or the boards narrower", length("overlap left", l.DryLap, leastLap, practice)))
	}
	if len(l.Boards) > 1 && s.Growth > s.Gap {
		out = append(out, warn("boards.damp", "in the dampest season the boards close their gaps and push",
			"make the gaps wider or the boards narrower", length("growth of a board", s.Growth, s.Gap, geometry)))
	}
	return out
}
