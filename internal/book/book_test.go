package book

import (
	"bytes"
	"fmt"
	"slices"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"pgregory.net/rapid"

	"casewright/internal/check"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

var papers = []sheet.Paper{sheet.Letter, sheet.A4}

func book(t testing.TB, name string, paper sheet.Paper) []byte {
	t.Helper()
	p := example(t, name)
	pdf, err := PDF(p, check.Run(p), Options{Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

func composed(t testing.TB, name string, paper sheet.Paper) sheet.Doc {
	t.Helper()
	p := example(t, name)
	doc, err := compose(p, check.Run(p), Options{Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestSameBytes(t *testing.T) {
	if !bytes.Equal(book(t, "hall-cabinet", sheet.Letter), book(t, "hall-cabinet", sheet.Letter)) {
		t.Error("the same piece gave another book")
	}
}

func TestNoParts(t *testing.T) {
	if _, err := PDF(&piece.Piece{}, nil, Options{}); err == nil {
		t.Error("a piece without parts gave a book")
	}
}

func TestProgress(t *testing.T) {
	p := example(t, "hall-cabinet")
	var steps []string
	_, err := PDF(p, nil, Options{Progress: func(done, total int, what string) { steps = append(steps, fmt.Sprint(done, "/", total, " ", what)) }})
	if err != nil || len(steps) != len(chapters)+1 || steps[0] != fmt.Sprintf("0/%d cover", len(chapters)) {
		t.Errorf("progress was %q (%v)", steps, err)
	}
}

// TestOpens asks a second reader, which shares no code with the writer.
func TestOpens(t *testing.T) {
	for _, paper := range papers {
		pdf := book(t, "hall-cabinet", paper)
		if err := api.Validate(bytes.NewReader(pdf), model.NewDefaultConfiguration()); err != nil {
			t.Errorf("%s: %v", paper.Name, err)
		}
	}
}

// TestNothingOverlaps: no two texts of a sheet print over each other, and all
// lie on the paper.
func TestNothingOverlaps(t *testing.T) {
	for _, name := range examples {
		for _, paper := range papers {
			for i, p := range composed(t, name, paper).Pages {
				apart(t, fmt.Sprintf("%s, %s, sheet %d", name, paper.Name, i+1), p)
			}
		}
	}
}

func apart(t *testing.T, where string, p sheet.Page) {
	t.Helper()
	boxes := seenTexts(p)
	whole := sheet.Box{W: p.Paper.W, H: p.Paper.H}
	for i, a := range boxes {
		if !whole.Contains(a) {
			t.Errorf("%s: a text at %.0f, %.0f runs off the paper", where, a.X, a.Y)
		}
		for _, b := range boxes[:i] {
			// A third of a millimetre is the room letters keep inside their boxes.
			if a.Inset(0.35).Overlaps(b.Inset(0.35)) {
				t.Errorf("%s: texts print over each other at %.1f, %.1f (%.1f × %.1f) and %.1f, %.1f (%.1f × %.1f)", where, a.X, a.Y, a.W, a.H, b.X, b.Y, b.W, b.H)
			}
		}
	}
}

// seenTexts are the texts of a sheet; of a tile, those whole in its window.
func seenTexts(p sheet.Page) []sheet.Box {
	var out []sheet.Box
	for _, it := range p.Items {
		g, ok := it.(sheet.Group)
		if !ok || len(g.Clip) == 0 {
			out = append(out, sheet.TextBoxes(it)...)
			continue
		}
		for _, b := range sheet.TextBoxes(it) {
			if sheet.BoundsOf(g.Clip...).Contains(b) {
				out = append(out, b)
			}
		}
	}
	return out
}

// TestContents: the list of sheets leads to the last chapter, so that none is
// left out for want of room.
func TestContents(t *testing.T) {
	for _, name := range examples {
		m := newMaker(example(t, name), nil, Options{})
		if err := m.write(); err != nil {
			t.Fatal(err)
		}
		for _, d := range m.drafts {
			for _, f := range d.late {
				d.add(f()...)
			}
			all := texts(d.items)
			if i := slices.Index(all, "Sheets"); i >= 0 && !slices.Contains(all[i:], m.drafts[len(m.drafts)-1].title) {
				t.Errorf("%s: the list of sheets stops before the end", name)
			}
		}
	}
}

// anyCase is a case of any size, in inches or millimetres.
var anyCase = rapid.Custom(func(t *rapid.T) string {
	size := func(name string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name) }
	fill := rapid.SampledFrom([]string{"", "\n door {}\n", "\n door {\n pair = true\n }\n", "\n drawer {}\n", "\n shelves {\n count = 3\n }\n"})
	scale, unit := 1, "in"
	if rapid.Bool().Draw(t, "metric") {
		scale, unit = 25, "mm"
	}
	return fmt.Sprintf(`commission "c" { units = %q }
case "c" {
  width = %d
  height = %d
  depth = %d
  hung = %v
  back { style = "shiplap" }
  inside {
    row "top" { %s }
    divider {}
    row "low" { %s }
  }
}`, unit, size("width", 8, 90)*scale, size("height", 12, 100)*scale, size("depth", 6, 30)*scale,
		rapid.Bool().Draw(t, "hung"), fill.Draw(t, "above"), fill.Draw(t, "below"))
})

// TestAnyCase: whatever the sizes and the unit, a case that can be built gives
// a book. A dozen fixed draws: each is two papers' work.
func TestAnyCase(t *testing.T) {
	books := 0
	for seed := range 12 {
		text := anyCase.Example(seed)
		spec, said := design.Read([]design.Source{{Name: "any.hcl", Text: []byte(text)}})
		p, more := piece.Build(spec)
		if said.Has(diag.Error) {
			t.Fatalf("%v\n%s", said, text)
		}
		if len(p.Parts) == 0 {
			continue
		}
		books++
		if _, err := compose(p, more, Options{Paper: papers[seed%2]}); err != nil {
			t.Errorf("%v\n%s", err, text)
		}
	}
	if books < 6 {
		t.Errorf("only %d of the draws were pieces", books)
	}
}

// TestText pins what every sheet says, in the order it is drawn.
func TestText(t *testing.T) {
	for _, name := range examples {
		t.Run(name, func(t *testing.T) {
			var out bytes.Buffer
			for _, p := range composed(t, name, sheet.Letter).Pages {
				fmt.Fprintf(&out, "== %s\n", p.Title)
				for _, s := range texts(p.Items) {
					fmt.Fprintln(&out, s)
				}
			}
			testkit.Golden(t, name+".txt", out.Bytes())
		})
	}
}

// texts are the words among the items.
func texts(items []sheet.Item) []string {
	var out []string
	for _, it := range items {
		switch it := it.(type) {
		case sheet.Text:
			if it.Text != "" {
				out = append(out, it.Text)
			}
		case sheet.Paragraph:
			out = append(out, it.Text)
		case sheet.Balloon:
			out = append(out, "("+it.Mark+")")
		case sheet.Group:
			out = append(out, texts(it.Items)...)
		case sheet.Dimensioned:
			out = append(out, texts(it.Items)...)
		}
	}
	return out
}

func BenchmarkHallCabinet(b *testing.B) {
	p := example(b, "hall-cabinet")
	findings := check.Run(p)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := PDF(p, findings, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
