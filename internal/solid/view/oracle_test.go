package view

import (
	"math"
	"testing"

	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// reporter is what testing.TB and rapid.T have in common here.
type reporter interface {
	Helper()
	Errorf(format string, args ...any)
}

// sightline is a camera with what the oracle needs to cast rays by itself: it
// shares nothing with the code under test but [Camera.Picture] and the axes,
// which known_test.go pins.
type sightline struct {
	name string
	cam  Camera
	eye  *Vec3 // nil for parallel sight
}

// toEye is the direction from a point of space to the eye.
func (s sightline) toEye(p Vec3) Vec3 {
	_, _, away := s.cam.Axes()
	d := away.times(-1)
	if s.eye != nil {
		d, _ = p.toward(*s.eye).unit()
	}
	return d
}

// hit is how far along a ray it meets a face, +Inf if it does not. The face's
// plane is met first, then the point is looked for in the outline seen along
// the axis nearest to the normal.
func hit(f *Face, from, d Vec3) float64 {
	n := winding(f.Outer)
	down := n.dot(d)
	if math.Abs(down) < 1e-9*n.length() {
		return math.Inf(1)
	}
	k := n.dot(from.toward(f.Outer[0])) / down
	p := from.plus(d.times(k))
	in := false
	for _, r := range f.rings() {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			ax, ay := dropped(n, a)
			bx, by := dropped(n, b)
			px, py := dropped(n, p)
			if (ay > py) != (by > py) && (px-ax)*(by-ay)*sign(by-ay) < (py-ay)*(bx-ax)*sign(by-ay) {
				in = !in
			}
		}
	}
	if !in {
		return math.Inf(1)
	}
	return k
}

func sign(x float64) float64 { return math.Copysign(1, x) }

func dropped(n, p Vec3) (x, y float64) {
	switch ax, ay, az := math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z); {
	case ax >= ay && ax >= az:
		return p.Y, p.Z
	case ay >= az:
		return p.X, p.Z
	}
	return p.X, p.Y
}

// blocked tells whether wood stands between a point and the eye.
func (s sightline) blocked(bodies []Body, from Vec3) bool {
	d := s.toEye(from)
	for i := range bodies {
		for f := range bodies[i].Faces {
			if k := hit(&bodies[i].Faces[f], from, d); k > 0 && !math.IsInf(k, 1) {
				return true
			}
		}
	}
	return false
}

// seen tells whether a point of an edge is seen: from one side of the edge or
// the other there is a free sight of it. One looks from just off the edge and
// a little nearer, so that the faces which meet there do not count.
func (s sightline) seen(bodies []Body, p, along Vec3) bool {
	d := s.toEye(p)
	across, ok := d.cross(along).unit()
	if !ok {
		return false
	}
	const off, nearer = 1e-4, 0.05
	for _, side := range [2]float64{off, -off} {
		if !s.blocked(bodies, p.plus(across.times(side)).plus(d.times(nearer))) {
			return true
		}
	}
	return false
}

// rim is one side of one face, in space and in the picture.
type rim struct {
	a, b   Vec3
	pa, pb Point2
}

func (s sightline) rims(bodies []Body) (out []rim) {
	for _, b := range bodies {
		for _, f := range b.Faces {
			for _, r := range f.rings() {
				for i, a := range r {
					c := r[(i+1)%len(r)]
					pa, _, _ := s.cam.Picture(a)
					pc, _, _ := s.cam.Picture(c)
					if pa.to(pc) > 1e-3 {
						out = append(out, rim{a, c, pa, pc})
					}
				}
			}
		}
	}
	return out
}

// from is the distance of p from a stretch of the picture, and how far along
// it the nearest place is, 0 to 1.
func from(p, a, b Point2) (dist, k float64) {
	d := b.minus(a)
	k = math.Max(0, math.Min(1, d.dot(p.minus(a))/d.dot(d)))
	return p.to(a.along(d, k)), k
}

// along tells whether b keeps within a distance of the line through a.
func (a rim) along(b rim, off float64) bool {
	d := a.pb.minus(a.pa)
	long := math.Hypot(d.X, d.Y)
	return math.Abs(d.cross(b.pa.minus(a.pa))) < off*long && math.Abs(d.cross(b.pb.minus(a.pa))) < off*long
}

// parallel tells whether b runs along a, as far as the drawing can tell.
func (a rim) parallel(b rim) bool { return a.along(b, 2e-3) }

// doubled tells that another rim runs along this one in the picture without
// being in the same place: where such a line is drawn as one or as two, and
// which of them covers what, is left to the drawing.
func (r rim) doubled(rims []rim) bool {
	for _, o := range rims {
		if r.along(o, 0.05) && !r.along(o, 1e-5) {
			return true
		}
	}
	return false
}

// above is the point of the rim in space that appears at a place: where the
// line of sight through q, which appears there, comes nearest to it.
func (a rim) above(s sightline, q Vec3) Vec3 {
	u, w := a.a.toward(a.b), s.toEye(q)
	n := w.cross(u.cross(w))
	return a.a.plus(u.times(n.dot(a.a.toward(q)) / n.dot(u)))
}

