package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

func TestSampleGolden(t *testing.T) {
	testkit.Golden(t, "elevation.svg", sheet.SVG(elevation(), sheet.TextByFont))
}

func mustPDF(t testing.TB, doc sheet.Doc) []byte {
	t.Helper()
	pdf, err := sheet.PDF(doc)
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

func TestSameBytes(t *testing.T) {
	want := mustPDF(t, sample())
	var wg sync.WaitGroup
	for range 4 { // together, for the fonts are shared
		wg.Go(func() {
			if got, err := sheet.PDF(sample()); err != nil || !bytes.Equal(got, want) {
				t.Errorf("the same sheets gave other bytes (%v)", err)
			}
		})
	}
	wg.Wait()
}

func TestEmptyDoc(t *testing.T) {
	if _, err := sheet.PDF(sheet.Doc{}); err == nil {
		t.Error("a document without sheets was written")
	}
	pdf := mustPDF(t, sheet.Doc{Pages: make([]sheet.Page, 1)})
	opens(t, pdf, 1)
}

// TestNonsenseStaysOut: numbers that are none never reach a file.
func TestNonsenseStaysOut(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	p := sheet.Page{Items: []sheet.Item{
		nil,
		sheet.Line{B: sheet.Pt(nan, 1), Pen: sheet.Wide},
		sheet.Circle{Radius: inf, Pen: sheet.Wide},
		sheet.Polyline{Points: []sheet.Point{{X: 1}}, Pen: sheet.Wide},
		sheet.Polygon{Rings: [][]sheet.Point{{{X: nan}, {X: 1}, {X: 2, Y: 5}}}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.EndGrain}},
		sheet.Polygon{Rings: [][]sheet.Point{{{}, {X: 9e5}, {Y: 9e5}}}, Pen: sheet.Wide, Hatch: sheet.Hatch{Kind: sheet.Section}},
		sheet.Text{At: sheet.Pt(nan, 0), Text: "nowhere"},
		sheet.Text{Text: "bad \xff\x00 (brackets) \\", Size: 9},
		sheet.Group{At: sheet.Stretch(nan, 1), Items: []sheet.Item{sheet.Rect(sheet.Box{W: 1, H: 1}, sheet.Wide, sheet.Black)}},
		sheet.AlignedDim{A: sheet.Pt(nan, 0), Label: "1"},
		sheet.Arc{Radius: 5, Sweep: measure.Angle(nan), Pen: sheet.Wide},
	}}
	pdf := mustPDF(t, sheet.Doc{Title: "(\\", Pages: []sheet.Page{p}})
	opens(t, pdf, 1)
	for _, mode := range []sheet.SVGText{sheet.TextByFont, sheet.TextAsPaths} {
		svg := sheet.SVG(p, mode)
		wellFormed(t, svg)
		if bytes.Contains(svg, []byte("NaN")) || bytes.Contains(svg, []byte("Inf")) {
			t.Error("a number that is none reached the file")
		}
	}
}

func wellFormed(t testing.TB, svg []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
	}
}

func TestSVG(t *testing.T) {
	for _, p := range sample().Pages {
		for _, mode := range []sheet.SVGText{sheet.TextByFont, sheet.TextAsPaths} {
			wellFormed(t, sheet.SVG(p, mode))
		}
	}
	p := sheet.Page{Paper: sheet.A4}
	p.Add(sheet.Line{A: sheet.Pt(10, 20), B: sheet.Pt(10, 274), Pen: sheet.Narrow}, sheet.Text{At: sheet.Pt(5, 5), Text: "5 3/8 <&>"})
	svg := string(sheet.SVG(p, sheet.TextByFont))
	for _, want := range []string{`width="210mm" height="297mm" viewBox="0 0 210 297"`, `d="M10 20L10 274"`, "&lt;&amp;&gt;", `aria-label="5 3/8 `} {
		if !strings.Contains(svg, want) {
			t.Errorf("SVG lacks %s", want)
		}
	}
	if paths := string(sheet.SVG(p, sheet.TextAsPaths)); strings.Contains(paths, "<text") {
		t.Error("text left in an SVG of paths")
	}
}

