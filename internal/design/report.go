package design

import (
	"strconv"
	"strings"

	"casewright/internal/diag"

	"github.com/agext/levenshtein"
)

// report gathers diagnostics, up to mostProblems.
type report struct {
	list    diag.List
	stopped bool
}

// add takes a diagnostic, unless so many were found that more help nobody.
func (r *report) add(d diag.Diagnostic) {
	if d.Severity == 0 {
		d.Severity = diag.Error
	}
	if len(r.list) < mostProblems {
		r.list = append(r.list, d)
		return
	}
	if !r.stopped {
		r.stopped = true
		r.list = append(r.list, diag.Diagnostic{Code: "E118", Severity: diag.Error, Subject: d.Subject,
			Summary: "there are more than " + strconv.Itoa(mostProblems) + " problems",
			Detail:  "The others are not listed. Mend these first."})
	}
}

// full tells whether looking for more problems is of no use.
func (r *report) full() bool { return r.stopped }

func quote(s string) string { return "“" + s + "”" }

// clipped keeps what a message quotes short.
func clipped(s string) string {
	const most = 40
	n := 0
	for i := range s {
		if n++; n > most {
			return s[:i] + "…"
		}
	}
	return s
}

// plural is "1 board", "3 boards"; the plural form may be given.
func plural(n int, one string, many ...string) string {
	word := one + "s"
	if len(many) > 0 {
		word = many[0]
	}
	if n == 1 {
		word = one
	}
	return strconv.Itoa(n) + " " + word
}

// grouped writes a large number with thin gaps: 16 000.
func grouped(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + " " + s[i:]
	}
	return s
}

// listed joins words as people do: a, b or c.
func listed(words []string, last string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

// closest are up to three of the names that word may have been meant for, the
// nearest first.
func closest(word string, names []string) []string {
	const most = 3
	limit := 1 + len([]rune(word))/3
	if len(word) > 2*longestName {
		return nil
	}
	var found []string
	for d := 0; d <= limit && len(found) < most; d++ {
		for _, n := range names {
			if len(found) < most && n != "" && distance(word, n) == d {
				found = append(found, n)
			}
		}
	}
	return found
}

// distance counts slips of the pen; a difference of case or of - against _ is
// hardly one, and neither is a word whose beginning or end was left out.
func distance(a, b string) int {
	fold := strings.NewReplacer("-", " ", "_", " ")
	x, y := fold.Replace(strings.ToLower(a)), fold.Replace(strings.ToLower(b))
	if x == y {
		return 0
	}
	if len(x) > 3 && (strings.HasPrefix(y, x) || strings.HasSuffix(y, x)) || len(y) > 3 && (strings.HasPrefix(x, y) || strings.HasSuffix(x, y)) {
		return 1
	}
	return levenshtein.Distance(x, y, nil)
}

// didYouMean words close names for a message, and offers the nearest as an edit.
func didYouMean(d *diag.Diagnostic, word string, names []string, form func(string) string) {
	near := closest(word, names)
	if len(near) == 0 {
		return
	}
	quoted := make([]string, len(near))
	for i, n := range near {
		quoted[i] = quote(n)
	}
	d.Detail = strings.TrimSpace("Did you mean " + listed(quoted, "or") + "? " + d.Detail)
	d.Edits = append(d.Edits, diag.Edit{Span: d.Subject, Text: form(near[0]), Says: "write " + near[0]})
}

func asIs(s string) string     { return s }
func inQuotes(s string) string { return strconv.Quote(s) }
