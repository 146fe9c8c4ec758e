package view

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"casewright/internal/testkit"
)

// told writes lines short enough to be derived by hand: kind, body, ends;
// hidden ones begin with a dash. Sorted as text.
func told(lines []Line) []string {
	out := []string{}
	for _, l := range lines {
		s := fmt.Sprintf("%s %d: %g %g to %g %g", l.Kind, l.Body, l.A.X, l.A.Y, l.B.X, l.B.Y)
		if l.Hidden {
			s = "- " + s
		}
		out = append(out, s)
	}
	slices.Sort(out)
	return out
}

func wantLines(t *testing.T, d Drawing, want ...string) {
	t.Helper()
	slices.Sort(want)
	testkit.Diff(t, want, told(d.Lines))
}

var hidden = Options{Hidden: true}

func TestKnown(t *testing.T) {
	joint := dovetail{width: 80, thickness: 14, long: 100, tails: 2, slope: 1.0 / 7}
	for _, c := range []struct {
		name   string
		bodies []Body
		cam    Camera
		opts   Options
		want   []string
	}{
		{"one box: all that is hidden lies behind what is seen",
			[]Body{box(1, 0, 0, 0, 30, 20, 10)}, From(Front), hidden, []string{
				"outline 1: 0 0 to 30 0", "outline 1: 0 10 to 30 10", "outline 1: 0 0 to 0 10", "outline 1: 30 0 to 30 10"}},
		{"from the right the front is at the left",
			[]Body{box(1, 0, 0, 0, 30, 20, 10)}, From(Right), hidden, []string{
				"outline 1: 0 0 to 20 0", "outline 1: 0 10 to 20 10", "outline 1: 0 0 to 0 10", "outline 1: 20 0 to 20 10"}},
		{"a box behind a box is dashed where it is covered",
			[]Body{box(1, 0, 0, 0, 100, 10, 100), box(2, 50, 40, 50, 150, 60, 150)}, From(Front), hidden, []string{
				"outline 1: 0 0 to 100 0", "outline 1: 0 100 to 100 100", "outline 1: 0 0 to 0 100", "outline 1: 100 0 to 100 100",
				"outline 2: 100 50 to 150 50", "outline 2: 50 150 to 150 150", "outline 2: 50 100 to 50 150", "outline 2: 150 50 to 150 150",
				"- outline 2: 50 50 to 100 50", "- outline 2: 50 50 to 50 100"}},
		{"hidden lines of one body only",
			[]Body{box(1, 0, 0, 0, 100, 10, 100), box(2, 50, 40, 50, 60, 60, 60), box(3, 20, 40, 20, 30, 60, 30)}, From(Front),
			Options{Hidden: true, HiddenOf: []int{3}}, []string{
				"outline 1: 0 0 to 100 0", "outline 1: 0 100 to 100 100", "outline 1: 0 0 to 0 100", "outline 1: 100 0 to 100 100",
				"- outline 3: 20 20 to 30 20", "- outline 3: 20 30 to 30 30", "- outline 3: 20 20 to 20 30", "- outline 3: 30 20 to 30 30"}},
		{"a board is seen through a hole",
			[]Body{boredBox(1, 0, 0, 0, 100, 10, 100, rect(30, 30, 70, 70)), box(2, -20, 40, 50, 120, 60, 60)}, From(Front), Options{}, []string{
				"outline 1: 0 0 to 100 0", "outline 1: 0 100 to 100 100", "outline 1: 0 0 to 0 100", "outline 1: 100 0 to 100 100",
				"outline 1: 30 30 to 70 30", "outline 1: 30 70 to 70 70", "outline 1: 30 30 to 30 70", "outline 1: 70 30 to 70 70",
				"outline 2: -20 50 to 0 50", "outline 2: -20 60 to 0 60", "outline 2: -20 50 to -20 60",
				"outline 2: 30 50 to 70 50", "outline 2: 30 60 to 70 60",
				"outline 2: 100 50 to 120 50", "outline 2: 100 60 to 120 60", "outline 2: 120 50 to 120 60"}},
		{"the line between flush boards is a joint",
			[]Body{box(1, 0, 0, 0, 40, 20, 10), box(2, 40, 0, 0, 70, 30, 10)}, From(Front), hidden, []string{
				"outline 1: 0 0 to 40 0", "outline 1: 0 10 to 40 10", "outline 1: 0 0 to 0 10", "joint 1: 40 0 to 40 10",
				"outline 2: 40 0 to 70 0", "outline 2: 40 10 to 70 10", "outline 2: 70 0 to 70 10"}},
		{"a board set back by a hundredth is behind",
			[]Body{box(1, 0, 0, 0, 40, 20, 10), box(2, 40, 0.01, 0, 70, 30, 10)}, From(Front), Options{}, []string{
				"outline 1: 0 0 to 40 0", "outline 1: 0 10 to 40 10", "outline 1: 0 0 to 0 10", "outline 1: 40 0 to 40 10",
				"outline 2: 40 0 to 70 0", "outline 2: 40 10 to 70 10", "outline 2: 70 0 to 70 10"}},
		{"a shelf between sides from above: its ends are joints, the rest of the sides' edge is not",
			[]Body{box(1, 0, 0, 0, 10, 50, 80), box(2, 10, 0, 80, 60, 50, 90)}, From(Top), Options{}, []string{
				"outline 1: 0 0 to 10 0", "outline 1: 0 50 to 10 50", "outline 1: 0 0 to 0 50",
				"outline 2: 10 0 to 60 0", "outline 2: 10 50 to 60 50", "outline 2: 10 0 to 10 50", "outline 2: 60 0 to 60 50"}},
		{"a box on a board, set back: the board's edge is one line",
			[]Body{box(1, 0, 0, 0, 100, 100, 10), box(2, 0, 50, 10, 30, 100, 40)}, From(Front), hidden, []string{
				"outline 1: 0 0 to 100 0", "outline 1: 0 10 to 100 10", "outline 1: 0 0 to 0 10", "outline 1: 100 0 to 100 10",
				"outline 2: 0 10 to 0 40", "outline 2: 0 40 to 30 40", "outline 2: 30 10 to 30 40"}},
		{"a curve shows no facets", []Body{bowRail(1, Vec3{0, 0, 0}, 200, 20, 30, 40, 16)}, From(Front), hidden, []string{
			"outline 1: 0 0 to 200 0", "outline 1: 0 40 to 200 40", "outline 1: 0 0 to 0 40", "outline 1: 200 0 to 200 40"}},
		{"a panel in the grooves of two stiles: its edges and the groove are dashed once",
			[]Body{stile(1, false), stile(2, true), box(3, 30, 7, 0, 110, 13, 90)}, From(Front), hidden, []string{
				"outline 1: 0 0 to 40 0", "outline 1: 0 90 to 40 90", "outline 1: 0 0 to 0 90", "outline 1: 40 0 to 40 90",
				"outline 2: 100 0 to 140 0", "outline 2: 100 90 to 140 90", "outline 2: 100 0 to 100 90", "outline 2: 140 0 to 140 90",
				"outline 3: 40 0 to 100 0", "outline 3: 40 90 to 100 90",
				"- edge 1: 30 0 to 30 90", "- edge 2: 110 0 to 110 90"}}, // as near as the panel's, and of lower ID
		{"and from above the panel is seen in them",
			[]Body{stile(1, false), stile(2, true), box(3, 30, 7, 0, 110, 13, 90)}, From(Top), hidden, []string{
				"outline 1: 0 0 to 40 0", "outline 1: 0 20 to 40 20", "outline 1: 0 0 to 0 20",
				"outline 1: 40 0 to 40 7", "outline 1: 40 13 to 40 20",
				"outline 2: 100 0 to 140 0", "outline 2: 100 20 to 140 20", "outline 2: 140 0 to 140 20",
				"outline 2: 100 0 to 100 7", "outline 2: 100 13 to 100 20",
				"joint 1: 30 7 to 40 7", "joint 1: 30 13 to 40 13", "joint 1: 30 7 to 30 13",
				"joint 2: 100 7 to 110 7", "joint 2: 100 13 to 110 13", "joint 2: 110 7 to 110 13",
				"outline 3: 40 7 to 100 7", "outline 3: 40 13 to 100 13"}},
		{"faces of one plane are one", []Body{parted(1)}, From(Top), hidden, []string{
			"outline 1: 0 0 to 30 0", "outline 1: 0 20 to 30 20", "outline 1: 0 0 to 0 20", "outline 1: 30 0 to 30 20"}},
		// Tails 30 wide at the root (pitch 40 less 10) and 34 at the end; both
		// boards flush. Seen from the end, x runs toward the front (y mirrored).
		{"dovetails from above", []Body{joint.tailBoard(1), joint.pinBoard(2)}, From(Top), Options{}, []string{
			"outline 1: 0 3 to 0 37", "outline 1: 0 43 to 0 77", "outline 1: 14 0 to 100 0", "outline 1: 14 80 to 100 80", "outline 1: 100 0 to 100 80",
			"outline 2: 0 0 to 0 3", "outline 2: 0 37 to 0 43", "outline 2: 0 77 to 0 80", "outline 2: 0 0 to 14 0", "outline 2: 0 80 to 14 80",
			"joint 1: 0 3 to 14 5", "joint 1: 0 37 to 14 35", "joint 1: 0 43 to 14 45", "joint 1: 0 77 to 14 75",
			"joint 1: 14 0 to 14 5", "joint 1: 14 35 to 14 45", "joint 1: 14 75 to 14 80"}},
		{"dovetails from the end", []Body{joint.tailBoard(1), joint.pinBoard(2)}, From(Left), Options{}, []string{
			"outline 1: -37 100 to -3 100", "outline 1: -77 100 to -43 100",
			"outline 2: -3 100 to 0 100", "outline 2: -43 100 to -37 100", "outline 2: -80 100 to -77 100",
			"outline 2: -80 0 to 0 0", "outline 2: 0 0 to 0 100", "outline 2: -80 0 to -80 100",
			"joint 1: -3 86 to -3 100", "joint 1: -37 86 to -37 100", "joint 1: -43 86 to -43 100", "joint 1: -77 86 to -77 100",
			"joint 1: -37 86 to -3 86", "joint 1: -77 86 to -43 86"}},
	} {
		t.Run(c.name, func(t *testing.T) { wantLines(t, Project(c.bodies, c.cam, c.opts), c.want...) })
	}
}

