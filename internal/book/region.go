package book

import (
	"math"
	"slices"

	"casewright/internal/sheet"
)

// region is a flat area: a stack of trapezoids between level lines. It is made
// for one task, a rectangle less any number of outlines, which may overlap each
// other and reach beyond the rectangle.
type region struct{ traps []trapezoid }

// trapezoid lies between y0 and y1; its sides run from l0 to l1 and r0 to r1.
type trapezoid struct{ y0, y1, l0, r0, l1, r1 float64 }

// same is the distance, in mm of the model, below which two places are one. It
// is far below any joint and far above the noise of float64.
const same = 1e-4

// border is one side of a gap within a level stretch.
type border struct{ at0, mid, at1 float64 }

type gapIn struct{ l, r border }

// cutOut is the box less the outlines. An outline's inside follows the
// even-odd rule.
func cutOut(box sheet.Box, outlines [][]sheet.Point) region {
	var near [][]sheet.Point
	for _, o := range outlines {
		if len(o) > 2 && sheet.BoundsOf(o...).Overlaps(box) {
			near = append(near, o)
		}
	}
	var r region
	ys := levels(box, near)
	for i := 0; i+1 < len(ys); i++ {
		y0, y1 := ys[i], ys[i+1]
		r.traps = append(r.traps, between(box, near, y0, y1)...)
	}
	return r
}

// levels are all heights at which the picture's make-up can change.
func levels(box sheet.Box, outlines [][]sheet.Point) []float64 {
	ys := []float64{box.Y, box.Bottom()}
	add := func(y float64) {
		if y > box.Y && y < box.Bottom() {
			ys = append(ys, y)
		}
	}
	var slopes [][2]sheet.Point
	for _, o := range outlines {
		for i, p := range o {
			q := o[(i+1)%len(o)]
			add(p.Y)
			if p.X != q.X && p.Y != q.Y {
				slopes = append(slopes, [2]sheet.Point{p, q})
				for _, x := range [2]float64{box.X, box.Right()} {
					if t := (x - p.X) / (q.X - p.X); t > 0 && t < 1 {
						add(p.Y + t*(q.Y-p.Y))
					}
				}
			}
		}
	}
	crossings(outlines, slopes, add)
	slices.Sort(ys)
	return slices.CompactFunc(ys, func(a, b float64) bool { return math.Abs(b-a) < 2e-6 })
}

// crossings adds the heights where a sloped edge meets an edge of another
// outline.
func crossings(outlines [][]sheet.Point, slopes [][2]sheet.Point, add func(float64)) {
	for _, s := range slopes {
		for _, o := range outlines {
			for i, p := range o {
				if y, ok := meetAt(s[0], s[1], p, o[(i+1)%len(o)]); ok {
					add(y)
				}
			}
		}
	}
}

// meetAt is the height at which two edges cross inside both.
func meetAt(a, b, c, d sheet.Point) (y float64, ok bool) {
	if math.Max(a.X, b.X) < math.Min(c.X, d.X) || math.Max(c.X, d.X) < math.Min(a.X, b.X) ||
		math.Max(a.Y, b.Y) < math.Min(c.Y, d.Y) || math.Max(c.Y, d.Y) < math.Min(a.Y, b.Y) {
		return 0, false
	}
	ux, uy, vx, vy := b.X-a.X, b.Y-a.Y, d.X-c.X, d.Y-c.Y
	det := ux*vy - uy*vx
	if math.Abs(det) < 1e-12 {
		return 0, false
	}
	t := ((c.X-a.X)*vy - (c.Y-a.Y)*vx) / det
	s := ((c.X-a.X)*uy - (c.Y-a.Y)*ux) / det
	return a.Y + t*uy, t > 1e-9 && t < 1-1e-9 && s > -1e-9 && s < 1+1e-9
}

