package view

import (
	"cmp"
	"slices"
)

// Body is one closed solid: its faces together leave no gap, and each runs
// counter-clockwise seen from outside. Bodies are only read, never changed.
type Body struct {
	// ID is handed on to every line, fill and cap of this body.
	ID int
	// Faces may meet without sharing corners: an edge of one may run along
	// several of another.
	Faces []Face
	// Box holds all corners. It may be left zero, and is then measured.
	Box Box
}

// Face is a flat piece of a body's surface.
type Face struct {
	// Outer runs counter-clockwise seen from outside, Holes clockwise.
	Outer []Vec3
	Holes [][]Vec3
	// Normal points out of the body. Zero, or at odds with Outer, it is taken
	// from Outer; its length does not matter.
	Normal Vec3
	// Tag is handed on with what is drawn of the face. Negative tags are this
	// package's own, see [CapTag].
	Tag int
	// Curved marks a facet of a flattened curve. Two facets of one body with
	// the same Tag belong to the same curve: the edge between them is drawn
	// only where the curve turns out of sight.
	Curved bool
}

// Moved is the body pushed along by d, for exploded views. The faces are new;
// an unmeasured Box stays so.
func (b Body) Moved(d Vec3) Body {
	out := Body{ID: b.ID, Faces: slices.Clone(b.Faces)}
	for i := range out.Faces {
		f := &out.Faces[i]
		f.Outer = shifted(f.Outer, d)
		f.Holes = slices.Clone(f.Holes)
		for h := range f.Holes {
			f.Holes[h] = shifted(f.Holes[h], d)
		}
	}
	if b.Box != (Box{}) {
		out.Box = Box{b.Box.Min.plus(d), b.Box.Max.plus(d)}
	}
	return out
}

func shifted(ring []Vec3, d Vec3) []Vec3 {
	out := make([]Vec3, len(ring))
	for i, p := range ring {
		out[i] = p.plus(d)
	}
	return out
}

// rings are the outline and the holes that have an extent.
func (f *Face) rings() [][]Vec3 {
	out := [][]Vec3{f.Outer}
	for _, h := range f.Holes {
		if len(h) >= 3 {
			out = append(out, h)
		}
	}
	return out
}

// Skip is something that was left out of a drawing, and why.
type Skip struct {
	// Body is the body's ID; Face is the index among its faces, -1 for the
	// whole body.
	Body, Face int
	// Why is for the person who wrote the caller, not for the maker.
	Why string
}

// fault tells what keeps a face from being drawn; "" if nothing does. The
// normal is the one to use.
func (f *Face) fault() (normal Vec3, why string) {
	for _, r := range append([][]Vec3{f.Outer}, f.Holes...) {
		for _, p := range r {
			if !p.finite() {
				return Vec3{}, "a corner is not a place: NaN, infinite or beyond 100 km"
			}
		}
	}
	if len(f.Outer) < 3 {
		return Vec3{}, "fewer than three corners"
	}
	wound := winding(f.Outer)
	n, ok := wound.unit()
	if !ok || wound.length() < flatOut*perimeter(f.Outer) {
		return Vec3{}, "no area"
	}
	if given, ok := f.Normal.unit(); ok && given.dot(n) > 1-agree {
		return given, ""
	}
	return n, ""
}

// flatOut is the width in mm below which a face is a mistake: the nanometre its
// corners are rounded to.
const flatOut = 1e-6

// agree is how far the cosine between a given normal and the winding may be
// from one: about a tenth of a degree.
const agree = 1e-6

// winding is the vector whose length is twice the ring's area and which points
// where the ring runs counter-clockwise (Newell's sum).
func winding(ring []Vec3) (sum Vec3) {
	for i := range ring {
		p, q := ring[0].toward(ring[i]), ring[0].toward(ring[(i+1)%len(ring)])
		sum = sum.plus(p.cross(q))
	}
	return sum
}

func perimeter(ring []Vec3) (sum float64) {
	for i := range ring {
		sum += ring[i].toward(ring[(i+1)%len(ring)]).length()
	}
	return sum
}

// ranked puts bodies in an order that does not depend on how they were given,
// so that whatever is decided by "the first" is decided the same way.
func ranked(bodies []Body) []*Body {
	out := make([]*Body, len(bodies))
	for i := range bodies {
		out[i] = &bodies[i]
	}
	slices.SortStableFunc(out, func(a, b *Body) int {
		if c := cmp.Compare(a.ID, b.ID); c != 0 {
			return c
		}
		return slices.CompareFunc(a.Faces, b.Faces, func(f, g Face) int {
			if c := slices.CompareFunc(f.Outer, g.Outer, byPlace); c != 0 {
				return c
			}
			return cmp.Compare(f.Tag, g.Tag)
		})
	})
	return out
}

func byPlace(a, b Vec3) int {
	return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y), cmp.Compare(a.Z, b.Z))
}
