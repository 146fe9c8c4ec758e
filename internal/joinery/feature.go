package joinery

import "casewright/internal/measure"

// Axis names one direction of a part's own frame: L along the grain, W across
// the face, T through the thickness. L × W = T (right-handed).
type Axis uint8

// The three axes of a part.
const (
	L Axis = iota
	W
	T
)

// Point is a place in the plane square to a feature's axis. U and V are the
// two other axes in cyclic order: for L they are (W, T), for W (T, L), for T (L, W).
type Point struct{ U, V measure.Length }

// Feature is wood that a joint takes away from a part: a prism, given by its
// outline in the plane square to Axis and by its two ends along Axis, all in
// the part's own frame (corner of the finished part at 0, 0, 0; the part fills
// 0…length × 0…width × 0…thickness). It may reach beyond the part; what lies
// outside removes nothing.
type Feature struct {
	Kind     FeatureKind
	Axis     Axis
	From, To measure.Length
	Outline  []Point // closed, counter-clockwise seen against Axis, at least three points
}

// FeatureKind says what the feature is called at the bench.
type FeatureKind string

// What a joint can take away.
const (
	TailWaste  FeatureKind = "waste between tails"
	PinWaste   FeatureKind = "waste between pins"
	Dado       FeatureKind = "dado"
	Rabbet     FeatureKind = "rabbet"
	Groove     FeatureKind = "groove"
	Mortise    FeatureKind = "mortise"
	TenonWaste FeatureKind = "tenon shoulder"
	Haunch     FeatureKind = "haunch"
	Lap        FeatureKind = "lap"
	Bevel      FeatureKind = "bevel"
	Hole       FeatureKind = "hole"
	Taper      FeatureKind = "taper"
	Notch      FeatureKind = "notch"
	CurveWaste FeatureKind = "curved edge"
)
