package joinery

import (
	"math"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// A board 10 × 4 × 3/4 in.
var board = Box{10 * in, 4 * in, 3 * in / 4}

func wantBlocks(t *testing.T, got []Feature, want ...Feature) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("features (-want +got):\n%s", diff)
	}
}

// Outlines below are written counter-clockwise by hand, against the drawing
// rule of Point: across L they run in (W, T), across W in (T, L).
func TestGroovesAndRabbets(t *testing.T) {
	for _, c := range []struct {
		name string
		cut  interface {
			Features(Box) ([]Feature, []Problem)
		}
		want []Feature
		diag []string
	}{
		{"bottom groove in a drawer side", GrooveSpec{HighSide, L, 3 * in / 8, in / 4, in / 4, Stops{}},
			[]Feature{{Groove, L, 0, 10 * in, []Point{{3 * in / 8, in / 2}, {5 * in / 8, in / 2}, {5 * in / 8, 3 * in / 4}, {3 * in / 8, 3 * in / 4}}}}, nil},
		{"panel groove in a stile, stopped", GrooveSpec{BackEdge, L, in / 4, in / 4, 3 * in / 8, Stops{in, 2 * in}},
			[]Feature{{Groove, L, in, 8 * in, []Point{{29 * in / 8, in / 4}, {4 * in, in / 4}, {4 * in, in / 2}, {29 * in / 8, in / 2}}}}, nil},
		{"groove in an end", GrooveSpec{NearEnd, W, in / 4, in / 4, in / 4, Stops{}},
			[]Feature{{Groove, W, 0, 4 * in, []Point{{in / 4, 0}, {in / 2, 0}, {in / 2, in / 4}, {in / 4, in / 4}}}}, nil},
		{"back rabbet", RabbetSpec{HighSide, BackEdge, 7 * in / 8, 3 * in / 8, Stops{}},
			[]Feature{{Rabbet, L, 0, 10 * in, []Point{{25 * in / 8, 3 * in / 8}, {4 * in, 3 * in / 8}, {4 * in, 3 * in / 4}, {25 * in / 8, 3 * in / 4}}}}, nil},
		{"rabbet across an end", RabbetSpec{LowSide, FarEnd, in / 2, in / 4, Stops{}},
			[]Feature{{Rabbet, W, 0, 4 * in, []Point{{0, 19 * in / 2}, {in / 4, 19 * in / 2}, {in / 4, 10 * in}, {0, 10 * in}}}}, nil},
		{"no depth", GrooveSpec{HighSide, L, in, in / 4, 0, Stops{}}, nil, []string{"groove.depth"}},
		{"right through", RabbetSpec{HighSide, BackEdge, in / 2, 3 * in / 4, Stops{}}, nil, []string{"rabbet.depth"}},
		{"off the part", GrooveSpec{HighSide, L, 4*in - 1, in / 4, in / 4, Stops{}}, nil, []string{"groove.width"}},
		{"into its own face", GrooveSpec{HighSide, T, 0, in / 4, in / 4, Stops{}}, nil, []string{"groove.along"}},
		{"stops meet", GrooveSpec{HighSide, L, in, in / 4, in / 4, Stops{5 * in, 5 * in}}, nil, []string{"groove.stops"}},
		{"rabbet beside its own face", RabbetSpec{HighSide, LowSide, in, in / 4, Stops{}}, nil, []string{"rabbet.faces"}},
		{"bevel of nothing", BevelSpec{Edge: Front, Side: Low}, nil, []string{"bevel.size"}},
		{"bevel stops meet", BevelSpec{Front, Low, in / 4, in / 4, Stops{9 * in, in}}, nil, []string{"bevel.stops"}},
		{"cleat", CleatBevel(board, Back, High),
			[]Feature{{Bevel, L, 0, 10 * in, []Point{{4 * in, 0}, {4 * in, 3 * in / 4}, {13 * in / 4, 3 * in / 4}}}}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, problems := c.cut.Features(board)
			checkCodes(t, problems, c.diag...)
			checkFeatures(t, board, got)
			if len(c.want) == 1 && len(got) == 1 {
				got[0].Outline = fromFirst(got[0].Outline, c.want[0].Outline[0])
			}
			wantBlocks(t, got, c.want...)
		})
	}
}

