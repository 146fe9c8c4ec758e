package view

import (
	"cmp"
	"math"
	"slices"
)

// CapTag is the Tag of the faces that [Cut] puts over what it cut through.
const CapTag = -1

// Plane cuts bodies. What lies on the side Normal points to is taken away, so
// Normal points at whoever looks at the section.
type Plane struct{ At, Normal Vec3 }

// Axes are the directions that run right and up for somebody who looks square
// at the plane, as a camera by [Looking] has them. ok is false where Normal has
// no direction.
func (p Plane) Axes() (right, up Vec3, ok bool) {
	n, ok := p.Normal.unit()
	if !ok || !p.At.finite() {
		return Vec3{}, Vec3{}, false
	}
	right, up = upright(n.times(-1), Vec3{})
	return right, up, true
}

// Flat is a point of the plane in plane coordinates: millimetres along [Plane.Axes]
// from the foot of the origin of space, which are also the picture coordinates
// of a camera by [Looking] against the normal.
func (p Plane) Flat(v Vec3) Point2 {
	r, u, _ := p.Axes()
	return Point2{r.dot(v), u.dot(v)}
}

// Place is the point of space that has these plane coordinates.
func (p Plane) Place(at Point2) Vec3 {
	r, u, ok := p.Axes()
	if !ok {
		return p.At
	}
	n, _ := p.Normal.unit()
	return r.times(at.X).plus(u.times(at.Y)).plus(n.times(n.dot(p.At)))
}

// Cap is one connected area where a plane goes through a body, in plane
// coordinates.
type Cap struct {
	Body  int
	Outer []Point2 // counter-clockwise
	Holes [][]Point2
}

// Cut takes away what lies before a plane. It returns the areas the plane goes
// through, sorted by body and place, and the rest of the bodies, each closed
// with faces that have [CapTag], in the order given. A face that lies in the
// plane is not cut: what is behind it stays whole, what is before it goes. Of a
// plane without direction nothing comes but the bodies; a face that makes no
// sense is left out of a body that is cut.
func Cut(bodies []Body, p Plane) (caps []Cap, remaining []Body) {
	if _, _, ok := p.Axes(); !ok {
		return nil, bodies
	}
	p.Normal, _ = p.Normal.unit()
	for i := range bodies {
		b := &bodies[i]
		if p.clear(b) {
			remaining = append(remaining, *b)
			continue
		}
		more, rest := p.cut(b)
		caps = append(caps, more...)
		if len(rest.Faces) > 0 {
			remaining = append(remaining, rest)
		}
	}
	slices.SortStableFunc(caps, func(a, b Cap) int { return cmp.Compare(a.Body, b.Body) })
	return caps, remaining
}

// before is how far a point stands before the plane; Normal must have length 1.
func (p Plane) before(v Vec3) float64 { return p.Normal.dot(v.minus(p.At)) }

// clear tells that all of a body is behind the plane.
func (p Plane) clear(b *Body) bool {
	if b.Box != (Box{}) {
		return p.reach(b.Box) <= touching
	}
	for _, f := range b.Faces {
		for _, v := range f.Outer {
			if p.before(v) > touching {
				return false
			}
		}
	}
	return true
}

// reach is how far the box's foremost corner stands before the plane.
func (p Plane) reach(b Box) float64 {
	pick := func(n, lo, hi float64) float64 {
		if n > 0 {
			return hi
		}
		return lo
	}
	n := p.Normal
	return p.before(Vec3{pick(n.X, b.Min.X, b.Max.X), pick(n.Y, b.Min.Y, b.Max.Y), pick(n.Z, b.Min.Z, b.Max.Z)})
}

// cut cuts one body. Wood is cut through where there is some just behind the
// plane and some just before it; the two sections are found apart, so that a
// plane through a shoulder or along a face gives neither a sliver nor a gap.
func (p Plane) cut(b *Body) ([]Cap, Body) {
	rest := Body{ID: b.ID}
	var behind, ahead [][2]Vec3
	for i := range b.Faces {
		f := &b.Faces[i]
		n, why := f.fault()
		if why != "" {
			continue
		}
		kept, seam := halve(f.rings(), n, p.Normal, func(v Vec3) float64 { return p.before(v) })
		rest.Faces = append(rest.Faces, refaced(f, n, kept)...)
		behind = append(behind, seam...)
		_, seam = halve(f.rings(), n, p.Normal, func(v Vec3) float64 { return -p.before(v) })
		ahead = append(ahead, seam...)
	}
	var caps []Cap
	for _, c := range p.section(behind, ahead) {
		caps = append(caps, Cap{b.ID, c.outer, c.holes})
		rest.Faces = append(rest.Faces, p.lid(c))
	}
	if !slices.ContainsFunc(rest.Faces, func(f Face) bool {
		return slices.ContainsFunc(f.Outer, func(v Vec3) bool { return p.before(v) < -touching })
	}) {
		return nil, Body{}
	}
	return caps, rest
}

