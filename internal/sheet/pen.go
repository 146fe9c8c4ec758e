package sheet

// Shade is how much ink: 1 to 100 percent black. The zero value means none
// for a fill and full black for a pen. [PaperWhite] covers what lies below.
type Shade uint8

// Shades that stay apart on a black and white printer.
const (
	NoFill     Shade = 0
	Pale       Shade = 7
	Light      Shade = 15
	Mid        Shade = 35
	Dark       Shade = 60
	Black      Shade = 100
	PaperWhite Shade = 255
)

// gray is the PDF and SVG gray level, 0 black to 1 white.
func (s Shade) gray() float64 {
	if s > 100 {
		return 1
	}
	return 1 - float64(s)/100
}

// Stroke says how a line is broken up.
type Stroke uint8

// The strokes of ISO 128-2:2020 that the sheets use. Dash lengths in line
// widths, from memory: dash 12, long dash 24, gap 3.
const (
	Solid  Stroke = iota
	Dashed        // hidden edges
	Chain         // centre lines and axes: long, short
	Dotted        // what is not there yet, or moves
)

// Pen is how a line is drawn. The zero value draws nothing.
type Pen struct {
	Width  float64 // millimetres on paper
	Stroke Stroke
	Ink    Shade // zero is full black
	Butt   bool  // ends square at its end point, not round beyond it
}

// The pens. Wide and narrow are 2 : 1 (ISO 128-2:2020, from memory).
var (
	NoPen  = Pen{}
	Wide   = Pen{Width: 0.5}
	Narrow = Pen{Width: 0.25}
	Fine   = Pen{Width: 0.13} // hatching and rules of tables
	Hidden = Pen{Width: 0.25, Stroke: Dashed}
	Centre = Pen{Width: 0.25, Stroke: Chain}
	Ghost  = Pen{Width: 0.25, Stroke: Dotted}
)

// Of is the pen with another amount of ink.
func (p Pen) Of(ink Shade) Pen {
	p.Ink = ink
	return p
}

func (p Pen) ink() Shade {
	if p.Ink == 0 {
		return Black
	}
	return p.Ink
}

// dashes is the pattern in millimetres, drawn length first. Lengths follow a
// line of at least 0.25 mm, else fine dashes run together.
func (p Pen) dashes() []float64 {
	w := max(p.Width, 0.2)
	switch p.Stroke {
	case Dashed:
		return []float64{12 * w, 3 * w}
	case Chain:
		return []float64{24 * w, 3 * w, 6 * w, 3 * w}
	case Dotted:
		return []float64{w, 3 * w}
	}
	return nil
}
