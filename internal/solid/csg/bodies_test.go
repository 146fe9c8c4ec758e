package csg

import (
	"math"
	"testing"

	"casewright/internal/measure"
)

const inch = measure.Inch

// The bodies of the benchmarks and closed forms, in a part's own frame: X along
// the grain, Y across, Z through the thickness.

func groovedBoard() Body {
	return Body{block(0, X, 0, 0, 0, 30*inch, 6*inch, 3*inch/4),
		[]Prism{block(1, X, -inch, 5*inch, inch/2, 31*inch, 5*inch+inch/4, inch)}}
}

// caseSide is 36 × 18 × 7/8 in: nine half-blind sockets at each end, 3/4 deep
// along the grain and 5/8 into the face, sloped 1:7; a rabbet along the back
// edge, a dado across, six mortises.
func caseSide() Body {
	b := Body{Base: block(0, X, 0, 0, 0, 36*inch, 18*inch, 7*inch/8)}
	socket := func(tag Tag, from, to, at measure.Length) {
		deep, wide := 5*inch/8, 5*inch/8
		run := deep / 7 // rounded to the nanometre, as a layout does
		b.Cuts = append(b.Cuts, Prism{Axis: X, From: from, To: to, Tag: tag, Outline: []Point2{
			{at - wide, 7 * inch / 8}, {at - wide - run, 7*inch/8 - deep}, {at + wide + run, 7*inch/8 - deep}, {at + wide, 7 * inch / 8}}})
	}
	for i := range measure.Length(9) {
		socket(1, 0, 3*inch/4, inch+2*i*inch)
		socket(2, 36*inch-3*inch/4, 36*inch, inch+2*i*inch)
	}
	b.Cuts = append(b.Cuts, block(3, X, 0, 17*inch+5*inch/8, 5*inch/8, 36*inch, 18*inch, 7*inch/8),
		block(4, Y, 18*inch, 0, 5*inch/8, 18*inch+3*inch/4, 18*inch, 7*inch/8))
	for i := range measure.Length(6) {
		b.Cuts = append(b.Cuts, block(5+Tag(i), Z, (5+4*i)*inch, 8*inch, 3*inch/8, (6+4*i)*inch, 8*inch+3*inch/8, 7*inch/8))
	}
	return b
}

// arc is the polyline of a circular segment of a chord and rise in facets, from
// the right end to the left, rounded to nanometres.
func arc(chord, rise measure.Length, facets int) []Point2 {
	c, h := float64(chord), float64(rise)
	r := (c*c/4 + h*h) / (2 * h)
	half := math.Asin(c / 2 / r)
	out := make([]Point2, facets+1)
	for i := range out {
		a := half - 2*half*float64(i)/float64(facets)
		out[i] = Point2{measure.Length(math.Round(c/2 + r*math.Sin(a))), measure.Length(math.Round(r*math.Cos(a) - r + h))}
	}
	return out
}

// bowRail is a rail whose front is cut to an arc of 96 facets,
// an inch deep, with a straight groove in its back.
func bowRail() Body {
	// Z is the height of the rail, Y runs towards the front.
	b := Body{Base: block(0, X, 0, 0, 0, 24*inch, 2*inch, 3*inch)}
	waste := arc(24*inch, inch, 96)
	for i := range waste {
		waste[i].V += inch
	}
	waste = append(waste, Point2{0, 3 * inch}, Point2{24 * inch, 3 * inch})
	b.Cuts = []Prism{{Axis: Z, From: -inch, To: 4 * inch, Tag: 1, Outline: waste},
		block(2, X, 0, 0, inch/4, 24*inch, inch/4, inch/2)}
	return b
}

// tails and pins are the two boards of a corner with three through tails: tails
// 1/2 in thick stock, 6 in wide, sloped 1:8.
func tails() Body {
	b := Body{Base: block(0, X, 0, 0, 0, 12*inch, 6*inch, inch/2)}
	for i, p := range pinStretches() {
		b.Cuts = append(b.Cuts, Prism{Axis: Z, From: 0, To: inch / 2, Tag: Tag(i + 1),
			Outline: []Point2{{0, p.tip[0]}, {0, p.tip[1]}, {inch / 2, p.base[1]}, {inch / 2, p.base[0]}}})
	}
	return b
}

