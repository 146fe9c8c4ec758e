package sheet_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/testkit"
)

// The tests here read our files with poppler, which shares no code with the
// writer.

func poppler(t testing.TB, pdf []byte, program string, args ...string) string {
	t.Helper()
	path := testkit.NeedTool(t, program, "poppler-utils")
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = file
		}
	}
	var out, complaints bytes.Buffer
	cmd := exec.Command(path, args...)
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil || complaints.Len() > 0 {
		t.Fatalf("%s: %v\n%s", program, err, complaints.String())
	}
	return out.String()
}

// opens checks that the file has this many pages and that drawing them raises
// no complaint.
func opens(t testing.TB, pdf []byte, pages int) {
	t.Helper()
	if got := poppler(t, pdf, "pdfinfo", "FILE"); !regexp.MustCompile(`Pages:\s+` + strconv.Itoa(pages) + `\n`).MatchString(got) {
		t.Errorf("want %d pages:\n%s", pages, got)
	}
	poppler(t, pdf, "pdftoppm", "-r", "20", "FILE", filepath.Join(t.TempDir(), "page"))
}

func TestOpens(t *testing.T) {
	doc := sample()
	pdf := mustPDF(t, doc)
	opens(t, pdf, len(doc.Pages))
	info := poppler(t, pdf, "pdfinfo", "FILE")
	if strings.Contains(info, "Author") || !strings.Contains(info, "Sample sheets") {
		t.Errorf("title or author wrong:\n%s", info)
	}
	// every font embedded and with a way back to text
	for _, line := range strings.Split(strings.TrimSpace(poppler(t, pdf, "pdffonts", "FILE")), "\n")[2:] {
		if !strings.Contains(line, "yes") || strings.Count(line, "yes") < 2 {
			t.Errorf("font not embedded or not readable: %s", line)
		}
	}
	if len(pdf) > 300_000 {
		t.Errorf("%d bytes for %d sheets: fonts are not cut down", len(pdf), len(doc.Pages))
	}
}

// TestTextComesOut: what is printed can be copied, stacked fractions as one.
func TestTextComesOut(t *testing.T) {
	p := sheet.Page{Items: []sheet.Item{
		sheet.Text{At: sheet.Pt(40, 40), Text: "Länge 26 31/32 × 5-3/8 (½)", Size: 12},
		sheet.Text{At: sheet.Pt(40, 60), Text: "waits for the opening", Face: lettering.Italic},
		sheet.Text{At: sheet.Pt(40, 120), Text: "7 13/32", Turn: 3.141592653589793 / 2},
	}}
	got := poppler(t, mustPDF(t, sheet.Doc{Pages: []sheet.Page{p}}), "pdftotext", "FILE", "-")
	for _, want := range []string{"Länge 26 31/32 × 5-3/8 (½)", "waits for the opening", "7 13/32"} {
		if !strings.Contains(got, want) {
			t.Errorf("text lacks %q:\n%s", want, got)
		}
	}
}

// TestMeasuredWidth: a line is as wide in the reader as it was measured, so
// what fits here fits on paper. The reader's boxes are words, from the first
// to the last letter; 0.01 pt is the reader's rounding.
func TestMeasuredWidth(t *testing.T) {
	for _, face := range lettering.Faces() {
		const word = "Schwalbenschwanz×0123456789WIl"
		p := sheet.Page{Items: []sheet.Item{sheet.Text{At: sheet.Pt(20, 40), Text: word, Face: face, Size: 13}}}
		got := poppler(t, mustPDF(t, sheet.Doc{Pages: []sheet.Page{p}}), "pdftotext", "-bbox", "FILE", "-")
		m := regexp.MustCompile(`xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"`).FindStringSubmatch(got)
		if m == nil {
			t.Fatalf("no word found:\n%s", got)
		}
		lo, _ := strconv.ParseFloat(m[1], 64)
		hi, _ := strconv.ParseFloat(m[2], 64)
		testkit.Near(t, (hi-lo)*25.4/72, face.Width(word, 13), 0.01)
	}
}

// raster is a strip of a sheet, drawn at 1200 dots to the inch.
type raster struct {
	w, h int
	ink  []byte
}

func drawn(t testing.TB, pdf []byte, page, x, y, w, h int) raster {
	t.Helper()
	root := filepath.Join(t.TempDir(), "strip")
	n := strconv.Itoa
	poppler(t, pdf, "pdftoppm", "-gray", "-r", "1200", "-f", n(page), "-l", n(page), "-singlefile",
		"-x", n(x), "-y", n(y), "-W", n(w), "-H", n(h), "FILE", root)
	pgm, err := os.ReadFile(root + ".pgm")
	if err != nil {
		t.Fatal(err)
	}
	var r raster
	var most int
	if _, err := fmt.Sscanf(string(pgm[:40]), "P5\n%d %d\n%d\n", &r.w, &r.h, &most); err != nil {
		t.Fatal(err)
	}
	r.ink = pgm[len(pgm)-r.w*r.h:]
	return r
}

