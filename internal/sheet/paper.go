package sheet

import (
	"fmt"
	"strings"
)

// Paper is a sheet of paper in millimetres as it is turned. The zero value is
// no paper; pages without paper are Letter.
type Paper struct {
	Name string
	W, H float64
}

// The papers, upright. ISO sizes are trimmed sizes of ISO 216 and ISO 5457;
// Letter and Legal are 8 1/2 × 11 and 8 1/2 × 14 in.
var (
	Letter = Paper{"Letter", 8.5 * 25.4, 11 * 25.4}
	Legal  = Paper{"Legal", 8.5 * 25.4, 14 * 25.4}
	A4     = Paper{"A4", 210, 297}
	A3     = Paper{"A3", 297, 420}
	A2     = Paper{"A2", 420, 594}
)

// Papers lists the papers a sheet can be asked for by name.
func Papers() []Paper { return []Paper{Letter, A4, Legal, A3, A2} }

// PaperNamed finds a paper by its name, in capitals or not.
func PaperNamed(name string) (Paper, error) {
	var names []string
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("there is no paper %q: use %s", name, strings.Join(names, ", "))
}

// Landscape is the paper with its longer edge across.
func (p Paper) Landscape() Paper {
	if p.H > p.W {
		p.W, p.H = p.H, p.W
	}
	return p
}

// Portrait is the paper with its longer edge upright.
func (p Paper) Portrait() Paper {
	if p.W > p.H {
		p.W, p.H = p.H, p.W
	}
	return p
}

func (p Paper) turned() Paper {
	p.W, p.H = p.H, p.W
	return p
}

// Margins of the frame, ISO 5457:1999 (from memory): 20 mm at the filing edge,
// which is the left one, 10 mm at the others.
const (
	FilingMargin = 20
	Margin       = 10
)

// Whole is all of the paper.
func (p Paper) Whole() Box { return Box{W: p.W, H: p.H} }

// Frame is the drawing space inside the margins.
func (p Paper) Frame() Box { return p.Whole().Trim(FilingMargin, Margin, Margin, Margin) }

func (p Paper) orLetter() Paper {
	if !(p.W > 0 && p.H > 0) {
		return Letter
	}
	return p
}

// frameLine is lighter than an outline, so that the drawing stands out.
var frameLine = Pen{Width: 0.35}

// Border draws the frame.
func (p Paper) Border() Item { return Rect(p.orLetter().Frame(), frameLine, 0) }
