package view

import (
	"cmp"
	"slices"
)

// bend is what happens between the faces at an edge.
type bend int

const (
	level  bend = iota // both lie in one plane: nothing to draw
	smooth             // facets of one curve: drawn where it turns out of sight
	sharp              // an arris
)

// level and smooth end at these. Facets that turn by more than 30° at once are
// a corner in the curve, as where the flats of a front meet its bow. Our choice.
const (
	levelSine    = 1e-5
	smoothCosine = 0.866
)

// arris is an edge of a body with the faces that meet there, most often two.
type arris struct {
	a, b  Vec3
	faces []int // indices among the body's faces
}

// half is one face's side of an edge, from the lower to the higher corner.
type half struct {
	lo, hi int32
	face   int
}

// arrises finds the edges of one body. Where an edge of one face runs along
// several of another, it is split at their corners first.
func arrises(b *Body, sound []bool) []arris {
	w := newWelds(welded, 4*len(b.Faces))
	var halves []half
	for i := range b.Faces {
		if !sound[i] {
			continue
		}
		for _, r := range b.Faces[i].rings() {
			halves = appendHalves(halves, w, r, i)
		}
	}
	paired, loose := pair(halves)
	if len(loose) > 0 {
		more, still := pair(splitAtCorners(loose, w))
		paired = append(append(paired, more...), still...)
	}
	return resolve(paired, w)
}

func appendHalves(halves []half, w *welds, ring []Vec3, face int) []half {
	ids := make([]int32, len(ring))
	for i, p := range ring {
		ids[i] = w.id(p)
	}
	for i, a := range ids {
		if b := ids[(i+1)%len(ids)]; a != b {
			halves = append(halves, half{min(a, b), max(a, b), face})
		}
	}
	return halves
}

func byCorners(a, b half) int {
	return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi), cmp.Compare(a.face, b.face))
}

// pair sorts halves so that those of one edge follow each other, and takes out
// those that have no partner.
func pair(halves []half) (paired, loose []half) {
	slices.SortFunc(halves, byCorners)
	for i := 0; i < len(halves); {
		j := i + 1
		for j < len(halves) && halves[j].lo == halves[i].lo && halves[j].hi == halves[i].hi {
			j++
		}
		if j == i+1 {
			loose = append(loose, halves[i])
		} else {
			paired = append(paired, halves[i:j]...)
		}
		i = j
	}
	return paired, loose
}

// splitAtCorners splits every half where a corner of another lies on it.
func splitAtCorners(loose []half, w *welds) (out []half) {
	var corners []int32
	for _, h := range loose {
		corners = append(corners, h.lo, h.hi)
	}
	slices.Sort(corners)
	corners = slices.Compact(corners)
	for _, h := range loose {
		on := cornersOn(h, corners, w)
		for i := 0; i+1 < len(on); i++ {
			a, b := on[i], on[i+1]
			out = append(out, half{min(a, b), max(a, b), h.face})
		}
	}
	return out
}

// cornersOn are the corners on a half in the order they come, its ends among
// them.
func cornersOn(h half, corners []int32, w *welds) []int32 {
	type stop struct {
		id int32
		k  float64
	}
	a, b := w.at[h.lo], w.at[h.hi]
	d, _ := a.toward(b).unit()
	long := a.toward(b).length()
	stops := []stop{{h.lo, 0}, {h.hi, long}}
	for _, c := range corners {
		k := a.toward(w.at[c]).dot(d)
		if c == h.lo || c == h.hi || k <= 0 || k >= long {
			continue
		}
		if near(a.plus(d.times(k)), w.at[c], welded) {
			stops = append(stops, stop{c, k})
		}
	}
	slices.SortFunc(stops, func(s, t stop) int { return cmp.Compare(s.k, t.k) })
	out := make([]int32, len(stops))
	for i, s := range stops {
		out[i] = s.id
	}
	return out
}

// resolve makes arrises of halves; those of one edge may stand apart in the
// list, as when one was found before splitting and one after.
func resolve(halves []half, w *welds) []arris {
	slices.SortFunc(halves, byCorners)
	var out []arris
	for i, h := range halves {
		if i > 0 && h.lo == halves[i-1].lo && h.hi == halves[i-1].hi {
			last := &out[len(out)-1]
			last.faces = append(last.faces, h.face)
			continue
		}
		out = append(out, arris{w.at[h.lo], w.at[h.hi], []int{h.face}})
	}
	return out
}

// bendAt tells how two faces of one body meet.
func bendAt(f, g *Face, n, m Vec3) bend {
	c := n.dot(m)
	switch {
	case c > 0 && n.cross(m).length() < levelSine:
		return level
	case f.Curved && g.Curved && f.Tag == g.Tag && c > smoothCosine:
		return smooth
	}
	return sharp
}
