// Package why keeps a length together with how it came about, so that every
// size in a piece can answer "why is this 7 13/32?".
//
// A [Size] is typed by hand, a stated default, measured at the bench, a sum of
// other sizes, a share of one, or the outcome of a named rule. Sizes are
// values: building a new one never changes its fathers, and they may be shared
// freely. The zero Size means "not given".
//
// It promises that the value of a sum is exactly the sum of its terms. It does
// not parse or print lengths (package measure) and knows no wood.
package why
