package sheet

import (
	"strconv"

	"casewright/internal/sheet/lettering"
)

// Projection says where the top view stands.
type Projection uint8

// Third angle puts the top view above the front view (US), first angle below
// it (Europe); ISO 5456-2 and ASME Y14.3, from memory. The zero value shows
// no symbol.
const (
	NoProjection Projection = iota
	FirstAngle
	ThirdAngle
)

// ProjectionSymbol is the cone that tells the projection, 20 × 8 mm about At.
func ProjectionSymbol(p Projection, at Point) Item {
	if p == NoProjection {
		return All()
	}
	cone, eye := at.Plus(-5, 0), at.Plus(5.5, 0)
	if p == ThirdAngle {
		cone, eye = at.Plus(5, 0), at.Plus(-5.5, 0)
	}
	// Seen from the left, the cone's small end shows two full circles. In
	// third angle that view stands at the left, beside the small end; in first
	// angle it is thrown over to the right.
	body := []Point{cone.Plus(-4.5, -1.75), cone.Plus(4.5, -3.5), cone.Plus(4.5, 3.5), cone.Plus(-4.5, 1.75)}
	return All(
		Polygon{Rings: [][]Point{body}, Pen: Pen{Width: 0.35}},
		Circle{Centre: eye, Radius: 3.5, Pen: Pen{Width: 0.35}},
		Circle{Centre: eye, Radius: 1.75, Pen: Pen{Width: 0.35}},
		Line{at.Plus(-11, 0), at.Plus(11, 0), Pen{Width: 0.13, Stroke: Chain}},
		Line{eye.Plus(0, -4.5), eye.Plus(0, 4.5), Pen{Width: 0.13, Stroke: Chain}},
	)
}

// Lengths of the test bars.
const (
	testInches      = 6
	testMillimetres = 150
)

// TestBar is the rule that proves a print's size: 6 in on one edge, 150 mm on
// the other. Both directions are needed, since paper feed and print head err
// apart: lay one across, one upright.
type TestBar struct {
	At      Point // its zero
	Upright bool  // runs down from At instead of to the right
}

// TestBarLength is how long a test bar is; its words stand out 7 mm to each
// side of its line and 4 mm beyond its ends.
const TestBarLength = testInches * 25.4

func (b TestBar) lower(c *lowering) {
	items := []Item{Line{Pt(0, 0), Pt(testInches*25.4, 0), Pen{Width: 0.18, Butt: true}}}
	tick := func(x, y float64) {
		items = append(items, Line{Pt(x, 0), Pt(x, y), Pen{Width: 0.18, Butt: true}})
	}
	for i := 0; i <= testInches*8; i++ {
		tick(float64(i)*25.4/8, [...]float64{-3, -1, -1.5, -1, -2, -1, -1.5, -1}[i%8])
	}
	for i := 0; i <= testMillimetres; i += 5 {
		tick(float64(i), map[bool]float64{true: 3, false: 1.5}[i%10 == 0])
	}
	for i := range testInches + 1 {
		items = append(items, testNumber(float64(i)*25.4, -3.6, i, testInches, "in", Baseline))
	}
	for i := 0; i <= testMillimetres; i += 50 {
		items = append(items, testNumber(float64(i), 3.8, i, testMillimetres, "mm", Top))
	}
	items = append(items, Text{At: Pt(25, 3.8), Text: "print at 100 %", Face: lettering.Bold, Size: SizeFine, Align: Center, Level: Top})
	at := Move(b.At.X, b.At.Y)
	if b.Upright {
		at = Turn(-quarter, Point{}).Then(at)
	}
	Group{At: at, Layer: "test bars", Items: items}.lower(c)
}

// testNumber is a number at a tick; the last one names the unit.
func testNumber(x, y float64, n, last int, unit string, level Level) Item {
	text := strconv.Itoa(n)
	if n == last {
		text += " " + unit
	}
	return Text{At: Pt(x, y), Text: text, Size: SizeFine, Align: Center, Level: level}
}

// RegistrationMark is a cross in a circle, to lay one sheet upon the next.
func RegistrationMark(at Point) Item {
	return All(
		Line{at.Plus(-4, 0), at.Plus(4, 0), Fine},
		Line{at.Plus(0, -4), at.Plus(0, 4), Fine},
		Circle{Centre: at, Radius: 2, Pen: Fine},
	)
}

// TickBox is a square to tick off at the bench, side long, upper left at At.
func TickBox(at Point, side float64) Item { return Rect(Box{at.X, at.Y, side, side}, Narrow, NoFill) }

// Blank is a line to write on, from At to the right.
func Blank(at Point, width float64) Item { return Line{at, at.Plus(width, 0), Narrow} }
