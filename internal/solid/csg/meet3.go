package csg

import "math/big"

// meet is the place where three planes meet. They must do so in one point.
func meet(p, q, r *plane) Vertex {
	planes := [3]*plane{p, q, r}
	var at [3]int64
	given, slanted := 0, (*plane)(nil)
	free := 3 // the axes not given add up to this less those that are
	for _, pl := range planes {
		if k := pl.square(); k >= 0 {
			at[k] = int64(pl.d.lo)
			given++
			free -= k
		} else {
			slanted = pl
		}
	}
	switch given {
	case 3:
		return wholeVertex(at)
	case 2:
		return onWall(slanted, free, at)
	}
	return meetSlowly(planes)
}

// onWall is the place on a plane whose coordinates but the one on axis k are
// given.
func onWall(p *plane, k int, at [3]int64) Vertex {
	i, j := (k+1)%3, (k+2)%3
	rest := p.excess(i, j, at[i], at[j]).negated()
	n := p.n[k]
	if n < 0 {
		n, rest = -n, rest.negated()
	}
	q, r, ok := rest.over(n)
	if ok && r == 0 {
		at[k] = q
		return wholeVertex(at)
	}
	f := new(fraction)
	f.w.SetInt64(n)
	for _, m := range [2]int{i, j} {
		f.x[m].SetInt64(at[m])
		f.x[m].Mul(&f.x[m], &f.w)
	}
	f.x[k].Set(rest.big())
	return fractionVertex(f)
}

// meetSlowly solves by Cramer's rule.
func meetSlowly(p [3]*plane) Vertex {
	var m [3][4]big.Int
	for i := range m {
		for k := range 3 {
			m[i][k].SetInt64(p[i].n[k])
		}
		m[i][3].Set(p[i].d.big())
	}
	det := func(z *big.Int, a, b, c int) {
		var t1, t2, t3 big.Int
		minor := func(i, j int) *big.Int {
			return t3.Sub(t1.Mul(&m[i][b], &m[j][c]), t2.Mul(&m[j][b], &m[i][c]))
		}
		z.Mul(&m[0][a], minor(1, 2))
		z.Sub(z, t3.Mul(&m[1][a], minor(0, 2)))
		z.Add(z, t3.Mul(&m[2][a], minor(0, 1)))
	}
	f := new(fraction)
	det(&f.w, 0, 1, 2)
	det(&f.x[0], 3, 1, 2)
	det(&f.x[1], 0, 3, 2)
	det(&f.x[2], 0, 1, 3)
	if f.w.Sign() < 0 {
		f.w.Neg(&f.w)
		for k := range f.x {
			f.x[k].Neg(&f.x[k])
		}
	}
	return fractionVertex(f)
}
