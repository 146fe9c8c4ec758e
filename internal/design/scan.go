package design

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"casewright/internal/diag"
)

// scan is what a first walk over the text finds. HCL's own parser stops at the
// first syntax error, takes 23-1/2 for a subtraction, refuses 23 1/2 and
// recurses as deep as the text nests; so the text is looked over first. The
// parser then gets mask, a copy of the same length in which sizes such as
// 20 1/2 are single numbers (their values are in words), comments are blank,
// and what has been reported already is out of the way.
type scan struct {
	f        *file
	mask     []byte
	words    map[int]word // by the offset they start at
	faults   []stretch    // what has been reported, in text order
	chunks   []chunk
	comments []stretch
	pairs    map[int]int // opening to closing bracket
	opens    map[int]int // closing to opening bracket
	diags    *report

	tokens, blocks int

	at       int
	open     []bracket
	item     int  // tokens since the attribute or block began
	chain    int  // minus and not signs in a row
	fresh    bool // nothing but blanks since the line began
	suspect  int  // an opening bracket that was closed by one indented less, or -1
	began    int  // where the present chunk began
	unusable bool // the present chunk must not reach the parser
	topOnly  map[string]bool
}

// stretch is a part of the text by offsets.
type stretch struct{ start, end int }

// chunk is one item at the top level, read by itself so that a fault in it
// leaves the others alone. closers is what its brackets lack.
type chunk struct {
	stretch
	closers string
}

// bracket is one that waits to be closed.
type bracket struct {
	char   byte
	offset int
}

var closerOf = map[byte]byte{'{': '}', '[': ']', '(': ')'}

// scanText walks over the whole text. topOnly are the block types that stand
// at the top level and nowhere else; they tell where a forgotten brace went.
func scanText(f *file, diags *report, topOnly map[string]bool) *scan {
	s := &scan{f: f, mask: bytes.Clone(f.text), words: map[int]word{}, pairs: map[int]int{}, opens: map[int]int{},
		diags: diags, fresh: true, suspect: -1, topOnly: topOnly}
	s.mark()
	for s.at < len(f.text) && !s.tooMuch() && !diags.full() {
		s.step()
	}
	s.endOfText()
	return s
}

// mark hides a byte order mark and reports bytes that are not UTF-8.
func (s *scan) mark() {
	if bytes.HasPrefix(s.f.text, []byte("\ufeff")) {
		s.blank(0, 3)
		s.at = 3
	}
	if utf8.Valid(s.f.text) {
		return
	}
	first, many := -1, 0
	for at := 0; at < len(s.f.text); {
		r, n := utf8.DecodeRune(s.f.text[at:])
		if r == utf8.RuneError && n == 1 {
			if first < 0 {
				first = at
			}
			many++
			s.mask[at] = '?'
		}
		at += n
	}
	d := diag.Diagnostic{Code: "E101", Subject: s.f.span(first, first+1),
		Summary: "this is not text in UTF-8",
		Detail:  "Save the text as UTF-8; every editor can."}
	if many > 1 {
		d.Summary += ": " + plural(many, "byte") + " cannot be read, the first here"
	}
	if first == 0 && len(s.f.text) > 1 && (s.f.text[0] == 0xff || s.f.text[0] == 0xfe) {
		d.Summary = "this text was saved as UTF-16, not UTF-8"
	}
	s.report(d, first, first+1)
}

func (s *scan) tooMuch() bool {
	if s.tokens <= mostTokens && s.blocks <= mostBlocks {
		return false
	}
	s.report(diag.Diagnostic{Code: "E102", Subject: s.f.span(s.at, s.at),
		Summary: "this text is far larger than any commission",
		Detail: "Reading stops here, after " + grouped(min(s.tokens, mostTokens)) + " words and signs and " + grouped(s.blocks) +
			" blocks. Split the work into several commissions."}, s.at, s.at)
	s.chunks, s.unusable = nil, true
	s.at = len(s.f.text)
	return true
}

