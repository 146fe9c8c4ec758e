package view

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/testkit"
)

func capArea(c Cap) float64 {
	sum := area(c.Outer)
	for _, h := range c.Holes {
		sum += area(h)
	}
	return sum
}

// TestCutKnown cuts what one can cut in the head.
func TestCutKnown(t *testing.T) {
	toFront := Vec3{0, -1, 0}
	bored := boredBox(1, 0, 0, 0, 100, 10, 100, rect(30, 30, 70, 70))
	joint := dovetail{width: 80, thickness: 14, long: 100, tails: 2, slope: 1.0 / 7}
	for _, c := range []struct {
		name   string
		body   Body
		plane  Plane
		caps   int
		area   float64
		volume float64 // what remains
	}{
		{"through the middle", box(1, 0, 0, 0, 30, 20, 10), Plane{Vec3{0, 5, 0}, toFront}, 1, 300, 30 * 15 * 10},
		{"in the front face: nothing is cut", box(1, 0, 0, 0, 30, 20, 10), Plane{Vec3{0, 0, 0}, toFront}, 0, 0, 6000},
		{"in the back face: nothing is left", box(1, 0, 0, 0, 30, 20, 10), Plane{Vec3{0, 20, 0}, toFront}, 0, 0, 0},
		{"in front of it", box(1, 0, 0, 0, 30, 20, 10), Plane{Vec3{0, -3, 0}, toFront}, 0, 0, 6000},
		{"behind it", box(1, 0, 0, 0, 30, 20, 10), Plane{Vec3{0, 23, 0}, toFront}, 0, 0, 0},
		{"a hole stays a hole", bored, Plane{Vec3{0, 5, 0}, toFront}, 1, 100*100 - 40*40, (100*100 - 40*40) * 5},
		{"across the hole: two caps", bored, Plane{Vec3{0, 0, 50}, Vec3{0, 0, 1}}, 2, 2 * 30 * 10, 50*100*10 - 40*20*10},
		{"in the floor of the hole: only the rim beside it is cut", bored, Plane{Vec3{0, 0, 30}, Vec3{0, 0, 1}}, 2, 600, 30 * 100 * 10},
		{"in the floor, from below: the same", bored, Plane{Vec3{0, 0, 30}, Vec3{0, 0, -1}}, 2, 600, 70*100*10 - 40*40*10},
		// 2 tails 30 wide at the root, half way out 32; at the end 34.
		{"tails half way", joint.tailBoard(1), Plane{Vec3{7, 0, 0}, Vec3{-1, 0, 0}}, 2, 2 * 32 * 14, 86*80*14 + 2*31*7*14},
		{"tails at the root, seen from the end: shoulders are not cut", joint.tailBoard(1), Plane{Vec3{14, 0, 0}, Vec3{-1, 0, 0}}, 2, 2 * 30 * 14, 86 * 80 * 14},
		{"tails at the root, seen from the board", joint.tailBoard(1), Plane{Vec3{14, 0, 0}, Vec3{1, 0, 0}}, 2, 2 * 30 * 14, 2 * 32 * 14 * 14},
		{"pins at the socket floor", joint.pinBoard(1), Plane{Vec3{0, 0, 86}, Vec3{0, 0, 1}}, 3, 80*14 - 2*32*14, 86 * 80 * 14},
	} {
		t.Run(c.name, func(t *testing.T) {
			caps, rest := Cut([]Body{c.body}, c.plane)
			var sum, left float64
			for _, k := range caps {
				sum += capArea(k)
			}
			for _, b := range rest {
				left += volume(b)
				closed(t, b, volume(b))
			}
			if len(caps) != c.caps {
				t.Errorf("%d caps, want %d: %v", len(caps), c.caps, caps)
			}
			testkit.Near(t, sum, c.area, 1e-6)
			testkit.Near(t, left, c.volume, 1e-4)
		})
	}
}

