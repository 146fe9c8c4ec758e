package solid

import (
	"casewright/internal/measure"
	"casewright/internal/model/dxf"
	"casewright/internal/piece"
	"casewright/internal/solid/view"
)

// FlatGap is the room between the views of a part in a drawing for a cutter.
const FlatGap = 30 // mm

// PartDXF draws three views of a part in true size for a cutter or another
// drawing program: its show face, an edge below it, an end beside it. Seen
// lines are on layer CUT, hidden ones on HIDDEN, words on TEXT.
func (m *Model) PartDXF(p *piece.Part) ([]byte, error) {
	b := m.Body(p)
	d := dxf.Drawing{Name: p.Mark + " " + p.Name, Unit: dxf.Millimetres, Layers: dxf.Layers()}
	if m.Piece.Spec.Commission.Unit == measure.Inches {
		d.Unit = dxf.Inches
	}
	body := b.Lying()
	box := p.Box()
	w, t := box.W.Millimetres(), box.T.Millimetres()
	l := box.L.Millimetres()
	for _, v := range []struct {
		side view.Side
		x, y float64
	}{{view.Top, 0, 0}, {view.Front, 0, -FlatGap - t}, {view.Right, l + FlatGap, -FlatGap - t}} {
		drawn := view.Project([]view.Body{body}, view.From(v.side), view.Options{Hidden: true})
		for _, k := range drawn.Lines {
			layer := dxf.Cut
			if k.Hidden {
				layer = dxf.Hidden
			}
			d.Items = append(d.Items, dxf.Line{Layer: layer, A: dxf.Point{X: k.A.X + v.x, Y: k.A.Y + v.y}, B: dxf.Point{X: k.B.X + v.x, Y: k.B.Y + v.y}})
		}
	}
	d.Items = append(d.Items, dxf.Text{Layer: dxf.Words, At: dxf.Point{X: 0, Y: w + FlatGap/3}, Height: 6, Text: d.Name})
	return dxf.R2000(d)
}
