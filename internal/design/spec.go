package design

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// Spec is a whole commission as its text says it: names resolved, defaults
// filled in where the language has one, everything else left not given. It is
// read-only once built.
type Spec struct {
	Commission Commission
	Season     Season
	Shop       Shop
	Woods      []*Wood
	Species    []*OwnSpecies
	Curves     []*Curve
	Cases      []*Case
	Stands     []*Stand
	Slabs      []*Slab
	Hardware   []*Hardware
	Matches    []*Match
	Site       Site
	Measured   []*Measured
	Accepts    []*Accept
}

// Text is a word or phrase from the text with its place.
type Text struct {
	Value string
	At    diag.Span
}

// Given reports whether the text says anything here.
func (t Text) Given() bool { return t.Value != "" }

// Number is a plain number from the text (a count, a share, a percentage).
type Number struct {
	Value float64
	Set   bool
	At    diag.Span
}

// Flag is a yes or no from the text.
type Flag struct {
	Value bool
	Set   bool
	At    diag.Span
}

// Commission is the job: block `commission "name"`.
type Commission struct {
	Name   string // label
	Title  Text   // title
	Client Text   // client: a role, never a name
	Brief  Text   // brief: what was asked for
	Unit   measure.Unit
	Rule   measure.Graduation // rule: what the shop's rule is graduated in
	Gaps   measure.Graduation // gaps: what gaps are printed to
	Budget measure.Money
	At     diag.Span
}

// Style is how lengths of this commission are printed.
func (c Commission) Style() measure.Style {
	return measure.Style{Unit: c.Unit, Graduation: c.Rule}
}

// GapStyle is how gaps and clearances are printed.
func (c Commission) GapStyle() measure.Style {
	return measure.Style{Unit: c.Unit, Graduation: c.Gaps}
}

// Season is the air the piece will live in through the year: block `season`.
type Season struct {
	Dry, Damp   measure.Humidity    // dry, damp: % RH
	Temperature measure.Temperature // temperature: °F in inch commissions, °C else; "21 C" in any
	Usual       bool                // nothing was said; the default range is used
	At          diag.Span
}

// Shop is the maker's own place and tools: block `shop`.
type Shop struct {
	Humidity       measure.Humidity    // humidity: % RH on the day
	Temperature    measure.Temperature // temperature
	SmallestChisel why.Size            // smallest_chisel
	DovetailKerf   why.Size            // dovetail_kerf: kerf of the dovetail saw
	SawKerf        why.Size            // saw_kerf: table saw
	ResawKerf      why.Size            // resaw_kerf: bandsaw, cleaned up
	ResawHeight    why.Size            // resaw_height: the tallest board it resaws
	PlanerWidth    why.Size            // planer_width
	ShortestPart   why.Size            // shortest_part: shortest safe machined length
	ThinnestPart   why.Size            // thinnest_part: thinnest safe at the planer
	At             diag.Span
}

// Wood is a wood in use: block `wood "name"`. A name used without a block is
// taken as a species with the defaults below.
type Wood struct {
	Name     string
	Species  Text      // species
	Cut      Text      // cut: "flat", "rift" or "quarter"
	Moisture Number    // moisture: % today; not given means the shop's EMC
	Color    Text      // color: "#rrggbb" for pictures; not given means the species' usual
	At       diag.Span //
	_        struct{}  // keyed fields only
}

// OwnSpecies defines a species the tables lack: block `species "name"`.
type OwnSpecies struct {
	Name            string
	Radial          Number // radial: shrinkage green to oven-dry, %
	Tangential      Number // tangential
	SpecificGravity Number // specific_gravity: oven-dry mass, volume at 12 %
	Stiffness       Number // stiffness: modulus of elasticity, million psi (inch) or GPa (mm)
	Strength        Number // strength: modulus of rupture, psi (inch) or MPa (mm)
	Source          Text   // source: where the figures are from
	At              diag.Span
}

// Curve is a named line that parts follow: block `curve "name"`.
type Curve struct {
	Name  string
	Shape Text     // shape: "arc" or "batten"
	Chord why.Size // chord
	Rise  why.Size // rise
	Flats why.Size // flats: straight length at each end
	At    diag.Span
}

// Case is a box of boards: block `case "name"`.
type Case struct {
	Name      string
	On        Text     // on: the case or stand it stands on
	Width     why.Size // width, outside
	Height    why.Size // height, outside
	Depth     why.Size // depth, outside, at the sides
	Thickness why.Size // thickness of sides, top and bottom
	Sides     why.Size // sides: thickness where it differs
	Top       why.Size // top: thickness where it differs
	Bottom    why.Size // bottom: thickness where it differs
	Wood      Text     // wood
	Front     Text     // front: the curve that front edges follow
	Hung      Flag     // hung: hangs on a wall
	Corners   Corners
	TopRails  *TopRails // two rails in place of a solid top
	Back      *Back     // nil: no back
	Cleat     *Cleat    // only of a hung case
	Inside    Space
	At        diag.Span
}

