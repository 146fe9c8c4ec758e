package sheet

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"

	"casewright/internal/sheet/lettering"
)

// SVGText says how letters are written into an SVG.
type SVGText uint8

const (
	// TextByFont writes text elements, to be searched and copied; a reader
	// without the fonts shows a like one.
	TextByFont SVGText = iota
	// TextAsPaths writes outlines, which look the same everywhere.
	TextAsPaths
)

// SVG writes one sheet as an SVG file that is its true size in millimetres.
// Every layer is a group whose data-layer names it.
func SVG(page Page, text SVGText) []byte {
	paper := page.Paper.orLetter()
	return writeSVG(paper.Whole(), page.Title, page.Items, text)
}

// SVGOf writes only the part of a drawing inside the box, in true size: for a
// picture on a page of the browser.
func SVGOf(box Box, items []Item, text SVGText) []byte { return writeSVG(box, "", items, text) }

type svgWriter struct {
	b     strings.Builder
	text  SVGText
	clips map[*clip]string
}

func writeSVG(box Box, title string, items []Item, text SVGText) []byte {
	if !box.finite() {
		box = Box{W: 1, H: 1}
	}
	w := svgWriter{text: text, clips: map[*clip]string{}}
	fmt.Fprintf(&w.b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="%s %s %s %s">`+"\n",
		num(box.W), num(box.H), num(box.X), num(box.Y), num(box.W), num(box.H))
	if title != "" {
		w.b.WriteString("<title>" + html.EscapeString(title) + "</title>\n")
	}
	layer, in := "", false
	for _, m := range lower(items) {
		if m.layer != layer {
			w.layer(m.layer, in)
			layer, in = m.layer, m.layer != ""
		}
		w.mark(m)
	}
	w.layer("", in)
	w.b.WriteString("</svg>\n")
	return []byte(w.b.String())
}

func (w *svgWriter) layer(name string, in bool) {
	if in {
		w.b.WriteString("</g>\n")
	}
	if name != "" {
		w.b.WriteString(`<g data-layer="` + html.EscapeString(name) + "\">\n")
	}
}

func (w *svgWriter) mark(m mark) {
	within := ""
	if m.clip != nil {
		within = ` clip-path="url(#` + w.clip(m.clip) + `)"`
	}
	switch {
	case m.path != nil:
		w.path(m.path, within)
	case w.text == TextAsPaths:
		w.outlines(m.text, within)
	default:
		w.letters(m.text, within)
	}
}

// clip defines a clip outline once and gives its id.
func (w *svgWriter) clip(c *clip) string {
	if id, ok := w.clips[c]; ok {
		return id
	}
	outer := ""
	if c.outer != nil {
		outer = ` clip-path="url(#` + w.clip(c.outer) + `)"`
	}
	id := "clip" + strconv.Itoa(len(w.clips)+1)
	w.clips[c] = id
	w.b.WriteString(`<clipPath id="` + id + `"` + outer + `><path d="` + pathData(closed(c.ring)) + "\"/></clipPath>\n")
	return id
}

func (w *svgWriter) path(o *outline, within string) {
	w.b.WriteString(`<path d="`)
	for _, k := range o.contours {
		w.b.WriteString(pathData(k))
	}
	w.b.WriteString(`"`)
	if o.fill == NoFill {
		w.b.WriteString(` fill="none"`)
	} else {
		w.b.WriteString(` fill="` + grayHex(o.fill) + `" fill-rule="evenodd"`)
	}
	if o.pen.Width > 0 {
		w.b.WriteString(penAttributes(o.pen))
	}
	w.b.WriteString(within + "/>\n")
}