// step takes one token.
func (s *scan) step() {
	text := s.f.text
	c := text[s.at]
	switch {
	case c == ' ' || c == '\t':
		s.at++
		return
	case c == '\r' && s.at+1 < len(text) && text[s.at+1] == '\n':
		s.at++
		return
	case c == '\n':
		s.newline()
		return
	case c == '#' || bytes.HasPrefix(text[s.at:], []byte("//")):
		s.lineComment()
		return
	case bytes.HasPrefix(text[s.at:], []byte("/*")):
		s.longComment()
		return
	}
	s.token(c)
	s.fresh = false
}

func (s *scan) token(c byte) {
	s.tokens++
	s.item++
	if s.item == longestItem {
		s.tooLong()
	}
	if c != '-' && c != '!' {
		s.chain = 0
	}
	switch {
	case c == '"':
		s.quoted()
	case isDigit(c) || c == '.' && s.at+1 < len(s.f.text) && isDigit(s.f.text[s.at+1]):
		s.number()
	case closerOf[c] != 0:
		s.opening(c)
	case c == '}' || c == ']' || c == ')':
		s.closing(c)
	case c == '<' && s.heredoc():
	case c == '-' || c == '!':
		s.sign()
	case strings.IndexByte("=+*/,?:.<>&|%", c) >= 0:
		s.at++
	default:
		s.letter()
	}
}

// sign counts signs in a row: the parser recurses once for each.
func (s *scan) sign() {
	s.chain++
	if s.chain == deepest {
		s.tooDeep(s.at)
	}
	s.at++
}

func (s *scan) tooLong() {
	s.report(diag.Diagnostic{Code: "E104", Subject: s.f.span(s.at, s.at+1),
		Summary: "this one entry is too long to read",
		Detail:  "An entry may have " + grouped(longestItem) + " words and signs. Is a quote or a bracket left open above?"}, s.at, s.at+1)
	s.unusable = true
}

func (s *scan) tooDeep(at int) {
	s.report(diag.Diagnostic{Code: "E103", Subject: s.f.span(at, at+1),
		Summary: "this is nested too deep to read",
		Detail:  "Brackets may stand " + plural(deepest, "deep", "deep") + " within each other. Divide the inside less often."}, at, at+1)
	s.unusable = true
}

// newline ends an item, and at the top level a chunk, unless a list or a sum
// in brackets goes on.
func (s *scan) newline() {
	s.at++
	s.fresh = true
	if n := len(s.open); n > 0 && s.open[n-1].char != '{' {
		return
	}
	s.item, s.chain = 0, 0
	if len(s.open) == 0 {
		s.cut(s.at)
	}
}

// cut ends the present chunk at an offset and begins the next.
func (s *scan) cut(end int) {
	if !s.unusable && len(bytes.TrimSpace(s.mask[s.began:end])) > 0 {
		c := chunk{stretch: stretch{s.began, end}}
		for i := len(s.open) - 1; i >= 0; i-- {
			c.closers += string(closerOf[s.open[i].char])
		}
		s.chunks = append(s.chunks, c)
	}
	s.began, s.unusable, s.open, s.item, s.chain, s.suspect = end, false, nil, 0, 0, -1
}

func (s *scan) lineComment() {
	end := s.f.lineEnd(s.f.line(s.at))
	s.comments = append(s.comments, stretch{s.at, end})
	s.blank(s.at, end)
	s.at = end
}

func (s *scan) longComment() {
	n := bytes.Index(s.f.text[s.at+2:], []byte("*/"))
	if n < 0 {
		s.report(diag.Diagnostic{Code: "E106", Subject: s.f.span(s.at, s.at+2),
			Summary: "this remark has no end", Detail: "Close it with */."}, s.at, len(s.f.text))
		s.blank(s.at, len(s.f.text))
		s.at = len(s.f.text)
		return
	}
	end := s.at + 2 + n + 2
	s.comments = append(s.comments, stretch{s.at, end})
	s.blank(s.at, end)
	s.at = end
}

// blank hides a stretch from the parser. Newlines go too: a long comment does
// not end a line.
func (s *scan) blank(start, end int) {
	for i := start; i < end; i++ {
		s.mask[i] = ' '
	}
}

// poison makes a stretch a number for the parser, so that what stands around
// it can still be read. Whoever evaluates it finds the fault and keeps quiet.
func (s *scan) poison(start, end int) {
	for i := start; i < end; i++ {
		s.mask[i] = '1'
	}
}

