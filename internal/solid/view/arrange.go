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
	reach  float64 // below this distance things are one
	clear  []room  // by piece
}

// room is how far one may look left and right from the middle of a piece
// without looking across another line.
type room struct{ left, right float64 }

// piece runs between two places of the arrangement; u < v. Its owners are
// owners[first:last], rising.
type piece struct{ u, v, first, last int32 }

func (a *arrangement) ownersOf(p piece) []int32 { return a.owners[p.first:p.last] }

// beside is how far from the middle of a piece one looks to learn what lies on
// either side of it, unless there is less room: beyond what welding and
// splitting moved (1.5 times the reach at most), well below anything drawn.
func (a *arrangement) beside() float64 { return 4 * a.reach }

func (a *arrangement) middle(i int) Point2 {
	u, v := a.at[a.pieces[i].u], a.at[a.pieces[i].v]
	return Point2{(u.X + v.X) / 2, (u.Y + v.Y) / 2}
}

// flanks are places left and right of the middle of a piece.
func (a *arrangement) flanks(i int) (left, right Point2) {
	u, v := a.at[a.pieces[i].u], a.at[a.pieces[i].v]
	long := u.to(v)
	mid, square := a.middle(i), Point2{(u.Y - v.Y) / long, (v.X - u.X) / long}
	most := math.Min(a.beside(), long/4)
	return mid.along(square, math.Min(most, a.clear[i].left/2)), mid.along(square, -math.Min(most, a.clear[i].right/2))
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
	reach   float64
	strokes []stroke
	owners  []int32
	grid    grid
	lines   lists      // strokes by cell
	spots   lists      // places by cell
	crossed [][2]int32 // stroke and place of each crossing, twice
	marks   lists      // places of crossings by stroke
}

// arrange divides the plane by lines. Places closer than the reach are one and
// lie on lines closer than that; lines shorter than it are lost.
func arrange(lines [][2]Point2, reach float64) *arrangement {
	r := &arranger{w: newWelds(reach, 2*len(lines)), reach: reach}
	r.take(lines)
	if len(r.strokes) == 0 {
		return &arrangement{reach: reach}
	}
	r.spread()
	r.crossings()
	return r.pieces()
}

func (r *arranger) place(i int32) Point2 { p := r.w.at[i]; return Point2{p.X, p.Y} }

// id welds a place of the plane; the third coordinate is the middle of a cell,
// so that no neighbour is looked into for its sake.
func (r *arranger) id(p Point2) int32 { return r.w.id(Vec3{p.X, p.Y, r.reach * cellOver / 2}) }

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
			r.grid.along(r.place(s.u), r.place(s.v), r.reach, func(cell int) { enter(cell, int32(i)) })
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
		r.grid.along(a, b, r.reach, func(cell int) {
			for _, j := range r.lines.of(cell) {
				if j <= int32(i) || tried[j] == int32(i) {
					continue
				}
				tried[j] = int32(i)
				if x, ok := r.crossing(a, b, r.place(r.strokes[j].u), r.place(r.strokes[j].v)); ok {
					at := r.id(x)
					r.crossed = append(r.crossed, [2]int32{int32(i), at}, [2]int32{j, at})
				}
			}
		})
	}
	r.marks = collect(len(r.strokes), func(enter func(stroke int, i int32)) {
		for _, c := range r.crossed {
			enter(int(c[0]), c[1])
		}
	})
	r.spots = collect(r.grid.count(), func(enter func(cell int, i int32)) {
		for i := range r.w.at {
			enter(r.grid.cell(r.place(int32(i))), int32(i))
		}
	})
}

