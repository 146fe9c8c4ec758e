package joinery

import "casewright/internal/measure"

// Letters used in the dovetail files, all measured across the joint:
//
//	tip    where a tail ends: the outer face of the pin board, or its lap
//	base   the baseline a tail springs from: the inner face of the pin board
//	n      number of tails; n − 1 full pins and two half pins stand between
//	flare  what one sloped cheek gains from base to tip
//	pin    width of a full pin at the tip, where pins are narrowest
//	half   width of a half pin at the tip
//	free   the corner without the rabbets that run out at its edges

// Run is a rabbet or groove that runs out through the corner. From and To are
// measured across the corner from its front edge; a run that touches an edge
// is a rabbet, any other a groove. The depths are cut into the inside face of
// each board; 0 means the run is not in that board, or stops before the joint.
type Run struct {
	From, To            measure.Length
	TailDepth, PinDepth measure.Length
}

func (r Run) span() span { return span{r.From, r.To} }

func (r Run) atEdge(width measure.Length) bool { return r.From <= 0 || r.To >= width }

// DovetailSpec asks for a row of dovetails at one corner. Width, both stocks
// and Slope are needed; everything else may be left zero.
type DovetailSpec struct {
	Width     measure.Length // length of the corner across both boards
	TailStock measure.Length // thickness of the board with the tails
	PinStock  measure.Length // thickness of the board with the pins
	Slope     measure.Slope
	Lap       measure.Length // left on the pin board by a half-blind joint; 0 = through
	Tails     int            // 0 = chosen from the width
	HalfPin   measure.Length // at the tip, without a rabbet beside it; 0 = chosen
	Ratio     float64        // tail to pin, both halfway along a tail; 0 = 2.5
	Runs      []Run
	EvenEnds  bool           // keep both end pins alike even where a rabbet runs out
	MinEndPin measure.Length // least half pin at the base; 0 = 3/16 in
	Chisel    measure.Length // narrowest chisel in the shop; 0 = 1/8 in
	Kerf      measure.Length // dovetail saw; 0 = 0.025 in
	Step      measure.Length // sizes at the tip are whole multiples of it; 0 = 1/64 in
}

// Wedge is one tail or pin: its two edges at the tip and at the base, across
// the corner from its front edge.
type Wedge struct{ TipFrom, TipTo, BaseFrom, BaseTo measure.Length }

// Tip is the width at the tip: the wide end of a tail, the narrow end of a pin.
func (w Wedge) Tip() measure.Length { return w.TipTo - w.TipFrom }

// Base is the width at the baseline.
func (w Wedge) Base() measure.Length { return w.BaseTo - w.BaseFrom }

// DovetailLayout is a row of dovetails, ready to mark out. The widths of tails
// and pins at the tip, and those at the base, both add up to Width exactly.
//
// Between the two end pins all tails stand symmetric about the middle of the
// free width. Marked from the nearer end of it, every edge at the tip falls on
// a whole Step, if HalfPin does; what the width has beyond whole steps goes to
// the middle tail, or to the middle pin where the number of tails is even. The
// base follows from the bevel.
type DovetailLayout struct {
	Width, TailStock, PinStock, Lap measure.Length
	Slope                           measure.Slope
	TailLength                      measure.Length // tip to base, in the tail board
	SocketDepth                     measure.Length // along the pin board, from its end
	Flare                           measure.Length // per cheek
	FreeFrom, FreeTo                measure.Length // the width free of rabbets
	HalfPin                         measure.Length // at the tip, without the rabbet beside it
	Tails                           []Wedge
	Pins                            []Wedge // one more than Tails; the first and last are half pins
	Runs                            []Run

	Narrowest  measure.Length // narrowest full pin at the tip; 0 with a single tail
	ChiselFits bool           // the narrowest chisel enters the wide end of every socket for a full pin
	KerfFits   bool           // the saw enters its narrow end
	Ratio      float64        // mean tail to mean full pin, halfway along a tail; 0 with a single tail

	// Alternative keeps every rabbet and groove out of the pins where this
	// layout does not; nil if none is needed or none was found.
	Alternative *DovetailLayout
}

// Through reports whether the tails show on the outside of the pin board.
func (l *DovetailLayout) Through() bool { return l.Lap == 0 }

// Figures the layout starts from, each with who says so.
const (
	usualRatio    = 2.5                             // tails 2-1/2 to pins 1 on average: Joyce
	mostRatio     = 4.0                             // up to 4 to 1 for looks: Noyes
	widestTail    = measure.Inch + 3*measure.Inch/4 // Noyes
	lowDrawer     = 6 * measure.Inch                // up to here two full pins, above three: Joyce
	usualChisel   = measure.Inch / 8                // common practice, no source
	usualKerf     = measure.Inch / 40               // 0.025 in, from memory
	usualMinEnd   = 3 * measure.Inch / 16           // common practice, no source
	thinnestLap   = 3 * measure.Inch / 32           // below it a lap breaks easily: FWW07 page 84
	coarsestSlope = 5.0                             // short grain beyond: Joyce
	finestSlope   = 8.0                             // no hold beyond: Joyce
	mostTails     = 500                             // not a figure of the trade; keeps nonsense small
)

