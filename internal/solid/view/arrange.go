package view

import (
	"cmp"
	"math"
	"slices"
)

// arrangement is what a heap of lines divides the plane into: pieces that meet
// each other only at their ends. Lines that lie on one another share pieces.
type arrangement struct {
	at     []Point2
	pieces []piece
	owners []int32 // indices of the lines given, by piece
}

// piece runs between two places of the arrangement; u < v. Its owners are
// owners[first:last], rising.
type piece struct{ u, v, first, last int32 }

func (a *arrangement) ownersOf(p piece) []int32 { return a.owners[p.first:p.last] }

// beside is how far from the middle of a piece one looks to learn what lies on
// either side of it: well beyond what welding moved, well below anything drawn.
const beside = 10 * coincident

func (a *arrangement) middle(i int) Point2 {
	u, v := a.at[a.pieces[i].u], a.at[a.pieces[i].v]
	return Point2{(u.X + v.X) / 2, (u.Y + v.Y) / 2}
}

// flanks are places left and right of the middle of a piece.
func (a *arrangement) flanks(i int) (left, right Point2) {
	u, v := a.at[a.pieces[i].u], a.at[a.pieces[i].v]
	long := u.to(v)
	step := math.Min(beside, long/4) / long
	mid, square := a.middle(i), Point2{u.Y - v.Y, v.X - u.X}
	return mid.along(square, step), mid.along(square, -step)
}

// stroke is a line before it is split: corners u < v, and the lines given that
// run from the one to the other.
type stroke struct {
	u, v        int32
	first, last int32
}

// arranger holds the plane while it is divided. See HIDDENLINE.md, step 3.
type arranger struct {
	w       *welds
	strokes []stroke
	owners  []int32
	grid    grid
	lines   lists // strokes by cell
	spots   lists // places by cell
}

// arrange divides the plane by lines. Lines shorter than coincident are lost.
func arrange(lines [][2]Point2) *arrangement {
	r := &arranger{w: newWelds(coincident, 2*len(lines))}
	r.take(lines)
	if len(r.strokes) == 0 {
		return &arrangement{}
	}
	r.spread()
	r.crossings()
	return r.pieces()
}

func (r *arranger) place(i int32) Point2 { p := r.w.at[i]; return Point2{p.X, p.Y} }

// id welds a place of the plane; the third coordinate is the middle of a cell,
// so that no neighbour is looked into for its sake.
func (r *arranger) id(p Point2) int32 { return r.w.id(Vec3{p.X, p.Y, coincident * cellOver / 2}) }

// take welds the ends of lines and merges those that run from the same place
// to the same place: seen square on, most edges of a case piece lie behind
// another one.
func (r *arranger) take(lines [][2]Point2) {
	all := make([]stroke, 0, len(lines))
	for i, l := range lines {
		u, v := r.id(l[0]), r.id(l[1])
		if u != v {
			all = append(all, stroke{u: min(u, v), v: max(u, v), first: int32(i)})
		}
	}
	slices.SortFunc(all, func(a, b stroke) int {
		return cmp.Or(cmp.Compare(a.u, b.u), cmp.Compare(a.v, b.v), cmp.Compare(a.first, b.first))
	})
	for i, s := range all {
		r.owners = append(r.owners, s.first)
		n := len(r.strokes)
		if i == 0 || s.u != all[i-1].u || s.v != all[i-1].v {
			r.strokes = append(r.strokes, stroke{s.u, s.v, int32(i), int32(i)})
			n++
		}
		r.strokes[n-1].last = int32(i + 1)
	}
}

// spread lays a grid over the plane and enters the strokes.
func (r *arranger) spread() {
	bounds := nowhere()
	for i := range r.w.at {
		bounds.take(r.place(int32(i)))
	}
	r.grid = newGrid(bounds, len(r.strokes))
	r.lines = collect(r.grid.count(), func(enter func(cell int, i int32)) {
		for i, s := range r.strokes {
			r.grid.along(r.place(s.u), r.place(s.v), coincident, func(cell int) { enter(cell, int32(i)) })
		}
	})
}

// crossings makes a place of every point where two strokes cross, and enters
// all places in the grid.
func (r *arranger) crossings() {
	tried := make([]int32, len(r.strokes)) // by which stroke last
	for i := range tried {
		tried[i] = -1
	}
	for i, s := range r.strokes {
		a, b := r.place(s.u), r.place(s.v)
		r.grid.along(a, b, coincident, func(cell int) {
			for _, j := range r.lines.of(cell) {
				if j <= int32(i) || tried[j] == int32(i) {
					continue
				}
				tried[j] = int32(i)
				if x, ok := crossing(a, b, r.place(r.strokes[j].u), r.place(r.strokes[j].v)); ok {
					r.id(x)
				}
			}
		})
	}
	r.spots = collect(r.grid.count(), func(enter func(cell int, i int32)) {
		for i := range r.w.at {
			enter(r.grid.cell(r.place(int32(i))), int32(i))
		}
	})
}

