package model

// brep writes the boundary of one part. Corners and edges are written when
// first met and shared from then on: each edge is used by two faces, forwards
// by the one that met it, backwards by the other.
type brep struct {
	w       *stepWriter
	shell   *woven
	corners refs // 0: not yet written
	edges   map[[2]int]ref
}

func (b *brep) solid(name string, body []int) ref {
	var faces refs
	for _, i := range body {
		faces = append(faces, b.face(&b.shell.faces[i]))
	}
	shell := b.w.add("CLOSED_SHELL('',%s)", faces)
	return b.w.add("MANIFOLD_SOLID_BREP(%s,%s)", quote(name), shell)
}

func (b *brep) face(f *wovenFace) ref {
	var bounds refs
	kind := "FACE_OUTER_BOUND"
	for _, ring := range f.rings {
		var edges refs
		for k, c := range ring {
			edges = append(edges, b.oriented(c, ring[(k+1)%len(ring)]))
		}
		bounds = append(bounds, b.w.add("%s('',%s,.T.)", kind, b.w.add("EDGE_LOOP('',%s)", edges)))
		kind = "FACE_BOUND"
	}
	return b.w.add("ADVANCED_FACE(%s,%s,%s,.T.)", quote(f.name), bounds, b.plane(f))
}

// plane lies with its X along the first edge; what that edge is off the square
// is taken out.
func (b *brep) plane(f *wovenFace) ref {
	from, to := b.shell.corners[f.rings[0][0]], b.shell.corners[f.rings[0][1]]
	along := to.minus(from)
	x := along.minus(f.normal.by(along.dot(f.normal))).unit()
	at := b.w.add("AXIS2_PLACEMENT_3D('',%s,%s,%s)", b.w.point(from), b.w.direction(f.normal), b.w.direction(x))
	return b.w.add("PLANE('',%s)", at)
}

func (b *brep) oriented(from, to int) ref {
	if e, ok := b.edges[[2]int{to, from}]; ok {
		return b.w.add("ORIENTED_EDGE('',*,*,%s,.F.)", e)
	}
	e := b.edge(from, to)
	b.edges[[2]int{from, to}] = e
	return b.w.add("ORIENTED_EDGE('',*,*,%s,.T.)", e)
}

func (b *brep) edge(from, to int) ref {
	p := b.shell.corners[from]
	d := b.w.direction(b.shell.corners[to].minus(p).unit())
	line := b.w.add("LINE('',%s,%s)", b.w.point(p), b.w.once("VECTOR('',%s,1.)", d))
	return b.w.add("EDGE_CURVE('',%s,%s,%s,.T.)", b.corner(from), b.corner(to), line)
}

func (b *brep) corner(c int) ref {
	if b.corners[c] == 0 {
		b.corners[c] = b.w.add("VERTEX_POINT('',%s)", b.w.point(b.shell.corners[c]))
	}
	return b.corners[c]
}