// TestCutHalves: both halves of anything, cut anywhere, are closed, have the
// same caps, and together the volume of the whole.
func TestCutHalves(t *testing.T) {
	joint := dovetail{width: 80, thickness: 14, long: 100, tails: 2, slope: 1.0 / 7}
	fixed := []Body{joint.tailBoard(101), joint.pinBoard(102), bowRail(103, Vec3{}, 100, 20, 30, 40, 12)}
	testkit.Check(t, func(t *rapid.T) {
		bodies := append(drawScene(t), fixed...)
		small := rapid.IntRange(-3, 3)
		n := Vec3{float64(small.Draw(t, "nx")), float64(small.Draw(t, "ny")), float64(small.Draw(t, "nz"))}
		if n == (Vec3{}) {
			n.X = 1
		}
		// Half of the planes go through the lattice and so through faces,
		// edges and corners.
		at := Vec3{5 * float64(rapid.IntRange(0, 24).Draw(t, "x")), 5 * float64(rapid.IntRange(0, 16).Draw(t, "y")), 5 * float64(rapid.IntRange(0, 20).Draw(t, "z"))}
		if rapid.Bool().Draw(t, "off the lattice") {
			at.X += 1.234
		}
		p, q := Plane{at, n}, Plane{at, n.times(-1)}
		for _, b := range bodies {
			capsP, one := Cut([]Body{b}, p)
			capsQ, other := Cut([]Body{b}, q)
			var sum, a, c float64
			for _, h := range append(one, other...) {
				sum += volume(h)
				shut(t, h)
			}
			for _, k := range capsP {
				a += capArea(k)
			}
			for _, k := range capsQ {
				c += capArea(k)
			}
			if whole := volume(b); math.Abs(sum-whole) > 1e-6*whole {
				t.Errorf("body %d: halves have %v together, the whole %v", b.ID, sum, whole)
			}
			if math.Abs(a-c) > 1e-5*(1+a) {
				t.Errorf("body %d: one half's caps have %v, the other's %v", b.ID, a, c)
			}
		}
	})
}

func shut(t reporter, b Body) {
	sound := make([]bool, len(b.Faces))
	for i := range sound {
		_, why := b.Faces[i].fault()
		sound[i] = why == ""
	}
	for _, e := range arrises(&b, sound) {
		if len(e.faces)%2 != 0 {
			t.Errorf("body %d is open at %v–%v: faces %v", b.ID, e.a, e.b, e.faces)
		}
	}
}

// TestPlaneCoordinates: caps lie in the picture of a camera that looks square
// at the plane where the drawing has them, and come back to their place.
func TestPlaneCoordinates(t *testing.T) {
	for _, n := range []Vec3{{0, -1, 0}, {1, 0, 0}, {0, 0, 1}, {0, 0, -1}, {1, -2, 0.5}} {
		p := Plane{Vec3{50, 5, 20}, n}
		caps, rest := Cut([]Body{box(4, 0, 0, 0, 100, 10, 40)}, p)
		if len(caps) != 1 || len(rest) != 1 || caps[0].Body != 4 {
			t.Fatalf("normal %v: caps %v", n, caps)
		}
		cam, _ := Looking(n.times(-1), Vec3{})
		d := Project(rest, cam, Options{Fills: true})
		i := slices.IndexFunc(d.Fills, func(f Fill) bool { return f.Tag == CapTag })
		if i < 0 {
			t.Fatalf("normal %v: the cap is not seen: %+v", n, d.Fills)
		}
		testkit.Near(t, area(d.Fills[i].Outer), area(caps[0].Outer), 1e-4)
		for _, c := range caps[0].Outer {
			if !slices.ContainsFunc(d.Fills[i].Outer, func(q Point2) bool { return q.to(c) < 1e-5 }) {
				t.Errorf("normal %v: corner %v is not in the picture", n, c)
			}
			v := p.Place(c)
			testkit.Near(t, p.At.toward(v).dot(n), 0, 1e-9)
			testkit.Near(t, p.Flat(v).to(c), 0, 1e-9)
		}
	}
	if caps, rest := Cut([]Body{box(1, 0, 0, 0, 1, 1, 1)}, Plane{}); caps != nil || len(rest) != 1 {
		t.Errorf("a plane without direction cut: %v", caps)
	}
}

// TestCutSection: the section of the sideboard half way back, from closed form.
func TestCutSection(t *testing.T) {
	caps, rest := Cut(sideboard(), Plane{Vec3{0, 225, 0}, Vec3{0, -1, 0}})
	var sum float64
	for _, c := range caps {
		sum += capArea(c)
	}
	// Case: sides and top are 20 thick, the top over the sides; the section
	// goes through the middle of a tail (15 tails over 450), so the corners
	// belong to the top. Bottom 20 × 1460, three dividers 20 × 700. Drawers:
	// two sides 12 × 179 and a bottom 6 × (345 − 24). Rails end at 60.
	want := 2*20*780.0 + 20*1500 + 20*1460 + 3*20*700 + 12*(2*12*179+6*(345-24))
	testkit.Near(t, sum, want, 1e-3)
	if n := 2 + 2 + 1 + 3 + 12*3; len(caps) != n {
		t.Errorf("%d caps, want %d", len(caps), n)
	}
	for _, b := range rest {
		closed(t, b, volume(b))
	}
}