// between is what is left of the box in one level stretch.
func between(box sheet.Box, outlines [][]sheet.Point, y0, y1 float64) []trapezoid {
	gaps := gapsAt(outlines, y0, y1)
	left := border{box.X, box.X, box.X}
	var out []trapezoid
	keep := func(l, r border) {
		if r.mid-l.mid > same {
			out = append(out, trapezoid{y0, y1, clamp(l.at0, box), clamp(r.at0, box), clamp(l.at1, box), clamp(r.at1, box)})
		}
	}
	for _, g := range gaps {
		if g.r.mid <= left.mid {
			continue
		}
		if g.l.mid >= box.Right() {
			break
		}
		keep(left, g.l)
		left = g.r
	}
	keep(left, border{box.Right(), box.Right(), box.Right()})
	return out
}

func clamp(x float64, b sheet.Box) float64 { return math.Min(math.Max(x, b.X), b.Right()) }

// gapsAt is what the outlines take away in a level stretch, merged, from left
// to right.
func gapsAt(outlines [][]sheet.Point, y0, y1 float64) []gapIn {
	mid := (y0 + y1) / 2
	var gaps []gapIn
	for _, o := range outlines {
		var sides []border
		for i, p := range o {
			q := o[(i+1)%len(o)]
			if (p.Y <= mid) == (q.Y <= mid) {
				continue
			}
			sides = append(sides, border{xAt(p, q, y0), xAt(p, q, mid), xAt(p, q, y1)})
		}
		slices.SortFunc(sides, byMid)
		for i := 0; i+1 < len(sides); i += 2 {
			gaps = append(gaps, gapIn{sides[i], sides[i+1]})
		}
	}
	slices.SortStableFunc(gaps, func(a, b gapIn) int { return byMid(a.l, b.l) })
	merged := gaps[:0]
	for _, g := range gaps {
		if n := len(merged); n > 0 && g.l.mid <= merged[n-1].r.mid+same {
			if g.r.mid > merged[n-1].r.mid {
				merged[n-1].r = g.r
			}
			continue
		}
		merged = append(merged, g)
	}
	return merged
}

func byMid(a, b border) int {
	switch {
	case a.mid < b.mid:
		return -1
	case a.mid > b.mid:
		return 1
	}
	return 0
}

// xAt is where the edge stands at a height; at its own ends exactly.
func xAt(p, q sheet.Point, y float64) float64 {
	switch {
	case y == p.Y:
		return p.X
	case y == q.Y:
		return q.X
	}
	return p.X + (y-p.Y)/(q.Y-p.Y)*(q.X-p.X)
}

// holds reports whether the place is in the region.
func (r region) holds(p sheet.Point) bool {
	for _, t := range r.traps {
		if p.Y < t.y0 || p.Y > t.y1 {
			continue
		}
		k := (p.Y - t.y0) / (t.y1 - t.y0)
		if p.X >= t.l0+k*(t.l1-t.l0) && p.X <= t.r0+k*(t.r1-t.r0) {
			return true
		}
	}
	return false
}

// like reports whether two regions are the same.
func (r region) like(o region) bool {
	return slices.EqualFunc(r.traps, o.traps, func(a, b trapezoid) bool {
		return near(a.y0, b.y0) && near(a.y1, b.y1) && near(a.l0, b.l0) && near(a.r0, b.r0) && near(a.l1, b.l1) && near(a.r1, b.r1)
	})
}

func near(a, b float64) bool { return math.Abs(a-b) < 10*same }

// rings are the region's outlines, closed, holes among them.
func (r region) rings() [][]sheet.Point {
	var k linker
	for _, t := range r.traps {
		k.add(sheet.Pt(t.l0, t.y0), sheet.Pt(t.l1, t.y1))
		k.add(sheet.Pt(t.r0, t.y0), sheet.Pt(t.r1, t.y1))
	}
	for i := 0; i < len(r.traps); {
		i = r.levelEdges(i, &k)
	}
	return k.rings()
}

// levelEdges adds the level edges at the lower side of the stretch that starts
// at trapezoid i, and those above the last stretch; it returns where the next
// stretch starts.
func (r region) levelEdges(i int, k *linker) int {
	y0 := r.traps[i].y0
	end := i
	for end < len(r.traps) && r.traps[end].y0 == y0 {
		end++
	}
	var below, above, top [][2]float64
	for j := i - 1; j >= 0 && r.traps[j].y1 == y0; j-- {
		below = append(below, [2]float64{r.traps[j].l1, r.traps[j].r1})
	}
	for _, t := range r.traps[i:end] {
		above = append(above, [2]float64{t.l0, t.r0})
		top = append(top, [2]float64{t.l1, t.r1})
	}
	k.odd(y0, below, above)
	if end == len(r.traps) || r.traps[end].y0 != r.traps[i].y1 {
		k.odd(r.traps[i].y1, top, nil)
	}
	return end
}

