package design

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// The blocks inside a case: rows and columns, what stands between them, and
// what fills an opening.

// spaceDraft gathers what a space holds, in the order of the text.
type spaceDraft struct {
	into  *Space
	items []spaceItem
	fill  Fill
}

// spaceItem is one row, column, board between or bank; exactly one is set.
type spaceItem struct {
	cell    *cellDraft
	column  bool
	between *Between
	bank    *bankDraft
}

// span is where the item's block begins.
func (i spaceItem) span() diag.Span {
	switch {
	case i.cell != nil:
		return i.cell.At
	case i.between != nil:
		return i.between.At
	}
	return i.bank.at
}

// cellDraft is a row or column with what it holds.
type cellDraft struct {
	Cell
	space spaceDraft
}

// bankDraft is a bank of drawers before it becomes rows.
type bankDraft struct {
	drawers Number
	step    why.Size
	ratio   Number
	between *Between
	drawer  *Drawer
	at      diag.Span
}

var insideBlock = &block[spaceDraft]{
	Block: Block{Type: "inside", ID: "inside", Doc: "What you see from the front. A space is divided into rows from the top down, or into columns from left to right; a row can hold columns and a column rows. A space that is not divided is an opening: a drawer, a door, shelves or nothing fills it.",
		Example: `commission "first" {}

case "box" {
  width  = 20
  height = 30
  depth  = 12

  inside {
    row "doors" {
      door {
        pair = true
      }
    }

    row "drawer" {
      height = 5
      drawer {}
    }
  }
}
`},
	end:  func(r *reader, s *spaceDraft, n node) { r.finishSpace(s, n) },
	kids: func() []child[spaceDraft] { return spaceKids(func(s *spaceDraft) *spaceDraft { return s }) },
}

var rowBlock = &block[cellDraft]{
	Block: Block{Type: "row", ID: "row", Label: MayHaveLabel, LabelDoc: "its name in paths; else rows are numbered from the top",
		Doc: "One of several openings above each other, from the top down."},
	begin: func(r *reader, c *cellDraft, n node) { c.start(n) },
	end:   func(r *reader, c *cellDraft, n node) { r.finishSpace(&c.space, n) },
	attrs: []attr[cellDraft]{
		lengthAt("height", "Clear height of the opening.", "5 1/4", func(c *cellDraft) *why.Size { return &c.Size }, usual("a share of what the others leave")),
		numberAt("share", "Its share of what is left, in proportion to the others.", "2", func(c *cellDraft) *Number { return &c.Share }, fromTo(0.001, 1000), usual("1")),
	},
}

var columnBlock = &block[cellDraft]{
	Block: Block{Type: "column", ID: "column", Label: MayHaveLabel, LabelDoc: "its name in paths; else columns are numbered from the left",
		Doc: "One of several openings beside each other, from left to right.",
		Example: `commission "first" {}

case "box" {
  width  = 40
  height = 30
  depth  = 12

  inside {
    column "narrow" {
      width = 12
    }

    partition {
      thickness = 1/2
    }

    column "wide" {
      share = 2
    }

    column "middling" {}
  }
}
`},
	begin: func(r *reader, c *cellDraft, n node) { c.start(n) },
	end:   func(r *reader, c *cellDraft, n node) { r.finishSpace(&c.space, n) },
	attrs: []attr[cellDraft]{
		lengthAt("width", "Clear width of the opening.", "17", func(c *cellDraft) *why.Size { return &c.Size }, usual("a share of what the others leave")),
		numberAt("share", "Its share of what is left, in proportion to the others.", "2", func(c *cellDraft) *Number { return &c.Share }, fromTo(0.001, 1000), usual("1")),
	},
}

func (c *cellDraft) start(n node) {
	c.Name, c.At = n.label().Value, n.head()
	c.space.into = &c.Cell.Space
}

func init() {
	// Rows hold columns hold rows; set here, for Go initialises no circles.
	kids := func() []child[cellDraft] { return spaceKids(func(c *cellDraft) *spaceDraft { return &c.space }) }
	rowBlock.kids, columnBlock.kids = kids, kids
}

