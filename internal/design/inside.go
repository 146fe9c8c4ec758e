package design

import (
	"math/big"
	"slices"
	"strconv"

	"casewright/internal/diag"
)

// finishSpace turns what a space's blocks said into the Space: rows or
// columns in order with exactly one thing between each two, or a fill.
func (r *reader) finishSpace(s *spaceDraft, n node) {
	s.into.At, s.into.Fill = n.head(), s.fill
	nameShelves(r, s.into.Fill.Fixed)
	bank := slices.IndexFunc(s.items, func(i spaceItem) bool { return i.bank != nil })
	switch {
	case len(s.items) == 0:
		return
	case bank >= 0 && len(s.items) > 1:
		at := s.items[bank].span()
		r.diags.add(diag.Diagnostic{Code: "E222", Subject: at, Summary: "a bank fills its whole opening",
			Detail: "Put it in a row or column of its own: row { bank { … } }."})
		return
	case s.fills():
		r.mixedFill(s, n)
		return
	case bank >= 0:
		r.openBank(s, s.items[bank])
		return
	}
	if r.oneWay(s) {
		r.lineUp(s)
	}
}

func (s *spaceDraft) fills() bool {
	f := s.fill
	return f.Drawer != nil || f.Door != nil || f.Shelves != nil || len(f.Fixed) > 0
}

func (r *reader) mixedFill(s *spaceDraft, n node) {
	d := diag.Diagnostic{Code: "E222", Subject: n.head(), Summary: n.where + " is divided and filled at once",
		Detail: "Put what fills it into one of its rows or columns, or take the division away."}
	for _, b := range n.body.Blocks {
		if slices.Contains([]string{"drawer", "door", "shelf", "shelves"}, b.Type) {
			d.Subject = node{f: n.f, block: b}.head()
			break
		}
	}
	d.Related = []diag.Related{{Span: s.items[0].span(), Message: "it is divided here"}}
	r.diags.add(d)
}

// oneWay sees that a space has rows or columns, not both.
func (r *reader) oneWay(s *spaceDraft) bool {
	var first *spaceItem
	for i := range s.items {
		it := &s.items[i]
		switch {
		case it.cell == nil:
		case first == nil:
			first = it
		case it.column != first.column:
			r.diags.add(diag.Diagnostic{Code: "E222", Subject: it.span(), Summary: "rows and columns stand side by side",
				Detail:  "A space is divided one way at a time. Put the columns into a row, or the rows into a column.",
				Related: []diag.Related{{Span: first.span(), Message: "divided here the other way"}}})
			return false
		}
	}
	return true
}

// lineUp puts cells and boards between them in order.
func (r *reader) lineUp(s *spaceDraft) {
	var cells []*Cell
	var between *Between // waits for the cell that follows it
	columns := slices.ContainsFunc(s.items, func(i spaceItem) bool { return i.column })
	for _, it := range s.items {
		if it.between != nil {
			switch {
			case len(cells) == 0:
				r.misplaced(it, "nothing stands before it")
			case between != nil:
				r.misplaced(it, "two boards stand between the same two openings")
			case columns != (it.between.Kind == Partition):
				r.wrongBoard(it, columns)
			default:
				between = it.between
			}
			continue
		}
		if len(cells) > 0 {
			if between == nil {
				between = usualBetween(columns, it.cell.At)
			}
			s.into.Between = append(s.into.Between, between)
		}
		between = nil
		c := &it.cell.Cell
		r.nameCell(c, len(cells)+1, cells)
		cells = append(cells, c)
	}
	if between != nil {
		last := s.items[len(s.items)-1]
		r.misplaced(last, "nothing stands after it")
	}
	if columns {
		s.into.Columns = cells
	} else {
		s.into.Rows = cells
	}
}

func usualBetween(columns bool, at diag.Span) *Between {
	if columns {
		return &Between{Kind: Partition, At: at}
	}
	return &Between{Kind: Divider, At: at}
}

func (r *reader) misplaced(it spaceItem, what string) {
	r.diags.add(diag.Diagnostic{Code: "E221", Subject: it.span(), Summary: "this " + string(it.between.Kind) + " is not between two openings: " + what,
		Detail: "Rows and columns are written in order, with one board between each two. Move it between two of them or take it away."})
}

