package joinery

import (
	"math/rand/v2"
	"slices"
	"testing"

	"casewright/internal/measure"

	"pgregory.net/rapid"
)

const in = measure.Inch

// x64 is a length in 64ths of an inch.
func x64(n int) measure.Length { return measure.Length(n) * measure.SixtyFourth }

func oneIn(n int) measure.Slope { return measure.Slope{Rise: 1, Run: int64(n)} }

func checkFeatures(t rapid.TB, b Box, features []Feature) {
	t.Helper()
	for i, f := range features {
		if err := f.Check(b); err != nil {
			t.Errorf("feature %d: %v", i, err)
		}
	}
}

func codes(problems []Problem) []string {
	var out []string
	for _, p := range problems {
		out = append(out, p.Code)
	}
	return out
}

func checkCodes(t *testing.T, problems []Problem, want ...string) {
	t.Helper()
	if got := codes(problems); !slices.Equal(got, want) {
		t.Errorf("problems: got %v, want %v", got, want)
	}
	for _, p := range problems {
		if p.Summary == "" || p.Mend == "" || p.Grade == 0 {
			t.Errorf("%s: summary, mend or grade missing", p.Code)
		}
		for _, f := range p.Figures {
			if f.Name == "" || f.Source == "" {
				t.Errorf("%s: figure without a name or a source", p.Code)
			}
		}
	}
}

// spot is a place in a part's own frame, in mm.
type spot [3]float64

// wood reports whether the part still has wood at the spot.
func wood(b Box, features []Feature, at spot) bool {
	for a := L; a <= T; a++ {
		if at[a] < 0 || at[a] > b.Along(a).Millimetres() {
			return false
		}
	}
	return !slices.ContainsFunc(features, func(f Feature) bool { return f.takes(at) })
}

func (f Feature) takes(at spot) bool {
	u, v := cyclic(f.Axis)
	if at[f.Axis] < f.From.Millimetres() || at[f.Axis] > f.To.Millimetres() {
		return false
	}
	inside := false
	for i, p := range f.Outline {
		q := f.Outline[(i+1)%len(f.Outline)]
		pu, pv, qu, qv := p.U.Millimetres(), p.V.Millimetres(), q.U.Millimetres(), q.V.Millimetres()
		if (pv > at[v]) != (qv > at[v]) && at[u] < pu+(at[v]-pv)/(qv-pv)*(qu-pu) {
			inside = !inside
		}
	}
	return inside
}

// dice throws spots for tests that look at many places of one joint.
type dice struct{ *rand.Rand }

func drawDice(t *rapid.T) dice {
	return dice{rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "dice"), 1))}
}

// within is anywhere from 0 to size, in mm.
func (d dice) within(size measure.Length) float64 { return d.Float64() * size.Millimetres() }

// spotsEach is how many places a property looks at in one joint.
const spotsEach = 300
