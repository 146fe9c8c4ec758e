package csg

import "casewright/internal/measure"

// Common is what two bodies have in common, in the first one's frame. It is
// empty, not an error, if they have nothing, and may be in pieces. Faces take
// their origin from the first body where both made them.
func Common(a Body, b Placed) (*Solid, error) {
	k, err := together(skin, a, b)
	if err != nil || k.covered() {
		return &Solid{}, err
	}
	k.run()
	s := k.solid()
	s.join()
	return s, nil
}

// Fit is how two bodies lie to each other.
type Fit struct {
	Overlap measure.Volume // what both fill: interference
	Contact measure.Area   // where a face of one lies on a face of the other
	Touches []Touch        // Contact by pairs of faces
}

// Touch is one stretch over which two bodies touch face to face.
type Touch struct {
	A, B   Origin   // the faces of the first and the second body
	Normal [3]int64 // out of the first body, as of a Face
	Area   measure.Area
}

// FitOf measures interference and contact of two bodies at once. Bodies that
// meet in an edge or a corner only do not touch. The error is Faults, of which
// those of b's prisms follow those of a's.
func FitOf(a Body, b Placed) (Fit, error) {
	k, err := together(fitting, a, b)
	if err != nil {
		return Fit{}, err
	}
	k.run()
	return k.fit(), nil
}

// together sets up the kernel for two bodies.
func together(m mode, a Body, b Placed) (*kernel, error) {
	faults := append(a.check(), b.Body.check()...)
	if !b.At.valid() {
		faults = append(faults, Fault{BadAxis, Base, b.Body.Base.Tag})
	}
	if len(faults) > 0 {
		return nil, faults
	}
	second := b.Apply().ready()
	for i := range second {
		own := b.Body.Base.Axis
		if i > 0 {
			own = b.Body.Cuts[i-1].Axis
		}
		second[i].turned = b.At.Flip[own]
		if !everywhere.holds(second[i].box) {
			faults = append(faults, Fault{TooFar, i - 1, second[i].tag})
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return newKernel(m, [][]prism{a.ready(), second}), nil
}

// everywhere is as far as coordinates go.
var everywhere = box{[3]int64{-int64(Largest), -int64(Largest), -int64(Largest)}, [3]int64{int64(Largest), int64(Largest), int64(Largest)}}

// fit sorts the faces found into the skin of the overlap and contacts.
func (k *kernel) fit() Fit {
	s := k.solid()
	var f Fit
	var overlap Solid
	overlap.Vertices = s.Vertices
	for i := range s.Faces {
		face := &s.Faces[i]
		if !face.contact {
			overlap.Faces = append(overlap.Faces, *face)
			continue
		}
		t := Touch{face.Origin, face.Against, face.Normal, s.FaceArea(i)}
		f.Touches = append(f.Touches, t)
		f.Contact += t.Area
	}
	f.Overlap = overlap.Volume()
	return f
}
