package wood

import (
	"fmt"
	"math"
	"strings"

	"casewright/internal/measure"
)

// Cut tells how the growth rings of a board stand to its face. The zero Cut is
// flat-sawn.
type Cut struct{ ring measure.Angle }

// The cuts the trade has names for. Rift is taken at 45°, in the middle of what
// is sold as rift.
var (
	FlatSawn    = Cut{0}
	RiftSawn    = Cut{math.Pi / 4}
	QuarterSawn = Cut{math.Pi / 2}
)

// RingsAt is a board whose rings meet the face at this angle: 0 flat-sawn, π/2
// quartersawn. Angles outside that are a *[RangeError].
func RingsAt(a measure.Angle) (Cut, error) {
	if !within(float64(a), 0, math.Pi/2) {
		return Cut{}, &RangeError{What: "the angle of the rings to the face", Value: float64(a) * 180 / math.Pi, Low: 0, High: 90, Unit: "°"}
	}
	return Cut{a}, nil
}

// ParseCut reads a cut by its name: "flat", "rift" or "quarter", also in the
// longer forms of the trade.
func ParseCut(name string) (Cut, error) {
	switch strings.Join(words(name), "") {
	case "flat", "flatsawn", "flatgrain", "plain", "plainsawn":
		return FlatSawn, nil
	case "rift", "riftsawn":
		return RiftSawn, nil
	case "quarter", "quartersawn", "quartered", "verticalgrain":
		return QuarterSawn, nil
	}
	return Cut{}, fmt.Errorf("no cut called %q; it is flat, rift or quarter", short(name))
}

// Rings is the angle of the rings to the face.
func (c Cut) Rings() measure.Angle { return c.ring }

// String names the cut, or tells its angle.
func (c Cut) String() string {
	switch c {
	case FlatSawn:
		return "flat-sawn"
	case RiftSawn:
		return "rift-sawn"
	case QuarterSawn:
		return "quartersawn"
	}
	return fmt.Sprintf("rings at %.0f°", float64(c.ring)*180/math.Pi)
}

// Direction is the side of a board whose movement is asked for.
type Direction uint8

// The sides of a board.
const (
	Width Direction = iota
	Thickness
	Length // with the grain
)

// String is the word for the direction.
func (d Direction) String() string {
	switch d {
	case Width:
		return "width"
	case Thickness:
		return "thickness"
	case Length:
		return "length"
	}
	return "unknown"
}

// Sources of movement, as findings cite them.
const (
	withinSource  = "FPL-GTR-190 (2010) Eq. 13-2 p. 13-15"
	outsideSource = "FPL-GTR-190 (2010) Eq. 13-3 p. 13-17"
	lengthSource  = "FPL-GTR-190 (2010) p. 4-5: 0.1 to 0.2 % from green to oven-dry, the middle"
)

// Eq. 13-2 holds between these moisture contents.
const (
	evenFrom measure.MoistureContent = 6
	evenTo   measure.MoistureContent = 14
)

// shrinkAlong is the shrinkage with the grain, green to oven-dry, in percent.
// The Handbook gives 0.1 to 0.2; juvenile and reaction wood can reach 2.
const shrinkAlong = 0.15

// Move is a movement together with what it was worked from.
type Move struct {
	Change measure.Length // positive when the wood swells
	Size   measure.Length // the size it started from
	From   measure.MoistureContent
	To     measure.MoistureContent

	Species   string // name of the wood
	Cut       Cut
	Direction Direction
	// Coefficient is the share of Size that moves for one percent of moisture.
	Coefficient Coefficient
	Equation    string // title, edition, number
	Source      string // of the coefficient or shrinkage behind it
	Status      Status
	// Saturated reports that one of the moisture contents lies above fibre
	// saturation, where more water moves wood no further.
	Saturated bool
}

// Words tells the movement's reckoning in one line, without lengths.
func (m Move) Words() string {
	how := m.Cut.String() + " "
	if m.Direction == Length {
		how = ""
	}
	mark := ""
	if m.Status.FromMemory() {
		mark = ", from memory"
	}
	return fmt.Sprintf("%s, %s%s: %.5f of the size for each percent of moisture, from %.1f to %.1f %% (%s; %s%s)",
		m.Species, how, m.Direction, float64(m.Coefficient), float64(m.From), float64(m.To), m.Equation, m.Source, mark)
}

// Move is how much a board's width, thickness or length changes when its
// moisture content goes from one value to another. size is the size at from.
//
// With both moisture contents between 6 and 14 % it is Eq. 13-2 of the Wood
// Handbook: size × coefficient × change. Else it is Eq. 13-3. Both describe one
// straight line between the size at fibre saturation and the oven-dry size, but
// 13-2 takes shares of the size at 10 %; where one takes over from the other
// they differ by less than 2 % of the movement.
//
// Between flat-sawn and quartersawn the two coefficients are turned like
// strains: for the width cos² of the ring angle of the tangential and sin² of
// the radial, for the thickness the other way (standard mechanics; shear of the
// section is left out).
//
// These are averages of a species. Boards scatter, and few are cut perfectly
// flat or quartered, so that widths move a little less and thicknesses a little
// more than this.
//
// A wood without the coefficient is a *[MissingError], a moisture content that
// no wood has a *[RangeError].
func (s *Species) Move(size measure.Length, from, to measure.MoistureContent, cut Cut, d Direction) (Move, error) {
	m := Move{Size: size, From: from, To: to, Species: s.Name, Cut: cut, Direction: d}
	for _, mc := range [...]measure.MoistureContent{from, to} {
		if err := checkMoisture(mc); err != nil {
			return m, err
		}
	}
	b, err := s.blend(cut, d)
	if err != nil {
		return m, err
	}
	m.Source, m.Status = b.source, b.status
	fs := s.FibreSaturation.Value
	a, z := min(from, fs), min(to, fs)
	m.Saturated = a != from || z != to
	m.Equation, m.Coefficient = withinSource, b.coefficient
	if min(a, z) < evenFrom || max(a, z) > evenTo {
		m.Equation = outsideSource
		m.Coefficient = outside(b.shrink, fs, a)
	}
	m.Change = measure.Length(math.Round(float64(size) * float64(m.Coefficient) * float64(z-a)))
	return m, nil
}

