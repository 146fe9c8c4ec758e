package design

import "casewright/internal/why"

// The blocks around a case: stands, tops, hardware, matched sets, the site,
// and what is said later about a piece being built.

var standBlock = &block[Stand]{
	Block: Block{Type: "stand", ID: "stand", Label: MustHaveLabel, LabelDoc: "its name",
		Doc: "What carries a case: legs and rails, or a plinth.",
		Example: `commission "first" {}

case "box" {
  on     = "stand"
  width  = 40
  height = 30
  depth  = 16
}

stand "stand" {
  style  = "legs"
  under  = "box"
  height = 5
  legs   = 4
  leg    = 1 3/4
}
`},
	begin: func(r *reader, s *Stand, n node) {
		s.Name, s.At = n.label().Value, n.head()
		r.unique("stand", n.label())
	},
	end: (*reader).checkStand,
	attrs: []attr[Stand]{
		choiceAt("style", "Legs joined by rails, or a closed plinth.", func(s *Stand) *Text { return &s.Style }, choices("legs", "plinth"), usual("legs")),
		refers("under", "The case it carries.", `"carcase"`, func(s *Stand) *Text { return &s.Under }, []string{"case"}, required),
		lengthAt("height", "Height.", "5", func(s *Stand) *why.Size { return &s.Height }, required),
		countAt("legs", "How many legs; an even number.", "4", func(s *Stand) *Number { return &s.Legs }, fromTo(4, 40), usual("4")),
		lengthAt("leg", "Thickness of the square legs.", "1 3/4", func(s *Stand) *why.Size { return &s.Leg }, usual("1 3/4 in ("+practice+")")),
		lengthAt("taper", "How much narrower legs are at the foot, taken from each inner face below the rails.", "3/8", func(s *Stand) *why.Size { return &s.Taper }, orZero, usual("0")),
		lengthAt("rail", "Height of the rails.", "2", func(s *Stand) *why.Size { return &s.Rail }, usual("2 in ("+practice+")")),
		lengthAt("thickness", "Thickness of rails or plinth boards.", "7/8", func(s *Stand) *why.Size { return &s.Thickness }, usual("3/4 in ("+practice+")")),
		lengthAt("setback", "How far the front rail or plinth stands back from the case's front.", "2", func(s *Stand) *why.Size { return &s.Setback }, orZero, usual("0")),
		lengthAt("inset", "How far legs or plinth stand in from the case's ends.", "1", func(s *Stand) *why.Size { return &s.Inset }, orZero, usual("0")),
		woodAt("Its wood.", func(s *Stand) *Text { return &s.Wood }, usual("the case's wood")),
	},
}

func slabBlock(kind, doc, of, ofDoc, example string) *block[Slab] {
	return &block[Slab]{
		Block: Block{Type: kind, ID: kind, Label: MustHaveLabel, LabelDoc: "its name", Doc: doc, Example: example},
		begin: func(r *reader, s *Slab, n node) {
			s.Name, s.At, s.Under = n.label().Value, n.head(), kind == "ledge"
			r.unique(kind, n.label())
		},
		attrs: []attr[Slab]{
			refers(of, ofDoc, `"carcase"`, func(s *Slab) *Text { return &s.Of }, []string{"case"}, required),
			lengthAt("width", "Outside width.", "39 1/4", func(s *Slab) *why.Size { return &s.Width }, usual("the case's, and the overhang at both ends")),
			lengthAt("depth", "Outside depth, at the ends.", "14 3/8", func(s *Slab) *why.Size { return &s.Depth }, usual("the case's, and the overhang in front and behind")),
			lengthAt("thickness", "Thickness.", "7/8", func(s *Slab) *why.Size { return &s.Thickness }, usual("7/8 in ("+practice+")")),
			lengthAt("overhang_front", "How far it reaches before the case; less than 0 stops short of it.", "3/4", func(s *Slab) *why.Size { return &s.Overhang.Front }, signed, usual("0")),
			lengthAt("overhang_ends", "How far it reaches beyond the case at each end.", "3/4", func(s *Slab) *why.Size { return &s.Overhang.Ends }, signed, usual("0")),
			lengthAt("overhang_back", "How far it reaches behind the case.", "0", func(s *Slab) *why.Size { return &s.Overhang.Back }, signed, usual("0")),
			refers("front", "The curve its front edge follows.", `"bow"`, func(s *Slab) *Text { return &s.Front }, []string{"curve"}, usual("a straight edge")),
			countAt("staves", "How many boards it is glued up from.", "4", func(s *Slab) *Number { return &s.Staves }, fromTo(1, 100), usual("left to the boards on the rack")),
			woodAt("Its wood.", func(s *Slab) *Text { return &s.Wood }, usual("the case's wood")),
		},
	}
}

var topBlock = slabBlock("top", "A loose top on a case.", "on", "The case it lies on.", `commission "first" {}

case "box" {
  width  = 40
  height = 30
  depth  = 16
}

top "top" {
  on             = "box"
  thickness      = 7/8
  overhang_front = 3/4
  overhang_ends  = 3/4
}
`)

