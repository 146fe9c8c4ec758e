package joinery

import (
	"math"

	"casewright/internal/measure"
)

// divider finds where tails and pins go across one corner.
type divider struct {
	s          DovetailSpec // with defaults
	tailLength measure.Length
	flare      measure.Length
	free       span
	grooves    []span // must lie inside a tail
	rabbets    []span // must lie outside every tail
}

func newDivider(s DovetailSpec) *divider {
	d := &divider{s: s, tailLength: s.PinStock - s.Lap, free: span{0, s.Width}}
	d.flare = s.Slope.Offset(d.tailLength)
	for _, r := range s.Runs {
		switch {
		case r.TailDepth == 0 && r.PinDepth == 0:
		case !r.atEdge(s.Width):
			d.grooves = append(d.grooves, r.span())
		default:
			d.rabbets = append(d.rabbets, r.span())
			d.setAside(r)
		}
	}
	return d
}

// setAside keeps the tails clear of a rabbet: its end pin is widened by it.
func (d *divider) setAside(r Run) {
	switch {
	case d.s.EvenEnds:
	case r.From <= 0 && r.To >= d.s.Width:
		d.free.to = 0 // a rabbet over the whole corner leaves nothing
	case r.From <= 0:
		d.free.from = max(d.free.from, r.To)
	default:
		d.free.to = min(d.free.to, r.From)
	}
}

// plan is one way to divide the free width. Tails are tail wide at the tip; so
// many pairs of them, counted from the middle outwards, are a step wider.
type plan struct {
	n                 int
	half, pin, tail   measure.Length
	middleTail        measure.Length // what the middle tail has on top, n odd
	middlePin         measure.Length // what the middle pin has on top, n even
	pairs             int
	step, flare, from measure.Length
}

// divide shares the free width among n tails with the given half pin, or with
// one as wide at the base as a full pin if half is 0. It fails where a tail or
// a pin would vanish.
//
// With r the ratio of tail to pin halfway along, tail − flare = r (pin + flare),
// and the widths n·tail + (n − 1)·pin + 2·half fill the width.
func (d *divider) divide(n int, half measure.Length) (plan, bool) {
	p := plan{n: n, step: d.s.Step, flare: d.flare, from: d.free.from}
	width, flare := d.free.width(), d.flare
	r, k := d.s.Ratio, float64(n)
	if half == 0 {
		p.pin = d.snap((float64(width) - float64(flare)*(k*(r+1)+2)) / (k*r + k + 1))
		half = snapUp(p.pin+flare, p.step)
	} else if n > 1 {
		p.pin = d.snap((float64(width-2*half) - float64(flare)*k*(r+1)) / (k*r + k - 1))
	}
	p.half = half
	if n > 1 && p.pin <= 0 {
		return p, false
	}
	p.share(width)
	return p, p.half > 0 && p.tail > 2*flare
}

// snap goes to the nearest whole step.
func (d *divider) snap(nm float64) measure.Length {
	return measure.Length(math.Round(nm/float64(d.s.Step))) * d.s.Step
}

// share gives the tails what half pins and pins leave of the width, so that
// everything stays symmetric and adds up to the nanometre. An even number of
// tails cannot take an odd number of steps; one step more in each pin changes
// that, for their number is odd.
func (p *plan) share(width measure.Length) {
	n := measure.Length(p.n)
	rest := width - 2*p.half - (n-1)*p.pin
	if p.n%2 == 0 && rest > 0 && (rest/p.step)%2 == 1 {
		p.pin += p.step
		rest -= (n - 1) * p.step
	}
	if rest <= 0 {
		return
	}
	p.tail = snapDown(rest/n, p.step)
	left := rest - n*p.tail
	steps, crumb := left/p.step, left%p.step
	if p.n%2 == 0 {
		p.pairs, p.middlePin = int(steps/2), crumb
		return
	}
	// The middle tail of an odd row takes one step of an odd number and two of
	// an even one, for it must not be narrower than its neighbours.
	middle := min(steps, 2-steps%2)
	p.pairs, p.middleTail = int((steps-middle)/2), crumb+middle*p.step
}