// stile is 40 × 20 × 90, with a groove 6 wide and 10 deep for a panel; the one
// at the right stands from x = 100.
func stile(id int, right bool) Body {
	b := prism(id, flat, []Point2{{0, 0}, {40, 0}, {40, 7}, {30, 7}, {30, 13}, {40, 13}, {40, 20}, {0, 20}}, nil, 0, 90, nil)
	if right {
		b = mirrored(b, 70)
	}
	for i := range b.Faces { // a face each does not matter here
		b.Faces[i].Tag = 0
	}
	return b
}

// parted is a box whose top is two faces with tags of their own, and whose
// other faces do not know of it.
func parted(id int) Body {
	b := box(id, 0, 0, 0, 30, 20, 10)
	b.Faces[0].Outer = []Vec3{{0, 0, 10}, {12, 0, 10}, {12, 20, 10}, {0, 20, 10}}
	b.Faces = append(b.Faces, Face{Outer: []Vec3{{12, 0, 10}, {30, 0, 10}, {30, 20, 10}, {12, 20, 10}}, Tag: 0})
	return b
}

// TestCurveTurnsOutOfSight: of a pillar of 64 facets one sees, from above and
// aside, its top all round, two upright lines where it turns away and the
// nearer half of its foot; the other half of the foot is hidden.
func TestCurveTurnsOutOfSight(t *testing.T) {
	const n = 64
	var ring []Point2
	for i := range n {
		sin, cos := math.Sincos((float64(i) + 0.3) * 2 * math.Pi / n)
		ring = append(ring, Point2{40 * cos, 40 * sin})
	}
	pillar := prism(1, flat, ring, nil, 0, 200, func(int) bool { return true })
	count := map[string]int{}
	for _, l := range Project([]Body{pillar}, Isometric(Right), hidden).Lines {
		what := l.Kind.String()
		if l.Hidden {
			what = "hidden " + what
		}
		if math.Abs(l.A.X-l.B.X) < 1e-6 {
			what = "upright " + what
		}
		count[what]++
	}
	testkit.Diff(t, map[string]int{
		"upright outline": 2, "outline": n/2 + n/2, "edge": n / 2, "hidden edge": n / 2, // top's far half and foot's near half; top's near half; foot's far half
	}, count)
}

