package piece

import (
	"cmp"
	"slices"

	"casewright/internal/measure"
	"casewright/internal/why"
)

// Filling is a space and the sizes that fill it exactly.
type Filling struct {
	Name    string
	Total   why.Size
	Members []why.Size
	Body    why.Size // set where gaps surround it: it alone takes up what rounding leaves
}

// fine reports whether members meet in gaps and print to the gap graduation.
func (f Filling) fine() bool { return f.Body.Given() }

// Fillings lists, from the outside in, every space of the piece whose parts
// must add up on paper: cells in their opening, a door or drawer in its own.
func (p *Piece) Fillings() []Filling { return p.fillings }

// fills says that members, side by side, make up the total.
func (b *builder) fills(name string, total why.Size, members ...why.Size) {
	b.p.fillings = append(b.p.fillings, Filling{Name: name, Total: total, Members: members})
}

// fits says that the body stands in the total with gaps, or with frame members
// of the same width, on both sides.
func (b *builder) fits(name string, total, before, body, after why.Size) {
	b.p.fillings = append(b.p.fillings, Filling{Name: name, Total: total, Members: []why.Size{before, body, after}, Body: body})
}

// settleShown rounds once for the whole piece, from the outside in: what fills
// a space is rounded together so that the printed sizes add up to the printed
// space. A size that already has its printed value keeps it.
func (b *builder) settleShown() {
	// What meets at gaps comes last: it is printed finer, and no opening may be
	// printed finer than the cells that share it.
	slices.SortStableFunc(b.p.fillings, func(f, g Filling) int { return cmp.Compare(rank(f), rank(g)) })
	for _, f := range b.p.fillings {
		b.p.settle(f)
	}
	b.settleSums()
}

// settleSums prints what is left as the sum of its printed terms, so that a
// sum told by why adds up on paper; where that would be further than a
// graduation from the truth, the truth is rounded instead.
func (b *builder) settleSums() {
	for _, p := range b.p.Parts {
		for _, s := range []why.Size{p.Shoulder, p.Length, p.Width, p.Thickness} {
			b.p.settleSum(s.Root())
		}
	}
}

func (p *Piece) settleSum(s why.Size) measure.Length {
	if l, ok := p.shown[s]; ok {
		return l
	}
	rule := p.Spec.Commission.Rule
	l := roundTo(s.Length(), rule)
	if terms := s.Terms(); len(terms) > 0 {
		var sum measure.Length
		for _, t := range terms {
			sum += measure.Length(t.Times) * p.settleSum(t.Of.Root())
		}
		if (sum - s.Length()).Abs() < measure.Length(rule) {
			l = sum
		}
	}
	p.shown[s] = l
	return l
}

func rank(f Filling) int {
	if f.fine() {
		return 1
	}
	return 0
}

func (p *Piece) settle(f Filling) {
	g := p.Spec.Commission.Rule
	if f.fine() {
		g = p.Spec.Commission.Gaps
	}
	free := p.shownTo(f.Total, g)
	var open []why.Size
	var exact []measure.Length
	var sum measure.Length
	for _, m := range f.Members {
		if _, settled := p.shown[m.Root()]; !settled && times(f.Members, m) == 1 && (!f.fine() || m == f.Body) {
			open, exact = append(open, m), append(exact, m.Length())
			sum += m.Length()
			continue
		}
		free -= p.shownTo(m, g) // twice the same size is rounded alone, or it could not be the same twice
	}
	if len(open) == 0 {
		return
	}
	exact[0] += free - sum // what sizes settled before have gained or lost
	for i, l := range measure.Fill(free, exact, g) {
		p.shown[open[i].Root()] = l
	}
}

func times(members []why.Size, m why.Size) int {
	n := 0
	for _, o := range members {
		if o.Root() == m.Root() {
			n++
		}
	}
	return n
}

// shownTo is the size's printed value, settled now if it was not before.
func (p *Piece) shownTo(s why.Size, g measure.Graduation) measure.Length {
	if l, ok := p.shown[s.Root()]; ok {
		return l
	}
	l := roundTo(s.Length(), g)
	p.shown[s.Root()] = l
	return l
}
