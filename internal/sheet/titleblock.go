package sheet

import (
	"fmt"
	"strings"

	"casewright/internal/sheet/lettering"
)

// TitleBlock is the strip along the foot of a sheet's frame. Empty fields
// leave their place blank, except Replaces: see there.
type TitleBlock struct {
	Piece      string // what is built: "Hall cabinet"
	Sheet      string // what this sheet shows: "Left side"
	Scale      string // "SCALE 1:4"; "" on sheets that are not drawn to scale
	Number, Of int    // sheet number and how many there are; 0 leaves them out
	Units      string // unit and graduation: "inches, to 1/32"
	Replaces   string // the sheet this one replaces; "" prints a line to write it on
	Edition    string // which state of the design: "design 3f2a"
	Projection Projection
}

// TitleBlockHeight is the room the strip takes at the foot of the frame.
const TitleBlockHeight = 16.0

// Foot splits a frame into the strip for the title block and the rest above
// it.
func Foot(frame Box) (strip, rest Box) { return frame.CutBottom(TitleBlockHeight) }

// In draws the block along the foot of the frame. Texts too long for their
// place end in an ellipsis.
func (t TitleBlock) In(frame Box) Item {
	strip, _ := Foot(frame)
	items := []Item{Line{Pt(strip.X, strip.Y), Pt(strip.Right(), strip.Y), frameLine}}
	name, rest := strip.CutLeft(strip.W * 0.37)
	items = append(items, t.names(name)...)
	number, middle := rest.CutRight(26)
	items = append(items, t.number(number)...)
	if t.Projection != NoProjection {
		var cone Box
		cone, middle = middle.CutRight(26)
		items = append(items, rule(cone), ProjectionSymbol(t.Projection, cone.Middle()))
	}
	left, right := middle.CutLeft(middle.W * 0.56)
	items = append(items, t.pair(left, "scale", strings.TrimPrefix(t.Scale, "SCALE "), "units", t.Units)...)
	items = append(items, t.pair(right, "replaces sheet", t.Replaces, "edition", t.Edition)...)
	return Layer("title", items...)
}

// rule is the upright line at the left of a cell.
func rule(b Box) Item { return Line{Pt(b.X, b.Y), Pt(b.X, b.Bottom()), Fine} }

func (t TitleBlock) names(b Box) []Item {
	w := b.W - 6
	return []Item{
		Text{At: Pt(b.X+3, b.Y+6.4), Text: lettering.Ellipsis(t.Piece, lettering.Bold, 12, w), Face: lettering.Bold, Size: 12},
		Text{At: Pt(b.X+3, b.Y+12.4), Text: lettering.Ellipsis(t.Sheet, lettering.Regular, SizeBody, w), Size: SizeBody},
	}
}

func (t TitleBlock) number(b Box) []Item {
	out := []Item{rule(b)}
	if t.Number <= 0 {
		return out
	}
	out = append(out, caption(b.X+2, b.Y+3.6, "sheet"))
	n := fmt.Sprint(t.Number)
	out = append(out, Text{At: Pt(b.X+2, b.Y+12.4), Text: n, Face: lettering.Bold, Size: SizeHead})
	if t.Of > 0 {
		x := b.X + 2 + lettering.Bold.Width(n, SizeHead) + 1.5
		out = append(out, Text{At: Pt(x, b.Y+12.4), Text: fmt.Sprintf("of %d", t.Of), Size: SizeNote})
	}
	return out
}

// pair is two captioned fields one above the other.
func (t TitleBlock) pair(b Box, upper, is, lower, was string) []Item {
	half := b.H / 2
	mid := Line{Pt(b.X, b.Y+half), Pt(b.Right(), b.Y+half), Fine}
	out := []Item{rule(b), mid}
	out = append(out, field(Box{b.X, b.Y, b.W, half}, upper, is)...)
	return append(out, field(Box{b.X, b.Y + half, b.W, half}, lower, was)...)
}

func field(b Box, name, text string) []Item {
	out := []Item{caption(b.X+2, b.Y+2.8, name)}
	if text == "" {
		if name == "replaces sheet" {
			out = append(out, Blank(Pt(b.X+2, b.Bottom()-1.2), b.W-5))
		}
		return out
	}
	text = lettering.Ellipsis(text, lettering.Regular, 8, b.W-4)
	return append(out, Text{At: Pt(b.X+2, b.Y+6.7), Text: text, Size: 8})
}

// caption is the small name of a field.
func caption(x, y float64, name string) Item {
	return Text{At: Pt(x, y), Text: name, Size: 5.5, Ink: Dark, Plain: true}
}
