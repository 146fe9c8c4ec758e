package dxf_test

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"casewright/internal/model"
	"casewright/internal/model/dxf"
	"casewright/internal/testkit"
)

// template is a drawing with everything in it. Lengths in comments are mm.
func template(u dxf.Unit) dxf.Drawing {
	return dxf.Drawing{Name: "Side 5⅜", Unit: u, Layers: dxf.Layers(), Items: []dxf.Item{
		// 100 × 50 with a half circle of radius 25 at the right end and a quarter
		// circle of radius 10 hollowed out of the left upper corner
		dxf.Polyline{Layer: dxf.Cut, Closed: true, Corners: []dxf.Corner{
			{Point: dxf.Point{}},
			{Point: dxf.Point{X: 100}, Bulge: 1},
			{Point: dxf.Point{X: 100, Y: 50}},
			{Point: dxf.Point{X: 10, Y: 50}, Bulge: -math.Tan(math.Pi / 8)},
			{Point: dxf.Point{Y: 40}},
		}},
		dxf.Polyline{Layer: dxf.Mark, Corners: []dxf.Corner{{Point: dxf.Point{X: 5, Y: 5}}, {Point: dxf.Point{X: 35, Y: 45}}}},
		dxf.Line{Layer: dxf.Hidden, A: dxf.Point{X: 10, Y: 10}, B: dxf.Point{X: 40, Y: 50}},
		dxf.Arc{Layer: dxf.Score, Centre: dxf.Point{X: 60, Y: 20}, Radius: 12, From: -math.Pi / 2, To: math.Pi},
		dxf.Circle{Layer: dxf.Cut, Centre: dxf.Point{X: 100, Y: 25}, Radius: 8},
		quarter(dxf.Mark, 30),
		dxf.Text{Layer: dxf.Words, At: dxf.Point{X: 5, Y: 20}, Height: 5, Text: "B1 side 26 3/4 × 5⅜"},
		dxf.Text{Layer: dxf.Dim, At: dxf.Point{X: 50, Y: 60}, Height: 3, Text: "½", Turn: math.Pi / 2, Align: dxf.Middle},
		dxf.Line{Layer: "0", A: dxf.Point{X: -0.5}, B: dxf.Point{X: -0.5, Y: 50}},
	}}
}

// quarter is a quarter circle as a Bézier arc with the usual handles, 4/3·(√2 − 1):
// nowhere more than 0.0273 % too far out (from memory), so no longer than that.
func quarter(layer string, r float64) dxf.Curve {
	k := r * 4 / 3 * (math.Sqrt2 - 1)
	return dxf.Curve{Layer: layer, Points: []dxf.Point{{X: r}, {X: r, Y: k}, {X: k, Y: r}, {Y: r}}}
}

var writers = []struct {
	name  string
	write func(dxf.Drawing) ([]byte, error)
}{{"R2000", dxf.R2000}, {"R12", dxf.R12}}

func TestSameBytesTwiceAndASCII(t *testing.T) {
	for _, w := range writers {
		a, err := w.write(template(dxf.Inches))
		if err != nil {
			t.Fatal(err)
		}
		if b, _ := w.write(template(dxf.Inches)); !bytes.Equal(a, b) {
			t.Errorf("%s: two runs differ", w.name)
		}
		for i, c := range a {
			if c > '~' || c < ' ' && c != '\n' {
				t.Errorf("%s: byte %#x at %d", w.name, c, i)
			}
		}
	}
}

// TestGolden shows what changed when a writer does.
func TestGolden(t *testing.T) {
	for _, w := range writers {
		out, err := w.write(template(dxf.Millimetres))
		if err != nil {
			t.Fatal(err)
		}
		testkit.Golden(t, w.name+".dxf", out)
	}
}

// entity is an item as the outside readers give it.
type entity struct {
	Type, Layer, Text string
	Length            float64
}

// lengths of the template's items in mm, as drawn in R2000: straights of the
// outline 100 + 90 + 40, a half circle of 25 and a quarter of 10; a 3-4-5
// triangle's long side twice; three quarters of 12; a circle of 8; a quarter
// of 30; the end line.
var lengths = []float64{
	230 + 25*math.Pi + 5*math.Pi, 50, 50, 18 * math.Pi, 16 * math.Pi, 15 * math.Pi, 0, 0, 50,
}

