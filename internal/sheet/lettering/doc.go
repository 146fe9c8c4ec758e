// Package lettering turns text into placed letters: how wide a line runs, where
// it breaks, and how "5 3/8" is set as a whole number with a small fraction
// stacked over a bar beside it.
//
// It promises that the widths it measures are those of the fonts the printed
// file carries, so that what fits here fits on paper, and that the same text
// is always set the same way.
//
// It does not draw (package sheet) and does not decide how a length reads
// (package measure). There is no kerning and no shaping of complex scripts:
// the PDF writer has neither.
//
// Units: type sizes are [Points]; every other number is float64 millimetres.
// Positions count from the start of the baseline, x to the right, y down.
package lettering
