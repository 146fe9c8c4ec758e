package book

import (
	"math"
	"strings"

	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/solid"
	"casewright/internal/solid/view"
)

// cover is the whole piece as somebody standing before it sees it, with a
// person beside it for scale.
func (m *maker) cover() error {
	d := m.page("The piece", m.paper)
	m.mark("cover")
	box := writable(d.paper)
	y := m.coverWords(d, box)
	d.add(m.coverSizes(sheet.Box{X: box.X, Y: y, W: box.W})...)
	words := sheet.Paragraph{Width: box.W, Size: 8, Ink: sheet.Dark, Text: m.standingWords()}
	words.At = sheet.Pt(box.X, box.Bottom()-1-words.Height())
	d.add(words)
	top := y + 25 // below the sizes
	d.add(m.standing(sheet.Box{X: box.X, Y: top, W: box.W, H: words.At.Y - 4 - top})...)
	return nil
}

// coverWords are the title, the brief and the sizes over all; it returns where
// they end.
func (m *maker) coverWords(d *draft, box sheet.Box) float64 {
	c := m.p.Spec.Commission
	size := sheet.SizeKey
	for size > 16 && lettering.Set(m.title(), lettering.Bold, size).Width > box.W {
		size--
	}
	d.add(sheet.Text{At: sheet.Pt(box.X, box.Y), Text: m.title(), Face: lettering.Bold, Size: size, Level: sheet.Top})
	y := box.Y + size.Millimetres() + 2
	if c.Client.Given() {
		d.add(sheet.Text{At: sheet.Pt(box.X, y), Text: "for " + strings.TrimPrefix(c.Client.Value, "for "), Face: lettering.Italic, Size: 12, Level: sheet.Top})
		y += 7
	}
	if !c.Brief.Given() {
		return y + 3
	}
	brief := sheet.Paragraph{At: sheet.Pt(box.X, y), Width: min(box.W, 150), Text: c.Brief.Value, Size: 10}
	d.add(brief)
	return y + brief.Height() + 5
}

// How the piece is looked at, in millimetres. An adult's height and eye are
// round figures; the middle of a hung case stands at 59 in: common practice,
// no source, for hanging what is looked into.
const (
	eyeHeight    = 1600.0
	personHeight = 1700.0
	hungMiddle   = 59 * 25.4
	leastAway    = 2800.0
)

func (m *maker) hung() bool {
	for _, c := range m.p.Spec.Cases {
		if c.Hung.Value {
			return true
		}
	}
	return false
}

func (m *maker) standingWords() string {
	text := "Seen from " + m.roughly(eyeHeight) + " above the floor; the person is " + m.roughly(personHeight) + " tall."
	if m.hung() {
		text += " Hung with its middle " + m.roughly(hungMiddle) + " above the floor: choose your own height for whoever uses it."
	}
	return text
}

// roughly is a height given in millimetres, to the inch or the centimetre.
func (m *maker) roughly(mm float64) string {
	step := measure.Inch
	if m.fine.Unit == measure.Millimetres {
		step = 10 * measure.Millimetre
	}
	return m.unit((lengthOf(mm) + step/2) / step * step)
}

