package solid

import (
	"encoding/binary"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid/csg"
)

// Model is a whole piece in three dimensions.
type Model struct {
	Piece  *piece.Piece
	Bodies []*Body // in the order of the piece's parts

	byPart map[*piece.Part]*Body
	cache  *Cache
}

// Cache remembers shapes and fits between calls, so that after a change only
// what changed is worked out again. The zero Cache is empty and ready; it is
// for one caller at a time.
type Cache struct {
	solids map[string]built
	fits   map[string]csg.Fit
}

type built struct {
	solid   *csg.Solid
	err     error
	moments csg.Moments
	blank   measure.Volume
}

// Build makes the solids of a piece. Parts that cannot be are reported at the
// text that caused them and left without a solid. cache may be nil.
func Build(p *piece.Piece, cache *Cache) (*Model, diag.List) {
	if cache == nil {
		cache = &Cache{}
	}
	if cache.solids == nil {
		cache.solids, cache.fits = map[string]built{}, map[string]csg.Fit{}
	}
	m := &Model{Piece: p, cache: cache, Bodies: make([]*Body, 0, len(p.Parts)), byPart: map[*piece.Part]*Body{}}
	var list diag.List
	for i, q := range p.Parts {
		b := &Body{Part: q, Shape: shape(q), index: i}
		m.byPart[q] = b
		b.key = key(b.Shape)
		s := cache.solid(b)
		b.Solid, b.Blank = s.solid, s.blank
		if s.err != nil {
			list = append(list, fault(q, s.err)...)
		}
		if s.solid != nil {
			b.Volume = s.moments.Volume
			b.Centre = InPiece(q.Place, s.moments.Centroid)
			b.weigh(&list)
		}
		m.Bodies = append(m.Bodies, b)
	}
	return m, list.Sort()
}

func (c *Cache) solid(b *Body) built {
	if s, ok := c.solids[b.key]; ok {
		return s
	}
	var s built
	s.solid, s.err = csg.Build(b.Shape)
	if s.solid != nil {
		s.moments = s.solid.Moments()
	}
	if blank, err := csg.Build(csg.Body{Base: b.Shape.Base}); err == nil {
		s.blank = blank.Volume()
	}
	c.solids[b.key] = s
	return s
}

// weigh gives the body its mass; a wood without a density is said once a part.
func (b *Body) weigh(list *diag.List) {
	mass, err := b.Part.Wood.Species.MassOf(b.Volume, b.Part.Wood.Moisture)
	if err != nil {
		*list = append(*list, diag.Diagnostic{Code: "N401", Severity: diag.Note, Subject: b.Part.Wood.At,
			Summary: "the weight of " + b.Part.Wood.Name + " is not known", Detail: err.Error()})
		return
	}
	b.Mass = mass
}

// InPiece is a place of the part's frame in the piece's, in millimetres.
func InPiece(place piece.Place, at [3]float64) [3]float64 {
	o := place.Point(0, 0, 0)
	out := [3]float64{o.X.Millimetres(), o.Y.Millimetres(), o.Z.Millimetres()}
	for i, d := range [3]piece.Dir{place.L, place.W, place.T} {
		axis, sign := axisOf(d)
		out[axis] += sign * at[i]
	}
	return out
}

func axisOf(d piece.Dir) (axis int, sign float64) {
	if d < 0 {
		return int(-d) - 1, -1
	}
	return int(d) - 1, 1
}

// key is the shape as bytes: equal for equal shapes only.
func key(b csg.Body) string {
	out := prismKey(nil, b.Base)
	for _, c := range b.Cuts {
		out = prismKey(out, c)
	}
	return string(out)
}

func prismKey(out []byte, p csg.Prism) []byte {
	out = append(out, byte(p.Axis))
	out = binary.AppendVarint(out, int64(p.From))
	out = binary.AppendVarint(out, int64(p.To))
	out = binary.AppendUvarint(out, uint64(len(p.Outline)))
	for _, q := range p.Outline {
		out = binary.AppendVarint(out, int64(q.U))
		out = binary.AppendVarint(out, int64(q.V))
	}
	return out
}
