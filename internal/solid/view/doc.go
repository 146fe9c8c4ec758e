// Package view turns closed solids with flat faces into the lines a draughtsman
// would draw of them: what is seen, what is hidden, and what a plane cuts.
//
// It promises exact hidden-line removal, not painting over: every line is
// split where its visibility changes, pieces that lie on one another are drawn
// once, and a seen piece wins over a hidden one. Bodies may touch in every way
// joinery makes them touch (flush fronts, tails in sockets, panels in grooves)
// and the line between two flush parts is drawn, because a joint is seen. The
// order in which bodies are given changes nothing, and the same input gives the
// same drawing. Input that makes no sense is left out and named in
// [Drawing.Skipped]; nothing panics.
//
// It makes no solids and proves no fit (package csg beside it), knows nothing
// of parts, grain or joints, and puts nothing on paper (package sheet does).
// Bodies that run into each other get no line where their faces cross: they
// are a fault to be reported, not drawn.
//
// Units and frame: float64 millimetres. In space x runs to the right of
// somebody before the piece, y away from them, z up. A picture has x to the
// right and y up, whatever way one looks, and its origin where the camera's
// target appears (the origin of space unless said). Depth is counted from the
// target away from the eye, so that nearer is smaller. Orthographic pictures
// are full size; in perspective what stands at the target's depth is.
//
// Four tolerances, none of which stands for another: [coincident] is the
// distance in the picture below which two points are one, [welded] the same for
// corners of one body in space, [touching] the distance in space below which
// surfaces of two bodies meet, and [edgeOn] the slant below which a face is seen
// as a line. HIDDENLINE.md beside this file explains the method and what was
// decided against.
package view
