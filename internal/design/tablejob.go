package design

import (
	"casewright/internal/measure"
	"casewright/internal/why"
)

// The blocks about the job: what is made for whom, in what air, with what
// tools, out of what wood.

const (
	practice = "common practice, no source"
	manuals  = "the figure most planer manuals give; others give 7 or 14 in"
	memory   = "from memory: dovetail saws cut 0.02 to 0.03 in"
)

var commissionBlock = &block[Commission]{
	Block: Block{Type: "commission", ID: "commission", Label: MustHaveLabel, LabelDoc: "the name the job goes by in the shop",
		Doc: "The job. Every commission has exactly one.", Example: `commission "hall-cabinet" {
  title  = "Hall cabinet for keys and post"
  client = "a piano teacher"
  units  = "in"
  budget = 5000
}
`},
	begin: func(r *reader, c *Commission, n node) {
		c.Name, c.At = n.label().Value, n.head()
		r.commissions = append(r.commissions, n)
	},
	attrs: []attr[Commission]{
		textAt("title", "What the build book is called.", `"Hall cabinet"`, func(c *Commission) *Text { return &c.Title }, usual("the commission's name")),
		textAt("client", "Who it is for: a role, never a name.", `"a piano teacher"`, func(c *Commission) *Text { return &c.Client }),
		textAt("brief", "What was asked for.", `"Keys out of sight, letters upright."`, func(c *Commission) *Text { return &c.Brief }),
		choiceAt("units", "What bare numbers are in.", func(c *Commission) *Text { return new(Text) }, choices("in", "mm"), usual("in")),
		graduationAt("rule", "What the shop's rule is graduated in; sizes are printed to it.", "1/32", func(c *Commission) *measure.Graduation { return &c.Rule }, usual("1/32 in, or 0.5 mm")),
		graduationAt("gaps", "What gaps and clearances are printed to.", "1/64", func(c *Commission) *measure.Graduation { return &c.Gaps }, usual("1/64 in, or 0.1 mm")),
		moneyAt("budget", "The most it may cost, in the shop's currency.", "5000", func(c *Commission) *measure.Money { return &c.Budget }),
	},
}

// usualCommission is what holds before the text says otherwise.
func usualCommission(u measure.Unit) Commission {
	c := Commission{Unit: u, Rule: measure.ThirtySeconds, Gaps: measure.SixtyFourths}
	if u == measure.Millimetres {
		c.Rule, c.Gaps = measure.HalfMillimetre, measure.TenthMillimetre
	}
	return c
}

var seasonBlock = &block[Season]{
	Block: Block{Type: "season", ID: "season",
		Doc: "The air the piece will live in, from the driest to the dampest weeks of the year. Gaps, panels and backs are fitted to it.",
		Example: `commission "first" {}

season {
  dry         = 30
  damp        = 60
  temperature = 70
}
`},
	begin: func(r *reader, s *Season, n node) { s.Usual, s.At = false, n.head() },
	end:   (*reader).checkSeason,
	attrs: []attr[Season]{
		humidityAt("dry", "Relative humidity in the driest weeks, %.", "30", func(s *Season) *measure.Humidity { return &s.Dry }, usual("30 ("+practice+")")),
		humidityAt("damp", "Relative humidity in the dampest weeks, %.", "60", func(s *Season) *measure.Humidity { return &s.Damp }, usual("60 ("+practice+")")),
		temperatureAt("temperature", "Temperature of the room: °F in an inch commission, °C in a millimetre one; \"21 C\" in either.", "70",
			func(s *Season) *measure.Temperature { return &s.Temperature }, usual("70 °F, or 21 °C")),
	},
}

// roomTemperature is the usual temperature of rooms and shop: 70 °F or 21 °C,
// common practice, no source.
func roomTemperature(u measure.Unit) measure.Temperature {
	if u == measure.Millimetres {
		return 21
	}
	return measure.Temperature(38 * 5 / 9.0) // 70 °F
}

func usualSeason(u measure.Unit) Season {
	return Season{Dry: 30, Damp: 60, Temperature: roomTemperature(u), Usual: true}
}

