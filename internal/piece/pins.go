package piece

import (
	"math"

	"casewright/internal/design"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// Holes for shelf pins when the text is silent: common practice, no source.
const (
	pinHole    = measure.Inch / 4     // diameter
	pinDeep    = 3 * measure.Inch / 8 // or half the board less 1/16, where another row may lie opposite
	pinIn      = 3 * measure.Inch / 2 // rows from the shelf's front and back edges
	pinPitch   = measure.Inch         // between holes of a row
	pinSpare   = 2                    // holes above and below each shelf's own
	pinCorners = 16                   // of the prism a round hole is drilled as
)

// pinRow is one hole to drill: where it is in a case, from its floor up.
type pinRow struct{ y, z measure.Length }

// pinHoles drills rows of holes for shelves on pins into the boards at both
// sides of an opening: a few above and below where each shelf begins, so that
// it can be moved by hand's breadths.
func (b *builder) pinHoles(s *design.Shelves, c bay, ups []measure.Length, deep why.Size) {
	wide := b.pinDiameter()
	rows := b.pinRows(c, ups, deep, wide.Length())
	for _, side := range [2]struct {
		host *Part
		x    measure.Length
	}{{c.left, c.corner.X}, {c.right, c.corner.X + c.width.Length()}} {
		if side.host == nil || len(rows) == 0 {
			continue
		}
		into := b.usual("depth of the holes", min(pinDeep, side.host.Thickness.Length()/2-measure.Inch/16), practice)
		j := b.joint("pin holes", "shelf pins in "+side.host.Name, side.host, nil, s.At)
		j.Depth, j.Tongue = into, wide
		for _, r := range rows {
			at := side.host.Place.Local(Vec{X: side.x, Y: r.y, Z: r.z})
			j.cut(side.host, []joinery.Feature{hole(at, wide.Length(), into.Length(), side.host == c.right)}, nil)
		}
	}
}

// pinDiameter is that of the bought pins, if there are any.
func (b *builder) pinDiameter() why.Size {
	for _, h := range b.spec.Hardware {
		if h.Kind.Value == "shelf pin" && h.Diameter.Given() {
			return h.Diameter
		}
	}
	return b.usual("shelf pin", pinHole, practice)
}

// pinRows are the holes of one side: two columns, around the underside of each
// shelf, each place once and none through floor or ceiling.
func (b *builder) pinRows(c bay, ups []measure.Length, deep why.Size, wide measure.Length) []pinRow {
	pitch, in := b.usual("", pinPitch, "").Length(), b.usual("", pinIn, "").Length()
	back := c.work.at.Y + c.depth.Length()
	columns := []measure.Length{back - deep.Length() + in, back - in}
	if columns[1]-columns[0] < pitch {
		return nil // too shallow a shelf for two pins a side
	}
	var out []pinRow
	last := c.corner.Z
	for _, up := range ups {
		for k := -pinSpare; k <= pinSpare; k++ {
			z := c.corner.Z + up - wide/2 + measure.Length(k)*pitch
			if z-last < pitch/2 || z < c.corner.Z+pitch || z > c.corner.Z+c.height.Length()-pitch {
				continue
			}
			last = z
			for _, y := range columns {
				out = append(out, pinRow{y, z})
			}
		}
	}
	return out
}

// hole is a drilled hole from the face at a place into an upright board, whose
// thickness runs to the left: into the left board it goes up its T, into the
// right board down.
func hole(at [3]measure.Length, wide, deep measure.Length, right bool) joinery.Feature {
	f := joinery.Feature{Kind: joinery.Hole, Axis: joinery.T, From: at[joinery.T], To: at[joinery.T] + deep}
	if right {
		f.From, f.To = at[joinery.T]-deep, at[joinery.T]
	}
	for i := range pinCorners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / pinCorners)
		f.Outline = append(f.Outline, joinery.Point{
			U: at[joinery.L] + measure.Length(math.Round(float64(wide)/2*cos)),
			V: at[joinery.W] + measure.Length(math.Round(float64(wide)/2*sin))})
	}
	return f
}