func pins() Body {
	b := Body{Base: block(0, X, 0, 0, 0, 12*inch, 6*inch, inch/2)}
	ps := pinStretches()
	for i := range 3 {
		b.Cuts = append(b.Cuts, Prism{Axis: X, From: 0, To: inch / 2, Tag: Tag(i + 1),
			Outline: []Point2{{ps[i].tip[1], 0}, {ps[i+1].tip[0], 0}, {ps[i+1].base[0], inch / 2}, {ps[i].base[1], inch / 2}}})
	}
	return b
}

// pinWidth is a pin's width at the end of the tail board and at its base line.
type pinWidth struct{ tip, base [2]measure.Length }

func pinStretches() []pinWidth {
	run := inch / 16 // 1/2 in at 1:8
	half := []pinWidth{}
	for i := range measure.Length(4) {
		at := 2 * i * inch
		s := pinWidth{[2]measure.Length{at - inch/8, at + inch/8}, [2]measure.Length{at - inch/8 - run, at + inch/8 + run}}
		if i == 0 {
			s.tip[0], s.base[0] = 0, 0
		}
		if i == 3 {
			s.tip[1], s.base[1] = 6*inch, 6*inch
		}
		half = append(half, s)
	}
	return half
}

// bowTop is a top whose own outline follows the arc, with a rabbet behind and a
// groove from end to end whose side runs out through the curve.
func bowTop() Body {
	outline := arc(24*inch, inch, 96)
	for i := range outline {
		outline[i].V += 12 * inch
	}
	return Body{Prism{Axis: Z, From: 0, To: 3 * inch / 4, Outline: append(outline, Point2{0, 0}, Point2{24 * inch, 0})},
		[]Prism{block(1, X, 0, 0, 3*inch/8, 24*inch, inch/4, 3*inch/4),
			block(2, X, 0, 12*inch+inch/2, inch/4, 24*inch, 14*inch, inch/2)}}
}

// drilledSide has four rows of sixteen shelf-pin holes, 24 facets each.
func drilledSide() Body {
	b := Body{Base: block(0, X, 0, 0, 0, 36*inch, 12*inch, 3*inch/4)}
	for i := range measure.Length(64) {
		x, y := float64((2+2*(i%16))*inch), float64((1+3*(i/16))*inch)
		p := Prism{Axis: Z, From: inch / 4, To: inch, Tag: 1}
		for j := range 24 {
			sin, cos := math.Sincos(float64(j) * math.Pi / 12)
			p.Outline = append(p.Outline, Point2{measure.Length(x + 3.2e6*cos), measure.Length(y + 3.2e6*sin)})
		}
		b.Cuts = append(b.Cuts, p)
	}
	return b
}

// pinsOnTails places the pin board in the tail board's frame: its length stands
// up along Z, its outside is the tail board's end. The row is symmetric, so
// that turning it end for end, which keeps the placement a turn, changes nothing.
var pinsOnTails = Placement{To: [3]Axis{Z, Y, X}, Flip: [3]bool{false, true, false}, Move: [3]measure.Length{0, 6 * inch, 0}}

func BenchmarkFit(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := FitOf(tails(), Placed{pins(), pinsOnTails}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	for _, c := range []struct {
		name string
		body Body
	}{{"grooved board", groovedBoard()}, {"case side", caseSide()}, {"bow rail", bowRail()}, {"bow top", bowTop()}, {"drilled side", drilledSide()}, {"three tails", tails()}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s, err := Build(c.body)
				if err != nil {
					b.Fatal(err)
				}
				s.Mesh()
				s.Moments()
			}
		})
	}
}

func TestBenchmarkBodiesAreSound(t *testing.T) {
	for _, b := range []Body{groovedBoard(), caseSide(), bowRail(), bowTop(), drilledSide(), tails(), pins()} {
		s := mustBuild(t, b)
		t.Logf("%d faces, %d vertices, %d triangles", len(s.Faces), len(s.Vertices), len(s.Mesh().Triangles))
	}
}
