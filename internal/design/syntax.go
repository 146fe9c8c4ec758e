package design

import (
	"bytes"
	"strings"

	"casewright/internal/diag"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// parse hands the chunks of a scanned text to HCL's parser and words its
// complaints. The bodies come back in text order; an attribute set twice
// appears in twice.
func (f *file) parse(diags *report) (bodies []*hclsyntax.Body, twice []hcl.Range) {
	budget := parseBudget
	for _, c := range f.scan.chunks {
		if diags.full() {
			return bodies, twice
		}
		body, again := f.parseChunk(c, diags, &budget)
		if body != nil {
			bodies = append(bodies, body)
		}
		twice = append(twice, again...)
	}
	return bodies, twice
}

// parseChunk parses one item of the top level. The parser reports only the
// first syntax error, so what it complains about is blanked and the rest read
// again, a bounded number of times.
func (f *file) parseChunk(c chunk, diags *report, budget *int) (*hclsyntax.Body, []hcl.Range) {
	text := append(bytes.Clone(f.scan.mask[c.start:c.end]), c.closers...)
	var body *hclsyntax.Body
	for round := range mostRounds {
		if round > 0 {
			*budget -= len(text)
		}
		if *budget < 0 {
			return body, nil
		}
		var found hcl.Diagnostics
		body, found = parseOnce(text, f.name, c.start)
		fault, twice := firstFault(found)
		if fault == nil || body == nil {
			return body, twice
		}
		at := min(max(fault.Subject.Start.Byte, c.start), c.end)
		if !f.scan.faulty(f.lineOf(at)) {
			f.scan.report(f.syntaxError(fault), at, at+1)
		}
		if !f.blankLine(text, c, at) {
			return body, twice
		}
	}
	return body, nil
}

// parseOnce shields us from a parser that stumbles.
func parseOnce(text []byte, name string, offset int) (body *hclsyntax.Body, diags hcl.Diagnostics) {
	defer func() {
		if recover() != nil {
			body = nil
		}
	}()
	parsed, diags := hclsyntax.ParseConfig(text, name, hcl.Pos{Line: 1, Column: 1, Byte: offset})
	body, _ = parsed.Body.(*hclsyntax.Body)
	return body, diags
}

// firstFault parts the one syntax error from attributes set twice, which do
// not keep the parser from going on.
func firstFault(found hcl.Diagnostics) (fault *hcl.Diagnostic, twice []hcl.Range) {
	for _, d := range found {
		switch {
		case d.Subject == nil || d.Severity != hcl.DiagError:
		case d.Summary == "Attribute redefined":
			twice = append(twice, *d.Subject)
		case fault == nil:
			fault = d
		}
	}
	return fault, twice
}

// lineOf is the stretch of the line an offset stands on.
func (f *file) lineOf(offset int) (start, end int) {
	line := f.line(offset)
	return f.lines[line], f.lineEnd(line) + 1
}

// blankLine blanks the line of a syntax error, and with it what a bracket
// opened on it encloses; brackets that close earlier ones stay. It reports
// whether anything was left to blank.
func (f *file) blankLine(text []byte, c chunk, at int) bool {
	start, end := f.lineOf(at)
	start, end = max(start, c.start), min(end, c.end)
	changed := false
	for i := start; i < end; i++ {
		b := text[i-c.start]
		if closeAt, opens := f.scan.pairs[i]; opens && closeAt >= end {
			_, end = f.lineOf(closeAt)
			end = min(end, c.end)
		}
		if b == ' ' || b == '\n' || b == '\r' || b == '\t' {
			continue
		}
		if from, closes := f.scan.opens[i]; closes && from < start {
			continue
		}
		text[i-c.start] = ' '
		changed = true
	}
	return changed
}

// syntaxError words a complaint of the parser for a maker.
func (f *file) syntaxError(h *hcl.Diagnostic) diag.Diagnostic {
	d := diag.Diagnostic{Code: "E114", Subject: f.at(*h.Subject)}
	token := strings.TrimSpace(string(f.text[d.Subject.Start.Offset:d.Subject.End.Offset]))
	summary := h.Summary
	switch {
	case summary == "Invalid single-argument block definition", summary == "Argument definition required":
		d.Code, d.Summary = "E115", "a block on one line holds one entry and nothing else"
		d.Detail = "Start a new line after the { and put each entry, and the closing }, on a line of its own."
		if summary == "Argument definition required" {
			d.Edits = f.openUp(d.Subject)
		}
	case summary == "Missing newline after argument", summary == "Missing newline after block definition":
		d.Code, d.Summary = "E116", "something follows where the line should end"
		d.Detail = "Each entry and each block stands on a line of its own. A size with a fraction is written 20 1/2; text stands in quotes."
		if token != "" {
			d.Summary = quote(clipped(token)) + " follows where the line should end"
		}
	case summary == "Unexpected comma after argument":
		f.commaAfter(&d)
	case summary == "Argument or block definition required", summary == "Invalid argument name":
		d.Summary = "this is neither an entry nor a block"
		d.Detail = "An entry is written name = value, a block name \"label\" { … }."
	case summary == "Invalid block definition":
		d.Summary = "this block is not written the way blocks are"
		d.Detail = "A block is its kind, its name in quotes if it has one, then { on the same line: case \"cabinet\" {"
	case strings.HasPrefix(summary, "Missing expression"), summary == "Invalid expression":
		d.Summary, d.Detail = "a value is missing here", "Write a size such as 20 1/2, or text in quotes."
	case strings.Contains(summary, "separator"):
		d.Summary, d.Detail = "a comma is missing here", "Between two things in a list or in brackets stands a comma."
	case strings.Contains(summary, "operator"):
		d.Summary = quote(clipped(token)) + " is not a sign of this language"
		d.Detail = "Sizes may be reckoned with + - * / and brackets."
	default:
		d.Summary, d.Detail = "this cannot be read", "An entry is written name = value, a block name \"label\" { … }; text stands in quotes."
	}
	return d
}

// commaAfter words a comma behind an entry by what follows it: another entry,
// a second number, or nothing.
func (f *file) commaAfter(d *diag.Diagnostic) {
	d.Code, d.Summary, d.Detail = "E116", "entries are not parted by commas", "Put each entry on a line of its own."
	from := d.Subject.End.Offset
	_, end := f.lineOf(from)
	rest := bytes.TrimSpace(f.scan.mask[from:min(end, len(f.text))])
	switch {
	case len(rest) == 0:
		d.Edits = []diag.Edit{{Span: d.Subject, Says: "take the comma away"}}
	case isWordStart(rest[0]):
		d.Edits = []diag.Edit{{Span: d.Subject, Text: "\n", Says: "start a new line instead"}}
	case isDigit(rest[0]) || rest[0] == '"':
		d.Summary = "a comma stands only between the members of a list"
		d.Detail = "Several values stand in square brackets: [12, 20]. The decimal sign is a point: 12.5."
	}
}

// openUp proposes to write a block that stands on one line on three.
func (f *file) openUp(at diag.Span) []diag.Edit {
	open := bytes.LastIndexByte(f.text[:at.Start.Offset], '{')
	closed, ok := f.scan.pairs[open]
	if !ok || f.line(open) != f.line(closed) {
		return nil
	}
	from, _ := f.lineOf(open)
	margin := string(f.text[from : from+f.scan.indent(open)])
	return []diag.Edit{{Span: f.span(open+1, closed), Says: "put it on a line of its own",
		Text: "\n" + margin + "  " + strings.TrimSpace(string(f.text[open+1:closed])) + "\n" + margin}}
}