// outside is the coefficient of Eq. 13-3 for a size at moisture content from.
func outside(shrink float64, fs, from measure.MoistureContent) Coefficient {
	return Coefficient(1 / (float64(fs)*100/shrink - float64(fs) + float64(from)))
}

// blended is what one side of a board moves by.
type blended struct {
	coefficient Coefficient
	shrink      float64 // percent, fibre saturation to oven-dry
	source      string
	status      Status
}

// blend turns the two figures of a wood into those of one side of a board.
func (s *Species) blend(cut Cut, d Direction) (blended, error) {
	if d == Length {
		return blended{CoefficientFor(shrinkAlong, s.FibreSaturation.Value), shrinkAlong, lengthSource, Calculated}, nil
	}
	tangential := math.Pow(math.Cos(float64(cut.ring)), 2)
	if d == Thickness {
		tangential = 1 - tangential
	}
	// Exactly flat or quartered boards need one figure only.
	const none = 1e-12
	switch {
	case tangential > 1-none:
		return s.only(s.Tangential, s.workTangential, "tangential movement")
	case tangential < none:
		return s.only(s.Radial, s.workRadial, "radial movement")
	}
	t, err := s.only(s.Tangential, s.workTangential, "tangential movement")
	if err != nil {
		return t, err
	}
	r, err := s.only(s.Radial, s.workRadial, "radial movement")
	if err != nil {
		return r, err
	}
	out := blended{
		coefficient: Coefficient(tangential)*t.coefficient + Coefficient(1-tangential)*r.coefficient,
		shrink:      tangential*t.shrink + (1-tangential)*r.shrink,
		source:      t.source, status: graver(t.status, r.status),
	}
	if r.source != t.source {
		out.source += "; " + r.source
	}
	return out, nil
}

func (s *Species) only(c Figure[Coefficient], shrink float64, what string) (blended, error) {
	if !c.Known() {
		return blended{}, &MissingError{Species: s.Name, What: what}
	}
	return blended{c.Value, shrink, c.Source, c.Status}, nil
}

// graver is the status that founds a figure less well.
func graver(a, b Status) Status {
	if b.FromMemory() && !a.FromMemory() || a == Read {
		return b
	}
	return a
}

// Cup is the hollow a board takes on because its two faces want to be of
// different width.
type Cup struct {
	Depth    measure.Length // of the hollow across the whole width, never negative
	BarkSide bool           // the bark side is the hollow one, as when wood dries
	Source   string
}

// cupSource says plainly that nobody has published this.
const cupSource = "derived from unequal movement along and across the rings; not tested against boards"

// Cup is how far one flat-sawn board hollows when its moisture content goes
// from one value to another. ring is the radius of the growth rings at the
// face: half the width of the rings' circle, read off the end of the board.
//
// Derivation: a point at radius ρ and angle θ from the middle of the board
// keeps 1 − C_R·ΔM of its radius and 1 − δ of its angle, δ = (C_T − C_R)·ΔM,
// for arcs shrink by C_T and radii by C_R. The flat face at distance r from the
// heart is ρ = r/cos θ; afterwards it stands r·δ·θ·tan θ higher at θ than in the
// middle. At the edge θ is about w/2r, which gives w²·(C_T − C_R)·ΔM / 4r, away
// from the heart: drying hollows the bark side.
//
// The width must be positive and at most twice the radius.
func (s *Species) Cup(width, ring measure.Length, from, to measure.MoistureContent) (Cup, error) {
	if width <= 0 || ring <= 0 || float64(width) > 2*float64(ring) {
		return Cup{}, &RangeError{What: "the width of the board over the radius of its rings", Value: float64(width) / float64(ring), Low: 0, High: 2, Unit: "times"}
	}
	for _, mc := range [...]measure.MoistureContent{from, to} {
		if err := checkMoisture(mc); err != nil {
			return Cup{}, err
		}
	}
	t, err := s.only(s.Tangential, 0, "tangential movement")
	if err != nil {
		return Cup{}, err
	}
	r, err := s.only(s.Radial, 0, "radial movement")
	if err != nil {
		return Cup{}, err
	}
	fs := s.FibreSaturation.Value
	lost := float64(min(from, fs) - min(to, fs))
	depth := float64(width) * float64(width) / (4 * float64(ring)) * float64(t.coefficient-r.coefficient) * lost
	return Cup{Depth: measure.Length(math.Round(math.Abs(depth))), BarkSide: depth > 0, Source: cupSource}, nil
}
