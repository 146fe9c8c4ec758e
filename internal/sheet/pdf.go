package sheet

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"

	"casewright/internal/sheet/lettering"
)

// point is how many points a millimetre has.
const point = 72 / 25.4

// stamp stands in every file as its date: a clock would give other bytes for
// the same sheets.
var stamp = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// PDF writes the sheets as one file. Fonts are embedded, cut down to the
// letters used; layers can be switched in a reader; the file names no author
// and carries no clock, so the same sheets give the same bytes. A document
// without pages is an error.
func PDF(doc Doc) ([]byte, error) { return writePDF(doc, true) }

func writePDF(doc Doc, compress bool) ([]byte, error) {
	if len(doc.Pages) == 0 {
		return nil, fmt.Errorf("a document without sheets cannot be printed")
	}
	w := newPDFWriter(doc, compress)
	pages := make([][]mark, len(doc.Pages))
	for i, p := range doc.Pages {
		pages[i] = lower(p.Items)
	}
	w.prepare(pages)
	for i, p := range doc.Pages {
		w.page(p, pages[i])
	}
	var out bytes.Buffer
	if err := w.f.Output(&out); err != nil {
		return nil, fmt.Errorf("writing the PDF: %w", err)
	}
	return out.Bytes(), nil
}

type pdfWriter struct {
	f       *fpdf.Fpdf
	layers  map[string]int
	paper   Paper
	content []byte
}

func newPDFWriter(doc Doc, compress bool) *pdfWriter {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: Letter.W, Ht: Letter.H}})
	f.SetCreationDate(stamp)
	f.SetModificationDate(stamp)
	f.SetCatalogSort(true)
	f.SetCompression(compress)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetProducer("Casewright", true)
	f.SetTitle(doc.Title, true)
	return &pdfWriter{f: f, layers: map[string]int{}}
}

// prepare registers fonts and layers in the order they first appear, before
// any page is begun.
func (w *pdfWriter) prepare(pages [][]mark) {
	used := map[lettering.Face]bool{}
	for _, marks := range pages {
		for _, m := range marks {
			if m.layer != "" {
				if _, known := w.layers[m.layer]; !known {
					w.layers[m.layer] = w.f.AddLayer(m.layer, true)
				}
			}
			if m.text != nil {
				for _, r := range m.text.line.Runs {
					used[r.Face] = true
				}
			}
		}
	}
	for _, face := range lettering.Faces() {
		if used[face] {
			w.f.AddUTF8FontFromBytes(face.Name(), "", face.TTF())
		}
	}
}

func (w *pdfWriter) page(p Page, marks []mark) {
	w.paper = p.Paper.orLetter()
	w.f.AddPageFormat("P", fpdf.SizeType{Wd: w.paper.W, Ht: w.paper.H})
	if p.Title != "" {
		w.f.Bookmark(p.Title, 0, 0)
	}
	for i := 0; i < len(marks); {
		n := i + 1
		for n < len(marks) && marks[n].layer == marks[i].layer && marks[n].clip == marks[i].clip {
			n++
		}
		w.stretch(marks[i:n])
		i = n
	}
}

// stretch writes marks that share a layer and a clip.
func (w *pdfWriter) stretch(marks []mark) {
	layer, layered := w.layers[marks[0].layer]
	if layered {
		w.f.BeginLayer(layer)
	}
	w.put("q\n")
	w.clip(marks[0].clip)
	for _, m := range marks {
		if m.path != nil {
			w.path(m.path)
		} else {
			w.letters(m.text)
		}
	}
	w.put("Q")
	w.flush()
	if layered {
		w.f.EndLayer()
	}
}

func (w *pdfWriter) clip(c *clip) {
	if c == nil {
		return
	}
	w.clip(c.outer)
	w.contour(closed(c.ring))
	w.put("W n\n")
}

func (w *pdfWriter) put(s string) { w.content = append(w.content, s...) }

