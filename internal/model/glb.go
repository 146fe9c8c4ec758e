package model

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"math"
)

// GLB writes a scene as glTF 2.0, binary. Nodes keep their names, places and
// extras; each face is shaded flat, or round if it is tagged so. Every vertex
// carries the number of its face in the attribute _FACE, and the mesh's
// extras list the names of its faces in that order, so that whoever picks a
// triangle can tell what made it. Materials that no node uses are left out.
//
// A part without a Mesh, or with one that does not pass [Mesh.Check], is a
// *[Fault].
func GLB(s Scene) ([]byte, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	w := glbWriter{scene: s, meshes: map[meshKey]int{}, materials: map[int]int{}}
	roots, err := w.nodes(s.Nodes)
	if err != nil {
		return nil, err
	}
	w.file.Asset = gltfAsset{Version: "2.0", Generator: "Casewright"}
	w.file.Scenes = []gltfScene{{Name: s.Name, Nodes: roots}}
	return w.container()
}

// glbWriter collects the file. Vertex data of all meshes go into one stretch
// of the buffer per attribute; accessors say where a mesh begins.
type glbWriter struct {
	scene     Scene
	file      gltfFile
	meshes    map[meshKey]int
	materials map[int]int // from the scene's numbers to the file's
	stretches [stretchCount]bytes.Buffer
}

type meshKey struct {
	mesh     *Mesh
	material int
}

// The stretches of the buffer, in order.
const (
	positions = iota
	normals
	faceNumbers
	indices
	stretchCount
)

var views = [stretchCount]gltfView{
	positions:   {Stride: 12, Target: gltfVertices},
	normals:     {Stride: 12, Target: gltfVertices},
	faceNumbers: {Stride: 4, Target: gltfVertices},
	indices:     {Target: gltfIndices},
}

func (w *glbWriter) nodes(nodes []Node) ([]int, error) {
	var numbers []int
	for i := range nodes {
		n := &nodes[i]
		g := gltfNode{Name: n.Name, Extras: extras(n.Extras)}
		g.placed(n.Place)
		var err error
		if len(n.Children) > 0 {
			g.Children, err = w.nodes(n.Children)
		} else {
			g.Mesh, err = w.mesh(n)
		}
		if err != nil {
			return nil, err
		}
		numbers = append(numbers, len(w.file.Nodes))
		w.file.Nodes = append(w.file.Nodes, g)
	}
	return numbers, nil
}

func (w *glbWriter) mesh(n *Node) (*int, error) {
	if n.Mesh == nil {
		return nil, &Fault{Kind: Empty, Node: n.Name, Face: none, Detail: "no mesh"}
	}
	key := meshKey{n.Mesh, n.Material}
	if at, ok := w.meshes[key]; ok {
		return &at, nil
	}
	if err := n.Mesh.Check(); err != nil {
		return nil, err.(*Fault).named(n.Name)
	}
	at := len(w.file.Meshes)
	w.meshes[key] = at
	w.file.Meshes = append(w.file.Meshes, w.write(n.Mesh))
	w.file.Meshes[at].Primitives[0].Material = w.material(n.Material)
	return &at, nil
}

func (w *glbWriter) material(number int) *int {
	if len(w.scene.Materials) == 0 {
		return nil
	}
	at, ok := w.materials[number]
	if !ok {
		at = len(w.file.Materials)
		w.materials[number] = at
		w.file.Materials = append(w.file.Materials, w.scene.Materials[number].gltf())
	}
	return &at
}

// write puts the vertices of one mesh into the buffer.
func (w *glbWriter) write(m *Mesh) gltfMesh {
	v := m.split()
	var p gltfPrimitive
	p.Attributes.Position = w.points(v.places)
	p.Attributes.Normal = w.accessor(normals, gltfFloat, "VEC3", len(v.normals), func(b *bytes.Buffer) {
		for _, n := range v.normals {
			putVec(b, single(seen(n)))
		}
	})
	p.Attributes.Face = w.accessor(faceNumbers, gltfFloat, "SCALAR", len(v.faces), func(b *bytes.Buffer) {
		for _, f := range v.faces {
			put32(b, math.Float32bits(float32(f)))
		}
	})
	p.Indices = w.indices(v)
	g := gltfMesh{Primitives: []gltfPrimitive{p}}
	g.Extras.Faces = make([]string, len(m.Faces))
	for i, f := range m.Faces {
		g.Extras.Faces[i] = f.Name
	}
	return g
}

