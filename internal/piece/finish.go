package piece

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/why"
)

// letters are what assemblies are marked with; I and O read as 1 and 0.
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"

func letter(i int) string {
	if i < len(letters) {
		return string(letters[i])
	}
	return letter(i/len(letters)-1) + string(letters[i%len(letters)])
}

// mark gives every assembly its letter and every part its mark, and puts the
// parts in that order.
func (b *builder) mark() {
	b.p.Parts = b.p.Parts[:0]
	kept := b.p.Assemblies[:0]
	for _, a := range b.p.Assemblies {
		if len(a.Parts) == 0 {
			continue
		}
		a.Letter = letter(len(kept))
		kept = append(kept, a)
		for i, p := range a.Parts {
			p.Mark = a.Letter + itoa(i+1)
			b.p.Parts = append(b.p.Parts, p)
			b.p.byKey[p.Mark] = p
			b.p.byKey[p.Path] = p
		}
	}
	b.p.Assemblies = kept
}

// matchSets finds the parts of each matched set the text asks for.
func (b *builder) matchSets() {
	for _, s := range b.p.Sets {
		s.Name = s.of.Name + " panel"
	}
	for _, m := range b.spec.Matches {
		s := &Set{Name: m.Name, Kind: m.Kind.Value, Loss: m.Loss, At: m.At}
		for _, pattern := range m.Parts {
			found := b.findParts(pattern)
			for _, p := range found {
				if p.Set == nil {
					p.Set = s
					s.Parts = append(s.Parts, p)
				} else if p.Set != s {
					b.twoSets(p, s, pattern)
				}
			}
		}
		if s.Kind == "ring" {
			s.Parts = roundTheCase(s.Parts)
		}
		s.Total = setTotal(s)
		if len(s.Parts) > 0 {
			b.p.Sets = append(b.p.Sets, s)
		}
	}
}

// roundTheCase puts the members of a ring in the order the grain runs: up the
// left side, across the top and down again, as seen from the front.
func roundTheCase(parts []*Part) []*Part {
	var x, z float64
	middle := func(p *Part) (float64, float64) {
		lo, hi := p.Corners()
		return (lo.X + hi.X).Millimetres() / 2, (lo.Z + hi.Z).Millimetres() / 2
	}
	for _, p := range parts {
		px, pz := middle(p)
		x, z = x+px/float64(len(parts)), z+pz/float64(len(parts))
	}
	turn := func(p *Part) float64 { // clockwise from straight left
		px, pz := middle(p)
		a := math.Atan2(pz-z, x-px)
		if a < -math.Pi/4 { // what lies below comes last
			a += 2 * math.Pi
		}
		return a
	}
	return slices.SortedStableFunc(slices.Values(parts), func(p, q *Part) int { return cmp.Compare(turn(p), turn(q)) })
}

func (b *builder) twoSets(p *Part, s *Set, pattern design.Text) {
	b.report(diag.Diagnostic{Code: "E341", Severity: diag.Error, Subject: pattern.At,
		Summary: p.Path + " would be in two matched sets, " + quote(p.Set.Name) + " and " + quote(s.Name),
		Detail:  "A part comes out of one place in one board. Leave it in one of the sets.",
		Related: []diag.Related{{Span: p.Set.At, Message: "the other set"}}})
}

// findParts is every part whose path matches; * stands for any one name.
func (b *builder) findParts(pattern design.Text) []*Part {
	var out []*Part
	want := strings.Split(pattern.Value, ".")
	for _, p := range b.p.Parts {
		if pathMatches(want, strings.Split(p.Path, ".")) {
			out = append(out, p)
		}
	}
	if len(out) == 0 && !b.diags.Has(diag.Error) { // else it may merely not have been built
		b.report(diag.Diagnostic{Code: "E340", Severity: diag.Error, Subject: pattern.At,
			Summary: "no part is called " + quote(pattern.Value),
			Detail:  "Paths run from the case inwards, as in " + quote(b.closestPath(pattern.Value)) + "; * stands for any one name. “casewright parts” lists them all.",
			Edits:   []diag.Edit{{Span: pattern.At, Text: `"` + b.closestPath(pattern.Value) + `"`, Says: "did you mean " + quote(b.closestPath(pattern.Value)) + "?"}}})
	}
	return out
}

func pathMatches(want, path []string) bool {
	if len(want) != len(path) {
		return false
	}
	for i := range want {
		if want[i] != "*" && want[i] != path[i] {
			return false
		}
	}
	return true
}

// setTotal is the length of figure a set uses up: end to end for rings and for
// runs of boards lying across, side by side for leaves.
func setTotal(s *Set) why.Size {
	terms := make([]why.Term, 0, len(s.Parts)+1)
	for _, p := range s.Parts {
		size := p.Length
		if s.Kind == "book" || s.Kind == "slip" {
			size = p.Width
		}
		terms = append(terms, why.Plus(size))
	}
	if n := int64(len(s.Parts) - 1); n > 0 {
		terms = append(terms, why.Times(n, s.Loss))
	}
	return why.Sum("figure the set needs", terms...)
}

// takeMeasured lets what was read off a part override what was derived.
func (b *builder) takeMeasured() {
	for _, m := range b.spec.Measured {
		p := b.p.byKey[m.Path.Value]
		if p == nil {
			if !b.usedMeasured[m] && !b.diags.Has(diag.Error) {
				b.report(diag.Diagnostic{Code: "E342", Severity: diag.Error, Subject: m.Path.At,
					Summary: "nothing measured is called " + quote(m.Path.Value),
					Detail:  "Give the path of an opening or a part, as in " + quote(b.closestPath(m.Path.Value)) + "."})
			}
			continue
		}
		p.Length, p.Width, p.Thickness = read(m.Length).Or(p.Length), read(m.Width).Or(p.Width), read(m.Thickness).Or(p.Thickness)
		p.Standing, p.WaitsFor = Measured, nil
	}
}

func (b *builder) used(m *design.Measured) { b.usedMeasured[m] = true }

// countHardware counts bought hardware by where it is cited.
func (b *builder) countHardware() {
	for _, h := range b.spec.Hardware {
		line := &HardwareLine{Spec: h}
		each := 1
		if h.Count.Set {
			each = int(h.Count.Value)
		}
		for _, o := range b.p.Openings {
			n := citations(o.Fill, h.Name) * each
			if n > 0 {
				line.Count += n
				line.Where = append(line.Where, o.Path)
			}
		}
		if line.Count == 0 && len(line.Where) == 0 { // loose: for the piece as a whole
			line.Count = each
			if h.Opening.Given() {
				line.Where = []string{h.Opening.Value}
			}
		}
		b.p.Hardware = append(b.p.Hardware, line)
	}
}

func citations(f design.Fill, name string) int {
	n := 0
	if f.Drawer != nil && f.Drawer.Pull.Value == name {
		n++
	}
	if d := f.Door; d != nil {
		leaves := 1
		if d.Pair.Value {
			leaves = 2
		}
		for _, t := range []design.Text{d.Hinges, d.Pull, d.Catch} {
			if t.Value == name {
				n += leaves
			}
		}
	}
	return n
}

// closestPath is the part path or opening nearest to a mistyped one.
func (b *builder) closestPath(name string) string {
	best, least := "", 1<<30
	for _, p := range b.p.Parts {
		if d := distance(name, p.Path); d < least {
			best, least = p.Path, d
		}
	}
	return best
}
