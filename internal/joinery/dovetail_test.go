package joinery

import (
	"math"
	"slices"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// hallCorner is the upper corner of a hung cabinet: 9/16 stock, 1:8, a back
// rabbet 3/8 deep and 7/8 wide running out through both boards.
func hallCorner() DovetailSpec {
	return DovetailSpec{
		Width: 5*in + 3*in/8, TailStock: 9 * in / 16, PinStock: 9 * in / 16, Slope: oneIn(8),
		Runs: []Run{{4*in + in/2, 5*in + 3*in/8, 3 * in / 8, 3 * in / 8}},
	}
}

// drawerCorner is a drawer side in its front: half-blind, a groove for the
// bottom 3/16 wide, 3/8 above the lower edge.
func drawerCorner() DovetailSpec {
	return DovetailSpec{
		Width: 3*in + in/4, TailStock: 5 * in / 16, PinStock: in / 2, Lap: in / 8, Slope: oneIn(7),
		Runs: []Run{{3 * in / 8, 9 * in / 16, 5 * in / 32, 3 * in / 16}},
	}
}

// The free width is 4 1/2 in, flare 9/16 ÷ 8 = 0.0703. Tail to pin 2 1/2 : 1
// halfway along gives pin = (4.5 − 0.0703 × 12.5) ÷ 11.5 = 0.3149, nearest
// 20/64. Half pin at least 20/64 + 0.0703 = 24.5/64, so 25/64. Tails get
// (288 − 50 − 40) ÷ 3 = 66/64 each.
func TestDovetailsOfAHungCabinet(t *testing.T) {
	l, problems := LayDovetails(hallCorner())
	checkCodes(t, problems)
	if len(l.Tails) != 3 || l.FreeTo != x64(288) || l.HalfPin != x64(25) || l.Narrowest != x64(20) {
		t.Fatalf("got %d tails, free to %v, half pin %v, pin %v", len(l.Tails), l.FreeTo, l.HalfPin, l.Narrowest)
	}
	for i, from := range []int{25, 111, 197} {
		if got := l.Tails[i]; got.TipFrom != x64(from) || got.Tip() != x64(66) {
			t.Errorf("tail %d: tip %v…%v, want from %v, 66/64 wide", i, got.TipFrom, got.TipTo, x64(from))
		}
	}
	if last := l.Pins[3]; last.Tip() != x64(25+56) {
		t.Errorf("end pin %v wide, want the half pin and the rabbet, 81/64", last.Tip())
	}
	if l.Alternative != nil {
		t.Error("an alternative without need")
	}
}

// Joyce: a drawer side up to 6 in has two full pins, a wider one three. Noyes:
// no tail over 1 3/4 in.
func TestNumberOfTails(t *testing.T) {
	for _, c := range []struct {
		name     string
		width    measure.Length
		fullPins int
	}{
		{"low drawer", 3 * in, 2},
		{"six inches", 6 * in, 2},
		{"deep drawer", 6*in + in/2, 3},
		{"rail of a bookcase, too narrow for two pins", in, 0},
	} {
		l, problems := LayDovetails(DovetailSpec{Width: c.width, TailStock: in / 2, PinStock: 3 * in / 4, Lap: in / 4, Slope: oneIn(7)})
		if got := len(l.Pins) - 2; got != c.fullPins || AnyStop(problems) {
			t.Errorf("%s: %d full pins, want %d; %v", c.name, got, c.fullPins, codes(problems))
		}
	}
	for _, width := range []measure.Length{12 * in, 15 * in, 24 * in} {
		l, problems := LayDovetails(DovetailSpec{Width: width, TailStock: 7 * in / 8, PinStock: 7 * in / 8, Slope: oneIn(6)})
		checkCodes(t, problems)
		for _, tail := range l.Tails {
			if tail.Tip() > in+3*in/4 {
				t.Errorf("%v wide: a tail of %v", width, tail.Tip())
			}
		}
	}
}

// Joyce's average of 2 1/2 : 1 must come out within what snapping to 1/64 can
// do to a pin of 1/4 in or more: 1/32 in 1/4 and the same again for the tail.
func TestRatioIsJoyces(t *testing.T) {
	for width := 3 * in; width <= 20*in; width += in / 3 {
		l, _ := LayDovetails(DovetailSpec{Width: width, TailStock: in / 2, PinStock: in / 2, Slope: oneIn(7)})
		if math.Abs(l.Ratio-2.5) > 2.5*0.15 {
			t.Errorf("%v wide: ratio %.2f, want about 2.5", width, l.Ratio)
		}
	}
}

func TestGrooveIsHiddenInATail(t *testing.T) {
	l, problems := LayDovetails(drawerCorner())
	checkCodes(t, problems)
	if !l.hidden(drawerCorner().Runs[0]) {
		t.Errorf("groove not inside the first tail %v", l.Tails[0])
	}
}

// A groove that starts nearer to the edge than a usual half pin is wide moves
// the half pin, not the groove.
func TestHalfPinMakesRoomForTheGroove(t *testing.T) {
	s := drawerCorner()
	s.Runs[0].From, s.Runs[0].To = in/4, 7*in/16
	l, problems := LayDovetails(s)
	if !l.hidden(s.Runs[0]) || AnyStop(problems) {
		t.Fatalf("groove not hidden; %v", codes(problems))
	}
	usual := s
	usual.Runs = nil
	u, _ := LayDovetails(usual)
	if l.HalfPin >= u.HalfPin || len(l.Tails) != len(u.Tails) {
		t.Errorf("half pin %v of %d tails, usual %v of %d", l.HalfPin, len(l.Tails), u.HalfPin, len(u.Tails))
	}
}

func TestGrooveThroughAPinIsReportedWithAWayOut(t *testing.T) {
	s := drawerCorner()
	s.HalfPin = in / 2
	l, problems := LayDovetails(s)
	if l.HalfPin != in/2 {
		t.Errorf("half pin %v, want what was asked for", l.HalfPin)
	}
	checkCodes(t, problems, "dovetail.groove-pin")
	if l.Alternative == nil || !l.Alternative.hidden(s.Runs[0]) {
		t.Fatal("no alternative that hides the groove")
	}
	if l.Alternative.Width != s.Width {
		t.Errorf("alternative of another width: %v", l.Alternative.Width)
	}
}

func TestRabbetThroughATailIsReportedWithAWayOut(t *testing.T) {
	s := hallCorner()
	s.EvenEnds, s.Tails, s.HalfPin = true, 3, x64(32)
	l, problems := LayDovetails(s)
	checkCodes(t, problems, "dovetail.rabbet-tail")
	if l.Alternative == nil || l.Alternative.rabbetCutsTail(s.Runs[0]) {
		t.Error("no alternative clear of the rabbet")
	}
}

func TestGrooveNothingCanHide(t *testing.T) {
	s := drawerCorner()
	s.Runs[0].From, s.Runs[0].To = in/4, 3*in // wider than any tail
	l, problems := LayDovetails(s)
	if !slices.Contains(codes(problems), "dovetail.groove-pin") || l.Alternative != nil {
		t.Errorf("got %v, alternative %v", codes(problems), l.Alternative)
	}
}

func TestWhatStandsAgainstDovetails(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*DovetailSpec)
		want   []string
	}{
		{"nothing", func(*DovetailSpec) {}, nil},
		{"no width", func(s *DovetailSpec) { s.Width = 0 }, []string{"dovetail.size"}},
		{"below zero", func(s *DovetailSpec) { s.TailStock = -in }, []string{"dovetail.size"}},
		{"gigantic", func(s *DovetailSpec) { s.Width = math.MaxInt64 }, []string{"dovetail.size"}},
		{"lap as thick as the front", func(s *DovetailSpec) { s.Lap = s.PinStock }, []string{"dovetail.lap"}},
		{"tails below zero", func(s *DovetailSpec) { s.Tails = -1 }, []string{"dovetail.tails"}},
		{"no slope", func(s *DovetailSpec) { s.Slope = measure.Slope{} }, []string{"dovetail.slope"}},
		{"not a ratio", func(s *DovetailSpec) { s.Ratio = math.NaN() }, []string{"dovetail.ratio"}},
		{"rabbet outside", func(s *DovetailSpec) { s.Runs = []Run{{in, 9 * in, in / 8, 0}} }, []string{"dovetail.run"}},
		{"groove too deep", func(s *DovetailSpec) { s.Runs = []Run{{in, 2 * in, 3 * in / 8, 0}} },
			[]string{"dovetail.run-depth"}},
		{"rabbet past the tails", func(s *DovetailSpec) { s.Runs = []Run{{3 * in, 4 * in, 0, 3 * in / 8}}; s.Lap = in / 4 },
			[]string{"dovetail.run-lap"}},
		{"too many", func(s *DovetailSpec) { s.Tails = 60 }, []string{"dovetail.no-room"}},
		{"half pins meet", func(s *DovetailSpec) { s.HalfPin = 2 * in }, []string{"dovetail.no-room"}},
		{"rabbet over all", func(s *DovetailSpec) { s.Runs = []Run{{0, 4 * in, in / 8, in / 8}} }, []string{"dovetail.no-room"}},
		// 12 tails: pin = (4 − 0.0536 × 44) ÷ 43 = 0.038 in, wide end 0.145: chisel
		// of 1/4 does not enter, kerf of 1/16 neither.
		{"chisel", func(s *DovetailSpec) { s.Tails, s.Chisel, s.MinEndPin = 12, in/4, in/16 }, []string{"dovetail.chisel"}},
		{"kerf", func(s *DovetailSpec) { s.Tails, s.Kerf, s.MinEndPin = 12, in/16, in/16 }, []string{"dovetail.kerf"}},
		{"thin half pin", func(s *DovetailSpec) { s.HalfPin = in / 16 }, []string{"dovetail.half-pin"}},
		{"slim half pin", func(s *DovetailSpec) { s.HalfPin = 5 * in / 32 }, []string{"dovetail.half-pin-slim"}},
		{"one tail", func(s *DovetailSpec) { s.Tails = 1 }, []string{"dovetail.wide-tail"}},
		{"needle pins", func(s *DovetailSpec) { s.Ratio = 6 }, []string{"dovetail.ratio"}},
		{"coarse", func(s *DovetailSpec) { s.Slope = oneIn(4) }, []string{"dovetail.coarse"}},
		{"fine", func(s *DovetailSpec) { s.Slope = oneIn(9) }, []string{"dovetail.fine"}},
		{"at the limits of slope", func(s *DovetailSpec) { s.Slope = oneIn(8) }, nil},
		{"thin lap", func(s *DovetailSpec) { s.Lap = in / 16 }, []string{"dovetail.thin-lap"}},
		{"short tails", func(s *DovetailSpec) { s.Lap = 5 * in / 16 }, []string{"dovetail.short-tail"}},
		{"rabbet lip", func(s *DovetailSpec) { s.Lap = 0; s.Runs = []Run{{3*in + in/2, 4 * in, in / 8, 7 * in / 16}} }, []string{"dovetail.rabbet-lip"}},
		{"groove shows", func(s *DovetailSpec) { s.Lap = 0; s.Runs = []Run{{in / 2, 5 * in / 8, in / 8, in / 8}} }, []string{"dovetail.groove-shows"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := DovetailSpec{Width: 4 * in, TailStock: 3 * in / 8, PinStock: in / 2, Lap: in / 8, Slope: oneIn(7)}
			c.change(&s)
			l, problems := LayDovetails(s)
			checkCodes(t, problems, c.want...)
			if len(l.Tails) == 0 != AnyStop(problems) && l.KerfFits {
				t.Errorf("%d tails with %v", len(l.Tails), codes(problems))
			}
		})
	}
}