// spaceKids are the blocks that may stand in a space, wherever the draft of
// the space is kept.
func spaceKids[P any](of func(*P) *spaceDraft) []child[P] {
	cell := func(b *block[cellDraft], column bool) child[P] {
		return holds(b, func(_ *reader, p *P) *cellDraft {
			c := new(cellDraft)
			of(p).items = append(of(p).items, spaceItem{cell: c, column: column})
			return c
		})
	}
	between := func(b *block[Between], kind BetweenKind) child[P] {
		return holds(b, func(_ *reader, p *P) *Between {
			x := &Between{Kind: kind}
			of(p).items = append(of(p).items, spaceItem{between: x})
			return x
		})
	}
	bank := holds(bankBlock, func(_ *reader, p *P) *bankDraft {
		b := new(bankDraft)
		of(p).items = append(of(p).items, spaceItem{bank: b})
		return b
	})
	return []child[P]{
		cell(rowBlock, false), cell(columnBlock, true),
		between(dividerBlock, Divider), between(railBlock, Rail), between(partitionBlock, Partition),
		bank,
		single(drawerBlock, func(p *P) **Drawer { return &of(p).fill.Drawer }),
		single(doorBlock, func(p *P) **Door { return &of(p).fill.Door }),
		several(shelfBlock, func(p *P) *[]*Shelf { return &of(p).fill.Fixed }),
		single(shelvesBlock, func(p *P) **Shelves { return &of(p).fill.Shelves }),
	}
}

func betweenBlock(kind BetweenKind, doc, example string, extra ...attr[Between]) *block[Between] {
	attrs := []attr[Between]{
		lengthAt("thickness", "Thickness.", "1/2", func(b *Between) *why.Size { return &b.Thickness }, usual("3/4 in ("+practice+")")),
		lengthAt("housed", "How deep it is housed at both ends.", "3/16", func(b *Between) *why.Size { return &b.Housed }, usual("a third of the board it is cut in, down to the next 1/16; a quarter where another may lie opposite")),
		lengthAt("stopped", "How far the housing stops short of the front.", "3/8", func(b *Between) *why.Size { return &b.Stopped }, orZero, usual("not stopped")),
		lengthAt("setback", "How far it stands back from the front.", "1/8", func(b *Between) *why.Size { return &b.Setback }, orZero, usual("0")),
		woodAt("Its wood.", func(b *Between) *Text { return &b.Wood }, usual("the case's wood")),
	}
	return &block[Between]{
		Block: Block{Type: string(kind), ID: string(kind), Doc: doc, Example: example},
		begin: func(r *reader, b *Between, n node) { b.At = n.head() },
		attrs: append(attrs, extra...),
	}
}

var dividerBlock = betweenBlock(Divider, "A board the full depth of the case between two rows. Rows with nothing between them get one.", "")

var railBlock = betweenBlock(Rail, "A web frame between two rows: a front rail, runners and a back rail. It carries drawers and lets a deep case move.", `commission "first" {}

case "box" {
  width  = 30
  height = 30
  depth  = 18

  inside {
    row {
      height = 6
      drawer {}
    }

    rail {
      thickness = 3/4
      width     = 3
    }

    row {
      drawer {}
    }
  }
}
`,
	lengthAt("width", "Width of the front rail, front to back.", "3", func(b *Between) *why.Size { return &b.Width }, usual("3 1/2 in (Building Furniture, 2007, p. 64), or a third of the depth where that is less")))

var partitionBlock = betweenBlock(Partition, "An upright board between two columns. Columns with nothing between them get one.", "")

var bankBlock = &block[bankDraft]{
	Block: Block{Type: "bank", ID: "bank", Doc: "A bank of drawers that fills its opening: rows 1, 2, 3 … from the top down, each with a drawer. A step makes each one higher than the one above; a ratio makes it so many times as high; with neither they are equal.",
		Example: `commission "first" {}

case "chest" {
  width  = 30
  height = 40
  depth  = 18

  inside {
    bank {
      drawers = 4
      step    = 5/8

      rail {
        thickness = 3/4
      }
    }
  }
}
`},
	begin: func(r *reader, b *bankDraft, n node) { b.at = n.head() },
	attrs: []attr[bankDraft]{
		countAt("drawers", "How many drawers.", "3", func(b *bankDraft) *Number { return &b.drawers }, fromTo(1, 100), required),
		lengthAt("step", "How much higher each drawer is than the one above.", "5/8", func(b *bankDraft) *why.Size { return &b.step }, signed, usual("0: equal heights")),
		numberAt("ratio", "How many times as high each drawer is as the one above.", "1.15", func(b *bankDraft) *Number { return &b.ratio }, fromTo(0.2, 5)),
	},
	kids: func() []child[bankDraft] {
		betweens := func(b *block[Between], kind BetweenKind) child[bankDraft] {
			c := holds(b, func(r *reader, d *bankDraft) *Between {
				d.between = &Between{Kind: kind}
				return d.between
			})
			c.Many = false
			return c
		}
		return []child[bankDraft]{
			betweens(dividerBlock, Divider), betweens(railBlock, Rail),
			single(drawerBlock, func(d *bankDraft) **Drawer { return &d.drawer }),
		}
	},
}

