package curve

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// The parallel of an arc is an arc about the same centre, and 2·asin(c/2R) of
// turn longer by that times the distance.
func TestOffsetOfArc(t *testing.T) {
	c := must(t, Spec{Kind: Arc, Chord: 800 * measure.Millimetre, Rise: 200 * measure.Millimetre})
	p := mustOffset(t, c, -20*measure.Millimetre)
	if r, ok := p.Radius(); !ok || r != 480*measure.Millimetre {
		t.Errorf("radius %v", say(r))
	}
	testkit.Near(t, p.Y(400), 180, 1e-10)
	testkit.Near(t, p.Y(400-288), 480*0.8-300, 1e-10) // 3-4-5 again: 288² + 384² = 480²
	left, right := p.Ends()
	// The normal at the end is 4/5 along x: 20·4/5 = 16.
	if left != 16*measure.Millimetre || right != 784*measure.Millimetre {
		t.Errorf("ends %v, %v", say(left), say(right))
	}
	testkit.Near(t, p.Length().Millimetres(), c.Length().Millimetres()-20*2*math.Asin(0.8), 1e-5)
}

func TestOffsetsAddUp(t *testing.T) {
	c := must(t, ledge())
	a := mustOffset(t, mustOffset(t, c, 3*measure.Inch), -measure.Inch)
	b := mustOffset(t, c, 2*measure.Inch)
	for x := -50.0; x < 700; x += 11 {
		testkit.Near(t, a.Y(x), b.Y(x), 0)
	}
	if back := mustOffset(t, b, -2*measure.Inch); back != c {
		t.Error("there and back is not the curve itself")
	}
}

func TestInsideOffsetWouldFold(t *testing.T) {
	c := must(t, ledge())
	tightest, _ := c.MinRadius()
	_, err := c.Offset(-tightest)
	var e *Error
	if !errors.As(err, &e) || e.Field != "offset" {
		t.Fatalf("no error: %v", err)
	}
	if e.Limit >= tightest || e.Limit < tightest-2*measure.Micrometre {
		t.Errorf("limit %v, want just under %v", say(e.Limit), say(tightest))
	}
	mustOffset(t, c, -e.Limit+measure.Micrometre)
	mustOffset(t, c, tightest) // outside there is no such limit
	if _, err := c.Offset(math.MinInt64); err == nil {
		t.Error("a gigantic offset must be refused")
	}
}

// What Offset promises: every point of the parallel is d from the curve, with
// corners rounded outside and trimmed inside.
func TestOffsetKeepsItsDistance(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		c, err := New(anySpec(t))
		if err != nil {
			t.Fatal(err)
		}
		tightest, _ := c.MinRadius()
		share := rapid.Float64Range(-0.95, 2).Draw(t, "d/R")
		d := measure.Length(math.Round(share * float64(min(tightest, c.Span()/2))))
		p, err := c.Offset(d)
		if err != nil {
			t.Fatal(err)
		}
		far := math.Abs(d.Millimetres())
		for range 4 {
			at := rapid.Float64Range(0, 1).Draw(t, "at")
			x := p.from + (p.to-p.from)*at
			got := distance(c, Point{x, p.Y(x)}, -far-10, c.to+far+10)
			if math.Abs(got-far) > 1e-6 {
				t.Fatalf("%+v by %v: at x %v the distance is %v", c.spec, d.Millimetres(), x, got)
			}
		}
	})
}

// A parallel answers without gaps or jumps along its whole length.
func TestOffsetIsContinuous(t *testing.T) {
	for _, d := range []measure.Length{-6 * measure.Inch, -measure.Inch, measure.Inch / 4, 3 * measure.Inch} {
		p := mustOffset(t, must(t, ledge()), d)
		last := p.Y(-200)
		for x := -200.0; x < 800; x += 0.01 {
			if y := p.Y(x); math.Abs(y-last) > 0.5 {
				t.Fatalf("offset %v jumps at %v: %v to %v", say(d), x, last, y)
			} else {
				last = y
			}
		}
		for i, n := range p.runs[1:] {
			if n.from != p.runs[i].to {
				t.Errorf("run %d begins at %v, the one before ends at %v", i+1, n.from, p.runs[i].to)
			}
			testkit.Near(t, n.line.at(n.from).y, p.runs[i].line.at(n.from).y, 1e-9)
		}
	}
}

// Length and bend of a parallel against its own points.
func TestOffsetLengthAndBend(t *testing.T) {
	for _, s := range []Spec{ledge(), {Kind: Batten, Chord: measure.Metre, Rise: 250 * measure.Millimetre}} {
		for _, d := range []measure.Length{-2 * measure.Inch, 2 * measure.Inch} {
			p := mustOffset(t, must(t, s), d)
			sum := 0.0
			pts := p.Flatten(p.from, p.to, 1e-5)
			for i := range pts[1:] {
				sum += math.Hypot(pts[i+1].X-pts[i].X, pts[i+1].Y-pts[i].Y)
			}
			testkit.Near(t, p.Length().Millimetres(), sum, 1e-3)
			x, h := (p.l+p.r)/2-41, 0.01
			turn := float64(p.Tangent(x-h)-p.Tangent(x+h)) / p.lengthBetween(x-h, x+h)
			testkit.Near(t, p.Curvature(x), turn, 1e-7)
			base, _ := must(t, s).MinRadius()
			r, _ := p.MinRadius()
			testkit.Near(t, float64(r), float64(base+d), 2)
		}
	}
}