// report adds a diagnostic; the stretch counts as dealt with.
func (s *scan) report(d diag.Diagnostic, start, end int) {
	d.Severity = diag.Error
	s.diags.add(d)
	s.faults = append(s.faults, stretch{start, max(end, start+1)})
}

// faulty tells whether anything in a stretch has been reported already.
func (s *scan) faulty(start, end int) bool {
	for _, f := range s.faults {
		if f.start < end && start < f.end {
			return true
		}
	}
	return false
}

func (s *scan) opening(c byte) {
	if len(s.open) == deepest {
		s.tooDeep(s.at)
	}
	if c == '{' {
		s.blocks++
		s.item = 0
	}
	s.open = append(s.open, bracket{c, s.at})
	s.at++
}

func (s *scan) closing(c byte) {
	defer func() { s.at++ }()
	n := len(s.open) - 1
	for n >= 0 && closerOf[s.open[n].char] != c {
		n--
	}
	if n < 0 {
		s.report(diag.Diagnostic{Code: "E107", Subject: s.f.span(s.at, s.at+1),
			Summary: "this " + string(c) + " closes nothing",
			Detail:  "Take it away, or look above for a bracket that is missing or one too many.",
			Edits:   []diag.Edit{{Span: s.f.span(s.at, s.at+1), Says: "take it away"}}}, s.at, s.at+1)
		s.mask[s.at] = ' '
		return
	}
	if n < len(s.open)-1 && !s.unusable {
		s.unclosed(s.open[n+1], s.at)
		s.poison(s.open[n+1].offset, len(bytes.TrimRight(s.mask[:s.at], " \t\r\n")))
	}
	if c == '}' && s.fresh && s.suspect < 0 && s.indent(s.at) < s.indent(s.open[n].offset) {
		s.suspect = s.open[n].offset
	}
	s.pairs[s.open[n].offset], s.opens[s.at] = s.at, s.open[n].offset
	s.open = s.open[:n]
	if c == '}' {
		s.item = 0
	}
}

// indent is how far the line of an offset is indented.
func (s *scan) indent(offset int) int {
	line := s.f.text[s.f.lines[s.f.line(offset)]:]
	return len(line) - len(bytes.TrimLeft(line, " \t"))
}

// unclosed reports a bracket that nothing closes before the offset.
func (s *scan) unclosed(b bracket, before int) {
	d := diag.Diagnostic{Code: "E106", Subject: s.f.span(b.offset, b.offset+1),
		Summary: "this " + string(b.char) + " is never closed",
		Detail:  "Put a " + string(closerOf[b.char]) + " where it ends."}
	if before < len(s.f.text) {
		d.Related = []diag.Related{{Span: s.f.span(before, before+1), Message: "it should have ended before this"}}
	}
	s.report(d, b.offset, b.offset+1)
}

// endOfText closes what is left open.
func (s *scan) endOfText() {
	s.openAt(len(s.f.text))
	s.cut(len(s.f.text))
}

// openAt reports brackets still open at an offset where none should be: only
// the one most likely forgotten, for the others follow from it.
func (s *scan) openAt(offset int) {
	if len(s.open) == 0 || s.unusable {
		return
	}
	b := s.open[len(s.open)-1]
	if s.suspect >= 0 {
		b = bracket{'{', s.suspect}
	}
	s.unclosed(b, offset)
}

// letter takes a word or a character that has no meaning here.
func (s *scan) letter() {
	start := s.at
	r, n := utf8.DecodeRune(s.f.text[s.at:])
	switch {
	case r == '_' || unicode.IsLetter(r):
		s.word()
		if s.fresh && len(s.open) > 0 {
			s.forgotten(start)
		}
	case vulgar(r) != nil:
		s.number()
	default:
		s.stray(r, n)
	}
}

func (s *scan) word() {
	for s.at < len(s.f.text) {
		r, n := utf8.DecodeRune(s.f.text[s.at:])
		if r != '_' && r != '-' && !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.Is(unicode.Mn, r) {
			return
		}
		s.at += n
	}
}