// TestScales: what is preferred and how it is written, ISO 5455:1979 cl. 3 and
// 5.1; the inch scales by 12 in to the foot.
func TestScales(t *testing.T) {
	for _, c := range []struct {
		w, h   float64 // model
		scales []sheet.Scale
		want   string
	}{
		{100, 100, sheet.MetricScales, "SCALE 1:1"},
		{101, 10, sheet.MetricScales, "SCALE 1:2"},
		{10, 201, sheet.MetricScales, "SCALE 1:5"},
		{501, 501, sheet.MetricScales, "SCALE 1:10"},
		{401, 1, sheet.InchScales, "SCALE 1:8 (1 1/2 in = 1 ft)"},
		{400, 1, sheet.InchScales, "SCALE 1:4 (3 in = 1 ft)"},
		{1599, 1, sheet.InchScales, "SCALE 1:16 (3/4 in = 1 ft)"},
		{10, 10, sheet.MetricScales, "SCALE 10:1"},
		{1e9, 1, sheet.MetricScales, "SCALE 1:100"},
	} {
		v := sheet.FitView(sheet.Box{W: c.w, H: c.h}, sheet.Box{W: 100, H: 100}, c.scales)
		if got := v.Scale.String(); got != c.want {
			t.Errorf("%g × %g: got %s, want %s", c.w, c.h, got, c.want)
		}
	}
	if got := (sheet.Scale{}).String(); got != "SCALE 1:1" {
		t.Errorf("zero scale is %s", got)
	}
	for _, s := range sheet.InchScales {
		if n, _, ok := strings.Cut(s.Inches, " in = 1 ft"); ok {
			testkit.Near(t, inches(n)/12, s.Ratio(), 1e-12)
		}
	}
}

// inches reads "1 1/2".
func inches(s string) float64 {
	sum := 0.0
	for _, f := range strings.Fields(s) {
		num, den, ok := strings.Cut(f, "/")
		a, _ := strconv.ParseFloat(num, 64)
		b := 1.0
		if ok {
			b, _ = strconv.ParseFloat(den, 64)
		}
		sum += a / b
	}
	return sum
}

func TestView(t *testing.T) {
	v := sheet.View{Scale: sheet.Scale{Paper: 1, Model: 5}, Model: sheet.Box{X: -10, Y: 20, W: 100, H: 50}, At: sheet.Pt(40, 90)}
	testkit.Diff(t, sheet.Pt(40, 90), v.Pt(-10, 20))
	testkit.Diff(t, sheet.Pt(60, 80), v.Pt(90, 70))
	testkit.Diff(t, sheet.Box{X: 40, Y: 80, W: 20, H: 10}, v.OnPaper())
	testkit.Diff(t, v, sheet.ViewAt(v.Model, sheet.Pt(40, 80), v.Scale))
}

// TestChainAddsUp: whatever the stops, the printed values of a chain add up to
// the printed whole, in inches and in millimetres.
func TestChainAddsUp(t *testing.T) {
	styles := []measure.Style{{}, {Graduation: measure.Sixteenths}, {Graduation: measure.ThirtySeconds}, {Unit: measure.Millimetres}}
	v := sheet.View{}
	testkit.Check(t, func(t *rapid.T) {
		style := rapid.SampledFrom(styles).Draw(t, "style")
		gaps := rapid.SliceOfN(rapid.Int64Range(0, int64(40*measure.Inch)), 1, 9).Draw(t, "gaps")
		stops := []measure.Length{measure.Length(rapid.Int64Range(-1e9, 1e9).Draw(t, "from"))}
		for _, g := range gaps {
			stops = append(stops, stops[len(stops)-1]+measure.Length(g))
		}
		d := v.Chain(sheet.Below, style, stops...)
		sum := 0.0
		for i, l := range d.Labels {
			sum += inches(l)
			if g := float64(gaps[i]); math.Abs(inches(l)*float64(style.Unit.Length())-g) > 1.01*coarsest {
				t.Errorf("space of %v printed as %s", gaps[i], l)
			}
		}
		whole := v.Chain(sheet.Below, style, stops[0], stops[len(stops)-1])
		if want := inches(whole.Labels[0]); math.Abs(sum-want) > 1e-9 {
			t.Errorf("%v add up to %v, whole is %s", d.Labels, sum, whole.Labels[0])
		}
	})
}

// coarsest is one mark of the coarsest style above, in nanometres.
const coarsest = float64(measure.Inch) / 16

// TestArc: the curves written for an arc stay near the true circle. A cubic of
// a quarter circle with handles of 4/3·tan(φ/4) is off by 2.73e-4 of the radius
// (from memory); by its sixth power, one of 30° by 2.73e-4/3⁶ = 3.7e-7. Places
// are printed to 1e-4 mm.
func TestArc(t *testing.T) {
	svg := string(sheet.SVGOf(sheet.Box{W: 1, H: 1}, []sheet.Item{sheet.Circle{Centre: sheet.Pt(0, 0), Radius: 1000, Pen: sheet.Wide}}, sheet.TextByFont))
	_, d, _ := strings.Cut(svg, ` d="M`)
	d, _, _ = strings.Cut(d, `Z"`)
	curves := strings.Split(d, "C")
	last := numbers(curves[0])
	for _, c := range curves[1:] {
		n := numbers(c)
		for k := 1; k < 10; k++ {
			s := float64(k) / 10
			x := bezier(last[0], n[0], n[2], n[4], s)
			y := bezier(last[1], n[1], n[3], n[5], s)
			testkit.Near(t, math.Hypot(x, y), 1000, 1000*3.75e-7+1e-4)
		}
		last = n[4:]
	}
	if len(curves) != 13 {
		t.Errorf("%d curves, want 12", len(curves)-1)
	}
}

