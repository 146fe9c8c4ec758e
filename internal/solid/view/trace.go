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
	at    []Point2
	sides []side
}

// trace finds the areas of every region from what lies left and right of each
// piece; nothing is no region. Sorted by region and place.
func trace(a *arrangement, left, right []int32) []patch {
	t := &tracer{at: a.at}
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
		out = append(out, nest(t.sides[i].region, t.rings(t.sides[i:n]))...)
		i = n
	}
	return out
}

func (t *tracer) rings(sides []side) [][]Point2 {
	var out [][]Point2
	for i := range sides {
		if sides[i].used {
			continue
		}
		if r := plain(t.walk(sides, i)); len(r) >= 3 {
			out = append(out, r)
		}
	}
	return out
}

// walk goes round from one side until it comes to one it knows. That is the
// first, unless welding of specks left a border open: it is then closed
// straight.
func (t *tracer) walk(sides []side, i int) (ring []Point2) {
	for i >= 0 && !sides[i].used {
		sides[i].used = true
		ring = append(ring, t.at[sides[i].a])
		i = t.next(sides, i)
	}
	return ring
}

// next is the side that goes on with the least of the region between: the
// first one met when turning clockwise from the way one came.
func (t *tracer) next(sides []side, i int) int {
	here := sides[i].b
	lo, _ := slices.BinarySearchFunc(sides, here, func(s side, a int32) int { return cmp.Compare(s.a, a) })
	best, least := -1, math.Inf(1)
	back := t.heading(here, sides[i].a)
	for n := lo; n < len(sides) && sides[n].a == here; n++ {
		turn := back - t.heading(here, sides[n].b)
		if turn <= 0 {
			turn += 2 * math.Pi
		}
		if turn < least {
			best, least = n, turn
		}
	}
	return best
}

func (t *tracer) heading(from, to int32) float64 {
	d := t.at[to].minus(t.at[from])
	return math.Atan2(d.Y, d.X)
}

// plain drops corners on straight lines and rounds the others.
func plain(ring []Point2) (out []Point2) {
	for i, p := range ring {
		a := ring[(i+len(ring)-1)%len(ring)]
		if n := len(out); n > 0 {
			a = out[n-1]
		}
		if !straight(a, p, ring[(i+1)%len(ring)]) {
			out = append(out, p)
		}
	}
	for i := range out {
		out[i] = tidy(out[i])
	}
	return out
}

// nest gives holes to the outlines that hold them. Specks are dropped.
func nest(region int32, rings [][]Point2) []patch {
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

// speck is an area too small to be anything but a leftover of welding, in mm².
const speck = beside * beside

// holdsRing asks a place just inside the hole's own side, since the two may
// share corners.
func holdsRing(outer, hole []Point2) bool {
	a, b := hole[0], hole[1]
	long := a.to(b)
	mid := Point2{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	return odd(false, outer, mid.along(Point2{a.Y - b.Y, b.X - a.X}, math.Min(beside, long/4)/long))
}