var shopBlock = &block[Shop]{
	Block: Block{Type: "shop", ID: "shop", Doc: "The maker's own place and tools: the air the wood is worked in, and what the tools can and cannot do.",
		Example: `commission "first" {}

shop {
  humidity        = 38
  smallest_chisel = 1/8
  saw_kerf        = 1/8
  planer_width    = 12
}
`},
	begin: func(r *reader, s *Shop, n node) { s.At = n.head() },
	attrs: []attr[Shop]{
		humidityAt("humidity", "Relative humidity in the shop, %.", "40", func(s *Shop) *measure.Humidity { return &s.Humidity }, usual("40 ("+practice+")")),
		temperatureAt("temperature", "Temperature in the shop.", "70", func(s *Shop) *measure.Temperature { return &s.Temperature }, usual("70 °F, or 21 °C")),
		lengthAt("smallest_chisel", "The narrowest chisel: no pin socket is laid out narrower.", "1/8", func(s *Shop) *why.Size { return &s.SmallestChisel }, usual("1/8 in, or 3 mm ("+practice+")")),
		lengthAt("dovetail_kerf", "What the dovetail saw takes.", "\"0.6 mm\"", func(s *Shop) *why.Size { return &s.DovetailKerf }, usual("0.025 in, or 0.6 mm ("+memory+")")),
		lengthAt("saw_kerf", "What the table saw takes.", "1/8", func(s *Shop) *why.Size { return &s.SawKerf }, usual("1/8 in, or 3 mm ("+practice+")")),
		lengthAt("resaw_kerf", "What resawing takes, the faces cleaned up.", "1/16", func(s *Shop) *why.Size { return &s.ResawKerf }, usual("1/16 in, or 1.5 mm ("+practice+")")),
		lengthAt("resaw_height", "The tallest board that can be resawn.", "10", func(s *Shop) *why.Size { return &s.ResawHeight }, usual("6 in, or 150 mm ("+practice+")")),
		lengthAt("planer_width", "The widest board the planer takes.", "12", func(s *Shop) *why.Size { return &s.PlanerWidth }, usual("12 in, or 300 mm ("+practice+")")),
		lengthAt("shortest_part", "The shortest part that is safe to machine.", "12", func(s *Shop) *why.Size { return &s.ShortestPart }, usual("12 in, or 300 mm ("+manuals+")")),
		lengthAt("thinnest_part", "The thinnest part that is safe at the planer.", "1/4", func(s *Shop) *why.Size { return &s.ThinnestPart }, usual("1/4 in, or 6 mm ("+practice+")")),
	},
}

// usualShop fills in what the text does not say about the shop.
func usualShop(u measure.Unit) Shop {
	s := Shop{Humidity: 40, Temperature: roomTemperature(u)}
	inch := func(inches, millimetres measure.Length) measure.Length {
		if u == measure.Millimetres {
			return millimetres
		}
		return inches
	}
	const mm, in = measure.Millimetre, measure.Inch
	s.SmallestChisel = why.Usual("smallest chisel", inch(in/8, 3*mm), practice)
	s.DovetailKerf = why.Usual("dovetail kerf", inch(in/40, 6*mm/10), memory)
	s.SawKerf = why.Usual("saw kerf", inch(in/8, 3*mm), practice)
	s.ResawKerf = why.Usual("resaw kerf", inch(in/16, 3*mm/2), practice)
	s.ResawHeight = why.Usual("resaw height", inch(6*in, 150*mm), practice)
	s.PlanerWidth = why.Usual("planer width", inch(12*in, 300*mm), practice)
	s.ShortestPart = why.Usual("shortest part", inch(12*in, 300*mm), manuals)
	s.ThinnestPart = why.Usual("thinnest part", inch(in/4, 6*mm), practice)
	return s
}

