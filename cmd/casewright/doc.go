// Command casewright compiles the text of a commission into parts, findings
// and a build book.
//
// Arguments, texts and files go in; tables, messages, one PDF and an exit code
// come out. It promises that results go to standard output and messages to
// standard error, that nothing is written over that is not its own kind of
// file, that a file is written whole or not at all, and that plain text comes
// out, without colours or any other control characters.
//
// Exit codes:
//
//	0  good
//	1  errors in the text, or findings that stop the work
//	2  misuse: an unknown command, option, file or name; a file that cannot be
//	   read or written
//
// It decides nothing about furniture: it calls package compile and prints what
// comes back. One file holds one command. Each of them also has a shape of its
// own for JSON, so that the piece itself carries no tags.
package main