// drawCorner draws a corner that may or may not have room for its tails.
func drawCorner(t *rapid.T) DovetailSpec {
	size := func(label string, from, to measure.Length) measure.Length {
		return measure.Length(rapid.Int64Range(int64(from), int64(to)).Draw(t, label))
	}
	s := DovetailSpec{
		Width: size("width", in/2, 30*in), TailStock: size("tail stock", in/8, in), PinStock: size("pin stock", in/8, in),
		Slope: oneIn(rapid.IntRange(4, 9).Draw(t, "slope")), Tails: rapid.IntRange(0, 20).Draw(t, "tails"),
	}
	if rapid.Bool().Draw(t, "half-blind") {
		s.Lap = size("lap", 1, s.PinStock-1)
	}
	if rapid.Bool().Draw(t, "half pin given") {
		s.HalfPin = size("half pin", in/16, in)
	}
	if rapid.Bool().Draw(t, "metric") {
		s.Step = measure.Millimetre / 2
	}
	deep := func() (tail, pin measure.Length) {
		return size("tail depth", 0, s.TailStock/2), size("pin depth", 0, (s.PinStock-s.Lap)/2)
	}
	if rapid.Bool().Draw(t, "rabbet in front") {
		tail, pin := deep()
		s.Runs = append(s.Runs, Run{0, size("front rabbet", 1, s.Width/3), tail, pin})
	}
	if rapid.Bool().Draw(t, "rabbet behind") {
		tail, pin := deep()
		s.Runs = append(s.Runs, Run{s.Width - size("back rabbet", 1, s.Width/3), s.Width, tail, pin})
	}
	return s
}