func (w *pdfWriter) flush() {
	if len(w.content) > 0 {
		w.f.RawWriteStr(string(w.content))
		w.content = w.content[:0]
	}
}

// num writes a number with at most four decimals: 1e-4 pt is 35 nm on paper.
func (w *pdfWriter) num(v float64) {
	v = math.Round(v*1e4) / 1e4
	if v == 0 {
		v = 0 // no "-0"
	}
	w.content = strconv.AppendFloat(w.content, v, 'f', -1, 64)
	w.content = append(w.content, ' ')
}

func (w *pdfWriter) pt(p Point) {
	w.num(p.X * point)
	w.num((w.paper.H - p.Y) * point)
}

func (w *pdfWriter) contour(k contour) {
	w.pt(k.start)
	w.put("m\n")
	for _, s := range k.segs {
		if s.Curve {
			w.pt(s.C1)
			w.pt(s.C2)
		}
		w.pt(s.To)
		if s.Curve {
			w.put("c\n")
		} else {
			w.put("l\n")
		}
	}
	if k.closed {
		w.put("h\n")
	}
}

func (w *pdfWriter) path(o *outline) {
	stroked := o.pen.Width > 0
	if stroked {
		w.pen(o.pen)
	}
	if o.fill != NoFill {
		w.num(o.fill.gray())
		w.put("g\n")
	}
	for _, k := range o.contours {
		w.contour(k)
	}
	switch {
	case stroked && o.fill != NoFill:
		w.put("B*\n")
	case stroked:
		w.put("S\n")
	default:
		w.put("f*\n")
	}
}

func (w *pdfWriter) pen(p Pen) {
	w.num(p.Width * point)
	w.put("w ")
	w.num(p.ink().gray())
	w.put("G ")
	w.put(map[bool]string{true: "0 J 0 j [", false: "1 J 1 j ["}[p.square()])
	for _, d := range p.dashes() {
		w.num(d * point)
	}
	w.put("] 0 d\n")
}

// square ends keep dashes and their gaps as long as they are said to be.
func (p Pen) square() bool { return p.Butt || p.Stroke == Dashed || p.Stroke == Chain }

// letters places a line by a matrix, its runs within. A span that says what the
// letters mean stands inside the matrix, where readers expect it.
func (w *pdfWriter) letters(t *letters) {
	sin, cos := math.Sincos(float64(t.turn))
	w.put("q ")
	w.num(t.ink.gray())
	w.put("g ")
	for _, v := range []float64{cos, sin, -sin, cos} {
		w.num(v)
	}
	w.pt(t.at)
	w.put("cm\n")
	w.bars(t)
	spoken := len(t.line.Bars) > 0
	if spoken {
		// Copied out, a stacked fraction must read 5 3/8 and not 5, 3, 8.
		w.put("/Span <</ActualText " + utf16Hex(t.line.Text) + ">> BDC")
	}
	w.flush()
	for _, r := range t.line.Runs {
		w.f.SetFont(r.Face.Name(), "", float64(r.Size))
		w.f.Text(r.X, w.paper.H+r.Y, r.Text)
	}
	if spoken {
		w.put("EMC ")
	}
	w.put("Q\n")
}

// bars are drawn in the frame of the line, which has y up.
func (w *pdfWriter) bars(t *letters) {
	for _, b := range t.line.Bars {
		w.pen(Pen{Width: b.Thick, Ink: t.ink, Butt: true})
		w.num(b.X1 * point)
		w.num(-b.Y * point)
		w.put("m ")
		w.num(b.X2 * point)
		w.num(-b.Y * point)
		w.put("l S\n")
	}
}

func utf16Hex(s string) string {
	const hex = "0123456789ABCDEF"
	out := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		out = append(out, hex[u>>12], hex[u>>8&15], hex[u>>4&15], hex[u&15])
	}
	return string(append(out, '>'))
}
