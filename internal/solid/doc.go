// Package solid gives every part of a piece its exact shape, proves that the
// parts fit, and weighs them.
//
// It promises that a face knows the joint that made it, that equal shapes are
// worked out once ([Cache]), and that what it reports as interference or
// contact is measured on exact faces, not on meshes.
//
// The mathematics without wood is in package solid/csg, drawing lines of
// solids in package solid/view. Which joint takes what from a part is decided
// in package piece.
//
// Frames: a solid is in its part's own frame (see piece.Place), whole
// nanometres; centres of gravity are in the piece's frame, millimetres.
package solid
