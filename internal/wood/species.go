package wood

import "casewright/internal/measure"

// Group is the trade's first division of woods.
type Group string

// The groups of the tables, and that of woods defined in the text.
const (
	Hardwood         Group = "hardwood"
	Softwood         Group = "softwood"
	ImportedHardwood Group = "imported hardwood"
	OwnWood          Group = "own"
)

// Species is one wood, or a trade mix of several sold under one name. It is
// read-only.
type Species struct {
	Key   string   // stable name in the tables: "cherry-black"
	Name  string   // as printed: "Black cherry"
	Also  []string // everyday shop names that mean this wood, lower case
	Group Group
	Note  string // what to know before trusting the figures, or ""

	// Shrinkage from green to oven-dry.
	ShrinkRadial     Figure[Shrinkage]
	ShrinkTangential Figure[Shrinkage]
	ShrinkVolumetric Figure[Shrinkage]

	// Movement per percent of moisture: C_R and C_T of Table 13-5, or worked
	// from the shrinkage where the table has no row.
	Radial     Figure[Coefficient]
	Tangential Figure[Coefficient]
	// PairAgrees reports whether C_R and C_T follow from the shrinkage above.
	// Where they do not, Note says so and the coefficients rule.
	PairAgrees bool
	// FibreSaturation is the moisture at which shrinkage starts.
	FibreSaturation Figure[measure.MoistureContent]

	// Specific gravity by oven-dry mass, over green volume and volume at 12 %.
	// Table 5-5 prints one figure for imported woods; it is taken as the green one.
	GravityGreen Figure[Gravity]
	Gravity12    Figure[Gravity]

	// Strength of clear, straight wood at TestedAt; see RuptureAt and
	// StiffnessAt for other moisture contents. Stiffness is the modulus of
	// elasticity of centre-loaded beams 14 times as long as deep, so it already
	// carries a share of shear (Table 5-3 footnote).
	TestedAt          measure.MoistureContent
	Rupture           Figure[measure.Stress] // modulus of rupture
	Stiffness         Figure[measure.Stress]
	Hardness          Figure[Force] // side hardness
	CompressionAcross Figure[measure.Stress]
	Shear             Figure[measure.Stress] // along the grain
	RuptureGreen      Figure[measure.Stress]
	StiffnessGreen    Figure[measure.Stress]
	// Intersection is the moisture below which strength changes, Mp of Eq. 5-3.
	Intersection Figure[measure.MoistureContent]

	Elastic Elastic
	Bonding Bond

	// Shrinkage that Eq. 13-3 works with; see setWorking.
	workRadial, workTangential float64
}

// Elastic are ratios to the modulus of elasticity along the grain: tangential
// and radial modulus, and shear in the two planes with the grain.
type Elastic struct {
	Tangential, Radial           Figure[Ratio]
	ShearRadial, ShearTangential Figure[Ratio]
}

// Bonding is how easily a wood is glued, in the four classes of Table 10-1. The
// zero Bonding is not known.
type Bonding uint8

// The classes, easiest first.
const (
	BondsUnknown     Bonding = iota
	BondsEasily              // most glues, wide conditions
	BondsWell                // fairly many glues, moderately wide conditions
	BondsWithControl         // good glue and well-controlled conditions
	BondsHardly              // chosen glue, close control, perhaps a treated surface
)

var bondWords = [...]string{"unknown", "easily", "well", "satisfactorily", "with difficulty"}

// String is the class in the words of Table 10-1.
func (b Bonding) String() string {
	if int(b) < len(bondWords) {
		return bondWords[b]
	}
	return "unknown"
}

// Bond is the gluing class of one wood with its source.
type Bond struct {
	Class  Bonding
	Source string
	Status Status
}

// setWorking chooses the shrinkage for Eq. 13-3. It is the wood's own where the
// coefficients follow from it; else the one the coefficient implies, so that
// both equations describe the same straight line between size at fibre
// saturation and oven-dry size.
func (s *Species) setWorking() {
	s.workRadial = working(s.ShrinkRadial, s.Radial, s.FibreSaturation.Value, s.PairAgrees)
	s.workTangential = working(s.ShrinkTangential, s.Tangential, s.FibreSaturation.Value, s.PairAgrees)
}

func working(shrink Figure[Shrinkage], c Figure[Coefficient], fs measure.MoistureContent, agrees bool) float64 {
	if agrees && shrink.Known() {
		return float64(shrink.Value)
	}
	if !c.Known() {
		return 0
	}
	return float64(ShrinkageFor(c.Value, fs))
}

// CoefficientFor is the movement coefficient of a wood that shrinks by s from
// the fibre saturation point fs to oven-dry: Eq. 13-3 of the Wood Handbook from
// 10 % moisture, the size Table 13-5 is based on.
func CoefficientFor(s Shrinkage, fs measure.MoistureContent) Coefficient {
	perPoint := float64(s) / float64(fs)
	return Coefficient(perPoint / (100 - perPoint*(float64(fs)-10)))
}

// ShrinkageFor turns CoefficientFor round.
func ShrinkageFor(c Coefficient, fs measure.MoistureContent) Shrinkage {
	return Shrinkage(100 * float64(c) * float64(fs) / (1 + float64(c)*(float64(fs)-10)))
}