// TestSides pins where right, up and near are in each picture, by a point.
func TestSides(t *testing.T) {
	p := Vec3{1, 2, 3}
	for _, c := range []struct {
		side  Side
		at    Point2
		depth float64
	}{
		{Front, Point2{1, 3}, 2}, {Back, Point2{-1, 3}, -2}, {Left, Point2{-2, 3}, 1}, {Right, Point2{2, 3}, -1},
		{Top, Point2{1, 2}, -3}, {Bottom, Point2{1, -2}, 3}, {Side(99), Point2{1, 3}, 2},
	} {
		at, depth, ok := From(c.side).Picture(p)
		if at != c.at || depth != c.depth || !ok {
			t.Errorf("side %d: got %v, depth %v, %v; want %v, %v", c.side, at, depth, ok, c.at, c.depth)
		}
		r, u, away := From(c.side).Axes()
		if r.cross(u) != away.times(-1) {
			t.Errorf("side %d: the picture is mirrored", c.side)
		}
		if got, _ := Looking(away, Vec3{}); got != From(c.side) {
			t.Errorf("side %d: looking along %v is %v", c.side, away, got)
		}
	}
	if at, _, _ := (Camera{}).Picture(p); at != (Point2{1, 3}) {
		t.Errorf("the zero camera sees %v", at)
	}
}

