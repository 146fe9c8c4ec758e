package book

import (
	"math"

	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// balloonFor asks for a mark on a body, or on any body of an assembly.
type balloonFor struct {
	mark   string
	covers func(b *body) bool
	room   sheet.Box // where to look, in the picture
	grain  *piece.Part
}

// partBalloon marks one part.
func partBalloon(s *scene, b *body) balloonFor {
	return balloonFor{mark: b.part.Mark, room: s.boxOf(b), grain: b.part, covers: func(o *body) bool { return o == b }}
}

// assemblyBalloon marks an assembly by its letter.
func assemblyBalloon(s *scene, a *piece.Assembly) balloonFor {
	var room sheet.Box
	for _, b := range s.bodies {
		if b.part.Assembly == a {
			room = room.Union(s.boxOf(b))
		}
	}
	return balloonFor{mark: a.Letter, room: room, covers: func(o *body) bool { return o != nil && o.part.Assembly == a }}
}

// target is where a body shows most, and how much is free around there, in mm
// of the model. ok is false for what is hardly seen.
type target struct {
	at   sheet.Point
	free float64
}

// gridded is how many places across are tried.
const gridded = 15

// best looks for the place with the most of its own around it.
func (w balloonFor) best(s *scene) (target, bool) {
	at := func(i, j int) sheet.Point {
		return sheet.Pt(w.room.X+w.room.W*(float64(i)+0.5)/gridded, w.room.Y+w.room.H*(float64(j)+0.5)/gridded)
	}
	var seen [gridded][gridded]bool
	for i := range gridded {
		for j := range gridded {
			seen[i][j] = w.covers(s.at(at(i, j)))
		}
	}
	var out target
	for i := range gridded {
		for j := range gridded {
			if free := w.clear(&seen, i, j); free > out.free+1e-9 {
				out = target{at(i, j), free}
			}
		}
	}
	return out, out.free > 0
}

// clear is the distance from a place to the nearest that is not its own.
func (w balloonFor) clear(seen *[gridded][gridded]bool, i, j int) float64 {
	if !seen[i][j] {
		return 0
	}
	dx, dy := w.room.W/gridded, w.room.H/gridded
	least := math.Inf(1)
	for a := -1; a <= gridded; a++ {
		for b := -1; b <= gridded; b++ {
			if a >= 0 && b >= 0 && a < gridded && b < gridded && seen[a][b] {
				continue
			}
			x, y := math.Max(0, math.Abs(float64(a-i))-0.5)*dx, math.Max(0, math.Abs(float64(b-j))-0.5)*dy
			least = math.Min(least, math.Hypot(x, y))
		}
	}
	return least
}

const balloonSize = lettering.Points(8)

// balloons places the marks: on the part where there is room, else beside it
// with a line to it, clear of each other and of the boxes to avoid.
func balloons(v sheet.View, s *scene, avoid []sheet.Box, want []balloonFor) []sheet.Item {
	taken := append([]sheet.Box(nil), avoid...)
	var out []sheet.Item
	var later []balloonFor
	for _, w := range want {
		t, ok := w.best(s)
		if !ok {
			continue
		}
		if v.Len(t.free) < radius(w.mark)+0.6 {
			later = append(later, w)
			continue
		}
		at := v.Pt(t.at.X, t.at.Y)
		out = append(out, sheet.Balloon{At: at, Mark: w.mark, Size: balloonSize})
		taken = append(taken, around(at, w.mark))
		if g, box := w.arrow(v, at, v.Len(t.free)); g != nil {
			out, taken = append(out, g), append(taken, box)
		}
	}
	for _, w := range later {
		t, _ := w.best(s)
		target := v.Pt(t.at.X, t.at.Y)
		at, ok := beside(v, s, target, w.mark, taken)
		if !ok {
			continue
		}
		taken = append(taken, around(at, w.mark))
		out = append(out, sheet.Balloon{At: at, Mark: w.mark, Target: &target, Size: balloonSize})
	}
	return out
}

// radius is half the width of a balloon.
func radius(mark string) float64 {
	return math.Max(0.85*balloonSize.Millimetres(), lettering.Bold.Width(mark, balloonSize)/2+1.2)
}

func around(at sheet.Point, mark string) sheet.Box {
	r := radius(mark) + 0.4
	return sheet.Box{X: at.X - r, Y: at.Y - r, W: 2 * r, H: 2 * r}
}

// arrow is the grain arrow beside a balloon, where there is room for one.
func (w balloonFor) arrow(v sheet.View, at sheet.Point, free float64) (sheet.Item, sheet.Box) {
	if w.grain == nil || free < 8 {
		return nil, sheet.Box{}
	}
	return nil, sheet.Box{}
}

// beside tries places around a target, nearest first.
func beside(v sheet.View, s *scene, target sheet.Point, mark string, taken []sheet.Box) (sheet.Point, bool) {
	page := v.OnPaper()
	for _, far := range []float64{7, 9, 11, 14, 18, 23, 29} {
		best, found := sheet.Point{}, math.Inf(1)
		for k := range 16 {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / 16)
			at := target.Plus(far*cos, far*sin)
			box := around(at, mark)
			if blocked(box, taken) || !page.Contains(box) {
				continue
			}
			if cost := busy(v, s, box); cost < found {
				best, found = at, cost
			}
		}
		if found < 2.5 || (far > 20 && !math.IsInf(found, 1)) {
			return best, true
		}
	}
	return sheet.Point{}, false
}

func blocked(box sheet.Box, taken []sheet.Box) bool {
	for _, t := range taken {
		if box.Overlaps(t) {
			return true
		}
	}
	return false
}

// busy counts the different bodies below a box on paper: 1 on a plain face.
func busy(v sheet.View, s *scene, box sheet.Box) float64 {
	var seen []*body
	r := v.Scale.Ratio()
	for i := range 5 {
		for j := range 5 {
			x, y := box.X+box.W*float64(i)/4, box.Y+box.H*float64(j)/4
			b := s.at(sheet.Pt(v.Model.X+(x-v.At.X)/r, v.Model.Y-(y-v.At.Y)/r))
			if !hasBody(seen, b) {
				seen = append(seen, b)
			}
		}
	}
	return float64(len(seen))
}

func hasBody(list []*body, b *body) bool {
	for _, o := range list {
		if o == b {
			return true
		}
	}
	return false
}
