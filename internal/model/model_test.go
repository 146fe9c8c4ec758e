package model_test

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

// writers are the scene formats.
var writers = []struct {
	name  string
	write func(model.Scene) ([]byte, error)
}{{"glb", model.GLB}, {"3mf", model.ThreeMF}, {"step", model.STEP}}

func oneNode(s *model.Shell) model.Scene {
	return model.Scene{Name: "piece", Nodes: []model.Node{{Name: "A1", Shell: s, Mesh: mesh(s)}}}
}

// joint is the tail board standing in the pin board, in an assembly, with a
// second pin board that shares everything with the first: pins along x of the
// piece, tail board upright.
func joint() model.Scene {
	tail, pin := tailBoard(), pinBoard()
	pinMesh := mesh(pin)
	quarter := model.Place{X: vec{0, 1, 0}, Y: vec{-1, 0, 0}, Z: vec{0, 0, 1}}
	moved := quarter
	moved.Origin = vec{500, 40, 7.5}
	return model.Scene{
		Name: "Corner – ½ “drawer”",
		Materials: []model.Material{
			{Name: "unused"},
			{Name: "cherry", Color: [3]uint8{0xA8, 0x62, 0x3C}, Roughness: 0.6},
			{Name: "glass", Color: [3]uint8{255, 255, 255}, Clear: 0.75},
		},
		Nodes: []model.Node{
			{Name: "A1", Mesh: mesh(tail), Shell: tail, Material: 1, Place: model.Place{Origin: vec{0, 0, 100}},
				Extras: []model.Extra{{Key: "species", Value: "cherry"}, {Key: "a size", Value: `5-3/8" × <20>`}}},
			{Name: "pins", Place: moved, Children: []model.Node{
				{Name: "B1", Mesh: pinMesh, Shell: pin, Material: 1},
				{Name: "B2", Mesh: pinMesh, Shell: pin, Material: 1, Place: moved},
				{Name: "B3", Mesh: pinMesh, Shell: pin, Material: 2, Place: model.Place{
					Origin: vec{-300, 0, 0}, X: vec{0.6, 0, -0.8}, Y: vec{0, 1, 0}, Z: vec{0.8, 0, 0.6}}},
			}},
		},
	}
}

func TestSameBytesTwice(t *testing.T) {
	for _, w := range writers {
		a, err := w.write(joint())
		if err != nil {
			t.Fatalf("%s: %v", w.name, err)
		}
		if b, _ := w.write(joint()); !bytes.Equal(a, b) {
			t.Errorf("%s: two runs differ", w.name)
		}
	}
}

// TestGolden shows what changed when a writer does. Whether it is right the
// outside readers tell.
func TestGolden(t *testing.T) {
	box := oneNode(prism(0, 20, rectangle(0, 0, 100, 60)))
	step, err := model.STEP(box)
	if err != nil {
		t.Fatal(err)
	}
	testkit.Golden(t, "box.step", step)
	glb, err := model.GLB(joint())
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := json.Indent(&text, bytes.TrimRight(glb[20:20+binary.LittleEndian.Uint32(glb[12:])], " "), "", " "); err != nil {
		t.Fatal(err)
	}
	testkit.Golden(t, "joint.gltf", text.Bytes())
}

