package model_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

// The tests here hand our files to other people's programs (folder outside/),
// which share no code with the writers. Each program starts once and reads
// all bodies, since starting costs more than reading.

// scattered are random prisms, the same on every run.
func scattered() (all []body) {
	for seed := range 24 {
		p := prisms.Example(seed)
		all = append(all, body{fmt.Sprintf("prism %d", seed), p.shell, p.volume, p.holes})
	}
	return all
}

func files(t testing.TB, ending string, all []body, write func(body) ([]byte, error)) (paths []string) {
	t.Helper()
	folder := t.TempDir()
	for i, b := range all {
		out, err := write(b)
		if err != nil {
			t.Fatalf("%s: %v", b.name, err)
		}
		paths = append(paths, save(t, filepath.Join(folder, fmt.Sprintf("%02d%s", i, ending)), out))
	}
	return paths
}

func save(t testing.TB, path string, b []byte) string {
	t.Helper()
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestKhronos: no message of any severity.
func TestKhronos(t *testing.T) {
	all := append(bodies(), scattered()...)
	paths := files(t, ".glb", all, func(b body) ([]byte, error) { return model.GLB(oneNode(b.shell)) })
	for name, s := range map[string]model.Scene{
		"joint.glb": joint(),
		"dowel.glb": {Name: "dowel", Nodes: []model.Node{{Name: "D1", Mesh: tube(48, 5, 30)}}},
		"wheel.glb": {Name: "wheel", Nodes: []model.Node{{Name: "W1", Mesh: wheel(17000)}}},
	} {
		b, err := model.GLB(s)
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, save(t, filepath.Join(t.TempDir(), name), b))
	}
	var reports []struct {
		Messages  []string
		Triangles int
	}
	testkit.Node(t, &reports, "gltf.mjs", paths...)
	for i, r := range reports {
		if len(r.Messages) > 0 {
			t.Errorf("%s: %s", filepath.Base(paths[i]), strings.Join(r.Messages, "\n"))
		}
		if i < len(all) && r.Triangles != len(mesh(all[i].shell).Triangles) {
			t.Errorf("%s: %d triangles", all[i].name, r.Triangles)
		}
	}
}

// read is a mesh as three's loaders give it.
type read struct {
	Name, Parent, Face, Material string
	Data                         map[string]any
	Triangles, Inward            int
	Volume                       float64
	Low, High                    [3]float64
}

// TestThree reads all formats of three's loaders. Volumes are off by single
// precision.
func TestThree(t *testing.T) {
	all := append(bodies(), scattered()...)
	glbs := files(t, ".glb", all, func(b body) ([]byte, error) { return model.GLB(oneNode(b.shell)) })
	stls := files(t, ".stl", all, func(b body) ([]byte, error) { return model.STL("A1", mesh(b.shell)) })
	mfs := files(t, ".3mf", all, func(b body) ([]byte, error) { return model.ThreeMF(oneNode(b.shell)) })
	var meshes [][]read
	testkit.Node(t, &meshes, "three.mjs", append(append(glbs, stls...), mfs...)...)
	for i, b := range all {
		near := single(b.shell)
		for k, cubic := range []float64{1e-9, 1, 1} { // glTF is in metres
			got := meshes[i+k*len(all)]
			if len(got) != 1 || got[0].Inward > 0 {
				t.Errorf("%s: %d meshes, normals turned in: %+v", b.name, len(got), got)
				continue
			}
			testkit.Near(t, got[0].Volume, b.volume*cubic, near*cubic)
		}
		if m := meshes[i][0]; m.Name != "A1" || m.Face != b.shell.Faces[0].Name {
			t.Errorf("%s: name %q, first face %q", b.name, m.Name, m.Face)
		}
		if m := meshes[i+2*len(all)][0]; m.Name != "A1" {
			t.Errorf("%s: 3MF name %q", b.name, m.Name)
		}
	}
}