// crossing is where two lines cross well inside both. Where one only touches
// the other, its end is a place already and splits it later.
func crossing(a, b, c, d Point2) (Point2, bool) {
	if math.Max(a.X, b.X) < math.Min(c.X, d.X) || math.Max(c.X, d.X) < math.Min(a.X, b.X) ||
		math.Max(a.Y, b.Y) < math.Min(c.Y, d.Y) || math.Max(c.Y, d.Y) < math.Min(a.Y, b.Y) {
		return Point2{}, false
	}
	ab, cd := b.minus(a), d.minus(c)
	c0, d0 := ab.cross(c.minus(a)), ab.cross(d.minus(a))
	reach := coincident * math.Sqrt(ab.dot(ab))
	if math.Abs(c0) <= reach || math.Abs(d0) <= reach || (c0 > 0) == (d0 > 0) {
		return Point2{}, false
	}
	a0, b0 := cd.cross(a.minus(c)), cd.cross(b.minus(c))
	reach = coincident * math.Sqrt(cd.dot(cd))
	if math.Abs(a0) <= reach || math.Abs(b0) <= reach || (a0 > 0) == (b0 > 0) {
		return Point2{}, false
	}
	return c.along(cd, c0/(c0-d0)), true
}

// stop is a place on a stroke, k along it.
type stop struct {
	id int32
	k  float64
}

// stops are the places on a stroke, its ends first and last. Every place
// within reach counts, whichever lines made it: that is what makes strokes on
// one another share their pieces.
func (r *arranger) stops(s stroke, out []stop) []stop {
	a, b := r.place(s.u), r.place(s.v)
	long := a.to(b)
	d := Point2{(b.X - a.X) / long, (b.Y - a.Y) / long}
	out = append(out[:0], stop{s.u, 0}, stop{s.v, long})
	r.grid.along(a, b, coincident, func(cell int) {
		for _, i := range r.spots.of(cell) {
			p := r.place(i).minus(a)
			if math.Abs(d.cross(p)) > 1.5*coincident || i == s.u || i == s.v { // a welded crossing may be off by one reach and a hair
				continue
			}
			if k := d.dot(p); k > 0 && k < long {
				out = append(out, stop{i, k})
			}
		}
	})
	slices.SortFunc(out, func(a, b stop) int { return cmp.Or(cmp.Compare(a.k, b.k), cmp.Compare(a.id, b.id)) })
	return out
}

// pieces splits the strokes and merges what they share.
func (r *arranger) pieces() *arrangement {
	var split []stroke // first is the stroke's index
	var on []stop
	for i, s := range r.strokes {
		on = r.stops(s, on)
		for k := 0; k+1 < len(on); k++ {
			u, v := on[k].id, on[k+1].id
			split = append(split, stroke{u: min(u, v), v: max(u, v), first: int32(i)})
		}
	}
	split = byEnds(split, len(r.w.at))
	out := &arrangement{at: make([]Point2, len(r.w.at))}
	for i := range out.at {
		out.at[i] = r.place(int32(i))
	}
	for i, s := range split {
		n := len(out.pieces)
		if i == 0 || s.u != split[i-1].u || s.v != split[i-1].v {
			at := int32(len(out.owners))
			out.pieces = append(out.pieces, piece{s.u, s.v, at, at})
			n++
		}
		from := r.strokes[s.first]
		out.owners = append(out.owners, r.owners[from.first:from.last]...)
		out.pieces[n-1].last = int32(len(out.owners))
	}
	for _, p := range out.pieces {
		slices.Sort(out.owners[p.first:p.last])
	}
	return out
}

// byEnds sorts by u, v and stroke; u by counting, since there are many.
func byEnds(split []stroke, places int) []stroke {
	start := make([]int32, places+1)
	for _, s := range split {
		start[s.u+1]++
	}
	for i := range places {
		start[i+1] += start[i]
	}
	out := make([]stroke, len(split))
	next := slices.Clone(start)
	for _, s := range split {
		out[next[s.u]] = s
		next[s.u]++
	}
	for i := range places {
		slices.SortFunc(out[start[i]:start[i+1]], func(a, b stroke) int {
			return cmp.Or(cmp.Compare(a.v, b.v), cmp.Compare(a.first, b.first))
		})
	}
	return out
}
