package view

import (
	"cmp"
	"slices"
)

// fills are the visible areas of faces.
func (m *mapped) fills() []Fill {
	patches := trace(m.arrangement, m.left, m.right)
	out := make([]Fill, 0, len(patches))
	for _, p := range patches {
		f := &m.faces[p.region]
		out = append(out, Fill{Body: f.id, Tag: f.tag, Normal: f.normal, Outer: p.outer, Holes: p.holes})
	}
	return sortFills(out)
}

func sortFills(fills []Fill) []Fill {
	slices.SortStableFunc(fills, func(a, b Fill) int {
		return cmp.Or(cmp.Compare(a.Body, b.Body), cmp.Compare(a.Tag, b.Tag),
			slices.CompareFunc(a.Outer, b.Outer, func(p, q Point2) int {
				return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y))
			}))
	})
	return fills
}
