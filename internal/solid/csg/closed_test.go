package csg

import (
	"math"
	"testing"

	"casewright/internal/measure"
)

const cubicInch = 25.4 * 25.4 * 25.4 // mm³

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if math.Abs(got-want) > rel*math.Abs(want) {
		t.Errorf("%s is %.12g, want %.12g", what, got, want)
	}
}

// Four bevels make a frustum of a pyramid, whose walls slope along two
// different axes: 60 × 40 below, 40 × 30 above, 15 high. By the prismatoid
// formula h/6·(A₁ + 4·A½ + A₂) = 15/6·(2400 + 4·50·35 + 1200) = 26 500 mm³.
func TestFrustum(t *testing.T) {
	s := mustBuild(t, scaled(Body{block(0, X, 0, 0, 0, 60, 40, 15), []Prism{
		{Axis: X, From: -1, To: 61, Outline: []Point2{{0, 0}, {5, 15}, {-1, 15}, {-1, 0}}},
		{Axis: X, From: 0, To: 60, Outline: []Point2{{40, 0}, {35, 15}, {41, 15}}},
		{Axis: Y, From: -9, To: 40, Outline: []Point2{{0, 0}, {15, 10}, {15, 0}}},
		{Axis: Y, From: 0, To: 41, Outline: []Point2{{0, 60}, {15, 50}, {15, 70}, {0, 70}}},
	}}, mm))
	near(t, "volume", float64(s.Volume()), 26_500, 1e-13)
	if len(s.Faces) != 6 {
		t.Errorf("%d faces, want 6", len(s.Faces))
	}
}

// A hipped roof: the bevels meet in a ridge before they reach the top, in
// corners that are no whole nanometres. Base 3 × 7, the long sides rise 1 : 1
// and meet at height 3/2, the ends rise 2 : 1. Volume = ∫(3-2z)(7-z)dz from 0 to 3/2
// = [21z - 17z²/2 + 2z³/3] = 63/2 - 153/8 + 9/4 = 117/8. A unit of 1 nm leaves
// the ridge between nanometres.
func TestHippedRoof(t *testing.T) {
	roof := Body{block(0, X, 0, 0, 0, 7, 3, 2), []Prism{
		{Axis: X, From: 0, To: 7, Outline: []Point2{{0, 0}, {2, 2}, {0, 2}}},
		{Axis: X, From: 0, To: 7, Outline: []Point2{{3, 0}, {3, 2}, {1, 2}}},
		{Axis: Y, From: 0, To: 3, Outline: []Point2{{0, 0}, {2, 0}, {2, 1}}},
		{Axis: Y, From: 0, To: 3, Outline: []Point2{{0, 7}, {2, 6}, {2, 7}}},
	}}
	s := mustBuild(t, roof)
	near(t, "volume", float64(s.Volume())*1e18, 117./8, 1e-13)
	if len(s.Faces) != 5 || len(s.Vertices) != 6 {
		t.Errorf("%d faces and %d vertices, want 5 and 6", len(s.Faces), len(s.Vertices))
	}
	broken := 0
	for i := range s.Vertices {
		if _, ok := s.Vertices[i].Whole(); !ok {
			broken++
		}
	}
	if broken != 2 {
		t.Errorf("%d vertices between nanometres, want the 2 ends of the ridge", broken)
	}
}

// The tail board's waste: half pins 1/8 to 3/16 in wide, whole pins 1/4 to 3/8,
// 1/2 deep, through 1/2: (2·5/32 + 2·5/16)/2 … in all 15/32 in² · 1/2 in. The pin
// board's waste is what stays between: 3 in² - 15/32 in², by 1/2 in.
func TestDovetailVolumes(t *testing.T) {
	blank := 12 * 6 * 0.5
	near(t, "tail board", float64(mustBuild(t, tails()).Volume()), (blank-15./64)*cubicInch, 1e-13)
	near(t, "pin board", float64(mustBuild(t, pins()).Volume()), (blank-(3-15./32)/2)*cubicInch, 1e-13)
}

// The two boards of the corner fill each other: no overlap, and they touch on
// six slopes of 1/2 × 1/2·√65/8 in, on the tails' faces (3 - 15/32 in²) and on
// the pins' ends (9/8 · 1/2 in²).
func TestDovetailFits(t *testing.T) {
	if pinsOnTails.Mirrors() {
		t.Fatal("the placement is a mirror image")
	}
	f, err := FitOf(tails(), Placed{pins(), pinsOnTails})
	if err != nil {
		t.Fatal(err)
	}
	if f.Overlap != 0 {
		t.Errorf("overlap %v", f.Overlap)
	}
	want := 6*0.25*math.Sqrt(65)/8 + 3 - 15./32 + 9./16
	near(t, "contact", f.Contact.SquareInches(), want, 1e-13)
	slopes := 0
	for _, touch := range f.Touches {
		switch {
		case touch.A.Base && touch.B.Base:
			t.Errorf("blank touches blank: %+v", touch)
		case !touch.A.Base && !touch.B.Base:
			slopes++
		}
	}
	if slopes != 6 {
		t.Errorf("%d slopes touch, want 6", slopes)
	}
	// A hundredth of a millimetre too far in, and the tails' faces bite: their area by that much.
	at := pinsOnTails
	at.Move[Z] = -mm / 100
	if f, err = FitOf(tails(), Placed{pins(), at}); err != nil {
		t.Fatal(err)
	}
	near(t, "overlap when moved", float64(f.Overlap), (3-15./32)*25.4*25.4/100, 1e-10)
}