// section is where both closed heaps of segments have their inside.
func (p Plane) section(behind, ahead [][2]Vec3) []patch {
	b, a := p.flatten(behind), p.flatten(ahead)
	arr := arrange(append(slices.Clone(b), a...), welded)
	in := func(at Point2) int32 {
		if inside(b, at) && inside(a, at) {
			return 0
		}
		return nothing
	}
	left, right := make([]int32, len(arr.pieces)), make([]int32, len(arr.pieces))
	for i := range arr.pieces {
		l, r := arr.flanks(i)
		left[i], right[i] = in(l), in(r)
	}
	return trace(arr, left, right)
}

func (p Plane) flatten(segments [][2]Vec3) [][2]Point2 {
	out := make([][2]Point2, len(segments))
	for i, s := range segments {
		out[i] = [2]Point2{p.Flat(s[0]), p.Flat(s[1])}
	}
	return out
}

func inside(segments [][2]Point2, at Point2) (in bool) {
	for _, s := range segments {
		a, b := s[0], s[1]
		if (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X+(at.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func (p Plane) lid(c patch) Face {
	f := Face{Normal: p.Normal, Tag: CapTag, Outer: p.lift(c.outer)}
	for _, h := range c.holes {
		f.Holes = append(f.Holes, p.lift(h))
	}
	return f
}

func (p Plane) lift(ring []Point2) []Vec3 {
	out := make([]Vec3, len(ring))
	for i, q := range ring {
		out[i] = p.Place(q)
	}
	return out
}

// refaced gives what is left of a face its outlines and holes back.
func refaced(f *Face, n Vec3, rings [][]Vec3) []Face {
	var out []Face
	var holes [][]Vec3
	for _, r := range rings {
		if winding(r).dot(n) > 0 {
			out = append(out, Face{Outer: r, Normal: n, Tag: f.Tag, Curved: f.Curved})
		} else {
			holes = append(holes, r)
		}
	}
	own := Plane{Normal: n}
	for _, h := range holes {
		for i := range out {
			if len(out) == 1 || holdsRing(own.flatRing(out[i].Outer), own.flatRing(h)) {
				out[i].Holes = append(out[i].Holes, h)
				break
			}
		}
	}
	return out
}

func (p Plane) flatRing(ring []Vec3) []Point2 {
	out := make([]Point2, len(ring))
	for i, v := range ring {
		out[i] = p.Flat(v)
	}
	return out
}

// port is where a ring passes the plane: out of what is kept, or into it.
type port struct {
	at    Vec3
	k     float64 // along the seam
	out   bool
	chain int // the kept corners that end or begin here
}

// halve keeps what of a face has before < 0, and returns its borders on the
// plane as well, which run along the seam. Corners within touching of the plane
// count as not kept: then no corner lies on the plane, and no case is special.
// A face in the plane is kept if the wood is on the kept side.
func halve(rings [][]Vec3, n, normal Vec3, before func(Vec3) float64) (kept [][]Vec3, seam [][2]Vec3) {
	all := true // in the plane
	var chains [][]Vec3
	var ports []port
	for _, r := range rings {
		whole := true
		for _, v := range r {
			d := before(v)
			all = all && math.Abs(d) <= touching
			whole = whole && d < -touching
		}
		if whole {
			kept = append(kept, r)
			continue
		}
		chains, ports = appendChains(chains, ports, r, before)
	}
	if all {
		if towards := before(rings[0][0].plus(n)) - before(rings[0][0]); towards > 0 {
			return rings, nil
		}
		return nil, nil
	}
	line := n.cross(normal)
	for i := range ports {
		ports[i].k = line.dot(ports[i].at)
	}
	alternate(ports)
	more, seam := link(chains, ports)
	return append(kept, more...), seam
}
