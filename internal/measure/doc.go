// Package measure turns what a maker writes for a size into an exact value,
// and a value back into what a rule shows.
//
// Text goes in through [ParseLength], [ParseSlope], [ParseGraduation] and
// [ParseMoney], numbers of the design language through [FromRat] and
// [FromBigFloat]; what does not read comes back as a [ParseError] in shop
// words. Lengths go out through a [Style], and whole rows of them through
// [Fill].
//
// It promises that a length typed in any unit is kept to the nanometre, that
// nothing drifts however often it is converted, that every rounding is done
// once and says which way an exact half goes, and that sizes which fill a
// space still add up to that space once they are printed. No text, however
// odd, makes it panic or take long.
//
// It is not the place for where a size came from (package why), nor for what
// wood does to a size (package wood).
//
// Units: a [Length] is a whole number of nanometres, so 1/64 in is exactly
// 396 875 and one inch 25 400 000. Areas and volumes are float64 because
// int64 nm² overflows near 9 m²; every other quantity states its one unit at
// its type. A bare float64 enters or leaves only where the name of the
// function is its unit, such as [Degrees] or [Area.SquareFeet].
package measure
