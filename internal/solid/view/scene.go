package view

import "slices"

// edgeOn is the slant (the cosine between normal and sight) below which a face
// is taken to be seen exactly from its edge. A face a metre deep then takes a
// micrometre of the picture.
const edgeOn = 1e-6

// scene is bodies as one camera sees them.
type scene struct {
	cam   Camera
	opts  Options
	faces []facing // those that show their front, by body and face
	lines []line   // candidates
	seen  []Seen
	skips []Skip
}

// facing is a face that shows its front.
type facing struct {
	body, tag int // the body's rank, the face's tag
	id        int // the body's ID
	curved    bool
	normal    Vec3 // in space
	plane     plane
	rings     [][]Point2
	bounds    Box2
	nearest   float64 // smallest t
}

// line is an edge in the picture, with its ends' t.
type line struct {
	a, b   Point2
	ta, tb float64
	owner  int32 // the body's rank
	id     int   // and its ID
	tag    int   // lowest of the faces that meet here
	dashed bool  // to be drawn where it is hidden
	kind   Kind  // of the hidden line
}

// stage prepares bodies: what is nearer than the near limit is cut away first,
// with a face put over the cut, so that bodies stay closed.
func stage(bodies []Body, cam Camera, opts Options) *scene {
	s := &scene{cam: cam.ready(), opts: opts}
	for rank, b := range ranked(bodies) {
		if kept := s.before(b); kept != nil {
			s.add(rank, kept)
		} else {
			s.skips = append(s.skips, Skip{b.ID, -1, "behind the eye or nearer to it than the near limit"})
		}
	}
	return s
}

// before cuts what reaches too near the eye; nil if nothing is left.
func (s *scene) before(b *Body) *Body {
	if s.cam.distance == 0 {
		return b
	}
	limit := s.cam.near - s.cam.distance
	at := s.cam.target.plus(s.cam.away.times(limit))
	p := Plane{At: at, Normal: s.cam.away.times(-1)}
	if p.clear(b) {
		return b
	}
	for i := range b.Faces { // Cut leaves them out without a word
		if _, why := b.Faces[i].fault(); why != "" {
			s.skips = append(s.skips, Skip{b.ID, i, why})
		}
	}
	_, rest := Cut([]Body{*b}, p)
	if len(rest) == 0 {
		return nil
	}
	return &rest[0]
}

func (s *scene) add(rank int, b *Body) {
	sound := make([]bool, len(b.Faces))
	normals := make([]Vec3, len(b.Faces))
	front := make([]bool, len(b.Faces))
	any := false
	for i := range b.Faces {
		f := &b.Faces[i]
		n, why := f.fault()
		if why != "" {
			s.skips = append(s.skips, Skip{b.ID, i, why})
			continue
		}
		sound[i], normals[i], any = true, n, true
		p := s.cam.plane(n, f.Outer[0])
		if front[i] = p.q < -edgeOn; front[i] {
			s.face(rank, b, f, n, p)
		}
	}
	if !any {
		s.skips = append(s.skips, Skip{b.ID, -1, "no face that can be drawn"})
		return
	}
	dashed := s.opts.Hidden && (len(s.opts.HiddenOf) == 0 || slices.Contains(s.opts.HiddenOf, b.ID))
	for _, e := range arrises(b, sound) {
		s.line(rank, b, e, normals, front, dashed)
	}
	s.measure(b, sound)
}

func (s *scene) face(rank int, b *Body, f *Face, n Vec3, p plane) {
	g := facing{body: rank, id: b.ID, tag: f.Tag, curved: f.Curved, normal: n, plane: p, bounds: nowhere()}
	for k, r := range f.rings() {
		flat := make([]Point2, len(r))
		for i, c := range r {
			at, t := s.cam.lens(s.cam.sight(c))
			flat[i] = at
			g.bounds.take(at)
			if k+i == 0 || t < g.nearest {
				g.nearest = t
			}
		}
		g.rings = append(g.rings, flat)
	}
	s.faces = append(s.faces, g)
}

// line enters an edge if it can bound what is seen or must be dashed. Edges
// between facets count as well: without them one could not tell that the two
// faces beside a hidden line in the same place go over into each other.
func (s *scene) line(rank int, b *Body, e arris, normals []Vec3, front []bool, dashed bool) {
	shown, turned, how := false, len(e.faces) < 2, level
	tag := b.Faces[e.faces[0]].Tag
	for i, f := range e.faces {
		tag = min(tag, b.Faces[f].Tag)
		shown = shown || front[f]
		turned = turned || front[f] != front[e.faces[0]]
		for _, g := range e.faces[:i] {
			how = max(how, bendAt(&b.Faces[f], &b.Faces[g], normals[f], normals[g]))
		}
	}
	drawn := how == sharp || turned
	if !(dashed && drawn) && !shown {
		return
	}
	l := line{owner: int32(rank), id: b.ID, tag: tag, dashed: dashed && drawn, kind: Edge}
	if turned {
		l.kind = Outline
	}
	l.a, l.ta = s.cam.lens(s.cam.sight(e.a))
	l.b, l.tb = s.cam.lens(s.cam.sight(e.b))
	s.lines = append(s.lines, l)
}

func (s *scene) measure(b *Body, sound []bool) {
	m := Seen{Body: b.ID, Bounds: nowhere()}
	first := true
	for i := range b.Faces {
		if !sound[i] {
			continue
		}
		for _, c := range b.Faces[i].Outer {
			v := s.cam.sight(c)
			at, _ := s.cam.lens(v)
			m.Bounds.take(at)
			if first {
				m.Nearest, m.Farthest, first = v.Z, v.Z, false
			}
			m.Nearest, m.Farthest = min(m.Nearest, v.Z), max(m.Farthest, v.Z)
		}
	}
	s.seen = append(s.seen, m)
}
