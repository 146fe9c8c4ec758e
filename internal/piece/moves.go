package piece

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"

	"github.com/agext/levenshtein"
)

// resolveWood turns a wood of the text into a species with its cut and the
// moisture it has today.
func (b *builder) resolveWood(s *design.Wood) *Wood {
	w := &Wood{Name: s.Name, Moisture: b.p.Air.Shop, Color: s.Color.Value, At: s.At}
	if s.Moisture.Set {
		w.Moisture = measure.MoistureContent(s.Moisture.Value)
	}
	if cut, err := wood.ParseCut(s.Cut.Value); s.Cut.Given() && err == nil {
		w.Cut = cut
	}
	if own := b.ownSpecies(s.Species.Value); own != nil {
		w.Species = own
		return w
	}
	sp, err := wood.Lookup(s.Species.Value)
	if err != nil {
		b.unknownWood(s, err)
		sp = fallbackSpecies()
	}
	w.Species = sp
	return w
}

func fallbackSpecies() *wood.Species {
	sp, err := wood.Lookup("cherry-black")
	if err != nil {
		panic("piece: the species table has no black cherry: " + err.Error())
	}
	return sp
}

func (b *builder) unknownWood(s *design.Wood, err error) {
	d := diag.Diagnostic{Code: "E321", Severity: diag.Error, Subject: orSpan(s.Species.At, s.At),
		Summary: "no wood called " + quote(s.Species.Value) + " is known",
		Detail:  "Check the name, or define your own: species \"" + s.Species.Value + "\" { radial = …  tangential = …  specific_gravity = … }."}
	var unknown *wood.UnknownError
	if errors.As(err, &unknown) {
		for _, c := range unknown.Close {
			d.Edits = append(d.Edits, diag.Edit{Span: d.Subject, Text: strconv.Quote(c), Says: "did you mean " + quote(c) + "?"})
		}
	}
	b.report(d)
}

// ownSpecies finds a species the text itself defines.
func (b *builder) ownSpecies(name string) *wood.Species {
	for _, o := range b.spec.Species {
		if o.Name != name {
			continue
		}
		sp, err := wood.Custom(customFrom(o, b.spec.Commission.Unit))
		if err != nil {
			b.report(diag.Diagnostic{Code: "E322", Severity: diag.Error, Subject: o.At,
				Summary: "the species " + quote(o.Name) + " cannot be as given", Detail: err.Error()})
			return nil
		}
		return sp
	}
	return nil
}

// growth is what a size of the wood gains from the shop to the damp season.
func (b *builder) growth(size measure.Length, w *Wood, d wood.Direction) wood.Move {
	return b.move(size, w, b.p.Air.Damp, d)
}

// move is how much a size changes from today's moisture to another. Wood that
// is wetter today than it will ever be again only shrinks.
func (b *builder) move(size measure.Length, w *Wood, to measure.MoistureContent, d wood.Direction) wood.Move {
	m, err := w.Species.Move(size, w.Moisture, to, w.Cut, d)
	if err != nil {
		b.report(diag.Diagnostic{Code: "E323", Severity: diag.Error, Subject: w.At, Summary: "no movement can be reckoned for " + quote(w.Name), Detail: err.Error()})
	}
	return m
}

// moveRule is a gap that must take up a movement: what the wood gains, never
// less than nothing, rounded up to what gaps are measured in.
func (b *builder) moveRule(name string, m wood.Move, of why.Size, w *Wood) why.Size {
	g := measure.Length(b.spec.Commission.Gaps)
	change := max(m.Change, 0)
	if g > 0 {
		change = (change + g - 1) / g * g
	}
	return why.Rule(name, change, m.Words()+", rounded up", m.Equation, of)
}

// fit records a place where a part must have room to move.
func (b *builder) fit(kind FitKind, p *Part, in string, room, tongue why.Size, across measure.Length, w *Wood) {
	b.p.Fits = append(b.p.Fits, &Fit{Kind: kind, Part: p, In: in, Room: room, Tongue: tongue, Across: across,
		Grow: b.growth(across, w, wood.Width), Shrink: b.move(across, w, b.p.Air.Dry, wood.Width)})
}

func tangent(a measure.Angle) float64 { return math.Tan(float64(a)) }

func itoa(i int) string { return strconv.Itoa(i) }

// underscore makes a name usable in a path.
func underscore(s string) string { return strings.ReplaceAll(strings.TrimSpace(s), " ", "_") }

func roundTo(l measure.Length, g measure.Graduation) measure.Length { return g.Round(l) }

// customFrom turns a species of the text into figures with units.
func customFrom(o *design.OwnSpecies, unit measure.Unit) wood.Own {
	stiff, strong := 1e6*float64(wood.PSI), float64(wood.PSI)
	if unit == measure.Millimetres {
		stiff, strong = 1e9, 1e6
	}
	return wood.Own{Name: o.Name, ShrinkRadial: wood.Shrinkage(o.Radial.Value), ShrinkTangential: wood.Shrinkage(o.Tangential.Value),
		Gravity12: wood.Gravity(o.SpecificGravity.Value), Stiffness: measure.Stress(o.Stiffness.Value * stiff),
		Rupture: measure.Stress(o.Strength.Value * strong), Source: o.Source.Value}
}

// distance is the edit distance between two names, for suggestions.
func distance(a, b string) int { return levenshtein.Distance(a, b, nil) }
