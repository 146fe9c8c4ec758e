package book

import (
	"strings"

	"casewright/internal/design"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/why"
)

// strip is sizes side by side: stops along one axis of the piece, and what
// lies between them.
type strip struct {
	from  measure.Length
	sizes []why.Size
	total why.Size
	// where the strip stands, across: the middle of the cell it divides
	across measure.Length
}

func (s strip) stops() []measure.Length {
	out := []measure.Length{s.from}
	for i, z := range s.sizes {
		out = append(out, out[i]+z.Length())
	}
	return out
}

// on turns the strip into a dimension on one side of a front view.
func (s strip) on(side sheet.Side) dimension {
	return dimension{side: side, stops: s.stops(), sizes: s.sizes, total: s.total}
}

// filling is the piece's own record of what fills a space.
func (m *maker) filling(name string) (piece.Filling, bool) {
	for _, f := range m.p.Fillings() {
		if f.Name == name {
			return f, true
		}
	}
	return piece.Filling{}, false
}

// caseOf is the design of a case.
func (m *maker) caseOf(a *piece.Assembly) *design.Case {
	for _, c := range m.p.Spec.Cases {
		if c.Name == a.Path {
			return c
		}
	}
	return nil
}

// boards are the case's own thicknesses: sides, top, bottom.
type boards struct{ side, top, bottom why.Size }

func (m *maker) boardsOf(a *piece.Assembly) boards {
	var b boards
	for _, p := range a.Parts {
		switch strings.TrimPrefix(p.Path, a.Path+".") {
		case "side.left":
			b.side = p.Thickness
		case "top", "top_rail.front":
			b.top = p.Thickness
		case "bottom":
			b.bottom = p.Thickness
		}
	}
	return b
}

// caseChains are the chains around the front of a case: how its inside is
// shared out, and its size over all.
func (m *maker) caseChains(a *piece.Assembly) []dimension {
	c := m.caseOf(a)
	if c == nil {
		return nil
	}
	k := &chainer{m: m, a: a, boards: m.boardsOf(a)}
	k.space(&c.Inside, a.Path, k.inside())
	out := []dimension{
		strip{from: a.Corner.X, sizes: []why.Size{a.Size[0]}}.on(sheet.Below),
		strip{from: a.Corner.Z, sizes: []why.Size{a.Size[1]}}.on(sheet.LeftOf),
	}
	return append(append(out, k.widths()...), k.heights()...)
}

// chainer walks the inside of a case and collects strips.
type chainer struct {
	m       *maker
	a       *piece.Assembly
	boards  boards
	rows    []strip // upright ones, left to right as found
	columns []strip // level ones, from the top down as found
}

// cell is a clear space in the front's plane.
type cell struct{ x, z, w, h measure.Length }

func (k *chainer) inside() cell {
	b := k.boards
	at := k.a.Corner
	return cell{at.X + b.side.Length(), at.Z + b.bottom.Length(),
		k.a.Size[0].Length() - 2*b.side.Length(), k.a.Size[1].Length() - b.top.Length() - b.bottom.Length()}
}

// space records the strips of a space and of the cells in it.
func (k *chainer) space(s *design.Space, path string, c cell) {
	axis := "widths"
	if len(s.Rows) > 0 {
		axis = "heights"
	}
	f, ok := k.m.filling(axis + " in " + path)
	if !ok {
		return
	}
	cells := s.Cells()
	members := interleave(f.Members, len(cells))
	if axis == "heights" {
		k.rows = append(k.rows, strip{from: c.z, sizes: reversed(members), total: f.Total, across: c.x + c.w/2})
	} else {
		k.columns = append(k.columns, strip{from: c.x, sizes: members, total: f.Total, across: c.z + c.h/2})
	}
	at := c
	top := c.z + c.h
	for i, size := range members {
		l := size.Length()
		if axis == "heights" {
			top -= l
			at.z, at.h = top, l
		} else {
			at.w = l
		}
		if i%2 == 0 {
			d := cells[i/2]
			k.space(&d.Space, path+"."+d.Name, at)
		}
		if axis == "widths" {
			at.x += l
		}
	}
}

