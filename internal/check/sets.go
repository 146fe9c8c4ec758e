package check

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

// sets looks for matched sets whose members cannot come out of one board.
func (r *run) sets() {
	for _, s := range r.p.Sets {
		woods := commonest(s.Parts, func(p *piece.Part) *piece.Wood { return p.Wood })
		thick := commonest(s.Parts, func(p *piece.Part) measure.Length { return p.Thickness.Length() })
		for _, p := range s.Parts {
			switch t := p.Thickness.Length(); {
			case p.Wood != woods:
				r.unmatched(s, p, "of another wood than the rest, so the grain cannot run on",
					p.Wood.Name, woods.Name, "Give it the wood of the rest")
			case s.Kind != "ring" && t != thick:
				r.unmatched(s, p, "of another thickness than the rest, so they cannot be planed as one board",
					r.fmt(t)+" thick", r.fmt(thick), "Give it the thickness of the rest, or saw all from one board at the greater and plane the thinner down from behind")
			}
		}
	}
}

// commonest is what most of the parts have; of equal numbers, what comes first.
func commonest[T comparable](parts []*piece.Part, of func(*piece.Part) T) (best T) {
	counts := map[T]int{}
	for _, p := range parts {
		counts[of(p)]++
	}
	most := 0
	for _, p := range parts {
		if v := of(p); counts[v] > most {
			best, most = v, counts[v]
		}
	}
	return best
}

func (r *run) unmatched(s *piece.Set, p *piece.Part, what, found, limit, ways string) {
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "set.match", Severity: diag.Warn, Subject: orSpan(s.At, p.At),
		Summary: "{who} of matched set “" + s.Name + "” would be " + what, Figure: found, Limit: limit, Source: "a " + s.Kind + " is one board, in order",
		Detail: ways + ", or, if it is not meant to be in the set, name the set's parts one by one in the text."},
		parts: []*piece.Part{p}, matter: s.Name + what})
}
