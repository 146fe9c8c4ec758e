// Package piece turns a design into the piece itself: openings, parts, joints,
// fits and matched sets, each tied to the text behind it.
//
// It promises that every size can say how it came about (package why), that
// the parts which fill an opening add up to it exactly and print so too
// ([Piece.Shown]), that parts are turned into place and never mirrored, and
// that the same design gives the same piece down to the last mark.
//
// It is not where a joint's proportions are chosen (package joinery), where
// findings are made (package check) nor where anything is drawn (package
// sheet). A [Piece] is read-only once built.
//
// Frame: X to the right as seen from the front, Y from the front to the back,
// Z up; see [Vec]. A part's own frame runs along its grain, across its width,
// through its thickness; see [Place].
package piece