func drawLayout(t *rapid.T) DovetailLayout {
	s := drawCorner(t)
	l, problems := LayDovetails(s)
	if len(l.Tails) == 0 {
		if !AnyStop(problems) {
			t.Fatalf("no tails and nothing said: %+v", s)
		}
		t.Skip("no room")
	}
	return l
}

func TestTailsAndPinsFillTheWidth(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		if len(l.Pins) != len(l.Tails)+1 {
			t.Fatalf("%d pins for %d tails", len(l.Pins), len(l.Tails))
		}
		var tip, base measure.Length
		for i, p := range l.Pins {
			tip, base = tip+p.Tip(), base+p.Base()
			if i < len(l.Tails) {
				tip, base = tip+l.Tails[i].Tip(), base+l.Tails[i].Base()
			}
			if p.Tip() <= 0 || p.Base() <= p.Tip() {
				t.Errorf("pin %d: %v at the tip, %v at the base", i, p.Tip(), p.Base())
			}
		}
		if tip != l.Width || base != l.Width {
			t.Errorf("tips add up to %v, bases to %v, corner %v", tip, base, l.Width)
		}
		for i, tail := range l.Tails {
			if tail.Base() <= 0 || tail.Tip() != tail.Base()+2*l.Flare {
				t.Errorf("tail %d: %v at the tip, %v at the base", i, tail.Tip(), tail.Base())
			}
		}
	})
}