// Corners is how the case's boards meet: block `corners`.
type Corners struct {
	Joint    Text          // joint: "through dovetail", "half-blind dovetail", "rabbet", "dado"
	Slope    measure.Slope // slope
	HasSlope bool
	Tails    Number   // tails: how many at each corner
	TailsOn  Text     // tails_on: "sides" or "ends" (top and bottom)
	HalfPin  why.Size // half_pin: width of the half pins
	Lap      why.Size // lap: what a half-blind joint leaves
	At       diag.Span
}

// TopRails replaces the top by a front and a back rail: block `top_rails`.
type TopRails struct {
	Thickness why.Size // thickness
	Width     why.Size // width, front to back, at the sides
	Wood      Text     // wood
	At        diag.Span
}

// Back closes the case behind: block `back`.
type Back struct {
	Style     Text     // style: "shiplap", "panel" or "none"
	Thickness why.Size // thickness
	Inset     why.Size // inset: from the case's back edge to the back's inside face
	Rabbet    why.Size // rabbet: depth into sides, top and bottom
	Boards    Number   // boards: how many; not given means chosen by width
	Wood      Text     // wood
	At        diag.Span
}

// Cleat hangs a case: block `cleat`.
type Cleat struct {
	Thickness why.Size      // thickness
	Height    why.Size      // height of each half
	Bevel     measure.Angle // bevel from the horizontal
	Wood      Text
	At        diag.Span
}

// Space is what a case or an opening holds: one opening, or rows, or columns.
// Exactly one of Rows, Columns and the fill is used.
type Space struct {
	Rows    []*Cell    // from the top down
	Columns []*Cell    // from left to right
	Between []*Between // len(cells)-1, what stands between them
	Fill    Fill
	At      diag.Span
}

// Split reports whether the space is divided further.
func (s *Space) Split() bool { return len(s.Rows)+len(s.Columns) > 0 }

// Cells are the rows or the columns.
func (s *Space) Cells() []*Cell {
	if len(s.Rows) > 0 {
		return s.Rows
	}
	return s.Columns
}

// Cell is one row or column: blocks `row` and `column`.
type Cell struct {
	Name  string   // label, or its number from 1
	Size  why.Size // height of a row, width of a column; not given shares the rest
	Share Number   // share of the rest, in proportion; 1 if not given
	Step  why.Size // set by a bank: this much more than the row above
	Space Space
	At    diag.Span
}

// BetweenKind says what stands between two cells.
type BetweenKind string

// What can stand between rows (divider, rail) and columns (partition).
const (
	Divider   BetweenKind = "divider"   // a board the full depth, housed in the sides
	Rail      BetweenKind = "rail"      // a web frame: front rail, runners, back rail
	Partition BetweenKind = "partition" // an upright board, housed above and below
)

// Between is what stands between two cells: blocks `divider`, `rail`, `partition`.
type Between struct {
	Kind      BetweenKind
	Thickness why.Size // thickness
	Housed    why.Size // housed: depth of the housing; not given means chosen
	Stopped   why.Size // stopped: how far the housing stops short of the front
	Width     why.Size // width: of a rail, front to back
	Setback   why.Size // setback: from the front
	Wood      Text     // wood
	At        diag.Span
}

// Fill is what an undivided opening holds. The zero Fill is an open space.
type Fill struct {
	Drawer  *Drawer
	Door    *Door
	Fixed   []*Shelf // fixed shelves, each at its height
	Shelves *Shelves // a set of equal or adjustable shelves
}

// Drawer fills an opening: block `drawer`; a block `drawers` outside gives
// what its drawers do not say.
type Drawer struct {
	Mount     Text     // mount: "inset" or "overlay"
	Overlay   why.Size // overlay: how far an overlay front laps the case
	Front     Board    // front
	Sides     Board    // sides
	Back      Board    // back
	Bottom    Board    // bottom
	Joint     Text     // joint of the front: "half-blind dovetail"
	BackJoint Text     // back_joint: "through dovetail" or "dado"
	Slope     measure.Slope
	HasSlope  bool
	Lap       why.Size // lap left on the front
	Tails     Number   // tails at the front
	SideGap   why.Size // side_gap: each side
	TopGap    why.Size // top_gap: not given means computed from the season
	Behind    why.Size // behind: left free behind the drawer
	Groove    why.Size // groove: bottom edge of the side to the groove
	Pull      Text     // pull: the hardware on the front
	At        diag.Span
}

// Board is the wood and thickness of one member: blocks `front`, `sides`, ….
type Board struct {
	Wood      Text
	Thickness why.Size
	At        diag.Span
}

// Door fills an opening: block `door`; a block `doors` outside gives what its
// doors do not say.
type Door struct {
	Pair       Flag     // pair: two doors meeting in the middle
	Mount      Text     // mount: "inset" or "overlay"
	Overlay    why.Size // overlay: how far an overlay door laps the case
	Hinge      Text     // hinge: "left" or "right"
	Wood       Text     // wood of the frame
	Thickness  why.Size // thickness of the frame
	Stile      why.Size // stile: width
	TopRail    why.Size // top_rail: width
	BottomRail why.Size // bottom_rail: width
	Tenon      why.Size // tenon: length
	Gap        why.Size // gap: all round
	Panel      Panel
	Hinges     Text // hinges: the hardware
	Pull       Text // pull
	Catch      Text // catch
	At         diag.Span
}

