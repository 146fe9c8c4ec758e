package view

import "math"

// Vec3 is a point or a direction in space, in millimetres.
type Vec3 struct{ X, Y, Z float64 }

// Point2 is a place in the picture or in a cutting plane, in millimetres, y up.
type Point2 struct{ X, Y float64 }

func (a Vec3) plus(b Vec3) Vec3            { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec3) minus(b Vec3) Vec3           { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec3) times(k float64) Vec3        { return Vec3{k * a.X, k * a.Y, k * a.Z} }
func (a Vec3) dot(b Vec3) float64          { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a Vec3) toward(b Vec3) Vec3          { return b.minus(a) }
func (a Vec3) length() float64             { return math.Sqrt(a.dot(a)) }
func (a Vec3) lerp(b Vec3, k float64) Vec3 { return a.plus(a.toward(b).times(k)) }

func (a Vec3) cross(b Vec3) Vec3 {
	return Vec3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// unit is the direction of a; ok is false where a has none. It is scaled first:
// the squares of very short vectors have no digits left.
func (a Vec3) unit() (u Vec3, ok bool) {
	most := math.Max(math.Abs(a.X), math.Max(math.Abs(a.Y), math.Abs(a.Z)))
	if !(most > 0) || math.IsInf(most, 0) {
		return Vec3{}, false
	}
	a = Vec3{a.X / most, a.Y / most, a.Z / most}
	l := a.length()
	return Vec3{a.X / l, a.Y / l, a.Z / l}, true
}

func (a Vec3) finite() bool {
	// A sum of finite numbers this large is no furniture either.
	return math.Abs(a.X)+math.Abs(a.Y)+math.Abs(a.Z) < farthest
}

// farthest is where float64 no longer tells hundredths of a micrometre apart:
// beyond it, coordinates are taken for a mistake. In mm, so 100 km.
const farthest = 1e8

func (p Point2) minus(q Point2) Point2            { return Point2{p.X - q.X, p.Y - q.Y} }
func (p Point2) cross(q Point2) float64           { return p.X*q.Y - p.Y*q.X }
func (p Point2) dot(q Point2) float64             { return p.X*q.X + p.Y*q.Y }
func (p Point2) along(d Point2, k float64) Point2 { return Point2{p.X + k*d.X, p.Y + k*d.Y} }
func (p Point2) to(q Point2) float64              { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// Box is a space along the axes. The zero Box means "not measured".
type Box struct{ Min, Max Vec3 }

// Box2 is a rectangle of the picture.
type Box2 struct{ Min, Max Point2 }

func nowhere() Box2 {
	return Box2{Point2{math.Inf(1), math.Inf(1)}, Point2{math.Inf(-1), math.Inf(-1)}}
}

func (b *Box2) take(p Point2) {
	b.Min.X, b.Min.Y = math.Min(b.Min.X, p.X), math.Min(b.Min.Y, p.Y)
	b.Max.X, b.Max.Y = math.Max(b.Max.X, p.X), math.Max(b.Max.Y, p.Y)
}

func (b Box2) holds(p Point2) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

func (b Box2) empty() bool { return b.Min.X > b.Max.X }

// area of a ring, positive when it runs counter-clockwise.
func area(ring []Point2) float64 {
	var sum float64
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += p.minus(ring[0]).cross(q.minus(ring[0]))
	}
	return sum / 2
}

// odd reports whether p lies inside a ring by the even-odd rule, added to what
// other rings said before.
func odd(in bool, ring []Point2, p Point2) bool {
	if len(ring) == 0 {
		return in
	}
	a := ring[len(ring)-1]
	for _, b := range ring {
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
		a = b
	}
	return in
}