// TestIsometric: three faces of a cube under equal angles; nine of its edges
// are seen, three hidden, all in true length and at 30° or upright.
func TestIsometric(t *testing.T) {
	for _, side := range []Side{Right, Left} {
		d := Project([]Body{box(1, 0, 0, 0, 50, 50, 50)}, Isometric(side), hidden)
		seen := 0
		for _, l := range d.Lines {
			if !l.Hidden {
				seen++
			}
			testkit.Near(t, l.A.to(l.B), 50, 1e-5)
			angle := math.Abs(math.Atan2(l.B.Y-l.A.Y, l.B.X-l.A.X)) * 180 / math.Pi
			if math.Abs(angle-30) > 1e-5 && math.Abs(angle-90) > 1e-5 {
				t.Errorf("a line at %v degrees", angle)
			}
		}
		if seen != 9 || len(d.Lines) != 12 {
			t.Errorf("%d of %d lines are seen, want 9 of 12", seen, len(d.Lines))
		}
	}
}

// TestPerspective: by similar triangles, a square 100 wide at distance 1000
// with its back at 1500 appears at 100 and 100·1000/1500.
func TestPerspective(t *testing.T) {
	cam, err := Perspective(Vec3{0, -1000, 0}, Vec3{}, Vec3{})
	if err != nil {
		t.Fatal(err)
	}
	d := Project([]Body{box(1, -50, 0, -50, 50, 500, 50)}, cam, hidden)
	small := 100.0 / 3
	wantLines(t, d,
		"outline 1: -50 -50 to 50 -50", "outline 1: -50 50 to 50 50", "outline 1: -50 -50 to -50 50", "outline 1: 50 -50 to 50 50",
		near6("- edge 1: %v %v to %v %v", -small, -small, small, -small), near6("- edge 1: %v %v to %v %v", -small, small, small, small),
		near6("- edge 1: %v %v to %v %v", -small, -small, -small, small), near6("- edge 1: %v %v to %v %v", small, -small, small, small),
		near6("- edge 1: -50 -50 to %v %v", -small, -small), near6("- edge 1: -50 50 to %v %v", -small, small),
		near6("- edge 1: %v %v to 50 -50", small, -small), near6("- edge 1: %v %v to 50 50", small, small))
}

