package wood

import (
	"errors"
	"math"
	"strings"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"
	"pgregory.net/rapid"
)

const thou = measure.Inch / 1000

// coefficients is a wood of which only one movement matters.
func coefficients(t testing.TB, radial, tangential Coefficient) *Species {
	t.Helper()
	s, err := Custom(Own{Name: "trial", Radial: radial, Tangential: tangential, Gravity12: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Printed examples, and values worked by hand from Eq. 13-3.
func TestMovementExamples(t *testing.T) {
	for _, c := range []struct {
		source    string
		wood      *Species
		cut       Cut
		d         Direction
		size      measure.Length
		from, to  measure.MoistureContent
		want      measure.Length
		tolerance measure.Length // half of the last place printed
	}{
		{"FPL-GTR-190 (2010) p. 13-17, in mm", find(t, "white fir"), FlatSawn, Width, 232 * measure.Millimetre, 8, 11, 1_700_000, 50_000},
		{"the same board in inches", find(t, "white fir"), FlatSawn, Width, 9150 * thou, 8, 11, 67 * thou, thou / 2},
		{"Hardwood Floors magazine, 2016-12-06", find(t, "red oak"), FlatSawn, Width, 5 * measure.Inch, 6, 9, 55 * thou, thou / 2},
		{"flooring trade chart, mesquite", coefficients(t, 0.001, 0.00129), FlatSawn, Width, 5 * measure.Inch, 6, 9, 19 * thou, thou / 2},
		{"Wood magazine, Sept. 2021, red alder rounded to 0.0026, 6 points", coefficients(t, 0.0015, 0.0026), FlatSawn, Width, 8 * measure.Inch, 6, 12, 1248 * thou / 10, thou / 20},
		// −6 × 8 / (3000/7.3 − 30 + 10) = −0.12277
		{"Eq. 13-3, red alder", find(t, "alder"), FlatSawn, Width, 8 * measure.Inch, 10, 4, -1228 * thou / 10, thou / 20},
		// −10 × 450 / (3000/5.6 − 30 + 18) = −8.59
		{"Eq. 13-3, white oak", find(t, "white oak"), QuarterSawn, Width, 450 * measure.Millimetre, 18, 8, -8_590_000, 5_000},
		// a green board: −22 × 450 / (3000/5.6 − 30 + 30) = −18.48, however wet it was
		{"Eq. 13-3 above fibre saturation", find(t, "white oak"), QuarterSawn, Width, 450 * measure.Millimetre, 70, 8, -18_480_000, 500},
	} {
		m, err := c.wood.Move(c.size, c.from, c.to, c.cut, c.d)
		if err != nil {
			t.Errorf("%s: %v", c.source, err)
			continue
		}
		if off := m.Change - c.want; off < -c.tolerance || off > c.tolerance {
			t.Errorf("%s: moves %.4f mm, want %.4f", c.source, m.Change.Millimetres(), c.want.Millimetres())
		}
	}
	// p. 13-17 names C_R 0.00112 for the thickness of the white fir board.
	m, err := find(t, "white fir").Move(measure.Inch, 8, 11, FlatSawn, Thickness)
	if err != nil || m.Coefficient != 0.00112 {
		t.Errorf("white fir thickness: %v (%v)", m.Coefficient, err)
	}
}

// Sugar maple 12 in flat-sawn from 6 to 12 %: 12 × 0.00353 × 6 = 0.2542 by
// Eq. 13-2, 6 × 12 / (3000/9.9 − 30 + 6) = 0.2580 by Eq. 13-3.
func TestBothEquations(t *testing.T) {
	maple := find(t, "hard maple")
	m, err := maple.Move(12*measure.Inch, 6, 12, FlatSawn, Width)
	if err != nil || math.Abs(m.Change.Inches()-0.2542) > 5e-5 {
		t.Errorf("Eq. 13-2: %.5f (%v)", m.Change.Inches(), err)
	}
	c := outside(maple.workTangential, 30, 6)
	if got := 12 * 6 * float64(c); math.Abs(got-0.2580) > 5e-5 {
		t.Errorf("Eq. 13-3: %.5f", got)
	}
}

func TestMoveExplainsItself(t *testing.T) {
	m, err := find(t, "cherry").Move(7*measure.Inch, 7.5, 10.9, FlatSawn, Width)
	if err != nil {
		t.Fatal(err)
	}
	const want = "Black cherry, flat-sawn width: 0.00248 of the size for each percent of moisture, from 7.5 to 10.9 %" +
		" (FPL-GTR-190 (2010) Eq. 13-2 p. 13-15; FPL-GTR-190 (2010) Table 13-5 p. 13-16)"
	if m.Words() != want {
		t.Errorf("got  %s\nwant %s", m.Words(), want)
	}
	for _, c := range []struct {
		name     string
		from, to measure.MoistureContent
		equation string
		wet      bool
	}{
		{"inside", 6, 14, withinSource, false},
		{"too dry", 5.9, 14, outsideSource, false},
		{"too damp", 6, 14.1, outsideSource, false},
		{"green", 40, 10, outsideSource, true},
	} {
		m, err := find(t, "yellow-poplar").Move(measure.Metre, c.from, c.to, RiftSawn, Width)
		if err != nil || m.Equation != c.equation || m.Saturated != c.wet {
			t.Errorf("%s: %s, saturated %v (%v)", c.name, m.Equation, m.Saturated, err)
		}
		if m.Status != Memory || !strings.Contains(m.Words(), "from memory") {
			t.Errorf("%s: memory forgotten: %s", c.name, m.Words())
		}
	}
	// One of the pair from memory makes a rift board from memory.
	if m, _ := find(t, "hickory").Move(measure.Metre, 8, 9, RiftSawn, Width); m.Status != Memory {
		t.Errorf("hickory rift: %s", m.Status)
	}
	if m, _ := find(t, "hickory").Move(measure.Metre, 8, 9, FlatSawn, Width); m.Status != Read {
		t.Errorf("hickory flat: %s", m.Status)
	}
}

// Total shrinkage with the grain is 0.1 to 0.2 % (FPL-GTR-190 (2010) p. 4-5),
// so a metre from green to oven-dry gives 1 to 2 mm in any wood.
func TestMovementAlongTheGrain(t *testing.T) {
	for _, s := range All() {
		m, err := s.Move(measure.Metre, 30, 0, FlatSawn, Length)
		if err != nil || m.Change > -measure.Millimetre || m.Change < -2*measure.Millimetre {
			t.Errorf("%s: %.3f mm (%v)", s.Key, m.Change.Millimetres(), err)
		}
	}
}

func TestMoveRefuses(t *testing.T) {
	cherry, wenge := find(t, "cherry"), find(t, "wenge")
	var missing *MissingError
	if _, err := wenge.Move(measure.Inch, 8, 10, QuarterSawn, Width); !errors.As(err, &missing) || !strings.Contains(err.Error(), "radial movement for Wenge") {
		t.Errorf("wenge quartersawn: %v", err)
	}
	if _, err := wenge.Move(measure.Inch, 8, 10, RiftSawn, Width); !errors.As(err, &missing) {
		t.Errorf("wenge rift: %v", err)
	}
	if m, err := wenge.Move(measure.Inch, 8, 10, FlatSawn, Width); err != nil || m.Coefficient != 0.00201 {
		t.Errorf("wenge flat: %v (%v)", m.Coefficient, err)
	}
	var out *RangeError
	for _, mc := range []measure.MoistureContent{-1, 1e9, measure.MoistureContent(math.NaN()), measure.MoistureContent(math.Inf(1))} {
		if _, err := cherry.Move(measure.Inch, 8, mc, FlatSawn, Width); !errors.As(err, &out) {
			t.Errorf("to %g: %v", float64(mc), err)
		}
		if _, err := cherry.Move(measure.Inch, mc, 8, FlatSawn, Width); !errors.As(err, &out) {
			t.Errorf("from %g: %v", float64(mc), err)
		}
	}
	for _, a := range []float64{-0.1, 1.6, math.NaN()} {
		if _, err := RingsAt(measure.Angle(a)); err == nil {
			t.Errorf("rings at %g passed", a)
		}
	}
}

func TestParseCut(t *testing.T) {
	for name, want := range map[string]Cut{"flat": FlatSawn, "Flat-sawn": FlatSawn, "plainsawn": FlatSawn, "rift": RiftSawn, "Quarter sawn": QuarterSawn, "quarter": QuarterSawn} {
		if got, err := ParseCut(name); err != nil || got != want {
			t.Errorf("%q: %v (%v)", name, got, err)
		}
		if again, err := ParseCut(want.String()); err != nil || again != want {
			t.Errorf("%v does not read back: %v", want, err)
		}
	}
	if _, err := ParseCut("bastard"); err == nil || err.Error() != `no cut called "bastard"; it is flat, rift or quarter` {
		t.Error(err)
	}
	thirty, err := RingsAt(math.Pi / 6)
	if err != nil || thirty.String() != "rings at 30°" {
		t.Errorf("%v (%v)", thirty, err)
	}
}

// anyMove draws a wood with both coefficients, a cut and a side.
func anyMove(t *rapid.T) (*Species, Cut, Direction) {
	s := rapid.SampledFrom(All()).Filter(func(s *Species) bool { return s.Radial.Known() }).Draw(t, "wood")
	cut, err := RingsAt(measure.Angle(rapid.Float64Range(0, math.Pi/2).Draw(t, "rings")))
	if err != nil {
		t.Fatal(err)
	}
	return s, cut, Direction(rapid.IntRange(0, 2).Draw(t, "side"))
}

func mustMove(t *rapid.T, s *Species, size measure.Length, from, to float64, cut Cut, d Direction) Move {
	m, err := s.Move(size, measure.MoistureContent(from), measure.MoistureContent(to), cut, d)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestMoveProperties(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s, cut, d := anyMove(t)
		size := measure.Length(rapid.Int64Range(0, int64(5*measure.Metre)).Draw(t, "size"))
		mc := rapid.Float64Range(0, 40)
		from, to, damper := mc.Draw(t, "from"), mc.Draw(t, "to"), mc.Draw(t, "damper")

		m := mustMove(t, s, size, from, to, cut, d)
		// No wood here moves by a fifth of its size, and drying never swells.
		if c := float64(m.Coefficient); math.IsNaN(c) || !within(c, 1e-5, 0.006) {
			t.Fatalf("coefficient %g", c)
		}
		if math.Abs(float64(m.Change)) > 0.2*float64(size) || float64(m.Change)*(to-from) < 0 {
			t.Fatalf("moves %d of %d from %g to %g", m.Change, size, from, to)
		}
		// There and back is where it started: exactly the line of Eq. 13-3, and
		// within Eq. 13-2 to the square of the movement.
		back := mustMove(t, s, size+m.Change, to, from, cut, d)
		off := float64(m.Change + back.Change)
		if limit := 2 + 0.02*math.Abs(float64(m.Change)); math.Abs(off) > limit || m.Equation == outsideSource && math.Abs(off) > 2 {
			t.Fatalf("comes back %g nm off (%s)", off, m.Equation)
		}
		// The same board the other way round: exactly opposite within Eq. 13-2.
		if other := mustMove(t, s, size, to, from, cut, d); m.Equation == withinSource && other.Change != -m.Change {
			t.Fatalf("%d one way, %d the other", m.Change, other.Change)
		}
		// More moisture, more swelling, as far as one equation reaches; across
		// the seam the two may disagree by the 2 % the comment at Move states.
		if damper > to {
			n := mustMove(t, s, size, from, damper, cut, d)
			slack := 1.0
			if n.Equation != m.Equation {
				slack += 0.02 * math.Abs(float64(m.Change))
			}
			if float64(n.Change) < float64(m.Change)-slack {
				t.Fatalf("%g %% swells by %d, %g %% by %d", to, m.Change, damper, n.Change)
			}
		}
	})
}

// Turning the rings moves strain from one side of the board to the other: width
// and thickness together always move by C_R + C_T, and rift by their mean.
func TestTurningTheRings(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		s, cut, _ := anyMove(t)
		w := mustMove(t, s, measure.Metre, 8, 9, cut, Width).Coefficient
		h := mustMove(t, s, measure.Metre, 8, 9, cut, Thickness).Coefficient
		if both := s.Radial.Value + s.Tangential.Value; math.Abs(float64(w+h-both)) > 1e-12 {
			t.Fatalf("%s: %g and %g, want %g together", s.Key, float64(w), float64(h), float64(both))
		}
		if w > s.Tangential.Value || w < s.Radial.Value {
			t.Fatalf("%s: %g outside the pair", s.Key, float64(w))
		}
	})
	m, err := find(t, "cherry").Move(measure.Metre, 8, 9, RiftSawn, Width)
	if err != nil || math.Abs(float64(m.Coefficient)-0.00187) > 1e-12 {
		t.Errorf("rift cherry: %g (%v), want (0.00126 + 0.00248)/2", float64(m.Coefficient), err)
	}
}

