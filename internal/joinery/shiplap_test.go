package joinery

import (
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// hallBack is the back of a small cabinet: 20 in of 5/16 in boards.
func hallBack() BoardingSpec {
	return BoardingSpec{Cover: 20 * in, Length: 25 * in, Thickness: 5 * in / 16, Gap: in / 16, EndGap: in / 32, Growth: in / 32, Shrinkage: in / 32}
}

// Five boards of 20 − 4/16 − 2/32 = 19 11/16 in show 3 15/16 each and with the
// lap of 3/8 pass 4 in; six show 19 5/8 ÷ 6 = 3.27, which is 209/64 with two
// 64ths to spare, and are 3 21/32 at most.
func TestShiplappedBack(t *testing.T) {
	l, problems := LayBoarding(hallBack())
	checkCodes(t, problems)
	want := []int{209, 209, 210, 210, 209, 209}
	if len(l.Boards) != len(want) {
		t.Fatalf("%d boards, want %d", len(l.Boards), len(want))
	}
	for i, b := range l.Boards {
		if b.Seen != x64(want[i]) {
			t.Errorf("board %d shows %v, want %v", i, b.Seen, x64(want[i]))
		}
	}
	if last := l.Boards[5]; last.Box.W != last.Seen || l.Boards[0].Box.W != l.Boards[0].Seen+3*in/8 {
		t.Error("every board but the last has its tongue on top of what shows")
	}
	if l.Overlap != 5*in/16 || l.DryLap != 9*in/32 {
		t.Errorf("overlap %v now, %v in the driest season", l.Overlap, l.DryLap)
	}
}

func TestWhatStandsAgainstBoards(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*BoardingSpec)
		want   []string
	}{
		{"one board", func(s *BoardingSpec) { s.Widest = 30 * in; s.Boards = 1 }, nil},
		{"nothing to cover", func(s *BoardingSpec) { s.Cover = 0 }, []string{"boards.part"}},
		{"gap below zero", func(s *BoardingSpec) { s.Gap = -1 }, []string{"boards.size"}},
		{"below no board", func(s *BoardingSpec) { s.Boards = -2 }, []string{"boards.count"}},
		{"a million boards", func(s *BoardingSpec) { s.Boards = 1e6 }, []string{"boards.count"}},
		{"gap as wide as the lap", func(s *BoardingSpec) { s.Gap = 3 * in / 8 }, []string{"boards.open"}},
		{"widest below the lap", func(s *BoardingSpec) { s.Widest = in / 4 }, []string{"boards.widest"}},
		{"no room", func(s *BoardingSpec) { s.Boards = 400 }, []string{"boards.narrow"}},
		{"all lap", func(s *BoardingSpec) { s.Boards = 60 }, []string{"boards.narrow"}},
		{"wide", func(s *BoardingSpec) { s.Boards = 4 }, []string{"boards.wide"}},
		{"opens", func(s *BoardingSpec) { s.Shrinkage = 5 * in / 16 }, []string{"boards.dry"}},
		{"pushes", func(s *BoardingSpec) { s.Growth = in / 8 }, []string{"boards.damp"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := hallBack()
			c.change(&s)
			_, problems := LayBoarding(s)
			checkCodes(t, problems, c.want...)
		})
	}
}

// Seen widths and gaps add up to the cover, no two boards share wood, light
// comes through nowhere, and the joint closes by exactly its gap.
func TestBoardsCoverTheBack(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s := hallBack()
		s.Joint = BoardJoint(rapid.IntRange(0, 1).Draw(t, "joint"))
		s.Cover = measure.Length(rapid.Int64Range(int64(3*in), int64(60*in)).Draw(t, "cover"))
		s.Boards = rapid.IntRange(0, 5).Draw(t, "boards")
		s.Gap = x64(rapid.IntRange(0, 20).Draw(t, "gap"))
		l, problems := LayBoarding(s)
		if AnyStop(problems) {
			t.Skip(codes(problems))
		}
		sum := 2 * s.EndGap
		for i, b := range l.Boards {
			checkFeatures(t, b.Box, b.Features)
			sum += b.Seen
			if i > 0 {
				sum += s.Gap
			}
			if mirror := l.Boards[len(l.Boards)-1-i]; mirror.Seen-b.Seen > measure.SixtyFourth || b.Seen-mirror.Seen > measure.SixtyFourth {
				t.Errorf("board %d shows %v, its mirror %v", i, b.Seen, mirror.Seen)
			}
		}
		if sum != s.Cover {
			t.Fatalf("boards and gaps add up to %v, want %v", sum, s.Cover)
		}
		at := func(x, z float64) int {
			n := 0
			for _, b := range l.Boards {
				if wood(b.Box, b.Features, spot{in.Millimetres(), x - b.X.Millimetres(), z}) {
					n++
				}
			}
			return n
		}
		d := drawDice(t)
		for range 20 {
			x, light := d.within(s.Cover), true
			for range 20 {
				n := at(x, d.within(s.Thickness))
				light = light && n == 0
				if n > 1 {
					t.Fatalf("two boards share a spot at %.3f", x)
				}
			}
			if inside := x > s.EndGap.Millimetres() && x < (s.Cover-s.EndGap).Millimetres(); light && inside {
				t.Fatalf("light comes through at %.3f", x)
			}
		}
	})
}

// The two rabbets of a shiplap make up the thickness, to the odd nanometre.
func TestShiplapRabbetsMakeUpTheThickness(t *testing.T) {
	s := hallBack()
	s.Thickness++
	l, _ := LayBoarding(s)
	depth := func(f Feature) measure.Length { return f.Outline[2].V - f.Outline[0].V }
	if got := depth(l.Boards[0].Features[0]) + depth(l.Boards[1].Features[0]); got != s.Thickness {
		t.Errorf("rabbets %v deep together, boards %v thick", got, s.Thickness)
	}
}
