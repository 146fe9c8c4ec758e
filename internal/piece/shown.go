package piece

import (
	"casewright/internal/measure"
	"casewright/internal/why"
)

// Filling is a space and the sizes that fill it exactly.
type Filling struct {
	Name    string
	Total   why.Size
	Members []why.Size
	Fine    bool // members meet in a gap: printed to the gap graduation
}

// Fillings lists, from the outside in, every space of the piece whose parts
// must add up on paper: cells in their opening, a door or drawer in its own.
func (p *Piece) Fillings() []Filling { return p.fillings }

func (b *builder) fills(name string, fine bool, total why.Size, members ...why.Size) {
	b.p.fillings = append(b.p.fillings, Filling{name, total, members, fine})
}

// settleShown rounds once for the whole piece, from the outside in: what fills
// a space is rounded together so that the printed sizes add up to the printed
// space. A size that already has its printed value keeps it.
func (b *builder) settleShown() {
	for _, f := range b.p.fillings {
		b.p.settle(f)
	}
}

func (p *Piece) settle(f Filling) {
	g := p.Spec.Commission.Rule
	if f.Fine {
		g = p.Spec.Commission.Gaps
	}
	free := p.shownTo(f.Total, g)
	var open []why.Size
	var exact []measure.Length
	var sum measure.Length
	for _, m := range f.Members {
		if _, settled := p.shown[m.Root()]; !settled && times(f.Members, m) == 1 {
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
