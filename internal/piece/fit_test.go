package piece_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

// A point of space may hold the wood of one part only. Where the blocks of two
// parts overlap, a tongue stands in its housing or a tail in its socket, so at
// every point there one of the two must have been cut away. This is checked
// point by point with exact whole numbers; it is the cheap fore-runner of a
// proof by solids.
func TestNoTwoPartsInOnePlace(t *testing.T) {
	for _, name := range commissions {
		t.Run(name, func(t *testing.T) { checkApart(t, example(t, name)) })
	}
}

const pointsPerPair = 120

func checkApart(t testing.TB, p *piece.Piece) {
	t.Helper()
	rnd := rand.New(rand.NewPCG(1, 2))
	for i, a := range p.Parts {
		for _, b := range p.Parts[i+1:] {
			if at, clash := shared(rnd, a, b); clash {
				t.Errorf("%s %s and %s %s both fill %+v", a.Mark, a.Path, b.Mark, b.Path, at)
			}
		}
	}
}

func shared(rnd *rand.Rand, a, b *piece.Part) (piece.Vec, bool) {
	alo, ahi := a.Corners()
	blo, bhi := b.Corners()
	lo := piece.Vec{X: max(alo.X, blo.X), Y: max(alo.Y, blo.Y), Z: max(alo.Z, blo.Z)}
	hi := piece.Vec{X: min(ahi.X, bhi.X), Y: min(ahi.Y, bhi.Y), Z: min(ahi.Z, bhi.Z)}
	if lo.X >= hi.X || lo.Y >= hi.Y || lo.Z >= hi.Z {
		return piece.Vec{}, false
	}
	for range pointsPerPair {
		at := piece.Vec{X: between(rnd, lo.X, hi.X), Y: between(rnd, lo.Y, hi.Y), Z: between(rnd, lo.Z, hi.Z)}
		if fills(a, at) && fills(b, at) {
			return at, true
		}
	}
	return piece.Vec{}, false
}

func between(rnd *rand.Rand, lo, hi measure.Length) measure.Length {
	return lo + measure.Length(rnd.Int64N(int64(hi-lo)))
}

// fills reports whether a part has wood at the point.
func fills(p *piece.Part, at piece.Vec) bool {
	v := p.Place.Local(at)
	if !inside(p.Base(), v, -grace) {
		return false
	}
	for _, f := range p.Features {
		if inside(f.Feature, v, grace) {
			return false
		}
	}
	return true
}

// grace is how near a border a point may lie to count on the favourable side:
// slopes round to whole nanometres.
const grace = 4

// inside reports whether the point lies in a prism, or within so many
// nanometres of it; less than none asks it to be that far inside.
func inside(f joinery.Feature, v [3]measure.Length, within measure.Length) bool {
	along := v[f.Axis]
	if along < f.From-within || along > f.To+within {
		return false
	}
	q := joinery.Point{U: v[(f.Axis+1)%3], V: v[(f.Axis+2)%3]}
	near, in := math.Inf(1), false
	for i, a := range f.Outline {
		b := f.Outline[(i+1)%len(f.Outline)]
		near = min(near, offEdge(q, a, b))
		if (a.V > q.V) != (b.V > q.V) && left(q, a, b) == (b.V > a.V) {
			in = !in
		}
	}
	if within < 0 {
		return in && near >= -float64(within)
	}
	return in || near <= float64(within)
}

// left reports whether the point lies left of the line from a to b.
func left(q, a, b joinery.Point) bool {
	return float64(b.U-a.U)*float64(q.V-a.V)-float64(b.V-a.V)*float64(q.U-a.U) > 0
}

// offEdge is how far the point is from an edge.
func offEdge(q, a, b joinery.Point) float64 {
	du, dv := float64(b.U-a.U), float64(b.V-a.V)
	pu, pv := float64(q.U-a.U), float64(q.V-a.V)
	t := 0.0
	if d := du*du + dv*dv; d > 0 {
		t = max(0, min(1, (pu*du+pv*dv)/d))
	}
	return math.Hypot(pu-t*du, pv-t*dv)
}
