package model

import "math"

// vertices is a mesh with its corners split where a face ends, so that each
// copy can have the normal and the number of its own face.
type vertices struct {
	places  []Vec
	normals []Vec // length 1
	faces   []int32
	indices []uint32
}

// split gives every face its own vertices. Those of a flat face take the
// face's normal, which slivers cannot disturb; those of a curved face the mean
// of its triangles there, each by its angle, so that how a facet was cut into
// triangles does not show.
func (m *Mesh) split() vertices {
	type corner struct{ face, position int32 }
	number := make(map[corner]uint32, len(m.Positions))
	flat := m.areas()
	var v vertices
	for i, t := range m.Triangles {
		f := m.Face[i]
		normal := m.area(t).unit()
		for k, p := range t {
			n, ok := number[corner{f, p}]
			if !ok {
				n = uint32(len(v.places))
				number[corner{f, p}] = n
				v.places = append(v.places, m.Positions[p])
				v.faces = append(v.faces, f)
				v.normals = append(v.normals, Vec{})
			}
			v.indices = append(v.indices, n)
			if m.Faces[f].Curved {
				v.normals[n] = v.normals[n].plus(normal.by(m.angle(t, k)))
			}
		}
	}
	for n := range v.normals {
		if v.normals[n] = v.normals[n].unit(); v.normals[n] == (Vec{}) {
			v.normals[n] = direction(flat[v.faces[n]])
		}
	}
	return v
}

// angle is that of triangle t at its corner k, in radians.
func (m *Mesh) angle(t [3]int32, k int) float64 {
	at := m.Positions[t[k]]
	a, b := m.Positions[t[(k+1)%3]].minus(at), m.Positions[t[(k+2)%3]].minus(at)
	return math.Atan2(a.cross(b).length(), a.dot(b))
}

// direction is v at length 1, or up if it has none: a whole curved face may
// close on itself.
func direction(v Vec) Vec {
	if u := v.unit(); u != (Vec{}) {
		return u
	}
	return Vec{0, 0, 1}
}
