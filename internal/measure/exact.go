package measure

import (
	"math"
	"math/big"
	"math/bits"
)

// MulDiv is l × num / den, rounded once to the nearest nanometre and half to
// the even one. The product may run past int64 without harm; a result that
// does is held at the greatest int64 of its sign. A den of zero panics, as any
// division by zero does.
func (l Length) MulDiv(num, den int64) Length {
	if den == 0 {
		panic("measure: MulDiv by zero")
	}
	neg := (l < 0) != (num < 0) != (den < 0)
	d := magnitude(den)
	hi, lo := bits.Mul64(magnitude(int64(l)), magnitude(num))
	if hi >= d {
		return signed(math.MaxUint64, neg)
	}
	q, r := bits.Div64(hi, lo, d)
	if half := d - r; r > half || r == half && q%2 == 1 {
		q = min(q, math.MaxInt64) + 1
	}
	return signed(q, neg)
}

// Abs is l without its sign.
func (l Length) Abs() Length { return signed(magnitude(int64(l)), false) }

// FromRat is the length of r units, rounded once to the nearest nanometre and
// half to the even one; false when r is nil or beyond MaxLength.
func FromRat(r *big.Rat, unit Unit) (Length, bool) {
	if r == nil || r.Num().BitLen() > r.Denom().BitLen()+mostBits {
		return 0, false
	}
	return fromNanometres(new(big.Rat).Mul(r, ratOf(unit.Length())))
}

// FromBigFloat is FromRat for the numbers of the design language; false also
// for infinities.
func FromBigFloat(f *big.Float, unit Unit) (Length, bool) {
	if f == nil || f.IsInf() {
		return 0, false
	}
	// Looked at before any conversion: an exponent of a milliard would ask
	// for a number of that many digits.
	switch exp := f.MantExp(nil); {
	case exp > mostBits:
		return 0, false
	case exp < -mostBits:
		return 0, true
	}
	r, _ := f.Rat(nil)
	return FromRat(r, unit)
}

// mostBits is more than MaxLength in nanometres needs (40 bits), so a number
// of units of 2^64 or more is certainly too long, and one below 2^-64 nothing.
const mostBits = 64

// fromNanometres rounds half to even, and reports whether the result is within
// MaxLength.
func fromNanometres(r *big.Rat) (Length, bool) {
	n, ok := roundHalfEven(r)
	return Length(n), ok && Length(n).Abs() <= MaxLength
}

func roundHalfEven(r *big.Rat) (n int64, ok bool) {
	var q, rest big.Int
	q.DivMod(r.Num(), r.Denom(), &rest) // rest is never negative
	rest.Lsh(&rest, 1)
	if c := rest.Cmp(r.Denom()); c > 0 || c == 0 && q.Bit(0) == 1 {
		q.Add(&q, big.NewInt(1))
	}
	return q.Int64(), q.IsInt64()
}

func ratOf(l Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// magnitude is |n| as it is, even of the least int64.
func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// signed puts the sign back, holding what int64 cannot carry at its end.
func signed(m uint64, neg bool) Length {
	m = min(m, math.MaxInt64)
	if neg {
		return -Length(m)
	}
	return Length(m)
}
