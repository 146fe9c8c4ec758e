package check

import (
	"math"
	"strconv"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/piece"
)

// saidElsewhere are problems of joints that a rule here tells with more to go
// on: what the wood is, what lies opposite.
var saidElsewhere = map[string]bool{
	"boards.dry": true, "boards.damp": true, // panels
	"dado.deep": true, "groove.deep": true, "rabbet.deep": true, "dado.back-to-back": true, // thinStock
}

// joints gives what the joints say about themselves a place in the piece.
func (r *run) joints() {
	for _, j := range r.p.Joints {
		if j.A == nil {
			continue
		}
		for _, p := range j.Problems {
			if saidElsewhere[p.Code] || meetsInLeg(p, j) || r.choseItself(p, j) {
				continue
			}
			r.joint(j, p)
		}
	}
}

// meetsInLeg reports tenons kept short on purpose: two rails meet in a leg.
// Two thirds of a stile, which the joint asks for, is a figure for door frames.
func meetsInLeg(p joinery.Problem, j *piece.Joint) bool {
	return p.Code == "tenon.short" && j.A.Assembly.Kind == piece.StandAssembly
}

// choseItself reports a half pin that the layout made slimmer by itself, to fill
// the width or to hide a groove: nobody asked, so nobody need be told.
func (r *run) choseItself(p joinery.Problem, j *piece.Joint) bool {
	return p.Code == "dovetail.half-pin-slim" && !r.attributes(j).halfPin.Given()
}

func (r *run) joint(j *piece.Joint, p joinery.Problem) {
	d := diag.Diagnostic{Code: p.Code, Severity: p.Grade, Subject: r.asked(j, p), Summary: "{who}: " + p.Summary}
	var found, limits, sources []string
	var worse int64
	for _, f := range p.Figures {
		value, limit := r.figures(f)
		found = append(found, f.Name+" "+value)
		if limit != "" {
			limits = append(limits, limit)
		}
		sources = appendNew(sources, f.Source)
		worse = max(worse, gap(f))
	}
	d.Figure, d.Limit, d.Source = strings.Join(found, ", "), strings.Join(limits, ", "), strings.Join(sources, "; ")
	d.Detail = sentence(p.Mend)
	if p.Grade < diag.Stop && !strings.Contains(p.Mend, " or ") {
		d.Detail += " Or let it stand: accept it with a reason."
	}
	if alternative(p.Code) {
		d.Limit = "inside one tail, or a rabbet inside the end pin"
		r.offer(&d, j)
	}
	f := finding{Diagnostic: d, one: j.Kind + " of " + j.Name, many: plural(j.Kind) + " of " + j.A.Assembly.Name, worse: worse}
	f.matter = j.A.Assembly.Path + j.Kind + p.Summary
	if j.A.Assembly.Opening != nil { // like drawers and doors are one matter
		f.many, f.matter = plural(j.Kind)+" in "+plural(string(j.A.Assembly.Kind)), string(j.A.Assembly.Kind)+j.Kind+p.Summary
	}
	for _, part := range [...]*piece.Part{j.A, j.B} {
		if part != nil {
			f.parts = append(f.parts, part)
		}
	}
	r.add(f)
}

// figures prints a value and what it was held against. A limit of nothing is
// none.
func (r *run) figures(f joinery.Figure) (value, limit string) {
	if f.IsRatio {
		return decimal(f.Ratio), decimal(f.RatioLimit)
	}
	if f.Limit == 0 {
		return r.fmt(f.Value), ""
	}
	return r.fmt(f.Value), r.fmt(f.Limit)
}

// decimal prints a ratio to two decimals, without zeros at the end.
func decimal(f float64) string { return strconv.FormatFloat(math.Round(f*100)/100, 'f', -1, 64) }

// gap tells how far a figure is from its limit, to find the worst of several.
func gap(f joinery.Figure) int64 {
	if f.IsRatio {
		return int64(1e6 * max(f.Ratio-f.RatioLimit, f.RatioLimit-f.Ratio))
	}
	return int64((f.Value - f.Limit).Abs())
}

func appendNew(list []string, s string) []string {
	for _, o := range list {
		if o == s {
			return list
		}
	}
	if s == "" {
		return list
	}
	return append(list, s)
}

// sentence makes a sentence of words that stand alone.
func sentence(words string) string {
	if words == "" {
		return ""
	}
	return strings.ToUpper(words[:1]) + words[1:] + "."
}

// plural is the word for several joints or assemblies of a kind.
func plural(noun string) string {
	if before, ok := strings.CutSuffix(noun, "mortise and tenon"); ok {
		return before + "mortises and tenons"
	}
	return noun + "s"
}

// asked is the text that asked for what the problem is about, where it can be
// told: the number in question, else the block.
func (r *run) asked(j *piece.Joint, p joinery.Problem) diag.Span {
	a := r.attributes(j)
	switch p.Code {
	case "dovetail.coarse", "dovetail.fine", "dovetail.slope":
		return orSpan(a.slope, a.at, j.At, j.A.At)
	case "dovetail.half-pin", "dovetail.half-pin-slim":
		return orSpan(a.halfPin.At(), a.tails.At, j.At, j.A.At)
	case "dovetail.chisel", "dovetail.kerf", "dovetail.no-room", "dovetail.wide-tail", "dovetail.ratio", "dovetail.tails":
		return orSpan(a.tails.At, j.At, j.A.At)
	case "dovetail.thin-lap", "dovetail.short-tail", "dovetail.lap":
		return orSpan(a.lap.At(), j.At, j.A.At)
	}
	return orSpan(j.At, j.A.At)
}