// TestFaults: nothing unsound becomes a file; what is wrong is told by kind.
func TestFaults(t *testing.T) {
	box := func(spoil func(*model.Shell)) *model.Shell {
		s := prism(0, 20, rectangle(0, 0, 100, 60), backwards(rectangle(40, 20, 60, 40)))
		spoil(s)
		return s
	}
	top := 8 // four sides, four walls of the hole, then the top
	for _, c := range []struct {
		name  string
		want  model.Kind
		shell *model.Shell
	}{
		{"sound", "", box(func(*model.Shell) {})},
		{"no face", model.Empty, &model.Shell{}},
		{"not a number", model.NotFinite, box(func(s *model.Shell) { s.Faces[3].Outer[2][1] = math.NaN() })},
		{"infinite", model.NotFinite, box(func(s *model.Shell) { s.Faces[3].Outer[2][1] = math.Inf(-1) })},
		{"face missing", model.Open, box(func(s *model.Shell) { s.Faces = s.Faces[1:] })},
		{"face doubled", model.Crowded, box(func(s *model.Shell) { s.Faces = append(s.Faces, s.Faces[0]) })},
		{"face turned over", model.Inverted, box(func(s *model.Shell) { s.Faces[0].Outer = backwards(s.Faces[0].Outer) })},
		{"face and normal turned over", model.Open, box(func(s *model.Shell) {
			f := &s.Faces[0]
			f.Outer, f.Normal = backwards(f.Outer), vec{-f.Normal[0], -f.Normal[1], -f.Normal[2]}
		})},
		{"normal missing", model.Inverted, box(func(s *model.Shell) { s.Faces[0].Normal = vec{} })},
		{"hole turned over", model.Inverted, box(func(s *model.Shell) { s.Faces[top].Holes[0] = backwards(s.Faces[top].Holes[0]) })},
		{"hole outside", model.Crossing, box(func(s *model.Shell) {
			for k := range s.Faces[top].Holes[0] {
				s.Faces[top].Holes[0][k][0] += 100
			}
		})},
		{"hole across the edge", model.Crossing, prism(0, 20, rectangle(0, 0, 100, 60), backwards(rectangle(40, 20, 60, 70)))},
		{"bow tie", model.Crossing, prism(0, 20, []at{{0, 0}, {60, 0}, {60, 40}, {20, -10}})},
		{"out and back", model.Crossing, prism(0, 20, []at{{0, 0}, {60, 0}, {60, 40}, {30, 40}, {30, 60}, {30, 40}, {0, 40}})},
		{"corner lifted", model.NotFlat, box(func(s *model.Shell) { s.Faces[top].Outer[3][2] += 0.001 })},
		{"corner repeated", model.Degenerate, box(func(s *model.Shell) {
			s.Faces[top].Outer = append(s.Faces[top].Outer, s.Faces[top].Outer[3])
		})},
		{"two corners", model.Degenerate, box(func(s *model.Shell) { s.Faces[0].Outer = s.Faces[0].Outer[:2] })},
		{"inside out", model.Inverted, insideOut(box(func(*model.Shell) {}))},
		{"hollow", model.Inverted, box(func(s *model.Shell) {
			s.Faces = append(s.Faces, insideOut(prism(5, 15, rectangle(5, 5, 15, 15))).Faces...)
		})},
	} {
		err := c.shell.Check()
		expect(t, c.name, err, c.want)
		if c.want == "" {
			continue
		}
		_, err = model.STEP(model.Scene{Name: "piece", Nodes: []model.Node{{Name: "A1", Shell: c.shell}}})
		expect(t, c.name+" in a file", err, c.want)
		if err != nil && !strings.HasPrefix(err.Error(), "A1: ") {
			t.Errorf("%s: %q does not name the part", c.name, err)
		}
	}
}

// expect wants an error of one kind, or none.
func expect(t *testing.T, name string, err error, want model.Kind) {
	t.Helper()
	var f *model.Fault
	switch {
	case want == "" && err != nil:
		t.Errorf("%s: %v", name, err)
	case want != "" && (!errors.Is(err, want) || !errors.As(err, &f)):
		t.Errorf("%s: got %v, want %v", name, err, want)
	}
}

// insideOut turns every face over.
func insideOut(s *model.Shell) *model.Shell {
	for i := range s.Faces {
		f := &s.Faces[i]
		f.Outer = backwards(f.Outer)
		for h := range f.Holes {
			f.Holes[h] = backwards(f.Holes[h])
		}
		f.Normal = vec{-f.Normal[0], -f.Normal[1], -f.Normal[2]}
	}
	return s
}

func TestMeshFaults(t *testing.T) {
	for _, c := range []struct {
		name  string
		want  model.Kind
		spoil func(*model.Mesh)
	}{
		{"sound", "", func(*model.Mesh) {}},
		{"empty", model.Empty, func(m *model.Mesh) { *m = model.Mesh{} }},
		{"not a number", model.NotFinite, func(m *model.Mesh) { m.Positions[0][0] = math.NaN() }},
		{"infinite", model.NotFinite, func(m *model.Mesh) { m.Positions[0][2] = math.Inf(1) }},
		{"triangle missing", model.Open, func(m *model.Mesh) { m.Triangles, m.Face = m.Triangles[1:], m.Face[1:] }},
		{"triangle turned over", model.Open, func(m *model.Mesh) { m.Triangles[0][0], m.Triangles[0][1] = m.Triangles[0][1], m.Triangles[0][0] }},
		{"triangle doubled", model.Crowded, func(m *model.Mesh) {
			m.Triangles, m.Face = append(m.Triangles, m.Triangles[0]), append(m.Face, m.Face[0])
		}},
		{"corner twice", model.Degenerate, func(m *model.Mesh) { m.Triangles[0][0] = m.Triangles[0][1] }},
		{"no such corner", model.BadIndex, func(m *model.Mesh) { m.Triangles[0][0] = 99 }},
		{"negative corner", model.BadIndex, func(m *model.Mesh) { m.Triangles[0][0] = -1 }},
		{"no such face", model.BadIndex, func(m *model.Mesh) { m.Faces = nil }},
		{"faces too few", model.BadIndex, func(m *model.Mesh) { m.Face = m.Face[1:] }},
		{"bent", model.NotFlat, func(m *model.Mesh) { m.Positions[0][0] += 0.01 }},
		{"bent, but said to be", "", func(m *model.Mesh) {
			m.Positions[0][0] += 0.01
			for i := range m.Faces {
				m.Faces[i].Curved = true
			}
		}},
		{"flattened", model.Degenerate, func(m *model.Mesh) {
			for i := range m.Positions {
				m.Positions[i][2] = 0
			}
		}},
		{"inside out", model.Inverted, func(m *model.Mesh) {
			for i, t := range m.Triangles {
				m.Triangles[i] = [3]int32{t[0], t[2], t[1]}
			}
		}},
	} {
		m := mesh(prism(0, 1, rectangle(0, 0, 1, 1)))
		c.spoil(m)
		expect(t, c.name, m.Check(), c.want)
		_, err := model.STL("A1", m)
		expect(t, c.name+" in STL", err, c.want)
		s := model.Scene{Name: "piece", Nodes: []model.Node{{Name: "A1", Mesh: m}}}
		for _, w := range writers[:2] {
			_, err := w.write(s)
			expect(t, c.name+" in "+w.name, err, c.want)
		}
	}
}

