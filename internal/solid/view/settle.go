package view

import "math"

// short is the length below which a piece's own looks are not trusted: they go
// nearly as far aside as the piece is long.
func (a *arrangement) short(i int) bool { return a.long(i) < 4*a.beside() }

// settle gives the sides of short pieces what lies beside the next long piece
// round the same region of the plane.
func (a *arrangement) settle(left, right []int32) {
	doubtful := false
	for i := range a.pieces {
		doubtful = doubtful || a.short(i)
	}
	if !doubtful {
		return
	}
	r := newRounds(a)
	label := func(d dart) *int32 {
		if d.back {
			return &right[d.piece]
		}
		return &left[d.piece]
	}
	for i := range a.pieces {
		if !a.short(i) {
			continue
		}
		for _, back := range [2]bool{false, true} {
			d := dart{int32(i), back}
			if far, ok := r.trusted(d); ok {
				*label(d) = *label(far)
			}
		}
	}
}

func (a *arrangement) long(i int) float64 { return a.at[a.pieces[i].u].to(a.at[a.pieces[i].v]) }

// dart is a piece walked one way, with one region on its left.
type dart struct {
	piece int32
	back  bool // from v to u
}

// rounds walks round the regions of an arrangement.
type rounds struct {
	*arrangement
	darts []dart // by the place they leave from
	start []int32
}

func newRounds(a *arrangement) *rounds {
	r := &rounds{arrangement: a, start: make([]int32, len(a.at)+1), darts: make([]dart, 2*len(a.pieces))}
	for _, p := range a.pieces {
		r.start[p.u+1]++
		r.start[p.v+1]++
	}
	for i := range a.at {
		r.start[i+1] += r.start[i]
	}
	next := append([]int32(nil), r.start...)
	for i, p := range a.pieces {
		r.darts[next[p.u]] = dart{int32(i), false}
		next[p.u]++
		r.darts[next[p.v]] = dart{int32(i), true}
		next[p.v]++
	}
	return r
}

func (r *rounds) ends(d dart) (from, to int32) {
	p := r.pieces[d.piece]
	if d.back {
		return p.v, p.u
	}
	return p.u, p.v
}

// mostSteps bounds the walk past short pieces: more of them in a row are a
// curve of their own and have to be trusted.
const mostSteps = 16

// trusted is the next long piece round the region on a dart's left.
func (r *rounds) trusted(d dart) (dart, bool) {
	for range mostSteps {
		d = r.after(d)
		if !r.short(int(d.piece)) {
			return d, true
		}
	}
	return d, false
}

// after is the dart that follows round the region on the left: the first met
// when turning clockwise from the way one came.
func (r *rounds) after(d dart) dart {
	from, here := r.ends(d)
	back := heading(r.at[here], r.at[from])
	best, least := d, math.Inf(1)
	for _, o := range r.darts[r.start[here]:r.start[here+1]] {
		_, to := r.ends(o)
		if turn := clockwise(back, heading(r.at[here], r.at[to])); turn < least {
			best, least = o, turn
		}
	}
	return best
}

func heading(from, to Point2) float64 {
	d := to.minus(from)
	return math.Atan2(d.Y, d.X)
}

// clockwise is how far one turns clockwise from one heading to the other, more
// than 0 and up to a full turn.
func clockwise(from, to float64) float64 {
	turn := from - to
	if turn <= 0 {
		turn += 2 * math.Pi
	}
	return turn
}
