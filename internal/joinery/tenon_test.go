package joinery

import (
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// doorRail is the bottom rail of a small door in its left stile: 2 1/4 in
// wide, 3/4 thick, stiles 1 3/4, a groove 1/4 × 3/8.
func doorRail() TenonSpec {
	return TenonSpec{
		Kind: HaunchedTenon, Rail: Box{12 * in, 9 * in / 4, 3 * in / 4}, End: Near, Outer: Front,
		Seat:        Seat{Host: Box{20 * in, 7 * in / 4, 3 * in / 4}, Face: BackEdge, AlongW: L, TAt: 0},
		GrooveDepth: 3 * in / 8, GrooveWidth: in / 4,
	}
}

// Noyes chapter 7: tenon as thick as the groove and a third of the frame, half
// the rail less the groove wide, haunch as long as the groove is deep. Two
// thirds of 1 3/4 in is 1.167, up to 1 3/16.
func TestHaunchedTenonIsNoyes(t *testing.T) {
	l, problems := LayTenon(doorRail())
	checkCodes(t, problems)
	if l.Thickness != in/4 || l.Offset != in/4 || l.Haunch != 3*in/8 || l.Length != in+3*in/16 {
		t.Errorf("thickness %v offset %v haunch %v length %v", l.Thickness, l.Offset, l.Haunch, l.Length)
	}
	if l.HaunchAt != (Stretch{0, 9 * in / 8}) || l.Tenons[0] != (Stretch{9 * in / 8, 15 * in / 8}) {
		t.Errorf("haunch %v, tenon %v", l.HaunchAt, l.Tenons)
	}
	if l.MortiseDepth != l.Length+in/16 {
		t.Errorf("mortise %v", l.MortiseDepth)
	}
	if len(l.Host) != 1 {
		t.Errorf("the groove takes the haunch, so only the mortise is cut; got %v", l.Host)
	}
	rail := doorRail().Rail
	if got := ShoulderLength(rail, l.Length, l.Length); got != 12*in-2*l.Length {
		t.Errorf("shoulder length %v", got)
	}
}

func TestTenons(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*TenonSpec)
		want   []string
	}{
		{"haunched", func(*TenonSpec) {}, nil},
		{"haunched without a groove", func(s *TenonSpec) { s.GrooveDepth, s.GrooveWidth = 0, 0 }, nil},
		{"plain", func(s *TenonSpec) { s.Kind = PlainTenon }, nil},
		{"stub", func(s *TenonSpec) { s.Kind = StubTenon }, nil},
		{"twin", func(s *TenonSpec) { s.Kind, s.GrooveDepth, s.GrooveWidth = TwinTenon, 0, 0 }, nil},
		{"bridle", func(s *TenonSpec) { s.Kind = BridleTenon }, nil},
		{"through", func(s *TenonSpec) { s.Through = true }, nil},
		{"too long", func(s *TenonSpec) { s.Length = 2 * in }, []string{"tenon.long"}},
		{"as long as the stile, blind", func(s *TenonSpec) { s.Length = 7 * in / 4 }, []string{"tenon.long"}},
		{"thin wall", func(s *TenonSpec) { s.Length = in + 5*in/8 }, []string{"tenon.deep"}},
		{"short", func(s *TenonSpec) { s.Length = in }, []string{"tenon.short"}},
		{"too thick", func(s *TenonSpec) { s.Thickness = in }, []string{"tenon.thick"}},
		{"thin cheeks", func(s *TenonSpec) { s.Thickness = in / 2 }, []string{"tenon.thin-cheeks"}},
		{"rail too short", func(s *TenonSpec) { s.Rail.L = in }, []string{"tenon.rail"}},
		{"nothing left", func(s *TenonSpec) { s.GrooveDepth = 9 * in / 8; s.Haunch = in / 2 }, []string{"tenon.wide"}},
		{"long haunch", func(s *TenonSpec) { s.Haunch = 2 * in }, []string{"tenon.haunch"}},
		{"beside the stile", func(s *TenonSpec) { s.Seat.WAt = 19 * in }, []string{"tenon.off"}},
		{"below zero", func(s *TenonSpec) { s.Length = -1 }, []string{"tenon.size"}},
		{"along its own face", func(s *TenonSpec) { s.Seat.AlongW = W }, []string{"tenon.seat"}},
		{"no rail", func(s *TenonSpec) { s.Rail.T = 0 }, []string{"tenon.part"}},
		{"no stile", func(s *TenonSpec) { s.Seat.Host = Box{} }, []string{"tenon.part"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := doorRail()
			c.change(&s)
			l, problems := LayTenon(s)
			checkCodes(t, problems, c.want...)
			checkFeatures(t, s.Rail, l.Rail)
			checkFeatures(t, s.Seat.Host, l.Host)
			if (len(l.Rail) == 0) != AnyStop(problems) {
				t.Errorf("%d features with %v", len(l.Rail), codes(problems))
			}
		})
	}
}