// Panel is the field of a frame: block `panel`.
type Panel struct {
	Wood      Text
	Thickness why.Size // thickness
	Groove    why.Size // groove: depth in the frame
	Leaves    Number   // leaves: boards side by side
	Match     Text     // match: "book" or "slip" between the leaves
	At        diag.Span
}

// Shelf is a fixed shelf: block `shelf`.
type Shelf struct {
	Name      string
	Up        why.Size // up: from the opening's floor to the shelf's underside
	Thickness why.Size
	Housed    why.Size // housed: depth of its housings
	Depth     why.Size // depth: front to back; not given means to the back
	Wood      Text
	At        diag.Span
}

// Shelves is a set of like shelves: block `shelves`.
type Shelves struct {
	Count      Number
	Adjustable Flag // adjustable: on pins; else housed and equally spaced
	Thickness  why.Size
	Depth      why.Size
	Load       Number // load: pounds per foot of shelf (inch) or kg per metre (mm)
	Wood       Text
	At         diag.Span
}

// Stand carries a case: block `stand "name"`.
type Stand struct {
	Name      string
	Style     Text     // style: "legs" or "plinth"
	Under     Text     // under: the case it carries
	Height    why.Size // height
	Legs      Number   // legs: how many, even
	Leg       why.Size // leg: section, square
	Taper     why.Size // taper: how much legs lose at the foot on each inner face
	Rail      why.Size // rail: height of rails
	Thickness why.Size // thickness of rails or plinth boards
	Setback   why.Size // setback: of the front rail or plinth from the case's front
	Inset     why.Size // inset: of legs or plinth from the case's ends
	Wood      Text
	At        diag.Span
}

// Slab is a board over or under a case: blocks `top "name"` and `ledge "name"`.
type Slab struct {
	Name      string
	Under     bool     // a ledge, below its case
	Of        Text     // on (top) or under (ledge): the case
	Width     why.Size // width, outside
	Depth     why.Size // depth, at the ends
	Thickness why.Size
	Overhang  Overhang // where width or depth are not given
	Front     Text     // front: the curve of its front edge
	Staves    Number   // staves: boards glued edge to edge; not given leaves it to the layout
	Wood      Text
	At        diag.Span
}

// Overhang is how far a slab reaches beyond its case: attributes
// overhang_front, overhang_ends, overhang_back.
type Overhang struct{ Front, Ends, Back why.Size }

// Hardware is bought metal with sizes measured on the piece in hand: block
// `hardware "name"`.
type Hardware struct {
	Name      string
	Kind      Text     // kind: "butt hinge", "hinge", "knob", "pull", "catch", "hook", "shelf pin", "screw", "other"
	Count     Number   // count: for the piece, or per door or drawer that cites it
	Length    why.Size // length
	Width     why.Size // width
	Thickness why.Size // thickness
	Diameter  why.Size // diameter
	Price     Number   // price each
	Opening   Text     // opening: where loose hardware goes
	Note      Text     // note
	At        diag.Span
}

// Match is a set of parts whose grain must relate: block `match "name"`.
type Match struct {
	Name  string
	Kind  Text     // kind: "ring", "run", "book" or "slip"
	Parts []Text   // parts: paths, * stands for any one name
	Loss  why.Size // loss: figure lost between members beyond the kerf
	At    diag.Span
}

// Site is what was measured where the piece will be: block `site`.
type Site struct {
	Wall       Text       // wall: what it is made of
	Studs      []why.Size // studs: middles, from studs_from
	StudsFrom  Text       // studs_from
	FreeWall   []why.Size // free_wall: from, to
	Projection why.Size   // projection: the most the piece may stand out
	Passages   []*Passage // passage "name": doorways, lift, stair
	Niche      *Niche
	At         diag.Span
}

// Passage is something the piece must get through: block `passage "name"`.
type Passage struct {
	Name                 string
	Width, Height, Depth why.Size
	At                   diag.Span
}

// Niche is the place a piece must fit: block `niche`.
type Niche struct {
	Widths    []Station   // width { up, is }: widths at heights
	Ceiling   []why.Size  // ceiling: left, right
	Skirting  [2]why.Size // skirting_height, skirting_thickness
	FloorFall Number      // floor_fall: millimetres per metre; positive falls to the left
	At        diag.Span
}

// Station is a width measured at a height.
type Station struct{ Up, Is why.Size }

// Measured is what the rule said at the bench: block `measured "path"`.
type Measured struct {
	Path                 Text     // label: an opening or a part
	Width, Height, Depth why.Size // of an opening
	Length, Thickness    why.Size // of a part, beside Width
	At                   diag.Span
}

// Accept lets a finding stand, with a reason: block `accept "code"`.
type Accept struct {
	Code   Text // label: the finding's code
	Of     Text // of: mark or path; empty means wherever it is found
	Reason Text // reason
	At     diag.Span
}
