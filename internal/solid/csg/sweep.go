package csg

import "slices"

// sweeper walks over the arrangement in the order its points are seen and
// keeps the edges it is passing, lowest first.
type sweeper struct {
	active []int32
	start  []int32 // by point: the first sub that begins there
	nest   []int32 // by point: the kept sub next below it, or -1
}

// sweep finds what lies on both sides of every sub.
func (a *arrangement) sweep() {
	s := &a.sweeper
	s.active = s.active[:0]
	s.start, s.nest = s.start[:0], s.nest[:0]
	for i, next := range a.subs {
		for len(s.start) <= int(next.a) {
			s.start = append(s.start, int32(i))
		}
	}
	for len(s.start) <= len(a.points) {
		s.start = append(s.start, int32(len(a.subs)))
	}
	for p := range int32(len(a.points)) {
		a.pass(p)
	}
}

// pass takes the subs that end at a point off the list and puts on those that
// begin there.
func (a *arrangement) pass(p int32) {
	s := &a.sweeper
	lo := a.below(p)
	hi := lo
	for hi < len(s.active) && a.subs[s.active[hi]].b == p {
		hi++
	}
	s.nest = append(s.nest, a.nextKept(lo))
	from, to := s.start[p], s.start[p+1]
	a.fan(a.subs[from:to])
	s.active = replace(s.active, lo, hi, from, to)
	state, right := a.blank, int32(0)
	if lo > 0 {
		b := &a.subs[s.active[lo-1]]
		state, right = a.state(b), b.left
	}
	for i := from; i < to; i++ {
		b := &a.subs[i]
		mine := a.state(b)
		for w := range mine {
			mine[w] ^= state[w]
		}
		b.right, b.left = right, a.classify(mine)
		state, right = mine, b.left
	}
}

func (a *arrangement) state(s *sub) []uint64 {
	return a.states[s.state : s.state+int32(2*a.words)]
}

// below counts the active subs that pass below a point.
func (a *arrangement) below(p int32) int {
	lo, hi := 0, len(a.sweeper.active)
	at := a.points[p]
	for lo < hi {
		mid := (lo + hi) / 2
		s := &a.subs[a.sweeper.active[mid]]
		if s.b != p && a.turn(a.points[s.a], a.points[s.b], at) > 0 {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}

// nextKept is the uppermost kept sub below place n on the list.
func (a *arrangement) nextKept(n int) int32 {
	for n--; n >= 0; n-- {
		if i := a.sweeper.active[n]; a.subs[i].left != a.subs[i].right {
			return i
		}
	}
	return -1
}

// fan sorts subs that begin at one point by their slope. The order of subs by
// their far point, which merge made, is not needed any more.
func (a *arrangement) fan(subs []sub) {
	if len(subs) < 2 {
		return
	}
	slices.SortFunc(subs, func(x, y sub) int {
		return -a.turn(a.points[x.a], a.points[x.b], a.points[y.b])
	})
}

// replace puts the numbers from…to-1 in the place of list[lo:hi].
func replace(list []int32, lo, hi int, from, to int32) []int32 {
	grow := int(to-from) - (hi - lo)
	n := len(list)
	if grow > 0 {
		list = slices.Grow(list, grow)[:n+grow]
		copy(list[hi+grow:], list[hi:n])
	} else {
		copy(list[hi+grow:], list[hi:])
		list = list[:n+grow]
	}
	for i := range int(to - from) {
		list[lo+i] = from + int32(i)
	}
	return list
}
