package book

import (
	"math"

	"casewright/internal/curve"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
)

// The axes of the piece's frame.
const (
	xAxis = iota
	yAxis
	zAxis
)

// body is a part as it stands in the piece: a box less prisms, millimetres.
type body struct {
	part   *piece.Part
	lo, hi [3]float64
	cuts   []prism
}

// prism is what is taken away: an outline in the plane of the axes next to its
// own in turn (x: y, z; y: z, x; z: x, y), from one place to another along its
// own. A bow's waste shows from above and in sections only: seen from the
// front, the part fills its box.
type prism struct {
	axis     int
	from, to float64
	outline  [][2]float64
	bow      bool
}

func bodyOf(p *piece.Part) *body {
	lo, hi := p.Corners()
	b := &body{part: p, lo: millimetres(lo), hi: millimetres(hi)}
	for _, f := range p.Features {
		b.cuts = append(b.cuts, prismOf(p.Place, f.Feature))
	}
	b.cuts = append(b.cuts, b.bowWaste()...)
	return b
}

func millimetres(v piece.Vec) [3]float64 {
	return [3]float64{v.X.Millimetres(), v.Y.Millimetres(), v.Z.Millimetres()}
}

// prismOf carries a feature from the part's frame to the piece's.
func prismOf(at piece.Place, f joinery.Feature) prism {
	place := func(along measure.Length, q joinery.Point) [3]float64 {
		var c [3]measure.Length
		c[f.Axis], c[(f.Axis+1)%3], c[(f.Axis+2)%3] = along, q.U, q.V
		return millimetres(at.Point(c[0], c[1], c[2]))
	}
	k := prism{axis: worldAxis([3]piece.Dir{at.L, at.W, at.T}[f.Axis])}
	for _, q := range f.Outline {
		v := place(f.From, q)
		k.outline = append(k.outline, [2]float64{v[(k.axis+1)%3], v[(k.axis+2)%3]})
	}
	a, z := place(f.From, f.Outline[0])[k.axis], place(f.To, f.Outline[0])[k.axis]
	k.from, k.to = math.Min(a, z), math.Max(a, z)
	return k
}

func worldAxis(d piece.Dir) int {
	if d < 0 {
		d = -d
	}
	return int(d) - 1
}

// bowWaste is what lies before a bowed front and, for a front of one
// thickness, behind it.
func (b *body) bowWaste() []prism {
	k := b.part.Bow
	if k == nil {
		return nil
	}
	outer := parallel(k.Curve.Shape, k.Offset)
	_, crown := outer.Reach(k.From, k.To)
	// The box's front plane stands at the crown; x runs with the curve's own.
	shift := (b.lo[xAxis]+b.hi[xAxis])/2 - (k.From+k.To).Millimetres()/2
	front := b.lo[yAxis] + crown.Millimetres()
	line := func(c *curve.Curve) [][2]float64 {
		var out [][2]float64
		for _, p := range c.Flatten(b.lo[xAxis]-shift, b.hi[xAxis]-shift, 0.02) {
			out = append(out, [2]float64{p.X + shift, front - p.Y})
		}
		return out
	}
	waste := []prism{b.beyond(line(outer), b.lo[yAxis]-1)}
	if k.Axis == joinery.T {
		waste = append(waste, b.beyond(line(parallel(k.Curve.Shape, k.Offset-b.part.Thickness.Length())), b.hi[yAxis]+1))
	}
	return waste
}

// parallel is the curve at a distance, or the curve itself where there is none.
func parallel(c *curve.Curve, d measure.Length) *curve.Curve {
	if d == 0 {
		return c
	}
	if o, err := c.Offset(d); err == nil {
		return o
	}
	return c
}

// beyond is the prism between a line from left to right and a y before or
// behind it.
func (b *body) beyond(line [][2]float64, y float64) prism {
	first, last := line[0], line[len(line)-1]
	line = append(line, [2]float64{last[0] + 1, last[1]}, [2]float64{last[0] + 1, y}, [2]float64{first[0] - 1, y}, [2]float64{first[0] - 1, first[1]})
	return prism{axis: zAxis, from: b.lo[zAxis] - 1, to: b.hi[zAxis] + 1, outline: line, bow: true}
}

// reach is the least and greatest coordinate of the prism along an axis.
func (k prism) reach(axis int) (lo, hi float64) {
	if axis == k.axis {
		return k.from, k.to
	}
	i := (axis - k.axis + 2) % 3 // which of the outline's two coordinates
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range k.outline {
		lo, hi = math.Min(lo, p[i]), math.Max(hi, p[i])
	}
	return lo, hi
}

// slice is the prism's outlines in the plane square to an axis at a place
// along it, as coordinates along the two next axes in turn.
func (k prism) slice(axis int, at float64) [][][2]float64 {
	if axis == k.axis {
		if at <= k.from || at >= k.to {
			return nil
		}
		return [][][2]float64{k.outline}
	}
	cut := (axis - k.axis + 2) % 3
	var out [][][2]float64
	xs := crossingsOf(k.outline, cut, at)
	for i := 0; i+1 < len(xs); i += 2 {
		// The two axes next to axis are k.axis and the outline's other one.
		a, z := [2]float64{k.from, k.to}, [2]float64{xs[i], xs[i+1]}
		if (axis+1)%3 != k.axis {
			a, z = z, a
		}
		out = append(out, [][2]float64{{a[0], z[0]}, {a[1], z[0]}, {a[1], z[1]}, {a[0], z[1]}})
	}
	return out
}

// crossingsOf is where a closed outline crosses a line at one coordinate, as
// values of the other in rising order.
func crossingsOf(outline [][2]float64, cut int, at float64) []float64 {
	var xs []float64
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		if (p[cut] <= at) == (q[cut] <= at) {
			continue
		}
		x := xAt(sheet.Pt(p[1-cut], p[cut]), sheet.Pt(q[1-cut], q[cut]), at)
		n := len(xs)
		for n > 0 && xs[n-1] > x {
			n--
		}
		xs = append(xs[:n], append([]float64{x}, xs[n:]...)...)
	}
	return xs
}
