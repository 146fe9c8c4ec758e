package design

import (
	"bytes"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"casewright/internal/diag"
)

// runTogether looks at what touches or follows the number and belongs to it:
// 23.5in, 42 in, 23', 5½. It reports them with the right form, and tells
// whether it did.
func (s *scan) runTogether(start, whole, end int) bool {
	text := s.f.text
	last := end
	if over := s.divided(whole, end); over > end {
		last = over // 9/16"
	}
	r, _ := utf8.DecodeRune(text[min(last, len(text)):])
	if !unicode.IsLetter(r) && !strings.ContainsRune(`"'′″’”_`, r) {
		return s.unitApart(start, last) || end > whole && s.glyph(start, end)
	}
	s.withUnit(start, s.sizeEnd(start, last))
	return true
}

// divided is where 9/16 ends that begins as the plain number before whole.
func (s *scan) divided(whole, end int) int {
	at := s.blanks(whole)
	if end > whole || at >= len(s.f.text) || s.f.text[at] != '/' {
		return end
	}
	from := s.blanks(at + 1)
	if over := s.run(from); over > from {
		return over
	}
	return end
}

// unitApart reports a number that a unit follows after a blank: 42 in. No
// other word can follow a number, so nothing else is taken for one.
func (s *scan) unitApart(start, last int) bool {
	at := s.blanks(last)
	if at == last || at >= len(s.f.text) {
		return false
	}
	r, n := utf8.DecodeRune(s.f.text[at:])
	stop, ok := at+n, false
	if strings.ContainsRune(`"'′″’”`, r) { // a quote that closes nothing: 42 "
		rest := bytes.TrimLeft(s.f.text[stop:s.f.lineEnd(s.f.line(at))], " \t\r")
		if len(rest) == 0 || bytes.IndexByte([]byte(",)]}#"), rest[0]) >= 0 {
			_, ok = unitsApart(string(s.f.text[start:stop]))
		}
	} else if unit, _ := s.unitWord(last); unit != "" {
		stop, ok = s.asLength(start, last)
	}
	if ok {
		s.withUnit(start, stop)
	}
	return ok
}

// withUnit reports a size that brings its unit and stands without quotes.
func (s *scan) withUnit(start, stop int) {
	typed := string(s.f.text[start:stop])
	d := diag.Diagnostic{Code: "E109", Summary: quote(typed) + " is not how a size with a unit is written",
		Detail: "A size with its unit stands in quotes: \"23.5 in\", \"597 mm\". A bare number is in the commission's unit: 23 1/2."}
	if said, ok := unitsApart(typed); ok {
		d.Summary = "a size with its unit stands in quotes"
		d.Detail = "Write " + inQuotes(said) + ". A bare number is in the commission's unit: inches, unless the block commission says units = \"mm\"."
		d.Edits = []diag.Edit{{Span: s.f.span(start, stop), Text: inQuotes(said), Says: "write " + inQuotes(said)}}
	}
	s.wrong(d, start, stop)
}

// sizeEnd is how far a size with unit marks reaches: as far as it can still be
// read as one length (1' 4 1/2"), else to the next blank or bracket.
func (s *scan) sizeEnd(start, at int) int {
	if stop, ok := s.asLength(start, at); ok {
		return stop
	}
	line := s.sizeLine(start, at)
	n := bytes.IndexAny(line[at-start:], " \t\r")
	if n < 0 {
		n = len(line) - (at - start)
	}
	_, size := utf8.DecodeRune(s.f.text[at:])
	return at + max(n, size)
}

// asLength is the longest stretch from start, beyond at, that is a length.
func (s *scan) asLength(start, at int) (stop int, ok bool) {
	line := s.sizeLine(start, at)
	for cut := len(line); cut > at-start; {
		if _, ok := unitsApart(string(line[:cut])); ok {
			return start + len(bytes.TrimRight(line[:cut], " \t\r")), true
		}
		cut = bytes.LastIndexAny(line[:cut], " \t")
	}
	return at, false
}

// sizeLine is what may still belong to a size that has reached at.
func (s *scan) sizeLine(start, at int) []byte {
	line := s.f.text[start:s.f.lineEnd(s.f.line(start))]
	if i := bytes.IndexAny(line[at-start:], ",)]}#*+=:?"); i >= 0 {
		line = line[:at-start+i]
	}
	return line[:max(at-start, min(len(line), 60))]
}

// decimalComma reports 32,5 where a number stands. In a list and among what a
// function takes the comma parts two members.
func (s *scan) decimalComma(start, whole int) bool {
	text := s.f.text
	if whole+1 >= len(text) || text[whole] != ',' || !isDigit(text[whole+1]) || s.run(start) != whole || s.inList() {
		return false
	}
	stop := s.run(whole + 1)
	for stop+1 < len(text) && (text[stop] == ',' || text[stop] == '.') && isDigit(text[stop+1]) {
		stop = s.run(stop + 1)
	}
	typed := string(text[start:stop])
	unit, stop := s.unitWord(stop)
	d := diag.Diagnostic{Code: "E120", Summary: quote(typed) + " has a comma, and the decimal sign is a point"}
	decimal, thousands := meant(typed)
	for _, right := range []*string{&decimal, &thousands} {
		if *right == "" {
			continue
		}
		if unit != "" {
			*right = inQuotes(*right + " " + unit)
		}
		d.Edits = append(d.Edits, diag.Edit{Span: s.f.span(start, stop), Text: *right, Says: "write " + *right})
	}
	switch {
	case len(d.Edits) == 0:
		d.Detail = "Write a number such as 32.5. Several sizes stand in a list: [12, 20]."
	case decimal == "":
		d.Detail = "Thousands are written without a comma: " + thousands + "."
	case thousands != "":
		d.Detail = "Write " + decimal + "; or, if the comma parts the thousands, " + thousands + "."
	default:
		d.Detail = "Write " + decimal + "."
	}
	s.wrong(d, start, stop)
	return true
}

// meant are the numbers that digits with commas may stand for: 1,250 is 1.25 to
// one person and 1250 to another.
func meant(typed string) (decimal, thousands string) {
	whole, fraction, point := strings.Cut(typed, ".")
	groups := strings.Split(whole, ",")
	if len(groups) == 2 && !point {
		decimal = groups[0] + "." + groups[1]
	}
	short := slices.ContainsFunc(groups[1:], func(g string) bool { return len(g) != 3 })
	if short || len(groups[0]) > 3 || groups[0][0] == '0' || strings.Contains(fraction, ",") || strings.Contains(fraction, ".") {
		return decimal, ""
	}
	thousands = strings.Join(groups, "")
	if point {
		thousands += "." + fraction
	}
	return decimal, thousands
}

// unitWord is the unit that follows a number, with where it ends; "" and at
// when there is none.
func (s *scan) unitWord(at int) (string, int) {
	from := s.blanks(at)
	n := bytes.IndexFunc(s.f.text[from:], func(r rune) bool { return !unicode.IsLetter(r) })
	if n < 0 {
		n = len(s.f.text) - from
	}
	word := string(s.f.text[from : from+n])
	if _, ok := unitsApart("1 " + word); n == 0 || n > longestWord || !ok {
		return "", at
	}
	return word, from + n
}

// inList tells whether commas part members here: in square brackets, or in the
// round ones of a function.
func (s *scan) inList() bool {
	n := len(s.open)
	if n == 0 || s.open[n-1].char == '{' {
		return false
	}
	at := s.open[n-1].offset
	return s.open[n-1].char == '[' || at > 0 && (isWordStart(s.f.text[at-1]) || isDigit(s.f.text[at-1]))
}
