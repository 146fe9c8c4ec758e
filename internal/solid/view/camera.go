package view

import (
	"errors"
	"math"
)

// Camera says from where a picture is taken. The zero Camera looks square at
// the front. Cameras are values and never change.
type Camera struct {
	right, up, away Vec3 // unit and square to each other; all zero means front
	target          Vec3
	distance        float64 // eye to target; 0 for parallel sight
	scale           float64 // picture mm per mm; 0 means 1
	near            float64 // nothing nearer the eye than this is drawn
}

// Side is one of the six directions a case piece is drawn from.
type Side int

// The six sides, named for where the eye is.
const (
	Front Side = iota
	Back
	Left
	Right
	Top
	Bottom
)

// sides are what runs right, up and away in each picture. Seen from the right,
// the front of the piece is at the left of the picture; seen from above it is
// at the bottom, from below at the top.
var sides = [...][3]Vec3{
	Front:  {{1, 0, 0}, {0, 0, 1}, {0, 1, 0}},
	Back:   {{-1, 0, 0}, {0, 0, 1}, {0, -1, 0}},
	Left:   {{0, -1, 0}, {0, 0, 1}, {1, 0, 0}},
	Right:  {{0, 1, 0}, {0, 0, 1}, {-1, 0, 0}},
	Top:    {{1, 0, 0}, {0, 1, 0}, {0, 0, -1}},
	Bottom: {{1, 0, 0}, {0, -1, 0}, {0, 0, 1}},
}

// From looks square at one side; anything else than the six is the front.
// Coordinates of the picture are those of space, without rounding.
func From(s Side) Camera {
	if s < Front || s > Bottom {
		s = Front
	}
	a := sides[s]
	return Camera{right: a[0], up: a[1], away: a[2]}
}

// ErrNoSight is returned where a camera was given no direction to look in.
var ErrNoSight = errors.New("view: the eye looks nowhere")

// Looking sees by parallel rays along a direction. What points along up in
// space points up in the picture as far as it can; up may be zero or along the
// sight, then z is up, and y where one looks straight down or up (as in
// [Top] and [Bottom]). A direction without length is [ErrNoSight].
func Looking(away, up Vec3) (Camera, error) {
	d, ok := away.unit()
	if !ok {
		return Camera{}, ErrNoSight
	}
	r, u := upright(d, up)
	return Camera{right: r, up: u, away: d}, nil
}

// upright is what runs to the right and up when one looks along d.
func upright(d, up Vec3) (right, above Vec3) {
	for _, try := range []Vec3{up, {0, 0, 1}, {0, -d.Z, 0}} {
		t, ok := try.unit()
		if !ok {
			continue
		}
		if c := d.cross(t); c.length() > 1e-9 {
			right, _ = c.unit()
			return right, right.cross(d)
		}
	}
	return Vec3{1, 0, 0}, Vec3{0, 0, 1} // not reached: d has a length
}

// Isometric sees the front, one end and the top under equal angles. The end is
// the right one, unless s is Left. Lines along the three axes have their true
// length, as in an isometric drawing (a parallel projection of that pose would
// shorten them by √(2/3)).
func Isometric(s Side) Camera {
	d := Vec3{-1, 1, -1}
	if s == Left {
		d.X = 1
	}
	c, _ := Looking(d, Vec3{0, 0, 1}) // d has a length
	return c.Scaled(math.Sqrt(1.5))
}

// nearest is how close to the eye things are drawn in perspective unless said:
// a twentieth of the distance to the target, so that nothing is magnified more
// than twenty times. Our choice.
const nearest = 1.0 / 20

// Perspective sees from an eye point toward a target, which appears at the
// picture's origin; up as in [Looking]. The picture is taken at the target's
// distance: what stands there is full size. A target at the eye is
// [ErrNoSight].
func Perspective(eye, target, up Vec3) (Camera, error) {
	c, err := Looking(eye.toward(target), up)
	if err != nil {
		return Camera{}, err
	}
	c.target = target
	c.distance = eye.toward(target).length()
	c.near = nearest * c.distance
	return c, nil
}

// Standing is a perspective from an eye at a height above the floor (z = 0),
// standing at a place of it, looking at a target. Only x and y of the place
// count.
func Standing(place Vec3, eyeHeight float64, target Vec3) (Camera, error) {
	return Perspective(Vec3{place.X, place.Y, eyeHeight}, target, Vec3{0, 0, 1})
}

