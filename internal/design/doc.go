// Package design reads the design language: texts in HCL syntax go in, a
// [Spec] and a list of diagnostics come out ([Read]). It also changes a text
// without disturbing what it does not touch ([SetAttribute], [AddBlock] …) and
// lays open the language itself as data ([Schema]) for documentation and
// completion.
//
// It promises that the same texts give the same Spec and the same diagnostics;
// that every problem it can find is reported at once, each with its place; that
// no text whatever makes it panic or work for long; that sizes are exact: a
// size typed as 20 1/2 is 520.7 mm and nothing near it; and that every size
// knows the text it was typed in.
//
// It does not know what follows from the text. Whether rows fill their case,
// whether a species exists and what a drawer's parts measure is for package
// piece; whether the result is wise is for package check.
//
// Units: bare numbers are in the commission's unit, inches unless it says
// millimetres. Offsets count bytes from 0, lines and columns from 1, columns in
// grapheme clusters.
package design