var ledgeBlock = slabBlock("ledge", "A board under a case that stands out before it.", "under", "The case it is under.", `commission "first" {}

case "box" {
  width  = 20
  height = 26
  depth  = 5
}

ledge "ledge" {
  under     = "box"
  width     = 22
  thickness = 7/16
}
`)

var hardwareBlock = &block[Hardware]{
	Block: Block{Type: "hardware", ID: "hardware", Label: MustHaveLabel, LabelDoc: "the name doors and drawers cite it by",
		Doc: "Bought metal, with the sizes measured on the piece in hand.",
		Example: `commission "first" {}

hardware "butt hinge" {
  kind      = "butt hinge"
  count     = 2
  length    = 2 1/2
  width     = 3/4
  thickness = 3/32
  price     = 24
}
`},
	begin: func(r *reader, h *Hardware, n node) {
		h.Name, h.At = n.label().Value, n.head()
		r.unique("hardware", n.label())
	},
	attrs: []attr[Hardware]{
		choiceAt("kind", "What it is. The leaves of a butt hinge with length, width and thickness are let into door and case; any other hinge is only counted.", func(h *Hardware) *Text { return &h.Kind },
			choices("butt hinge", "hinge", "knob", "pull", "catch", "hook", "shelf pin", "screw", "other"), required),
		countAt("count", "How many: for each door or drawer that cites it, else for the piece.", "2", func(h *Hardware) *Number { return &h.Count }, fromTo(1, 100000), usual("1")),
		lengthAt("length", "Length.", "2 1/2", func(h *Hardware) *why.Size { return &h.Length }),
		lengthAt("width", "Width; of a hinge, one leaf.", "3/4", func(h *Hardware) *why.Size { return &h.Width }),
		lengthAt("thickness", "Thickness.", "3/32", func(h *Hardware) *why.Size { return &h.Thickness }),
		lengthAt("diameter", "Diameter.", "3/4", func(h *Hardware) *why.Size { return &h.Diameter }),
		numberAt("price", "Price of each.", "24", func(h *Hardware) *Number { return &h.Price }, fromTo(0, 1e6)),
		textAt("opening", "The opening that loose hardware goes into.", `"cabinet.upper.keys"`, func(h *Hardware) *Text { return &h.Opening }),
		textAt("note", "Anything else worth knowing at the bench.", `"drill 5/16 deep"`, func(h *Hardware) *Text { return &h.Note }),
	},
}

var matchBlock = &block[Match]{
	Block: Block{Type: "match", ID: "match", Label: MustHaveLabel, LabelDoc: "the set's name",
		Doc: "Parts whose grain must relate: round the case (ring), on from one to the next (run), mirrored (book) or repeated (slip).",
		Example: `commission "first" {}

match "fronts" {
  kind  = "run"
  parts = ["box.*.front"]
}
`},
	begin: func(r *reader, m *Match, n node) {
		m.Name, m.At = n.label().Value, n.head()
		r.unique("match", n.label())
	},
	attrs: []attr[Match]{
		choiceAt("kind", "How the grain relates.", func(m *Match) *Text { return &m.Kind }, choices("ring", "run", "book", "slip"), required),
		textsAt("parts", "Paths of the parts, in order; * stands for any one name.", `["cabinet.drawers.left.front"]`, func(m *Match) *[]Text { return &m.Parts }, required),
		lengthAt("loss", "Figure lost between two members, beyond the saw kerf.", "3/4", func(m *Match) *why.Size { return &m.Loss }, orZero, usual("what stands between them")),
	},
}

var siteBlock = &block[Site]{
	Block: Block{Type: "site", ID: "site", Doc: "What was measured where the piece will be.",
		Example: `commission "first" {}

site {
  wall       = "old plaster on lath"
  studs_from = "door casing"
  studs      = [12 1/2, 28 1/4, 44 1/8]
  free_wall  = [6, 44]
  projection = 7
}
`},
	begin: func(r *reader, s *Site, n node) { s.At = n.head() },
	attrs: []attr[Site]{
		textAt("wall", "What the wall is made of.", `"old plaster on lath"`, func(s *Site) *Text { return &s.Wall }),
		textAt("studs_from", "What stud positions are measured from.", `"door casing"`, func(s *Site) *Text { return &s.StudsFrom }),
		lengthsAt("studs", "Middles of the studs.", "[12 1/2, 28 1/4, 44 1/8]", 0, func(s *Site) *[]why.Size { return &s.Studs }, orZero),
		lengthsAt("free_wall", "Where the free wall begins and ends.", "[6, 44]", 2, func(s *Site) *[]why.Size { return &s.FreeWall }, orZero),
		lengthAt("projection", "The most the piece may stand out from the wall.", "7", func(s *Site) *why.Size { return &s.Projection }),
	},
	kids: func() []child[Site] {
		return []child[Site]{
			several(passageBlock, func(s *Site) *[]*Passage { return &s.Passages }),
			single(nicheBlock, func(s *Site) **Niche { return &s.Niche }),
		}
	},
}

