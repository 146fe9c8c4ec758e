package design

import (
	"bytes"
	"strings"

	"casewright/internal/diag"
)

// quoted takes a string. Strings hold plain text: what HCL would fill in
// between ${ and } is refused, which also keeps the parser from recursing.
func (s *scan) quoted() {
	start, text := s.at, s.f.text
	for s.at++; s.at < len(text); s.at++ {
		switch text[s.at] {
		case '"':
			s.at++
			return
		case '\n':
			s.unended(start)
			return
		case '\\':
			if s.at+1 < len(text) && text[s.at+1] != '\n' {
				s.escape()
				s.at++
			}
		case '$', '%':
			s.filledIn(s.at, start)
		}
	}
	s.unended(start)
}

// unended reports a string without its closing quote and hides it.
func (s *scan) unended(start int) {
	end := start + len(bytes.TrimRight(s.f.text[start:s.at], " \t\r"))
	s.report(diag.Diagnostic{Code: "E108", Subject: s.f.span(start, end),
		Summary: "this text has no closing quote",
		Detail:  "Close it with \" on the same line. Inside quotes, a quote is written \\\".",
		Edits:   []diag.Edit{{Span: s.f.span(end, end), Text: `"`, Says: "close the quote at the end of the line"}}}, start, end)
	s.poison(start, end)
}

// escape checks the character after a backslash.
func (s *scan) escape() {
	at, c := s.at, s.f.text[s.at+1]
	if strings.IndexByte(`nrt"\`, c) >= 0 {
		return
	}
	if n := map[byte]int{'u': 4, 'U': 8}[c]; n > 0 && at+2+n <= len(s.f.text) && isHex(s.f.text[at+2:at+2+n]) {
		return
	}
	d := diag.Diagnostic{Code: "E117", Subject: s.f.span(at, at+2),
		Summary: `a backslash in text stands only before ", \, n or t`,
		Detail:  `Write \\ for a backslash.`,
		Edits:   []diag.Edit{{Span: s.f.span(at, at+1), Text: `\\`, Says: `write \\`}}}
	s.report(d, at, at+2)
	s.mask[at] = '_'
	if c < 0x80 {
		s.mask[at+1] = '_'
	}
}

func isHex(b []byte) bool {
	return len(bytes.Trim(b, "0123456789abcdefABCDEF")) == 0
}

// filledIn refuses ${ and %{.
func (s *scan) filledIn(at, start int) {
	text := s.f.text
	if at+1 >= len(text) || text[at+1] != '{' || at > start && text[at-1] == text[at] {
		return
	}
	s.report(diag.Diagnostic{Code: "E113", Subject: s.f.span(at, at+2),
		Summary: "text cannot be filled in with " + string(text[at:at+2]),
		Detail:  "Write the words out. A size that follows from others is written without quotes: 2 * side + 1/8."}, at, at+2)
	s.mask[at], s.mask[at+1] = '_', '_'
}

// heredoc takes text of several lines, <<END … END, and reports whether one
// stands here.
func (s *scan) heredoc() bool {
	text := s.f.text
	line := s.f.line(s.at)
	head := string(text[s.at:s.f.lineEnd(line)])
	name, ok := strings.CutPrefix(strings.TrimRight(head, " \t\r"), "<<")
	name = strings.TrimPrefix(name, "-")
	if !ok || name == "" || strings.ContainsAny(name, " \t\"{}()[]<=,") || !isWordStart(name[0]) {
		return false
	}
	start := s.at
	for line++; line < len(s.f.lines); line++ {
		from, to := s.f.lines[line], s.f.lineEnd(line)
		if string(bytes.TrimSpace(text[from:to])) == name {
			s.at = to
			return true
		}
		for i := from; i < to; i++ {
			if text[i] == '$' || text[i] == '%' {
				s.filledIn(i, from)
			}
		}
	}
	s.report(diag.Diagnostic{Code: "E108", Subject: s.f.span(start, start+len(strings.TrimRight(head, " \t\r"))),
		Summary: "this text has no end",
		Detail:  "Put " + name + " on a line of its own after the text's last line."}, start, len(text))
	s.unusable = true
	s.at = len(text)
	return true
}

func isWordStart(c byte) bool { return c == '_' || c|0x20 >= 'a' && c|0x20 <= 'z' }
