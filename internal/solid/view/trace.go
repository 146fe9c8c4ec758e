package view

import (
	"cmp"
	"math"
	"slices"
)

// side is a piece with one region on its left, walked from a to b.
type side struct {
	region int32
	a, b   int32
	used   bool
}

// patch is one connected area of a region.
type patch struct {
	region int32
	outer  []Point2
	holes  [][]Point2
}

// tracer walks the borders of regions of an arrangement. Where a region
// touches itself at a point it turns left, so that every ring is simple.
type tracer struct {
	reach float64
	at    []Point2
	sides []side
}

// trace finds the areas of every region from what lies left and right of each
// piece; nothing is no region. Sorted by region and place.
func trace(a *arrangement, left, right []int32) []patch {
	t := &tracer{reach: a.reach, at: a.at}
	for i, p := range a.pieces {
		if left[i] == right[i] {
			continue
		}
		if left[i] != nothing {
			t.sides = append(t.sides, side{region: left[i], a: p.u, b: p.v})
		}
		if right[i] != nothing {
			t.sides = append(t.sides, side{region: right[i], a: p.v, b: p.u})
		}
	}
	slices.SortFunc(t.sides, func(x, y side) int {
		return cmp.Or(cmp.Compare(x.region, y.region), cmp.Compare(x.a, y.a), cmp.Compare(x.b, y.b))
	})
	var out []patch
	for i := 0; i < len(t.sides); {
		n := i
		for n < len(t.sides) && t.sides[n].region == t.sides[i].region {
			n++
		}
		out = append(out, t.nest(t.sides[i].region, t.rings(t.sides[i:n]))...)
		i = n
	}
	return out
}

func (t *tracer) rings(sides []side) [][]Point2 {
	var out, open [][]Point2
	for i := range sides {
		if sides[i].used {
			continue
		}
		if r, closed := t.walk(sides, i); closed {
			out = append(out, r)
		} else {
			open = append(open, r)
		}
	}
	var fine [][]Point2
	for _, r := range append(out, mend(open)...) {
		if r = t.plain(r); len(r) >= 3 {
			fine = append(fine, r)
		}
	}
	return fine
}

// walk goes on from one side until it comes to one it knows or to none: the
// places passed. It is closed if it came back to where it began.
func (t *tracer) walk(sides []side, i int) (ring []Point2, closed bool) {
	start := sides[i].a
	for {
		sides[i].used = true
		ring = append(ring, t.at[sides[i].a])
		n := t.next(sides, i)
		if n < 0 || sides[n].used {
			end := sides[i].b
			if end == start {
				return ring, true
			}
			return append(ring, t.at[end]), false
		}
		i = n
	}
}

// mend closes borders that a mistaken look at a speck left open: each end goes
// on at the nearest beginning.
func mend(open [][]Point2) (out [][]Point2) {
	used := make([]bool, len(open))
	for i := range open {
		if used[i] {
			continue
		}
		used[i] = true
		ring := open[i]
		for {
			end, best := ring[len(ring)-1], i
			for n := range open {
				if (!used[n] || n == i) && end.to(open[n][0]) < end.to(open[best][0]) {
					best = n
				}
			}
			if best == i {
				break
			}
			used[best] = true
			ring = append(ring, open[best]...)
		}
		out = append(out, ring)
	}
	return out
}

// next is the side that goes on with the least of the region between: the
// first one met when turning clockwise from the way one came.
func (t *tracer) next(sides []side, i int) int {
	here := sides[i].b
	lo, _ := slices.BinarySearchFunc(sides, here, func(s side, a int32) int { return cmp.Compare(s.a, a) })
	best, least := -1, math.Inf(1)
	back := heading(t.at[here], t.at[sides[i].a])
	for n := lo; n < len(sides) && sides[n].a == here; n++ {
		if turn := clockwise(back, heading(t.at[here], t.at[sides[n].b])); turn < least {
			best, least = n, turn
		}
	}
	return best
}

// plain drops corners on straight lines and rounds the others. It begins at
// the corner farthest from some other, which cannot lie on a straight line.
func (t *tracer) plain(ring []Point2) (out []Point2) {
	first := 0
	for i, p := range ring {
		if p.to(ring[0]) > ring[first].to(ring[0]) {
			first = i
		}
	}
	for i := range ring {
		p, next := ring[(first+i)%len(ring)], ring[(first+i+1)%len(ring)]
		if i == 0 || !straight(out[len(out)-1], p, next, t.reach) {
			out = append(out, p)
		}
	}
	for i := range out {
		out[i] = tidy(out[i])
	}
	return out
}

// nest gives holes to the outlines that hold them. What is too small to be
// anything but left over from welding is dropped.
func (t *tracer) nest(region int32, rings [][]Point2) []patch {
	speck := 16 * t.reach * t.reach
	var out []patch
	var holes [][]Point2
	for _, r := range rings {
		switch a := area(r); {
		case a > speck:
			out = append(out, patch{region: region, outer: r})
		case a < -speck:
			holes = append(holes, r)
		}
	}
	for _, h := range holes {
		best := -1
		for i := range out {
			if holdsRing(out[i].outer, h) && (best < 0 || area(out[i].outer) < area(out[best].outer)) {
				best = i
			}
		}
		if best >= 0 {
			out[best].holes = append(out[best].holes, h)
		}
	}
	return out
}

// holdsRing asks a place just inside the hole's own side, since the two may
// share corners.
func holdsRing(outer, hole []Point2) bool {
	a, b := hole[0], hole[1]
	long := a.to(b)
	mid := Point2{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	return odd(false, outer, mid.along(Point2{a.Y - b.Y, b.X - a.X}, math.Min(4*coincident, long/4)/long))
}
