// Package arch turns the source tree into a list of broken house rules, and is
// nothing but tests.
//
// It promises that imports between packages point one way, that packages on
// the road from text to print never touch files, network, clock or chance,
// that every outside module stays in the room that has a reason for it, that
// every package says what it is, and that documents name only what exists. The
// table of packages is in table_test.go; changing it needs a record in
// docs/decisions.
//
// It does not judge formatting or doubtful code (gofmt and go vet do) nor
// whether results are right (each package's own tests do).
package arch