// standing draws the piece, the floor and the person into a room.
func (m *maker) standing(room sheet.Box) []sheet.Item {
	lo, hi := m.extent()
	a, z := millimetres(lo), millimetres(hi)
	lift := -a[zAxis]
	if m.hung() {
		lift = hungMiddle - (a[zAxis]+z[zAxis])/2
	}
	cam := standingCamera(a, z)
	drawn := m.drawing("standing", func() view.Drawing {
		bodies := m.model.Show(solid.Pose{})
		for i := range bodies {
			bodies[i] = bodies[i].Moved(view.Vec3{Z: lift})
		}
		return view.Project(bodies, cam, view.Options{Fills: true})
	})
	at := func(x, y, z float64) sheet.Point {
		p, _, _ := cam.Picture(view.Vec3{X: x, Y: y, Z: z})
		return sheet.Pt(p.X, p.Y)
	}
	left, right := a[xAxis]-350, z[xAxis]+1050
	floor := []sheet.Point{at(left, z[yAxis], 0), at(right, z[yAxis], 0)}
	person := figureAt(func(x, h float64) sheet.Point { return at(z[xAxis]+600+x, (a[yAxis]+z[yAxis])/2, h) })
	model := boundsOf(drawn).Union(sheet.BoundsOf(floor...))
	for _, r := range person {
		model = model.Union(sheet.BoundsOf(r...))
	}
	v := fitted(model, room)
	items := []sheet.Item{sheet.Polyline{Points: onPaper([][]sheet.Point{floor}, v)[0], Pen: sheet.Pen{Width: 0.25, Ink: sheet.Mid}}}
	for _, r := range onPaper(person, v) {
		items = append(items, sheet.Polygon{Rings: [][]sheet.Point{r}, Pen: sheet.Pen{Width: 0.25, Ink: sheet.Mid}, Fill: sheet.PaperWhite})
	}
	return append(items, pictureQuill.ink(drawn, v)...)
}

// standingCamera looks level, so that what is upright stays so, from some
// metres away and a little from the left.
func standingCamera(lo, hi [3]float64) view.Camera {
	size := math.Max(hi[xAxis]-lo[xAxis], hi[zAxis]-lo[zAxis])
	away := math.Max(leastAway, 1.7*size)
	middle := (lo[xAxis] + hi[xAxis]) / 2
	place := view.Vec3{X: middle - 0.34*away, Y: lo[yAxis] - away}
	cam, err := view.Standing(place, eyeHeight, view.Vec3{X: middle, Y: lo[yAxis], Z: eyeHeight})
	if err != nil {
		panic("book: the eye stands away from what it looks at: " + err.Error())
	}
	return cam
}

// half is the left half of a person's outline seen from the front, from the
// neck down: distance from the middle and height, for a person of 1700 mm. By
// eye, after the usual eight heads.
var half = [][2]float64{
	{48, 1490}, {52, 1455}, {120, 1425}, {190, 1395}, {222, 1330}, {238, 1200}, {252, 1060}, {262, 930}, {262, 800}, {244, 735}, {222, 770},
	{212, 850}, {200, 960}, {178, 1100}, {170, 1180}, {168, 1060}, {182, 930}, {178, 760}, {150, 480}, {132, 300}, {112, 110}, {120, 30}, {108, 8}, {52, 8},
	{42, 60}, {48, 300}, {46, 480}, {30, 700}, {4, 800},
}

// figureAt is the outline of a person: body and head.
func figureAt(at func(x, h float64) sheet.Point) [][]sheet.Point {
	var line [][2]float64
	for _, p := range half {
		line = append(line, [2]float64{-p[0], p[1]})
	}
	for i := len(half) - 1; i >= 0; i-- {
		line = append(line, half[i])
	}
	var body, head []sheet.Point
	for _, p := range rounded(line, 5) {
		body = append(body, at(p[0], p[1]))
	}
	for i := range 36 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 36)
		head = append(head, at(78*cos, personHeight-112+112*sin))
	}
	return [][]sheet.Point{body, head}
}

// rounded runs a smooth line through places, closed, with n steps between two
// (Catmull and Rom's spline).
func rounded(line [][2]float64, n int) [][2]float64 {
	var out [][2]float64
	k := len(line)
	for i := range line {
		a, b, c, d := line[(i+k-1)%k], line[i], line[(i+1)%k], line[(i+2)%k]
		for s := range n {
			t := float64(s) / float64(n)
			var p [2]float64
			for j := range p {
				p[j] = b[j] + t/2*(c[j]-a[j]+t*(2*a[j]-5*b[j]+4*c[j]-d[j]+t*(3*(b[j]-c[j])+d[j]-a[j])))
			}
			out = append(out, p)
		}
	}
	return out
}