// tailWidth is the width of tail i at the tip. The middle of a row takes the
// spare steps, so that tails never get wider towards the edges, where small
// ones keep the board flat (Joyce).
func (p plan) tailWidth(i int) measure.Length {
	w := p.tail
	lower, upper := (p.n-1)/2, p.n/2 // the two middle tails, or one twice
	if lower == upper && i == lower {
		return w + p.middleTail
	}
	out := lower - i // 0 is the innermost of a pair for even n, 1 for odd
	if i > lower {
		out = i - upper
	}
	if lower == upper {
		out--
	}
	if out < p.pairs {
		w += p.step
	}
	return w
}

func (p plan) pinWidth(i int) measure.Length {
	if p.n%2 == 0 && i == p.n/2 {
		return p.pin + p.middlePin
	}
	return p.pin
}

// eachTail calls visit with the tip of each tail in turn until it says stop.
func (p plan) eachTail(visit func(span) bool) {
	at := p.from + p.half
	for i := range p.n {
		if i > 0 {
			at += p.pinWidth(i)
		}
		w := p.tailWidth(i)
		if !visit(span{at, at + w}) {
			return
		}
		at += w
	}
}

// clear reports whether every groove lies inside a tail, where the joint hides
// it, and no rabbet touches one.
func (d *divider) clear(p plan) bool {
	for _, g := range d.grooves {
		if !d.hides(p, g) {
			return false
		}
	}
	for _, r := range d.rabbets {
		if !d.misses(p, r) {
			return false
		}
	}
	return true
}

// hides reports whether the groove lies inside one tail over its whole length,
// which it does if it does at the base.
func (d *divider) hides(p plan, g span) (inside bool) {
	p.eachTail(func(t span) bool {
		inside = g.within(span{t.from + d.flare, t.to - d.flare})
		return !inside
	})
	return inside
}

// misses reports whether the rabbet stays clear of all tails at their tips,
// where they are widest.
func (d *divider) misses(p plan, r span) bool {
	clear := true
	p.eachTail(func(t span) bool {
		clear = !r.meets(t)
		return clear
	})
	return clear
}

// choose finds the plan for the request. What is given is kept; what is open
// is moved until grooves are hidden. If nothing hides them the first plan that
// works is the answer, and judged for what it is.
func (d *divider) choose() (plan, bool) {
	var first plan
	found := false
	for _, n := range d.counts() {
		p, ok := d.divide(n, d.s.HalfPin)
		if !ok {
			continue
		}
		if d.clear(p) {
			return p, true
		}
		if !found {
			first, found = p, true
		}
		if moved, ok := d.moveHalfPin(p); ok {
			return moved, true
		}
	}
	return first, found
}

// moveHalfPin tries narrower half pins, then wider ones, until nothing runs
// through a pin. Half pins given by hand stay.
func (d *divider) moveHalfPin(p plan) (plan, bool) {
	if d.s.HalfPin > 0 {
		return p, false
	}
	least := max(snapUp(max(d.s.MinEndPin-d.flare, 0), d.s.Step), d.s.Step)
	for h, tries := p.half-d.s.Step, 0; h >= least && tries < mostTries; h, tries = h-d.s.Step, tries+1 {
		if q, ok := d.divide(p.n, h); ok && d.clear(q) {
			return q, true
		}
	}
	for h, tries := p.half+d.s.Step, 0; h <= 2*p.half && tries < mostTries; h, tries = h+d.s.Step, tries+1 {
		if q, ok := d.divide(p.n, h); ok && d.comfortable(q) && d.clear(q) {
			return q, true
		}
	}
	return p, false
}

// mostTries bounds the search for a half pin when steps are tiny.
const mostTries = 200

