package diag

import (
	"cmp"
	"slices"
)

// Severity says how much a diagnostic matters. Higher is graver.
type Severity uint8

const (
	// Note is worth knowing; nothing need change.
	Note Severity = iota + 1
	// Warn is likely to cost wood, time or looks.
	Warn
	// Stop would hurt wood or people: nothing should be cut before it is met.
	Stop
	// Error means that the text cannot be understood or built as it stands.
	Error
)

// String is the word printed before the message.
func (s Severity) String() string {
	switch s {
	case Note:
		return "note"
	case Warn:
		return "warn"
	case Stop:
		return "stop"
	case Error:
		return "error"
	}
	return "unknown"
}

// Pos is one place in a text. The zero Pos is no place.
type Pos struct{ Line, Column, Offset int }

// Span is a stretch of a text. The zero Span is no place.
type Span struct {
	File       string
	Start, End Pos
}

// IsZero reports whether the span points nowhere.
func (s Span) IsZero() bool { return s.File == "" && s.Start == Pos{} && s.End == Pos{} }

// Related points to another place that takes part in the matter.
type Related struct {
	Span    Span
	Message string
}

// Edit is a replacement of one stretch of text that would mend the matter.
type Edit struct {
	Span Span
	Text string
	Says string // what the edit does, in the maker's words
}

// Diagnostic is one thing to say. Code, Severity and Summary are always set.
type Diagnostic struct {
	Code     string   // stable, e.g. "E210" for the text, "movement.panel" for a check
	Severity Severity //
	Summary  string   // what is wrong, one line, with the value found
	Detail   string   // why, and the ways out
	Subject  Span     // the offending text
	Related  []Related
	Edits    []Edit // each alone would mend it

	// The fields below are set by checks only.
	Where    string // part mark or path the finding is about
	Figure   string // the value found, as printed
	Limit    string // the limit it was held against
	Source   string // who says so: title, edition, table
	Accepted string // the reason for which the maker accepted it, or ""
}

// List is a collection of diagnostics.
type List []Diagnostic

// Has reports whether any diagnostic is at least as grave as s and not accepted.
func (l List) Has(s Severity) bool {
	return slices.ContainsFunc(l, func(d Diagnostic) bool { return d.Severity >= s && d.Accepted == "" })
}

// Count counts the diagnostics of severity s that are not accepted.
func (l List) Count(s Severity) int {
	n := 0
	for _, d := range l {
		if d.Severity == s && d.Accepted == "" {
			n++
		}
	}
	return n
}

// Sort puts errors first, then stops, warnings and notes; within one severity
// in the order of the text. Exact repeats are dropped.
func (l List) Sort() List {
	out := slices.Clone(l)
	slices.SortStableFunc(out, compare)
	return slices.CompactFunc(out, func(a, b Diagnostic) bool { return compare(a, b) == 0 && a.Detail == b.Detail })
}

func compare(a, b Diagnostic) int {
	return cmp.Or(
		cmp.Compare(b.Severity, a.Severity),
		cmp.Compare(a.Subject.File, b.Subject.File),
		cmp.Compare(a.Subject.Start.Offset, b.Subject.Start.Offset),
		cmp.Compare(a.Code, b.Code),
		cmp.Compare(a.Where, b.Where),
		cmp.Compare(a.Summary, b.Summary),
	)
}
