package model

import (
	"bytes"
	"encoding/json"
	"math"
)

// The parts of a glTF file that we write; names are those of the glTF 2.0
// specification (Khronos Group, ISO/IEC 12113:2022), section 5.

type gltfFile struct {
	Asset       gltfAsset      `json:"asset"`
	Scene       int            `json:"scene"`
	Scenes      []gltfScene    `json:"scenes"`
	Nodes       []gltfNode     `json:"nodes"`
	Meshes      []gltfMesh     `json:"meshes"`
	Materials   []gltfMaterial `json:"materials,omitempty"`
	Accessors   []gltfAccessor `json:"accessors"`
	BufferViews []gltfView     `json:"bufferViews"`
	Buffers     []gltfBuffer   `json:"buffers"`
}

type gltfAsset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type gltfScene struct {
	Name  string `json:"name"`
	Nodes []int  `json:"nodes"`
}

type gltfNode struct {
	Name        string      `json:"name"`
	Children    []int       `json:"children,omitempty"`
	Mesh        *int        `json:"mesh,omitempty"`
	Translation *[3]float64 `json:"translation,omitempty"`
	Rotation    *[4]float64 `json:"rotation,omitempty"`
	Extras      extras      `json:"extras,omitempty"`
}

type gltfMesh struct {
	Primitives []gltfPrimitive `json:"primitives"`
	Extras     struct {
		Faces []string `json:"faces"`
	} `json:"extras"`
}

type gltfPrimitive struct {
	Attributes struct {
		Position int `json:"POSITION"`
		Normal   int `json:"NORMAL"`
		Face     int `json:"_FACE"`
	} `json:"attributes"`
	Indices  int  `json:"indices"`
	Material *int `json:"material,omitempty"`
}

type gltfMaterial struct {
	Name string `json:"name"`
	PBR  struct {
		Color     [4]float64 `json:"baseColorFactor"`
		Metallic  float64    `json:"metallicFactor"`
		Roughness float64    `json:"roughnessFactor"`
	} `json:"pbrMetallicRoughness"`
	AlphaMode string `json:"alphaMode,omitempty"`
}

type gltfAccessor struct {
	View   int       `json:"bufferView"`
	Offset int       `json:"byteOffset"`
	Type   int       `json:"componentType"`
	Count  int       `json:"count"`
	Shape  string    `json:"type"`
	Min    []float64 `json:"min,omitempty"`
	Max    []float64 `json:"max,omitempty"`
}

type gltfView struct {
	Buffer int `json:"buffer"`
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
	Stride int `json:"byteStride,omitempty"`
	Target int `json:"target"`
}

type gltfBuffer struct {
	Length int `json:"byteLength"`
}

// Component types and buffer targets, by their OpenGL numbers.
const (
	gltfUint16   = 5123
	gltfUint32   = 5125
	gltfFloat    = 5126
	gltfVertices = 34962
	gltfIndices  = 34963
)

// facesKey is where a mesh's extras list the names of its faces.
const facesKey = "faces"

// extras are written as one JSON object, in the order given.
type extras []Extra

// MarshalJSON keeps the order, which a map would not.
func (e extras) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for i, x := range e {
		b.WriteByte("{,"[min(i, 1)])
		b.Write(quoted(x.Key))
		b.WriteByte(':')
		b.Write(quoted(x.Value))
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// quoted is s as a JSON string.
func quoted(s string) []byte {
	out, err := json.Marshal(s)
	if err != nil {
		panic(err) // a string always has a form
	}
	return out
}

// seen turns a direction of the piece into glTF's frame: Y up, front towards +Z.
func seen(v Vec) Vec { return Vec{v[0], v[2], -v[1]} }

// metres is a place of the piece in glTF's frame and unit.
func metres(v Vec) Vec { return seen(Vec{v[0] / 1000, v[1] / 1000, v[2] / 1000}) }

// placed fills in a node's translation and rotation, where it has any.
func (n *gltfNode) placed(p Place) {
	if p.Origin != (Vec{}) {
		o := metres(p.Origin)
		n.Translation = &[3]float64{rounded(o[0]), rounded(o[1]), rounded(o[2])}
	}
	if a := p.axes(); a != (Place{}).axes() {
		// The columns seen in glTF's frame: its Y is our Z, its Z our −Y.
		q := quaternion(seen(a[0]), seen(a[2]), seen(a[1].by(-1)))
		n.Rotation = &q
	}
}

// quaternion is the turn that carries the axes into x, y and z, as x, y, z, w.
// The largest of the four is found first, so nothing is divided by a number
// near zero (Shepperd, "Quaternion from Rotation Matrix", J. Guidance and
// Control 1 (1978), 223).
func quaternion(x, y, z Vec) [4]float64 {
	m := [3]Vec{x, y, z} // m[column][row]
	trace := x[0] + y[1] + z[2]
	best, most := 3, trace
	for i := range m {
		if m[i][i] > most {
			best, most = i, m[i][i]
		}
	}
	var q [4]float64
	if best == 3 {
		q = [4]float64{y[2] - z[1], z[0] - x[2], x[1] - y[0], 1 + trace}
	} else {
		i, j, k := best, (best+1)%3, (best+2)%3
		q[i] = 1 + 2*m[i][i] - trace
		q[j] = m[i][j] + m[j][i]
		q[k] = m[i][k] + m[k][i]
		q[3] = m[j][k] - m[k][j]
	}
	size := math.Hypot(math.Hypot(q[0], q[1]), math.Hypot(q[2], q[3]))
	for i := range q {
		q[i] = rounded(q[i] / size)
	}
	return q
}

// gltf is the material as glTF wants it: base colour in linear light.
func (m Material) gltf() gltfMaterial {
	g := gltfMaterial{Name: m.Name}
	for i, c := range m.Color {
		g.PBR.Color[i] = rounded(linear(float64(c) / 255))
	}
	g.PBR.Color[3] = rounded(1 - share(m.Clear))
	g.PBR.Roughness = rounded(share(m.Roughness))
	if share(m.Clear) > 0 {
		g.AlphaMode = "BLEND"
	}
	return g
}

// linear undoes the curve of a screen (IEC 61966-2-1, sRGB).
func linear(c float64) float64 {
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// share clamps to 0…1; NaN counts as 0.
func share(f float64) float64 {
	if !(f > 0) {
		return 0
	}
	return min(f, 1)
}
