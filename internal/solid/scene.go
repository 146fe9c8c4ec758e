package solid

import (
	"fmt"
	"strconv"
	"strings"

	"casewright/internal/joinery"
	"casewright/internal/model"
	"casewright/internal/piece"
	"casewright/internal/solid/csg"
)

// Scene is the piece for other programs: assemblies that hold parts by their
// marks, a material for each wood, every face named by what made it.
func (m *Model) Scene() model.Scene {
	s := model.Scene{Name: m.Piece.Spec.Commission.Name}
	index := map[string]int{}
	for _, a := range m.Piece.Assemblies {
		node := model.Node{Name: a.Letter + " " + a.Name}
		for _, p := range a.Parts {
			if b := m.Body(p); b.Solid != nil {
				node.Children = append(node.Children, m.node(b, material(&s, index, p.Wood)))
			}
		}
		if len(node.Children) > 0 {
			s.Nodes = append(s.Nodes, node)
		}
	}
	return s
}

// PartScene is one part alone in its own frame, for a machine.
func (m *Model) PartScene(p *piece.Part) model.Scene {
	s := model.Scene{Name: p.Mark + " " + p.Name}
	b := m.Body(p)
	n := m.node(b, material(&s, map[string]int{}, p.Wood))
	n.Place = model.Place{}
	s.Nodes = append(s.Nodes, n)
	return s
}

func (m *Model) node(b *Body, material int) model.Node {
	p := b.Part
	return model.Node{Name: p.Mark, Place: placeOf(p.Place), Mesh: b.Mesh(), Shell: b.Shell(), Material: material, Extras: m.extras(b)}
}

func placeOf(p piece.Place) model.Place {
	o := p.Point(0, 0, 0)
	dir := func(d piece.Dir) model.Vec {
		axis, sign := axisOf(d)
		var v model.Vec
		v[axis] = sign
		return v
	}
	return model.Place{Origin: model.Vec{o.X.Millimetres(), o.Y.Millimetres(), o.Z.Millimetres()}, X: dir(p.L), Y: dir(p.W), Z: dir(p.T)}
}

// extras are what a part's node says of itself, as printed.
func (m *Model) extras(b *Body) []model.Extra {
	p := b.Part
	style := m.Piece.Spec.Commission.GapStyle()
	return []model.Extra{
		{Key: "part", Value: p.Name}, {Key: "path", Value: p.Path}, {Key: "wood", Value: p.Wood.Species.Name},
		{Key: "length", Value: style.FormatUnit(m.Piece.Shown(p.Length))}, {Key: "width", Value: style.FormatUnit(m.Piece.Shown(p.Width))},
		{Key: "thickness", Value: style.FormatUnit(m.Piece.Shown(p.Thickness))}, {Key: "standing", Value: string(p.Standing)},
		{Key: "mass_kg", Value: strconv.FormatFloat(float64(b.Mass), 'f', 3, 64)},
	}
}

// Mesh is the body's skin in triangles, in the part's frame.
func (b *Body) Mesh() *model.Mesh {
	m := b.Solid.Mesh()
	out := &model.Mesh{Triangles: m.Triangles, Face: m.Face}
	for _, q := range m.Points {
		out.Positions = append(out.Positions, model.Vec(q))
	}
	for i := range b.Solid.Faces {
		f := &b.Solid.Faces[i]
		out.Faces = append(out.Faces, model.FaceTag{Name: b.FaceName(f), Curved: b.curved(f)})
	}
	return out
}

// Shell is the body's skin in plane faces, in the part's frame.
func (b *Body) Shell() *model.Shell {
	at := make([]model.Vec, len(b.Solid.Vertices))
	for i := range at {
		at[i] = model.Vec(b.Solid.Vertices[i].Millimetres())
	}
	ring := func(loop []int32) []model.Vec {
		out := make([]model.Vec, len(loop))
		for i, v := range loop {
			out[i] = at[v]
		}
		return out
	}
	s := &model.Shell{}
	for i := range b.Solid.Faces {
		f := &b.Solid.Faces[i]
		face := model.PlanarFace{Outer: ring(f.Outer), Normal: model.Vec(f.Unit()), Name: b.FaceName(f)}
		for _, h := range f.Holes {
			face.Holes = append(face.Holes, ring(h))
		}
		s.Faces = append(s.Faces, face)
	}
	return s
}