// accessor notes where the next count values of a stretch begin, lets fill
// write them and returns the accessor's number.
func (w *glbWriter) accessor(stretch, component int, shape string, count int, fill func(*bytes.Buffer)) int {
	b := &w.stretches[stretch]
	w.file.Accessors = append(w.file.Accessors, gltfAccessor{
		View: stretch, Offset: b.Len(), Type: component, Count: count, Shape: shape,
	})
	fill(b)
	for b.Len()%4 != 0 {
		b.WriteByte(0)
	}
	return len(w.file.Accessors) - 1
}

// points writes places with the bounds that the format asks for, taken from
// the rounded values: they must be met exactly.
func (w *glbWriter) points(places []Vec) int {
	inf := float32(math.Inf(1))
	low, high := [3]float32{inf, inf, inf}, [3]float32{-inf, -inf, -inf}
	at := w.accessor(positions, gltfFloat, "VEC3", len(places), func(b *bytes.Buffer) {
		for _, v := range places {
			s := single(metres(v))
			putVec(b, s)
			for k := range s {
				low[k], high[k] = min(low[k], s[k]), max(high[k], s[k])
			}
		}
	})
	for k := range low {
		w.file.Accessors[at].Min = append(w.file.Accessors[at].Min, float64(low[k]))
		w.file.Accessors[at].Max = append(w.file.Accessors[at].Max, float64(high[k]))
	}
	return at
}

// indices writes triangles, in 16 bits where the vertices can be counted so;
// the format keeps the highest number back.
func (w *glbWriter) indices(v vertices) int {
	if len(v.places) < math.MaxUint16 {
		return w.accessor(indices, gltfUint16, "SCALAR", len(v.indices), func(b *bytes.Buffer) {
			for _, i := range v.indices {
				b.WriteByte(byte(i))
				b.WriteByte(byte(i >> 8))
			}
		})
	}
	return w.accessor(indices, gltfUint32, "SCALAR", len(v.indices), func(b *bytes.Buffer) {
		for _, i := range v.indices {
			put32(b, i)
		}
	})
}

// container joins the text and the buffer (glTF 2.0, section 4.4: GLB).
func (w *glbWriter) container() ([]byte, error) {
	var bin bytes.Buffer
	for i := range w.stretches {
		v := views[i]
		v.Offset, v.Length = bin.Len(), w.stretches[i].Len()
		w.file.BufferViews = append(w.file.BufferViews, v)
		bin.Write(w.stretches[i].Bytes())
	}
	if bin.Len() > math.MaxInt32 {
		return nil, &Fault{Kind: TooLarge, Node: w.scene.Name, Face: none}
	}
	w.file.Buffers = []gltfBuffer{{bin.Len()}}
	text, err := json.Marshal(w.file)
	if err != nil {
		panic(err) // numbers were checked, and nothing else has no form
	}
	for len(text)%4 != 0 {
		text = append(text, ' ')
	}
	out := bytes.NewBuffer(make([]byte, 0, 28+len(text)+bin.Len()))
	for _, word := range []uint32{
		0x46546C67, 2, uint32(28 + len(text) + bin.Len()), // "glTF", version, length
		uint32(len(text)), 0x4E4F534A, // "JSON"
	} {
		put32(out, word)
	}
	out.Write(text)
	put32(out, uint32(bin.Len()))
	put32(out, 0x004E4942) // "BIN"
	out.Write(bin.Bytes())
	return out.Bytes(), nil
}

// single is v in single precision, without negative zeros.
func single(v Vec) [3]float32 {
	var s [3]float32
	for k := range v {
		if s[k] = float32(v[k]); s[k] == 0 {
			s[k] = 0
		}
	}
	return s
}

func putVec(b *bytes.Buffer, s [3]float32) {
	for _, c := range s {
		put32(b, math.Float32bits(c))
	}
}

func put32(b *bytes.Buffer, word uint32) {
	b.Write(binary.LittleEndian.AppendUint32(b.AvailableBuffer(), word))
}