// fromFirst turns a closed outline so that it starts at the given point.
func fromFirst(outline []Point, first Point) []Point {
	for i, p := range outline {
		if p == first {
			return append(append([]Point{}, outline[i:]...), outline[:i]...)
		}
	}
	return outline
}

// Half the board for a groove (common practice), two thirds for a corner
// rabbet (Fine Woodworking, Building Furniture, 2007, page 79).
func TestDeepCutsAreWarnedOf(t *testing.T) {
	for _, c := range []struct {
		name string
		cut  interface {
			Features(Box) ([]Feature, []Problem)
		}
		wants []string
	}{
		{"groove of half", GrooveSpec{HighSide, L, in, in / 4, 3 * in / 8, Stops{}}, nil},
		{"groove over half", GrooveSpec{HighSide, L, in, in / 4, 3*in/8 + 1, Stops{}}, []string{"groove.deep"}},
		{"rabbet of two thirds", RabbetSpec{HighSide, NearEnd, in, in / 2, Stops{}}, nil},
		{"rabbet over two thirds", RabbetSpec{HighSide, NearEnd, in, in/2 + 1, Stops{}}, []string{"rabbet.deep"}},
	} {
		features, problems := c.cut.Features(board)
		checkCodes(t, problems, c.wants...)
		if len(features) != 1 {
			t.Errorf("%s: a warning is no reason not to cut", c.name)
		}
	}
}

// Whatever is asked for either gives sound features or says why not, and the
// volume of a channel is width × depth × length.
func TestChannelsAreSoundOrRefused(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		size := func(label string) measure.Length {
			return measure.Length(rapid.Int64Range(-int64(in), int64(5*in)).Draw(t, label))
		}
		g := GrooveSpec{Face(rapid.IntRange(0, 5).Draw(t, "face")), Axis(rapid.IntRange(0, 3).Draw(t, "along")),
			size("from"), size("width"), size("depth"), Stops{size("near"), size("far")}}
		f, problems := g.Features(board)
		checkFeatures(t, board, f)
		if (len(f) == 0) != AnyStop(problems) {
			t.Fatalf("%d features with %v", len(f), codes(problems))
		}
		if len(f) == 0 {
			return
		}
		long := board.Along(g.Along) - g.Stops.Near - g.Stops.Far
		want := g.Width.Millimetres() * g.Depth.Millimetres() * long.Millimetres()
		if got := float64(board.Removed(f)); math.Abs(got-want) > 1e-6 {
			t.Errorf("%+v takes %v mm³, want %v", g, got, want)
		}
	})
}

// 1/4 in in 3/4 stock, 3/16 in 9/16, 3/16 back to back in 3/4: answers on trade
// forums and a published chest (Popular Woodworking, December 2006).
func TestUsualHousingDepth(t *testing.T) {
	for _, c := range []struct {
		thick      measure.Length
		backToBack bool
		want       measure.Length
	}{
		{3 * in / 4, false, in / 4}, {9 * in / 16, false, 3 * in / 16}, {3 * in / 4, true, 3 * in / 16}, {in / 2, false, in / 8},
	} {
		if got := UsualHousingDepth(c.thick, c.backToBack); got != c.want {
			t.Errorf("in %v, back to back %v: %v, want %v", c.thick, c.backToBack, got, c.want)
		}
	}
}