func TestTailsAreSymmetricInTheFreeWidth(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		turn := func(at measure.Length) measure.Length { return l.FreeFrom + l.FreeTo - at }
		for i, tail := range l.Tails {
			other := l.Tails[len(l.Tails)-1-i]
			if turned := (Wedge{turn(other.TipTo), turn(other.TipFrom), turn(other.BaseTo), turn(other.BaseFrom)}); turned != tail {
				t.Fatalf("tail %d %v, its mirror %v", i, tail, turned)
			}
			if i > 0 && i <= (len(l.Tails)-1)/2 && tail.Tip() < l.Tails[i-1].Tip() {
				t.Errorf("tails get narrower towards the middle: %v", l.Tails)
			}
		}
	})
}

// What a maker marks from either edge of the free width is a whole step.
func TestTipsFallOnWholeSteps(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s := drawCorner(t)
		s.HalfPin, s.Step = 0, measure.SixtyFourth
		l, _ := LayDovetails(s)
		for _, tail := range l.Tails {
			for _, at := range []measure.Length{tail.TipFrom, tail.TipTo} {
				near := min(at-l.FreeFrom, l.FreeTo-at)
				if near%s.Step != 0 {
					t.Fatalf("edge at %v of a free width of %v: not whole 64ths from the nearer end", near, l.FreeTo-l.FreeFrom)
				}
			}
		}
	})
}