// At has the target at the picture's origin, and counts depth from there. Only
// for parallel sight; a perspective is returned as it is.
func (c Camera) At(target Vec3) Camera {
	if c.distance == 0 {
		c.target = target
	}
	return c
}

// Scaled draws everything k times as large; k must be positive, else nothing
// changes.
func (c Camera) Scaled(k float64) Camera {
	if k > 0 && !math.IsInf(k, 0) {
		c.scale = c.zoom() * k
	}
	return c
}

// Near draws nothing that is closer to the eye than d, measured along the
// sight; a body that reaches closer is cut there. Only for perspective, and
// only for d above zero.
func (c Camera) Near(d float64) Camera {
	if c.distance > 0 && d > 0 && !math.IsInf(d, 0) {
		c.near = d
	}
	return c
}

// Picture is where a point of space appears, and its depth: the distance
// behind the target along the sight. ok is false for what is behind the eye,
// closer than the near limit, or not a place.
func (c Camera) Picture(p Vec3) (at Point2, depth float64, ok bool) {
	c = c.ready()
	v := c.sight(p)
	if !p.finite() || c.distance > 0 && c.distance+v.Z < c.near {
		return Point2{}, 0, false
	}
	at, _ = c.lens(v)
	return at, v.Z, true
}

// Axes are the directions of space that run right, up and away from the eye in
// the middle of the picture; each has length 1.
func (c Camera) Axes() (right, up, away Vec3) {
	c = c.ready()
	return c.right, c.up, c.away
}

func (c Camera) zoom() float64 {
	if c.scale == 0 {
		return 1
	}
	return c.scale
}

func (c Camera) ready() Camera {
	if c.away == (Vec3{}) {
		a := sides[Front]
		c.right, c.up, c.away = a[0], a[1], a[2]
	}
	c.scale = c.zoom()
	return c
}

// sight turns a point of space into the camera's frame: x right, y up, z away,
// from the target.
func (c *Camera) sight(p Vec3) Vec3 {
	d := p.minus(c.target)
	return Vec3{c.right.dot(d), c.up.dot(d), c.away.dot(d)}
}

// turn is sight for directions.
func (c *Camera) turn(d Vec3) Vec3 { return Vec3{c.right.dot(d), c.up.dot(d), c.away.dot(d)} }

// lens takes a point of the camera's frame into the picture. The third
// coordinate t is made so that lines stay lines and planes stay planes: for an
// eye at distance D it is D·z/(D+z), which grows with depth, equals it near
// the target and tends to it for a far eye. With parallel sight t is z.
func (c *Camera) lens(v Vec3) (at Point2, t float64) {
	if c.distance == 0 {
		return Point2{c.scale * v.X, c.scale * v.Y}, v.Z
	}
	k := c.distance / (c.distance + v.Z)
	return Point2{c.scale * k * v.X, c.scale * k * v.Y}, k * v.Z
}

// unlens is lens the other way.
func (c *Camera) unlens(at Point2, t float64) Vec3 {
	x, y := at.X/c.scale, at.Y/c.scale
	if c.distance == 0 {
		return Vec3{x, y, t}
	}
	z := c.distance * t / (c.distance - t)
	k := (c.distance + z) / c.distance
	return Vec3{k * x, k * y, z}
}

// thickness is what a distance of d along the sight at t amounts to in t.
func (c *Camera) thickness(t, d float64) float64 {
	if c.distance == 0 {
		return d
	}
	k := (c.distance - t) / c.distance
	return d * k * k
}

// plane is a face's plane as the picture sees it: t there is (k − a·x − b·y)/q.
// q is the cosine between normal and sight, for a perspective the eye's
// distance from the plane over its distance from the target; negative where
// the face shows its front.
type plane struct {
	n       Vec3 // in the camera's frame
	k       float64
	a, b, q float64
}

func (c *Camera) plane(normal, on Vec3) plane {
	n := c.turn(normal)
	p := plane{n: n, k: n.dot(c.sight(on)), q: n.Z}
	if c.distance > 0 {
		p.q += p.k / c.distance
	}
	p.a, p.b = n.X/c.scale, n.Y/c.scale
	return p
}

func (p *plane) t(at Point2) float64 { return (p.k - p.a*at.X - p.b*at.Y) / p.q }

// off is how far a point of the camera's frame stands before the plane.
func (p *plane) off(v Vec3) float64 { return p.n.dot(v) - p.k }