// forgotten looks at a word that begins a line inside a block: a block that
// can only stand at the top level, at the left margin, tells that a brace is
// missing above.
func (s *scan) forgotten(start int) {
	if s.f.lines[s.f.line(start)] != start || !s.topOnly[string(s.f.text[start:s.at])] {
		return
	}
	rest := bytes.TrimLeft(s.f.text[s.at:s.f.lineEnd(s.f.line(start))], " \t")
	if len(rest) == 0 || rest[0] != '"' && rest[0] != '{' {
		return
	}
	s.openAt(start)
	s.cut(start)
}

// wrongSigns are characters people paste or their editors put in, with what
// the language has instead.
var wrongSigns = map[rune]struct{ name, instead string }{
	'×': {"a multiplication sign", "*"}, '÷': {"a division sign", "/"}, '−': {"a typeset minus", "-"},
	'–': {"a dash", "-"}, '—': {"a dash", "-"}, '\u00a0': {"a blank that does not break", " "},
	'\u2009': {"a thin blank", " "}, '\u202f': {"a narrow blank", " "},
	'⁄': {"a fraction bar", "/"}, '∕': {"a division bar", "/"}, '\ufeff': {"a byte order mark", ""},
	'“': {"a typeset quote", `"`}, '”': {"a typeset quote", `"`}, '„': {"a typeset quote", `"`},
	'‘': {"a typeset quote", `"`}, '’': {"a typeset quote", `"`}, '\'': {"a single quote", `"`},
	';': {"a semicolon", "\n"},
}

func (s *scan) stray(r rune, n int) {
	d := diag.Diagnostic{Code: "E105", Subject: s.f.span(s.at, s.at+n)}
	w, known := wrongSigns[r]
	switch {
	case r == utf8.RuneError:
		s.blank(s.at, s.at+n) // reported by mark
		s.at += n
		return
	case known:
		d.Summary = w.name + " has no meaning here"
		d.Edits = []diag.Edit{{Span: d.Subject, Text: w.instead, Says: "write " + describe(w.instead)}}
		d.Detail = "Write " + describe(w.instead) + "."
	case unicode.IsControl(r):
		d.Summary = "a control character has no meaning here"
		d.Detail = "Take it away."
		d.Edits = []diag.Edit{{Span: d.Subject, Says: "take it away"}}
	default:
		d.Summary = "the character " + quote(string(r)) + " has no meaning here"
		d.Detail = "Words belong in quotes, remarks after a #."
	}
	if strings.ContainsRune("“”„‘’'", r) {
		s.quotedAnyhow(d)
		return
	}
	s.report(d, s.at, s.at+n)
	s.blank(s.at, s.at+n)
	copy(s.mask[s.at:s.at+n], w.instead)
	s.at += n
}

// quotedAnyhow reports wrong quotes together with what they enclose on this
// line, so that one slip is one message, and gives the parser plain ones.
func (s *scan) quotedAnyhow(d diag.Diagnostic) {
	start := s.at
	_, n := utf8.DecodeRune(s.f.text[start:])
	end := s.f.lineEnd(s.f.line(start))
	i := bytes.IndexAny(s.f.text[start+n:end], "“”„‘’'\"")
	if i < 0 {
		s.report(d, start, start+n)
		s.poison(start, start+n)
		s.at += n
		return
	}
	inner := string(s.f.text[start+n : start+n+i])
	_, m := utf8.DecodeRune(s.f.text[start+n+i:])
	end = start + n + i + m
	d.Subject = s.f.span(start, end)
	d.Detail = "Put the text between plain quotes: " + inQuotes(clipped(inner)) + "."
	d.Edits = []diag.Edit{{Span: d.Subject, Text: inQuotes(inner), Says: "put it between plain quotes"}}
	s.report(d, start, end)
	s.blank(start, end)
	if !strings.ContainsAny(inner, "\\${%\r") {
		copy(s.mask[start+n-1:], `"`+inner+`"`)
	}
	s.at = end
}

func describe(sign string) string {
	switch sign {
	case "\n":
		return "it on a line of its own"
	case " ":
		return "a plain blank"
	case "":
		return "nothing"
	case `"`:
		return `a plain quote "`
	}
	return sign
}