// middles are the middles, in dots, of the dark runs along row y.
func (r raster) middles(y int) []float64 {
	var out []float64
	start := -1
	for x := 0; x <= r.w; x++ {
		dark := x < r.w && r.ink[y*r.w+x] < 128
		switch {
		case dark && start < 0:
			start = x
		case !dark && start >= 0:
			out = append(out, float64(start+x)/2)
			start = -1
		}
	}
	return out
}

// upright turns the strip on its side.
func (r raster) upright() raster {
	t := raster{w: r.h, h: r.w, ink: make([]byte, len(r.ink))}
	for y := range r.h {
		for x := range r.w {
			t.ink[x*t.w+y] = r.ink[y*r.w+x]
		}
	}
	return t
}

// TestTrueScale measures the print: ticks 10 in apart down a Letter sheet and
// 150 mm apart across, drawn at 1200 dots to the inch by another program, lie
// 12 000 and 7086.6 dots apart. One dot is 0.02 mm.
func TestTrueScale(t *testing.T) {
	tick := sheet.Pen{Width: 0.2, Butt: true}
	p := sheet.Page{}
	for _, y := range []float64{10, 10 + 254} {
		p.Add(sheet.Line{A: sheet.Pt(30, y), B: sheet.Pt(40, y), Pen: tick})
	}
	for _, x := range []float64{40, 190} {
		p.Add(sheet.Line{A: sheet.Pt(x, 50), B: sheet.Pt(x, 60), Pen: tick})
	}
	// the same through a view at 1:5: 750 mm of the model
	v := sheet.View{Scale: sheet.Scale{Paper: 1, Model: 5}, Model: sheet.Box{W: 750, H: 50}, At: sheet.Pt(40, 80)}
	p.Add(v.Place(sheet.Line{B: sheet.Pt(0, 50), Pen: tick}, sheet.Line{A: sheet.Pt(750, 0), B: sheet.Pt(750, 50), Pen: tick}))
	pdf := mustPDF(t, sheet.Doc{Pages: []sheet.Page{p}})
	dots := 1200 / 25.4

	down := drawn(t, pdf, 1, int(35*dots), 0, 4, 13200).upright().middles(1)
	across := drawn(t, pdf, 1, 0, int(55*dots), 10200, 4).middles(1)
	view := drawn(t, pdf, 1, 0, int(75*dots), 10200, 4).middles(1)
	if len(down) != 2 || len(across) != 2 || len(view) != 2 {
		t.Fatalf("ticks found: %v, %v, %v", down, across, view)
	}
	testkit.Near(t, down[1]-down[0], 12000, 1)
	testkit.Near(t, across[1]-across[0], 150*dots, 1)
	testkit.Near(t, view[1]-view[0], 150*dots, 1)
	testkit.Near(t, across[0], 40*dots, 1.5)
	testkit.Near(t, down[0], 10*dots, 1.5)
}

// TestTestBars measures both test bars of a tile: the inch ticks are read 2.5
// mm from the bar's line, where only whole inches reach, the 50 mm ones as far
// on the other side, where only whole centimetres do.
func TestTestBars(t *testing.T) {
	p := sheet.Page{Items: []sheet.Item{
		sheet.TestBar{At: sheet.Pt(30, 40)},
		sheet.TestBar{At: sheet.Pt(60, 80), Upright: true},
	}}
	pdf := mustPDF(t, sheet.Doc{Pages: []sheet.Page{p}})
	dots := 1200 / 25.4
	row := func(y float64) []float64 { return drawn(t, pdf, 1, 0, int(y*dots), 10200, 4).middles(1) }
	column := func(x float64) []float64 { // below the bar that lies across
		return drawn(t, pdf, 1, int(x*dots), int(75*dots), 4, int(200*dots)).upright().middles(1)
	}
	for _, c := range []struct {
		name  string
		ticks []float64
		n     int
		long  float64 // dots
	}{
		{"6 in across", row(37.5), 7, 7200},
		{"150 mm across", row(42.5), 16, 150 * dots},
		{"6 in down", column(62.5), 7, 7200},
		{"150 mm down", column(57.5), 16, 150 * dots},
	} {
		if len(c.ticks) != c.n {
			t.Errorf("%s: %d ticks, want %d", c.name, len(c.ticks), c.n)
			continue
		}
		testkit.Near(t, c.ticks[c.n-1]-c.ticks[0], c.long, 1)
	}
	text := poppler(t, pdf, "pdftotext", "FILE", "-")
	if strings.Count(text, "print at 100 %") != 2 {
		t.Errorf("the words are missing:\n%s", text)
	}
}

// TestLayers: the names of layers are in the file, once each.
func TestLayers(t *testing.T) {
	pdf := mustPDF(t, sheet.Doc{Pages: []sheet.Page{{Items: []sheet.Item{
		sheet.Layer("outlines", sheet.Rect(sheet.Box{X: 50, Y: 50, W: 9, H: 9}, sheet.Wide, 0), sheet.Layer("hidden", sheet.Line{B: sheet.Pt(9, 9), Pen: sheet.Hidden})),
		sheet.Layer("outlines", sheet.Rect(sheet.Box{X: 80, Y: 50, W: 9, H: 9}, sheet.Wide, 0)),
	}}}})
	if n := bytes.Count(pdf, []byte("/Type /OCG")); n != 2 {
		t.Errorf("%d layers, want 2", n)
	}
}
