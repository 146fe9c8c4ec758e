package model

import (
	"bytes"
	"fmt"
	"strings"
)

// STEP writes a scene as STEP AP214 (ISO 10303-214, automotive design), unit
// millimetre. Every part is a product named by its mark, described by its
// extras, with planar boundary-represented solids; assemblies are products
// that place their parts. A scene of a single part that is not moved is that
// part's product alone. Parts that share a Shell are still products of their
// own: each has its own mark. A shell in several pieces becomes as many solids
// of one product; hollows closed all round are refused, as [Inverted].
//
// A part without a Shell, or with one that does not pass [Shell.Check], is a
// *[Fault].
func STEP(s Scene) ([]byte, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	w := newStep()
	root := &Node{Name: s.Name, Children: s.Nodes}
	if only := &s.Nodes[0]; len(s.Nodes) == 1 && only.Place.identity() {
		root = only
	}
	if _, err := w.product(root); err != nil {
		return nil, err
	}
	return w.exchange(s.Name), nil
}

// ref is the number of an entity.
type ref int

func (r ref) String() string { return fmt.Sprintf("#%d", int(r)) }

// refs is a list of entities as STEP writes it.
type refs []ref

func (l refs) String() string {
	names := make([]string, len(l))
	for i, r := range l {
		names[i] = r.String()
	}
	return "(" + strings.Join(names, ",") + ")"
}

// stepWriter collects the entities of the data section.
type stepWriter struct {
	data  bytes.Buffer
	count ref
	told  map[string]ref // entities that need to be said only once

	product3D, design, geometry ref // contexts
	uses                        int
}

// add writes one entity.
func (w *stepWriter) add(format string, args ...any) ref {
	w.count++
	fmt.Fprintf(&w.data, "%s=%s;\n", w.count, fmt.Sprintf(format, args...))
	return w.count
}

// once writes an entity unless the very same one is there.
func (w *stepWriter) once(format string, args ...any) ref {
	text := fmt.Sprintf(format, args...)
	if r, ok := w.told[text]; ok {
		return r
	}
	r := w.add("%s", text)
	w.told[text] = r
	return r
}

func newStep() *stepWriter {
	w := &stepWriter{told: map[string]ref{}}
	app := w.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')")
	w.add("APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,%s)", app)
	w.product3D = w.add("PRODUCT_CONTEXT('',%s,'mechanical')", app)
	w.design = w.add("PRODUCT_DEFINITION_CONTEXT('part definition',%s,'design')", app)
	mm := w.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))")
	radian := w.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))")
	steradian := w.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())")
	fuzz := w.add("UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(%s),%s,'distance_accuracy_value','')", decimal(Flat), mm)
	w.geometry = w.add("(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((%s))"+
		"GLOBAL_UNIT_ASSIGNED_CONTEXT((%s,%s,%s))REPRESENTATION_CONTEXT('',''))", fuzz, mm, radian, steradian)
	return w
}

// made is a product that others can place.
type made struct{ definition, shape, origin ref }

// product writes a part or an assembly and everything below it.
func (w *stepWriter) product(n *Node) (made, error) {
	if len(n.Children) == 0 && n.Shell == nil {
		return made{}, &Fault{Kind: Empty, Node: n.Name, Face: none, Detail: "no shell"}
	}
	name := quote(n.Name)
	product := w.add("PRODUCT(%s,%s,%s,(%s))", name, name, quote(n.described()), w.product3D)
	w.add("PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(%s))", product)
	formation := w.add("PRODUCT_DEFINITION_FORMATION('','',%s)", product)
	m := made{definition: w.add("PRODUCT_DEFINITION('design','',%s,%s)", formation, w.design), origin: w.placement(Place{})}
	var err error
	if n.Shell != nil {
		m.shape, err = w.part(n, m.origin)
	} else {
		m.shape, err = w.assembly(n, m)
	}
	if err != nil {
		return made{}, err
	}
	w.add("SHAPE_DEFINITION_REPRESENTATION(%s,%s)", w.add("PRODUCT_DEFINITION_SHAPE('','',%s)", m.definition), m.shape)
	return m, nil
}

// described is what is known of a node in one line.
func (n *Node) described() string {
	words := make([]string, len(n.Extras))
	for i, e := range n.Extras {
		words[i] = e.Key + ": " + e.Value
	}
	return strings.Join(words, "; ")
}

