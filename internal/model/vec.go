package model

import "math"

// Vec is a place in millimetres, or a direction.
type Vec [3]float64

// Products below are converted on the spot: without it a compiler may fuse a
// product and a sum on some processors, and the last bit of a file would
// depend on the machine.

func (a Vec) plus(b Vec) Vec  { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a Vec) minus(b Vec) Vec { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a Vec) by(f float64) Vec {
	return Vec{float64(a[0] * f), float64(a[1] * f), float64(a[2] * f)}
}

func (a Vec) dot(b Vec) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

func (a Vec) cross(b Vec) Vec {
	return Vec{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}

func (a Vec) length() float64 { return math.Sqrt(a.dot(a)) }

// unit is a scaled to length 1; the zero Vec if a has no direction.
func (a Vec) unit() Vec {
	l := a.length()
	if l == 0 {
		return Vec{}
	}
	return Vec{a[0] / l, a[1] / l, a[2] / l}
}

// finite tells whether every coordinate is a number, and small enough that its
// cube is one too.
func (a Vec) finite() bool {
	for _, c := range a {
		if !(math.Abs(c) <= farthest) {
			return false
		}
	}
	return true
}

// farthest is the largest coordinate taken, in mm: a kilometre. No piece is
// larger, and single precision still tells a tenth of a millimetre there.
const farthest = 1e6
