package csg

import "slices"

// kernel evaluates one solid: the common part of its groups, each a base prism
// less cuts. It goes plane by plane; see METHOD.md beside this file.
type kernel struct {
	mode   mode
	groups int
	prisms []prism // group after group, base first, the rest in order of compare
	clip   box     // nothing outside it can belong to the result

	planes []plane
	number map[plane]int32

	verts  []Vertex
	whole  map[[3]int64]int32
	broken map[[3]float64][]int32

	faces []rawFace
	work  arrangement
}

// mode is what the kernel looks for.
type mode uint8

const (
	skin    mode = iota // the boundary of what all groups have in common
	fitting             // the same, and where two groups touch face to face
	under               // a section: what lies just below one plane
	over                // what lies just above it
)

// rawFace is a face as it comes out of its plane: loops of vertex numbers,
// the outer one first, seen counter-clockwise against the dropped axis.
type rawFace struct {
	plane int32
	class class
	loops [][]int32
}

func newKernel(m mode, groups [][]prism) *kernel {
	k := &kernel{mode: m, groups: len(groups), number: map[plane]int32{}, whole: map[[3]int64]int32{}}
	for g, list := range groups {
		if g == 0 {
			k.clip = list[0].box
		} else {
			k.clip = k.clip.meet(list[0].box)
		}
	}
	if k.clip.flat() < 0 {
		return k
	}
	for g, list := range groups {
		start := len(k.prisms)
		for i, p := range list {
			// What only touches the clip takes nothing away, but may end where two bodies touch.
			if flat := p.box.meet(k.clip).flat(); flat < 0 || (flat > 0 && m == skin) {
				continue
			}
			p.group, p.base = g, i == 0
			if !p.base && !p.trim(list[0].box) {
				continue
			}
			k.prisms = append(k.prisms, p)
		}
		ranked := k.prisms[start:]
		slices.SortFunc(ranked, func(a, b prism) int { return a.compare(&b) })
		// Equal cuts are one cut.
		k.prisms = append(k.prisms[:start], slices.CompactFunc(ranked, func(a, b prism) bool { return a.compare(&b) == 0 })...)
	}
	return k
}

// covered tells whether one block cut of a group takes all there could be, as
// a housing does with what it houses.
func (k *kernel) covered() bool {
	for i := range k.prisms {
		if p := &k.prisms[i]; !p.base && p.block && p.box.holds(k.clip) {
			return true
		}
	}
	return false
}

// planeNumber gives every different plane one number.
func (k *kernel) planeNumber(p plane) int32 {
	n, ok := k.number[p]
	if !ok {
		n = int32(len(k.planes))
		k.planes = append(k.planes, p)
		k.number[p] = n
	}
	return n
}

// lay numbers the planes of all faces.
func (k *kernel) lay() {
	for i := range k.prisms {
		p := &k.prisms[i]
		p.walls = slices.Clone(p.walls)
		p.faces = make([]placedFace, 0, len(p.walls)+2)
		lo, hi := p.box, p.box
		lo.hi[p.axis], hi.lo[p.axis] = p.from, p.to
		p.fromAt, p.toAt = k.planeNumber(level(p.axis, p.from)), k.planeNumber(level(p.axis, p.to))
		near, far := int32(FromEnd), int32(ToEnd)
		if p.turned {
			near, far = far, near
		}
		p.faces = append(p.faces, placedFace{p.fromAt, false, near, lo}, placedFace{p.toAt, true, far, hi})
		u, v := (p.axis+1)%3, (p.axis+2)%3
		for j := range p.walls {
			w := &p.walls[j]
			pl, front := wallPlane(p.axis, w.p, w.q)
			w.plane = k.planeNumber(pl)
			b := p.box
			b.lo[u], b.hi[u] = min(w.p[0], w.q[0]), max(w.p[0], w.q[0])
			b.lo[v], b.hi[v] = min(w.p[1], w.q[1]), max(w.p[1], w.q[1])
			p.faces = append(p.faces, placedFace{w.plane, front, w.side, b})
		}
	}
}

// along is a block as a prism along another axis, without faces.
func (k *kernel) along(p *prism, axis int) prism {
	u, v := (axis+1)%3, (axis+2)%3
	lo, hi := [2]int64{p.box.lo[u], p.box.lo[v]}, [2]int64{p.box.hi[u], p.box.hi[v]}
	out := prism{axis: axis, from: p.box.lo[axis], to: p.box.hi[axis], box: p.box, block: true, base: p.base, group: p.group}
	out.fromAt, out.toAt = k.planeNumber(level(axis, out.from)), k.planeNumber(level(axis, out.to))
	side := func(a, b, c, d int64, w plane) wall {
		return wall{[2]int64{a, b}, [2]int64{c, d}, k.planeNumber(w), 0}
	}
	out.walls = []wall{side(lo[0], lo[1], hi[0], lo[1], level(v, lo[1])), side(hi[0], lo[1], hi[0], hi[1], level(u, hi[0])),
		side(hi[0], hi[1], lo[0], hi[1], level(v, hi[1])), side(lo[0], hi[1], lo[0], lo[1], level(u, lo[0]))}
	return out
}

// onPlane is a face seen from its plane.
type onPlane struct {
	prism int32
	face  int32
}

// run evaluates every plane that carries a face.
func (k *kernel) run() {
	if k.clip.flat() < 0 {
		return
	}
	k.lay()
	count := make([]int32, len(k.planes)+1)
	for i := range k.prisms {
		for _, f := range k.prisms[i].faces {
			count[f.plane+1]++
		}
	}
	for i := 1; i < len(count); i++ {
		count[i] += count[i-1]
	}
	listed := make([]onPlane, count[len(k.planes)])
	next := slices.Clone(count)
	for i := range k.prisms {
		for j, f := range k.prisms[i].faces {
			listed[next[f.plane]] = onPlane{int32(i), int32(j)}
			next[f.plane]++
		}
	}
	for p := range k.planes {
		k.work.run(k, int32(p), listed[count[p]:count[p+1]])
	}
}

func (k *kernel) wholeAt(at [3]int64) int32 {
	n, ok := k.whole[at]
	if !ok {
		n = int32(len(k.verts))
		k.verts = append(k.verts, wholeVertex(at))
		k.whole[at] = n
	}
	return n
}

// vertex gives every different place one number.
func (k *kernel) vertex(v Vertex) int32 {
	if v.frac == nil {
		return k.wholeAt(v.at)
	}
	for _, n := range k.broken[v.near] {
		if w := &k.verts[n]; v.frac.equal(w.frac) {
			return n
		}
	}
	n := int32(len(k.verts))
	k.verts = append(k.verts, v)
	if k.broken == nil {
		k.broken = map[[3]float64][]int32{}
	}
	k.broken[v.near] = append(k.broken[v.near], n)
	return n
}

// equal compares shortened fractions.
func (f *fraction) equal(g *fraction) bool {
	return f.w.Cmp(&g.w) == 0 && f.x[0].Cmp(&g.x[0]) == 0 && f.x[1].Cmp(&g.x[1]) == 0 && f.x[2].Cmp(&g.x[2]) == 0
}

func (k *kernel) meeting(p, q, r int32) int32 {
	return k.vertex(meet(&k.planes[p], &k.planes[q], &k.planes[r]))
}