const cloudy = 0.1 // mm of the picture: nearer to another line the oracle says nothing

// ask holds the drawing against the oracle at one point of a rim.
func (s sightline) ask(t reporter, bodies []Body, rims []rim, lines []Line, r rim, k float64) {
	t.Helper()
	q := r.a.lerp(r.b, k)
	p, _, _ := s.cam.Picture(q)
	expect := false
	for _, o := range rims {
		dist, at := from(p, o.pa, o.pb)
		if dist > cloudy {
			continue
		}
		if !r.parallel(o) || at == 0 || at == 1 {
			return
		}
		expect = expect || s.seen(bodies, o.above(s, q), o.a.toward(o.b))
	}
	var over []Line
	for _, l := range lines {
		if dist, _ := from(p, l.A, l.B); dist < 2e-3 {
			over = append(over, l)
		}
	}
	if len(over) != 1 || over[0].Hidden == expect {
		t.Errorf("%s: at %v, point %v of the edge %v to %v: seen is %v, drawn are %+v", s.name, p, q, r.a, r.b, expect, over)
	}
}

// whole checks that the lines along a rim cover it once, without gap or lap.
func whole(t reporter, r rim, lines []Line) {
	t.Helper()
	long := r.pa.to(r.pb)
	d := r.pb.minus(r.pa)
	var sum float64
	for _, l := range lines {
		if !r.parallel(rim{pa: l.A, pb: l.B}) {
			continue
		}
		a, b := d.dot(l.A.minus(r.pa))/long, d.dot(l.B.minus(r.pa))/long
		a, b = math.Max(0, math.Min(a, b)), math.Min(long, math.Max(a, b))
		sum += math.Max(0, b-a)
	}
	if math.Abs(sum-long) > 0.1 { // where lines cross at a very flat angle either may have the last bit
		t.Errorf("the edge %v to %v is %v long in the picture, its lines %v together", r.a, r.b, long, sum)
	}
}

// scenery of random boards: a block is sawn apart by planes on a 5 mm lattice,
// so that pieces touch in every way; some are left out, shortened or bored.
func drawScene(t *rapid.T) []Body {
	var out []Body
	split := rapid.IntRange(0, 5)
	var saw func(lo, hi [3]int, left int)
	saw = func(lo, hi [3]int, left int) {
		axis := split.Draw(t, "axis")
		if left == 0 || axis > 2 || hi[axis]-lo[axis] < 4 {
			if b, ok := drawBoard(t, len(out), lo, hi); ok {
				out = append(out, b)
			}
			return
		}
		at := rapid.IntRange(lo[axis]+1, hi[axis]-1).Draw(t, "at")
		mid, rest := hi, lo
		mid[axis], rest[axis] = at, at
		saw(lo, mid, left-1)
		saw(rest, hi, left-1)
	}
	saw([3]int{}, [3]int{24, 16, 20}, 4)
	return out
}

func drawBoard(t *rapid.T, id int, lo, hi [3]int) (Body, bool) {
	what := rapid.IntRange(0, 9).Draw(t, "what")
	if what == 0 {
		return Body{}, false
	}
	if what == 1 && hi[1]-lo[1] > 2 {
		lo[1]++
	}
	if what == 2 && hi[2]-lo[2] > 2 {
		hi[2]--
	}
	at := func(i int) float64 { return 5 * float64(i) }
	x0, y0, z0, x1, y1, z1 := at(lo[0]), at(lo[1]), at(lo[2]), at(hi[0]), at(hi[1]), at(hi[2])
	if what == 3 && hi[0]-lo[0] > 2 && hi[2]-lo[2] > 2 {
		return boredBox(id, x0, y0, z0, x1, y1, z1, rect(x0+5, z0+5, x1-5, z1-5)), true
	}
	return box(id, x0, y0, z0, x1, y1, z1), true
}

func drawSight(t *rapid.T) sightline {
	small := rapid.IntRange(-5, 5)
	switch rapid.IntRange(0, 3).Draw(t, "camera") {
	case 0:
		side := Side(rapid.IntRange(0, 5).Draw(t, "side"))
		return sightline{"square on", From(side), nil}
	case 1:
		return sightline{"isometric", Isometric(Side(rapid.IntRange(2, 3).Draw(t, "side"))), nil}
	case 2:
		away := Vec3{float64(small.Draw(t, "x")), float64(small.Draw(t, "y")), float64(small.Draw(t, "z"))}
		if away == (Vec3{}) {
			away.Y = 1
		}
		c, err := Looking(away, Vec3{})
		if err != nil {
			t.Fatal(err)
		}
		return sightline{"oblique", c, nil}
	}
	// Off the lattice, so that no face is seen exactly from its edge.
	coordinate := func(name string) float64 { return 5*float64(rapid.IntRange(-60, 90).Draw(t, name)) + 2.3 }
	eye := Vec3{coordinate("x"), -5*float64(rapid.IntRange(40, 120).Draw(t, "y")) - 1.7, coordinate("z")}
	c, err := Perspective(eye, Vec3{60, 40, 50}, Vec3{})
	if err != nil {
		t.Fatal(err)
	}
	return sightline{"perspective", c, &eye}
}