// boardBlock is the wood and thickness of one member of a drawer.
func boardBlock(kind, doc, usualWood, usualThickness string) *block[Board] {
	return &block[Board]{
		Block: Block{Type: kind, ID: "drawer/" + kind, Doc: doc},
		begin: func(r *reader, b *Board, n node) { b.At = n.head() },
		attrs: []attr[Board]{
			woodAt("Its wood.", func(b *Board) *Text { return &b.Wood }, usual(usualWood)),
			lengthAt("thickness", "Thickness.", "1/2", func(b *Board) *why.Size { return &b.Thickness }, usual(usualThickness)),
		},
	}
}

var (
	drawerFront  = boardBlock("front", "The drawer's front.", "the case's wood", "3/4 in (Building Furniture, 2007, p. 84)")
	drawerSides  = boardBlock("sides", "The drawer's two sides.", "the case's wood", "3/8 in; 1/2 in in openings from 8 in high ("+practice+")")
	drawerBack   = boardBlock("back", "The drawer's back.", "the sides' wood", "5/16 in (Joyce)")
	drawerBottom = boardBlock("bottom", "The drawer's bottom, in grooves of the sides and front.", "the sides' wood", "5/16 in (Joyce)")
)

// usualOverlay is told of drawers and doors alike.
const usualOverlay = "3/8 in, or half the thinnest board round the opening less 1/32 in where that is less (" + practice + ")"

var drawerAttrs = []attr[Drawer]{
	choiceAt("mount", "Whether the front lies within the opening or before it.", func(d *Drawer) *Text { return &d.Mount }, choices("inset", "overlay"), usual("inset")),
	lengthAt("overlay", "How far an overlay front laps the case.", "3/8", func(d *Drawer) *why.Size { return &d.Overlay }, usual(usualOverlay)),
	choiceAt("joint", "The joint of sides and front.", func(d *Drawer) *Text { return &d.Joint }, choices("half-blind dovetail"), usual("half-blind dovetail")),
	choiceAt("back_joint", "The joint of sides and back.", func(d *Drawer) *Text { return &d.BackJoint }, choices("through dovetail", "dado"), usual("through dovetail")),
	slopeAt("slope", "Slope of the dovetails.", func(d *Drawer) (*measure.Slope, *bool) { return &d.Slope, &d.HasSlope }, usual("1:7 (Joyce)")),
	lengthAt("lap", "What the joint leaves of the front's thickness. An overlay front is screwed on, and the box behind it dovetailed through.", "1/8", func(d *Drawer) *why.Size { return &d.Lap }, usual("a quarter of the front, at least 3/32 in (Joyce; Building Furniture, 2007, p. 84)")),
	countAt("tails", "How many tails at the front.", "3", func(d *Drawer) *Number { return &d.Tails }, fromTo(1, 50), usual("by the drawer's height")),
	lengthAt("side_gap", "Gap at each side.", "1/64", func(d *Drawer) *why.Size { return &d.SideGap }, orZero, usual("1/32 in, and what a side swells by the damp season ("+practice+")")),
	lengthAt("top_gap", "Gap above.", "1/16", func(d *Drawer) *why.Size { return &d.TopGap }, orZero, usual("what the drawer swells by the damp season, and 1/32 in")),
	lengthAt("behind", "Left free behind the drawer. Its bottom runs 1/4 in past its back and grows that way.", "1/4", func(d *Drawer) *why.Size { return &d.Behind }, orZero, usual("room for the bottom in the damp season and 1/32 in, and never less than 3/8 in ("+practice+")")),
	lengthAt("groove", "From the side's lower edge up to the groove for the bottom.", "3/8", func(d *Drawer) *why.Size { return &d.Groove }, usual("3/8 in, at most an eighth of the opening ("+practice+")")),
	refers("pull", "The hardware on its front.", `"knob"`, func(d *Drawer) *Text { return &d.Pull }, []string{"hardware"}, usual("none")),
}

