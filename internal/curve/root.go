package curve

import "math"

// solve finds where f is zero between lo and hi, f rising or falling through
// it once; f also gives its slope. Newton's steps are taken while they stay in
// the bracket and shrink it, bisection otherwise, so it always ends. Without a
// change of sign it answers with the end nearer to zero.
func solve(f func(float64) (value, slope float64), lo, hi float64) float64 {
	flo, _ := f(lo)
	fhi, _ := f(hi)
	if flo == 0 || flo*fhi > 0 && math.Abs(flo) <= math.Abs(fhi) {
		return lo
	}
	if fhi == 0 || !(flo*fhi < 0) {
		return hi
	}
	x := lo + (hi-lo)*flo/(flo-fhi)
	for range 200 {
		v, slope := f(x)
		if v == 0 {
			return x
		}
		if (v < 0) == (flo < 0) {
			lo = x
		} else {
			hi = x
		}
		next := x - v/slope
		if !(next > lo && next < hi) {
			next = lo + (hi-lo)/2
		}
		// A few units in the last place of the larger end: less cannot be told.
		if math.Abs(next-x) <= 4e-16*max(math.Abs(lo), math.Abs(hi)) || next <= lo || next >= hi {
			return next
		}
		x = next
	}
	return x
}
