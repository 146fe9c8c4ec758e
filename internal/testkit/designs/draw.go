package designs

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Draw writes the commission of a seed, in inches or in millimetres.
func Draw(seed uint64) string {
	g := &drawing{r: rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15)), metric: seed%4 == 3}
	g.commission()
	return g.out.String()
}

// drawing is a text while it is written. Sizes are sixty-fourths of an inch.
type drawing struct {
	r     *rand.Rand
	out   strings.Builder
	deep  int
	names int

	metric bool // one in four commissions is in millimetres
}

const in = 64

func (g *drawing) line(format string, args ...any) {
	fmt.Fprintf(&g.out, "%s%s\n", strings.Repeat("  ", g.deep), fmt.Sprintf(format, args...))
}

func (g *drawing) open(format string, args ...any) {
	g.line(format+" {", args...)
	g.deep++
}

func (g *drawing) close() {
	g.deep--
	g.line("}")
}

// pick is a size between two sizes, both in sixty-fourths, on a step.
func (g *drawing) pick(lo, hi, step int) int {
	if hi <= lo {
		return lo
	}
	return lo + g.r.IntN((hi-lo)/step+1)*step
}

func (g *drawing) one(words ...string) string { return words[g.r.IntN(len(words))] }

func (g *drawing) chance(percent int) bool { return g.r.IntN(100) < percent }

func (g *drawing) name() string {
	g.names++
	return fmt.Sprintf("n%d", g.names)
}

