package joinery

import "casewright/internal/measure"

const endPinSource = fww07 + "; least width: " + practice

func (d *divider) noRoom() Problem {
	mend := "ask for fewer tails, narrower half pins or a finer slope"
	if len(d.rabbets) > 0 {
		mend += ", or stop the rabbet before the corner"
	}
	return stop("dovetail.no-room", "there is no room for the tails asked for",
		mend, length("width free of rabbets", max(d.free.width(), 0), d.s.Width, geometry))
}

// judge lists what stands against a layout that can be laid out.
func (l *DovetailLayout) judge(s DovetailSpec) []Problem {
	out := l.judgePins(s)
	out = append(out, l.judgeTails()...)
	return append(out, l.judgeStock(s)...)
}

func (l *DovetailLayout) judgePins(s DovetailSpec) []Problem {
	var out []Problem
	if !l.KerfFits {
		out = append(out, stop("dovetail.kerf", "the saw is thicker than the gap between two tails",
			"ask for fewer tails or a smaller ratio of tail to pin",
			length("narrowest pin", l.Narrowest, s.Kerf, "kerf of the dovetail saw, from memory where not set")))
	}
	if !l.ChiselFits {
		base := l.Narrowest + 2*l.Flare
		out = append(out, warn("dovetail.chisel", "the narrowest chisel does not enter the sockets between the tails",
			"ask for fewer tails or a smaller ratio of tail to pin, or saw the waste out",
			length("socket at its wide end", base, s.Chisel, "narrowest chisel in the shop, "+practice+" where not set")))
	}
	return append(out, l.judgeEnds(s)...)
}

// judgeEnds looks at the half pins: a thin one splits off.
func (l *DovetailLayout) judgeEnds(s DovetailSpec) []Problem {
	first, last := l.Pins[0], l.Pins[len(l.Pins)-1]
	thin := min(first.Base()-l.FreeFrom, last.Base()-(l.Width-l.FreeTo))
	if thin < s.MinEndPin {
		return []Problem{warn("dovetail.half-pin", "the half pin at the edge is thin and may split off",
			"make the half pins wider or take a tail less", length("half pin at the base", thin, s.MinEndPin, endPinSource))}
	}
	if l.Narrowest > 0 && thin < l.Narrowest+2*l.Flare {
		return []Problem{note("dovetail.half-pin-slim", "the half pins are slimmer than the full ones",
			"make them as wide as a full pin at the base, if looks allow",
			length("half pin at the base", thin, l.Narrowest+2*l.Flare, fww07))}
	}
	return nil
}

func (l *DovetailLayout) judgeTails() []Problem {
	var out []Problem
	var widest measure.Length
	for _, t := range l.Tails {
		widest = max(widest, t.Tip())
	}
	if widest > widestTail {
		out = append(out, warn("dovetail.wide-tail", "a tail is wider than tails should be",
			"ask for more tails", length("widest tail", widest, widestTail, noyes)))
	}
	if l.Ratio > mostRatio {
		out = append(out, note("dovetail.ratio", "the pins are very thin beside the tails",
			"ask for more tails or a smaller ratio, unless the look is meant", ratio("tail to pin", l.Ratio, mostRatio, noyes)))
	}
	switch n := steepness(l.Slope); {
	case n < coarsestSlope:
		out = append(out, warn("dovetail.coarse", "the slope is so coarse that the tails' corners are short grain",
			"take a slope of 1:5 or finer", ratio("slope 1 in", n, coarsestSlope, joyce)))
	case n > finestSlope:
		out = append(out, warn("dovetail.fine", "the slope is so fine that the tails hardly hold",
			"take a slope of 1:8 or coarser", ratio("slope 1 in", n, finestSlope, joyce)))
	}
	return out
}

func (l *DovetailLayout) judgeStock(s DovetailSpec) []Problem {
	var out []Problem
	if l.Lap > 0 && l.Lap < thinnestLap {
		out = append(out, warn("dovetail.thin-lap", "the lap is thin and breaks easily",
			"leave a thicker lap", length("lap", l.Lap, thinnestLap, fww07+", page 84")))
	}
	if 2*l.TailLength < l.PinStock {
		out = append(out, warn("dovetail.short-tail", "the tails are shorter than half the board they enter",
			"leave a thinner lap", length("tail length", l.TailLength, l.PinStock/2, fww07+", page 79")))
	}
	for _, r := range l.Runs {
		if left := l.PinStock - r.PinDepth; r.PinDepth > 0 && r.atEdge(l.Width) && left < thinnestLap {
			out = append(out, warn("dovetail.rabbet-lip", "a rabbet leaves the end pin too thin",
				"make the rabbet shallower", length("end pin outside the rabbet", left, thinnestLap, fww07+", page 84, for a lap")))
		}
		if r.TailDepth > 0 && !r.atEdge(l.Width) && l.Through() {
			out = append(out, note("dovetail.groove-shows", "a groove runs out through the end of a tail and shows outside",
				"stop the groove before the joint, or fill its end", nil))
		}
	}
	return out
}

// runProblems tells which rabbets and grooves cut through pins or tails.
func (l *DovetailLayout) runProblems() []Problem {
	var out []Problem
	mend := "no other layout of this corner hides it: move it, narrow it or stop it before the corner"
	if l.Alternative != nil {
		mend = "use the other layout, or stop it before the corner"
	}
	for _, r := range l.Runs {
		switch {
		case r.TailDepth == 0 && r.PinDepth == 0:
		case r.atEdge(l.Width) && l.rabbetCutsTail(r):
			out = append(out, warn("dovetail.rabbet-tail", "a rabbet cuts through a tail, so the joint shows a hole", mend,
				length("rabbet reaches to", r.innerEdge(), l.nearestTip(r), practice)))
		case !r.atEdge(l.Width) && !l.hidden(r):
			out = append(out, warn("dovetail.groove-pin", "a groove runs through a pin, so its end shows", mend,
				[]Figure{{Name: "groove from", Value: r.From, Source: noyes + "; " + joyce}, {Name: "groove to", Value: r.To, Source: noyes + "; " + joyce}}))
		}
	}
	return out
}

func (l *DovetailLayout) hidden(r Run) bool {
	for _, t := range l.Tails {
		if r.span().within(span{t.BaseFrom, t.BaseTo}) {
			return true
		}
	}
	return false
}

func (l *DovetailLayout) rabbetCutsTail(r Run) bool {
	for _, t := range l.Tails {
		if r.span().meets(span{t.TipFrom, t.TipTo}) {
			return true
		}
	}
	return false
}

// innerEdge is the border of a rabbet that looks into the corner.
func (r Run) innerEdge() measure.Length {
	if r.From <= 0 {
		return r.To
	}
	return r.From
}

// nearestTip is the edge of the outermost tail on the rabbet's side.
func (l *DovetailLayout) nearestTip(r Run) measure.Length {
	if r.From <= 0 {
		return l.Tails[0].TipFrom
	}
	return l.Tails[len(l.Tails)-1].TipTo
}
