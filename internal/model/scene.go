package model

import "math"

// Scene is everything that goes into one file.
type Scene struct {
	Name      string // the piece; must not be empty
	Nodes     []Node // at least one
	Materials []Material
}

// Node is a part, or an assembly of nodes; never both.
type Node struct {
	Name     string // the part mark, or what the assembly is called; must not be empty
	Place    Place  // where it stands in its parent
	Children []Node // an assembly's; a part has none
	// Mesh is what GLB and ThreeMF write. Nodes that point to one Mesh and
	// have one material share it in the file. It is only read.
	Mesh *Mesh
	// Shell is what STEP writes. It is only read.
	Shell *Shell
	// Material is the place in Scene.Materials; ignored when there are none,
	// and by STEP.
	Material int
	// Extras are words about the part (species, sizes as printed, path), shown
	// as they are, in this order. Keys must differ; "faces" is taken.
	Extras []Extra
}

// Extra is one thing said about a node.
type Extra struct{ Key, Value string }

// Material is how a surface looks. The zero Material is black and as smooth as
// a mirror.
type Material struct {
	Name      string
	Color     [3]uint8 // red, green, blue as on a screen (sRGB)
	Roughness float64  // 0 mirror … 1 chalk; what lies outside is clamped
	Clear     float64  // share of light let through: 0 wood … 1; what lies outside is clamped
}

// Place carries a node's own coordinates p into its parent's:
// Origin + p[0]·X + p[1]·Y + p[2]·Z. X, Y and Z must be square to each other,
// of length 1 and right-handed: parts are turned, never mirrored. All three
// zero mean that nothing is turned, so the zero Place leaves a node where it is.
type Place struct{ Origin, X, Y, Z Vec }

// axes are X, Y and Z with the zero Place filled in.
func (p Place) axes() [3]Vec {
	if p.X == (Vec{}) && p.Y == (Vec{}) && p.Z == (Vec{}) {
		return [3]Vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	}
	return [3]Vec{p.X, p.Y, p.Z}
}

// identity tells whether the place moves nothing.
func (p Place) identity() bool {
	return p.Origin == Vec{} && p.axes() == Place{}.axes()
}

// carry is p applied to a point.
func (p Place) carry(v Vec) Vec { return p.turn(v).plus(p.Origin) }

// turn is p applied to a direction.
func (p Place) turn(v Vec) Vec {
	a := p.axes()
	return a[0].by(v[0]).plus(a[1].by(v[1])).plus(a[2].by(v[2]))
}

// then is the place of a child at q in a node at p, seen by p's parent.
func (p Place) then(q Place) Place {
	a := q.axes()
	return Place{Origin: p.carry(q.Origin), X: p.turn(a[0]), Y: p.turn(a[1]), Z: p.turn(a[2])}
}

// square is how far the axes of a Place may be from square and from length 1:
// rounding, no more. Over a metre it is a nanometre.
const square = 1e-9

// rigid tells whether p only turns and moves.
func (p Place) rigid() bool {
	a := p.axes()
	if !p.Origin.finite() || !(a[0].cross(a[1]).dot(a[2]) > 0) {
		return false
	}
	for i := range a {
		if !(math.Abs(a[i].dot(a[i])-1) <= 2*square) || !(math.Abs(a[i].dot(a[(i+1)%3])) <= square) {
			return false
		}
	}
	return true
}

// check finds what is wrong with the tree itself; shapes are checked by the
// writer that uses them.
func (s Scene) check() error {
	if s.Name == "" {
		return &Fault{Kind: Unnamed, Face: none}
	}
	if len(s.Nodes) == 0 {
		return &Fault{Kind: Empty, Node: s.Name, Face: none, Detail: "no node"}
	}
	return s.checkAll(s.Nodes)
}

func (s Scene) checkAll(nodes []Node) error {
	for i := range nodes {
		if err := s.checkNode(&nodes[i]); err != nil {
			return err
		}
		if err := s.checkAll(nodes[i].Children); err != nil {
			return err
		}
	}
	return nil
}

func (s Scene) checkNode(n *Node) error {
	part := n.Mesh != nil || n.Shell != nil
	fault := func(k Kind, detail string) error {
		return &Fault{Kind: k, Node: n.Name, Face: none, Detail: detail}
	}
	switch {
	case n.Name == "":
		return fault(Unnamed, "")
	case !part && len(n.Children) == 0:
		return fault(Empty, "neither a shape nor children")
	case part && len(n.Children) > 0:
		return fault(BadTree, "a shape and children at once")
	case part && len(s.Materials) > 0 && (n.Material < 0 || n.Material >= len(s.Materials)):
		return fault(BadIndex, "no such material")
	case !n.Place.rigid():
		return fault(BadPlace, "")
	}
	return n.checkExtras()
}

func (n *Node) checkExtras() error {
	seen := map[string]bool{facesKey: true}
	for _, e := range n.Extras {
		if seen[e.Key] {
			return &Fault{Kind: BadTree, Node: n.Name, Face: none, Detail: "extra " + e.Key + " is taken"}
		}
		seen[e.Key] = true
	}
	return nil
}
