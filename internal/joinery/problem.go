package joinery

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
)

// Problem is something that stands against a joint as it was asked for. It has
// no place in the text: the caller knows which words asked for the joint.
type Problem struct {
	Code    string        // stable, e.g. "dovetail.chisel"
	Grade   diag.Severity // Stop: cannot be cut; Warn: weak or ugly; Note: worth knowing
	Summary string        // what is wrong, in the maker's words, without figures
	Mend    string        // what would mend it
	Figures []Figure      // what was found and what it was held against; may be empty
}

// Figure is a value held against a limit. Either the lengths or the ratios are
// set; IsRatio says which, because both may rightly be zero.
type Figure struct {
	Name         string         // what was measured
	Value, Limit measure.Length // found and allowed
	IsRatio      bool
	Ratio        float64 // found, where the figure is a plain ratio such as n in 1:n
	RatioLimit   float64
	Source       string // who sets the limit: title, edition; or what it follows from
}

// Sources cited by more than one joint.
const (
	practice = "common practice, no source"
	geometry = "geometry of the joint"
	noyes    = "William Noyes, Handwork in Wood, Peoria 1910, chapter 7"
	joyce    = "The Technique of Furniture Making (Ernest Joyce, author from memory)"
	fww07    = "Fine Woodworking, Building Furniture, 2007"
)

// largest is the greatest size a joint is worked out for. It leaves room for
// every sum below to stay far inside int64.
const largest = 1000 * measure.Metre

func length(name string, value, limit measure.Length, source string) []Figure {
	return []Figure{{Name: name, Value: value, Limit: limit, Source: source}}
}

func ratio(name string, value, limit float64, source string) []Figure {
	return []Figure{{Name: name, IsRatio: true, Ratio: value, RatioLimit: limit, Source: source}}
}

func stop(code, summary, mend string, figures []Figure) Problem {
	return Problem{code, diag.Stop, summary, mend, figures}
}

func warn(code, summary, mend string, figures []Figure) Problem {
	return Problem{code, diag.Warn, summary, mend, figures}
}

func note(code, summary, mend string, figures []Figure) Problem {
	return Problem{code, diag.Note, summary, mend, figures}
}

// AnyStop reports whether any of the problems means that the joint cannot be cut.
func AnyStop(problems []Problem) bool {
	for _, p := range problems {
		if p.Grade >= diag.Stop {
			return true
		}
	}
	return false
}

func noPart(code string, b Box) []Problem {
	return []Problem{stop(code+".part", "a part of this joint has no size",
		"give the part a length, a width and a thickness above zero and below a kilometre",
		length("smallest size", min(b.L, b.W, b.T), 0, geometry))}
}

// snapDown is the largest multiple of step that is not above l, for l ≥ 0.
func snapDown(l, step measure.Length) measure.Length { return l - l%step }

// snapUp is the smallest multiple of step that is not below l, for l ≥ 0.
func snapUp(l, step measure.Length) measure.Length { return snapDown(l+step-1, step) }

// sixteenth is the step of sizes that are set with a chisel or a cutter.
const sixteenth = measure.Inch / 16