// TestThreePlaces: parts stand where the tree says, in both formats.
func TestThreePlaces(t *testing.T) {
	folder := t.TempDir()
	g, err := model.GLB(joint())
	if err != nil {
		t.Fatal(err)
	}
	m, err := model.ThreeMF(joint())
	if err != nil {
		t.Fatal(err)
	}
	var meshes [][]read
	testkit.Node(t, &meshes, "three.mjs", save(t, filepath.Join(folder, "joint.glb"), g), save(t, filepath.Join(folder, "joint.3mf"), m))
	// Tail board: −20…200 × 0…120 × 0…20, raised by 100. Pin boards: 120 × 20 ×
	// 220, a quarter turn about Z, so x −20…0, y 0…120, then the place; B2
	// turned and moved twice: (500, 40, 7.5) turned is (−40, 500, 7.5), and
	// 120 × 20 turned twice reaches to −120 × −20.
	want := []struct {
		low, high vec
		volume    float64
	}{
		{vec{-20, 0, 100}, vec{200, 120, 120}, 515400},
		{vec{480, 40, 7.5}, vec{500, 160, 227.5}, 492600},
		{vec{500 - 40 - 120, 40 + 500 - 20, 15}, vec{500 - 40, 40 + 500, 235}, 492600},
	}
	for i, w := range want {
		for k, got := range []read{meshes[0][i], meshes[1][i]} {
			low, high, cubic := w.low, w.high, 1.0
			if k == 0 {
				low, high, cubic = yUp(vec{w.low[0], w.high[1], w.low[2]}), yUp(vec{w.high[0], w.low[1], w.high[2]}), 1e-9
			}
			for c := range low {
				testkit.Near(t, got.Low[c], low[c], 1e-4)
				testkit.Near(t, got.High[c], high[c], 1e-4)
			}
			testkit.Near(t, got.Volume, w.volume*cubic, 3*cubic)
		}
	}
	if a1 := meshes[0][0]; a1.Data["a size"] != `5-3/8" × <20>` || a1.Material != "cherry" {
		t.Errorf("A1: %+v", a1)
	}
	if b3 := meshes[0][3]; b3.Name != "B3" || b3.Parent != "pins" || b3.Material != "glass" {
		t.Errorf("B3: %+v", b3)
	}
}

// TestOpenCascade: an independent kernel reads every solid as valid, with its
// faces and its volume. Its own figures are good to about 1e-12.
func TestOpenCascade(t *testing.T) {
	all := append(bodies(), scattered()...)
	paths := files(t, ".step", all, func(b body) ([]byte, error) { return model.STEP(oneNode(b.shell)) })
	assembled, err := model.STEP(joint())
	if err != nil {
		t.Fatal(err)
	}
	paths = append(paths, save(t, filepath.Join(t.TempDir(), "joint.step"), assembled))
	var got []struct {
		Error  string
		Valid  bool
		Solids []struct {
			Volume    float64
			Faces     int
			Valid     bool
			Low, High vec
		}
	}
	testkit.Node(t, &got, "step.mjs", paths...)
	for i, b := range all {
		g := got[i]
		if g.Error != "" || !g.Valid || len(g.Solids) != 1 || !g.Solids[0].Valid {
			t.Errorf("%s: %+v", b.name, g)
			continue
		}
		if g.Solids[0].Faces != len(b.shell.Faces) {
			t.Errorf("%s: %d faces, want %d", b.name, g.Solids[0].Faces, len(b.shell.Faces))
		}
		testkit.Near(t, g.Solids[0].Volume, b.volume, 1e-8*b.volume)
	}
	// four solids, each where its Place puts it
	j := got[len(all)]
	if !j.Valid || len(j.Solids) != 4 {
		t.Fatalf("joint: %+v", j)
	}
	for i, want := range []float64{515400, 492600, 492600, 492600} {
		testkit.Near(t, j.Solids[i].Volume, want, 1e-3)
	}
	for c, want := range (vec{500 - 40 - 120, 40 + 500 - 20, 15}) { // B2, as above
		testkit.Near(t, j.Solids[2].Low[c], want, 1e-3)
	}
}

// TestManifold: the meshes are solids to a library that is strict about it.
func TestManifold(t *testing.T) {
	all := append(bodies(), scattered()...)
	all = append(all, body{"dowel", prism(0, 30, regular(48, 0, 0, 5)), 30 * 24 * 25 * math.Sin(2*math.Pi/48), 0})
	paths := files(t, ".stl", all, func(b body) ([]byte, error) { return model.STL("A1", mesh(b.shell)) })
	var got []struct {
		Status string
		Volume float64
		Genus  int
	}
	testkit.Node(t, &got, "manifold.mjs", paths...)
	for i, b := range all {
		if got[i].Status != "NoError" || got[i].Genus != b.genus {
			t.Errorf("%s: %+v, want genus %d", b.name, got[i], b.genus)
		}
		testkit.Near(t, got[i].Volume, b.volume, single(b.shell))
	}
}
