package sheet_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/testkit"
)

var outline = sheet.Box{X: 60, Y: 80, W: 90, H: 120}

// randomDims draws dimensions on all sides: chains, single ones, crowded ones,
// ones without room, stops falling and rising.
func randomDims(t *rapid.T) []sheet.Dim {
	var dims []sheet.Dim
	for range rapid.IntRange(0, 9).Draw(t, "dims") {
		side := sheet.Side(rapid.IntRange(0, 3).Draw(t, "side"))
		from, size := outline.X, outline.W
		if side == sheet.LeftOf || side == sheet.RightOf {
			from, size = outline.Y, outline.H
		}
		n := rapid.IntRange(2, 9).Draw(t, "stops")
		at := rapid.SliceOfN(rapid.Float64Range(0, 1), n, n).Draw(t, "at")
		sorted(at)
		d := sheet.Dim{Side: side}
		for i, v := range at {
			d.Stops = append(d.Stops, from+v*size)
			if i > 0 {
				d.Labels = append(d.Labels, rapid.SampledFrom([]string{"9/16", "26 3/4", "5", "", "119 31/32", "1/64", "3 1/2"}).Draw(t, "label"))
			}
		}
		dims = append(dims, d)
	}
	return dims
}

func sorted(v []float64) {
	for i := range v {
		for j := i; j > 0 && v[j] < v[j-1]; j-- {
			v[j], v[j-1] = v[j-1], v[j]
		}
	}
}

// TestValuesNeverOverlap is the promise of Dimensions: whatever is asked, no
// value prints over another, over the view, or over a box to avoid; each label
// is printed; and the room returned holds them all.
func TestValuesNeverOverlap(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		dims := randomDims(t)
		size := rapid.SampledFrom([]lettering.Points{0, 7, 14, 28}).Draw(t, "size")
		avoid := sheet.Box{X: 90, Y: 215, W: 25, H: 9}
		d := sheet.Dimensions(outline, sheet.DimStyle{Size: size, Avoid: []sheet.Box{avoid}}, dims...)
		boxes := d.Boxes
		for i, a := range boxes {
			for _, b := range boxes[:i] {
				if a.Overlaps(b) {
					t.Fatalf("values print over each other: %v %v", a, b)
				}
			}
			if a.Overlaps(outline) || a.Overlaps(avoid) {
				t.Fatalf("value %v prints over the view or a box to avoid", a)
			}
			if !d.Room.Around(outline).Contains(a) {
				t.Fatalf("value %v lies outside the room %v", a, d.Room)
			}
		}
		testkitSame(t, printed(d), wanted(dims))
	})
}

// printed and wanted count labels; a stacked fraction is three runs, so they
// are counted by the boxes of whole texts.
func printed(d sheet.Dimensioned) int { return len(sheet.TextBoxes(d)) }

func wanted(dims []sheet.Dim) int {
	n := 0
	for _, d := range dims {
		for _, l := range d.Labels {
			if l != "" {
				n++
			}
		}
	}
	return n
}

func testkitSame(t *rapid.T, got, want int) {
	if got != want {
		t.Fatalf("%d values printed, want %d", got, want)
	}
}

// dimensionLines finds how far below the outline each dimension line runs.
func dimensionLines(d sheet.Dimensioned) []float64 {
	var out []float64
	for _, it := range d.Items {
		if l, ok := it.(sheet.Line); ok && l.A.Y == l.B.Y {
			out = append(out, l.A.Y-outline.Bottom())
		}
	}
	return out
}

// TestSpacing: first line 10 mm off, further ones 8 mm, shortest nearest
// (textbook on ISO and IS dimensioning; ASME Y14.5 for the order).
func TestSpacing(t *testing.T) {
	x := outline.X
	d := sheet.Dimensions(outline, sheet.DimStyle{Size: sheet.SizeFine},
		sheet.Dim{Side: sheet.Below, Stops: []float64{x, x + 90}, Labels: []string{"20"}},
		sheet.Dim{Side: sheet.Below, Stops: []float64{x, x + 30}, Labels: []string{"7"}},
		sheet.Dim{Side: sheet.Below, Stops: []float64{x, x + 60}, Labels: []string{"14"}},
		sheet.Dim{Side: sheet.Below, Stops: []float64{x + 40, x + 65}, Labels: []string{"6"}},
	)
	// 6 and 7 do not meet and share the first line; 14 meets both; 20 is last.
	testkit.Diff(t, []float64{10, 10, 18, 26}, dimensionLines(d))
	testkit.Near(t, d.Room.Bottom, 26+1.5, 1e-9)
	testkit.Near(t, d.Room.Top, 0, 0)
}