func (r *reader) wrongBoard(it spaceItem, columns bool) {
	d := diag.Diagnostic{Code: "E221", Subject: it.span(), Summary: "a " + string(it.between.Kind) + " stands between columns, not rows",
		Detail: "Between rows write divider or rail."}
	if columns {
		d.Summary, d.Detail = "a "+string(it.between.Kind)+" lies between rows, not columns", "Between columns write partition."
	}
	r.diags.add(d)
}

// nameCell numbers a cell that has no name, and sees that names differ.
func (r *reader) nameCell(c *Cell, number int, before []*Cell) {
	if c.Name == "" {
		c.Name = strconv.Itoa(number)
	}
	for _, b := range before {
		if b.Name == c.Name {
			r.diags.add(diag.Diagnostic{Code: "E207", Subject: c.At, Summary: "two openings side by side have the name " + quote(clipped(c.Name)),
				Detail:  "Give each a name of its own; one without a name is called by its number.",
				Related: []diag.Related{{Span: b.At, Message: "the first is here"}}})
			return
		}
	}
}

func nameShelves(r *reader, shelves []*Shelf) {
	seen := map[string]diag.Span{}
	for i, s := range shelves {
		if s.Name == "" {
			s.Name = strconv.Itoa(i + 1)
		}
		if first, twice := seen[s.Name]; twice {
			r.diags.add(diag.Diagnostic{Code: "E207", Subject: s.At, Summary: "two shelves of one opening have the name " + quote(clipped(s.Name)),
				Detail:  "Give each a name of its own; one without a name is called by its number.",
				Related: []diag.Related{{Span: first, Message: "the first is here"}}})
		}
		seen[s.Name] = s.At
	}
}

// openBank turns a bank into rows. A step is kept with each row but the first;
// a ratio becomes shares, exact until the last moment.
func (r *reader) openBank(s *spaceDraft, it spaceItem) {
	b := it.bank
	if b.step.Given() && b.ratio.Set {
		r.diags.add(diag.Diagnostic{Code: "E222", Subject: b.ratio.At, Summary: "a bank grows by a step or by a ratio, not by both",
			Detail:  "Keep one of them.",
			Related: []diag.Related{{Span: b.step.At(), Message: "the step is here"}}})
		return
	}
	share := big.NewRat(1, 1)
	grow := big.NewRat(1, 1)
	if b.ratio.Set {
		grow.SetFloat64(b.ratio.Value)
	}
	for i := range int(b.drawers.Value) {
		at := it.span()
		c := &Cell{Name: strconv.Itoa(i + 1), At: at}
		if b.ratio.Set {
			f, _ := share.Float64()
			c.Share = Number{f, true, b.ratio.At}
			share = new(big.Rat).Mul(share, grow)
		}
		if i > 0 {
			c.Step = b.step
			s.into.Between = append(s.into.Between, b.board(at))
		}
		c.Space = Space{Fill: Fill{Drawer: b.copyDrawer(at)}, At: at}
		s.into.Rows = append(s.into.Rows, c)
	}
}

func (b *bankDraft) board(at diag.Span) *Between {
	if b.between == nil {
		return usualBetween(false, at)
	}
	x := *b.between
	return &x
}

func (b *bankDraft) copyDrawer(at diag.Span) *Drawer {
	if b.drawer == nil {
		return &Drawer{At: at}
	}
	x := *b.drawer
	return &x
}

// inherit gives drawers, doors and the boards between openings what blocks
// further out say for them; the nearest that says something holds.
func (r *reader) inherit(t *topDraft) {
	for _, c := range r.cases {
		eachSpace(&c.Inside, func(s *Space) {
			for _, b := range s.Between {
				b.Thickness = b.Thickness.Or(c.Thickness)
			}
			if d := s.Fill.Drawer; d != nil {
				fillFrom(drawerBlock, d, c.drawers, t.drawer)
			}
			if d := s.Fill.Door; d != nil {
				fillFrom(doorBlock, d, c.doors, t.door)
			}
		})
	}
}

func fillFrom[T any](b *block[T], dst *T, sources ...*T) {
	for _, src := range sources {
		if src != nil {
			b.fill(dst, src)
		}
	}
}

func eachSpace(s *Space, do func(*Space)) {
	do(s)
	for _, c := range s.Cells() {
		eachSpace(&c.Space, do)
	}
}