func drawerKids() []child[Drawer] {
	return []child[Drawer]{
		inner(drawerFront, func(d *Drawer) *Board { return &d.Front }),
		inner(drawerSides, func(d *Drawer) *Board { return &d.Sides }),
		inner(drawerBack, func(d *Drawer) *Board { return &d.Back }),
		inner(drawerBottom, func(d *Drawer) *Board { return &d.Bottom }),
	}
}

var drawerBlock = &block[Drawer]{
	Block: Block{Type: "drawer", ID: "drawer", Doc: "A drawer fills the opening. What it does not say, a block drawers says for it."},
	begin: func(r *reader, d *Drawer, n node) { d.At = n.head() },
	attrs: drawerAttrs, kids: drawerKids,
}

var drawersBlock = &block[Drawer]{
	Block: Block{Type: "drawers", ID: "drawers", Doc: "What all drawers have in common: in a case for its drawers, at the top level for all. The nearest block that says something holds.",
		Example: `commission "first" {}

drawers {
  joint = "half-blind dovetail"

  front {
    thickness = 7/8
  }

  sides {
    wood      = "sugar maple"
    thickness = 7/16
  }
}

case "box" {
  width  = 20
  height = 6
  depth  = 16

  inside {
    drawer {}
  }
}
`},
	begin: func(r *reader, d *Drawer, n node) { d.At = n.head() },
	attrs: drawerAttrs, kids: drawerKids,
}

var panelBlock = &block[Panel]{
	Block: Block{Type: "panel", ID: "panel", Doc: "The field within a door's frame."},
	begin: func(r *reader, p *Panel, n node) { p.At = n.head() },
	attrs: []attr[Panel]{
		woodAt("Its wood.", func(p *Panel) *Text { return &p.Wood }, usual("the frame's wood")),
		lengthAt("thickness", "Thickness.", "1/4", func(p *Panel) *why.Size { return &p.Thickness }, usual("a third of the frame, to the nearest 1/16 (Noyes)")),
		lengthAt("groove", "Depth of the groove in the frame.", "3/8", func(p *Panel) *why.Size { return &p.Groove }, usual("3/8 in, at most a third of the stile (trade forum answer)")),
		countAt("leaves", "How many boards side by side.", "2", func(p *Panel) *Number { return &p.Leaves }, fromTo(1, 20), usual("1")),
		choiceAt("match", "How the leaves' grain relates.", func(p *Panel) *Text { return &p.Match }, choices("book", "slip"), usual("it does not")),
	},
}

var doorAttrs = []attr[Door]{
	flagAt("pair", "Two doors meeting in the middle.", func(d *Door) *Flag { return &d.Pair }, usual("false")),
	choiceAt("mount", "Whether the door lies within the opening or before it.", func(d *Door) *Text { return &d.Mount }, choices("inset", "overlay"), usual("inset")),
	lengthAt("overlay", "How far an overlay door laps the case.", "3/8", func(d *Door) *why.Size { return &d.Overlay }, usual(usualOverlay)),
	choiceAt("hinge", "The side it turns on.", func(d *Door) *Text { return &d.Hinge }, choices("left", "right"), usual("left")),
	woodAt("Wood of the frame.", func(d *Door) *Text { return &d.Wood }, usual("the case's wood")),
	lengthAt("thickness", "Thickness of the frame.", "3/4", func(d *Door) *why.Size { return &d.Thickness }, usual("3/4 in (Architectural Woodwork Standards, 1st ed. 2009)")),
	lengthAt("stile", "Width of the stiles.", "2 1/4", func(d *Door) *why.Size { return &d.Stile }, usual("2 in ("+practice+")")),
	lengthAt("top_rail", "Width of the top rail.", "2 1/4", func(d *Door) *why.Size { return &d.TopRail }, usual("the stile's")),
	lengthAt("bottom_rail", "Width of the bottom rail.", "2 3/4", func(d *Door) *why.Size { return &d.BottomRail }, usual("2 1/2 in ("+practice+")")),
	lengthAt("tenon", "Length of the tenons.", "1 1/4", func(d *Door) *why.Size { return &d.Tenon }, usual("two thirds of the stile, up to the next 1/16 ("+practice+")")),
	lengthAt("gap", "Gap all round. What the stiles swell by the damp season is added at the closing side, or between two doors.", "1/16", func(d *Door) *why.Size { return &d.Gap }, orZero, usual("1/16 in (cabinetmakers' forum thread, 2006)")),
	refers("hinges", "The hardware it hangs on.", `"butt hinge"`, func(d *Door) *Text { return &d.Hinges }, []string{"hardware"}, usual("none")),
	refers("pull", "The hardware it is opened by.", `"knob"`, func(d *Door) *Text { return &d.Pull }, []string{"hardware"}, usual("none")),
	refers("catch", "The hardware that holds it shut.", `"magnet"`, func(d *Door) *Text { return &d.Catch }, []string{"hardware"}, usual("none")),
}