// TestEzdxf: a strict reader finds nothing to complain of and nothing to mend,
// the unit, the layers, and every length along its curve.
func TestEzdxf(t *testing.T) {
	var got []struct {
		Version       string
		Units         int
		Errors, Fixes []string
		Layers        []string
		Entities      []entity
	}
	testkit.Python(t, &got, "ezdxf", "python3-ezdxf", "dxfaudit.py", saved(t)...)
	for i, g := range got {
		modern, inches := i < 2, i%2 == 1
		if len(g.Errors)+len(g.Fixes) > 0 {
			t.Errorf("file %d: errors %q, fixes %q", i, g.Errors, g.Fixes)
		}
		version, units, scale, note := "AC1015", 4, 1.0, "UNIT: MM"
		if inches {
			units, scale, note = 1, 1/25.4, "UNIT: INCHES"
		}
		if !modern {
			version, units = "AC1009", 0
		}
		if g.Version != version || g.Units != units {
			t.Errorf("file %d: version %s, unit %d", i, g.Version, g.Units)
		}
		for _, l := range dxf.Layers() {
			if !strings.Contains(" "+strings.Join(g.Layers, " ")+" ", " "+l.Name+" ") {
				t.Errorf("file %d: layer %s is missing of %v", i, l.Name, g.Layers)
			}
		}
		measured(t, g.Entities, scale)
		if last := g.Entities[len(g.Entities)-1]; !modern && (last.Text != note || last.Layer != dxf.Words) {
			t.Errorf("file %d: the unit is not told: %+v", i, last)
		}
	}
}

// measured compares lengths. The reader turns bulges into Bézier arcs, which
// are as much too long as our quarter circle is; its own chords for circles
// lie 1e-5 off.
func measured(t *testing.T, got []entity, scale float64) {
	t.Helper()
	if len(got) < len(lengths) {
		t.Fatalf("%d items, want %d", len(got), len(lengths))
	}
	for k, want := range lengths {
		tol := 1e-3
		if k == 0 || k == 5 {
			tol = 3e-4 * want
		}
		testkit.Near(t, got[k].Length, want*scale, tol*scale)
	}
	testkit.Diff(t, "B1 side 26-3/4 x 5-3/8", got[6].Text)
	testkit.Diff(t, dxf.Score, got[3].Layer)
}

// saved are R2000 in mm and inches, then R12 in both.
func saved(t *testing.T) (paths []string) {
	t.Helper()
	for _, w := range writers {
		for _, u := range []dxf.Unit{dxf.Millimetres, dxf.Inches} {
			out, err := w.write(template(u))
			if err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(t.TempDir(), w.name+".dxf")
			if err := os.WriteFile(path, out, 0o600); err != nil {
				t.Fatal(err)
			}
			paths = append(paths, path)
		}
	}
	return paths
}

// TestDxfParser: another reader agrees on kinds, bulges, angles and the box.
func TestDxfParser(t *testing.T) {
	type corner struct{ X, Y, Bulge float64 }
	var got []struct {
		Header struct {
			InsUnits int    `json:"$INSUNITS"`
			Low      corner `json:"$EXTMIN"`
			High     corner `json:"$EXTMAX"`
		}
		Layers   []string
		Entities []struct {
			Type, Layer, Text    string
			Vertices             []corner
			Shape                bool
			StartAngle, EndAngle float64
			Degree               int    `json:"degreeOfSplineCurve"`
			Line                 string `json:"lineType"`
		}
	}
	testkit.Node(t, &got, "dxf.mjs", saved(t)...)
	for i, g := range got {
		scale := 1.0
		if i%2 == 1 {
			scale = 1 / 25.4
		}
		kinds := []string{"LWPOLYLINE", "LWPOLYLINE", "LINE", "ARC", "CIRCLE", "SPLINE", "TEXT", "TEXT", "LINE"}
		if i >= 2 {
			kinds = []string{"POLYLINE", "POLYLINE", "LINE", "ARC", "CIRCLE", "POLYLINE", "TEXT", "TEXT", "LINE", "TEXT"}
		}
		var found []string
		for _, e := range g.Entities {
			found = append(found, e.Type)
		}
		testkit.Diff(t, kinds, found)
		outline := g.Entities[0]
		if len(outline.Vertices) != 5 || !outline.Shape || outline.Layer != dxf.Cut {
			t.Fatalf("file %d: outline %+v", i, outline)
		}
		testkit.Near(t, outline.Vertices[1].Bulge, 1, 0)
		testkit.Near(t, outline.Vertices[3].Bulge, -math.Tan(math.Pi/8), 1e-9)
		testkit.Near(t, outline.Vertices[2].Y, 50*scale, 1e-8)
		testkit.Near(t, g.Entities[3].StartAngle, 1.5*math.Pi, 1e-9)
		testkit.Near(t, g.Entities[3].EndAngle, math.Pi, 1e-9)
		testkit.Diff(t, "1/2", g.Entities[7].Text)
		// From the end line to the bulge, 100 + 25; from the outline's foot to
		// half the height of the turned text's line, whose letter boxes are 3 mm
		// long each: 60 + 3·3/2.
		testkit.Near(t, g.Header.Low.X, -0.5*scale, 1e-8)
		testkit.Near(t, g.Header.High.X, 125*scale, 1e-8)
		testkit.Near(t, g.Header.High.Y, 64.5*scale, 1e-8)
	}
}