// counts lists the numbers of tails to try, the best first. A number given by
// hand is the only one.
func (d *divider) counts() []int {
	if d.s.Tails > 0 {
		return []int{d.s.Tails}
	}
	best := d.usualCount()
	counts := []int{best}
	if len(d.grooves)+len(d.rabbets) == 0 {
		return counts
	}
	for away := 1; away <= 3; away++ {
		for _, n := range [...]int{best + away, best - away} {
			if n < 1 {
				continue
			}
			if p, ok := d.divide(n, d.s.HalfPin); ok && d.comfortable(p) && p.tail <= widestTail {
				counts = append(counts, n)
			}
		}
	}
	return counts
}

// usualCount is the number of tails for the free width.
func (d *divider) usualCount() int {
	n := 3
	if d.free.width() > lowDrawer {
		n = 4
	}
	for n < mostTails {
		p, ok := d.divide(n, d.s.HalfPin)
		if !ok || p.tail <= widestTail {
			break
		}
		n++
	}
	for n > 1 {
		if p, ok := d.divide(n, d.s.HalfPin); ok && d.comfortable(p) {
			break
		}
		n--
	}
	return n
}

// comfortable reports whether a plan can be sawn and chopped with ease: the
// narrowest chisel and the saw go in even where a pin is narrowest.
func (d *divider) comfortable(p plan) bool {
	return p.n == 1 || p.pin >= max(d.s.Chisel, d.s.Kerf)
}

// offerAlternative looks for a layout without a rabbet or groove in a pin,
// freeing first the half pins, then the number of tails, then the even ends.
func (d *divider) offerAlternative(l *DovetailLayout) []Problem {
	s := d.s
	for _, free := range [...]func(){
		func() { s.HalfPin = 0 }, func() { s.Tails = 0 }, func() { s.EvenEnds = false },
	} {
		free()
		other := newDivider(s)
		if p, ok := other.choose(); ok && other.clear(p) {
			alt := other.build(p)
			l.Alternative = &alt
			break
		}
	}
	return l.runProblems()
}

// build works out every edge.
func (d *divider) build(p plan) DovetailLayout {
	s := d.s
	l := DovetailLayout{
		Width: s.Width, TailStock: s.TailStock, PinStock: s.PinStock, Lap: s.Lap, Slope: s.Slope,
		TailLength: d.tailLength, SocketDepth: s.TailStock, Flare: d.flare,
		FreeFrom: d.free.from, FreeTo: d.free.to, HalfPin: p.half,
		Tails: make([]Wedge, 0, p.n), Pins: make([]Wedge, 0, p.n+1), Runs: s.Runs,
	}
	var last Wedge // what stands before the next pin: the corner's edge at first
	p.eachTail(func(t span) bool {
		w := Wedge{t.from, t.to, t.from + d.flare, t.to - d.flare}
		l.Tails = append(l.Tails, w)
		l.Pins = append(l.Pins, Wedge{last.TipTo, w.TipFrom, last.BaseTo, w.BaseFrom})
		last = w
		return true
	})
	l.Pins = append(l.Pins, Wedge{last.TipTo, s.Width, last.BaseTo, s.Width})
	l.measureTools(s)
	return l
}

func (l *DovetailLayout) measureTools(s DovetailSpec) {
	l.ChiselFits, l.KerfFits = true, true
	full := l.Pins[1 : len(l.Pins)-1]
	if len(full) == 0 {
		return
	}
	var tails, pins measure.Length
	l.Narrowest = full[0].Tip()
	for _, p := range full {
		l.Narrowest = min(l.Narrowest, p.Tip())
		l.ChiselFits = l.ChiselFits && p.Base() >= s.Chisel
		l.KerfFits = l.KerfFits && p.Tip() >= s.Kerf
		pins += p.Tip() + p.Base()
	}
	for _, t := range l.Tails {
		tails += t.Tip() + t.Base()
	}
	l.Ratio = float64(tails) * float64(len(full)) / (float64(pins) * float64(len(l.Tails)))
}
