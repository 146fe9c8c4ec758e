package view

import "math"

// grid divides a rectangle into square cells, so that only neighbours need be
// compared.
type grid struct {
	min    Point2
	size   float64
	nx, ny int
}

// mostCells bounds one side of a grid, whatever the shape of the picture.
const mostCells = 1024

// newGrid has about as many cells as there are things to enter.
func newGrid(b Box2, things int) grid {
	w, h := b.Max.X-b.Min.X, b.Max.Y-b.Min.Y
	size := math.Max(math.Sqrt(w*h/float64(max(things, 1))), math.Max(w, h)/mostCells)
	if !(size > coincident) {
		size = 1
	}
	return grid{b.Min, size, int(w/size) + 1, int(h/size) + 1}
}

func (g *grid) count() int { return g.nx * g.ny }

func (g *grid) column(x float64) int { return clamp((x-g.min.X)/g.size, g.nx) }
func (g *grid) row(y float64) int    { return clamp((y-g.min.Y)/g.size, g.ny) }

func clamp(k float64, n int) int {
	if !(k > 0) {
		return 0
	}
	return min(int(k), n-1)
}

func (g *grid) cell(p Point2) int { return g.row(p.Y)*g.nx + g.column(p.X) }

// along visits the cells within a margin of a line, each once.
func (g *grid) along(a, b Point2, margin float64, visit func(cell int)) {
	if a.X > b.X {
		a, b = b, a
	}
	x0, x1 := g.column(a.X-margin), g.column(b.X+margin)
	slope := 0.0
	if b.X > a.X {
		slope = (b.Y - a.Y) / (b.X - a.X)
	}
	for x := x0; x <= x1; x++ {
		lo, hi := a.Y, b.Y
		if x0 < x1 {
			left := math.Max(a.X, g.min.X+float64(x)*g.size-margin)
			right := math.Min(b.X, g.min.X+float64(x+1)*g.size+margin)
			lo, hi = a.Y+slope*(left-a.X), a.Y+slope*(right-a.X)
			if b.X-a.X < margin { // steeper than slope can tell
				lo, hi = a.Y, b.Y
			}
		}
		for y, last := g.row(math.Min(lo, hi)-margin), g.row(math.Max(lo, hi)+margin); y <= last; y++ {
			visit(y*g.nx + x)
		}
	}
}

// over visits the cells that a rectangle touches.
func (g *grid) over(b Box2, visit func(cell int)) {
	for y, y1 := g.row(b.Min.Y), g.row(b.Max.Y); y <= y1; y++ {
		for x, x1 := g.column(b.Min.X), g.column(b.Max.X); x <= x1; x++ {
			visit(y*g.nx + x)
		}
	}
}

// lists are one list of numbers for each cell, in one piece of memory.
type lists struct{ start, items []int32 }

func (l *lists) of(cell int) []int32 { return l.items[l.start[cell]:l.start[cell+1]] }

// collect builds lists from what fill enters. fill runs twice and must enter
// the same both times; entries of one cell keep their order.
func collect(cells int, fill func(enter func(cell int, i int32))) lists {
	l := lists{start: make([]int32, cells+1)}
	fill(func(cell int, _ int32) { l.start[cell+1]++ })
	for i := range cells {
		l.start[i+1] += l.start[i]
	}
	l.items = make([]int32, l.start[cells])
	next := append([]int32(nil), l.start[:cells]...)
	fill(func(cell int, i int32) {
		l.items[next[cell]] = i
		next[cell]++
	})
	return l
}
