package design

import (
	"slices"
	"strings"

	"casewright/internal/diag"
)

// ref is a name in the text that must have a block elsewhere.
type ref struct {
	attribute string
	name      Text
	kinds     []string
}

// namesOf are the names of all blocks of a kind.
func (r *reader) namesOf(kind string) (names []string) {
	s := r.spec
	switch kind {
	case "curve":
		names = each(s.Curves, func(c *Curve) string { return c.Name })
	case "case":
		names = each(s.Cases, func(c *Case) string { return c.Name })
	case "stand":
		names = each(s.Stands, func(c *Stand) string { return c.Name })
	case "hardware":
		names = each(s.Hardware, func(h *Hardware) string { return h.Name })
	case "top":
		for _, t := range s.Slabs {
			if !t.Under {
				names = append(names, t.Name)
			}
		}
	}
	return names
}

func each[T any](all []*T, name func(*T) string) []string {
	out := make([]string, len(all))
	for i, t := range all {
		out[i] = name(t)
	}
	return out
}

// resolve sees that every name used has its block.
func (r *reader) resolve() {
	known := map[string][]string{}
	for _, ref := range r.refs {
		var names []string
		for _, kind := range ref.kinds {
			if _, done := known[kind]; !done {
				known[kind] = r.namesOf(kind)
			}
			names = append(names, known[kind]...)
		}
		if slices.Contains(names, ref.name.Value) || r.lost(inQuotes(ref.name.Value)) {
			continue
		}
		kind := listed(ref.kinds, "or")
		d := diag.Diagnostic{Code: "E219", Subject: ref.name.At, Summary: "there is no " + kind + " " + quote(clipped(ref.name.Value)),
			Detail: "Add a block " + ref.kinds[0] + " " + inQuotes(ref.name.Value) + " { … }, or use the name of one there is."}
		didYouMean(&d, ref.name.Value, names, inQuotes)
		r.diags.add(d)
	}
}

// circularStanding reports cases, stands and tops that stand on each other.
// The chain is followed from each case through what it names; a stand is
// itself carried by nothing.
func (r *reader) circularStanding() {
	below := map[string]Text{}
	for _, c := range r.spec.Cases {
		if c.On.Given() {
			below["case "+c.Name] = Text{r.keyOf(c.On.Value), c.On.At}
		}
	}
	for _, t := range r.spec.Slabs {
		if !t.Under && t.Of.Given() {
			below["top "+t.Name] = Text{"case " + t.Of.Value, t.Of.At}
		}
	}
	told := map[string]bool{}
	for _, c := range r.spec.Cases {
		r.follow("case "+c.Name, below, told)
	}
}

// keyOf tells which kind of thing a case stands on: a case of that name, else
// a top, else a stand.
func (r *reader) keyOf(name string) string {
	for _, kind := range []string{"case", "top", "stand"} {
		if slices.Contains(r.namesOf(kind), name) {
			return kind + " " + name
		}
	}
	return ""
}

func (r *reader) follow(start string, below map[string]Text, told map[string]bool) {
	var chain []string
	at := start
	for at != "" && !told[at] && !slices.Contains(chain, at) {
		chain = append(chain, at)
		at = below[at].Value
	}
	from := slices.Index(chain, at)
	if at != "" && from >= 0 {
		d := diag.Diagnostic{Code: "E220", Subject: below[at].At, Detail: "One of them must stand on the floor."}
		words := append(slices.Clone(chain[from:]), at)
		d.Summary = clippedTo(strings.Join(words, " on "), 200) + ": they stand on each other in a circle"
		for _, k := range chain[from+1:] {
			if len(d.Related) < 10 {
				d.Related = append(d.Related, diag.Related{Span: below[k].At, Message: k + " stands on this"})
			}
		}
		r.diags.add(d)
	}
	for _, k := range chain {
		told[k] = true
	}
}

// checkStand sees that a stand and the case it carries say the same, and that
// legs come in pairs.
func (r *reader) checkStand(s *Stand, n node) {
	if s.Legs.Set && int(s.Legs.Value)%2 != 0 {
		r.diags.add(diag.Diagnostic{Code: "E217", Subject: s.Legs.At, Summary: "legs come in pairs, front and back",
			Detail: "Make it an even number."})
	}
}

// checkCase sees what can be seen of a case without its piece.
func (r *reader) checkCase(c *caseDraft, n node) {
	if c.Cleat != nil && !c.Hung.Value {
		r.diags.add(diag.Diagnostic{Code: "E224", Subject: c.Cleat.At, Summary: n.where + " has a cleat and does not hang",
			Detail: "Write hung = true in the case, or take the cleat away."})
	}
	if c.Hung.Value && c.On.Given() {
		r.diags.add(diag.Diagnostic{Code: "E224", Subject: c.On.At, Summary: n.where + " hangs on a wall and stands on something",
			Detail:  "Take one of the two away.",
			Related: []diag.Related{{Span: c.Hung.At, Message: "it hangs"}}})
	}
}

func (r *reader) checkSeason(s *Season, n node) {
	if s.Dry > s.Damp {
		r.diags.add(diag.Diagnostic{Code: "E224", Subject: n.head(), Summary: "the dry season is damper than the damp one",
			Detail: "Exchange dry and damp."})
	}
}

// standsAgree sees that a case and the stand under it name each other.
func (r *reader) standsAgree() {
	for _, s := range r.spec.Stands {
		for _, c := range r.spec.Cases {
			if r.keyOf(c.On.Value) != "stand "+s.Name || s.Under.Value == c.Name || !s.Under.Given() {
				continue
			}
			r.diags.add(diag.Diagnostic{Code: "E224", Subject: c.On.At, Summary: "case " + quote(c.Name) + " stands on " + quote(s.Name) + ", which is under " + quote(s.Under.Value),
				Detail:  "Make the two say the same.",
				Related: []diag.Related{{Span: s.Under.At, Message: "the stand carries this one"}}})
		}
	}
}

func clippedTo(s string, most int) string {
	if len(s) <= most {
		return s
	}
	return strings.ToValidUTF8(s[:most], "") + "…"
}
