package csg

import (
	"cmp"
	"math/big"

	"casewright/internal/measure"
)

// Vertex is an exact place: the point where three faces meet. Most lie on
// whole nanometres; where slopes meet they are fractions, kept exactly.
type Vertex struct {
	at   [3]int64   // nm, if frac is nil
	near [3]float64 // nm, each coordinate rounded the same way for the same exact value
	frac *fraction
}

// fraction is a place x/w in nm with w > 1 and no divisor common to all four.
type fraction struct {
	x [3]big.Int
	w big.Int
}

// Whole is the place in whole nanometres; ok is false if it is a fraction.
func (v *Vertex) Whole() (at [3]measure.Length, ok bool) {
	return [3]measure.Length{measure.Length(v.at[0]), measure.Length(v.at[1]), measure.Length(v.at[2])}, v.frac == nil
}

// Millimetres is the place in float64 millimetres, right to one part in 2^52.
func (v *Vertex) Millimetres() [3]float64 {
	return [3]float64{v.near[0] / 1e6, v.near[1] / 1e6, v.near[2] / 1e6}
}

// Exact is the place as fractions of nanometres; the caller owns them.
func (v *Vertex) Exact() [3]*big.Rat {
	var out [3]*big.Rat
	for k := range out {
		if v.frac == nil {
			out[k] = new(big.Rat).SetInt64(v.at[k])
		} else {
			out[k] = new(big.Rat).SetFrac(&v.frac.x[k], &v.frac.w)
		}
	}
	return out
}

func wholeVertex(at [3]int64) Vertex {
	return Vertex{at: at, near: [3]float64{float64(at[0]), float64(at[1]), float64(at[2])}}
}

// fractionVertex is x/w for w > 0. It shortens the fraction in place, keeps
// it, and comes out whole if the divisor vanishes.
func fractionVertex(f *fraction) Vertex {
	var g big.Int
	g.GCD(nil, nil, g.Abs(&f.x[0]), &f.w)
	for k := 1; k < 3 && !isOne(&g); k++ {
		var t big.Int
		g.GCD(nil, nil, t.Abs(&f.x[k]), &g)
	}
	if !isOne(&g) {
		f.w.Quo(&f.w, &g)
		for k := range f.x {
			f.x[k].Quo(&f.x[k], &g)
		}
	}
	var v Vertex
	if isOne(&f.w) {
		return wholeVertex([3]int64{f.x[0].Int64(), f.x[1].Int64(), f.x[2].Int64()})
	}
	v.frac = f
	for k := range f.x {
		v.near[k] = nearest(&f.x[k], &f.w)
	}
	return v
}

func isOne(n *big.Int) bool { return n.IsInt64() && n.Int64() == 1 }

// nearest is x/w as whole part plus rounded rest. It depends on the value
// alone and never falls when the value rises; both are relied on.
func nearest(x, w *big.Int) float64 {
	var q, r big.Int
	q.DivMod(x, w, &r)
	if w.IsInt64() && w.Int64() < 1<<53 {
		return float64(q.Int64()) + float64(r.Int64())/float64(w.Int64())
	}
	part, _ := new(big.Rat).SetFrac(&r, w).Float64()
	return float64(q.Int64()) + part
}

// numerator is coordinate k times the divisor; z is room for it if it is whole.
func (v *Vertex) numerator(k int, z *big.Int) *big.Int {
	if v.frac != nil {
		return &v.frac.x[k]
	}
	return z.SetInt64(v.at[k])
}

func (v *Vertex) divisor(z *big.Int) *big.Int {
	if v.frac != nil {
		return &v.frac.w
	}
	return z.SetInt64(1)
}

// compareOn orders two places along axis k.
func compareOn(k int, a, b *Vertex) int {
	if a.frac == nil && b.frac == nil {
		return cmp.Compare(a.at[k], b.at[k])
	}
	if a.near[k] != b.near[k] {
		return cmp.Compare(a.near[k], b.near[k])
	}
	var t [6]big.Int
	l := t[0].Mul(a.numerator(k, &t[1]), b.divisor(&t[2]))
	r := t[3].Mul(b.numerator(k, &t[4]), a.divisor(&t[5]))
	return l.Cmp(r)
}

// compareSeen orders by the two coordinates left when axis drop is left out.
func compareSeen(drop int, a, b *Vertex) int {
	if c := compareOn((drop+1)%3, a, b); c != 0 {
		return c
	}
	return compareOn((drop+2)%3, a, b)
}

func compareAll(a, b *Vertex) int {
	for k := range 3 {
		if c := compareOn(k, a, b); c != 0 {
			return c
		}
	}
	return 0
}

// turn tells on which side of the line from a to b the place c lies, seen
// along axis drop with the other two in cyclic order: 1 to the left, -1 to the
// right, 0 on it. It is exact.
func turn(drop int, a, b, c *Vertex) int {
	s, t := (drop+1)%3, (drop+2)%3
	if a.frac == nil && b.frac == nil && c.frac == nil {
		return mul(b.at[s]-a.at[s], c.at[t]-a.at[t]).cmp(mul(b.at[t]-a.at[t], c.at[s]-a.at[s]))
	}
	x1, y1 := b.near[s]-a.near[s], b.near[t]-a.near[t]
	x2, y2 := c.near[s]-a.near[s], c.near[t]-a.near[t]
	p, q := x1*y2, y1*x2
	det := p - q
	if e := slack*(fabs(x1)+fabs(y1)+fabs(x2)+fabs(y2)+slack) + (fabs(p)+fabs(q))*0x1p-50; det > e {
		return 1
	} else if det < -e {
		return -1
	}
	return turnSlowly(s, t, a, b, c)
}

// slack bounds the error of a difference of two rounded coordinates: each is
// at most 2^37 nm and comes out of two roundings, each by at most 2^-16 nm; the
// subtraction adds as much again.
const slack = 0x1p-13

func fabs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

func turnSlowly(s, t int, a, b, c *Vertex) int {
	var n [9]big.Int
	xa, ya, wa := a.numerator(s, &n[0]), a.numerator(t, &n[1]), a.divisor(&n[2])
	xb, yb, wb := b.numerator(s, &n[3]), b.numerator(t, &n[4]), b.divisor(&n[5])
	xc, yc, wc := c.numerator(s, &n[6]), c.numerator(t, &n[7]), c.divisor(&n[8])
	var sum, m1, m2, m3 big.Int
	minor := func(z, p, q, r, s *big.Int) *big.Int { return z.Sub(m1.Mul(p, q), m2.Mul(r, s)) }
	sum.Mul(xa, minor(&m3, yb, wc, yc, wb))
	m3.Mul(ya, minor(&m3, xb, wc, xc, wb))
	sum.Sub(&sum, &m3)
	m3.Mul(wa, minor(&m3, xb, yc, xc, yb))
	return sum.Add(&sum, &m3).Sign()
}

// collinear tells whether three places lie on one line in space.
func collinear(a, b, c *Vertex) bool {
	return turn(0, a, b, c) == 0 && turn(1, a, b, c) == 0 && turn(2, a, b, c) == 0
}