func TestSceneFaults(t *testing.T) {
	part := func(spoil func(*model.Scene)) model.Scene {
		s := oneNode(prism(0, 1, rectangle(0, 0, 1, 1)))
		s.Materials = []model.Material{{Name: "cherry"}}
		spoil(&s)
		return s
	}
	for _, c := range []struct {
		name string
		want model.Kind
		s    model.Scene
	}{
		{"sound", "", part(func(*model.Scene) {})},
		{"nothing", model.Unnamed, model.Scene{}},
		{"no node", model.Empty, model.Scene{Name: "piece"}},
		{"part without a mark", model.Unnamed, part(func(s *model.Scene) { s.Nodes[0].Name = "" })},
		{"part without a shape", model.Empty, part(func(s *model.Scene) { s.Nodes[0].Mesh, s.Nodes[0].Shell = nil, nil })},
		{"no such material", model.BadIndex, part(func(s *model.Scene) { s.Nodes[0].Material = 1 })},
		{"part with parts", model.BadTree, part(func(s *model.Scene) { s.Nodes[0].Children = []model.Node{{Name: "B1"}} })},
		{"extra twice", model.BadTree, part(func(s *model.Scene) { s.Nodes[0].Extras = []model.Extra{{Key: "a"}, {Key: "a"}} })},
		{"extra that is taken", model.BadTree, part(func(s *model.Scene) { s.Nodes[0].Extras = []model.Extra{{Key: "faces"}} })},
		{"mirrored", model.BadPlace, part(func(s *model.Scene) {
			s.Nodes[0].Place = model.Place{X: vec{-1, 0, 0}, Y: vec{0, 1, 0}, Z: vec{0, 0, 1}}
		})},
		{"stretched", model.BadPlace, part(func(s *model.Scene) {
			s.Nodes[0].Place = model.Place{X: vec{1.001, 0, 0}, Y: vec{0, 1, 0}, Z: vec{0, 0, 1}}
		})},
		{"skewed", model.BadPlace, part(func(s *model.Scene) {
			s.Nodes[0].Place = model.Place{X: vec{1, 0, 0}, Y: vec{0.6, 0.8, 0}, Z: vec{0, 0, 1}}
		})},
		{"nowhere", model.BadPlace, part(func(s *model.Scene) { s.Nodes[0].Place.Origin[1] = math.NaN() })},
	} {
		for _, w := range writers {
			_, err := w.write(c.s)
			expect(t, c.name+" in "+w.name, err, c.want)
		}
	}
	// each writer misses its own shape
	noMesh, noShell := part(func(s *model.Scene) { s.Nodes[0].Mesh = nil }), part(func(s *model.Scene) { s.Nodes[0].Shell = nil })
	_, err := model.GLB(noMesh)
	expect(t, "GLB without a mesh", err, model.Empty)
	_, err = model.ThreeMF(noMesh)
	expect(t, "3MF without a mesh", err, model.Empty)
	_, err = model.STEP(noShell)
	expect(t, "STEP without a shell", err, model.Empty)
	_, err = model.STL("A1", nil)
	expect(t, "STL without a mesh", err, model.Empty)
}

// TestFaultInWords pins what a caller reads.
func TestFaultInWords(t *testing.T) {
	s := prism(0, 20, rectangle(0, 0, 100, 60))
	s.Faces[4].Outer[3][2] += 0.25
	_, err := model.STEP(model.Scene{Name: "piece", Nodes: []model.Node{{Name: "A1", Shell: s}}})
	testkit.Diff(t, "A1: corner outside the plane of its face, face 4, near (100, 0, 20) mm", err.Error())
}
