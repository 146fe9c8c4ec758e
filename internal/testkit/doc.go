// Package testkit holds the few helpers our tests share: values from a test in,
// a failure that shows what differs out.
//
// It promises that a golden file is written only when a person asked for it
// with -update, and never on a machine that sets CI=true; and that every
// failure prints enough to act on without running the test again.
//
// It is not an assertion framework: a plain if and t.Errorf say most things
// better. Differences are printed as -want +got, as go-cmp does.
//
// Near takes plain numbers, all three in one unit that the test chooses. Lengths are integers (package measure) and are compared
// with ==, never with Near.
//
// Only _test.go files import this package; package arch checks it.
package testkit
