package sheet

import (
	"math"
	"sort"

	"casewright/internal/measure"
)

// HatchKind is what a filled area is made of.
type HatchKind uint8

// Hatches. The section hatch at 45° with neighbours opposed follows ISO 128
// (from memory). Wood has no one standard: ring arcs for end grain and fine
// broken lines for long grain are common practice, no source.
const (
	NoHatch        HatchKind = iota
	Section                  // lines at 45°, rising to the right
	SectionOpposed           // lines at 45°, falling: for the neighbour
	EndGrain                 // growth rings, cut across
	LongGrain                // fine lines along the grain
	CrossGrain               // the diagonal cross of rough stock seen on its end
)

// Hatch is how an area is hatched. The zero value is none. Spacing, angle and
// pen are those of the paper, whatever scale the area is drawn at.
type Hatch struct {
	Kind    HatchKind
	Spacing float64       // between lines; 0 is the usual of the kind
	Along   measure.Angle // of the grain, for LongGrain; 0 is across the paper
	Pith    *Point        // where the rings of EndGrain have their middle, on paper; nil is below the area
	Pen     Pen           // zero is Fine, gray for grain
}

func (h Hatch) pen() Pen {
	if h.Pen.Width > 0 {
		return h.Pen
	}
	if h.Kind == LongGrain || h.Kind == EndGrain {
		return Fine.Of(Dark) // grain lies behind everything else
	}
	return Fine
}

func (h Hatch) spacing(usual float64) float64 {
	if h.Spacing > 0 {
		return math.Max(h.Spacing, 0.2)
	}
	return usual
}

// maxHatchLines bounds the work on an area no paper could hold.
const maxHatchLines = 4000

func (p Polygon) hatch(c *lowering) {
	if p.Hatch.Kind == NoHatch {
		return
	}
	rings := make([][]Point, 0, len(p.Rings))
	for _, r := range p.Rings {
		moved := make([]Point, len(r))
		for i, q := range r {
			moved[i] = c.t.At(q)
			if !onPaper(moved[i]) {
				return
			}
		}
		rings = append(rings, moved)
	}
	area := region{rings: rings, box: boundsOfRings(rings)}
	var out []contour
	for _, line := range p.Hatch.lines(area.box) {
		out = append(out, area.keep(line)...)
	}
	onPaperAlready := lowering{t: Identity, layer: c.layer, clip: c.clip, marks: c.marks}
	onPaperAlready.path(p.Hatch.pen(), NoFill, out...)
	c.marks = onPaperAlready.marks
}

func boundsOfRings(rings [][]Point) Box {
	var pts []Point
	for _, r := range rings {
		pts = append(pts, r...)
	}
	return BoundsOf(pts...)
}

// lines are the hatch's lines over the whole box, not yet cut to the area.
func (h Hatch) lines(b Box) [][]Point {
	switch h.Kind {
	case Section:
		return parallels(b, math.Pi/4, h.spacing(2))
	case SectionOpposed:
		return parallels(b, -math.Pi/4, h.spacing(2))
	case LongGrain:
		return grainLines(b.Inset(0.5), float64(h.Along), h.spacing(2.2))
	case EndGrain:
		return rings(b, h.pith(b), h.spacing(1.4))
	case CrossGrain:
		k := b.Corners()
		return [][]Point{{k[0], k[2]}, {k[1], k[3]}}
	}
	return nil
}

// parallels run at the angle, counter-clockwise as seen, across the box. They
// are counted from the corner of the paper, so that the two halves of a part
// hatched apart still match.
func parallels(b Box, angle, spacing float64) [][]Point {
	sin, cos := math.Sincos(angle)
	along, across := Point{cos, -sin}, Point{sin, cos}
	lo, hi := extent(b, across)
	from, to := extent(b, along)
	n0, n1 := math.Ceil(lo/spacing), math.Floor(hi/spacing)
	if n1-n0 > maxHatchLines {
		return nil
	}
	var out [][]Point
	for n := n0; n <= n1; n++ {
		d := n * spacing
		out = append(out, []Point{
			{along.X*from + across.X*d, along.Y*from + across.Y*d},
			{along.X*to + across.X*d, along.Y*to + across.Y*d},
		})
	}
	return out
}

func extent(b Box, dir Point) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, k := range b.Corners() {
		d := k.X*dir.X + k.Y*dir.Y
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	return lo, hi
}

