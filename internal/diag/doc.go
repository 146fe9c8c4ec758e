// Package diag is the one shape for what goes wrong and for what a check has
// to say: a [Diagnostic] with a stable code, the words, the place in the text,
// related places and, where there is one, the edit that would mend it.
//
// It promises that a diagnostic renders the same for a terminal and for a page
// (see [Render] and the plain fields), that lists are put in one stable order
// ([List.Sort]) and that repeats are dropped.
//
// It does not decide what is wrong; every room makes its own diagnostics.
//
// Positions: lines and columns count from 1, columns in grapheme clusters, and
// offsets count bytes from 0. A [Span] ends just after its last byte.
package diag