func penAttributes(p Pen) string {
	s := ` stroke="` + grayHex(p.ink()) + `" stroke-width="` + num(p.Width) + `"`
	if !p.square() {
		s += ` stroke-linecap="round" stroke-linejoin="round"`
	}
	if d := p.dashes(); d != nil {
		parts := make([]string, len(d))
		for i, v := range d {
			parts[i] = num(v)
		}
		s += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	return s
}

func pathData(k contour) string {
	var b strings.Builder
	pair := func(p Point) { b.WriteString(num(p.X) + " " + num(p.Y)) }
	b.WriteByte('M')
	pair(k.start)
	for _, s := range k.segs {
		if s.Curve {
			b.WriteByte('C')
			pair(s.C1)
			b.WriteByte(' ')
			pair(s.C2)
			b.WriteByte(' ')
		} else {
			b.WriteByte('L')
		}
		pair(s.To)
	}
	if k.closed {
		b.WriteByte('Z')
	}
	return b.String()
}

// families are the fonts to fall back on, for those without the Go fonts.
var families = map[lettering.Face]string{
	lettering.Regular: `font-family="Go, 'Helvetica Neue', Helvetica, Arial, sans-serif"`,
	lettering.Bold:    `font-family="Go, 'Helvetica Neue', Helvetica, Arial, sans-serif" font-weight="bold"`,
	lettering.Italic:  `font-family="Go, 'Helvetica Neue', Helvetica, Arial, sans-serif" font-style="italic"`,
	lettering.Mono:    `font-family="'Go Mono', Menlo, Consolas, monospace"`,
}

// letters pins the length of every run, so that another font may look
// different but takes no more room than was measured.
func (w *svgWriter) letters(t *letters, within string) {
	if within != "" { // a clip is given in the frame of the page, outside the turned one
		w.b.WriteString("<g" + within + ">")
	}
	deg := -float64(t.turn) * 180 / math.Pi
	w.b.WriteString(`<g transform="translate(` + num(t.at.X) + " " + num(t.at.Y) + ")")
	if math.Abs(deg) > 1e-9 {
		w.b.WriteString(" rotate(" + num(deg) + ")")
	}
	w.b.WriteString(`" fill="` + grayHex(t.ink) + `"`)
	if len(t.line.Bars) > 0 {
		w.b.WriteString(` aria-label="` + html.EscapeString(t.line.Text) + `"`)
	}
	w.b.WriteString(">")
	for _, r := range t.line.Runs {
		fmt.Fprintf(&w.b, `<text x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" xml:space="preserve" %s>%s</text>`,
			num(r.X), num(r.Y), num(r.Size.Millimetres()), num(r.Face.Width(r.Text, r.Size)), families[r.Face], html.EscapeString(r.Text))
	}
	for _, b := range t.line.Bars {
		fmt.Fprintf(&w.b, `<path d="M%s %sL%s %s" stroke="%s" stroke-width="%s"/>`,
			num(b.X1), num(b.Y), num(b.X2), num(b.Y), grayHex(t.ink), num(b.Thick))
	}
	w.b.WriteString("</g>")
	if within != "" {
		w.b.WriteString("</g>")
	}
	w.b.WriteString("\n")
}

func (w *svgWriter) outlines(t *letters, within string) {
	w.b.WriteString(`<path aria-label="` + html.EscapeString(t.line.Text) + `" fill="` + grayHex(t.ink) + `"` + within + ` d="`)
	pair := func(p [2]float64) string {
		q := t.local(p[0], p[1])
		return num(q.X) + " " + num(q.Y)
	}
	for _, r := range t.line.Runs {
		for _, s := range lettering.Outline(r) {
			switch s.Kind {
			case 'Q':
				w.b.WriteString("Q" + pair(s.Ctrl[0]) + " " + pair(s.To))
			case 'C':
				w.b.WriteString("C" + pair(s.Ctrl[0]) + " " + pair(s.Ctrl[1]) + " " + pair(s.To))
			default:
				w.b.WriteString(string(s.Kind) + pair(s.To))
			}
		}
	}
	for _, b := range t.line.Bars {
		h := b.Thick / 2
		w.b.WriteString("M" + pair([2]float64{b.X1, b.Y - h}) + "L" + pair([2]float64{b.X2, b.Y - h}) +
			"L" + pair([2]float64{b.X2, b.Y + h}) + "L" + pair([2]float64{b.X1, b.Y + h}) + "Z")
	}
	w.b.WriteString("\"/>\n")
}

func grayHex(s Shade) string {
	v := int(math.Round(s.gray() * 255))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// num writes a number with at most four decimals, 100 nm on paper.
func num(v float64) string {
	v = math.Round(v*1e4) / 1e4
	if v == 0 {
		v = 0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
