package check

import (
	"fmt"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/wood"
)

// What figures rest on when no published title does.
const (
	practice = "common practice, no source"
	joyce    = "Joyce, The Technique of Furniture Making"
	fww      = "Building Furniture (Fine Woodworking, 2007)"
	noyes    = "Noyes, Handwork in Wood (1910)"
)

// axes of the piece's frame, as piece.Dir counts them.
const (
	acrossCase = piece.Right
	frontBack  = piece.Back
	upright    = piece.Up
)

// extent is where the part lies along an axis of the piece.
func extent(p *piece.Part, axis piece.Dir) (lo, hi measure.Length) {
	a, b := p.Corners()
	switch axis {
	case acrossCase:
		return a.X, b.X
	case frontBack:
		return a.Y, b.Y
	}
	return a.Z, b.Z
}

// side is which way of the part lies along an axis of the piece.
func side(p *piece.Part, axis piece.Dir) wood.Direction {
	switch axis {
	case p.Place.L, -p.Place.L:
		return wood.Length
	case p.Place.W, -p.Place.W:
		return wood.Width
	}
	return wood.Thickness
}

// move is how much a stretch of the part along an axis of the piece changes
// between two moistures. A wood without figures was reported when the piece
// was built, and is taken not to move.
func move(p *piece.Part, stretch measure.Length, axis piece.Dir, from, to measure.MoistureContent) wood.Move {
	m, err := p.Wood.Species.Move(stretch, from, to, p.Wood.Cut, side(p, axis))
	if err != nil {
		return wood.Move{}
	}
	return m
}

// strain is the most by which two parts, glued together today, would come to
// differ over a stretch in either season, and the movement of the part that
// moves more.
func (r *run) strain(a, b *piece.Part, stretch measure.Length, axis piece.Dir) (measure.Length, wood.Move) {
	var most measure.Length
	var rules wood.Move
	for _, to := range [...]measure.MoistureContent{r.p.Air.Damp, r.p.Air.Dry} {
		ma, mb := move(a, stretch, axis, a.Wood.Moisture, to), move(b, stretch, axis, b.Wood.Moisture, to)
		if d := (ma.Change - mb.Change).Abs(); d > most {
			most, rules = d, ma
			if mb.Change.Abs() > ma.Change.Abs() {
				rules = mb
			}
		}
	}
	return most, rules
}

// source tells where a movement's figures are from.
func source(m wood.Move) string {
	mark := ""
	if m.Status.FromMemory() {
		mark = " (from memory)"
	}
	return m.Equation + "; " + m.Source + mark
}

// points prints a moisture content: "11.0 %".
func points(mc measure.MoistureContent) string { return fmt.Sprintf("%.1f %%", float64(mc)) }

// quartered is how much the part's width would change in the same air if it
// were quartersawn; ok is false where that is no less.
func quartered(p *piece.Part, m wood.Move) (measure.Length, bool) {
	q, err := p.Wood.Species.Move(m.Size, m.From, m.To, wood.QuarterSawn, wood.Width)
	if err != nil {
		return 0, false
	}
	return q.Change, q.Change.Abs() < m.Change.Abs()*9/10
}
