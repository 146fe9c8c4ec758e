package lettering

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Stroke is one step of a letter's outline: To is where it ends, Ctrl its
// control points. Kind is 'M' move, 'L' line, 'Q' quadratic, 'C' cubic.
type Stroke struct {
	Kind byte
	Ctrl [2][2]float64
	To   [2]float64
}

// Outline is the outline of a run's letters in millimetres from the start of
// its baseline, x right, y down, for writers that cannot name a font. Each
// letter's contours start with a move and close by themselves.
func Outline(r Run) []Stroke {
	t := r.Face.tables()
	scale := r.Size.Millimetres() / t.em / 64
	ppem := fixed.I(int(t.em))
	var buf sfnt.Buffer
	var out []Stroke
	x := r.X
	for _, c := range r.Text {
		g, err := t.font.GlyphIndex(&buf, c)
		if err != nil {
			continue
		}
		segs, err := t.font.LoadGlyph(&buf, g, ppem, nil)
		if err != nil {
			continue
		}
		for _, s := range segs {
			out = append(out, stroke(s, x, r.Y, scale))
		}
		x += r.Face.Width(string(c), r.Size)
	}
	return out
}

func stroke(s sfnt.Segment, x, y, scale float64) Stroke {
	at := func(p fixed.Point26_6) [2]float64 {
		return [2]float64{x + float64(p.X)*scale, y + float64(p.Y)*scale}
	}
	switch s.Op {
	case sfnt.SegmentOpMoveTo:
		return Stroke{Kind: 'M', To: at(s.Args[0])}
	case sfnt.SegmentOpLineTo:
		return Stroke{Kind: 'L', To: at(s.Args[0])}
	case sfnt.SegmentOpQuadTo:
		return Stroke{Kind: 'Q', Ctrl: [2][2]float64{at(s.Args[0])}, To: at(s.Args[1])}
	}
	return Stroke{Kind: 'C', Ctrl: [2][2]float64{at(s.Args[0]), at(s.Args[1])}, To: at(s.Args[2])}
}