// size writes sixty-fourths as a maker would, in fractions or to half a
// millimetre.
func (g *drawing) size(n int) string {
	if g.metric {
		half := (n*254*2/10 + in/2) / in
		return fmt.Sprintf("%d.%d", half/2, half%2*5)
	}
	whole, part, den := n/in, n%in, in
	for part != 0 && part%2 == 0 {
		part, den = part/2, den/2
	}
	switch {
	case part == 0:
		return fmt.Sprint(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", part, den)
	}
	return fmt.Sprintf("%d %d/%d", whole, part, den)
}

var (
	woods  = []string{"black cherry", "black walnut", "white oak", "sugar maple", "white ash", "yellow birch"}
	stocks = []int{32, 36, 40, 44, 48, 52, 56, 64}
)

func (g *drawing) stock() int { return stocks[g.r.IntN(len(stocks))] }

func (g *drawing) commission() {
	g.open("commission %q", "drawn")
	if g.metric {
		g.line("units = \"mm\"")
		g.line("rule = 0.5")
	} else {
		g.line("rule = 1/32")
	}
	g.close()
	for _, n := range []string{"show", "inner"} {
		g.open("wood %q", n)
		g.line("species = %q", g.one(woods...))
		g.line("cut = %q", g.one("flat", "rift", "quarter"))
		g.line("moisture = %d", 6+g.r.IntN(4))
		g.close()
	}
	g.open("hardware %q", "butt")
	g.line("kind = %q", "butt hinge")
	g.line("length = %s", g.size(g.pick(96, 160, 8)))
	g.line("width = %s", g.size(g.pick(24, 40, 4)))
	g.line("thickness = %s", g.size(g.pick(6, 10, 2)))
	g.close()
	g.piece()
}

// casing is what the inside of a case needs to know.
type casing struct {
	width, height, depth, stock int
	hung, rails, bowed          bool
	back                        string
}

func (g *drawing) piece() {
	c := casing{width: g.pick(14*in, 60*in, 1), height: g.pick(12*in, 48*in, 1), depth: g.pick(6*in, 20*in, 2), stock: g.stock()}
	c.hung = g.chance(30)
	c.rails = !c.hung && g.chance(25)
	c.bowed = !c.hung && g.chance(15)
	if c.bowed {
		g.open("curve %q", "bow")
		g.line("shape = %q", g.one("arc", "batten"))
		g.line("chord = %s", g.size(c.width))
		g.line("rise = %s", g.size(g.pick(c.width/60, c.width/16, 1)))
		g.close()
	}
	g.theCase(c)
	if !c.hung && g.chance(60) {
		g.stand(c)
	}
	if c.rails || g.chance(30) {
		g.slab(c)
	}
}

func (g *drawing) theCase(c casing) {
	g.open("case %q", "box")
	g.line("width = %s", g.size(c.width))
	g.line("height = %s", g.size(c.height))
	g.line("depth = %s", g.size(c.depth))
	g.line("thickness = %s", g.size(c.stock))
	g.line("wood = %q", "show")
	if c.hung {
		g.line("hung = true")
	}
	if c.bowed {
		g.line("front = %q", "bow")
	}
	g.corners(c)
	if c.rails {
		g.open("top_rails")
		g.line("thickness = %s", g.size(max(c.stock-4, 40)))
		g.close()
	}
	g.back(&c)
	g.open("inside")
	inset := 0
	if c.back != "none" {
		inset = 40
		if c.hung {
			inset += c.stock
		}
	}
	g.space(c.width-2*c.stock, c.height-2*c.stock, c.depth-inset, 0, c)
	g.close()
	g.close()
}

func (g *drawing) corners(c casing) {
	kind := g.one("through dovetail", "through dovetail", "half-blind dovetail", "rabbet", "dado")
	if c.bowed || c.rails {
		kind = "through dovetail"
	}
	g.open("corners")
	g.line("joint = %q", kind)
	if strings.HasSuffix(kind, "dovetail") && g.chance(40) {
		g.line("slope = %q", g.one("1:6", "1:7", "1:8"))
	}
	if strings.HasSuffix(kind, "dovetail") && g.chance(30) {
		g.line("tails_on = %q", g.one("sides", "ends"))
	}
	g.close()
}

func (g *drawing) back(c *casing) {
	c.back = g.one("none", "shiplap", "shiplap", "panel")
	if c.hung && c.back == "none" {
		c.back = "shiplap"
	}
	if c.back == "none" {
		return
	}
	g.open("back")
	g.line("style = %q", c.back)
	g.line("wood = %q", "inner")
	g.line("thickness = %s", g.size(g.pick(16, 32, 2)))
	g.close()
}

// space divides a space or fills it. Sizes are clear, in sixty-fourths.
func (g *drawing) space(w, h, d, level int, c casing) {
	switch {
	case level < 3 && h > 14*in && g.chance(55):
		g.rows(w, h, d, level, c)
	case level < 3 && w > 16*in && g.chance(60):
		g.columns(w, h, d, level, c)
	default:
		g.fill(w, h, d, c)
	}
}

func (g *drawing) rows(w, h, d, level int, c casing) {
	if h < 40*in && w > 6*in && d > 8*in && g.chance(25) {
		g.bank(h)
		return
	}
	n := 2 + g.r.IntN(2)
	kind := "divider"
	if d > 9*in && w > 10*in && g.chance(50) {
		kind = "rail"
	}
	stock := g.pick(32, 52, 4)
	each := (h - (n-1)*stock) / n
	for i := range n {
		g.open("row %q", g.name())
		own := each
		if i > 0 && g.chance(50) {
			own = g.pick(each*3/4, each, 1)
			g.line("height = %s", g.size(own))
		}
		g.space(w, own, d, level+1, c)
		g.close()
		if i < n-1 {
			g.open("%s", kind)
			g.line("thickness = %s", g.size(stock))
			g.close()
		}
	}
}

func (g *drawing) bank(h int) {
	n := max(2, min(5, h/(6*in)))
	g.open("bank")
	g.line("drawers = %d", n)
	if g.chance(50) {
		g.line("step = %s", g.size(g.pick(8, 48, 4)))
	}
	g.open("rail")
	g.line("thickness = %s", g.size(3*in/4))
	g.close()
	g.close()
}

func (g *drawing) columns(w, h, d, level int, c casing) {
	n := 2 + g.r.IntN(2)
	stock := g.pick(32, 52, 4)
	each := (w - (n-1)*stock) / n
	for i := range n {
		g.open("column %q", g.name())
		own := each
		if i > 0 && g.chance(50) {
			own = g.pick(each*3/4, each, 1)
			g.line("width = %s", g.size(own))
		}
		g.space(own, h, d, level+1, c)
		g.close()
		if i < n-1 {
			g.open("partition")
			g.line("thickness = %s", g.size(stock))
			g.close()
		}
	}
}

func (g *drawing) fill(w, h, d int, c casing) {
	switch {
	case h > 5*in/2 && h < 14*in && w > 5*in && d > 5*in && g.chance(60):
		g.drawer(c)
	case h > 9*in && w > 9*in && g.chance(60):
		g.door(w, c)
		if d > 6*in && !c.bowed && g.chance(40) {
			g.shelves(h)
		}
	case h > 9*in && g.chance(60):
		g.shelves(h)
	case h > 6*in && g.chance(40):
		g.open("shelf")
		g.line("up = %s", g.size(h/2))
		g.line("thickness = %s", g.size(in/2))
		g.close()
	}
}

func (g *drawing) drawer(c casing) {
	g.open("drawer")
	g.mount(c)
	if g.chance(40) {
		g.line("back_joint = %q", g.one("dado", "through dovetail"))
	}
	if g.chance(50) {
		g.open("sides")
		g.line("wood = %q", "inner")
		g.line("thickness = %s", g.size(g.pick(20, 32, 4)))
		g.close()
	}
	g.close()
}

// mount lets some fronts lap the case.
func (g *drawing) mount(c casing) {
	if !c.bowed && g.chance(15) {
		g.line("mount = %q", "overlay")
	}
}

func (g *drawing) door(w int, c casing) {
	g.open("door")
	g.mount(c)
	if g.chance(50) {
		g.line("hinges = %q", "butt")
	}
	if w > 20*in && g.chance(60) {
		g.line("pair = true")
	} else {
		g.line("hinge = %q", g.one("left", "right"))
	}
	if g.chance(50) {
		g.line("stile = %s", g.size(g.pick(96, 160, 4)))
	}
	g.open("panel")
	if g.chance(40) {
		g.line("leaves = 2")
		g.line("match = %q", "book")
	}
	g.line("wood = %q", "inner")
	if g.chance(30) { // some thicker than their grooves can be
		g.line("thickness = %s", g.size(g.pick(16, 40, 4)))
	}
	g.close()
	g.close()
}

func (g *drawing) shelves(h int) {
	g.open("shelves")
	g.line("count = %d", 1+g.r.IntN(max(1, h/(9*in))))
	if g.chance(50) {
		g.line("adjustable = true")
	}
	g.close()
}

func (g *drawing) stand(c casing) {
	g.open("stand %q", "stand")
	style := g.one("legs", "plinth")
	g.line("style = %q", style)
	g.line("under = %q", "box")
	g.line("height = %s", g.size(g.pick(3*in, 8*in, 2)))
	if style == "legs" {
		legs := 4
		if c.width > 40*in && g.chance(50) {
			legs = 6
		}
		g.line("legs = %d", legs)
		if g.chance(40) {
			g.line("taper = %s", g.size(g.pick(8, 32, 4)))
		}
	}
	g.line("setback = %s", g.size(g.pick(0, in/2, 4)))
	g.line("inset = %s", g.size(g.pick(0, in, 4)))
	g.line("wood = %q", "show")
	g.close()
}

func (g *drawing) slab(c casing) {
	kind, of := "top", "on"
	if c.hung {
		kind, of = "ledge", "under"
	}
	g.open("%s %q", kind, "slab")
	g.line("%s = %q", of, "box")
	g.line("thickness = %s", g.size(g.pick(24, 64, 4)))
	g.line("overhang_front = %s", g.size(g.pick(0, in, 4)))
	g.line("overhang_ends = %s", g.size(g.pick(0, in, 4)))
	g.line("overhang_back = 0")
	if c.bowed {
		g.line("front = %q", "bow")
	}
	g.line("wood = %q", "show")
	g.close()
}
