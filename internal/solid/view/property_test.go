package view

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/testkit"
)

// TestOrderOfBodies: the order in which bodies are given changes nothing, and
// neither does drawing twice.
func TestOrderOfBodies(t *testing.T) {
	all := Options{Hidden: true, Fills: true}
	testkit.Check(t, func(t *rapid.T) {
		bodies, s := drawScene(t), drawSight(t)
		want := Project(bodies, s.cam, all)
		got := Project(rapid.Permutation(bodies).Draw(t, "order"), s.cam, all)
		if d := diff(want, got); d != "" {
			t.Error(d)
		}
	})
	bodies := sideboard()
	want := Project(bodies, Isometric(Left), all)
	for i := range bodies {
		j := (i * 7) % len(bodies)
		bodies[i], bodies[j] = bodies[j], bodies[i]
	}
	testkit.Diff(t, want, Project(bodies, Isometric(Left), all))
}

// TestBodiesWithOneID: parts of one mark may share an ID; their order changes
// nothing either.
func TestBodiesWithOneID(t *testing.T) {
	a, b, c := box(7, 0, 0, 0, 40, 20, 10), box(7, 40, 0, 0, 70, 20, 10), box(7, 10, 30, -5, 60, 40, 30)
	want := Project([]Body{a, b, c}, From(Front), hidden)
	testkit.Diff(t, want, Project([]Body{c, b, a}, From(Front), hidden))
	joints := 0
	for _, l := range want.Lines {
		if l.Kind == Joint {
			joints++
		}
	}
	if joints != 1 {
		t.Errorf("%d joints between two bodies of one ID, want 1", joints)
	}
}

// drawTurn is a random rotation about a random axis.
func drawTurn(t *rapid.T) func(Vec3) Vec3 {
	r := rapid.Float64Range(-1, 1)
	axis, ok := Vec3{r.Draw(t, "ax"), r.Draw(t, "ay"), r.Draw(t, "az")}.unit()
	if !ok {
		axis = Vec3{1, 0, 0}
	}
	sin, cos := math.Sincos(rapid.Float64Range(0, 6).Draw(t, "turn"))
	return func(v Vec3) Vec3 { // Rodrigues' formula
		return v.times(cos).plus(axis.cross(v).times(sin)).plus(axis.times(axis.dot(v) * (1 - cos)))
	}
}

// TestTurningEverything: turning bodies and camera together changes nothing.
func TestTurningEverything(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		bodies, s, turn := drawScene(t), drawSight(t), drawTurn(t)
		var there []Body
		for _, b := range bodies {
			there = append(there, turned(b, turn))
		}
		cam := s.cam.ready()
		cam.right, cam.up, cam.away = turn(cam.right), turn(cam.up), turn(cam.away)
		cam.target = turn(cam.target)
		want, got := Project(bodies, s.cam, hidden), Project(there, cam, hidden)
		sameLines(t, want.Lines, got.Lines, 1e-4)
	})
}

// TestMirrored: a mirrored scene gives the mirrored drawing.
func TestMirrored(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		bodies := drawScene(t)
		side := rapid.SampledFrom([]Side{Front, Back, Top, Bottom}).Draw(t, "side")
		var there []Body
		for _, b := range bodies {
			there = append(there, mirrored(b, 0))
		}
		want := Project(bodies, From(side), hidden).Lines
		for i := range want {
			want[i].A.X, want[i].B.X = -want[i].A.X, -want[i].B.X
		}
		sameLines(t, want, Project(there, From(side), hidden).Lines, 1e-6)
	})
}

// TestSymmetric: a scene that is its own mirror image gives a drawing that is.
func TestSymmetric(t *testing.T) {
	for _, side := range []Side{Front, Back, Top, Bottom} {
		d := Project(sideboard(), From(side), hidden)
		plain := func(mirror bool) (out []Line) {
			for _, l := range d.Lines {
				l.Body, l.Tag = 0, 0
				if mirror {
					middle := d.Bounds.Min.X + d.Bounds.Max.X
					l.A.X, l.B.X = middle-l.A.X, middle-l.B.X
				}
				out = append(out, l)
			}
			return out
		}
		covers(t, plain(false), plain(true))
	}
}

// covers checks that every line of one drawing lies on lines of the other of
// the same standing; where it is divided may differ, since left and right
// boards have different IDs.
func covers(t *testing.T, over, lines []Line) {
	t.Helper()
	for _, l := range lines {
		for _, k := range []float64{0.03, 0.31, 0.77, 0.98} {
			p := Point2{l.A.X + k*(l.B.X-l.A.X), l.A.Y + k*(l.B.Y-l.A.Y)}
			found := false
			for _, o := range over {
				dist, _ := from(p, o.A, o.B)
				found = found || dist < 1e-4 && o.Hidden == l.Hidden && (l.Hidden || o.Kind == l.Kind)
			}
			if !found {
				t.Errorf("nothing mirrors %v of %+v", p, l)
			}
		}
	}
}

// TestNoise: corners that miss each other by the nanometre solids are rounded
// to draw the same picture.
func TestNoise(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		bodies, s := drawScene(t), drawSight(t)
		tiny := rapid.Float64Range(-1e-6, 1e-6)
		var there []Body
		for _, b := range bodies {
			shift := Vec3{tiny.Draw(t, "x"), tiny.Draw(t, "y"), tiny.Draw(t, "z")}
			there = append(there, b.Moved(shift))
		}
		want, got := Project(bodies, s.cam, hidden), Project(there, s.cam, hidden)
		sameLines(t, want.Lines, got.Lines, 1e-4)
	})
}

// TestFillsTile: what is seen of all faces together is what the bodies cover,
// here known by hand, and no wood is counted twice.
func TestFillsTile(t *testing.T) {
	for _, side := range []Side{Front, Back, Left, Right, Top, Bottom} {
		d := Project(sideboard(), From(side), Options{Fills: true})
		var sum float64
		for _, s := range d.Seen {
			sum += s.Visible
		}
		testkit.Near(t, sum, silhouette(side), 0.01)
	}
}

// silhouette is the area of the sideboard's outline. The case is 1500 wide, 450
// deep and 800 high on legs 60 × 60 × 100; behind the six rails' bows (arcs on
// a chord of 730, rise 25, in 100 chords) everything lies within the case, and
// seen from the front nothing is open between the sides below its bottom at
// 60 but the space down to the floor of the sides.
func silhouette(side Side) float64 {
	r := (730*730.0/4 + 25*25) / 50
	half := math.Asin(365 / r)
	bow := r*r/2*100*math.Sin(2*half/100) - r*r/2*math.Sin(2*half) // 100 triangles less one
	legs := 2 * 60 * 100.0
	switch side {
	case Front, Back:
		return 1500*800 - 1460*60 + legs
	case Left, Right:
		return 450*800 + legs + 3*25*20
	}
	return 1500*450 + 2*bow
}