var passageBlock = &block[Passage]{
	Block: Block{Type: "passage", ID: "passage", Label: MustHaveLabel, LabelDoc: "what it is",
		Doc: "Something the piece must get through: a doorway, a lift, a stair.",
		Example: `commission "first" {}

site {
  passage "lift car" {
    width  = "1100 mm"
    depth  = "800 mm"
    height = "2000 mm"
  }
}
`},
	begin: func(r *reader, p *Passage, n node) {
		p.Name, p.At = n.label().Value, n.head()
		r.unique("passage", n.label())
	},
	attrs: []attr[Passage]{
		lengthAt("width", "Clear width.", "29 1/2", func(p *Passage) *why.Size { return &p.Width }, required),
		lengthAt("height", "Clear height.", "80", func(p *Passage) *why.Size { return &p.Height }, required),
		lengthAt("depth", "Clear depth, where it has one.", "\"800 mm\"", func(p *Passage) *why.Size { return &p.Depth }),
	},
}

var nicheBlock = &block[Niche]{
	Block: Block{Type: "niche", ID: "niche", Doc: "The place a piece must fit, as true or untrue as it is.",
		Example: `commission "first" {}

site {
  niche {
    width {
      up = 0
      is = "1012 mm"
    }

    width {
      up = "1200 mm"
      is = "1004 mm"
    }

    ceiling    = ["2392 mm", "2381 mm"]
    floor_fall = 9
  }
}
`},
	begin: func(r *reader, n *Niche, at node) { n.At = at.head() },
	attrs: []attr[Niche]{
		lengthsAt("ceiling", "Height of the ceiling, left and right.", "[\"2392 mm\", \"2381 mm\"]", 2, func(n *Niche) *[]why.Size { return &n.Ceiling }),
		lengthAt("skirting_height", "Height of the skirting.", "\"92 mm\"", func(n *Niche) *why.Size { return &n.Skirting[0] }, orZero),
		lengthAt("skirting_thickness", "Thickness of the skirting.", "\"17 mm\"", func(n *Niche) *why.Size { return &n.Skirting[1] }, orZero),
		numberAt("floor_fall", "Millimetres the floor falls in a metre; more than 0 falls to the left.", "9", func(n *Niche) *Number { return &n.FloorFall }, fromTo(-100, 100), usual("0")),
	},
	kids: func() []child[Niche] {
		return []child[Niche]{holds(stationBlock, func(_ *reader, n *Niche) *Station {
			n.Widths = append(n.Widths, Station{})
			return &n.Widths[len(n.Widths)-1]
		})}
	},
}

var stationBlock = &block[Station]{
	Block: Block{Type: "width", ID: "niche/width", Doc: "The niche's width at one height."},
	attrs: []attr[Station]{
		lengthAt("up", "Height above the floor.", "\"1200 mm\"", func(s *Station) *why.Size { return &s.Up }, orZero, required),
		lengthAt("is", "Width there.", "\"1004 mm\"", func(s *Station) *why.Size { return &s.Is }, required),
	},
}

var measuredBlock = &block[Measured]{
	Block: Block{Type: "measured", ID: "measured", Label: MustHaveLabel, LabelDoc: "the path of an opening, or a part's mark or path", FreeLabel: true,
		Doc: "What the rule said at the bench. From there on it overrides what the design says.",
		Example: `commission "first" {}

measured "box.upper" {
  width  = "312.4 mm"
  height = 10 5/16
}
`},
	begin: func(r *reader, m *Measured, n node) {
		m.Path, m.At = n.label(), n.head()
		r.unique("measured", n.label())
	},
	attrs: []attr[Measured]{
		lengthAt("width", "Width of the opening or part.", "12 5/16", func(m *Measured) *why.Size { return &m.Width }),
		lengthAt("height", "Height of the opening.", "10 5/16", func(m *Measured) *why.Size { return &m.Height }),
		lengthAt("depth", "Depth of the opening.", "11 1/4", func(m *Measured) *why.Size { return &m.Depth }),
		lengthAt("length", "Length of the part.", "20 1/16", func(m *Measured) *why.Size { return &m.Length }),
		lengthAt("thickness", "Thickness of the part.", "9/16", func(m *Measured) *why.Size { return &m.Thickness }),
	},
}

var acceptBlock = &block[Accept]{
	Block: Block{Type: "accept", ID: "accept", Label: MustHaveLabel, LabelDoc: "the finding's code", FreeLabel: true,
		Doc: "Lets a finding stand, with the reason. It stays visible as accepted.",
		Example: `commission "first" {}

accept "movement.panel" {
  of     = "box.door.panel"
  reason = "the panel is quartersawn and the room is kept at 45 %"
}
`},
	begin: func(r *reader, a *Accept, n node) { a.Code, a.At = n.label(), n.head() },
	attrs: []attr[Accept]{
		textAt("of", "The mark or path it is accepted for.", `"box.door.panel"`, func(a *Accept) *Text { return &a.Of }, usual("wherever it is found")),
		textAt("reason", "Why it may stand.", `"the panel is quartersawn"`, func(a *Accept) *Text { return &a.Reason }, required),
	},
}