// grainLines are parallels broken at uneven places, as grain is; which places
// follows from the line's number alone, so the picture never changes.
func grainLines(b Box, angle, spacing float64) [][]Point {
	var out [][]Point
	for i, l := range parallels(b, angle, spacing) {
		dx, dy := l[1].X-l[0].X, l[1].Y-l[0].Y
		length := math.Hypot(dx, dy)
		if length == 0 {
			continue
		}
		for at, k := -20*uneven(i, 0), 1; at < length && k < maxHatchLines; k++ {
			drawn, gap := 14+30*uneven(i, 2*k), 2.5+9*uneven(i, 2*k+1)
			f, t := math.Max(at, 0)/length, math.Min(at+drawn, length)/length
			if t > f {
				out = append(out, []Point{
					{l[0].X + f*dx, l[0].Y + f*dy}, {l[0].X + t*dx, l[0].Y + t*dy},
				})
			}
			at += drawn + gap
		}
	}
	return out
}

// uneven is a fixed scatter between 0 and 1.
func uneven(i, k int) float64 {
	x := uint32(i)*2654435761 + uint32(k)*2246822519
	x ^= x >> 15
	x *= 2246822519
	x ^= x >> 13
	return float64(x%1000) / 1000
}

func (h Hatch) pith(b Box) Point {
	if h.Pith != nil {
		return *h.Pith
	}
	return Point{b.X + b.W*0.42, b.Bottom() + 0.35*math.Max(b.W, b.H) + 4}
}

// rings are circles about the pith as far as the box reaches, every third gap
// a little wider, as years differ.
func rings(b Box, pith Point, spacing float64) [][]Point {
	far := 0.0
	for _, k := range b.Corners() {
		far = math.Max(far, math.Hypot(k.X-pith.X, k.Y-pith.Y))
	}
	if far/spacing > maxHatchLines || !onPaper(pith) {
		return nil
	}
	var out [][]Point
	for r, i := spacing, 0; r < far; i++ {
		n := int(math.Ceil(2 * math.Pi * r / 0.9))
		ring := make([]Point, n+1)
		for k := range ring {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
			ring[k] = Point{pith.X + r*cos, pith.Y + r*sin}
		}
		out = append(out, ring)
		r += spacing * (0.75 + 0.6*uneven(i, 7))
	}
	return out
}

// region is an area to cut lines to.
type region struct {
	rings [][]Point
	box   Box
}

// keep is the parts of the line inside the area.
func (a region) keep(line []Point) []contour {
	var out []contour
	var run []Point
	end := func() {
		if len(run) > 1 {
			out = append(out, open(run))
		}
		run = nil
	}
	for i := 0; i+1 < len(line); i++ {
		p, q := line[i], line[i+1]
		if !a.near(p, q) {
			end()
			continue
		}
		for _, s := range a.inside(p, q) {
			if len(run) == 0 || run[len(run)-1] != s[0] {
				end()
				run = []Point{s[0]}
			}
			run = append(run, s[1])
		}
	}
	end()
	return out
}

func (a region) near(p, q Point) bool {
	s := BoundsOf(p, q)
	return s.X <= a.box.Right() && a.box.X <= s.Right() && s.Y <= a.box.Bottom() && a.box.Y <= s.Bottom()
}

// inside is the pieces of p–q that lie in the area.
func (a region) inside(p, q Point) [][2]Point {
	cuts := []float64{0, 1}
	for _, r := range a.rings {
		for i := range r {
			if t, ok := crossing(p, q, r[i], r[(i+1)%len(r)]); ok {
				cuts = append(cuts, t)
			}
		}
	}
	sort.Float64s(cuts)
	at := func(t float64) Point {
		switch t {
		case 0:
			return p
		case 1:
			return q
		}
		return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)}
	}
	var out [][2]Point
	for i := 0; i+1 < len(cuts); i++ {
		if cuts[i+1]-cuts[i] > 1e-12 && a.holds(at((cuts[i]+cuts[i+1])/2)) {
			out = append(out, [2]Point{at(cuts[i]), at(cuts[i+1])})
		}
	}
	return out
}

// crossing is where along p–q the edge a–b cuts it.
func crossing(p, q, a, b Point) (float64, bool) {
	dx, dy, ex, ey := q.X-p.X, q.Y-p.Y, b.X-a.X, b.Y-a.Y
	det := dx*ey - dy*ex
	if det == 0 {
		return 0, false
	}
	t := ((a.X-p.X)*ey - (a.Y-p.Y)*ex) / det
	u := ((a.X-p.X)*dy - (a.Y-p.Y)*dx) / det
	return t, t > 0 && t < 1 && u >= 0 && u <= 1
}

// holds is the even-odd rule.
func (a region) holds(p Point) bool {
	in := false
	for _, r := range a.rings {
		for i := range r {
			k, l := r[i], r[(i+1)%len(r)]
			if (k.Y > p.Y) != (l.Y > p.Y) && p.X < k.X+(p.Y-k.Y)/(l.Y-k.Y)*(l.X-k.X) {
				in = !in
			}
		}
	}
	return in
}
