// Package compile is the one door from the texts of a commission to everything
// that is worked out from them. Texts go in, a [Result] comes out: the design,
// the piece, what is wrong with the texts and what the checks found.
//
// It promises to run the stages in their order, to report all errors at once
// but none that merely follows from another, to judge only what could be built
// whole, and to give the same result for the same texts. It keeps nothing
// between calls, touches no file, and is safe to call from several goroutines.
//
// It is not where anything is decided: texts are read by package design, parts
// derived by package piece, findings made by package check. It does not print
// the book, which costs a hundred times as much; package book does when asked.
//
// What has to be redone when one input changes:
//
//	changed                   read  build  check  book
//	a text                    yes   yes    yes    yes
//	an accept block           yes   no     yes    yes
//	a measured block          yes   yes    yes    yes
//	the paper of the book     no    no     no     yes
//
// Nothing is cached yet: read, build and check together take milliseconds, so
// all three run every time. A place where a stage could be left out is in the
// table, not in the code, until somebody measures that it is worth it.
package compile