// linker joins edges to closed rings.
type linker struct {
	edges [][2]sheet.Point
}

func (k *linker) add(a, b sheet.Point) {
	if spotOf(a) != spotOf(b) {
		k.edges = append(k.edges, [2]sheet.Point{a, b})
	}
}

// odd adds the level edges between what lies in only one of two rows.
func (k *linker) odd(y float64, a, b [][2]float64) {
	var xs []float64
	for _, s := range append(slices.Clone(a), b...) {
		xs = append(xs, s[0], s[1])
	}
	slices.Sort(xs)
	in := func(rows [][2]float64, x float64) bool {
		return slices.ContainsFunc(rows, func(s [2]float64) bool { return x > s[0] && x < s[1] })
	}
	for i := 0; i+1 < len(xs); i++ {
		if mid := (xs[i] + xs[i+1]) / 2; xs[i] < xs[i+1] && in(a, mid) != in(b, mid) {
			k.add(sheet.Pt(xs[i], y), sheet.Pt(xs[i+1], y))
		}
	}
}

// spot is a place rounded to what float64 keeps over any piece: ends of edges
// that meet were reckoned the same way and differ by less.
type spot [2]int64

func spotOf(p sheet.Point) spot {
	const grain = 1e-6
	return spot{int64(math.Round(p.X / grain)), int64(math.Round(p.Y / grain))}
}

// rings walks the edges in the order they came.
func (k *linker) rings() [][]sheet.Point {
	at := map[spot][]int{}
	for i, e := range k.edges {
		a, b := spotOf(e[0]), spotOf(e[1])
		at[a] = append(at[a], i)
		at[b] = append(at[b], i)
	}
	used := make([]bool, len(k.edges))
	var out [][]sheet.Point
	for i := range k.edges {
		if used[i] {
			continue
		}
		used[i] = true
		ring := []sheet.Point{k.edges[i][0], k.edges[i][1]}
		for {
			next, p := k.next(at, used, ring[len(ring)-2], ring[len(ring)-1])
			if next < 0 {
				break
			}
			used[next] = true
			ring = append(ring, p)
		}
		if ring = straighten(ring); len(ring) > 2 {
			out = append(out, ring)
		}
	}
	return out
}

// next is the edge that goes on from p for one that came from a place before.
// Where the region touches itself in a corner it is the one with the sharpest
// turn, so that rings touch there and never cross.
func (k *linker) next(at map[spot][]int, used []bool, from, p sheet.Point) (int, sheet.Point) {
	here := spotOf(p)
	best, sharpest, to := -1, math.Inf(1), sheet.Point{}
	back := math.Atan2(from.Y-p.Y, from.X-p.X)
	for _, i := range at[here] {
		if used[i] {
			continue
		}
		far := k.edges[i][0]
		if spotOf(far) == here {
			far = k.edges[i][1]
		}
		turn := math.Mod(math.Atan2(far.Y-p.Y, far.X-p.X)-back+4*math.Pi, 2*math.Pi)
		if turn < sharpest {
			best, sharpest, to = i, turn, far
		}
	}
	return best, to
}

// straighten drops the closing repeat and points on a straight line.
func straighten(ring []sheet.Point) []sheet.Point {
	if len(ring) > 1 && spotOf(ring[0]) == spotOf(ring[len(ring)-1]) {
		ring = ring[:len(ring)-1]
	}
	n := len(ring)
	var out []sheet.Point
	for i, p := range ring {
		a, b := ring[(i+n-1)%n], ring[(i+1)%n]
		ux, uy, vx, vy := p.X-a.X, p.Y-a.Y, b.X-p.X, b.Y-p.Y
		if math.Abs(ux*vy-uy*vx) > 1e-9*(math.Hypot(ux, uy)*math.Hypot(vx, vy)+1e-12) || ux*vx+uy*vy < 0 {
			out = append(out, p)
		}
	}
	return out
}