// TestAgainstRays: every edge is drawn over its whole length exactly once, and
// seen or hidden as rays cast at it say.
func TestAgainstRays(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		bodies, s := drawScene(t), drawSight(t)
		d := Project(bodies, s.cam, hidden)
		rims := s.rims(bodies)
		for _, r := range rims {
			if r.doubled(rims) {
				continue
			}
			whole(t, r, d.Lines)
			s.ask(t, bodies, rims, d.Lines, r, rapid.Float64Range(0.01, 0.99).Draw(t, "k"))
		}
	})
}

// TestJointsAgainstRays is the same on what joiners make.
func TestJointsAgainstRays(t *testing.T) {
	joint := dovetail{width: 120, thickness: 18, long: 160, tails: 3, slope: 1.0 / 7}
	bodies := []Body{joint.tailBoard(1), joint.pinBoard(2), box(3, 18, 10, 60, 150, 120, 78), box(4, 60, -10, 0, 90, 0, 200)}
	testkit.Check(t, func(t *rapid.T) {
		s := drawSight(t)
		d := Project(bodies, s.cam, hidden)
		rims := s.rims(bodies)
		for _, r := range rims {
			if r.doubled(rims) {
				continue
			}
			whole(t, r, d.Lines)
			s.ask(t, bodies, rims, d.Lines, r, rapid.Float64Range(0.01, 0.99).Draw(t, "k"))
		}
	})
}

// foremost is the body and tag of the face met first by the sight through a
// place of the picture; the body is -1 where there is none.
func (s sightline) foremost(bodies []Body, p Point2) (body, tag int) {
	right, up, away := s.cam.Axes()
	target := s.cam.target
	on := target.plus(right.times(p.X / s.cam.zoom())).plus(up.times(p.Y / s.cam.zoom()))
	start, d := on.minus(away.times(1e4)), away
	if s.eye != nil {
		start = *s.eye
		d, _ = start.toward(on).unit()
	}
	body, best := -1, math.Inf(1)
	for i := range bodies {
		for f := range bodies[i].Faces {
			if k := hit(&bodies[i].Faces[f], start, d); k > 0 && k < best {
				best, body, tag = k, bodies[i].ID, bodies[i].Faces[f].Tag
			}
		}
	}
	return body, tag
}

// TestFillsAgainstRays: at any place of the picture there is one fill, that of
// the face a ray meets first, or none.
func TestFillsAgainstRays(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		bodies, s := drawScene(t), drawSight(t)
		s.askFills(t, bodies)
	})
}

// TestFillsOfCurvesAgainstRays is the same where parts follow one curve, each
// with its own facets, and miss it by what sampling it anew makes of it.
func TestFillsOfCurvesAgainstRays(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		var bodies []Body
		for i := range 4 {
			off := rapid.Float64Range(-0.002, 0.002).Draw(t, "off")
			facets := rapid.IntRange(6, 60).Draw(t, "facets")
			bodies = append(bodies, bowRail(i, Vec3{0, off, 20 * float64(i)}, 120, 15, 60, 20, facets))
		}
		bodies = append(bodies, box(5, -20, 0, 0, 0, 60, 100), box(6, 120, 0, 0, 140, 60, 100))
		drawSight(t).askFills(t, bodies)
	})
}

func (s sightline) askFills(t *rapid.T, bodies []Body) {
	d := Project(bodies, s.cam, Options{Fills: true})
	rims := s.rims(bodies)
	for range 20 {
		p := Point2{
			rapid.Float64Range(d.Bounds.Min.X-5, d.Bounds.Max.X+5).Draw(t, "x"),
			rapid.Float64Range(d.Bounds.Min.Y-5, d.Bounds.Max.Y+5).Draw(t, "y"),
		}
		if clouded(p, rims) {
			continue
		}
		body, tag := s.foremost(bodies, p)
		want := 1
		if body < 0 {
			want = 0
		}
		var over []Fill
		for _, f := range d.Fills {
			if f.holds(p) {
				over = append(over, f)
			}
		}
		if len(over) != want || want == 1 && (over[0].Body != body || over[0].Tag != tag) {
			t.Errorf("%s: at %v a ray meets body %d, tag %d; %d fills are there", s.name, p, body, tag, len(over))
		}
	}
}

func clouded(p Point2, rims []rim) bool {
	for _, r := range rims {
		if dist, _ := from(p, r.pa, r.pb); dist < cloudy {
			return true
		}
	}
	return false
}

func (f Fill) holds(p Point2) bool {
	in := odd(false, f.Outer, p)
	for _, h := range f.Holes {
		in = odd(in, h, p)
	}
	return in
}