// drawCut draws where the two boards of a corner lie and cuts them.
func drawCut(t *rapid.T, l *DovetailLayout) (tail, pin Corner, tails, pins []Feature) {
	draw := func(label string, thickness measure.Length) Corner {
		below, above := in*measure.Length(rapid.IntRange(0, 2).Draw(t, label+" below")), in/3
		c := Corner{
			Box: Box{24 * in, l.Width + below + above, thickness}, At: below,
			End: End(rapid.IntRange(0, 1).Draw(t, label+" end")), Inside: Side(rapid.IntRange(0, 1).Draw(t, label+" inside")),
			Turned: rapid.Bool().Draw(t, label+" turned"),
		}
		if c.Turned {
			c.At += l.Width
		}
		return c
	}
	tail, pin = draw("tail board", l.TailStock), draw("pin board", l.PinStock)
	tails, p := l.TailFeatures(tail)
	pins, q := l.PinFeatures(pin)
	if len(p)+len(q) > 0 {
		t.Fatalf("cannot be cut: %v %v", codes(p), codes(q))
	}
	return tail, pin, tails, pins
}

func TestDovetailFeaturesAreSound(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		tail, pin, tails, pins := drawCut(t, &l)
		checkFeatures(t, tail.Box, tails)
		checkFeatures(t, pin.Box, pins)
		if len(pins) != len(l.Tails) || len(tails) < len(l.Pins) {
			t.Errorf("%d sockets and %d wastes for %d tails", len(pins), len(tails), len(l.Tails))
		}
		// A socket is a trapezoid: mean width × tail length × socket depth.
		var want float64
		for _, w := range l.Tails {
			want += (w.Tip() + w.Base()).Millimetres() / 2 * l.TailLength.Millimetres() * l.SocketDepth.Millimetres()
		}
		if got := float64(pin.Box.Removed(pins)); math.Abs(got-want) > 1e-6*want {
			t.Errorf("sockets of %v mm³, want %v", got, want)
		}
	})
}

// At every depth a tail is as wide as its socket, to the nanometre. Widths are
// compared in eighths of a nanometre so that the test needs no rounding.
func TestTailsFillTheirSockets(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s := drawCorner(t)
		s.Runs = nil
		l, _ := LayDovetails(s)
		if len(l.Tails) == 0 {
			t.Skip("no room")
		}
		tail, pin, tails, pins := drawCut(t, &l)
		for i := range l.Tails {
			for k := measure.Length(0); k <= 8; k++ {
				lo := eighthAt(tails[i], L, tail.along(0), k, tail)
				hi := eighthAt(tails[i+1], L, tail.along(0), k, tail)
				got := hi.from - lo.to
				socket := eighthAt(pins[i], T, pin.Box.inward(pin.Inside.Face(), l.TailLength, l.TailLength).from, k, pin)
				if want := socket.width(); got != want {
					t.Fatalf("tail %d, %d/8 from its tip: %d wide, socket %d (eighths of a nanometre)", i, k, got, want)
				}
			}
		}
	})
}

// eighthAt is the stretch of a trapezoid across the corner, k eighths of the
// way from its tip to its base, in eighths of a nanometre. Which of the two
// outline directions runs along the joint depends on the board: its length on
// the tail board, its thickness on the pin board.
func eighthAt(f Feature, along Axis, tip measure.Length, k measure.Length, c Corner) span {
	u, _ := cyclic(f.Axis)
	at := map[bool]span{}
	for _, p := range f.Outline {
		deep, wide := p.V, p.U
		if u == along {
			deep, wide = p.U, p.V
		}
		if c.Turned {
			wide = c.At - wide
		} else {
			wide -= c.At
		}
		s, ok := at[deep == tip]
		if !ok {
			s = span{wide, wide}
		}
		at[deep == tip] = span{min(s.from, wide), max(s.to, wide)}
	}
	a, b := at[true], at[false]
	return span{a.from*(8-k) + b.from*k, a.to*(8-k) + b.to*k}
}

