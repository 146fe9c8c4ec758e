package piece

import (
	"casewright/internal/curve"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// Piece is a whole piece of furniture, derived from its design.
type Piece struct {
	Spec       *design.Spec
	Air        Air
	Assemblies []*Assembly // in the order of their letters
	Parts      []*Part     // in the order of their marks
	Joints     []*Joint
	Openings   []*Opening
	Fits       []*Fit
	Sets       []*Set
	Hardware   []*HardwareLine
	Curves     []*Curve

	fillings []Filling
	shown    map[why.Size]measure.Length // by root
	byKey    map[string]*Part            // by mark and by path
}

// Air is the moisture content wood comes to: in the shop today, in the dry and
// in the damp of the piece's own season.
type Air struct {
	Shop, Dry, Damp measure.MoistureContent
}

// AssemblyKind says what an assembly is.
type AssemblyKind string

// The assemblies a piece is glued up from.
const (
	CaseAssembly   AssemblyKind = "case"
	DrawerAssembly AssemblyKind = "drawer"
	DoorAssembly   AssemblyKind = "door"
	StandAssembly  AssemblyKind = "stand"
	SlabAssembly   AssemblyKind = "top"
)

// Assembly is what is glued up and handled as one: a case, a drawer, a door.
type Assembly struct {
	Letter  string // "A", "B", … without I and O
	Kind    AssemblyKind
	Name    string // "cabinet", "left drawer"
	Path    string // "cabinet.drawers.left"
	Parts   []*Part
	Opening *Opening    // the opening a drawer or door fills, else nil
	Size    [3]why.Size // outside: width, height, depth
	Corner  Vec         // its left front bottom corner
	At      diag.Span

	hand string // "left" or "right" of a pair
}

// Standing is how far a part has come.
type Standing string

// The standings known before anything is cut.
const (
	Planned  Standing = "planned"
	Waits    Standing = "waits"    // for an opening to be measured
	Measured Standing = "measured" // its size was read at the bench
)

// Part is one finished piece of wood. Length runs along its grain.
type Part struct {
	Mark     string // "A3": pencilled on the wood
	Path     string // "cabinet.side.left"
	Name     string // "left side"
	Assembly *Assembly
	Wood     *Wood

	Length, Width, Thickness why.Size // finished, joinery included
	Shoulder                 why.Size // length between shoulders; not given when it has none

	Place    Place
	Show     joinery.Side // the face that is seen
	Edge     joinery.Edge // the reference edge
	Features []Feature
	Bow      *Bow // the curve its front follows, else nil
	base     *joinery.Feature

	frameBack bool  // a back rail: it shares what it takes with the rail before it
	Mirror    *Part // its mirror image, else nil
	Set       *Set  // the matched set it belongs to, else nil
	Blank     Blank

	Standing Standing
	WaitsFor *Opening // the opening it waits for
	At       diag.Span
}

// Box is the finished size in the part's own frame, around a bowed front too.
func (p *Part) Box() joinery.Box {
	b := joinery.Box{L: p.Length.Length(), W: p.Width.Length(), T: p.Thickness.Length()}
	if p.Bow != nil && p.Bow.Axis == joinery.T {
		b.T += p.Bow.Fall
	}
	return b
}

// Feature is what one joint takes away from a part.
type Feature struct {
	joinery.Feature
	Joint *Joint
}

// Bow says that a part's front follows a curve. The front lies on Axis: T for
// fronts and doors stood across the case, W for boards that lie flat and for
// partitions. All offsets are measured from front to back, so that every part
// along one curve is sawn to the same line.
type Bow struct {
	Curve    *Curve
	Axis     joinery.Axis
	X        joinery.Axis   // the part's own axis that runs along the case
	From, To measure.Length // the stretch, on the curve's own x
	Along    bool           // the stretch runs along the part, not across its width
	Offset   measure.Length // outside the curve if positive, inside if negative
	Crown    measure.Length // greatest ordinate on the stretch
	Fall     measure.Length // from there to its shallower end
	Chordal  measure.Length // bulge against the stretch's own chord, which a blank needs
	Landing  measure.Length // flat left at each end inside, for a drawer's sides to meet squarely
}

// Curve is a named curve with what it was made from.
type Curve struct {
	Name  string
	Spec  *design.Curve
	Shape *curve.Curve
	Parts []*Part // that follow it

	line []point // the facets every part along it shares: see shape.go
}

// Wood is one wood as this piece uses it.
type Wood struct {
	Name     string
	Species  *wood.Species
	Cut      wood.Cut
	Moisture measure.MoistureContent
	Color    string // "#rrggbb" for pictures, or "" for the species' own
	At       diag.Span
}

// Blank is the piece of wood a part is made from, with allowances.
type Blank struct {
	Length, Width, Thickness why.Size
	Joined                   []*Part // parts too short to machine alone share one blank
	Staves                   int     // boards glued edge to edge; 0 leaves it to the layout
}

// Joint is a relation between two parts that gives each features.
type Joint struct {
	Number   int
	Kind     string // "through dovetail", "dado", …
	Name     string // "left side to top"
	A, B     *Part  // tail board or host; pin board or housed board
	Dovetail *joinery.DovetailLayout
	EndA     joinery.End // which end of A, for corner joints
	EndB     joinery.End
	RowA     measure.Length // where a row of dovetails starts on the tail board, from its w = 0 edge
	Depth    why.Size       // of a housing, groove or rabbet, or a tenon's length
	Tongue   why.Size       // thickness of a tongue or tenon
	Glued    string         // "" when free to move, else how much is glued
	Problems []joinery.Problem
	At       diag.Span
}

// Opening is a clear space in a case.
type Opening struct {
	Path                 string // "cabinet.upper.keys"
	Name                 string // "keys"
	Width, Height, Depth why.Size
	Corner               Vec // left front bottom
	Case                 *Assembly
	Fill                 design.Fill
	Bow                  *Curve         // the curve its front follows, else nil
	BowFrom              measure.Length // on the curve's x
	Measured             bool
	Planned              [3]why.Size // width, height and depth before any was measured; not given if none was
	At                   diag.Span
}

// FitKind says what moves in what.
type FitKind string

// The places where wood must have room.
const (
	DrawerHeight FitKind = "drawer height"
	DrawerWidth  FitKind = "drawer width"
	DoorWidth    FitKind = "door width"
	DoorHeight   FitKind = "door height"
	PanelWidth   FitKind = "panel width"
	BackWidth    FitKind = "back width"
	BottomDepth  FitKind = "bottom depth"
	TopDepth     FitKind = "top depth"
)

// Fit is one place where a part must have room to move, at the moisture it is
// made at and at both ends of the season. Sizes are over the whole part.
type Fit struct {
	Kind FitKind
	Part *Part
	In   string // what it moves in: "opening keys", "groove of the frame"

	Room   why.Size       // free in all when made: gaps, or groove depth beyond the tongue
	Tongue why.Size       // engaged on each side when made; not given for gaps
	Across measure.Length // the size that moves
	Grow   wood.Move      // shop to damp
	Shrink wood.Move      // shop to dry
}

// Set is a matched set: parts whose grain must relate.
type Set struct {
	Name  string
	Kind  string // "ring", "run", "book", "slip"
	Parts []*Part
	Loss  why.Size // figure lost between members, beyond the kerf
	Total why.Size // length or width of board the set needs
	At    diag.Span

	of *Assembly // whose panel it is, if nobody named it
}

// HardwareLine is one kind of bought hardware with how many the piece takes.
type HardwareLine struct {
	Spec  *design.Hardware
	Count int
	Where []string
}

// Part finds a part by mark or path; nil when there is none.
func (p *Piece) Part(key string) *Part { return p.byKey[key] }

// Shown is the size as it is printed: rounded once for the whole piece, so
// that what fills a space adds up on paper too.
func (p *Piece) Shown(s why.Size) measure.Length {
	if l, ok := p.shown[s.Root()]; ok {
		return l
	}
	return roundTo(s.Length(), p.Spec.Commission.Rule)
}
