package model

import "math"

// welder gives corners within Weld of each other one number. Space is cut into
// cells somewhat larger than that, so a near corner is in the same cell or
// beside it.
type welder struct {
	corners []Vec
	cells   map[[3]int64][]int
}

// cell is a power of two, so that cutting is exact.
const cell = 1.0 / (1 << 18)

func (w *welder) corner(v Vec) int {
	var home [3]int64
	for k := range v {
		home[k] = int64(math.Floor(v[k] / cell))
	}
	if n, ok := w.near(home, v); ok {
		return n
	}
	w.corners = append(w.corners, v)
	n := len(w.corners) - 1
	w.cells[home] = append(w.cells[home], n)
	return n
}

func (w *welder) near(home [3]int64, v Vec) (int, bool) {
	for n := range int64(27) {
		side := [3]int64{home[0] + n/9 - 1, home[1] + n/3%3 - 1, home[2] + n%3 - 1}
		for _, c := range w.cells[side] {
			if w.corners[c].minus(v).length() <= Weld {
				return c, true
			}
		}
	}
	return 0, false
}

// face numbers the corners of a face.
func (w *welder) face(p *PlanarFace) (wovenFace, *Fault) {
	f := wovenFace{name: p.Name}
	for _, ring := range append([][]Vec{p.Outer}, p.Holes...) {
		numbers, fault := w.ring(ring)
		if fault != nil {
			return f, fault
		}
		f.rings = append(f.rings, numbers)
	}
	return f, nil
}

func (w *welder) ring(ring []Vec) ([]int, *Fault) {
	if len(ring) < 3 {
		return nil, &Fault{Kind: Degenerate, Detail: "fewer than three corners"}
	}
	numbers := make([]int, len(ring))
	for k, v := range ring {
		if !v.finite() {
			return nil, &Fault{Kind: NotFinite}
		}
		numbers[k] = w.corner(v)
	}
	for k, c := range numbers {
		if c == numbers[(k+1)%len(numbers)] {
			return nil, &Fault{Kind: Degenerate, At: ring[k], Detail: "edge without length"}
		}
	}
	return numbers, nil
}
