package csg

import (
	"math/big"
	"math/bits"
)

// int128 is a signed whole number of 128 bits in two's complement. Products
// of two coordinates need 74 bits, which int64 does not hold and float64 does
// not tell apart.
type int128 struct {
	hi int64
	lo uint64
}

func wide(a int64) int128 { return int128{a >> 63, uint64(a)} }

func mul(a, b int64) int128 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	return int128{int64(hi) - (a>>63)&b - (b>>63)&a, lo}
}

func (a int128) plus(b int128) int128 {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	return int128{a.hi + b.hi + int64(carry), lo}
}

func (a int128) minus(b int128) int128 {
	lo, borrow := bits.Sub64(a.lo, b.lo, 0)
	return int128{a.hi - b.hi - int64(borrow), lo}
}

func (a int128) negated() int128 { return int128{}.minus(a) }

func (a int128) sign() int {
	switch {
	case a.hi < 0:
		return -1
	case a.hi == 0 && a.lo == 0:
		return 0
	}
	return 1
}

func (a int128) cmp(b int128) int { return a.minus(b).sign() }

// over divides by a positive number and rounds down. ok is false if the
// quotient does not fit 63 bits.
func (a int128) over(n int64) (quotient, rest int64, ok bool) {
	neg := a.hi < 0
	if neg {
		a = a.negated()
	}
	if uint64(a.hi) >= uint64(n) {
		return 0, 0, false
	}
	q, r := bits.Div64(uint64(a.hi), a.lo, uint64(n))
	if q > 1<<62 {
		return 0, 0, false
	}
	if !neg {
		return int64(q), int64(r), true
	}
	if r == 0 {
		return -int64(q), 0, true
	}
	return -int64(q) - 1, n - int64(r), true
}

// float rounds; a small negative number keeps its digits.
func (a int128) float() float64 {
	if a.hi < 0 {
		return -a.negated().float()
	}
	return float64(a.hi)*0x1p64 + float64(a.lo)
}

func (a int128) big() *big.Int {
	z := big.NewInt(a.hi)
	z.Lsh(z, 64)
	return z.Add(z, new(big.Int).SetUint64(a.lo))
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	if a < 0 {
		return -a
	}
	return a
}
