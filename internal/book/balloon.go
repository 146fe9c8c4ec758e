package book

import (
	"math"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
)

// ground tells which body is seen at a place of a picture, nil where none is.
type ground interface {
	at(p sheet.Point) *body
}

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

// best looks for the place with the most of its own around it, among those that
// may be used.
func (w balloonFor) best(s ground, may func(p sheet.Point) bool) (target, bool) {
	at := func(i, j int) sheet.Point {
		return sheet.Pt(w.room.X+w.room.W*(float64(i)+0.5)/gridded, w.room.Y+w.room.H*(float64(j)+0.5)/gridded)
	}
	var seen [gridded][gridded]bool
	for i := range gridded {
		for j := range gridded {
			seen[i][j] = w.covers(s.at(at(i, j))) && (may == nil || may(at(i, j)))
		}
	}
	var out target
	best := 0.0
	for i := range gridded {
		for j := range gridded {
			free := w.clear(&seen, i, j)
			// Of places as good, the one nearer the middle.
			off := math.Hypot(float64(i)-gridded/2, float64(j)-gridded/2) / gridded
			if score := free * (1 - 0.3*off); score > best+1e-9 {
				out, best = target{at(i, j), free}, score
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
// with a line to it, clear of each other and of the boxes to avoid. Marks that
// find no place are told.
func balloons(v sheet.View, s ground, avoid []sheet.Box, want []balloonFor) (out []sheet.Item, unseen []string) {
	return balloonsIn(v.OnPaper(), v, s, avoid, want)
}

// balloonsIn does so within a room on paper.
func balloonsIn(page sheet.Box, v sheet.View, s ground, avoid []sheet.Box, want []balloonFor) (out []sheet.Item, unseen []string) {
	taken := append([]sheet.Box(nil), avoid...)
	var later []balloonFor
	for _, w := range want {
		t, ok := w.best(s, func(p sheet.Point) bool { return !blocked(around(v.Pt(p.X, p.Y), w.mark), taken) })
		if !ok {
			later = append(later, w)
			continue
		}
		if v.Len(t.free) < radius(w.mark)-0.9 {
			later = append(later, w)
			continue
		}
		at := v.Pt(t.at.X, t.at.Y)
		out = append(out, sheet.Balloon{At: at, Mark: w.mark, Size: balloonSize})
		taken = append(taken, around(at, w.mark))
		if g, box, ok := w.arrow(v, s, at, taken); ok {
			out, taken = append(out, g), append(taken, box)
		}
	}
	for _, w := range later {
		target, at, ok := w.beside(page, v, s, taken)
		if !ok {
			unseen = append(unseen, w.mark)
			continue
		}
		taken = append(taken, around(at, w.mark))
		out = append(out, sheet.Balloon{At: at, Mark: w.mark, Target: &target, Size: balloonSize})
	}
	return out, unseen
}

// radius is half the width of a balloon.
func radius(mark string) float64 {
	return math.Max(0.85*balloonSize.Millimetres(), lettering.Bold.Width(mark, balloonSize)/2+1.2)
}

func around(at sheet.Point, mark string) sheet.Box {
	r := radius(mark) + 0.4
	return sheet.Box{X: at.X - r, Y: at.Y - r, W: 2 * r, H: 2 * r}
}

// arrow is the grain arrow in line with a balloon, along the grain, where the
// part shows for long enough.
func (w balloonFor) arrow(v sheet.View, s ground, at sheet.Point, taken []sheet.Box) (sheet.Item, sheet.Box, bool) {
	flat, ok := s.(*scene)
	if w.grain == nil || !ok {
		return nil, sheet.Box{}, false
	}
	along, turn := sheet.Pt(1, 0), measure.Angle(0)
	switch worldAxis(w.grain.Place.L) {
	case flat.gaze.d.axis:
		return nil, sheet.Box{}, false
	case flat.gaze.v.axis:
		along, turn = sheet.Pt(0, 1), measure.Degrees(90)
	}
	for _, long := range [2]float64{11, 7} {
		for _, dir := range [2]float64{1, -1} {
			off := dir * (radius(w.mark) + 1.5 + long/2)
			mid := at.Plus(off*along.X, off*along.Y)
			box := sheet.BoundsOf(mid.Plus(-along.X*long/2-1, -along.Y*long/2-1), mid.Plus(along.X*long/2+1, along.Y*long/2+1))
			if w.shows(v, s, mid, along, long/2+1) && !blocked(box, taken) {
				return sheet.GrainArrow{At: mid, Length: long, Turn: turn}, box, true
			}
		}
	}
	return nil, sheet.Box{}, false
}

// shows reports whether the part is seen all along a stretch on paper, and a
// little to both sides of it.
func (w balloonFor) shows(v sheet.View, s ground, mid, along sheet.Point, half float64) bool {
	for k := -4; k <= 4; k++ {
		for _, side := range [2]float64{-1.2, 1.2} {
			d := half * float64(k) / 4
			p := mid.Plus(d*along.X+side*along.Y, d*along.Y+side*along.X)
			if !w.covers(s.at(modelPoint(v, p))) {
				return false
			}
		}
	}
	return true
}

// modelPoint is the place in the picture below a place on paper.
func modelPoint(v sheet.View, p sheet.Point) sheet.Point {
	r := v.Scale.Ratio()
	return sheet.Pt(v.Model.X+(p.X-v.At.X)/r, v.Model.Y-(p.Y-v.At.Y)/r)
}

// targets are places of the part that are seen, spread over it.
func (w balloonFor) targets(v sheet.View, s ground) []sheet.Point {
	var out []sheet.Point
	const n = 7
	for i := range n {
		for j := range n {
			p := sheet.Pt(w.room.X+w.room.W*(float64(i)+0.5)/n, w.room.Y+w.room.H*(float64(j)+0.5)/n)
			if w.solid(v, s, p) {
				out = append(out, p)
			}
		}
	}
	if t, ok := w.best(s, nil); ok && len(out) == 0 {
		out = append(out, t.at)
	}
	return out
}

// solid reports whether the part is seen at a place and half a millimetre of
// paper around it.
func (w balloonFor) solid(v sheet.View, s ground, p sheet.Point) bool {
	r := 0.5 / v.Scale.Ratio()
	for _, d := range [...]sheet.Point{{}, {X: r}, {X: -r}, {Y: r}, {Y: -r}} {
		if !w.covers(s.at(p.Plus(d.X, d.Y))) {
			return false
		}
	}
	return true
}

// beside finds a place for a balloon near the part: short line, plain ground,
// not over anything taken.
func (w balloonFor) beside(page sheet.Box, v sheet.View, s ground, taken []sheet.Box) (target, at sheet.Point, ok bool) {
	least := math.Inf(1)
	middle := v.Pt(w.room.X+w.room.W/2, w.room.Y+w.room.H/2)
	for _, t := range w.targets(v, s) {
		t = v.Pt(t.X, t.Y)
		for _, far := range []float64{6.5, 8.5, 11, 14, 18, 24} {
			for k := range 16 {
				sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / 16)
				p := t.Plus(far*cos, far*sin)
				box := around(p, w.mark)
				if far >= least || blocked(box, taken) || !page.Contains(box) || crossed(t, p, taken) {
					continue
				}
				cost := far + 5*(busy(v, s, box)-1) + 0.02*math.Hypot(t.X-middle.X, t.Y-middle.Y)
				if cost < least {
					target, at, least = t, p, cost
				}
			}
		}
	}
	return target, at, !math.IsInf(least, 1)
}

// crossed reports whether a line runs through something taken.
func crossed(a, b sheet.Point, taken []sheet.Box) bool {
	for k := 1; k < 12; k++ {
		f := float64(k) / 12
		p := sheet.Box{X: a.X + f*(b.X-a.X), Y: a.Y + f*(b.Y-a.Y), W: 0.01, H: 0.01}
		if blocked(p, taken) {
			return true
		}
	}
	return false
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
func busy(v sheet.View, s ground, box sheet.Box) float64 {
	var seen []*body
	for i := range 3 {
		for j := range 3 {
			b := s.at(modelPoint(v, sheet.Pt(box.X+box.W*float64(i)/2, box.Y+box.H*float64(j)/2)))
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
