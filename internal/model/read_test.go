package model_test

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"testing"
)

// Small readers of our own, written from the formats' descriptions.

type triangle [3]vec

func volume(all []triangle) float64 {
	six := 0.0
	for _, t := range all {
		six += dot(t[0], cross(t[1], t[2]))
	}
	return six / 6
}

func float(b []byte, at int) float64 {
	return float64(math.Float32frombits(binary.LittleEndian.Uint32(b[at:])))
}

func readVec(b []byte, at int) vec { return vec{float(b, at), float(b, at+4), float(b, at+8)} }

func readSTL(t testing.TB, b []byte) (all []triangle) {
	t.Helper()
	n := int(binary.LittleEndian.Uint32(b[80:]))
	if len(b) != 84+50*n {
		t.Fatalf("%d bytes for %d triangles", len(b), n)
	}
	for i := range n {
		p := 84 + 50*i
		tr := triangle{readVec(b, p+12), readVec(b, p+24), readVec(b, p+36)}
		if normal := readVec(b, p); turn(tr[0], tr[1], tr[2], normal) < 0 {
			t.Fatalf("triangle %d faces away from its normal", i)
		}
		all = append(all, tr)
	}
	return all
}

// glb is what the tests look at in a GLB file.
type glb struct {
	Scenes []struct {
		Nodes []int
	}
	Nodes []struct {
		Name        string
		Mesh        *int
		Children    []int
		Translation []float64
		Rotation    []float64
		Extras      json.RawMessage
	}
	Meshes []struct {
		Primitives []struct {
			Attributes map[string]int
			Indices    int
			Material   *int
		}
		Extras struct{ Faces []string }
	}
	Materials []struct {
		Name string
		PBR  struct {
			BaseColorFactor []float64
			RoughnessFactor float64
		} `json:"pbrMetallicRoughness"`
		AlphaMode string
	}
	Accessors []struct {
		BufferView, ByteOffset, ComponentType, Count int
		Type                                         string
		Min, Max                                     []float64
	}
	BufferViews []struct{ ByteOffset, ByteLength, ByteStride int }
	bin         []byte
}

func readGLB(t testing.TB, b []byte) (g glb) {
	t.Helper()
	word := func(at int) int { return int(binary.LittleEndian.Uint32(b[at:])) }
	if string(b[:4]) != "glTF" || word(4) != 2 || word(8) != len(b) || string(b[16:20]) != "JSON" {
		t.Fatalf("header: % x", b[:20])
	}
	text := b[20 : 20+word(12)]
	if err := json.Unmarshal(text, &g); err != nil {
		t.Fatal(err)
	}
	at := 20 + len(text)
	if string(b[at+4:at+8]) != "BIN\x00" || word(at)+at+8 != len(b) || at%4 != 0 {
		t.Fatal("second chunk is not the buffer, or does not fill the file")
	}
	g.bin = b[at+8:]
	return g
}

// start is where an accessor begins in the buffer.
func (g glb) start(accessor int) int {
	a := g.Accessors[accessor]
	return g.BufferViews[a.BufferView].ByteOffset + a.ByteOffset
}

func (g glb) vectors(accessor int) (all []vec) {
	for i := range g.Accessors[accessor].Count {
		all = append(all, readVec(g.bin, g.start(accessor)+12*i))
	}
	return all
}

func (g glb) indices(accessor int) (all []int) {
	a, at := g.Accessors[accessor], g.start(accessor)
	for i := range a.Count {
		if a.ComponentType == 5123 {
			all = append(all, int(binary.LittleEndian.Uint16(g.bin[at+2*i:])))
		} else {
			all = append(all, int(binary.LittleEndian.Uint32(g.bin[at+4*i:])))
		}
	}
	return all
}

// triangles of a mesh, in metres.
func (g glb) triangles(mesh int) (all []triangle) {
	p := g.Meshes[mesh].Primitives[0]
	points, order := g.vectors(p.Attributes["POSITION"]), g.indices(p.Indices)
	for i := 0; i < len(order); i += 3 {
		all = append(all, triangle{points[order[i]], points[order[i+1]], points[order[i+2]]})
	}
	return all
}