var woodBlock = &block[Wood]{
	Block: Block{Type: "wood", ID: "wood", Label: MustHaveLabel, LabelDoc: "the name other blocks use",
		Doc: "A wood in use. A species can be named without one; a block says how it is cut and how wet it is.",
		Example: `commission "first" {}

wood "maple" {
  species  = "sugar maple"
  cut      = "quarter"
  moisture = 7
}
`},
	begin: func(r *reader, w *Wood, n node) {
		w.Name, w.At = n.label().Value, n.head()
		r.unique("wood", n.label())
	},
	attrs: []attr[Wood]{
		textAt("species", "The species it is.", `"black cherry"`, func(w *Wood) *Text { return &w.Species }, usual("the wood's own name")),
		choiceAt("cut", "How the boards are sawn.", func(w *Wood) *Text { return &w.Cut }, choices("flat", "rift", "quarter"), usual("flat")),
		numberAt("moisture", "Moisture content today, %.", "7.5", func(w *Wood) *Number { return &w.Moisture }, fromTo(1, 40), usual("what the shop's air brings it to")),
		colorAt("color", "Its colour in pictures.", func(w *Wood) *Text { return &w.Color }, usual("the usual colour of the species")),
	},
}

var speciesBlock = &block[OwnSpecies]{
	Block: Block{Type: "species", ID: "species", Label: MustHaveLabel, LabelDoc: "the species' name, as wood blocks use it",
		Doc: "A species the built-in tables lack, with its figures.",
		Example: `commission "first" {}

species "pear" {
  radial           = 3.9
  tangential       = 11.3
  specific_gravity = 0.67
  source           = "figures of the dealer"
}
`},
	begin: func(r *reader, s *OwnSpecies, n node) {
		s.Name, s.At = n.label().Value, n.head()
		r.unique("species", n.label())
	},
	attrs: []attr[OwnSpecies]{
		numberAt("radial", "Shrinkage across quartersawn boards, green to oven-dry, %.", "3.9", func(s *OwnSpecies) *Number { return &s.Radial }, fromTo(0.1, 20), required),
		numberAt("tangential", "Shrinkage across flatsawn boards, green to oven-dry, %.", "11.3", func(s *OwnSpecies) *Number { return &s.Tangential }, fromTo(0.1, 30), required),
		numberAt("specific_gravity", "Oven-dry mass over volume at 12 % moisture.", "0.67", func(s *OwnSpecies) *Number { return &s.SpecificGravity }, fromTo(0.05, 1.6), required),
		numberAt("stiffness", "Modulus of elasticity: million psi in an inch commission, GPa in a millimetre one.", "1.2", func(s *OwnSpecies) *Number { return &s.Stiffness }, fromTo(0.01, 60)),
		numberAt("strength", "Modulus of rupture: psi in an inch commission, MPa in a millimetre one.", "11000", func(s *OwnSpecies) *Number { return &s.Strength }, fromTo(1, 60000)),
		textAt("source", "Where the figures are from.", `"figures of the dealer"`, func(s *OwnSpecies) *Text { return &s.Source }),
	},
}

var curveBlock = &block[Curve]{
	Block: Block{Type: "curve", ID: "curve", Label: MustHaveLabel, LabelDoc: "the name parts cite it by",
		Doc: "A line that front edges follow. Whatever cites it follows the same line.",
		Example: `commission "first" {}

curve "bow" {
  shape = "arc"
  chord = 57
  rise  = 2 1/2
}
`},
	begin: func(r *reader, c *Curve, n node) {
		c.Name, c.At = n.label().Value, n.head()
		r.unique("curve", n.label())
	},
	attrs: []attr[Curve]{
		choiceAt("shape", "Part of a circle, or the line of a thin batten sprung over three points.", func(c *Curve) *Text { return &c.Shape }, choices("arc", "batten"), usual("arc")),
		lengthAt("chord", "The straight distance between its ends.", "20", func(c *Curve) *why.Size { return &c.Chord }, required),
		lengthAt("rise", "How far its middle stands out from the chord.", "1 1/2", func(c *Curve) *why.Size { return &c.Rise }, required),
		lengthAt("flats", "Straight length added at each end.", "1 1/4", func(c *Curve) *why.Size { return &c.Flats }, orZero, usual("none")),
	},
}
