// Package model hands solids to other programs: parts with their faces go in,
// the bytes of a file in an open format come out.
//
//	out, err := model.GLB(scene)    // to look at: glTF 2.0, binary
//	out, err := model.STEP(scene)   // for shops with a machine: AP214, planar solids
//	out, err := model.ThreeMF(scene) // to print a template or a model
//	out, err := model.STL(mesh)     // the same, for programs that know no better
//
// A [Scene] is a tree of named [Node]s. A node that is a part carries a [Mesh]
// (triangles, to be looked at and printed), a [Shell] (planar faces with holes,
// to be machined), or both; each writer takes the one it needs.
//
// It promises that a file is written only from sound input: closed, every edge
// between exactly two faces, faces flat, outside out. Anything else is a
// [Fault] that names the part, the face and the place, never a broken file.
// The same input gives the same bytes; no writer looks at a clock.
//
// It does not make solids (package solid fills the tree), knows no wood and no
// joints, and draws nothing: lines and arcs for a cutter go out by package
// dxf below it. Curves are facets here; a [FaceTag] only says that they should
// be shown as round.
//
// Units and frame: float64 millimetres, X to the right, Y from the front to the
// back, Z up, right-handed. glTF wants metres and Y up: GLB turns the scene so
// that the front of the piece looks along glTF's +Z. Numbers written as text
// carry nine decimals of a millimetre.
package model
