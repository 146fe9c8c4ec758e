package view

import "slices"

// touching is the distance in space, in mm, below which surfaces meet: a
// micrometre, a hundredth of the finest fit a joiner cuts. Common practice for
// such a fit, no source.
const touching = 1e-3

// tied is the difference of depth, in mm, below which noise decides which of two
// faces is nearer. It must be far below what two faces that meet at an edge
// differ by a little beside it.
const tied = 1e-7

// nothing is the face seen where nothing is seen.
const nothing = int32(-1)

// caster finds what is seen at a place of the picture.
type caster struct {
	faces []facing
	cam   *Camera
	grid  grid
	by    lists // faces by cell, nearest first
	order []int32
}

func newCaster(s *scene) *caster {
	c := &caster{faces: s.faces, cam: &s.cam}
	bounds := nowhere()
	for i := range c.faces {
		bounds.take(c.faces[i].bounds.Min)
		bounds.take(c.faces[i].bounds.Max)
		c.order = append(c.order, int32(i))
	}
	if bounds.empty() {
		return c
	}
	slices.SortStableFunc(c.order, func(a, b int32) int {
		switch x, y := c.faces[a].nearest, c.faces[b].nearest; {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return int(a - b)
	})
	c.grid = newGrid(bounds, 4*len(c.faces))
	c.by = collect(c.grid.count(), func(enter func(cell int, i int32)) {
		for _, i := range c.order {
			c.grid.over(c.faces[i].bounds, func(cell int) { enter(cell, i) })
		}
	})
	return c
}

// at is the face seen at a place, and its t; nothing where there is none. Two
// faces can only tie where bodies run into each other; the lower one counts.
func (c *caster) at(p Point2) (best int32, t float64) {
	best = nothing
	if len(c.faces) == 0 {
		return best, 0
	}
	for _, i := range c.by.of(c.grid.cell(p)) {
		f := &c.faces[i]
		if best != nothing && f.nearest > t+tied {
			break
		}
		if !f.covers(p) {
			continue
		}
		d := f.plane.t(p)
		if best == nothing || d < t-tied || d <= t+tied && i < best {
			best, t = i, d
		}
	}
	return best, t
}

func (f *facing) covers(p Point2) bool {
	if !f.bounds.holds(p) {
		return false
	}
	in := false
	for _, r := range f.rings {
		in = odd(in, r, p)
	}
	return in
}