func near6(format string, x ...float64) string {
	a := make([]any, len(x))
	for i := range x {
		a[i] = nano(x[i])
	}
	return fmt.Sprintf(format, a...)
}

// TestFarEye: from 100 km a perspective is the parallel picture.
func TestFarEye(t *testing.T) {
	target := Vec3{100, 50, 60}
	along, _ := Vec3{-2, 3, -1.5}.unit()
	far, err := Perspective(target.minus(along.times(9e7)), target, Vec3{})
	if err != nil {
		t.Fatal(err)
	}
	parallel, _ := Looking(along, Vec3{})
	joint := dovetail{width: 120, thickness: 18, long: 160, tails: 3, slope: 1.0 / 7}
	bodies := []Body{joint.tailBoard(1), joint.pinBoard(2), box(3, 60, 20, 0, 100, 60, 90)}
	// A point 200 mm off the target, 200 mm nearer, is off by 200·200/9e7.
	sameLines(t, Project(bodies, parallel.At(target), hidden).Lines, Project(bodies, far, hidden).Lines, 1e-3)
}

// sameLines holds each line against one of the same standing with the same
// ends, whatever the order.
func sameLines(t reporter, want, got []Line, tol float64) {
	t.Helper()
	left := slices.Clone(got)
	for _, w := range want {
		i := slices.IndexFunc(left, func(g Line) bool { return same(w, g, tol) })
		if i < 0 {
			t.Errorf("missing: %+v", w)
			continue
		}
		left = slices.Delete(left, i, i+1)
	}
	for _, g := range left {
		t.Errorf("too much: %+v", g)
	}
}

func same(a, b Line, tol float64) bool {
	ends := a.A.to(b.A) <= tol && a.B.to(b.B) <= tol || a.A.to(b.B) <= tol && a.B.to(b.A) <= tol
	return ends && a.Hidden == b.Hidden && a.Kind == b.Kind && a.Body == b.Body && a.Tag == b.Tag
}

// TestSkipped: what makes no sense is named, and the rest is drawn.
func TestSkipped(t *testing.T) {
	good := box(1, 0, 0, 0, 10, 10, 10)
	bad := func(change func(b *Body)) Body {
		b := box(2, 20, 0, 0, 30, 10, 10)
		change(&b)
		return b
	}
	for _, c := range []struct {
		name string
		body Body
		want string
	}{
		{"no faces", Body{ID: 2}, "no face"},
		{"NaN", bad(func(b *Body) { b.Faces[3].Outer[1].Y = math.NaN() }), "NaN"},
		{"infinite", bad(func(b *Body) { b.Faces[3].Outer[1].Y = math.Inf(-1) }), "not a place"},
		{"far away", bad(func(b *Body) { b.Faces[3].Outer[1].Y = 1e200 }), "not a place"},
		{"two corners", bad(func(b *Body) { b.Faces[3].Outer = b.Faces[3].Outer[:2] }), "fewer than three"},
		{"nothing", bad(func(b *Body) { b.Faces[3].Outer = nil }), "fewer than three"},
		{"no area", bad(func(b *Body) { b.Faces[3].Outer[1] = b.Faces[3].Outer[0]; b.Faces[3].Outer[2] = b.Faces[3].Outer[3] }), "no area"},
		{"NaN in a hole", bad(func(b *Body) { b.Faces[3].Holes = [][]Vec3{{{math.NaN(), 0, 0}}} }), "NaN"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, cam := range someCameras(t) {
				d := Project([]Body{good, c.body}, cam, Options{Hidden: true, Fills: true})
				if len(d.Skipped) == 0 || d.Skipped[0].Body != 2 || !strings.Contains(d.Skipped[0].Why, c.want) {
					t.Errorf("skipped %v, want body 2 for %q", d.Skipped, c.want)
				}
				finite(t, d)
				caps, rest := Cut([]Body{good, c.body}, Plane{At: Vec3{5, 5, 5}, Normal: Vec3{1, -2, 0.5}})
				if len(caps) == 0 || len(rest) == 0 {
					t.Errorf("the good body was not cut: %v, %v", caps, rest)
				}
			}
		})
	}
	if d := Project(nil, Camera{}, Options{Fills: true, Hidden: true}); len(d.Lines)+len(d.Fills)+len(d.Skipped) != 0 || d.Bounds != (Box2{}) {
		t.Errorf("nothing gives %+v", d)
	}
	if _, err := Looking(Vec3{}, Vec3{}); err == nil {
		t.Error("an eye that looks nowhere was accepted")
	}
	if _, err := Perspective(Vec3{1, 2, 3}, Vec3{1, 2, 3}, Vec3{}); err == nil {
		t.Error("an eye at its target was accepted")
	}
	if _, err := Perspective(Vec3{math.NaN(), 2, 3}, Vec3{1, 2, 3}, Vec3{}); err == nil {
		t.Error("an eye nowhere was accepted")
	}
}

