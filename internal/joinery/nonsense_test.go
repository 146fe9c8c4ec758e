package joinery

import (
	"math"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// wild draws a size of the shop most of the time, for one bad size is enough
// to have a whole request refused, and else one no maker would ask for.
func wild(t *rapid.T) measure.Length {
	if rapid.IntRange(0, 11).Draw(t, "wild") < 11 {
		return measure.Length(rapid.Int64Range(0, int64(2*in)).Draw(t, "length"))
	}
	return rapid.OneOf(
		rapid.SampledFrom([]measure.Length{0, 1, -1, math.MaxInt64, math.MinInt64, largest, largest + 1, 40 * in}),
		rapid.Map(rapid.Int64(), func(n int64) measure.Length { return measure.Length(n) }),
	).Draw(t, "length")
}

func wildBox(t *rapid.T) Box { return Box{8 * wild(t), 4 * wild(t), wild(t)} }

// No request makes a joint panic, and whatever comes back can be cut.
func TestNonsenseIsRefused(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		d := DovetailSpec{Width: wild(t), TailStock: wild(t), PinStock: wild(t), Slope: measure.Slope{Rise: int64(rapid.SampledFrom([]int{1, 1, 1, 1, 0, -1, math.MaxInt64}).Draw(t, "rise")), Run: rapid.Int64Range(-1, 20).Draw(t, "run")},
			Lap: wild(t), Tails: rapid.IntRange(-2, 600).Draw(t, "tails"), HalfPin: wild(t), Ratio: rapid.Float64().Draw(t, "ratio"),
			Chisel: wild(t), Kerf: wild(t), Step: wild(t), MinEndPin: wild(t), Runs: []Run{{wild(t), wild(t), wild(t), wild(t)}}}
		l, _ := LayDovetails(d)
		c := Corner{Box: wildBox(t), At: wild(t), Turned: rapid.Bool().Draw(t, "turned")}
		tails, _ := l.TailFeatures(c)
		checkFeatures(t, c.Box, tails)
		pins, _ := l.PinFeatures(c)
		checkFeatures(t, c.Box, pins)

		host := wildBox(t)
		h, _ := LayHousing(host, HousingSpec{At: wild(t), Width: wild(t), Depth: wild(t), StopFront: wild(t), StopBack: wild(t)})
		checkFeatures(t, host, h.Features)
		housed := HousedBoard{Box: wildBox(t), SetBack: wild(t), Shoulder: wild(t)}
		cut, _ := h.BoardFeatures(housed)
		checkFeatures(t, housed.Box, cut)

		s := TenonSpec{Kind: TenonKind(rapid.IntRange(0, 4).Draw(t, "kind")), Rail: wildBox(t), Thickness: wild(t), Offset: wild(t), Length: wild(t),
			Seat:        Seat{Host: wildBox(t), Face: Face(rapid.IntRange(0, 5).Draw(t, "face")), WAt: wild(t), TAt: wild(t)},
			GrooveDepth: wild(t), GrooveWidth: wild(t), Haunch: wild(t), Clearance: wild(t)}
		tenon, _ := LayTenon(s)
		checkFeatures(t, s.Rail, tenon.Rail)
		checkFeatures(t, s.Seat.Host, tenon.Host)
	})
}

func TestNonsenseBoardsAreRefused(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b, _ := LayBoarding(BoardingSpec{Cover: wild(t), Length: wild(t), Thickness: wild(t), Boards: rapid.IntRange(-1, 2000).Draw(t, "boards"),
			Widest: wild(t), Lap: wild(t), Gap: wild(t), EndGap: wild(t), Shrinkage: wild(t), Growth: wild(t), Step: wild(t)})
		for _, p := range b.Boards {
			checkFeatures(t, p.Box, p.Features)
		}
		g := RabbetSpec{Face(rapid.IntRange(0, 5).Draw(t, "face")), Face(rapid.IntRange(0, 5).Draw(t, "beside")), wild(t), wild(t), Stops{wild(t), wild(t)}}
		box := wildBox(t)
		cut, _ := g.Features(box)
		checkFeatures(t, box, cut)
		v := BevelSpec{Width: wild(t), Depth: wild(t), Stops: Stops{wild(t), wild(t)}}
		cut, _ = v.Features(box)
		checkFeatures(t, box, cut)
	})
}

func TestCheckFindsBadFeatures(t *testing.T) {
	good := block(Hole, T, [3]span{{in, 2 * in}, {in, 2 * in}, {0, in}})
	turned := good
	turned.Outline = []Point{good.Outline[0], good.Outline[3], good.Outline[2], good.Outline[1]}
	backwards, outside, thin, axis := good, good, good, good
	backwards.From, backwards.To = good.To, good.From
	outside.From, outside.To = in, 2*in
	thin.Outline = good.Outline[:2]
	axis.Axis = 3
	for _, c := range []struct {
		name string
		f    Feature
		ok   bool
	}{
		{"good", good, true}, {"clockwise", turned, false}, {"backwards", backwards, false},
		{"outside the part", outside, false}, {"two points", thin, false}, {"no axis", axis, false},
	} {
		if err := c.f.Check(board); (err == nil) != c.ok {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestBoxVolume(t *testing.T) {
	// 10 × 4 × 3/4 in is 30 in³ of 25.4³ mm³.
	if got, want := float64(board.Volume()), 30*25.4*25.4*25.4; math.Abs(got-want) > 1e-6 {
		t.Errorf("got %v, want %v", got, want)
	}
}
