package csg

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// FaultKind says what is wrong with a body.
type FaultKind uint8

// What can be wrong with a body. All but the last two are about one prism.
const (
	BadAxis    FaultKind = iota + 1 // not X, Y or Z
	NoDepth                         // To is not greater than From
	NoOutline                       // a ring with fewer than three different corners, or without area
	Crosses                         // a ring that crosses or doubles back on itself or another
	HoleAstray                      // a hole outside the outline
	TooFar                          // a coordinate beyond Largest
	Nothing                         // the cuts leave nothing
	FallsApart                      // the cuts leave several pieces
)

var faultWords = map[FaultKind]string{
	BadAxis: "has an axis that is none", NoDepth: "has no depth", NoOutline: "has an outline without area",
	Crosses: "has an outline that crosses itself", HoleAstray: "has a hole outside its outline",
	TooFar: "reaches too far", Nothing: "nothing is left of the body", FallsApart: "the body falls into several pieces",
}

// Base stands for the base prism where cuts are counted from 0.
const Base = -1

// Fault is one thing wrong with a body.
type Fault struct {
	Kind  FaultKind
	Prism int // which cut, or Base; Base too for faults of the whole body
	Tag   Tag // that prism's tag
}

func (f Fault) String() string {
	switch {
	case f.Kind >= Nothing:
		return faultWords[f.Kind]
	case f.Prism == Base:
		return "the base prism " + faultWords[f.Kind]
	}
	return fmt.Sprintf("cut %d %s", f.Prism, faultWords[f.Kind])
}

// Faults is everything wrong with a body, at least one; the error that
// this package returns. Its words are for programmers: the caller knows what the prism is
// called at the bench.
type Faults []Fault

func (f Faults) Error() string {
	words := make([]string, len(f))
	for i := range f {
		words[i] = f[i].String()
	}
	return strings.Join(words, "; ")
}

// check lists what is wrong with a body's prisms, each prism at most once.
func (b Body) check() (out Faults) {
	if k := b.Base.fault(); k != 0 {
		out = append(out, Fault{k, Base, b.Base.Tag})
	}
	for i := range b.Cuts {
		if k := b.Cuts[i].fault(); k != 0 {
			out = append(out, Fault{k, i, b.Cuts[i].Tag})
		}
	}
	return out
}

// fault is the first thing wrong with a prism, or 0.
func (p *Prism) fault() FaultKind {
	switch {
	case p.Axis > Z:
		return BadAxis
	case p.From < -Largest || p.To > Largest:
		return TooFar
	case p.From >= p.To:
		return NoDepth
	}
	for _, r := range rings(*p) {
		for _, c := range r {
			if c.U < -Largest || c.U > Largest || c.V < -Largest || c.V > Largest {
				return TooFar
			}
		}
	}
	return outlineFault(rings(*p))
}

func outlineFault(rings [][]Point2) FaultKind {
	var p prism
	outer := 0 // how many walls the outline itself has
	for i, r := range rings {
		if len(r) == 0 {
			return NoOutline
		}
		before := len(p.walls)
		p.addRing(r, i == 0, 0)
		if ws := p.walls[before:]; len(ws) < 3 || doubleArea(ws).sign() == 0 {
			return NoOutline
		}
		if i == 0 {
			outer = len(p.walls)
		}
	}
	switch {
	case len(rings) == 1 && len(p.walls) == 4 && rectangle(p.walls):
	case crossed(slices.Clone(p.walls)):
		return Crosses
	case astray(p.walls[:outer], rings[1:]):
		return HoleAstray
	}
	return 0
}

// crossed tells whether two walls cross, or run along each other for a
// stretch. That they touch in a point does no harm. It sorts the walls.
func crossed(ws []wall) bool {
	slices.SortFunc(ws, func(a, b wall) int { return cmp.Compare(min(a.p[0], a.q[0]), min(b.p[0], b.q[0])) })
	for i, a := range ws {
		end := max(a.p[0], a.q[0])
		for _, b := range ws[i+1:] {
			if min(b.p[0], b.q[0]) > end {
				break
			}
			if max(a.p[1], a.q[1]) >= min(b.p[1], b.q[1]) && max(b.p[1], b.q[1]) >= min(a.p[1], a.q[1]) && a.clashes(b) {
				return true
			}
		}
	}
	return false
}

func (a wall) clashes(b wall) bool {
	b1, b2 := turn2(a.p, a.q, b.p), turn2(a.p, a.q, b.q)
	if b1 == 0 && b2 == 0 { // in one line: do they share more than a point?
		k := 0
		if a.p[0] == a.q[0] {
			k = 1
		}
		return min(max(a.p[k], a.q[k]), max(b.p[k], b.q[k])) > max(min(a.p[k], a.q[k]), min(b.p[k], b.q[k]))
	}
	return b1*b2 < 0 && turn2(b.p, b.q, a.p)*turn2(b.p, b.q, a.q) < 0
}

func turn2(a, b, c [2]int64) int {
	return mul(b[0]-a[0], c[1]-a[1]).cmp(mul(b[1]-a[1], c[0]-a[0]))
}

// astray tells whether a hole begins outside the outline. On it is not outside.
func astray(outline []wall, holes [][]Point2) bool {
	for _, r := range holes {
		at := [2]int64{int64(r[0].U), int64(r[0].V)}
		inside := false
		for _, w := range outline {
			side := turn2(w.p, w.q, at)
			if side == 0 && min(w.p[0], w.q[0]) <= at[0] && at[0] <= max(w.p[0], w.q[0]) &&
				min(w.p[1], w.q[1]) <= at[1] && at[1] <= max(w.p[1], w.q[1]) {
				inside = true
				break
			}
			if (w.p[1] > at[1]) != (w.q[1] > at[1]) && (side > 0) == (w.q[1] > w.p[1]) {
				inside = !inside
			}
		}
		if !inside {
			return true
		}
	}
	return false
}
