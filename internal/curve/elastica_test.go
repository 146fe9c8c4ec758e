package curve

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// strip is half an elastica found without elliptic integrals: Runge and Kutta
// step the strip from its support until it lies along the chord. Its scale is
// that of λ = 1.
type strip struct {
	x, y, s, alpha float64
	path           []Point
}

// shoot integrates θ′ = −arm, x′ = cos θ, y′ = sin θ along the strip from the
// angle alpha at the support to θ = 0, where arm is the lever of the support's
// force.
func shoot(alpha float64, arm func(x, y float64) float64) strip {
	const h = 5e-4
	q := [3]float64{0, 0, alpha} // x, y, θ
	deriv := func(q [3]float64) [3]float64 {
		sin, cos := math.Sincos(q[2])
		return [3]float64{cos, sin, -arm(q[0], q[1])}
	}
	out := strip{alpha: alpha, path: []Point{{}}}
	for {
		next := rungeKutta(q, h, deriv)
		if next[2] <= 0 {
			break
		}
		q = next
		out.s += h
		out.path = append(out.path, Point{q[0], q[1]})
	}
	last := solve(func(h float64) (float64, float64) {
		n := rungeKutta(q, h, deriv)
		return n[2], -arm(n[0], n[1])
	}, 0, h)
	q = rungeKutta(q, last, deriv)
	out.x, out.y, out.s = q[0], q[1], out.s+last
	return out
}

func rungeKutta(q [3]float64, h float64, f func([3]float64) [3]float64) [3]float64 {
	add := func(q, k [3]float64, h float64) [3]float64 {
		return [3]float64{q[0] + h*k[0], q[1] + h*k[1], q[2] + h*k[2]}
	}
	a := f(q)
	b := f(add(q, a, h/2))
	c := f(add(q, b, h/2))
	d := f(add(q, c, h))
	for i := range q {
		q[i] += h / 6 * (a[i] + 2*b[i] + 2*c[i] + d[i])
	}
	return q
}

// square is a support that pushes square to the chord.
func square(float64) func(x, y float64) float64 {
	return func(x, _ float64) float64 { return x }
}

// slippery is a support without friction: it pushes square to the strip.
func slippery(alpha float64) func(x, y float64) float64 {
	sin, cos := math.Sincos(alpha)
	return func(x, y float64) float64 { return x*cos + y*sin }
}

// shootAt finds the strip with the given rise over half chord, by the secant
// rule on the end angle.
func shootAt(ratio float64, support func(float64) func(x, y float64) float64) strip {
	miss := func(a float64) float64 { s := shoot(a, support(a)); return s.y/s.x - ratio }
	a, b := 1.4*ratio, 1.5*ratio
	fa, fb := miss(a), miss(b)
	for range 30 {
		if math.Abs(fb) < 1e-14 || fa == fb {
			break
		}
		a, b, fa = b, min(b-fb*(b-a)/(fb-fa), 1.55), fb
		fb = miss(b)
	}
	return shoot(b, support(b))
}

// Two ways that share no formula agree on angle, ordinates and length.
func TestElasticaAgainstStepping(t *testing.T) {
	for _, ratio := range []float64{0.02, 0.1, 0.15, 0.2, 0.3, 0.4, 0.49} {
		l := newElastica(0, 1000, 1000*ratio)
		s := shootAt(2*ratio, square)
		scale := 500 / s.x
		testkit.Near(t, l.at(0).angle, s.alpha, 1e-9*s.alpha)
		testkit.Near(t, l.length(0, 500), s.s*scale, 1e-9*s.s*scale)
		testkit.Near(t, l.at(500).bend, s.x/scale, 1e-9*s.x/scale)
		for i := 0; i < len(s.path); i += 50 {
			p := s.path[i]
			testkit.Near(t, l.at(p.X*scale).y, p.Y*scale, 1e-9*1000*ratio)
		}
	}
}

// The law of the angle, sin θ = s(1−u²), comes from the moment alone; its
// integrals by Gauss's rule must be what the elliptic integrals say.
func TestElasticaAgainstQuadrature(t *testing.T) {
	for _, alpha := range []float64{0.1, 0.3, 0.6, 0.9, 1.2} {
		s := math.Sin(alpha)
		l := elasticaAt(0, 1, s)
		sin := func(u float64) float64 { return s * (1 - u*u) }
		for _, u := range []float64{0.1, 0.35, 0.7, 1} {
			rise := quad.Fixed(func(u float64) float64 { return sin(u) / math.Sqrt(1-sin(u)*sin(u)) }, 0, u, 200, quad.Legendre{}, 1)
			arc := quad.Fixed(func(u float64) float64 { return 1 / math.Sqrt(1-sin(u)*sin(u)) }, 0, u, 200, quad.Legendre{}, 1)
			testkit.Near(t, l.at(u).y, rise, 1e-12)
			testkit.Near(t, l.at(2-u).y, rise, 1e-12)
			testkit.Near(t, l.length(0, u), arc, 1e-12)
			testkit.Near(t, l.length(2-u, 2), arc, 1e-12)
		}
	}
}

