package piece

import (
	"fmt"
	"slices"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// mostParts bounds a piece so that a slip such as 100 000 shelves is a message
// and not an hour of work.
const mostParts = 20_000

// Build derives the piece from its design, with everything the design has
// wrong that only shows once real sizes are known. The piece holds whatever
// could be built.
func Build(spec *design.Spec) (*Piece, diag.List) {
	b := &builder{
		spec:   spec,
		p:      &Piece{Spec: spec, shown: map[why.Size]measure.Length{}, byKey: map[string]*Part{}},
		woods:  map[string]*Wood{},
		curves: map[string]*Curve{},
		cases:  map[string]*caseWork{},
		behind: map[*Part]*Part{},

		usedMeasured: map[*design.Measured]bool{},
	}
	b.air()
	b.declareWoods()
	b.declareCurves()
	for _, c := range b.standingOrder() {
		b.buildCase(c)
	}
	b.buildStands()
	b.buildSlabs()
	b.shapeBows()
	b.nameFills()
	b.mark()
	b.countHardware()
	b.matchSets()
	b.takeMeasured()
	b.blanks()
	b.settleShown()
	return b.p, b.diags.Sort()
}

type builder struct {
	spec   *design.Spec
	p      *Piece
	diags  diag.List
	woods  map[string]*Wood
	curves map[string]*Curve
	cases  map[string]*caseWork
	behind map[*Part]*Part // the back rail of each front rail
	full   bool            // mostParts was passed and said once

	usedMeasured map[*design.Measured]bool // openings taken; what is left are parts
}

func (b *builder) report(d diag.Diagnostic) { b.diags = append(b.diags, d) }

// fmt prints a length the way this commission does, for messages.
func (b *builder) fmt(l measure.Length) string { return b.spec.Commission.GapStyle().FormatUnit(l) }

// literal writes a length as the design language takes it.
func (b *builder) literal(l measure.Length) string {
	style := b.spec.Commission.GapStyle()
	if s, exact := style.Exact(l); exact {
		return s
	}
	return measure.Decimal(l, style.Unit, 5)
}

func quote(s string) string { return "“" + s + "”" }

// tooMany reports, once, that the piece has grown beyond all reason.
func (b *builder) tooMany(at diag.Span) bool {
	if len(b.p.Parts) < mostParts {
		return false
	}
	if !b.full {
		b.full = true
		b.report(diag.Diagnostic{Code: "E301", Severity: diag.Error, Subject: at,
			Summary: fmt.Sprintf("the piece has more than %d parts", mostParts),
			Detail:  "No single piece needs that many. Look for a count with a digit too many here."})
	}
	return true
}

// assembly opens a new assembly. Letters are given out at the end.
func (b *builder) assembly(kind AssemblyKind, name, path string, at diag.Span) *Assembly {
	a := &Assembly{Kind: kind, Name: name, Path: path, At: at}
	b.p.Assemblies = append(b.p.Assemblies, a)
	return a
}

// add puts a part into its assembly and checks that its sizes are sizes.
func (b *builder) add(a *Assembly, p *Part) *Part {
	p.Assembly, p.Standing = a, Planned
	if p.At.IsZero() {
		p.At = a.At
	}
	a.Parts = append(a.Parts, p)
	b.p.Parts = append(b.p.Parts, p)
	b.checkSizes(p)
	return p
}

// thinnest is the least size a part of wood may have in any direction.
const thinnest = measure.Millimetre

func (b *builder) checkSizes(p *Part) {
	for _, s := range []struct {
		word string
		size why.Size
	}{{"long", p.Length}, {"wide", p.Width}, {"thick", p.Thickness}} {
		if s.size.Length() >= thinnest {
			continue
		}
		at := s.size.At()
		if at.IsZero() {
			at = p.At
		}
		b.report(diag.Diagnostic{Code: "E312", Severity: diag.Error, Subject: at, Where: p.Path,
			Summary: fmt.Sprintf("the %s of %s would be %s %s", p.Name, p.Assembly.Name, b.fmt(s.size.Length()), s.word),
			Detail:  "What surrounds it leaves no room. It comes from " + s.size.Sum(b.fmt) + ". Make the case larger or its boards thinner."})
	}
}

// wood finds a wood by the name the text uses: a wood block, else a species
// with the usual cut.
func (b *builder) wood(names ...design.Text) *Wood {
	for _, name := range names {
		if name.Given() {
			return b.woodNamed(name)
		}
	}
	return b.woodNamed(b.usualWood())
}

// usualWood is the first wood the text declares, for texts that name a wood
// only once.
func (b *builder) usualWood() design.Text {
	if len(b.spec.Woods) > 0 {
		return design.Text{Value: b.spec.Woods[0].Name, At: b.spec.Woods[0].At}
	}
	for _, c := range b.spec.Cases {
		if c.Wood.Given() {
			return c.Wood
		}
	}
	return design.Text{Value: "black cherry"}
}

func (b *builder) woodNamed(name design.Text) *Wood {
	if w, ok := b.woods[name.Value]; ok {
		return w
	}
	w := b.resolveWood(&design.Wood{Name: name.Value, Species: name, At: name.At})
	b.woods[name.Value] = w
	return w
}

func (b *builder) declareWoods() {
	for _, w := range b.spec.Woods {
		if !w.Species.Given() {
			w = &design.Wood{Name: w.Name, Species: design.Text{Value: w.Name, At: w.At}, Cut: w.Cut, Moisture: w.Moisture, Color: w.Color, At: w.At}
		}
		b.woods[w.Name] = b.resolveWood(w)
	}
}

// standingOrder is the cases from the floor up, so that what carries a case is
// placed before it. Circles are reported by the language.
func (b *builder) standingOrder() []*design.Case {
	var out []*design.Case
	var visit func(c *design.Case, deep int)
	visit = func(c *design.Case, deep int) {
		if slices.Contains(out, c) || deep > len(b.spec.Cases) {
			return
		}
		if below := b.caseBelow(c); below != nil && below != c {
			visit(below, deep+1)
		}
		if !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	for _, c := range b.spec.Cases {
		visit(c, 0)
	}
	return out
}

// caseBelow is the case that carries c, directly or through a top.
func (b *builder) caseBelow(c *design.Case) *design.Case {
	on := c.On.Value
	for _, s := range b.spec.Slabs {
		if s.Name == on && on != "" {
			on = s.Of.Value
		}
	}
	for _, o := range b.spec.Cases {
		if o.Name == on {
			return o
		}
	}
	return nil
}

// air works out what moisture the wood comes to in the shop and in the season.
func (b *builder) air() {
	s, shop := b.spec.Season, b.spec.Shop
	b.p.Air = Air{
		Shop: b.emc(shop.Humidity, shop.Temperature, shop.At),
		Dry:  b.emc(s.Dry, s.Temperature, s.At),
		Damp: b.emc(s.Damp, s.Temperature, s.At),
	}
}

func (b *builder) emc(h measure.Humidity, t measure.Temperature, at diag.Span) measure.MoistureContent {
	mc, err := wood.EMC(h, t)
	if err != nil {
		b.report(diag.Diagnostic{Code: "E320", Severity: diag.Error, Subject: at,
			Summary: "the air given here is outside what the moisture formula covers", Detail: err.Error()})
		return 8
	}
	return mc
}
