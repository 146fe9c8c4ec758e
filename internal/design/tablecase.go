package design

import (
	"casewright/internal/measure"
	"casewright/internal/why"
)

// The blocks of a case: its boards, corners, back and cleat.

// caseDraft is a case with the drawers and doors blocks that hold within it.
type caseDraft struct {
	*Case
	drawers *Drawer
	doors   *Door
}

var caseBlock = &block[caseDraft]{
	Block: Block{Type: "case", ID: "case", Label: MustHaveLabel, LabelDoc: "the name paths begin with",
		Doc: "A box of boards. Sizes are outside sizes.",
		Example: `commission "first" {}

case "box" {
  width  = 20
  height = 30
  depth  = 12
  wood   = "cherry"
  inside {
    door {}
  }
}
`},
	begin: func(r *reader, c *caseDraft, n node) {
		c.Name, c.At = n.label().Value, n.head()
		r.unique("case", n.label())
	},
	end: (*reader).checkCase,
	attrs: []attr[caseDraft]{
		refers("on", "What it stands on.", `"plinth"`, func(c *caseDraft) *Text { return &c.On }, []string{"case", "stand", "top"}, usual("the floor, or the wall if it is hung")),
		lengthAt("width", "Outside width.", "20 1/2", func(c *caseDraft) *why.Size { return &c.Width }, required),
		lengthAt("height", "Outside height.", "26 3/4", func(c *caseDraft) *why.Size { return &c.Height }, required),
		lengthAt("depth", "Outside depth, measured at the sides.", "5 3/8", func(c *caseDraft) *why.Size { return &c.Depth }, required),
		lengthAt("thickness", "Thickness of sides, top and bottom.", "3/4", func(c *caseDraft) *why.Size { return &c.Thickness }, usual("3/4 in ("+practice+")")),
		lengthAt("sides", "Thickness of the sides where it differs.", "7/8", func(c *caseDraft) *why.Size { return &c.Sides }, usual("thickness")),
		lengthAt("top", "Thickness of the top where it differs.", "7/8", func(c *caseDraft) *why.Size { return &c.Top }, usual("thickness")),
		lengthAt("bottom", "Thickness of the bottom where it differs.", "7/8", func(c *caseDraft) *why.Size { return &c.Bottom }, usual("thickness")),
		woodAt("The wood of its boards, and of all inside that does not say.", func(c *caseDraft) *Text { return &c.Wood }, usual("the first wood block, else the first wood a case names, else black cherry")),
		refers("front", "The curve its front edges follow.", `"bow"`, func(c *caseDraft) *Text { return &c.Front }, []string{"curve"}, usual("a straight front")),
		flagAt("hung", "Whether it hangs on a wall.", func(c *caseDraft) *Flag { return &c.Hung }, usual("false")),
	},
	kids: func() []child[caseDraft] {
		return []child[caseDraft]{
			inner(cornersBlock, func(c *caseDraft) *Corners { return &c.Corners }),
			single(topRailsBlock, func(c *caseDraft) **TopRails { return &c.TopRails }),
			single(backBlock, func(c *caseDraft) **Back { return &c.Back }),
			single(cleatBlock, func(c *caseDraft) **Cleat { return &c.Cleat }),
			single(drawersBlock, func(c *caseDraft) **Drawer { return &c.drawers }),
			single(doorsBlock, func(c *caseDraft) **Door { return &c.doors }),
			inside(),
		}
	},
}

// inside reads a block inside into the case's space.
func inside() child[caseDraft] {
	c := holds(insideBlock, func(_ *reader, c *caseDraft) *spaceDraft { return &spaceDraft{into: &c.Inside} })
	c.Many = false
	return c
}

var cornersBlock = &block[Corners]{
	Block: Block{Type: "corners", ID: "corners", Doc: "How the case's boards meet at its corners. In a rabbet the ends go half into the sides, in a dado a third.",
		Example: `commission "first" {}

case "chest" {
  width  = 30
  height = 20
  depth  = 16

  corners {
    joint = "through dovetail"
    slope = "1:8"
    tails = 9
  }
}
`},
	begin: func(r *reader, c *Corners, n node) { c.At = n.head() },
	attrs: []attr[Corners]{
		choiceAt("joint", "The joint.", func(c *Corners) *Text { return &c.Joint },
			choices("through dovetail", "half-blind dovetail", "rabbet", "dado"), usual("through dovetail")),
		slopeAt("slope", "Slope of the dovetails.", func(c *Corners) (*measure.Slope, *bool) { return &c.Slope, &c.HasSlope }, usual("1:8 ("+practice+")")),
		countAt("tails", "How many tails at each corner.", "5", func(c *Corners) *Number { return &c.Tails }, fromTo(1, 100), usual("laid out by the width and the smallest chisel")),
		choiceAt("tails_on", "Which boards have the tails.", func(c *Corners) *Text { return &c.TailsOn }, choices("sides", "ends"), usual("sides of a hung case, ends (top and bottom) of a standing one")),
		lengthAt("half_pin", "Width of the half pins at both edges.", "3/8", func(c *Corners) *why.Size { return &c.HalfPin }, usual("laid out with the others")),
		lengthAt("lap", "What a half-blind joint leaves of the board's thickness.", "1/8", func(c *Corners) *why.Size { return &c.Lap }, usual("a quarter of the board, to the nearest 1/16 ("+practice+")")),
	},
}