func numbers(s string) []float64 {
	var out []float64
	for _, f := range strings.Fields(strings.NewReplacer("L", " ", "C", " ").Replace(s)) {
		v, _ := strconv.ParseFloat(f, 64)
		out = append(out, v)
	}
	return out
}

func bezier(a, b, c, d, t float64) float64 {
	u := 1 - t
	return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d
}

// TestHatchFills: the lines of a hatch lie inside their area and, times their
// spacing, cover it.
func TestHatchFills(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		outer := []sheet.Point{}
		n := rapid.IntRange(3, 9).Draw(t, "corners")
		for i := range n {
			r := rapid.Float64Range(20, 60).Draw(t, "radius")
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			outer = append(outer, sheet.Pt(100+r*cos, 100+r*sin))
		}
		hole := sheet.Box{X: 97, Y: 97, W: 6, H: 6}.Corners()
		rings := [][]sheet.Point{outer, hole}
		p := sheet.Polygon{Rings: rings, Hatch: sheet.Hatch{Kind: sheet.Section, Spacing: 0.5}}
		sum := 0.0
		for _, s := range strokes(string(sheet.SVGOf(sheet.Box{W: 1, H: 1}, []sheet.Item{p}, sheet.TextByFont))) {
			sum += math.Hypot(s[2]-s[0], s[3]-s[1])
			mid := sheet.Pt((s[0]+s[2])/2, (s[1]+s[3])/2)
			if !within(outer, mid) || within(hole, mid) {
				t.Fatalf("hatch at %v lies outside its area", mid)
			}
		}
		want := area(outer) - area(hole)
		if got := sum * 0.5; math.Abs(got-want) > 0.03*want {
			t.Errorf("hatch covers %.1f mm² of %.1f", got, want)
		}
	})
}

func strokes(svg string) [][]float64 {
	_, d, _ := strings.Cut(svg, ` d="M`)
	d, _, _ = strings.Cut(d, `"`)
	var out [][]float64
	for _, s := range strings.Split(d, "M") {
		if n := numbers(s); len(n) == 4 {
			out = append(out, n)
		}
	}
	return out
}

func area(ring []sheet.Point) float64 {
	sum := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}

// within winds round the point, unlike the even-odd rule under test.
func within(ring []sheet.Point, p sheet.Point) bool {
	turn := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		ax, ay, bx, by := a.X-p.X, a.Y-p.Y, b.X-p.X, b.Y-p.Y
		turn += math.Atan2(ax*by-ay*bx, ax*bx+ay*by)
	}
	return math.Abs(turn) > math.Pi
}

func TestMirroredTextStaysReadable(t *testing.T) {
	text := sheet.Text{At: sheet.Pt(50, 50), Text: "left side"}
	plain := sheet.TextBoxes(text)[0]
	turned := sheet.TextBoxes(sheet.Group{At: sheet.Turn(math.Pi, sheet.Pt(50, 50)), Items: []sheet.Item{text}})[0]
	// the same room on the other side of its place, not upside down
	testkit.Near(t, turned.X, 100-plain.Right(), 1e-9)
	svg := string(sheet.SVGOf(sheet.Box{W: 1, H: 1}, []sheet.Item{sheet.Group{At: sheet.Turn(math.Pi, sheet.Pt(50, 50)), Items: []sheet.Item{text}}}, sheet.TextByFont))
	if strings.Contains(svg, "rotate(180") || strings.Contains(svg, "rotate(-180") {
		t.Error("text stands on its head")
	}
}

func TestPapers(t *testing.T) {
	p, err := sheet.PaperNamed("a4")
	if err != nil || p != sheet.A4 {
		t.Errorf("a4 is %v, %v", p, err)
	}
	if _, err := sheet.PaperNamed("foolscap"); err == nil || !strings.Contains(err.Error(), "Letter") {
		t.Errorf("unknown paper: %v", err)
	}
	// ISO 5457:1999: 20 mm at the filing edge, 10 elsewhere.
	testkit.Diff(t, sheet.Box{X: 20, Y: 10, W: 180, H: 277}, sheet.A4.Frame())
	testkit.Diff(t, 297.0, sheet.A4.Landscape().W)
	testkit.Diff(t, sheet.A4, sheet.A4.Landscape().Portrait())
}

func BenchmarkBook30(b *testing.B) {
	doc := sheet.Doc{}
	for i := range 30 {
		doc.Pages = append(doc.Pages, sample().Pages[i%8])
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := sheet.PDF(doc); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleScale() {
	fmt.Println(sheet.InchScales[3])
	// Output: SCALE 1:4 (3 in = 1 ft)
}
