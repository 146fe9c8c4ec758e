package view

import "math"

// coincident is the distance in the picture, in mm, below which two points are
// one and a point lies on a line. Solids come with corners rounded to the
// nanometre, and two parts that follow one curve may be sampled a few hundred
// nanometres apart; the finest gap a joiner leaves is a hundred times larger.
const coincident = 5e-4

// welded is the distance in space, in mm, below which corners of one body are
// one: those were made together, and only what rounding did has to be bridged.
const welded = 1e-5

// welds makes points that lie within a reach of each other one. It keeps the
// place of the first.
type welds struct {
	reach float64
	cells map[[3]int32][]int32
	at    []Vec3
}

func newWelds(reach float64, expected int) *welds {
	return &welds{reach: reach, cells: make(map[[3]int32][]int32, expected)}
}

// cellOver is how many times wider than its reach a cell is: so wide that few
// points have to look into a neighbour.
const cellOver = 256

func (w *welds) id(p Vec3) int32 {
	size := w.reach * cellOver
	lo, hi := cellOf(p, -w.reach, size), cellOf(p, w.reach, size)
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				for _, i := range w.cells[[3]int32{x, y, z}] {
					if near(w.at[i], p, w.reach) {
						return i
					}
				}
			}
		}
	}
	i := int32(len(w.at))
	w.at = append(w.at, p)
	home := cellOf(p, 0, size)
	w.cells[home] = append(w.cells[home], i)
	return i
}

// cellOf wraps round for places tens of kilometres away; far cells then share
// a list, which costs time and nothing else.
func cellOf(p Vec3, shift, size float64) [3]int32 {
	f := func(x float64) int32 { return int32(int64(math.Floor((x + shift) / size))) }
	return [3]int32{f(p.X), f(p.Y), f(p.Z)}
}

func near(a, b Vec3, d float64) bool {
	return math.Abs(a.X-b.X) <= d && math.Abs(a.Y-b.Y) <= d && math.Abs(a.Z-b.Z) <= d
}
