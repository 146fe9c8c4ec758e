package view

import "math"

// Project draws bodies as the camera sees them. Bodies are not changed. What
// cannot be drawn is skipped and named in the drawing.
func Project(bodies []Body, cam Camera, opts Options) Drawing {
	s := stage(bodies, cam, opts)
	a := arrange(s.segments(), coincident)
	m := &mapped{scene: s, arrangement: a, cast: newCaster(s)}
	m.look()
	d := Drawing{Lines: m.draw(), Seen: s.seen, Skipped: s.skips}
	if opts.Fills {
		d.Fills = m.fills()
		d.weigh()
	}
	d.bound()
	return d
}

func (s *scene) segments() [][2]Point2 {
	out := make([][2]Point2, len(s.lines))
	for i, l := range s.lines {
		out[i] = [2]Point2{l.a, l.b}
	}
	return out
}

// mapped is the plane of the picture divided, with what is seen on both sides
// of each piece. Everything drawn is read off it.
type mapped struct {
	*scene
	*arrangement
	cast        *caster
	left, right []int32 // faces, by piece
}

func (m *mapped) look() {
	m.left = make([]int32, len(m.pieces))
	m.right = make([]int32, len(m.pieces))
	for i := range m.pieces {
		l, r := m.flanks(i)
		m.left[i], _ = m.cast.at(l)
		m.right[i], _ = m.cast.at(r)
	}
	m.settle(m.left, m.right)
}

// draw makes a line of every piece that is one, and joins them.
func (m *mapped) draw() []Line {
	var marks []mark
	for i := range m.pieces {
		k, ok := m.shown(i)
		if !ok {
			k, ok = m.covered(i)
		}
		if ok {
			marks = append(marks, k)
		}
	}
	return join(marks, m.arrangement)
}

// shown tells whether a piece is seen as a line: it is where the faces on its
// two sides differ and do not go over into each other.
func (m *mapped) shown(i int) (mark, bool) {
	l, r := m.left[i], m.right[i]
	if l == r {
		return mark{}, false
	}
	k := mark{u: m.pieces[i].u, v: m.pieces[i].v}
	if l == nothing || r == nothing {
		return k.of(&m.faces[max(l, r)]), true // nothing is below all faces
	}
	f, g := &m.faces[l], &m.faces[r]
	mid := m.middle(i)
	if !m.meet(i, mid, f, g) {
		if f.plane.t(mid) > g.plane.t(mid) {
			f = g
		}
		return k.of(f), true
	}
	k.kind = Joint
	if f.body == g.body {
		k.kind = Edge
		if bendOf(f, g) != sharp {
			return mark{}, false
		}
	}
	if g.body < f.body || g.body == f.body && g.tag < f.tag {
		f = g
	}
	return k.of(f), true
}

func bendOf(f, g *facing) bend {
	return bendAt(&Face{Tag: f.tag, Curved: f.curved}, &Face{Tag: g.tag, Curved: g.curved}, f.normal, g.normal)
}

// meet tells whether two faces touch along a piece: one of the edges that made
// it must lie in both planes. The planes alone would not do: a face seen
// nearly from its edge has no depth to speak of.
func (m *mapped) meet(i int, mid Point2, f, g *facing) bool {
	for _, o := range m.ownersOf(m.pieces[i]) {
		v := m.cam.unlens(mid, m.lines[o].t(mid))
		if math.Abs(f.plane.off(v)) < touching && math.Abs(g.plane.off(v)) < touching {
			return true
		}
	}
	return false
}

// t is the line's at the place on it nearest to p.
func (l *line) t(p Point2) float64 {
	d := l.b.minus(l.a)
	k := d.dot(p.minus(l.a)) / d.dot(d)
	return l.ta + k*(l.tb-l.ta)
}

// covered tells whether a piece that is not seen has to be dashed, and for
// whose sake: the nearest of its edges.
func (m *mapped) covered(i int) (mark, bool) {
	mid := m.middle(i)
	best, bestT := nothing, 0.0
	for _, o := range m.ownersOf(m.pieces[i]) {
		l := &m.lines[o]
		if !l.dashed {
			continue
		}
		if t := l.t(mid); best == nothing || t < bestT-m.cam.thickness(t, touching) {
			best, bestT = o, t
		}
	}
	if best == nothing {
		return mark{}, false
	}
	l := &m.lines[best]
	return mark{
		u: m.pieces[i].u, v: m.pieces[i].v,
		hidden: true, kind: l.kind, body: l.owner, id: l.id, tag: l.tag,
	}, true
}

// weigh adds up what is seen of each body.
func (d *Drawing) weigh() {
	sum := map[int]float64{}
	for _, f := range d.Fills {
		sum[f.Body] += area(f.Outer)
		for _, h := range f.Holes {
			sum[f.Body] += area(h)
		}
	}
	for i := range d.Seen {
		d.Seen[i].Visible = sum[d.Seen[i].Body]
	}
}

func (d *Drawing) bound() {
	if len(d.Seen) == 0 {
		return
	}
	all := nowhere()
	for _, s := range d.Seen {
		all.take(s.Bounds.Min)
		all.take(s.Bounds.Max)
	}
	d.Bounds = all
}
