// Package csg makes exact solids: one prism less other prisms in, plane faces
// and a closed triangle mesh out, with volume, moments, sections, and where two
// placed bodies overlap or touch.
//
// It promises that all decisions are exact: coordinates are whole nanometres,
// corners where slopes meet are fractions, and no tolerance is used anywhere.
// So faces that coincide, edges that touch and slivers a nanometre thick need
// no care by the caller; every mesh is closed, consistently wound and free of
// T-junctions, and the result does not depend on the order of the cuts. A body
// that cannot be made comes back as [Faults], never as a broken solid.
//
// It knows no wood: parts, joints, densities and what a gap means are for
// package solid, which calls this one. It rounds no curve; give it a polyline.
// General polygons in a plane, offsets and hatching belong elsewhere.
//
// Units and frame: lengths in are measure.Length; a right-handed frame X, Y, Z.
// Vertices answer exactly or in float64 millimetres; areas and volumes are mm²
// and mm³, right to about 13 digits. METHOD.md beside this file tells how it
// works; no goroutines, no globals, safe to call from several at once.
package csg
