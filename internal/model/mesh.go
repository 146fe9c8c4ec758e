package model

// Mesh is the surface of one solid as triangles. Triangles that meet share
// positions by index.
type Mesh struct {
	Positions []Vec      // mm
	Triangles [][3]int32 // into Positions, counter-clockwise seen from outside
	Face      []int32    // for each triangle the face it belongs to, into Faces
	Faces     []FaceTag
}

// FaceTag says what a face is.
type FaceTag struct {
	Name   string // what made it: "show face", "end grain", a joint; may be ""
	Curved bool   // facets of one curve, to be shown as round; else it must be flat
}

// Flat is how far, in mm, a corner may lie from the plane of its face: a
// hundred times the nanometre to which coordinates are rounded.
const Flat = 1e-4

// Check finds the first thing that makes the mesh unfit for a file; nil if it
// is sound. The error is a *[Fault].
func (m *Mesh) Check() error {
	for _, look := range []func() *Fault{m.sized, m.indexed, m.finite, m.paired, m.flat, m.outward} {
		if f := look(); f != nil {
			return f
		}
	}
	return nil
}

func (m *Mesh) sized() *Fault {
	switch {
	case len(m.Triangles) == 0:
		return &Fault{Kind: Empty, Face: none, Detail: "no triangle"}
	case len(m.Face) != len(m.Triangles):
		return &Fault{Kind: BadIndex, Face: none, Detail: "triangles and their faces differ in number"}
	case len(m.Triangles) > mostTriangles || len(m.Faces) > mostFaces:
		return &Fault{Kind: TooLarge, Face: none}
	}
	return nil
}

const (
	// mostTriangles keeps every index of a split mesh within 32 bits.
	mostTriangles = 1 << 30
	// mostFaces is where single precision, which carries face numbers in
	// glTF, stops counting by ones.
	mostFaces = 1 << 24
)

func (m *Mesh) indexed() *Fault {
	for i, t := range m.Triangles {
		if m.Face[i] < 0 || int(m.Face[i]) >= len(m.Faces) {
			return &Fault{Kind: BadIndex, Face: none, Detail: "triangle of a face that is not listed"}
		}
		for _, v := range t {
			if v < 0 || int(v) >= len(m.Positions) {
				return &Fault{Kind: BadIndex, Face: int(m.Face[i]), Detail: "triangle at a position that is not listed"}
			}
		}
		if t[0] == t[1] || t[1] == t[2] || t[2] == t[0] {
			return &Fault{Kind: Degenerate, Face: int(m.Face[i]), At: m.Positions[t[0]]}
		}
	}
	return nil
}

func (m *Mesh) finite() *Fault {
	for _, p := range m.Positions {
		if !p.finite() {
			return &Fault{Kind: NotFinite, Face: none}
		}
	}
	return nil
}

// paired wants every edge once in each direction.
func (m *Mesh) paired() *Fault {
	uses := make(edgeUses, 3*len(m.Triangles)/2)
	for _, t := range m.Triangles {
		for k := range t {
			uses.count(int(t[k]), int(t[(k+1)%3]))
		}
	}
	for i, t := range m.Triangles {
		for k := range t {
			if kind := uses.judge(int(t[k]), int(t[(k+1)%3])); kind != "" {
				return &Fault{Kind: kind, Face: int(m.Face[i]), At: m.middle(t[k], t[(k+1)%3])}
			}
		}
	}
	return nil
}

func (m *Mesh) middle(a, b int32) Vec { return m.Positions[a].plus(m.Positions[b]).by(0.5) }

// edgeUses counts, for an edge by its lower and higher end, how often it is
// walked up and how often down.
type edgeUses map[[2]int][2]int

func (u edgeUses) count(from, to int) {
	up := 0
	if from > to {
		from, to, up = to, from, 1
	}
	n := u[[2]int{from, to}]
	n[up]++
	u[[2]int{from, to}] = n
}

// judge is "" for an edge between two faces that agree which side is out.
func (u edgeUses) judge(from, to int) Kind {
	n := u[[2]int{min(from, to), max(from, to)}]
	switch {
	case n[0] == 1 && n[1] == 1:
		return ""
	case n[0]+n[1] > 2:
		return Crowded
	}
	return Open
}

// areas are the vector areas of the faces: the direction is the normal, mean
// over the face if it is curved.
func (m *Mesh) areas() []Vec {
	sums := make([]Vec, len(m.Faces))
	for i, t := range m.Triangles {
		f := m.Face[i]
		sums[f] = sums[f].plus(m.area(t))
	}
	return sums
}

// area is the vector area of one triangle.
func (m *Mesh) area(t [3]int32) Vec {
	a, b, c := m.Positions[t[0]], m.Positions[t[1]], m.Positions[t[2]]
	return b.minus(a).cross(c.minus(a)).by(0.5)
}

// flat wants the corners of each face that is not curved in one plane, through
// the corner that comes first.
func (m *Mesh) flat() *Fault {
	normals := m.areas()
	for f := range normals {
		normals[f] = normals[f].unit()
	}
	first := make([]int32, len(m.Faces))
	for f := range first {
		first[f] = none
	}
	for i, t := range m.Triangles {
		f := m.Face[i]
		if m.Faces[f].Curved {
			continue
		}
		if normals[f] == (Vec{}) {
			return &Fault{Kind: Degenerate, Face: int(f), At: m.Positions[t[0]]}
		}
		if first[f] < 0 {
			first[f] = t[0]
		}
		for _, v := range t {
			if d := m.Positions[v].minus(m.Positions[first[f]]).dot(normals[f]); d > Flat || d < -Flat {
				return &Fault{Kind: NotFlat, Face: int(f), At: m.Positions[v]}
			}
		}
	}
	return nil
}

func (m *Mesh) outward() *Fault {
	return judgeVolume(m.volume())
}

func judgeVolume(v float64) *Fault {
	switch {
	case v > 0:
		return nil
	case v < 0:
		return &Fault{Kind: Inverted, Face: none}
	}
	return &Fault{Kind: Degenerate, Face: none, Detail: "no volume"}
}

// volume is in mm³, by the divergence theorem, from a corner of the mesh so
// that a part far from the origin loses no digits.
func (m *Mesh) volume() float64 {
	from, six := m.Positions[m.Triangles[0][0]], 0.0
	for _, t := range m.Triangles {
		a, b, c := m.Positions[t[0]].minus(from), m.Positions[t[1]].minus(from), m.Positions[t[2]].minus(from)
		six += a.dot(b.cross(c))
	}
	return six / 6
}
