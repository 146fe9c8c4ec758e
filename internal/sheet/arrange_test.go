package sheet_test

import (
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

// TestArrange: the figures stand in projection, inside the frame, and no text
// of one prints over another, whatever the sizes.
func TestArrange(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		length := func(name string) measure.Length {
			return measure.Length(rapid.Int64Range(int64(measure.Inch), int64(90*measure.Inch)).Draw(t, name))
		}
		w, h, d := length("width"), length("height"), length("depth")
		from := rapid.Float64Range(-300, 300).Draw(t, "from")
		figure := func(name string, w, h measure.Length, sides ...sheet.Side) sheet.Figure {
			b := sheet.Box{X: from, Y: -from, W: w.Millimetres(), H: h.Millimetres()}
			return sheet.Figure{Name: name, Model: b, Items: []sheet.Item{sheet.Rect(b, sheet.Wide, 0)}, Dims: func(v sheet.View) []sheet.Dim {
				var out []sheet.Dim
				for _, s := range sides {
					p := v.OnPaper()
					stops := []float64{p.X, p.X + p.W/3, p.X + p.W/2.9, p.Right()}
					if s == sheet.LeftOf || s == sheet.RightOf {
						stops = []float64{p.Y, p.Y + p.H/3, p.Y + p.H/2.9, p.Bottom()}
					}
					out = append(out, sheet.Dim{Side: s, Stops: stops, Labels: []string{"17 3/8", "9/16", "119 31/32"}})
				}
				return out
			}}
		}
		f := sheet.Figures{
			Front: figure("front", w, h, sheet.Below, sheet.LeftOf), Top: figure("from above", w, d, sheet.RightOf, sheet.Above),
			Side: figure("section", d, h, sheet.Above, sheet.Below), Projection: sheet.Projection(rapid.IntRange(1, 2).Draw(t, "projection")),
		}
		frame := sheet.Letter.Landscape().Frame()
		a := f.Arrange(frame, sheet.InchScales)
		front, top, side := a.Front.OnPaper(), a.Top.OnPaper(), a.Side.OnPaper()
		nearly(t, front.X, top.X)
		nearly(t, front.Bottom(), side.Bottom())
		if above := top.Bottom() < front.Y; above != (f.Projection == sheet.ThirdAngle) {
			t.Fatalf("top view above: %v in projection %v", above, f.Projection)
		}
		if a.Fits && !frame.Inset(-1e-4).Contains(sheet.Bounds(a)) { // a ten-thousandth of a millimetre: float64, not paper
			t.Fatalf("figures take %v of %v", sheet.Bounds(a), frame)
		}
		apart(t, sheet.TextBoxes(a))
	})
}

// TestArrangeLargest: the scale is the largest that fits. A front of 200 × 100
// mm without anything else needs 200 + 8 mm of name in height at 1:1.
func TestArrangeLargest(t *testing.T) {
	f := sheet.Figures{Front: sheet.Figure{Name: "front", Model: sheet.Box{W: 200, H: 100}}}
	for _, c := range []struct {
		w, h float64
		want string
		fits bool
	}{
		{200, 108, "SCALE 1:1", true},
		{200, 107.9, "SCALE 1:2", true},
		{199, 200, "SCALE 1:2", true},
		{1, 1, "SCALE 1:100", false},
	} {
		a := f.Arrange(sheet.Box{W: c.w, H: c.h}, sheet.MetricScales)
		if a.Scale.String() != c.want || a.Fits != c.fits {
			t.Errorf("%g × %g: %s, fits %v; want %s, %v", c.w, c.h, a.Scale, a.Fits, c.want, c.fits)
		}
	}
	a := sheet.Figures{}.Arrange(sheet.Box{W: 10, H: 10}, sheet.MetricScales)
	testkit.Diff(t, 0, len(a.Items))
}