func TestHousings(t *testing.T) {
	for _, c := range []struct {
		name string
		spec HousingSpec
		want []string
	}{
		{"usual", HousingSpec{Side: High, At: in, Width: in / 2}, nil},
		{"stopped", HousingSpec{Side: Low, At: in, Width: in / 2, StopFront: in / 2, StopBack: in / 4}, nil},
		{"over half", HousingSpec{At: in, Width: in / 2, Depth: in / 2}, []string{"dado.deep"}},
		{"right through", HousingSpec{At: in, Width: in / 2, Depth: in}, []string{"dado.depth"}},
		{"back to back", HousingSpec{At: in, Width: in / 2, Depth: in / 4, BackToBack: true}, []string{"dado.back-to-back"}},
		{"beyond the end", HousingSpec{At: 9*in + 3*in/4, Width: in / 2}, []string{"dado.width"}},
		{"nothing enters", HousingSpec{At: in}, []string{"dado.width"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			l, problems := LayHousing(board, c.spec)
			checkCodes(t, problems, c.want...)
			checkFeatures(t, board, l.Features)
			if (len(l.Features) == 0) != AnyStop(problems) {
				t.Errorf("%d features with %v", len(l.Features), codes(problems))
			}
		})
	}
}

// The housed board fills the housing: laid into the host's frame, no spot has
// wood of both, and every spot of the housing has the shelf's.
func TestHousedBoardFillsItsHousing(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		step := func(label string, most int) measure.Length { return x64(rapid.IntRange(0, most).Draw(t, label)) }
		shoulder := step("shoulder", 16)
		host, spec := board, HousingSpec{Side: High, At: in, Width: in/2 - shoulder, StopFront: step("stop front", 64), StopBack: step("stop back", 64)}
		l, problems := LayHousing(host, spec)
		b := HousedBoard{SetBack: step("set back", 40), Shoulder: shoulder, Box: Box{6 * in, 0, in / 2}, ShoulderSide: High}
		if b.SetBack > spec.StopFront {
			b.SetBack = spec.StopFront
		}
		b.Box.W = host.W - b.SetBack - min(step("short behind", 40), spec.StopBack)
		cut, more := l.BoardFeatures(b)
		checkFeatures(t, b.Box, cut)
		if len(problems)+len(more) > 0 {
			t.Fatalf("refused: %v %v", codes(problems), codes(more))
		}
		// In the host's frame; the shelf's length runs out of the host's high face.
		d := drawDice(t)
		for range spotsEach {
			x, y, z := d.within(2*in), d.within(host.W), d.within(host.T)
			inHost := wood(host, l.Features, spot{x, y, z})
			inShelf := wood(b.Box, cut, spot{z - (host.T - l.Depth).Millimetres(), y - b.SetBack.Millimetres(), x - spec.At.Millimetres()})
			if inHost && inShelf {
				t.Fatalf("wood of both at %.2f %.2f %.2f", x, y, z)
			}
			if l.Features[0].takes(spot{x, y, z}) && !inShelf {
				t.Fatalf("housing not filled at %.2f %.2f %.2f", x, y, z)
			}
		}
	})
}

func TestHousedBoardThatDoesNotFit(t *testing.T) {
	l, _ := LayHousing(board, HousingSpec{Side: High, At: in, Width: in / 2, StopFront: in / 2})
	for _, c := range []struct {
		name string
		b    HousedBoard
		want []string
	}{
		{"whole", HousedBoard{Box: Box{6 * in, 4 * in, in / 2}}, nil},
		{"no part", HousedBoard{}, []string{"dado.part"}},
		{"thicker", HousedBoard{Box: Box{6 * in, 4 * in, in}}, []string{"dado.fit"}},
		{"all shoulder", HousedBoard{Box: Box{6 * in, 4 * in, in / 2}, Shoulder: in / 2}, []string{"dado.fit"}},
		{"short", HousedBoard{Box: Box{in / 8, 4 * in, in / 2}}, []string{"dado.short"}},
		{"all notch", HousedBoard{Box: Box{6 * in, in / 2, in / 2}}, []string{"dado.notch"}},
	} {
		_, problems := l.BoardFeatures(c.b)
		t.Run(c.name, func(t *testing.T) { checkCodes(t, problems, c.want...) })
	}
}