// crossing is where two lines cross well inside both. Where one only touches
// the other, its end is a place already and splits it later.
func (r *arranger) crossing(a, b, c, d Point2) (Point2, bool) {
	if math.Max(a.X, b.X) < math.Min(c.X, d.X) || math.Max(c.X, d.X) < math.Min(a.X, b.X) ||
		math.Max(a.Y, b.Y) < math.Min(c.Y, d.Y) || math.Max(c.Y, d.Y) < math.Min(a.Y, b.Y) {
		return Point2{}, false
	}
	ab, cd := b.minus(a), d.minus(c)
	c0, d0 := ab.cross(c.minus(a)), ab.cross(d.minus(a))
	reach := r.reach * math.Sqrt(ab.dot(ab))
	if math.Abs(c0) <= reach || math.Abs(d0) <= reach || (c0 > 0) == (d0 > 0) {
		return Point2{}, false
	}
	a0, b0 := cd.cross(a.minus(c)), cd.cross(b.minus(c))
	reach = r.reach * math.Sqrt(cd.dot(cd))
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
// one another share their pieces. Its own crossings count even where welding
// moved them further off.
func (r *arranger) stops(n int, out []stop) []stop {
	s := r.strokes[n]
	a, b := r.place(s.u), r.place(s.v)
	long := a.to(b)
	d := Point2{(b.X - a.X) / long, (b.Y - a.Y) / long}
	out = append(out[:0], stop{s.u, 0}, stop{s.v, long})
	add := func(i int32, most float64) {
		p := r.place(i).minus(a)
		if i == s.u || i == s.v || math.Abs(d.cross(p)) > most {
			return
		}
		if k := d.dot(p); k > 0 && k < long {
			out = append(out, stop{i, k})
		}
	}
	for _, i := range r.marks.of(n) {
		add(i, math.Inf(1))
	}
	r.grid.along(a, b, r.reach, func(cell int) {
		for _, i := range r.spots.of(cell) {
			add(i, r.reach)
		}
	})
	slices.SortFunc(out, func(a, b stop) int { return cmp.Or(cmp.Compare(a.k, b.k), cmp.Compare(a.id, b.id)) })
	return slices.Compact(out)
}

// pieces splits the strokes and merges what they share.
func (r *arranger) pieces() *arrangement {
	var split []stroke // first is the stroke's index
	var on []stop
	for i := range r.strokes {
		on = r.stops(i, on)
		for k := 0; k+1 < len(on); k++ {
			u, v := on[k].id, on[k+1].id
			split = append(split, stroke{u: min(u, v), v: max(u, v), first: int32(i)})
		}
	}
	split = byEnds(split, len(r.w.at))
	out := &arrangement{reach: r.reach, at: make([]Point2, len(r.w.at))}
	for i := range out.at {
		out.at[i] = r.place(int32(i))
	}
	for i := 0; i < len(split); {
		n := i + 1
		for n < len(split) && split[n].u == split[i].u && split[n].v == split[i].v {
			n++
		}
		out.add(r, split[i:n])
		i = n
	}
	return out
}

// add makes one piece of the same stretch of several strokes.
func (a *arrangement) add(r *arranger, same []stroke) {
	p := piece{u: same[0].u, v: same[0].v, first: int32(len(a.owners))}
	for _, s := range same {
		from := r.strokes[s.first]
		a.owners = append(a.owners, r.owners[from.first:from.last]...)
	}
	p.last = int32(len(a.owners))
	slices.Sort(a.ownersOf(p))
	a.pieces = append(a.pieces, p)
	a.clear = append(a.clear, r.room(a.at[p.u], a.at[p.v], same))
}

// room looks for the nearest lines beside the middle of a piece that are none
// of its own.
func (r *arranger) room(u, v Point2, own []stroke) room {
	far := 8 * r.reach // twice beside
	out := room{far, far}
	long := u.to(v)
	mid := Point2{(u.X + v.X) / 2, (u.Y + v.Y) / 2}
	square := Point2{(u.Y - v.Y) / long, (v.X - u.X) / long}
	r.grid.along(mid.along(square, -far), mid.along(square, far), r.reach, func(cell int) {
		for _, i := range r.lines.of(cell) {
			d, ok := across(mid, square, r.place(r.strokes[i].u), r.place(r.strokes[i].v))
			if !ok || math.Abs(d) >= far || math.Abs(d) < r.reach/4 || slices.ContainsFunc(own, func(s stroke) bool { return s.first == i }) {
				continue
			}
			if d > 0 {
				out.left = math.Min(out.left, d)
			} else {
				out.right = math.Min(out.right, -d)
			}
		}
	})
	return out
}

// across is where the line through p along a direction meets a stretch, counted
// from p.
func across(p, along, a, b Point2) (float64, bool) {
	x, y := along.cross(a.minus(p)), along.cross(b.minus(p))
	if (x > 0) == (y > 0) {
		return 0, false
	}
	k := x / (x - y)
	return along.dot(a.minus(p)) + k*along.dot(b.minus(a)), true
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