// assembly writes the children first, then where each one stands: the parent's
// shape must list the places, and what relates the two comes after it.
func (w *stepWriter) assembly(n *Node, m made) (ref, error) {
	items := refs{m.origin}
	children := make([]made, len(n.Children))
	places := make(refs, len(n.Children))
	for i := range n.Children {
		c, err := w.product(&n.Children[i])
		if err != nil {
			return 0, err
		}
		children[i], places[i] = c, w.placement(n.Children[i].Place)
		items = append(items, places[i])
	}
	shape := w.add("SHAPE_REPRESENTATION(%s,%s,%s)", quote(n.Name), items, w.geometry)
	for i, c := range children {
		w.uses++
		use := w.add("NEXT_ASSEMBLY_USAGE_OCCURRENCE('%d',%s,'',%s,%s,$)", w.uses, quote(n.Children[i].Name), m.definition, c.definition)
		used := w.add("PRODUCT_DEFINITION_SHAPE('','',%s)", use)
		move := w.add("ITEM_DEFINED_TRANSFORMATION('','',%s,%s)", c.origin, places[i])
		relation := w.add("(REPRESENTATION_RELATIONSHIP('','',%s,%s)REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(%s)SHAPE_REPRESENTATION_RELATIONSHIP())",
			c.shape, shape, move)
		w.add("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(%s,%s)", relation, used)
	}
	return shape, nil
}

// part writes the solids of one part.
func (w *stepWriter) part(n *Node, origin ref) (ref, error) {
	shell, fault := n.Shell.weave()
	if fault != nil {
		return 0, fault.named(n.Name)
	}
	items := refs{origin}
	b := brep{w: w, shell: &shell, edges: map[[2]int]ref{}}
	b.corners = make(refs, len(shell.corners))
	for _, body := range shell.bodies() {
		items = append(items, b.solid(n.Name, body))
	}
	return w.add("ADVANCED_BREP_SHAPE_REPRESENTATION(%s,%s,%s)", quote(n.Name), items, w.geometry), nil
}

// placement is a frame; STEP gives its Z and X.
func (w *stepWriter) placement(p Place) ref {
	a := p.axes()
	return w.add("AXIS2_PLACEMENT_3D('',%s,%s,%s)", w.point(p.Origin), w.direction(a[2]), w.direction(a[0]))
}

func (w *stepWriter) point(v Vec) ref {
	return w.once("CARTESIAN_POINT('',(%s,%s,%s))", decimal(v[0]), decimal(v[1]), decimal(v[2]))
}

// direction is of length 1. It has more decimals than a place: over the length
// of a board they are worth a nanometre.
func (w *stepWriter) direction(v Vec) ref {
	d := func(f float64) string { return dotted(trimmed(f, 13)) }
	return w.once("DIRECTION('',(%s,%s,%s))", d(v[0]), d(v[1]), d(v[2]))
}

// decimal is a number as STEP wants it: with a decimal point, always.
func decimal(f float64) string { return dotted(plain(f)) }

func dotted(s string) string {
	if strings.Contains(s, ".") {
		return s
	}
	return s + "."
}

// quote is a string as STEP wants it (ISO 10303-21, clause 6.4.3): quotes and
// backslashes doubled, everything outside printable ASCII by its number.
func quote(s string) string {
	var b strings.Builder
	b.WriteByte('\'')
	for _, r := range s {
		switch {
		case r == '\'' || r == '\\':
			b.WriteRune(r)
			b.WriteRune(r)
		case r >= ' ' && r <= '~':
			b.WriteRune(r)
		case r <= 0xFFFF:
			fmt.Fprintf(&b, `\X2\%04X\X0\`, r)
		default:
			fmt.Fprintf(&b, `\X4\%08X\X0\`, r)
		}
	}
	b.WriteByte('\'')
	return b.String()
}

// exchange is the file (ISO 10303-21). It wants to say when it was written;
// the date is the same for every file, since no clock reaches output.
func (w *stepWriter) exchange(name string) []byte {
	var out bytes.Buffer
	out.WriteString("ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\n")
	fmt.Fprintf(&out, "FILE_NAME(%s,'2000-01-01T00:00:00',(''),(''),'Casewright','Casewright','');\n", quote(name))
	out.WriteString("FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\nDATA;\n")
	out.Write(w.data.Bytes())
	out.WriteString("ENDSEC;\nEND-ISO-10303-21;\n")
	return out.Bytes()
}