// TestFlattened: the polyline that stands for a curve keeps to Chord. The
// Bézier quarter itself lies up to 0.0273 % too far out.
func TestFlattened(t *testing.T) {
	const r = 1000.0
	out, err := dxf.R12(dxf.Drawing{Name: "bow", Layers: dxf.Layers(), Items: []dxf.Item{quarter(dxf.Cut, r)}})
	if err != nil {
		t.Fatal(err)
	}
	var corners [][2]float64
	for _, v := range strings.Split(string(out), "\nVERTEX\n")[1:] {
		f := strings.Fields(v)
		corners = append(corners, [2]float64{parse(t, f[3]), parse(t, f[5])})
	}
	for k := 1; k < len(corners); k++ {
		a, b := corners[k-1], corners[k]
		middle := math.Hypot((a[0]+b[0])/2, (a[1]+b[1])/2)
		if middle < r-dxf.Chord || middle > r*1.000273 {
			t.Fatalf("chord %d: its middle lies %v from the centre", k, middle)
		}
	}
	// A chord of a circle with sagitta s turns by 2·acos(1 − s/r): at least 88
	// chords; our bound takes some more, not many times as many.
	if n := len(corners) - 1; n < 88 || n > 250 {
		t.Errorf("%d chords", n)
	}
}

