package curve

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// elastica is the exact line of a thin strip that cannot stretch, on two
// supports that push square to the chord, loaded at the middle. ELASTICA.md
// derives it; the letters:
//
//	h   half the chord; w the rise
//	t   distance from the middle, u = 1 − |t|/h (0 at a support, 1 at the middle)
//	α   angle at the supports, s = sin α; θ angle at u: sin θ = s(1 − u²)
//	λ   support force over bending stiffness, = 2s/h²; bend = λ·h·u
//	m   parameter of the elliptic integrals, (1 + s)/2
//	φ   amplitude: cos φ = u·√(s/(1+s)), π/2 at a support, φ₀ at the middle
//	y   = [(F(π/2) − F(φ)) − 2(E(π/2) − E(φ))]/√λ
//	arc length from a support = (F(π/2) − F(φ))/√λ
//
// F and E are Legendre's incomplete integrals with parameter m = k².
type elastica struct {
	cx, h, sin, m float64
	root          float64 // √λ
	f, e          float64 // F(π/2), E(π/2)
}

// newElastica finds the end angle that gives the rise. The rise grows with
// the angle, from none to without limit as the ends turn square.
func newElastica(left, chord, rise float64) elastica {
	h := chord / 2
	miss := func(alpha float64) float64 {
		l := elasticaAt(left, h, math.Sin(alpha))
		return l.at(l.cx).y - rise
	}
	alpha := solve(func(a float64) (float64, float64) {
		// A central difference is only a guide for the Newton step.
		const da = 1e-5
		return miss(a), (miss(a+da) - miss(a-da)) / (2 * da)
	}, 1e-4*rise/chord, math.Pi/2-1e-4)
	return elasticaAt(left, h, math.Sin(alpha))
}

func elasticaAt(left, h, sin float64) elastica {
	m := (1 + sin) / 2
	return elastica{
		cx: left + h, h: h, sin: sin, m: m,
		root: math.Sqrt(2*sin) / h,
		// Not CompleteK and CompleteE: the same routine at both limits makes
		// the ordinate at a support exactly zero.
		f: mathext.EllipticF(math.Pi/2, m),
		e: mathext.EllipticE(math.Pi/2, m),
	}
}

// place gives u and φ at x.
func (l elastica) place(x float64) (u, phi float64) {
	u = min(max(1-math.Abs(x-l.cx)/l.h, 0), 1)
	return u, math.Acos(u * math.Sqrt(l.sin/(1+l.sin)))
}

func (l elastica) at(x float64) spot {
	u, phi := l.place(x)
	f := l.f - mathext.EllipticF(phi, l.m)
	e := l.e - mathext.EllipticE(phi, l.m)
	return spot{
		y:     (f - 2*e) / l.root,
		angle: -math.Copysign(math.Asin(l.sin*(1-u*u)), x-l.cx),
		bend:  2 * l.sin * u / l.h,
	}
}

func (l elastica) length(x0, x1 float64) float64 { return l.arcTo(x1) - l.arcTo(x0) }

// arcTo is the arc length from the left support to x.
func (l elastica) arcTo(x float64) float64 {
	_, phi := l.place(x)
	part := (l.f - mathext.EllipticF(phi, l.m)) / l.root
	if x <= l.cx {
		return part
	}
	half := (l.f - mathext.EllipticF(math.Acos(math.Sqrt(l.sin/(1+l.sin))), l.m)) / l.root
	return 2*half - part
}

func (l elastica) tightest(x0, x1 float64) float64 { return min(max(l.cx, x0), x1) }

func (l elastica) offset(d float64) line { return parallelTo{l, d, l.cx - l.h, l.cx + l.h} }
