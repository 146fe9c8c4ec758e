package book

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"casewright/internal/check"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

// The tests here read our file with poppler, which shares no code with the
// writer.

func poppler(t testing.TB, pdf []byte, program string, args ...string) []byte {
	t.Helper()
	path := testkit.NeedTool(t, program, "poppler-utils")
	file := filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, append(args, file, "-")...)
	if program == "pdftoppm" {
		cmd = exec.Command(path, append(args, file)...)
	}
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("%s: %v\n%s", program, err, complaints.String())
	}
	return out
}

// TestReads: sizes with stacked fractions can be copied out, and each sheet
// says which one it is.
func TestReads(t *testing.T) {
	doc := composed(t, "hall-cabinet", sheet.Letter)
	text := string(poppler(t, book(t, "hall-cabinet", sheet.Letter), "pdftotext"))
	for _, want := range []string{"Hall cabinet for keys and post", "a piano teacher", "26 3/4", "Before you cut", "waits for the keys opening", "print at 100 %", fmt.Sprintf("of %d", len(doc.Pages))} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing reads %q", want)
		}
	}
	if strings.Contains(text, "?") {
		t.Errorf("a letter is missing from the face: %q", text[max(0, strings.IndexByte(text, '?')-30):strings.IndexByte(text, '?')+10])
	}
}

// TestFullSize measures the dovetail sheet of the case on a print of 0.1 mm
// dots: the longest level line of the drawing is the boards' edge, 5 3/8 in
// (136.525 mm) and a line's width of 0.35 mm long; on the sheet of the drawers
// the longest upright one is the test bar of 6 in (152.4 mm, ends square).
func TestFullSize(t *testing.T) {
	pdf := book(t, "hall-cabinet", sheet.Letter)
	m := newMaker(example(t, "hall-cabinet"), nil, Options{})
	for _, c := range []struct {
		layout string
		across bool
		want   float64
	}{{"D1", true, 136.525 + 0.35}, {"D2", false, 152.4}} {
		n := sheetNamed(t, composed(t, "hall-cabinet", sheet.Letter), "Dovetails "+c.layout)
		page := fmt.Sprint(n)
		img := gray(t, poppler(t, pdf, "pdftoppm", "-r", "254", "-gray", "-f", page, "-l", page, "-singlefile"))
		box := writable(m.paper)
		got := float64(img.longest(box, c.across)) / 10
		testkit.Near(t, got, c.want, 0.2)
	}
}

func sheetNamed(t *testing.T, doc sheet.Doc, title string) int {
	t.Helper()
	for i, p := range doc.Pages {
		if strings.Contains(p.Title, title) {
			return i + 1
		}
	}
	t.Fatalf("no sheet is called %q", title)
	return 0
}

// picture is gray dots, 0.1 mm each.
type picture struct {
	w, h int
	dots []byte
}

// gray reads a binary PGM.
func gray(t *testing.T, pgm []byte) picture {
	t.Helper()
	var p picture
	var most int
	if n, err := fmt.Sscanf(string(pgm[:min(40, len(pgm))]), "P5\n%d %d\n%d\n", &p.w, &p.h, &most); n != 3 || err != nil {
		t.Fatalf("not a picture: %v", err)
	}
	p.dots = pgm[len(pgm)-p.w*p.h:]
	return p
}

// longest is the longest unbroken dark run, level or upright, within a box
// given in millimetres less the level test bar at its foot.
func (p picture) longest(box sheet.Box, across bool) int {
	x0, x1, y0, y1 := int(box.X*10), int(box.Right()*10), int(box.Y*10), int((box.Bottom()-barRoom)*10)
	best := 0
	run := func(n int, at func(i int) int) {
		length := 0
		for i := range n {
			if p.dots[at(i)] > 128 {
				length = 0
				continue
			}
			length++
			best = max(best, length)
		}
	}
	if across {
		for y := y0; y < y1; y++ {
			run(x1-x0, func(i int) int { return y*p.w + x0 + i })
		}
		return best
	}
	for x := x0; x < x1; x++ {
		run(y1-y0, func(i int) int { return (y0+i)*p.w + x })
	}
	return best
}

// metric is a cabinet thought in millimetres: first angle, scales of ISO 5455.
const metric = `
commission "wall-cabinet" {
  title = "Wall cabinet"
  units = "mm"
}

case "cabinet" {
  width     = 420
  height    = 640
  depth     = 180
  thickness = 18
  wood      = "white oak"
  hung      = true

  back {
    style = "shiplap"
  }

  inside {
    row "top" {
      door {
        hinge = "right"
      }
      shelves {
        count = 2
      }
    }
    divider {}
    row "low" {
      height = 110
      column "a" {
        drawer {}
      }
      partition {}
      column "b" {
        drawer {}
      }
    }
  }
}

measured "cabinet.low.a" {
  width  = 181.5
  height = 109.5
}
`

func metricPiece(t testing.TB) *piece.Piece {
	t.Helper()
	spec, said := design.Read([]design.Source{{Name: "metric.hcl", Text: []byte(metric)}})
	p, more := piece.Build(spec)
	if said.Has(diag.Error) || more.Has(diag.Error) {
		t.Fatalf("%v %v", said, more)
	}
	return p
}

// TestMetric: a commission in millimetres is drawn in first angle, at metric
// scales, and prints no fraction of an inch in its sizes.
func TestMetric(t *testing.T) {
	p := metricPiece(t)
	doc, err := compose(p, check.Run(p), Options{Paper: sheet.A4})
	if err != nil {
		t.Fatal(err)
	}
	if p.Spec.Commission.Unit != measure.Millimetres {
		t.Fatal("the text is not in millimetres")
	}
	views := strings.Join(texts(doc.Pages[sheetNamed(t, doc, "Views")-1].Items), "\n")
	for _, want := range []string{"420", "640", "left side", "1:10", "mm, to"} {
		if !strings.Contains(views, want) {
			t.Errorf("the views do not say %q:\n%s", want, views)
		}
	}
	for i, p := range doc.Pages {
		apart(t, fmt.Sprintf("metric, sheet %d", i+1), p)
	}
}
