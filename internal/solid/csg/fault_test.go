package csg

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"

	"casewright/internal/measure"
)

func TestFaults(t *testing.T) {
	good := block(0, X, 0, 0, 0, 10, 6, 4)
	poly := func(c ...Point2) Prism { return Prism{Axis: Z, From: 0, To: 4, Tag: 7, Outline: c} }
	holed := func(hole ...Point2) Prism {
		p := poly(Point2{0, 0}, Point2{6, 0}, Point2{6, 6}, Point2{0, 6})
		p.Holes = [][]Point2{hole}
		return p
	}
	for _, c := range []struct {
		name string
		cut  Prism
		want FaultKind
	}{
		{"no axis", Prism{Axis: 3, From: 0, To: 1, Outline: good.Outline}, BadAxis},
		{"no depth", block(7, X, 3, 0, 0, 3, 6, 4), NoDepth},
		{"turned over", block(7, X, 4, 0, 0, 3, 6, 4), NoDepth},
		{"no outline", Prism{Axis: Z, From: 0, To: 1}, NoOutline},
		{"two corners", poly(Point2{0, 0}, Point2{3, 3}), NoOutline},
		{"one place", poly(Point2{1, 1}, Point2{1, 1}, Point2{1, 1}), NoOutline},
		{"in a line", poly(Point2{0, 0}, Point2{1, 1}, Point2{3, 3}), NoOutline},
		{"figure of eight", poly(Point2{0, 0}, Point2{4, 4}, Point2{4, 0}, Point2{0, 3}), Crosses},
		{"doubles back", poly(Point2{0, 0}, Point2{4, 0}, Point2{2, 0}, Point2{2, 3}), Crosses},
		{"doubles over another side", poly(Point2{0, 0}, Point2{6, 0}, Point2{6, 4}, Point2{4, 4}, Point2{4, 0}, Point2{2, 0}, Point2{2, 4}, Point2{0, 4}), Crosses},
		{"hole without area", holed(Point2{1, 1}, Point2{2, 2}), NoOutline},
		{"hole outside", holed(Point2{7, 1}, Point2{9, 1}, Point2{8, 3}), HoleAstray},
		{"hole across the outline", holed(Point2{5, 1}, Point2{9, 1}, Point2{8, 3}), Crosses},
		{"far along the axis", Prism{Axis: Z, From: 0, To: math.MaxInt64, Outline: good.Outline}, TooFar},
		{"far across it", poly(Point2{math.MinInt64, 0}, Point2{1, 0}, Point2{0, 1}), TooFar},
		{"nothing left", block(7, Y, -1, -1, -1, 11, 7, 5), Nothing},
		{"two pieces", block(7, Y, 4, -1, -1, 5, 7, 5), FallsApart},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Build(Body{good, []Prism{block(1, X, -1, 2, 3, 11, 4, 5), c.cut}})
			var faults Faults
			if !errors.As(err, &faults) || len(faults) != 1 || faults[0].Kind != c.want {
				t.Fatalf("got %v (%d), want kind %d", err, faults, c.want)
			}
			if (s != nil) != (c.want == FallsApart) {
				t.Errorf("solid: %v", s)
			}
			if c.want < Nothing && (faults[0].Prism != 1 || faults[0].Tag != c.cut.Tag) {
				t.Errorf("blames %+v", faults[0])
			}
		})
	}
}

// All faults are told at once.
func TestAllFaults(t *testing.T) {
	bad := Prism{Axis: 9}
	_, err := Build(Body{bad, []Prism{bad, block(1, X, 0, 0, 0, 1, 1, 1), bad}})
	if f := err.(Faults); len(f) != 3 || f[0].Prism != Base || f[1].Prism != 0 || f[2].Prism != 2 {
		t.Errorf("got %v", f)
	}
	if _, err := FitOf(Body{Base: bad}, Placed{Body{Base: bad}, Placement{}}); len(err.(Faults)) != 2 {
		t.Errorf("got %v", err)
	}
	twice := Placement{To: [3]Axis{X, X, Y}}
	if _, err := FitOf(groovedBoard(), Placed{groovedBoard(), twice}); err == nil {
		t.Error("a placement that names an axis twice went through")
	}
}