func (s DovetailSpec) withDefaults() DovetailSpec {
	or := func(v *measure.Length, usual measure.Length) {
		if *v == 0 {
			*v = usual
		}
	}
	or(&s.MinEndPin, usualMinEnd)
	or(&s.Chisel, usualChisel)
	or(&s.Kerf, usualKerf)
	or(&s.Step, measure.SixtyFourth)
	if s.Ratio == 0 {
		s.Ratio = usualRatio
	}
	return s
}

// LayDovetails divides a corner into tails and pins. Where the request cannot
// be laid out the layout has no tails and a problem says why; where it can but
// should not, the layout is what was asked for and the problems say what
// stands against it.
//
// A number of tails left open follows the width: two full pins up to 6 in,
// three above (Joyce), more once a tail would pass 1-3/4 in (Noyes), fewer
// where pins would get too thin for the chisel. Half pins left open are as
// wide at the base as a full pin (FWW07), or less or more where that puts a
// groove inside a tail (Noyes, Joyce).
func LayDovetails(spec DovetailSpec) (DovetailLayout, []Problem) {
	s := spec.withDefaults()
	if p := s.nonsense(); len(p) > 0 {
		return DovetailLayout{}, p
	}
	d := newDivider(s)
	plan, ok := d.choose()
	if !ok {
		return DovetailLayout{}, []Problem{d.noRoom()}
	}
	l := d.build(plan)
	problems := l.judge(s)
	if !d.clear(plan) {
		problems = append(problems, d.offerAlternative(&l)...)
	}
	return l, problems
}

// nonsense lists what makes a request no dovetail at all.
func (s DovetailSpec) nonsense() []Problem {
	var out []Problem
	bad := func(is bool, code, summary, mend string, f []Figure) {
		if is {
			out = append(out, stop("dovetail."+code, summary, mend, f))
		}
	}
	for _, v := range [...]struct {
		name string
		size measure.Length
	}{{"width of the corner", s.Width}, {"tail board's thickness", s.TailStock}, {"pin board's thickness", s.PinStock}} {
		bad(v.size <= 0 || v.size > largest, "size", "the "+v.name+" is no size for a joint",
			"give both boards a width and a thickness above zero", length(v.name, v.size, 0, geometry))
	}
	bad(s.Lap < 0 || s.Lap >= s.PinStock, "lap", "the lap leaves no wood for the tails",
		"leave a lap thinner than the pin board, or none for a through joint", length("lap", s.Lap, s.PinStock, geometry))
	bad(s.Tails < 0 || s.Tails > mostTails, "tails", "that is no number of tails", "ask for one tail or more, or leave it open",
		ratio("tails", float64(s.Tails), mostTails, geometry))
	bad(s.HalfPin < 0 || s.HalfPin > largest, "half-pin", "the half pin is no size", "give a half pin above zero, or leave it open",
		length("half pin", s.HalfPin, 0, geometry))
	bad(s.Step < 0 || s.Chisel < 0 || s.Kerf < 0 || s.MinEndPin < 0 || max(s.Step, s.Chisel, s.Kerf, s.MinEndPin) > largest, "limits",
		"a limit of the shop is no size", "give chisel, kerf, step and least end pin above zero, or leave them open", nil)
	bad(!(s.Ratio > 0 && s.Ratio <= 100), "ratio", "the ratio of tail to pin is no ratio", "ask for a ratio between 1 and 4, or leave it open",
		ratio("tail to pin", s.Ratio, mostRatio, noyes))
	n := steepness(s.Slope)
	bad(n < 0.1 || n > 1000, "slope", "the slope is no slope for a dovetail", "give a slope such as 1:7",
		ratio("slope 1 in", n, finestSlope, joyce))
	if len(out) == 0 { // only now is it safe to work out
		bad(s.Slope.Offset(s.PinStock-s.Lap) <= 0, "lap", "the lap leaves tails too short to have a slope",
			"leave a thinner lap", length("tail length", s.PinStock-s.Lap, s.PinStock/2, fww07+", page 79"))
	}
	return append(out, s.badRuns()...)
}

func (s DovetailSpec) badRuns() []Problem {
	var out []Problem
	for _, r := range s.Runs {
		if r.From >= r.To || r.From < 0 || r.To > s.Width {
			out = append(out, stop("dovetail.run", "a rabbet or groove lies outside the corner it is said to run through",
				"check where it starts and how wide it is", length("its far edge", r.To, s.Width, geometry)))
		}
		if r.TailDepth < 0 || r.TailDepth >= s.TailStock || r.PinDepth < 0 || r.PinDepth >= s.PinStock {
			out = append(out, stop("dovetail.run-depth", "a rabbet or groove is deeper than its board is thick",
				"make it shallower, or the board thicker", length("depth", max(r.TailDepth, r.PinDepth), min(s.TailStock, s.PinStock), geometry)))
		}
		if r.atEdge(s.Width) && r.PinDepth > 0 && r.PinDepth >= s.PinStock-s.Lap {
			out = append(out, stop("dovetail.run-lap", "a rabbet is deeper than the tails are long, so nothing closes its end",
				"make the rabbet shallower or the lap thinner", length("rabbet depth", r.PinDepth, s.PinStock-s.Lap, geometry)))
		}
	}
	return out
}

// steepness is n of a slope 1:n; 0 for no slope.
func steepness(s measure.Slope) float64 {
	if s.Rise <= 0 || s.Run <= 0 {
		return 0
	}
	return float64(s.Run) / float64(s.Rise)
}
