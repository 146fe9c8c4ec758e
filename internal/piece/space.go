package piece

import (
	"fmt"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// bay is a clear space being divided: its sizes and where it stands.
type bay struct {
	path                 string
	width, height, depth why.Size
	corner               Vec // left front bottom, on the case's front plane
	work                 *caseWork
	// The boards that bound it, for housings and why a divider is as long as it is.
	left, right, below, above *Part
}

// division is how one axis of a space is shared out: the cells and what stands
// between them, in the order of the text.
type division struct {
	rows    bool
	total   why.Size
	cells   []*design.Cell
	sizes   []why.Size
	between []why.Size
}

// divide shares a space out among its cells: fixed sizes first, then the rest
// in proportion. It reports what does not add up and asks which size gives.
func (b *builder) divide(s *design.Space, c bay) (division, bool) {
	d := division{rows: len(s.Rows) > 0, cells: s.Cells(), total: c.width}
	if d.rows {
		d.total = c.height
	}
	for i, between := range s.Between {
		d.between = append(d.between, b.betweenThickness(between, c, i))
	}
	return d, b.share(&d, s.At)
}

func (d *division) axis() string {
	if d.rows {
		return "height"
	}
	return "width"
}

func (d *division) cellName(c *design.Cell) string {
	kind := "column"
	if d.rows {
		kind = "row"
	}
	return kind + " " + quote(c.Name)
}

// share fills d.sizes. The rest is what fixed cells and boards leave.
func (b *builder) share(d *division, at diag.Span) bool {
	taken := []why.Term{why.Plus(d.total)}
	var free []int
	for i, c := range d.cells {
		if c.Size.Given() {
			size := c.Size.Named(d.axis() + " of " + d.cellName(c))
			taken = append(taken, why.Minus(size))
			d.sizes = append(d.sizes, size)
			continue
		}
		free = append(free, i)
		d.sizes = append(d.sizes, why.Size{})
	}
	taken = append(taken, gather(d.between)...)
	rest := why.Sum("what is left of the "+d.axis(), taken...)
	if len(free) == 0 {
		return b.overConstrained(d, rest.Length(), at)
	}
	if len(free) == 1 && !d.cells[free[0]].Step.Given() {
		c := d.cells[free[0]]
		d.sizes[free[0]] = why.Sum(d.axis()+" of "+d.cellName(c), taken...)
	} else {
		b.shareRest(d, rest, free)
	}
	for _, i := range free {
		if d.sizes[i].Length() < smallestOpening {
			return b.nothingLeft(d, d.cells[i], d.sizes[i].Length(), at)
		}
	}
	return true
}

// smallestOpening is the least clear size that is still an opening at all.
const smallestOpening = 3 * measure.Millimetre

// shareRest shares the rest among several free cells by their shares, after
// the steps of a graduated bank are set aside.
func (b *builder) shareRest(d *division, rest why.Size, free []int) {
	steps := make([]measure.Length, len(free))
	var climb, stepped measure.Length
	weights := make([]int64, len(free))
	inputs := []why.Size{rest}
	for k, i := range free {
		c := d.cells[i]
		climb += c.Step.Length()
		steps[k] = climb
		stepped += climb
		weights[k] = shareWeight(c.Share)
		inputs = append(inputs, c.Step)
	}
	parts := measure.Share(rest.Length()-stepped, weights)
	for k, i := range free {
		c := d.cells[i]
		rule := proportion(weights, k)
		if stepped != 0 {
			rule = fmt.Sprintf("the steps of the bank, %s in all, are set aside and the rest is shared equally", b.fmt(stepped))
			if steps[k] != 0 {
				rule += fmt.Sprintf("; this row is %s higher than the first", b.fmt(steps[k]))
			}
		}
		d.sizes[i] = why.Rule(d.axis()+" of "+d.cellName(c), parts[k]+steps[k], rule, "", inputs...)
	}
}

// steps are the step of a graduated bank, and all its steps together.
func (d *division) steps() (step, all measure.Length) {
	var climb measure.Length
	for _, c := range d.cells {
		if c.Step.Given() {
			step = c.Step.Length()
		}
		climb += c.Step.Length()
		all += climb
	}
	return step, all
}

// shareWeight turns a share such as 1.5 into a whole weight; a thousandth is
// finer than anyone proportions a drawer bank.
func shareWeight(n design.Number) int64 {
	if !n.Set {
		return 1_000_000
	}
	return max(1, int64(n.Value*1_000_000+0.5))
}

func proportion(weights []int64, k int) string {
	same := true
	for _, w := range weights {
		same = same && w == weights[0]
	}
	if same {
		return fmt.Sprintf("one of %d equal shares of what is left", len(weights))
	}
	var sum int64
	for _, w := range weights {
		sum += w
	}
	return fmt.Sprintf("a share of %.4g in %.4g of what is left", float64(weights[k])/1e6, float64(sum)/1e6)
}

// gather takes each size away once, like sizes together so that a sum reads
// "2 × 3/4" and not "3/4 − 3/4".
func gather(sizes []why.Size) []why.Term {
	var terms []why.Term
next:
	for _, s := range sizes {
		for i := range terms {
			if terms[i].Of == s || (terms[i].Of.Length() == s.Length() && terms[i].Of.Name() == s.Name()) {
				terms[i].Times--
				continue next
			}
		}
		terms = append(terms, why.Minus(s))
	}
	return terms
}

// overConstrained reports sizes that do not fill the space, and for each what
// it would have to be if it gave.
func (b *builder) overConstrained(d *division, left measure.Length, at diag.Span) bool {
	if left == 0 {
		return true
	}
	off, word := left, "too little"
	if left < 0 {
		off, word = -left, "too much"
	}
	g := diag.Diagnostic{
		Code: "E310", Severity: diag.Error, Subject: at,
		Summary: fmt.Sprintf("the %ss add up to %s, the space is %s: %s %s", d.axis(),
			b.fmt(d.total.Length()-left), b.fmt(d.total.Length()), b.fmt(off), word),
		Detail: fmt.Sprintf("Every %s here is fixed, so none can give. Which number gives? Change one of them as shown, or take one away and it becomes what is left.", d.axis()),
	}
	for _, c := range d.cells {
		would := c.Size.Length() + left
		if would < smallestOpening || c.Size.At().IsZero() {
			continue
		}
		g.Related = append(g.Related, diag.Related{Span: c.Size.At(),
			Message: fmt.Sprintf("%s would become %s instead of %s", d.cellName(c), b.fmt(would), b.fmt(c.Size.Length()))})
		g.Edits = append(g.Edits, diag.Edit{Span: c.Size.At(), Text: b.literal(would),
			Says: fmt.Sprintf("let %s give: %s", d.cellName(c), b.fmt(would))})
	}
	b.report(g)
	return false
}

func (b *builder) nothingLeft(d *division, c *design.Cell, got measure.Length, at diag.Span) bool {
	detail := fmt.Sprintf("The space is %s. Make a fixed %s beside it smaller, or make the case larger.", b.fmt(d.total.Length()), d.axis())
	if step, steps := d.steps(); steps > 0 {
		detail = fmt.Sprintf("The space is %s, and with steps of %s the rows below take %s more than this one in all. Make the step smaller, or the case larger.",
			b.fmt(d.total.Length()), b.fmt(step), b.fmt(steps))
	}
	g := diag.Diagnostic{
		Code: "E311", Severity: diag.Error, Subject: c.At,
		Summary: fmt.Sprintf("nothing is left for %s: its %s would be %s", d.cellName(c), d.axis(), b.fmt(got)),
		Detail:  detail,
	}
	for _, o := range d.cells {
		if o.Size.Given() && !o.Size.At().IsZero() {
			g.Related = append(g.Related, diag.Related{Span: o.Size.At(), Message: d.cellName(o) + " takes " + b.fmt(o.Size.Length())})
		}
	}
	if g.Subject.IsZero() {
		g.Subject = at
	}
	b.report(g)
	return false
}

// fillSpace divides the space and builds what stands in it, down to the
// openings and what fills them.
func (b *builder) fillSpace(s *design.Space, c bay) {
	if b.tooMany(s.At) {
		return
	}
	if !s.Split() {
		b.fillOpening(s, c)
		return
	}
	d, ok := b.divide(s, c)
	if !ok {
		return
	}
	b.fills(d.axis()+"s in "+c.path, d.total, append(append([]why.Size{}, d.sizes...), d.between...)...)
	cells, boards := place(d, c)
	// The boards between come first: what fills the cells is housed in them.
	made := make([]*Part, len(boards))
	for i, bc := range boards {
		made[i] = b.between(s.Between[i], d, bc, c, i)
	}
	for i := range cells {
		cells[i].path = c.path + "." + d.cells[i].Name
		before, after := neighbour(made, i-1), neighbour(made, i)
		if d.rows { // from the top down
			cells[i].above, cells[i].below = orPart(before, c.above), orPart(after, c.below)
		} else {
			cells[i].left, cells[i].right = orPart(before, c.left), orPart(after, c.right)
		}
		b.fillSpace(&d.cells[i].Space, cells[i])
	}
}

func neighbour(made []*Part, i int) *Part {
	if i < 0 || i >= len(made) {
		return nil
	}
	return made[i]
}

func orPart(p, q *Part) *Part {
	if p != nil {
		return p
	}
	return q
}

// place gives each cell and each board between its own clear space: rows from
// the top down, columns from left to right.
func place(d division, c bay) (cells, boards []bay) {
	at := c.corner
	if d.rows {
		at.Z += d.total.Length()
	}
	step := func(size why.Size) bay {
		o := c
		o.corner = at
		if d.rows {
			at.Z -= size.Length()
			o.corner.Z, o.height = at.Z, size
		} else {
			at.X += size.Length()
			o.width = size
		}
		return o
	}
	for i := range d.cells {
		cells = append(cells, step(d.sizes[i]))
		if i < len(d.between) {
			boards = append(boards, step(d.between[i]))
		}
	}
	return cells, boards
}
