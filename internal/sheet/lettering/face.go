package lettering

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// Points is a type size in points of 1/72 in. The zero value sets nothing.
type Points float64

// Millimetres is the type size, the em, on paper.
func (p Points) Millimetres() float64 { return float64(p) * 25.4 / 72 }

// Face is one of the typefaces the sheets are lettered in. The zero value is
// Regular; a face out of range behaves as Regular.
type Face uint8

// The faces, all of the Go font family, which is free to embed (BSD licence).
const (
	Regular Face = iota
	Bold
	Italic
	Mono
	faces
)

// Faces lists every face in a fixed order.
func Faces() []Face { return []Face{Regular, Bold, Italic, Mono} }

// Name is a short stable name: "regular", "bold", "italic", "mono".
func (f Face) Name() string {
	return [...]string{"regular", "bold", "italic", "mono"}[f.known()]
}

// TTF is the font file. The bytes are shared: never change them.
func (f Face) TTF() []byte {
	switch f.known() {
	case Bold:
		return gobold.TTF
	case Italic:
		return goitalic.TTF
	case Mono:
		return gomono.TTF
	}
	return goregular.TTF
}

func (f Face) known() Face {
	if f >= faces {
		return Regular
	}
	return f
}

// tables holds what is read out of one font file once.
type tables struct {
	font      *sfnt.Font
	em        float64
	advance   []uint16 // thousandths of an em by rune; 0 where there is no glyph
	capHeight float64  // em
	digit     float64  // height of a figure, em
}

// lastRune bounds the table of widths; beyond it the fonts have no letters that
// a furniture shop writes.
const lastRune = 0x2fff

var (
	loaded   [faces]*tables
	loadOnce [faces]sync.Once
)

func (f Face) tables() *tables {
	f = f.known()
	loadOnce[f].Do(func() { loaded[f] = readTables(f.TTF()) })
	return loaded[f]
}

// readTables panics on a bad font: the fonts are compiled in, so that could
// only be our own mistake.
func readTables(ttf []byte) *tables {
	parsed, err := sfnt.Parse(ttf)
	if err != nil {
		panic("lettering: embedded font: " + err.Error())
	}
	t := &tables{font: parsed, em: float64(parsed.UnitsPerEm()), advance: make([]uint16, lastRune+1)}
	ppem := fixed.I(int(parsed.UnitsPerEm()))
	var buf sfnt.Buffer
	for r := rune(' '); r <= lastRune; r++ {
		g, err := parsed.GlyphIndex(&buf, r)
		if err != nil || g == 0 {
			continue
		}
		a, err := parsed.GlyphAdvance(&buf, g, ppem, font.HintingNone)
		if err != nil {
			continue
		}
		t.advance[r] = thousandths(a, t.em)
	}
	t.capHeight = t.heightOf(&buf, 'H', ppem)
	t.digit = t.heightOf(&buf, '8', ppem)
	return t
}

// thousandths rounds a width as a PDF font does, whose table of widths holds
// whole thousandths of an em. Measuring finer would disagree with the print.
func thousandths(a fixed.Int26_6, em float64) uint16 {
	return uint16(float64(a)/64*1000/em + 0.5)
}

func (t *tables) heightOf(buf *sfnt.Buffer, r rune, ppem fixed.Int26_6) float64 {
	g, err := t.font.GlyphIndex(buf, r)
	if err != nil {
		return 0.7
	}
	b, _, err := t.font.GlyphBounds(buf, g, ppem, font.HintingNone)
	if err != nil {
		return 0.7
	}
	return float64(-b.Min.Y) / 64 / t.em
}

// Has reports whether the face has a letter for r.
func (f Face) Has(r rune) bool {
	return r >= ' ' && r <= lastRune && f.tables().advance[r] != 0
}

// Width is how far the text runs on paper in millimetres, letters side by side
// as they stand: no fraction is stacked, see [Set] for that. Letters the face
// lacks count as the "?" that [Face.Printable] puts in their place.
func (f Face) Width(s string, size Points) float64 {
	return float64(f.widthUnits(s)) / 1000 * size.Millimetres()
}

func (f Face) widthUnits(s string) int {
	advance, sum := f.tables().advance, 0
	for _, r := range s {
		if r < 0 || r > lastRune || advance[r] == 0 {
			r = '?'
		}
		sum += int(advance[r])
	}
	return sum
}

// CapHeight is the height of a capital letter on paper in millimetres.
func (f Face) CapHeight(size Points) float64 { return f.tables().capHeight * size.Millimetres() }

// Printable is s with line breaks and tabs as blanks, other control characters
// left out, letter and accent joined, and every letter the face does not have
// as "?".
func (f Face) Printable(s string) string {
	clean := true
	for _, r := range s {
		if !f.Has(r) {
			clean = false
			break
		}
	}
	if clean {
		return s
	}
	out := make([]rune, 0, len(s))
	for _, r := range norm.NFC.String(s) {
		switch {
		case f.Has(r):
			out = append(out, r)
		case r == '\n' || r == '\t' || r == '\r':
			out = append(out, ' ')
		case r >= ' ' && r != 0x7f && r != '\u200b' && r != '\ufeff':
			out = append(out, '?')
		}
	}
	return string(out)
}
