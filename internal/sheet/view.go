package sheet

import "fmt"

// Scale is how many millimetres on paper stand for how many of the model. The
// zero value is full size.
type Scale struct {
	Paper, Model int
	Inches       string // how a US rule names it: "3 in = 1 ft"
}

// FullSize is 1:1.
var FullSize = Scale{Paper: 1, Model: 1}

// MetricScales are the preferred scales of ISO 5455:1979, clause 5.1, largest
// first, as far as furniture on paper needs them.
var MetricScales = []Scale{
	{10, 1, ""}, {5, 1, ""}, {2, 1, ""}, {1, 1, ""}, {1, 2, ""}, {1, 5, ""}, {1, 10, ""},
	{1, 20, ""}, {1, 50, ""}, {1, 100, ""},
}

// InchScales are the scales of a US architect's rule, full and half size
// above them (common practice, no source), largest first.
var InchScales = []Scale{
	{2, 1, ""}, {1, 1, "full size"}, {1, 2, "half size"}, {1, 4, "3 in = 1 ft"}, {1, 8, "1 1/2 in = 1 ft"},
	{1, 12, "1 in = 1 ft"}, {1, 16, "3/4 in = 1 ft"}, {1, 24, "1/2 in = 1 ft"}, {1, 32, "3/8 in = 1 ft"},
	{1, 48, "1/4 in = 1 ft"}, {1, 96, "1/8 in = 1 ft"},
}

// Ratio is paper over model.
func (s Scale) Ratio() float64 {
	if s.Paper <= 0 || s.Model <= 0 {
		return 1
	}
	return float64(s.Paper) / float64(s.Model)
}

// String writes the scale as drawings do: "SCALE 1:5", or
// "SCALE 1:4 (3 in = 1 ft)".
func (s Scale) String() string {
	if s.Paper <= 0 || s.Model <= 0 {
		s = FullSize
	}
	text := fmt.Sprintf("SCALE %d:%d", s.Paper, s.Model)
	if s.Inches != "" {
		text += " (" + s.Inches + ")"
	}
	return text
}

// Largest is the first of the scales, which run from large to small, that the
// layout fits at; the smallest of them if none does. fits lays the sheet out
// at a scale and says whether there was room.
func Largest(scales []Scale, fits func(Scale) bool) Scale {
	for _, s := range scales {
		if fits(s) {
			return s
		}
	}
	if len(scales) == 0 {
		return FullSize
	}
	return scales[len(scales)-1]
}

// View carries a model, y up, over to the paper, y down.
type View struct {
	Scale Scale
	Model Box   // what is shown, millimetres of the model
	At    Point // where the model's lower left corner (Model.X, Model.Y) stands on paper
}

// FitView centres the model in the frame at the largest of the scales that
// fits; if even the smallest does not fit, at that one.
func FitView(model, frame Box, scales []Scale) View {
	s := Largest(scales, func(s Scale) bool {
		return model.W*s.Ratio() <= frame.W+1e-9 && model.H*s.Ratio() <= frame.H+1e-9
	})
	return CenterView(model, frame, s)
}

// CenterView centres the model in the frame at a scale.
func CenterView(model, frame Box, s Scale) View {
	m := frame.Middle()
	return View{Scale: s, Model: model, At: Point{m.X - model.W*s.Ratio()/2, m.Y + model.H*s.Ratio()/2}}
}

// ViewAt puts the upper left corner of the view at a place on paper.
func ViewAt(model Box, upperLeft Point, s Scale) View {
	return View{Scale: s, Model: model, At: upperLeft.Plus(0, model.H*s.Ratio())}
}

// Transform carries model millimetres to paper millimetres.
func (v View) Transform() Transform {
	r := v.Scale.Ratio()
	return Transform{A: r, D: -r, E: v.At.X - r*v.Model.X, F: v.At.Y + r*v.Model.Y}
}

// Pt is a place of the model on paper.
func (v View) Pt(x, y float64) Point { return v.Transform().At(Point{x, y}) }

// Len is a length of the model on paper.
func (v View) Len(model float64) float64 { return model * v.Scale.Ratio() }

// Xs are places along the model's x axis as x on paper.
func (v View) Xs(model ...float64) []float64 {
	out := make([]float64, len(model))
	for i, x := range model {
		out[i] = v.Pt(x, 0).X
	}
	return out
}

// Ys are places along the model's y axis as y on paper.
func (v View) Ys(model ...float64) []float64 {
	out := make([]float64, len(model))
	for i, y := range model {
		out[i] = v.Pt(0, y).Y
	}
	return out
}

// OnPaper is the room the model takes on paper.
func (v View) OnPaper() Box {
	w, h := v.Len(v.Model.W), v.Len(v.Model.H)
	return Box{v.At.X, v.At.Y - h, w, h}
}

// Place draws items given in millimetres of the model. Pens, type and hatch
// keep their size on paper.
func (v View) Place(items ...Item) Group { return Group{At: v.Transform(), Items: items} }

// Label is the line under a view: its name, and its scale beneath.
func (v View) Label(name string) Item {
	b := v.OnPaper()
	return v.LabelAt(name, Point{b.X + b.W/2, b.Bottom() + 6})
}

// LabelAt puts the view's name and scale centred below a place.
func (v View) LabelAt(name string, at Point) Item {
	return All(
		Text{At: at, Text: name, Size: SizeBody, Align: Center, Level: Top},
		Text{At: at.Plus(0, 5), Text: v.Scale.String(), Size: SizeFine, Align: Center, Level: Top},
	)
}