func doorKids() []child[Door] {
	return []child[Door]{inner(panelBlock, func(d *Door) *Panel { return &d.Panel })}
}

var doorBlock = &block[Door]{
	Block: Block{Type: "door", ID: "door", Doc: "A frame-and-panel door, or a pair, closes the opening. Shelves may stand behind it."},
	begin: func(r *reader, d *Door, n node) { d.At = n.head() },
	attrs: doorAttrs, kids: doorKids,
}

var doorsBlock = &block[Door]{
	Block: Block{Type: "doors", ID: "doors", Doc: "What all doors have in common: in a case for its doors, at the top level for all. The nearest block that says something holds.",
		Example: `commission "first" {}

doors {
  thickness = 7/8
  stile     = 2 1/4
  hinges    = "butt hinge"

  panel {
    thickness = 3/8
    leaves    = 2
    match     = "book"
  }
}

hardware "butt hinge" {
  kind  = "hinge"
  count = 2
}

case "box" {
  width  = 20
  height = 30
  depth  = 12

  inside {
    door {
      hinge = "right"
    }
  }
}
`},
	begin: func(r *reader, d *Door, n node) { d.At = n.head() },
	attrs: doorAttrs, kids: doorKids,
}

var shelfBlock = &block[Shelf]{
	Block: Block{Type: "shelf", ID: "shelf", Label: MayHaveLabel, LabelDoc: "its name; else shelves are numbered in the order of the text",
		Doc: "A fixed shelf, housed in both sides."},
	begin: func(r *reader, s *Shelf, n node) { s.Name, s.At = n.label().Value, n.head() },
	attrs: []attr[Shelf]{
		lengthAt("up", "From the floor of the opening up to the shelf's underside.", "11 1/4", func(s *Shelf) *why.Size { return &s.Up }, required),
		lengthAt("thickness", "Thickness.", "3/8", func(s *Shelf) *why.Size { return &s.Thickness }, usual("3/4 in ("+practice+")")),
		lengthAt("housed", "How deep it is housed at both ends.", "3/16", func(s *Shelf) *why.Size { return &s.Housed }, usual("a third of the board it is cut in, down to the next 1/16; a quarter where another may lie opposite")),
		lengthAt("depth", "Depth, front to back.", "10", func(s *Shelf) *why.Size { return &s.Depth }, usual("to the back")),
		woodAt("Its wood.", func(s *Shelf) *Text { return &s.Wood }, usual("the case's wood")),
	},
}

var shelvesBlock = &block[Shelves]{
	Block: Block{Type: "shelves", ID: "shelves", Doc: "Several like shelves, equally spaced and housed, or adjustable on pins.",
		Example: `commission "first" {}

case "books" {
  width  = 36
  height = 60
  depth  = 11

  inside {
    shelves {
      count      = 4
      adjustable = true
      thickness  = 7/8
      load       = 34
    }
  }
}
`},
	begin: func(r *reader, s *Shelves, n node) { s.At = n.head() },
	attrs: []attr[Shelves]{
		countAt("count", "How many shelves.", "4", func(s *Shelves) *Number { return &s.Count }, fromTo(1, 100), required),
		flagAt("adjustable", "Whether they lie on pins and can be moved.", func(s *Shelves) *Flag { return &s.Adjustable }, usual("false: housed, equally spaced")),
		lengthAt("thickness", "Thickness.", "3/4", func(s *Shelves) *why.Size { return &s.Thickness }, usual("3/4 in ("+practice+")")),
		lengthAt("depth", "Depth, front to back.", "10", func(s *Shelves) *why.Size { return &s.Depth }, usual("to the back, and 1/8 in clear of an inset door")),
		numberAt("load", "What they carry: pounds per foot of shelf in an inch commission, kg per metre in a millimetre one.", "34", func(s *Shelves) *Number { return &s.Load }, fromTo(0, 2000)),
		woodAt("Their wood.", func(s *Shelves) *Text { return &s.Wood }, usual("the case's wood")),
	},
}