// TestLargeTypeSpreads: with bench-size values the lines move apart by
// themselves.
func TestLargeTypeSpreads(t *testing.T) {
	x := outline.X
	d := sheet.Dimensions(outline, sheet.DimStyle{Size: sheet.SizeKey},
		sheet.Dim{Side: sheet.Below, Stops: []float64{x, x + 60}, Labels: []string{"7 1/2"}},
		sheet.Dim{Side: sheet.Below, Stops: []float64{x, x + 90}, Labels: []string{"20 1/2"}},
	)
	at := dimensionLines(d)
	if len(at) != 2 || at[1]-at[0] < sheet.SizeKey.Millimetres() {
		t.Errorf("lines at %v are too close for 28 pt", at)
	}
}

func TestDimensionsLeaveOutNonsense(t *testing.T) {
	nan := math.NaN()
	d := sheet.Dimensions(outline, sheet.DimStyle{},
		sheet.Dim{}, sheet.Dim{Stops: []float64{1}}, sheet.Dim{Stops: []float64{1, nan}},
		sheet.Dim{Stops: []float64{1, 5, 3}}, sheet.Dim{Stops: []float64{1, math.Inf(1)}})
	if len(d.Items) != 0 {
		t.Errorf("got %d items for stops that are no places", len(d.Items))
	}
	// labels missing or too many, unprintable ones
	d = sheet.Dimensions(outline, sheet.DimStyle{}, sheet.Dim{Stops: []float64{60, 90, 120}, Labels: []string{"\a"}},
		sheet.Dim{Stops: []float64{60, 90}, Labels: []string{"5", "6", "7"}})
	if got := printed(d); got != 1 {
		t.Errorf("%d values printed, want 1", got)
	}
}

// TestFallingStops: a view's y falls on paper while the model's rises, so a
// chain given from the floor up must come out the same.
func TestFallingStops(t *testing.T) {
	up := sheet.Dimensions(outline, sheet.DimStyle{}, sheet.Dim{Side: sheet.LeftOf, Stops: []float64{200, 120, 80}, Labels: []string{"low", "high"}})
	down := sheet.Dimensions(outline, sheet.DimStyle{}, sheet.Dim{Side: sheet.LeftOf, Stops: []float64{80, 120, 200}, Labels: []string{"high", "low"}})
	if fmt.Sprint(up.Items) != fmt.Sprint(down.Items) {
		t.Errorf("falling and rising stops differ:\n%v\n%v", up.Items, down.Items)
	}
}

// TestAlignedDim: the value of a sloping dimension stands clear of its line.
func TestAlignedDim(t *testing.T) {
	for deg := 0; deg < 360; deg += 15 {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		a := sheet.Pt(100, 100)
		d := sheet.AlignedDim{A: a, B: a.Plus(60*cos, -60*sin), Offset: 10, Label: "5 13/32"}
		svg := string(sheet.SVGOf(sheet.Box{W: 200, H: 200}, []sheet.Item{d}, sheet.TextByFont))
		if !strings.Contains(svg, "5 13/32") {
			t.Errorf("%d°: value missing", deg)
		}
		if n := strings.Count(svg, "rotate("); n > 1 {
			t.Errorf("%d°: %d turned texts", deg, n)
		}
	}
	if svg := sheet.SVGOf(sheet.Box{W: 9, H: 9}, []sheet.Item{sheet.AlignedDim{Label: "0"}}, sheet.TextByFont); strings.Contains(string(svg), "<text") {
		t.Error("a dimension of no length was drawn")
	}
}
