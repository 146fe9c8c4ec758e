package csg

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// Bodies of blocks on a small grid, counted cell by cell: an independent
// answer for volume, skin, overlap and contact that is exact.

const cells = 7

type grid [cells][cells][cells]bool

func (g *grid) at(x, y, z int) bool {
	return x >= 0 && y >= 0 && z >= 0 && x < cells && y < cells && z < cells && g[x][y][z]
}

// set marks the cells of a block.
func (g *grid) set(p Prism, to bool) {
	q := ready(p)
	for x := max(0, q.box.lo[0]); x < min(cells, q.box.hi[0]); x++ {
		for y := max(0, q.box.lo[1]); y < min(cells, q.box.hi[1]); y++ {
			for z := max(0, q.box.lo[2]); z < min(cells, q.box.hi[2]); z++ {
				g[x][y][z] = to
			}
		}
	}
}

func voxels(b Body) *grid {
	g := &grid{}
	g.set(b.Base, true)
	for _, c := range b.Cuts {
		g.set(c, false)
	}
	return g
}

// pairs counts cells of g whose neighbour along one axis, either way, is in h.
func (g *grid) pairs(h func(x, y, z int) bool) (n int) {
	for x := range cells {
		for y := range cells {
			for z := range cells {
				if !g[x][y][z] {
					continue
				}
				for _, d := range [6][3]int{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}} {
					if h(x+d[0], y+d[1], z+d[2]) {
						n++
					}
				}
			}
		}
	}
	return n
}

func (g *grid) count() (n int) {
	for x := range cells {
		for y := range cells {
			for z := range cells {
				if g[x][y][z] {
					n++
				}
			}
		}
	}
	return n
}

func blocks(t *rapid.T) Body {
	one := func(tag Tag) Prism {
		var lo, hi [3]measure.Length
		for k := range lo {
			a := rapid.IntRange(0, cells-1).Draw(t, "lo")
			lo[k], hi[k] = measure.Length(a), measure.Length(a+rapid.IntRange(1, cells-a).Draw(t, "size"))
		}
		return Box(lo, hi, Axis(rapid.IntRange(0, 2).Draw(t, "axis")), tag)
	}
	b := Body{Base: one(0)}
	for i := range rapid.IntRange(0, 6).Draw(t, "cuts") {
		b.Cuts = append(b.Cuts, one(Tag(i+1)))
	}
	return b
}

// whole rounds a measure that must be a whole number of cells.
func whole(t *rapid.T, what string, x float64) int {
	n := math.Round(x)
	if math.Abs(x-n) > 1e-9 {
		t.Fatalf("%s: %v cells", what, x)
	}
	return int(n)
}

func TestBlocksAgainstVoxels(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := blocks(t)
		s, g := anyBuild(t, scaled(b, mm)), voxels(b)
		if got, want := whole(t, "volume", float64(s.Volume())), g.count(); got != want {
			t.Fatalf("volume %d, want %d\n%s", got, want, dump(b))
		}
		if got, want := whole(t, "skin", s.Area().SquareMillimetres()), g.pairs(func(x, y, z int) bool { return !g.at(x, y, z) }); got != want {
			t.Fatalf("skin %d, want %d\n%s", got, want, dump(b))
		}
	})
}

func TestFitAgainstVoxels(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		a, b := blocks(t), blocks(t)
		fit, err := FitOf(scaled(a, mm), Placed{Body: scaled(b, mm)})
		if err != nil {
			t.Fatal(err)
		}
		g, h := voxels(a), voxels(b)
		both := 0
		for x := range cells {
			for y := range cells {
				for z := range cells {
					if g[x][y][z] && h[x][y][z] {
						both++
					}
				}
			}
		}
		if got := whole(t, "overlap", float64(fit.Overlap)); got != both {
			t.Fatalf("overlap %d, want %d\n%s%s", got, both, dump(a), dump(b))
		}
		// They touch between a cell of a alone and a neighbour of b alone.
		alone := *g
		for x := range cells {
			for y := range cells {
				for z := range cells {
					alone[x][y][z] = g[x][y][z] && !h[x][y][z]
				}
			}
		}
		want := alone.pairs(func(x, y, z int) bool { return h.at(x, y, z) && !g.at(x, y, z) })
		if got := whole(t, "contact", float64(fit.Contact)); got != want {
			t.Fatalf("contact %d, want %d\n%s%s", got, want, dump(a), dump(b))
		}
	})
}