// Joyce's chest: rails twin stub-tenoned into the sides. The rail lies flat,
// its width front to back along the side's width, its thickness up the side.
func TestTwinStubTenonInACaseSide(t *testing.T) {
	side, rail := Box{30 * in, 15 * in, 7 * in / 8}, Box{20 * in, 3 * in, 3 * in / 4}
	l, problems := LayTenon(TenonSpec{Kind: TwinTenon, Rail: rail, End: Far,
		Seat: Seat{Host: side, Face: HighSide, AlongW: W, WAt: in, TAt: 10 * in}})
	checkCodes(t, problems)
	checkFeatures(t, rail, l.Rail)
	checkFeatures(t, side, l.Host)
	if len(l.Host) != 2 || l.Host[0].Axis != T {
		t.Fatalf("mortises %v", l.Host)
	}
	// 1/8 of 3 in is the shoulder, so the first mortise runs from 1 3/8 in along
	// the width; 1/4 in of 3/4 stock stands 1/4 above the rail's corner.
	if got, want := l.Host[0].Outline[0], (Point{10*in + in/4, in + 3*in/8}); got != want {
		t.Errorf("mortise starts at %v, want %v", got, want)
	}
}

// Whatever the kind, the wood round the tenons and the tenons themselves make
// up the whole end of the rail, and tenon and mortise never share wood with
// the host around them.
func TestTenonsEnterTheirMortises(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s := doorRail()
		s.Kind = TenonKind(rapid.IntRange(0, 4).Draw(t, "kind"))
		s.End = End(rapid.IntRange(0, 1).Draw(t, "end"))
		s.Outer = Edge(rapid.IntRange(0, 1).Draw(t, "outer"))
		s.Through = rapid.Bool().Draw(t, "through")
		s.GrooveDepth = x64(rapid.IntRange(0, 30).Draw(t, "groove"))
		s.Thickness = x64(rapid.IntRange(4, 24).Draw(t, "thickness"))
		s.Seat.WAt = measure.Length(0)
		if s.Outer == Back {
			s.Seat.WAt = s.Seat.Host.L - s.Rail.W
		}
		l, problems := LayTenon(s)
		if AnyStop(problems) {
			t.Skip(codes(problems))
		}
		checkFeatures(t, s.Rail, l.Rail)
		var tenons float64
		for _, st := range l.Tenons {
			tenons += (st.To - st.From).Millimetres() * l.Length.Millimetres() * l.Thickness.Millimetres()
		}
		tenons += (l.HaunchAt.To - l.HaunchAt.From).Millimetres() * l.Haunch.Millimetres() * l.Thickness.Millimetres()
		whole := s.Rail.W.Millimetres() * s.Rail.T.Millimetres() * l.Length.Millimetres()
		if got := float64(s.Rail.Removed(l.Rail)); got < (whole-tenons)*(1-1e-9) || got > (whole-tenons)*(1+1e-9) {
			t.Fatalf("%v mm³ cut from the rail's end, want %v − %v", got, whole, tenons)
		}
		host := append([]Feature{}, l.Host...)
		if s.GrooveDepth > 0 && l.Haunch > 0 || s.Kind == StubTenon {
			f, _ := GrooveSpec{s.Seat.Face, L, l.Offset, l.Thickness, max(s.GrooveDepth, l.Haunch, l.Length*b2n(s.Kind == StubTenon)), Stops{}}.Features(s.Seat.Host)
			host = append(host, f...)
		}
		// The rail comes out of the host's back edge.
		d := drawDice(t)
		for range spotsEach {
			x, y, z := d.within(s.Rail.W)+s.Seat.WAt.Millimetres(), d.within(s.Seat.Host.W), d.within(s.Rail.T)
			tip := y - (s.Seat.Host.W - l.Length).Millimetres()
			if s.End == Far {
				tip = s.Rail.L.Millimetres() - tip
			}
			if wood(s.Seat.Host, host, spot{x, y, z}) && wood(s.Rail, l.Rail, spot{tip, x - s.Seat.WAt.Millimetres(), z}) {
				t.Fatalf("wood of both at %.2f %.2f %.2f", x, y, z)
			}
		}
	})
}

func b2n(b bool) measure.Length {
	if b {
		return 1
	}
	return 0
}

// The slot of a bridle is open at the end of the stile even where the rail is
// set in from it, whichever way the rail's width runs.
func TestBridleSlotIsOpenAtTheEnd(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*TenonSpec)
		want   span
	}{
		{"bottom", func(s *TenonSpec) { s.Seat.WAt = in / 4 }, span{0, in/4 + 15*in/8}},
		{"top", func(s *TenonSpec) { s.Outer, s.Seat.WAt = Back, 17*in+in/2 }, span{17*in + in/2 + 3*in/8, 20 * in}},
		{"top, turned", func(s *TenonSpec) { s.Seat.WTurned, s.Seat.WAt = true, 20*in-in/4 }, span{20*in - in/4 - 15*in/8, 20 * in}},
		{"bottom, turned", func(s *TenonSpec) { s.Outer, s.Seat.WTurned, s.Seat.WAt = Back, true, 5*in/2 }, span{0, 5*in/2 - 3*in/8}},
	} {
		s := doorRail()
		s.Kind = BridleTenon
		c.change(&s)
		l, problems := LayTenon(s)
		checkCodes(t, problems)
		if len(l.Host) != 1 {
			t.Fatalf("%s: %d slots", c.name, len(l.Host))
		}
		// Across W outlines run in (T, L).
		if got := (span{l.Host[0].Outline[0].V, l.Host[0].Outline[2].V}); got != c.want {
			t.Errorf("%s: slot %v, want %v", c.name, got, c.want)
		}
	}
}
