package model_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

func mustSTEP(t testing.TB, s model.Scene) string {
	t.Helper()
	b, err := model.STEP(s)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// count is how many entities of a kind a file has.
func count(step, kind string) int { return strings.Count(step, "="+kind+"(") }

var (
	entity   = regexp.MustCompile(`(?m)^#(\d+)=(.*);$`)
	mention  = regexp.MustCompile(`#(\d+)`)
	oriented = regexp.MustCompile(`^ORIENTED_EDGE\('',\*,\*,#(\d+),\.([TF])\.\)$`)
)

// TestSTEPTopology: every entity that is mentioned is there, before or after;
// each edge is used once forwards and once backwards; and Euler's formula,
// corners − edges + faces − holes in faces = 2·(1 − holes through the body),
// counts out.
func TestSTEPTopology(t *testing.T) {
	for _, b := range append(bodies(), scattered()...) {
		step := mustSTEP(t, oneNode(b.shell))
		known, uses := map[string]bool{}, map[string]string{}
		for _, m := range entity.FindAllStringSubmatch(step, -1) {
			if known[m[1]] {
				t.Errorf("%s: #%s twice", b.name, m[1])
			}
			known[m[1]] = true
			if o := oriented.FindStringSubmatch(m[2]); o != nil {
				uses[o[1]] += o[2]
			}
		}
		for _, m := range mention.FindAllStringSubmatch(step, -1) {
			if !known[m[1]] {
				t.Errorf("%s: #%s is mentioned and not there", b.name, m[1])
			}
		}
		for e, how := range uses {
			if how != "TF" {
				t.Errorf("%s: edge #%s is used %s", b.name, e, how)
			}
		}
		euler := count(step, "VERTEX_POINT") - count(step, "EDGE_CURVE") + count(step, "ADVANCED_FACE") - count(step, "FACE_BOUND")
		if len(uses) != count(step, "EDGE_CURVE") || euler != 2*(1-b.genus) {
			t.Errorf("%s: Euler's sum %d", b.name, euler)
		}
	}
}

var (
	frame     = regexp.MustCompile(`=AXIS2_PLACEMENT_3D\('',#\d+,#(\d+),#(\d+)\)`)
	direction = regexp.MustCompile(`(?m)^#(\d+)=DIRECTION\('',\((.*),(.*),(.*)\)\);$`)
)

// TestSTEPFrames: the axes of every frame are of length 1 and square to each
// other, to the thirteenth decimal that is written.
func TestSTEPFrames(t *testing.T) {
	for _, b := range append(bodies(), scattered()...) {
		step := mustSTEP(t, oneNode(b.shell))
		known := map[string]vec{}
		for _, m := range direction.FindAllStringSubmatch(step, -1) {
			var v vec
			if _, err := fmt.Sscan(m[2]+" "+m[3]+" "+m[4], &v[0], &v[1], &v[2]); err != nil {
				t.Fatal(err)
			}
			known[m[1]] = v
			testkit.Near(t, dot(v, v), 1, 1e-12)
		}
		for _, m := range frame.FindAllStringSubmatch(step, -1) {
			testkit.Near(t, dot(known[m[1]], known[m[2]]), 0, 1e-12)
		}
	}
}

// TestSTEPHeader: schema, unit and accuracy, as readers look for them.
func TestSTEPHeader(t *testing.T) {
	step := mustSTEP(t, oneNode(prism(0, 1, rectangle(0, 0, 1, 1))))
	for _, want := range []string{
		"ISO-10303-21;\nHEADER;\n", "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));",
		"(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))", "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(0.0001),",
	} {
		if !strings.Contains(step, want) {
			t.Errorf("%q is missing", want)
		}
	}
}

// TestWeld: corners less than a nanometre apart are one, others are not.
func TestWeld(t *testing.T) {
	for _, c := range []struct {
		off  float64 // mm
		want model.Kind
	}{{0, ""}, {0.9e-6, ""}, {-0.9e-6, ""}, {3e-6, model.Open}} {
		s := prism(0, 20, rectangle(0, 0, 100, 60))
		s.Faces[4].Outer[2][0] += c.off
		err := s.Check()
		expect(t, fmt.Sprint(c.off), err, c.want)
		if err == nil {
			step := mustSTEP(t, model.Scene{Name: "p", Nodes: []model.Node{{Name: "A1", Shell: s}}})
			if n := count(step, "VERTEX_POINT"); n != 8 {
				t.Errorf("%v: %d corners", c.off, n)
			}
		}
	}
}

// TestStraightCornersGo: corners in the middle of an edge, which a neighbour
// caused, are not in the file; a corner that a third face needs stays.
func TestStraightCornersGo(t *testing.T) {
	s := prism(0, 20, rectangle(0, 0, 100, 60))
	insert(s.Faces, 0, vec{30, 0, 0}, vec{70, 0, 0}) // front edge below: face 0 and the bottom
	insert(s.Faces, 5, vec{70, 0, 0}, vec{30, 0, 0})
	step := mustSTEP(t, model.Scene{Name: "p", Nodes: []model.Node{{Name: "A1", Shell: s}}})
	if v, e := count(step, "VERTEX_POINT"), count(step, "EDGE_CURVE"); v != 8 || e != 12 {
		t.Errorf("%d corners and %d edges, want 8 and 12", v, e)
	}
	// The front in two halves: two corners more, and three edges.
	halved := prism(0, 20, []at{{0, 0}, {50, 0}, {100, 0}, {100, 60}, {0, 60}})
	step = mustSTEP(t, model.Scene{Name: "p", Nodes: []model.Node{{Name: "A1", Shell: halved}}})
	if v, e := count(step, "VERTEX_POINT"), count(step, "EDGE_CURVE"); v != 10 || e != 15 {
		t.Errorf("halved: %d corners and %d edges, want 10 and 15", v, e)
	}
}

// insert puts corners into the edge of a face that they lie on: y = z = 0.
func insert(faces []model.PlanarFace, face int, corners ...vec) {
	ring := faces[face].Outer
	for k, a := range ring {
		b := ring[(k+1)%len(ring)]
		if a[1] == 0 && a[2] == 0 && b[1] == 0 && b[2] == 0 {
			rest := append([]vec{}, ring[k+1:]...)
			faces[face].Outer = append(append(ring[:k+1:k+1], corners...), rest...)
			return
		}
	}
}

// TestSTEPProducts: parts and assemblies are products under their own names.
func TestSTEPProducts(t *testing.T) {
	step := mustSTEP(t, joint())
	var products []string
	for _, m := range regexp.MustCompile(`=PRODUCT\((.*),\(#\d+\)\);`).FindAllStringSubmatch(step, -1) {
		products = append(products, m[1])
	}
	name := `'Corner \X2\2013\X0\ \X2\00BD\X0\ \X2\201C\X0\drawer\X2\201D\X0\'`
	testkit.Diff(t, []string{
		name + "," + name + ",''",
		`'A1','A1','species: cherry; a size: 5-3/8" \X2\00D7\X0\ <20>'`,
		"'pins','pins',''", "'B1','B1',''", "'B2','B2',''", "'B3','B3',''",
	}, products)
	if n := count(step, "NEXT_ASSEMBLY_USAGE_OCCURRENCE"); n != 5 {
		t.Errorf("%d uses, want 5", n)
	}
	for _, c := range []struct{ in, want string }{{`it's a \`, `'it''s a \\'`}, {"a\nb", `'a\X2\000A\X0\b'`}, {"🪵", `'\X4\0001FAB5\X0\'`}} {
		s := oneNode(prism(0, 1, rectangle(0, 0, 1, 1)))
		s.Nodes[0].Name = c.in
		if step := mustSTEP(t, s); !strings.Contains(step, "=PRODUCT("+c.want+",") {
			t.Errorf("%q is not written as %s", c.in, c.want)
		}
	}
}

// TestSTEPPieces: a part in two pieces is one product of two solids.
func TestSTEPPieces(t *testing.T) {
	s := prism(0, 20, rectangle(0, 0, 100, 60))
	s.Faces = append(s.Faces, prism(30, 40, rectangle(0, 0, 100, 60)).Faces...)
	step := mustSTEP(t, model.Scene{Name: "p", Nodes: []model.Node{{Name: "A1", Shell: s}}})
	if p, n := count(step, "PRODUCT"), count(step, "MANIFOLD_SOLID_BREP"); p != 1 || n != 2 {
		t.Errorf("%d products, %d solids", p, n)
	}
}
