package model_test

import (
	"math"
	"testing"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

func mustGLB(t testing.TB, s model.Scene) glb {
	t.Helper()
	b, err := model.GLB(s)
	if err != nil {
		t.Fatal(err)
	}
	return readGLB(t, b)
}

// TestGLBFrame: the front of the piece, −Y, looks along glTF's +Z, Z is up, and
// a metre is a metre.
func TestGLBFrame(t *testing.T) {
	g := mustGLB(t, oneNode(prism(0, 500, rectangle(0, -300, 1000, 0))))
	a := g.Accessors[g.Meshes[0].Primitives[0].Attributes["POSITION"]]
	testkit.Diff(t, []float64{0, 0, 0}, a.Min)
	testkit.Diff(t, []float64{1, 0.5, float64(float32(0.3))}, a.Max)
	testkit.Near(t, volume(g.triangles(0)), 0.15, 1e-8) // single precision
}

// TestGLBTurns: a node's translation and rotation carry its corners where its
// Place does. The quaternion is applied by its definition, v + 2w(u×v) +
// 2u×(u×v).
func TestGLBTurns(t *testing.T) {
	c := math.Sqrt(0.75) // cos 30°
	s := oneNode(prism(0, 1, rectangle(0, 0, 1, 1)))
	for _, p := range []model.Place{
		{},
		{Origin: vec{100, 200, 300}},
		{X: vec{0, 1, 0}, Y: vec{-1, 0, 0}, Z: vec{0, 0, 1}},                        // a quarter
		{X: vec{-1, 0, 0}, Y: vec{0, -1, 0}, Z: vec{0, 0, 1}},                       // halves about each axis
		{X: vec{1, 0, 0}, Y: vec{0, -1, 0}, Z: vec{0, 0, -1}, Origin: vec{0, 5, 0}}, //
		{X: vec{-1, 0, 0}, Y: vec{0, 1, 0}, Z: vec{0, 0, -1}},
		{X: vec{0, 1, 0}, Y: vec{0, 0, 1}, Z: vec{1, 0, 0}}, // a third about a corner
		// 150°, where the turn about each axis in turn outweighs w
		{X: vec{1, 0, 0}, Y: vec{0, -c, 0.5}, Z: vec{0, -0.5, -c}},
		{X: vec{-c, 0, -0.5}, Y: vec{0, 1, 0}, Z: vec{0.5, 0, -c}},
		{X: vec{-c, 0.5, 0}, Y: vec{-0.5, -c, 0}, Z: vec{0, 0, 1}},
		{X: vec{0.6, 0, -0.8}, Y: vec{0, 1, 0}, Z: vec{0.8, 0, 0.6}, Origin: vec{-7, 0, 1}},
	} {
		s.Nodes[0].Place = p
		n := mustGLB(t, s).Nodes[0]
		axes := [3]vec{p.X, p.Y, p.Z}
		if p.X == (vec{}) {
			axes = [3]vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
		}
		at, q := vec{}, [4]float64{0, 0, 0, 1}
		copy(at[:], n.Translation)
		copy(q[:], n.Rotation)
		for k, axis := range axes {
			want := yUp(vec{axis[0] + p.Origin[0], axis[1] + p.Origin[1], axis[2] + p.Origin[2]})
			unit := vec{}
			unit[k] = 1
			got := turned(q, yUp(unit))
			for i := range got {
				testkit.Near(t, got[i]+at[i], want[i], 2e-9)
			}
		}
	}
}

// yUp is a point of the piece in glTF's frame, in metres.
func yUp(v vec) vec { return vec{v[0] / 1000, v[2] / 1000, -v[1] / 1000} }

func turned(q [4]float64, v vec) vec {
	u := vec{q[0], q[1], q[2]}
	a := cross(u, v)
	b := cross(u, a)
	return vec{v[0] + 2*q[3]*a[0] + 2*b[0], v[1] + 2*q[3]*a[1] + 2*b[1], v[2] + 2*q[3]*a[2] + 2*b[2]}
}

// TestGLBFaces: every vertex carries the number of its face and that face's
// normal.
func TestGLBFaces(t *testing.T) {
	shell := pinBoard()
	g := mustGLB(t, oneNode(shell))
	p := g.Meshes[0].Primitives[0]
	normals, points := g.vectors(p.Attributes["NORMAL"]), g.vectors(p.Attributes["POSITION"])
	var names []string
	for _, f := range shell.Faces {
		names = append(names, f.Name)
	}
	testkit.Diff(t, names, g.Meshes[0].Extras.Faces)
	seen := map[int]bool{}
	for i := range points {
		f := float(g.bin, g.start(p.Attributes["_FACE"])+4*i)
		face := shell.Faces[int(f)]
		seen[int(f)] = true
		want := yUp(face.Normal)
		size := math.Sqrt(dot(want, want))
		testkit.Near(t, dot(normals[i], want)/size, 1, 1e-6)
		corner := yUp(face.Outer[0])
		testkit.Near(t, dot(sub(points[i], corner), want)/size, 0, 1e-7) // in the face's plane
	}
	if len(seen) != len(shell.Faces) {
		t.Errorf("%d faces of %d have vertices", len(seen), len(shell.Faces))
	}
}

// TestGLBRound: on a curved face the normals point away from the axis, so that
// facets do not show; the ends stay flat.
func TestGLBRound(t *testing.T) {
	m := tube(24, 10, 40)
	g := mustGLB(t, model.Scene{Name: "dowel", Nodes: []model.Node{{Name: "D1", Mesh: m}}})
	p := g.Meshes[0].Primitives[0]
	normals, points := g.vectors(p.Attributes["NORMAL"]), g.vectors(p.Attributes["POSITION"])
	if len(points) != 4*24 { // wall and ends have corners of their own
		t.Errorf("%d vertices, want 96", len(points))
	}
	for i, n := range normals {
		want := vec{points[i][0] / 0.01, 0, points[i][2] / 0.01}
		if f := float(g.bin, g.start(p.Attributes["_FACE"])+4*i); f > 0 {
			want = vec{0, 3 - 2*f, 0} // 1 up, 2 down
		}
		for k := range n {
			testkit.Near(t, n[k], want[k], 1e-6)
		}
	}
}

// TestGLBScene: names, order, sharing, extras and materials.
func TestGLBScene(t *testing.T) {
	g := mustGLB(t, joint())
	var names []string
	for _, n := range g.Nodes {
		names = append(names, n.Name)
	}
	testkit.Diff(t, []string{"A1", "B1", "B2", "B3", "pins"}, names)
	testkit.Diff(t, []int{0, 4}, g.Scenes[0].Nodes)
	testkit.Diff(t, []int{1, 2, 3}, g.Nodes[4].Children)
	testkit.Diff(t, `{"species":"cherry","a size":"5-3/8\" × \u003c20\u003e"}`, string(g.Nodes[0].Extras))
	if len(g.Meshes) != 3 || *g.Nodes[1].Mesh != *g.Nodes[2].Mesh || *g.Nodes[2].Mesh == *g.Nodes[3].Mesh {
		t.Errorf("B1 and B2 must share a mesh, B3 is of another material: %d meshes", len(g.Meshes))
	}
	if len(g.Materials) != 2 || g.Materials[0].Name != "cherry" || g.Materials[1].AlphaMode != "BLEND" {
		t.Fatalf("materials: %+v", g.Materials)
	}
	// sRGB 0xA8 = 168: ((168/255 + 0.055)/1.055)^2.4 = 0.3915 (IEC 61966-2-1)
	testkit.Near(t, g.Materials[0].PBR.BaseColorFactor[0], 0.3915, 1e-4)
	testkit.Near(t, g.Materials[1].PBR.BaseColorFactor[3], 0.25, 0)
	testkit.Near(t, g.Materials[0].PBR.RoughnessFactor, 0.6, 0)
}

// TestGLBManyVertices: past 65 534 vertices indices take 32 bits.
func TestGLBManyVertices(t *testing.T) {
	const n = 17000 // 4n vertices
	g := mustGLB(t, model.Scene{Name: "dowel", Nodes: []model.Node{{Name: "D1", Mesh: wheel(n)}}})
	if got := g.Accessors[g.Meshes[0].Primitives[0].Indices].ComponentType; got != 5125 {
		t.Errorf("component type %d, want 5125", got)
	}
	// n facets of a circle of radius 1 m, 1 m high
	testkit.Near(t, volume(g.triangles(0)), 0.5*n*math.Sin(2*math.Pi/n), 1e-6)
}

// wheel is a cylinder, 1 m in radius and high, whose ends are fans.
func wheel(n int32) *model.Mesh {
	m := &model.Mesh{Faces: []model.FaceTag{{Name: "wall", Curved: true}, {Name: "top"}, {Name: "bottom"}}}
	for _, z := range []float64{0, 1000} {
		m.Positions = append(m.Positions, raised(regular(int(n), 0, 0, 1000), z)...)
	}
	m.Positions = append(m.Positions, vec{}, vec{0, 0, 1000})
	for k := range n {
		a, b := k, (k+1)%n
		m.Triangles = append(m.Triangles, [3]int32{a, b, b + n}, [3]int32{a, b + n, a + n}, [3]int32{a + n, b + n, 2*n + 1}, [3]int32{b, a, 2 * n})
		m.Face = append(m.Face, 0, 0, 1, 2)
	}
	return m
}
