package view

import (
	"cmp"
	"math"
	"slices"
)

// mark is a piece that will be a line. Body is a rank, id what the caller
// calls it.
type mark struct {
	u, v    int32
	hidden  bool
	kind    Kind
	body    int32
	id, tag int
}

func (k mark) of(f *facing) mark {
	k.body, k.id, k.tag = int32(f.body), f.id, f.tag
	return k
}

// alike compares everything but the place.
func (k mark) alike(o mark) int {
	if k.hidden != o.hidden {
		if o.hidden {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(k.kind, o.kind), cmp.Compare(k.id, o.id), cmp.Compare(k.tag, o.tag), cmp.Compare(k.body, o.body))
}

// join makes lines of marks: those that are alike and continue each other
// become one.
func join(marks []mark, a *arrangement) []Line {
	at := a.at
	slices.SortFunc(marks, func(a, b mark) int {
		return cmp.Or(a.alike(b), cmp.Compare(a.u, b.u), cmp.Compare(a.v, b.v))
	})
	j := joiner{reach: a.reach, at: at, ends: make([][]int32, len(at)), specks: a.specks()}
	var out []Line
	for i := 0; i < len(marks); {
		n := i + 1
		for n < len(marks) && marks[n].alike(marks[i]) == 0 {
			n++
		}
		out = j.group(marks[i:n], out)
		i = n
	}
	slices.SortFunc(out, byKindAndPlace)
	return out
}

type joiner struct {
	reach float64
	at    []Point2
	ends  [][]int32 // marks by place, for the group at hand
	used  []bool
	// specks lead from place to place over pieces too short to have a side
	// that could be looked at. A line may go on beyond one.
	specks map[int32][]int32
}

// specks are the pieces that are not longer than what one looks beside them.
func (a *arrangement) specks() map[int32][]int32 {
	out := map[int32][]int32{}
	for _, p := range a.pieces {
		if a.at[p.u].to(a.at[p.v]) < a.beside() {
			out[p.u] = append(out[p.u], p.v)
			out[p.v] = append(out[p.v], p.u)
		}
	}
	return out
}

func (j *joiner) group(marks []mark, out []Line) []Line {
	for i, k := range marks {
		j.ends[k.u] = append(j.ends[k.u], int32(i))
		j.ends[k.v] = append(j.ends[k.v], int32(i))
	}
	j.used = append(j.used[:0], make([]bool, len(marks))...)
	for i, k := range marks {
		if j.used[i] {
			continue
		}
		j.used[i] = true
		u := j.extend(marks, k.v, k.u)
		v := j.extend(marks, u, k.v)
		if j.at[u].to(j.at[v]) >= 4*j.reach { // shorter ones are left over from welding
			out = append(out, k.line(j.at[u], j.at[v]))
		}
	}
	for _, k := range marks {
		j.ends[k.u], j.ends[k.v] = j.ends[k.u][:0], j.ends[k.v][:0]
	}
	return out
}

// extend goes on straight from a place, coming from another, and returns where
// that ends.
func (j *joiner) extend(marks []mark, from, here int32) int32 {
	for {
		next := j.step(marks, from, here)
		for _, over := range j.specks[here] {
			if next < 0 {
				next = j.step(marks, from, over)
			}
		}
		if next < 0 {
			return here
		}
		here = next
	}
}

// step uses up the mark that goes on straight from a place, and returns its
// far end; -1 if there is none.
func (j *joiner) step(marks []mark, from, here int32) int32 {
	for _, i := range j.ends[here] {
		far := marks[i].u + marks[i].v - here
		if !j.used[i] && straight(j.at[from], j.at[here], j.at[far], j.reach) {
			j.used[i] = true
			return far
		}
	}
	return -1
}

// straight tells whether b lies between a and c on the line through them, as
// far as welding lets one tell. Short ends tell little, so they must agree
// over a hundredth of a degree's worth of both lengths as well.
func straight(a, b, c Point2, reach float64) bool {
	ab, bc, ac := b.minus(a), c.minus(b), c.minus(a)
	long := math.Hypot(ac.X, ac.Y)
	if ab.dot(bc) <= 0 || math.Abs(ac.cross(ab)) > 2*reach*long {
		return false
	}
	turn := math.Abs(ab.cross(bc)) / ab.dot(bc)
	short := math.Min(math.Hypot(ab.X, ab.Y), math.Hypot(bc.X, bc.Y))
	return turn < 2e-4+2*reach/short
}

func (k mark) line(a, b Point2) Line {
	a, b = tidy(a), tidy(b)
	if b.X < a.X || b.X == a.X && b.Y < a.Y {
		a, b = b, a
	}
	return Line{A: a, B: b, Hidden: k.hidden, Kind: k.kind, Body: k.id, Tag: k.tag}
}

// tidy rounds to the nanometre, so that one processor's last bit is not
// another's.
func tidy(p Point2) Point2 { return Point2{nano(p.X), nano(p.Y)} }

func nano(x float64) float64 { return math.Round(x*1e6)/1e6 + 0 } // + 0 makes -0 zero

func byKindAndPlace(a, b Line) int {
	if a.Hidden != b.Hidden {
		if b.Hidden {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Body, b.Body), cmp.Compare(a.Tag, b.Tag),
		cmp.Compare(a.A.X, b.A.X), cmp.Compare(a.A.Y, b.A.Y), cmp.Compare(a.B.X, b.B.X), cmp.Compare(a.B.Y, b.B.Y))
}