// Half the strip is a cantilever with a load at its tip (Bisshopp and Drucker,
// Large deflection of cantilever beams, Quart. Appl. Math. 3, 1945). Figures:
// Mattiasson, Int. J. Numer. Meth. Eng. 17 (1981), table for the cantilever,
// from memory: PL²/EI, tip rise, tip draw-in, tip angle, over the length.
func TestElasticaIsTheTipLoadedCantilever(t *testing.T) {
	for _, tt := range []struct{ load, rise, draw, angle float64 }{
		{1, 0.30172, 0.05643, 0.46135},
		{2, 0.49346, 0.16064, 0.78175},
		{5, 0.71379, 0.38763, 1.21537},
		{10, 0.81061, 0.55500, 1.43029},
	} {
		alpha := solve(func(a float64) (float64, float64) {
			l := elasticaAt(0, 1, math.Sin(a))
			return math.Pow(l.length(0, 1)*l.root, 2) - tt.load, math.NaN()
		}, 0.01, 1.56)
		l := elasticaAt(0, 1, math.Sin(alpha))
		length := l.length(0, 1)
		testkit.Near(t, l.at(1).y/length, tt.rise, 0.6e-5)
		testkit.Near(t, 1-1/length, tt.draw, 0.6e-5)
		testkit.Near(t, alpha, tt.angle, 0.6e-5)
	}
}

// For small rises the elastica goes over into the beam shape; what is left
// falls with the square of rise/chord.
func TestElasticaTendsToBeam(t *testing.T) {
	apart := func(ratio float64) float64 { y, _ := apartAt(ratio); return y / ratio }
	for _, ratio := range []float64{0.08, 0.04, 0.02, 0.01} {
		quarter := apart(ratio) / apart(ratio/2)
		testkit.Near(t, quarter, 4, 0.35)
	}
	if a := apart(0.001); a > 1e-6 {
		t.Errorf("at a thousandth they still differ by %v of the rise", a)
	}
}

// apartAt is the greatest difference of elastica from beam over a chord of 1
// with the given rise, and where.
func apartAt(ratio float64) (most, at float64) {
	e, b := newElastica(0, 1, ratio), newBeam(0, 1, ratio)
	for x := 0.0; x <= 0.5; x += 0.001 {
		if d := e.at(x).y - b.at(x).y; math.Abs(d) > math.Abs(most) {
			most, at = d, x
		}
	}
	return most, at
}

// The figures the comment at beamOverRise and ELASTICA.md give.
func TestStepBetweenLaws(t *testing.T) {
	y, x := apartAt(0.1)
	e, b := newElastica(0, 1, 0.1), newBeam(0, 1, 0.1)
	testkit.Near(t, y, 0.00055, 0.000005)
	testkit.Near(t, x, 0.205, 0.005)
	testkit.Near(t, (e.at(0).angle-b.at(0).angle)*180/math.Pi, 0.22, 0.005)
	testkit.Near(t, b.at(0.5).bend/e.at(0.5).bend, 1.031, 0.0005)
	just := must(t, Spec{Kind: Batten, Chord: measure.Metre, Rise: measure.Metre / 10})
	over := must(t, Spec{Kind: Batten, Chord: measure.Metre, Rise: measure.Metre/10 + 1})
	if just.Law() != "bent batten, beam shape" || over.Law() != "bent batten, elastica" {
		t.Errorf("laws %q, %q", just.Law(), over.Law())
	}
	testkit.Near(t, over.Y(500), just.Y(500), 1e-5)
}

// How far a strip on frictionless supports would lie from ours, the figures
// ELASTICA.md gives.
func TestSlipperySupports(t *testing.T) {
	for _, tt := range []struct{ ratio, apart, endAngle float64 }{
		{0.1, 0.00013, 16.9}, {0.15, 0.00046, 24.9}, {0.2, 0.00113, 32.4}, {0.3, 0.00426, 45.5}, {0.4, 0.01149, 56.1},
	} {
		l := newElastica(0, 1, tt.ratio)
		s := shootAt(2*tt.ratio, slippery)
		scale := 0.5 / s.x
		most := 0.0
		for _, p := range s.path {
			d := p.Y*scale - l.at(p.X*scale).y
			if math.Abs(d) > math.Abs(most) {
				most = d
			}
		}
		testkit.Near(t, most, tt.apart, 0.000006)
		testkit.Near(t, l.at(0).angle*180/math.Pi, tt.endAngle, 0.05)
	}
}
