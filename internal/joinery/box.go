package joinery

import (
	"math"

	"casewright/internal/measure"
)

// Box is the finished size of a part in its own frame: corner at 0, 0, 0, L
// along the grain, W across the face, T through the thickness. A part whose
// sizes are not all above zero gets problems instead of joints.
type Box struct{ L, W, T measure.Length }

// Volume is the volume of the part before any joint is cut.
func (b Box) Volume() measure.Volume {
	return measure.Volume(b.L.Millimetres() * b.W.Millimetres() * b.T.Millimetres())
}

// Along is the size of the part along the axis.
func (b Box) Along(a Axis) measure.Length {
	switch a {
	case L:
		return b.L
	case W:
		return b.W
	}
	return b.T
}

func (b Box) solid() bool {
	for _, a := range [...]Axis{L, W, T} {
		if s := b.Along(a); s <= 0 || s > largest {
			return false
		}
	}
	return true
}

// End names an end of a part.
type End uint8

// The ends of a part.
const (
	Near End = iota // L = 0
	Far             // L = Box.L
)

// Edge names a long edge of a part.
type Edge uint8

// The long edges of a part.
const (
	Front Edge = iota // W = 0
	Back              // W = Box.W
)

// Side names a broad face of a part.
type Side uint8

// The broad faces of a part.
const (
	Low  Side = iota // T = 0
	High             // T = Box.T
)

// Face names one of the six faces of a part, for joints that may open on any.
type Face uint8

// The faces of a part.
const (
	NearEnd   Face = iota // L = 0
	FarEnd                // L = Box.L
	FrontEdge             // W = 0
	BackEdge              // W = Box.W
	LowSide               // T = 0
	HighSide              // T = Box.T
)

// Face is the end as a face.
func (e End) Face() Face { return NearEnd + Face(e) }

// Face is the edge as a face.
func (e Edge) Face() Face { return FrontEdge + Face(e) }

// Face is the side as a face.
func (s Side) Face() Face { return LowSide + Face(s) }

// Axis is the direction the face looks along.
func (f Face) Axis() Axis { return Axis(f / 2) }

func (f Face) far() bool { return f%2 == 1 }

// span is a stretch along one axis.
type span struct{ from, to measure.Length }

func (s span) width() measure.Length { return s.to - s.from }

func (s span) within(o span) bool { return s.from >= o.from && s.to <= o.to }

func (s span) meets(o span) bool { return s.from < o.to && o.from < s.to }

// inward is the stretch from a to b measured inwards from the face.
func (b Box) inward(f Face, a, z measure.Length) span {
	if !f.far() {
		return span{a, z}
	}
	size := b.Along(f.Axis())
	return span{size - z, size - a}
}

// third is the axis square to both.
func third(a, b Axis) Axis { return L + W + T - a - b }

// cyclic gives the two axes an outline square to a is drawn in, in order.
func cyclic(a Axis) (u, v Axis) { return (a + 1) % 3, (a + 2) % 3 }

// prism builds a feature and turns its outline counter-clockwise, whichever
// way the points were given.
func prism(kind FeatureKind, along Axis, ends span, outline ...Point) Feature {
	f := Feature{Kind: kind, Axis: along, From: ends.from, To: ends.to, Outline: outline}
	if turning(outline) < 0 {
		for i, j := 0, len(outline)-1; i < j; i, j = i+1, j-1 {
			outline[i], outline[j] = outline[j], outline[i]
		}
	}
	return f
}

// block builds a square-edged feature from its stretch along each axis, in the
// order L, W, T, as a prism along the given axis.
func block(kind FeatureKind, along Axis, at [3]span) Feature {
	u, v := cyclic(along)
	return prism(kind, along, at[along],
		Point{at[u].from, at[v].from}, Point{at[u].to, at[v].from},
		Point{at[u].to, at[v].to}, Point{at[u].from, at[v].to})
}

// turning is twice the signed area of the outline in mm²; above zero means
// counter-clockwise. Working from the first point keeps it exact enough for
// thin outlines far from the corner of the part.
func turning(outline []Point) float64 {
	if len(outline) < 3 {
		return 0
	}
	o, sum := outline[0], 0.0
	for i := 1; i+1 < len(outline); i++ {
		a, b := outline[i], outline[i+1]
		sum += (a.U-o.U).Millimetres()*(b.V-o.V).Millimetres() - (b.U-o.U).Millimetres()*(a.V-o.V).Millimetres()
	}
	return sum
}

// Removed is the volume that features take out of the part, each clipped to
// it. Where features overlap the shared wood is counted twice, so it is exact
// only for features that do not; package solid does the rest.
func (b Box) Removed(features []Feature) measure.Volume {
	var sum float64
	for _, f := range features {
		sum += f.volumeIn(b)
	}
	return measure.Volume(sum)
}

func (f Feature) volumeIn(b Box) float64 {
	from, to := max(f.From, 0), min(f.To, b.Along(f.Axis))
	if from >= to {
		return 0
	}
	u, v := cyclic(f.Axis)
	return math.Abs(clippedArea(f.Outline, b.Along(u), b.Along(v))) * (to - from).Millimetres()
}

// clippedArea is the area in mm² of the outline inside 0…u × 0…v, by cutting
// it at each of the four borders in turn (Sutherland and Hodgman, Reentrant
// Polygon Clipping, Communications of the ACM 17, 1974; from memory).
func clippedArea(outline []Point, u, v measure.Length) float64 {
	type xy struct{ x, y float64 }
	poly := make([]xy, len(outline))
	for i, p := range outline {
		poly[i] = xy{p.U.Millimetres(), p.V.Millimetres()}
	}
	w, h := u.Millimetres(), v.Millimetres()
	for _, inside := range [...]func(xy) float64{
		func(p xy) float64 { return p.x }, func(p xy) float64 { return w - p.x },
		func(p xy) float64 { return p.y }, func(p xy) float64 { return h - p.y },
	} {
		var kept []xy
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			dp, dq := inside(p), inside(q)
			if dp >= 0 {
				kept = append(kept, p)
			}
			if (dp < 0) != (dq < 0) {
				t := dp / (dp - dq)
				kept = append(kept, xy{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)})
			}
		}
		poly = kept
	}
	var twice float64
	for i := 1; i+1 < len(poly); i++ { // from the first point, for thin outlines
		o, p, q := poly[0], poly[i], poly[i+1]
		twice += (p.x-o.x)*(q.y-o.y) - (q.x-o.x)*(p.y-o.y)
	}
	return twice / 2
}
