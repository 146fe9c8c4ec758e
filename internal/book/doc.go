// Package book turns a piece and its findings into the one PDF a maker builds
// from: a picture as it stands in the room, what to settle before cutting, views,
// the piece drawn apart, schedules, a sheet for each assembly, each part and each
// kind of joint, dovetails in full size, curves, openings, movement, sources.
//
// It promises that the numbers printed along a chain add up to the number
// printed for the whole, that sheets are numbered and say what they replace by
// hand, that everything can be told apart in black and white, and that the
// same piece and findings give the same bytes.
//
// It derives nothing: parts, joints and fits come from package piece, shapes from
// package solid, what is seen of them from solid/view, findings from package
// check, and lines and letters are placed by package sheet. It
// does not write files (cmd/casewright does).
//
// Frame: views are drawn from solids in float64 millimetres in the piece's
// frame (X right, Y back, Z up), carried to the plane of a view with u to the
// right and v up, and from there to paper by package sheet.
package book
