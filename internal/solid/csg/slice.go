package csg

import "casewright/internal/measure"

// Section is a body cut by a plane square to an axis. Its faces look along the
// axis: outer loops run counter-clockwise seen against it.
type Section struct {
	Vertices []Vertex
	Faces    []Face
}

// Area is the area cut.
func (s *Section) Area() (sum measure.Area) {
	flat := Solid{Vertices: s.Vertices, Faces: s.Faces}
	return flat.Area()
}

// SectionAt cuts a body at a place on an axis. Where a face lies in the plane,
// beyond says whether to show what is just beyond it, towards larger
// coordinates, or just before. It is empty away from the body; Origin of its
// faces says nothing.
func SectionAt(b Body, axis Axis, at measure.Length, beyond bool) (*Section, error) {
	faults := b.check()
	switch {
	case axis > Z:
		faults = append(faults, Fault{BadAxis, Base, b.Base.Tag})
	case at > Largest || at < -Largest:
		faults = append(faults, Fault{TooFar, Base, b.Base.Tag})
	}
	if len(faults) > 0 {
		return nil, faults
	}
	m := under
	if beyond {
		m = over
	}
	k := newKernel(m, [][]prism{b.ready()})
	k.cut(int(axis), int64(at))
	s := k.solid()
	return &Section{s.Vertices, s.Faces}, nil
}

// cut evaluates one plane, whether or not a face lies in it.
func (k *kernel) cut(axis int, at int64) {
	if at < k.clip.lo[axis] || at > k.clip.hi[axis] {
		return
	}
	k.lay()
	k.work.cut(k, k.planeNumber(level(axis, at)), axis, at)
}

func (a *arrangement) cut(k *kernel, number int32, axis int, at int64) {
	a.look(k, number)
	a.focus = k.clip
	a.focus.lo[axis], a.focus.hi[axis] = at, at
	// Nothing covers this, so that every prism keeps its edges.
	for i := range 3 {
		a.reach.lo[i], a.reach.hi[i] = -2*int64(Largest), 2*int64(Largest)
	}
	if a.gather(nil) {
		a.evaluate()
	}
}