// In the corner every spot belongs to one board, and to none only where the
// rabbets of both meet. The two boards are laid into one frame: x into the
// joint from the outside of the pin board, y from the outside of the tail
// board, z across.
func TestNothingOverlapsAndNoHoleIsLeft(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l := drawLayout(t)
		for i, r := range l.Runs {
			if r.TailDepth == 0 || r.PinDepth == 0 {
				l.Runs[i].TailDepth, l.Runs[i].PinDepth = 0, 0
			}
		}
		tail := Corner{Box: Box{10 * in, l.Width, l.TailStock}, Inside: High}
		pin := Corner{Box: Box{10 * in, l.Width, l.PinStock}, Inside: High}
		tails, _ := l.TailFeatures(tail)
		pins, _ := l.PinFeatures(pin)
		for _, r := range l.Runs {
			if r.PinDepth > 0 {
				tails = append(tails, block(Rabbet, L, [3]span{{0, tail.Box.L}, r.span(), tail.Box.inward(HighSide, 0, r.TailDepth)}))
				pins = append(pins, block(Rabbet, L, [3]span{{0, pin.Box.L}, r.span(), pin.Box.inward(HighSide, 0, r.PinDepth)}))
			}
		}
		d := drawDice(t)
		for range spotsEach {
			x, y, z := d.within(l.PinStock), d.within(l.TailStock), d.within(l.Width)
			want, got := 1, 0
			for _, r := range l.Runs {
				if z > r.From.Millimetres() && z < r.To.Millimetres() &&
					x > (l.PinStock-r.PinDepth).Millimetres() && y > (l.TailStock-r.TailDepth).Millimetres() {
					want = 0
				}
			}
			if wood(tail.Box, tails, spot{x - l.Lap.Millimetres(), z, y}) {
				got++
			}
			if wood(pin.Box, pins, spot{y, z, x}) {
				got++
			}
			if got != want {
				t.Fatalf("%d boards at x %.3f y %.3f z %.3f, want %d; tails %v runs %v", got, x, y, z, want, l.Tails, l.Runs)
			}
		}
	})
}

func TestCornerThatDoesNotFit(t *testing.T) {
	l, _ := LayDovetails(hallCorner())
	good := Corner{Box: Box{20 * in, l.Width, l.TailStock}}
	for _, c := range []struct {
		name   string
		change func(*Corner)
		want   []string
	}{
		{"fits", func(*Corner) {}, nil},
		{"no part", func(c *Corner) { c.Box.L = 0 }, []string{"dovetail.part"}},
		{"narrow", func(c *Corner) { c.Box.W -= in }, []string{"dovetail.too-wide"}},
		{"pushed out", func(c *Corner) { c.At = 1 }, []string{"dovetail.too-wide"}},
		{"turned off the board", func(c *Corner) { c.Turned = true }, []string{"dovetail.too-wide"}},
		{"other stock", func(c *Corner) { c.Box.T += in / 16 }, []string{"dovetail.stock"}},
		{"short", func(c *Corner) { c.Box.L = in / 2 }, []string{"dovetail.short"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			at := good
			c.change(&at)
			f, problems := l.TailFeatures(at)
			checkCodes(t, problems, c.want...)
			if (len(f) > 0) != (len(problems) == 0) {
				t.Errorf("%d features with %v", len(f), codes(problems))
			}
			_, problems = l.PinFeatures(at) // same stock on both boards
			checkCodes(t, problems, c.want...)
		})
	}
}

func BenchmarkLayDovetails(b *testing.B) {
	for _, c := range []struct {
		name string
		spec DovetailSpec
	}{{"hung cabinet", hallCorner()}, {"drawer", drawerCorner()}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				LayDovetails(c.spec)
			}
		})
	}
}
