// Package check looks a piece over and says what stands against it: a panel
// that will burst its frame, a drawer that will stick in August, a part too
// short for the planer. A [piece.Piece] goes in, findings come out.
//
// It promises that each finding tells what was found, the limit, who sets the
// limit and at least two ways out; that one matter gives one finding, however
// many parts share it; that a piece without faults gives none; that gravest
// and most dangerous things come first, and that the same piece gives the same
// list. A finding that the text accepts stays in the list with its reason. One
// file holds one rule and its limits; [Rules] explains them all.
//
// It is no proof: a short list means that these rules found nothing. It does
// not say what is wrong in the text (package design) or with sizes that do not
// add up (package piece), and it changes nothing. Joints judge their own
// proportions (package joinery); here their words get a place in the piece.
//
// Frame and units are those of packages piece and measure.
package check