func TestFaults(t *testing.T) {
	nan := math.NaN()
	p := func(x, y float64) dxf.Corner { return dxf.Corner{Point: dxf.Point{X: x, Y: y}} }
	one := func(it dxf.Item) dxf.Drawing {
		return dxf.Drawing{Name: "d", Layers: dxf.Layers(), Items: []dxf.Item{it}}
	}
	layers := func(l ...dxf.Layer) dxf.Drawing {
		return dxf.Drawing{Name: "d", Layers: l, Items: []dxf.Item{dxf.Circle{Layer: "0", Radius: 1}}}
	}
	for _, c := range []struct {
		name string
		want model.Kind
		d    dxf.Drawing
	}{
		{"sound", "", one(dxf.Circle{Layer: dxf.Cut, Radius: 1})},
		{"no layers", "", layers()},
		{"empty", model.Empty, dxf.Drawing{Name: "d"}},
		{"no such layer", model.BadIndex, one(dxf.Circle{Layer: "HERE", Radius: 1})},
		{"layer twice", model.BadTree, layers(dxf.Layer{Name: "A", Color: 1}, dxf.Layer{Name: "A", Color: 2})},
		{"layer 0 given", model.BadTree, layers(dxf.Layer{Name: "0", Color: 1})},
		{"layer in lower case", model.NotText, layers(dxf.Layer{Name: "cut", Color: 1})},
		{"layer with a line end", model.NotText, layers(dxf.Layer{Name: "A\nB", Color: 1})},
		{"layer without a name", model.NotText, layers(dxf.Layer{Color: 1})},
		{"layer without a colour", model.BadIndex, layers(dxf.Layer{Name: "A"})},
		{"line type", model.BadIndex, layers(dxf.Layer{Name: "A", Color: 1, Line: 9})},
		{"line without length", model.Degenerate, one(dxf.Line{Layer: dxf.Cut})},
		{"line to nowhere", model.NotFinite, one(dxf.Line{Layer: dxf.Cut, B: dxf.Point{X: nan}})},
		{"line too far", model.NotFinite, one(dxf.Line{Layer: dxf.Cut, B: dxf.Point{X: math.Inf(1)}})},
		{"polyline of one", model.Degenerate, one(dxf.Polyline{Layer: dxf.Cut, Corners: []dxf.Corner{p(0, 0)}})},
		{"corner repeated", model.Degenerate, one(dxf.Polyline{Layer: dxf.Cut, Corners: []dxf.Corner{p(0, 0), p(1, 1), p(1, 1)}})},
		{"first corner repeated", model.Degenerate, one(dxf.Polyline{Layer: dxf.Cut, Closed: true, Corners: []dxf.Corner{p(0, 0), p(1, 1), p(0, 0)}})},
		{"open, ends meet", "", one(dxf.Polyline{Layer: dxf.Cut, Corners: []dxf.Corner{p(0, 0), p(1, 1), p(0, 0)}})},
		{"bulge", model.NotFinite, one(dxf.Polyline{Layer: dxf.Cut, Corners: []dxf.Corner{{Bulge: nan}, p(1, 1)}})},
		{"arc of no turn", model.Degenerate, one(dxf.Arc{Layer: dxf.Cut, Radius: 1, From: 1, To: 1 + 2*math.Pi})},
		{"arc without radius", model.Degenerate, one(dxf.Arc{Layer: dxf.Cut, To: 1})},
		{"arc of no angle", model.NotFinite, one(dxf.Arc{Layer: dxf.Cut, Radius: 1, To: nan})},
		{"circle turned in", model.Degenerate, one(dxf.Circle{Layer: dxf.Cut, Radius: -1})},
		{"curve of five", model.Degenerate, one(dxf.Curve{Layer: dxf.Cut, Points: make([]dxf.Point, 5)})},
		{"curve of no length", model.Degenerate, one(dxf.Curve{Layer: dxf.Cut, Points: make([]dxf.Point, 4)})},
		{"curve to nowhere", model.NotFinite, one(dxf.Curve{Layer: dxf.Cut, Points: []dxf.Point{{}, {X: nan}, {}, {X: 1}}})},
		{"text of blanks", model.Empty, one(dxf.Text{Layer: dxf.Words, Height: 3, Text: " \t\n"})},
		{"text without height", model.Degenerate, one(dxf.Text{Layer: dxf.Words, Text: "A1"})},
		{"text turned", model.NotFinite, one(dxf.Text{Layer: dxf.Words, Height: 3, Text: "A1", Turn: nan})},
		{"text aligned", model.BadIndex, one(dxf.Text{Layer: dxf.Words, Height: 3, Text: "A1", Align: 7})},
	} {
		for _, w := range writers {
			_, err := w.write(c.d)
			var f *model.Fault
			switch {
			case c.want == "" && err != nil:
				t.Errorf("%s, %s: %v", c.name, w.name, err)
			case c.want != "" && (!errors.Is(err, c.want) || !errors.As(err, &f)):
				t.Errorf("%s, %s: got %v, want %v", c.name, w.name, err, c.want)
			}
		}
	}
}

func TestASCII(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"5 3/8", "5-3/8"},
		{"5-3/8", "5-3/8"},
		{"5⅜", "5-3/8"},
		{"5 ⅜", "5-3/8"},
		{"⅜ deep", "3/8 deep"},
		{"12⁄32", "12/32"},
		{"1 1/2 × 3 × 26 31/32", "1-1/2 x 3 x 26-31/32"},
		{"Ø8, 90°, ±½", "dia 8, 90 deg, +/- 1/2"},
		{"Tür, Maß, Größe", "Tuer, Mass, Groesse"},
		{"naïve café", "naive cafe"},
		{"5′ 3″", `5' 3"`},
		{"日本\x00\n€", "??  ?"},
		{"100%%d ^J", "100% %d ^ J"},
		{"", ""},
	} {
		testkit.Diff(t, c.want, dxf.ASCII(c.in))
	}
}
