package dxf

import "math"

// flattened is the curve as a polyline. In n equal steps of the parameter a
// chord lies within max|B″|/(8 n²) of its curve (linear interpolation), and
// |B″| of a cubic is at most six times the larger second difference of its
// control points.
func (c Curve) flattened() Polyline {
	line := Polyline{Layer: c.Layer, Corners: []Corner{{Point: c.Points[0]}}}
	for i := 0; i+3 < len(c.Points); i += 3 {
		p := c.Points[i : i+4]
		bend := 6 * math.Max(second(p[0], p[1], p[2]), second(p[1], p[2], p[3]))
		steps := max(1, int(math.Ceil(math.Sqrt(bend/(8*Chord)))))
		for k := 1; k < steps; k++ {
			line.add(bezier(p, float64(k)/float64(steps)))
		}
		line.add(p[3])
	}
	return line
}

// add leaves out what repeats the corner before.
func (l *Polyline) add(p Point) {
	if !same(l.Corners[len(l.Corners)-1].Point, p) {
		l.Corners = append(l.Corners, Corner{Point: p})
	}
}

func second(a, b, c Point) float64 { return math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y) }

func bezier(p []Point, t float64) Point {
	mix := func(a, b Point) Point {
		return Point{a.X + float64(t*(b.X-a.X)), a.Y + float64(t*(b.Y-a.Y))}
	}
	a, b, c := mix(p[0], p[1]), mix(p[1], p[2]), mix(p[2], p[3])
	return mix(mix(a, b), mix(b, c))
}

func (l Line) bounds() []Point   { return []Point{l.A, l.B} }
func (c Curve) bounds() []Point  { return c.Points }
func (c Circle) bounds() []Point { return around(c.Centre, c.Radius) }

// around is the box of a full circle.
func around(c Point, r float64) []Point {
	return []Point{{c.X - r, c.Y - r}, {c.X + r, c.Y + r}}
}

// bounds are the ends and whichever of the four outermost points of the circle
// the arc runs through.
func (a Arc) bounds() []Point {
	at := func(angle float64) Point {
		sin, cos := math.Sincos(angle)
		return Point{a.Centre.X + float64(a.Radius*cos), a.Centre.Y + float64(a.Radius*sin)}
	}
	box := []Point{at(a.From), at(a.To)}
	for q := range 4 {
		angle := float64(q) * math.Pi / 2
		if (Arc{From: a.From, To: angle}).sweep() < a.sweep() {
			box = append(box, at(angle))
		}
	}
	return box
}

func (l Polyline) bounds() []Point {
	var box []Point
	for i, c := range l.Corners {
		box = append(box, c.Point)
		if c.Bulge != 0 && (l.Closed || i+1 < len(l.Corners)) {
			box = append(box, bulging(c, l.Corners[(i+1)%len(l.Corners)].Point).bounds()...)
		}
	}
	return box
}

// bulging is the arc between two corners. The centre lies off the middle of
// the chord by chord × (1 − b²) / 4b, to the left of the way for a positive
// bulge; the radius is chord × (1 + b²) / 4|b|.
func bulging(c Corner, to Point) Arc {
	b := c.Bulge
	off := (1 - b*b) / (4 * b)
	dx, dy := to.X-c.X, to.Y-c.Y
	centre := Point{(c.X+to.X)/2 - float64(dy*off), (c.Y+to.Y)/2 + float64(dx*off)}
	a := Arc{Centre: centre, Radius: math.Hypot(dx, dy) * (1 + b*b) / (4 * math.Abs(b))}
	a.From = math.Atan2(c.Y-centre.Y, c.X-centre.X)
	a.To = math.Atan2(to.Y-centre.Y, to.X-centre.X)
	if b < 0 {
		a.From, a.To = a.To, a.From
	}
	return a
}

// bounds take a letter to be as wide as it is high: wider than any font has
// them on average.
func (t Text) bounds() []Point {
	long := t.Height * float64(len(ASCII(t.Text)))
	from := [...]float64{Left: 0, Middle: -long / 2, Right: -long}[t.Align]
	sin, cos := math.Sincos(t.Turn)
	var box []Point
	for _, x := range []float64{from, from + long} {
		for _, y := range []float64{-t.Height / 3, t.Height} {
			box = append(box, Point{
				t.At.X + float64(x*cos) - float64(y*sin),
				t.At.Y + float64(x*sin) + float64(y*cos),
			})
		}
	}
	return box
}

// box is the lower left and the upper right corner of everything.
func (d Drawing) box() (low, high Point) {
	low, high = Point{farthest, farthest}, Point{-farthest, -farthest}
	for _, it := range d.Items {
		for _, p := range it.bounds() {
			low = Point{math.Min(low.X, p.X), math.Min(low.Y, p.Y)}
			high = Point{math.Max(high.X, p.X), math.Max(high.Y, p.Y)}
		}
	}
	return low, high
}
