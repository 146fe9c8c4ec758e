// Package designs draws random commissions in the design language, for tests
// of every room that works on whole pieces.
//
// It promises that a seed always gives the same text and that the sizes are
// such as a shop would build: most texts compile clean, and a test may skip
// those that do not. It returns plain text and knows no room.
package designs
