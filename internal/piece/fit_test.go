package piece_test

import (
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

const pointsPerPair = 300

func checkApart(t testing.TB, p *piece.Piece) {
	t.Helper()
	rnd := rand.New(rand.NewPCG(1, 2))
	for i, a := range p.Parts {
		for _, b := range p.Parts[i+1:] {
			if bent(a) || bent(b) {
				continue // its joints are laid out straight: see Bow
			}
			if at, clash := shared(rnd, a, b); clash {
				t.Errorf("%s %s and %s %s both fill %+v", a.Mark, a.Path, b.Mark, b.Path, at)
			}
		}
	}
}

func bent(p *piece.Part) bool { return p.Bow != nil && p.Bow.Axis == joinery.T }

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
	box := p.Box()
	for a, size := range [3]measure.Length{box.L, box.W, box.T} {
		if v[a] <= 0 || v[a] >= size {
			return false
		}
	}
	if p.Bow != nil && beyondBow(p, v) {
		return false
	}
	for _, f := range p.Features {
		if inside(f.Feature, v) {
			return false
		}
	}
	return true
}

// beyondBow reports whether the point lies in front of a flat board's curve.
func beyondBow(p *piece.Part, v [3]measure.Length) bool {
	x := p.Bow.From + v[joinery.L]
	return v[joinery.W] < p.Bow.Crown-p.Bow.Curve.Shape.Ordinate(x)
}

// inside reports whether the point lies in a feature, or so near its border
// that rounding to nanometres could put it there.
func inside(f joinery.Feature, v [3]measure.Length) bool {
	along := v[f.Axis]
	if along < f.From || along > f.To {
		return false
	}
	u, w := v[(f.Axis+1)%3], v[(f.Axis+2)%3]
	const grace = 2 // nanometres
	n := len(f.Outline)
	for i, a := range f.Outline {
		b := f.Outline[(i+1)%n]
		du, dv := float64(b.U-a.U), float64(b.V-a.V)
		if du*float64(w-a.V)-dv*float64(u-a.U) < -grace*(abs(du)+abs(dv)) {
			return false // the outlines of joints are convex
		}
	}
	return true
}

func abs(f float64) float64 {
	if f < 0 {
		return -f
	}
	return f
}