// FaceName is what a face is called at the bench: the joint that made it, or
// show face, face, edge, end grain.
func (b *Body) FaceName(f *csg.Face) string {
	if j := b.JointOf(f.Origin); j != nil {
		return j.Kind + ": " + j.Name
	}
	if b.curved(f) {
		return "bowed front"
	}
	switch {
	case f.Normal[joinery.L] != 0:
		return "end grain"
	case f.Normal[joinery.W] != 0:
		return "edge"
	case (f.Normal[joinery.T] > 0) == (b.Part.Show == joinery.High):
		return "show face"
	}
	return "face"
}

// curved reports a facet of a bowed front, or of a joint that follows it.
func (b *Body) curved(f *csg.Face) bool {
	if b.Part.Bow == nil || b.straight(f.Origin) {
		return false
	}
	n := 0
	for _, c := range f.Normal {
		if c != 0 {
			n++
		}
	}
	return n > 1
}

// straight reports a face of a joint whose slopes are its own and no bow's.
func (b *Body) straight(o csg.Origin) bool {
	i := int(o.Tag) - 1
	if i < 0 || i >= len(b.Part.Features) {
		return false
	}
	switch b.Part.Features[i].Kind {
	case joinery.PinWaste, joinery.TailWaste, joinery.Bevel:
		return true
	}
	return false
}

// material finds or adds the material of a wood.
func material(s *model.Scene, index map[string]int, w *piece.Wood) int {
	if i, ok := index[w.Name]; ok {
		return i
	}
	i := len(s.Materials)
	index[w.Name] = i
	s.Materials = append(s.Materials, model.Material{Name: w.Name, Color: Color(w), Roughness: 0.6})
	return i
}

// colors are how woods look with a clear finish, by the first part of their
// key; chosen by eye.
var colors = []struct {
	key   string
	color [3]uint8
}{
	{"cherry", [3]uint8{0xa8, 0x62, 0x3b}}, {"walnut", [3]uint8{0x5c, 0x40, 0x2e}}, {"oak-white", [3]uint8{0xb9, 0x96, 0x68}}, {"oak", [3]uint8{0xb5, 0x84, 0x5a}},
	{"maple", [3]uint8{0xdc, 0xbf, 0x92}}, {"ash", [3]uint8{0xd3, 0xb8, 0x8c}}, {"birch", [3]uint8{0xd6, 0xb1, 0x83}}, {"beech", [3]uint8{0xcf, 0xa2, 0x78}},
	{"mahogany", [3]uint8{0x8a, 0x4b, 0x31}}, {"khaya", [3]uint8{0x9a, 0x5a, 0x3c}}, {"pine", [3]uint8{0xdd, 0xb8, 0x7c}}, {"poplar", [3]uint8{0xc4, 0xb5, 0x88}}, {"yellow-poplar", [3]uint8{0xc4, 0xb5, 0x88}},
}

// Color is how a wood is shown: as the text says, else as the species looks.
func Color(w *piece.Wood) [3]uint8 {
	if c, ok := hex(w.Color); ok {
		return c
	}
	for _, c := range colors {
		if strings.HasPrefix(w.Species.Key, c.key) {
			return c.color
		}
	}
	return [3]uint8{0xb0, 0x8a, 0x60}
}

func hex(text string) (c [3]uint8, ok bool) {
	n, err := fmt.Sscanf(text, "#%02x%02x%02x", &c[0], &c[1], &c[2])
	return c, err == nil && n == 3 && len(text) == 7
}