func someCameras(t testing.TB) []Camera {
	p, err := Perspective(Vec3{60, -80, 90}, Vec3{10, 5, 5}, Vec3{})
	if err != nil {
		t.Fatal(err)
	}
	return []Camera{From(Front), From(Right), From(Top), Isometric(Left), p}
}

func finite(t reporter, d Drawing) {
	t.Helper()
	bad := func(p Point2) bool { return math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) }
	for _, l := range d.Lines {
		if bad(l.A) || bad(l.B) {
			t.Errorf("line %+v", l)
		}
	}
	for _, f := range d.Fills {
		for _, p := range f.Outer {
			if bad(p) {
				t.Errorf("fill %+v", f)
			}
		}
	}
}

// TestNearLimit: a beam that runs from before the target back past the eye is
// cut at the near limit, a twentieth of the distance from the eye, where it
// appears twenty times as large.
func TestNearLimit(t *testing.T) {
	cam, _ := Perspective(Vec3{0, -1000, 0}, Vec3{}, Vec3{})
	beam := box(1, 100, -3000, -10, 120, 0, 10)
	behind := box(2, 0, -3000, 0, 10, -2000, 10)
	d := Project([]Body{beam, behind}, cam, Options{Fills: true})
	if len(d.Skipped) != 1 || d.Skipped[0].Body != 2 {
		t.Errorf("skipped %v, want body 2 only", d.Skipped)
	}
	testkit.Near(t, d.Bounds.Min.X, 100, 1e-9)
	testkit.Near(t, d.Bounds.Max.X, 120*20, 1e-6)
	var cap float64
	for _, f := range d.Fills {
		if f.Tag == CapTag {
			cap += area(f.Outer)
		}
	}
	testkit.Near(t, cap, 20*20*20*20, 1e-3)
	if d := Project([]Body{beam}, cam.Near(500), Options{}); d.Bounds.Max.X != 240 {
		t.Errorf("with a near limit at half the distance the beam reaches to %v, want 240", d.Bounds.Max.X)
	}
}

func TestMoved(t *testing.T) {
	b := boredBox(1, 0, 0, 0, 100, 10, 100, rect(30, 30, 70, 70))
	b.Box = Box{Vec3{}, Vec3{100, 10, 100}}
	m := b.Moved(Vec3{5, 6, 7})
	if b.Faces[0].Outer[0] == m.Faces[0].Outer[0] || m.Box.Min != (Vec3{5, 6, 7}) {
		t.Errorf("moved to %v, box %v", m.Faces[0].Outer, m.Box)
	}
	want := Project([]Body{b}, From(Front).At(Vec3{-5, 0, -7}), hidden).Lines
	testkit.Diff(t, want, Project([]Body{m}, From(Front), hidden).Lines)
}