// interleave puts the boards between the cells they part.
func interleave(members []why.Size, cells int) []why.Size {
	var out []why.Size
	for i := range cells {
		out = append(out, members[i])
		if cells+i < len(members) {
			out = append(out, members[cells+i])
		}
	}
	return out
}

func reversed(s []why.Size) []why.Size {
	out := make([]why.Size, len(s))
	for i, v := range s {
		out[len(s)-1-i] = v
	}
	return out
}

// widths stand above and below: the first strip that parts the whole width
// above, the last below. Others are left to the sheets of their assemblies.
func (k *chainer) widths() []dimension {
	var full []strip
	in := k.inside()
	for _, s := range k.columns {
		if s.from == in.x {
			s.from -= k.boards.side.Length()
			s.sizes = append(append([]why.Size{k.boards.side}, s.sizes...), k.boards.side)
			s.total = k.a.Size[0]
			full = append(full, s)
		}
	}
	switch len(full) {
	case 0:
		return nil
	case 1:
		return []dimension{full[0].on(sheet.Below)}
	}
	return []dimension{full[0].on(sheet.Above), full[len(full)-1].on(sheet.Below)}
}

// heights stand at the right; where columns are parted differently, the first
// at the left and those between within the view.
func (k *chainer) heights() []dimension {
	whole := k.upright()
	var out []dimension
	for i, s := range whole {
		s.from -= k.boards.bottom.Length()
		s.sizes = append(append([]why.Size{k.boards.bottom}, s.sizes...), k.boards.top)
		s.total = k.a.Size[1]
		switch {
		case i == len(whole)-1:
			out = append(out, s.on(sheet.RightOf))
		case i == 0:
			out = append(out, s.on(sheet.LeftOf))
		default:
			out = append(out, s.inside())
		}
	}
	return out
}

// inside is the strip as a chain within the view, at the middle of its cell.
func (s strip) inside() dimension {
	d := s.on(sheet.RightOf)
	x := s.across.Millimetres()
	d.at = &x
	return d
}

// upright are the strips that part the whole height, with what parts one of
// their cells further put in its place. Strips that repeat another are left
// out.
func (k *chainer) upright() []strip {
	in := k.inside()
	var whole []strip
	for _, s := range k.rows {
		if s.from != in.z || s.total.Length() != in.h {
			continue
		}
		s = k.finer(s)
		if !repeats(whole, s) {
			whole = append(whole, s)
		}
	}
	return whole
}

// finer replaces a cell that is itself parted in rows by its rows.
func (k *chainer) finer(s strip) strip {
	out := s
	out.sizes = nil
	at := s.from
	for _, z := range s.sizes {
		inner, ok := k.rowsAt(at, z.Length(), s.across)
		if ok {
			out.sizes = append(out.sizes, inner.sizes...)
		} else {
			out.sizes = append(out.sizes, z)
		}
		at += z.Length()
	}
	return out
}

func (k *chainer) rowsAt(from, high, across measure.Length) (strip, bool) {
	for _, s := range k.rows {
		if s.from == from && s.total.Length() == high && s.across == across && len(s.sizes) > 1 {
			return s, true
		}
	}
	return strip{}, false
}

func repeats(have []strip, s strip) bool {
	for _, o := range have {
		if len(o.sizes) != len(s.sizes) {
			continue
		}
		alike := true
		for i := range s.sizes {
			alike = alike && o.sizes[i].Length() == s.sizes[i].Length()
		}
		if alike {
			return true
		}
	}
	return false
}

// across is a plain dimension between two places.
func across(side sheet.Side, size why.Size, stops ...measure.Length) dimension {
	d := dimension{side: side, stops: stops}
	if size.Given() {
		d.sizes = []why.Size{size}
	}
	return d
}