// Width 8 in, ring radius 6 in, commercial red oak, 4 points lost: 64 × (0.00369
// − 0.00158) × 4 / 24 = 0.0225 in. Beside the closed form the ring geometry is
// worked in full, as the comment at Cup sets it out.
func TestCup(t *testing.T) {
	oak := find(t, "red oak")
	c, err := oak.Cup(8*measure.Inch, 6*measure.Inch, 10, 6)
	if err != nil || math.Abs(c.Depth.Inches()-0.0225) > 5e-5 || !c.BarkSide {
		t.Errorf("cup %.5f, bark side %v (%v)", c.Depth.Inches(), c.BarkSide, err)
	}
	if c, err := oak.Cup(8*measure.Inch, 6*measure.Inch, 6, 10); err != nil || c.BarkSide || c.Depth <= 0 {
		t.Errorf("wetting hollows the heart side: %+v (%v)", c, err)
	}
	const w, r, lost = 4.0, 12.0, 4.0
	delta, radius := (0.00369-0.00158)*lost, 1-0.00158*lost
	theta := math.Atan(w / 2 / r)
	edge := r * radius / math.Cos(theta) * math.Cos(theta*(1-delta))
	exact := edge - r*radius
	c, err = oak.Cup(4*measure.Inch, 12*measure.Inch, 10, 6)
	if err != nil || math.Abs(c.Depth.Inches()/exact-1) > 0.03 {
		t.Errorf("cup %.5f, full geometry %.5f (%v)", c.Depth.Inches(), exact, err)
	}
	for _, bad := range [][2]measure.Length{{0, 1}, {1, 0}, {-1, 1}, {3, 1}} {
		if _, err := oak.Cup(bad[0], bad[1], 10, 6); err == nil {
			t.Errorf("cup of %v passed", bad)
		}
	}
	if _, err := find(t, "wenge").Cup(2, 2, 10, 6); err == nil {
		t.Error("cup without radial movement")
	}
}

func BenchmarkMove(b *testing.B) {
	s := find(b, "cherry")
	b.ReportAllocs()
	for b.Loop() {
		_, _ = s.Move(7*measure.Inch, 7.5, 10.9, RiftSawn, Width)
	}
}