// A ring may touch itself in a corner, and corners may repeat or lie in line.
func TestForgivenOutlines(t *testing.T) {
	base := block(0, X, 0, 0, 0, 10, 10, 4)
	for _, c := range []struct {
		name   string
		cut    []Point2
		volume float64
	}{
		{"repeated corners", []Point2{{2, 2}, {2, 2}, {5, 2}, {5, 5}, {5, 5}, {2, 2}}, 400 - 4.5*4},
		{"corners in line, clockwise", []Point2{{2, 2}, {2, 3}, {2, 5}, {4, 5}, {5, 5}, {5, 2}, {3, 2}}, 400 - 36},
		{"touches itself", []Point2{{1, 1}, {5, 1}, {5, 3}, {3, 1}, {1, 3}}, 400 - 4*4},
	} {
		s := mustBuild(t, scaled(Body{base, []Prism{{Axis: Z, From: 0, To: 4, Outline: c.cut}}}, mm))
		near(t, c.name, float64(s.Volume()), c.volume, 1e-13)
	}
}

func TestHolesOfAPrism(t *testing.T) {
	// A tube, and a ring groove that leaves its core standing.
	ring := Prism{Axis: Z, From: 0, To: 10, Outline: []Point2{{0, 0}, {6, 0}, {6, 6}, {0, 6}}, Holes: [][]Point2{{{2, 2}, {4, 2}, {4, 4}, {2, 4}}}}
	near(t, "tube", float64(mustBuild(t, scaled(Body{Base: ring}, mm)).Volume()), 10*(36-4), 1e-13)
	ring.From = 7
	s := mustBuild(t, scaled(Body{block(0, Z, -1, -1, 0, 7, 7, 10), []Prism{ring}}, mm))
	near(t, "core", float64(s.Volume()), 640-3*32, 1e-13)
}

// FuzzBuild makes prisms of any bytes, wild coordinates and all. Whatever comes
// out is sound, or a fault.
func FuzzBuild(f *testing.F) {
	f.Add([]byte("a block"), false)
	f.Add([]byte{0, 0, 0, 0, 9, 9, 9, 9, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 200, 201, 202, 203, 204}, true)
	f.Fuzz(func(t *testing.T, data []byte, large bool) {
		anyBuildOrFault(t, bodyOf(data, large))
	})
}

// bodyOf reads a body off bytes: small coordinates, or large ones that leave
// every product beyond 64 bits.
func bodyOf(data []byte, large bool) Body {
	next := func() measure.Length {
		if len(data) == 0 {
			return 0
		}
		n := measure.Length(int8(data[0]) % 8)
		data = data[1:]
		if large && len(data) >= 4 {
			n = n<<33 + measure.Length(int32(binary.LittleEndian.Uint32(data)))
			data = data[4:]
		}
		return n
	}
	one := func() Prism {
		p := Prism{Axis: Axis(next() & 3), From: next(), To: next(), Tag: Tag(next())}
		for range 3 + int(next()&3) {
			p.Outline = append(p.Outline, Point2{next(), next()})
		}
		return p
	}
	b := Body{Base: one()}
	if b.Base.fault() != 0 {
		b.Base = block(0, X, -5, -5, -5, 5, 5, 5)
	}
	for len(data) > 0 && len(b.Cuts) < 6 {
		b.Cuts = append(b.Cuts, one())
	}
	return b
}

func anyBuildOrFault(t *testing.T, b Body) {
	var good []Prism
	for _, c := range b.Cuts {
		if c.fault() == 0 {
			good = append(good, c)
		}
	}
	if _, err := Build(b); (err == nil || err.(Faults)[0].Kind >= Nothing) != (len(good) == len(b.Cuts)) {
		t.Fatalf("%v with %d of %d cuts good", err, len(good), len(b.Cuts))
	}
	b.Cuts = good
	anyBuild(t, b)
}