var topRailsBlock = &block[TopRails]{
	Block: Block{Type: "top_rails", ID: "top_rails", Doc: "Two rails, front and back, in place of a solid top: for a case that a loose top covers.",
		Example: `commission "first" {}

case "base" {
  width  = 30
  height = 20
  depth  = 16

  top_rails {
    thickness = 3/4
    width     = 3
  }
}
`},
	begin: func(r *reader, t *TopRails, n node) { t.At = n.head() },
	attrs: []attr[TopRails]{
		lengthAt("thickness", "Thickness.", "3/4", func(t *TopRails) *why.Size { return &t.Thickness }, usual("the case's thickness")),
		lengthAt("width", "Width from front to back, at the sides.", "3", func(t *TopRails) *why.Size { return &t.Width }, usual("3 in, or a third of the inside depth where that is less ("+practice+")")),
		woodAt("Their wood.", func(t *TopRails) *Text { return &t.Wood }, usual("the case's wood")),
	},
}

var backBlock = &block[Back]{
	Block: Block{Type: "back", ID: "back", Doc: "What closes the case behind. Without this block the case has no back.",
		Example: `commission "first" {}

case "box" {
  width  = 20
  height = 30
  depth  = 12

  back {
    style     = "shiplap"
    thickness = 3/8
    inset     = 3/8
    rabbet    = 3/8
  }
}
`},
	begin: func(r *reader, b *Back, n node) { b.At = n.head() },
	attrs: []attr[Back]{
		choiceAt("style", "Boards lapped side by side; one solid panel, glued up if it is wide and loose in the rabbets with room to move; or nothing.", func(b *Back) *Text { return &b.Style }, choices("shiplap", "panel", "none"), usual("shiplap")),
		lengthAt("thickness", "Thickness of its boards or its panel.", "3/8", func(b *Back) *why.Size { return &b.Thickness }, usual("3/8 in ("+practice+")")),
		lengthAt("inset", "From the case's back edge to the back's inside face.", "3/8", func(b *Back) *why.Size { return &b.Inset }, usual("the back's thickness, and the cleat's in a hung case")),
		lengthAt("rabbet", "How deep the rabbet goes into sides, top and bottom.", "3/8", func(b *Back) *why.Size { return &b.Rabbet }, usual("half the side, to the nearest 1/16 ("+practice+")")),
		countAt("boards", "How many boards, of a shiplapped back.", "4", func(b *Back) *Number { return &b.Boards }, fromTo(1, 200), usual("as many as keep what each covers within 5 in ("+practice+")")),
		woodAt("Its wood.", func(b *Back) *Text { return &b.Wood }, usual("the case's wood")),
	},
}

var cleatBlock = &block[Cleat]{
	Block: Block{Type: "cleat", ID: "cleat", Doc: "The pair of bevelled strips a hung case hangs by: one half stays with the case, the other goes on the wall. A hung case with a back has them without this block too; the block says what they are like.",
		Example: `commission "first" {}

case "box" {
  width  = 20
  height = 30
  depth  = 8
  hung   = true

  back {}

  cleat {
    thickness = 9/16
    height    = 2
    bevel     = "45 deg"
  }
}
`},
	begin: func(r *reader, c *Cleat, n node) { c.At, c.Bevel = n.head(), usualBevel },
	attrs: []attr[Cleat]{
		lengthAt("thickness", "Thickness of both halves.", "9/16", func(c *Cleat) *why.Size { return &c.Thickness }, usual("what the back's inset leaves behind the back; where no inset is given, 3/4 in ("+practice+")")),
		lengthAt("height", "Height of each half.", "2", func(c *Cleat) *why.Size { return &c.Height }, usual("2 1/2 in (Architectural Woodwork Standards, 1st ed. 2009, 4.4.18)")),
		angleAt("bevel", "Bevel from the horizontal.", `"45 deg"`, func(c *Cleat) *measure.Angle { return &c.Bevel }, fromTo(10, 80), usual("45° ("+practice+")")),
		woodAt("Its wood.", func(c *Cleat) *Text { return &c.Wood }, usual("the case's wood")),
	},
}

// usualBevel is 45°: common practice, no source.
const usualBevel = measure.Angle(0.7853981633974483)