// The front of the rail is an arc: a chord of 24 in that rises 1 in. A polygon
// of n sides inscribed in its segment has R²/2·(n·sin(θ/n) - sin θ), the segment
// itself R²/2·(θ - sin θ). Corners rounded to nanometres shift the area by less
// than their chord by half a nanometre.
func TestBowRailVolume(t *testing.T) {
	r := (12.*12 + 1) / 2
	theta := 2 * math.Asin(12/r)
	polygon := r * r / 2 * (96*math.Sin(theta/96) - math.Sin(theta))
	front := polygon + 24*1 // over the straight part
	want := front*3 - 24./4/4
	s := mustBuild(t, bowRail())
	near(t, "volume", float64(s.Volume())/cubicInch, want, 1e-9)
	segment := r * r / 2 * (theta - math.Sin(theta))
	// Known error of faceting: segment - polygon ≈ R²θ³/(12n²).
	near(t, "what facets lose", segment-polygon, r*r*theta*theta*theta/12/96/96, 1e-3)
}

// A block's moments: a·b·c about the middle, second moments V·a²/12.
func TestMomentsOfABlock(t *testing.T) {
	m := mustBuild(t, scaled(Body{Base: block(0, Y, 1000, -2000, 3000, 1030, -1980, 3010)}, mm)).Moments()
	near(t, "volume", float64(m.Volume), 6000, 1e-12)
	for k, c := range [3]float64{1015, -1990, 3005} {
		near(t, "centroid", m.Centroid[k], c, 1e-12)
	}
	for k, a := range [3]float64{30, 20, 10} {
		near(t, "second moment", m.Second[k][k], 6000*a*a/12, 1e-10)
	}
	if math.Abs(m.Second[0][1]) > 1e-6 || math.Abs(m.Second[1][2]) > 1e-6 {
		t.Errorf("products of a block about its middle: %v", m.Second)
	}
}

// A right triangle a × b has its centroid at thirds and the product
// ∫xy = -a²b²/72 about it (standard table of second moments of area).
func TestMomentsOfAWedge(t *testing.T) {
	m := mustBuild(t, scaled(Body{Base: Prism{Axis: Z, From: 0, To: 2, Outline: []Point2{{0, 0}, {6, 0}, {0, 3}}}}, mm)).Moments()
	near(t, "x", m.Centroid[0], 2, 1e-13)
	near(t, "y", m.Centroid[1], 1, 1e-13)
	near(t, "product", m.Second[0][1], -2*36*9/72., 1e-12)
}

func TestAreaOfSkin(t *testing.T) {
	// A block 10 × 6 × 4 has 248 mm²; a blind mortise 2 × 2 × 3 adds its four walls.
	s := mustBuild(t, scaled(Body{block(0, X, 0, 0, 0, 10, 6, 4), []Prism{block(1, Z, 2, 2, 1, 4, 4, 5)}}, mm))
	near(t, "area", s.Area().SquareMillimetres(), 248+24, 1e-13)
}

func TestSections(t *testing.T) {
	b := scaled(Body{block(0, X, 0, 0, 0, 10, 6, 4), []Prism{block(1, X, -1, 2, 3, 11, 4, 5), block(2, Z, 4, 2, 1, 6, 4, 4)}}, mm)
	for _, c := range []struct {
		name   string
		axis   Axis
		at     measure.Length
		beyond bool
		area   float64
		faces  int
	}{
		{"across the groove", X, 2 * mm, true, 24 - 2, 1},
		{"before the mortise", X, 4 * mm, false, 24 - 2, 1},
		{"into the mortise", X, 4 * mm, true, 24 - 6, 1},
		{"along the mortise", Z, 2 * mm, true, 60 - 4, 1},
		{"at the mortise's floor, below", Z, mm, false, 60, 1},
		{"at the groove's floor, above", Z, 3 * mm, true, 60 - 20, 2},
		{"before the body", X, 0, false, 0, 0},
		{"off the body", X, 99 * mm, false, 0, 0},
	} {
		s, err := SectionAt(b, c.axis, c.at, c.beyond)
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Area().SquareMillimetres(); math.Abs(got-c.area) > 1e-9 || len(s.Faces) != c.faces {
			t.Errorf("%s: %v mm² in %d faces, want %v in %d", c.name, got, len(s.Faces), c.area, c.faces)
		}
	}
}

func TestPlacementsAgree(t *testing.T) {
	b := tails()
	moved := Placed{b, pinsOnTails}.Apply()
	lo, hi := b.Base.Bounds()
	got, other := moved.Base.Bounds()
	p, q := pinsOnTails.Point(lo), pinsOnTails.Point(hi)
	for k := range 3 {
		if min(p[k], q[k]) != got[k] || max(p[k], q[k]) != other[k] {
			t.Errorf("corners go to %v and %v, the prism to %v and %v", p, q, got, other)
		}
		at := [3]float64{lo[0].Millimetres(), lo[1].Millimetres(), lo[2].Millimetres()}
		if x := pinsOnTails.Millimetres(at)[k]; x != p[k].Millimetres() {
			t.Errorf("axis %d: %v mm, want %v", k, x, p[k].Millimetres())
		}
	}
}
