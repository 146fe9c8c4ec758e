package measure

import (
	"strings"
	"unicode"
)

// ParseError tells why a text is no length, slope, graduation or amount, in
// words for the maker. Offset is the byte in the text where the trouble
// starts, at most its length; Summary says what is wrong and Mend what to
// write instead. Both are set.
type ParseError struct {
	Offset        int
	Summary, Mend string
}

// Error is both sentences on one line.
func (e *ParseError) Error() string { return e.Summary + "; " + e.Mend }

// likeThis is the way out where the text gives no hint of what was meant.
const likeThis = `write it like 5 3/8, 1' 4 1/2" or 136.5 mm`

func (p *parser) wrong(at int, summary, mend string) *ParseError {
	return &ParseError{Offset: at, Summary: summary, Mend: mend}
}

// noNumber is for a place where a number should begin and does not.
func (p *parser) noNumber() *ParseError {
	rest := p.text[p.pos:]
	if rest == "" {
		return p.wrong(p.pos, "the number is missing", likeThis)
	}
	return p.wrong(p.pos, quote(rest)+" does not begin with a number", likeThis)
}

// junk is for what is left over once a length has been read.
func (p *parser) junk() *ParseError {
	rest := quote(p.text[p.pos:])
	switch r := p.peek(); {
	case isNumeral(r):
		return p.wrong(p.pos, "a second number, "+rest+", follows the first", `write one size, such as 5 3/8; feet need a mark, as in 5' 3`)
	case isDash(r):
		return p.wrong(p.pos, "it is not clear what the dash in front of "+rest+" means", "write the fraction close up: 5-3/8 or 5 3/8")
	case isSlash(r):
		return p.wrong(p.pos, "there is a stroke too many: "+rest, "write one fraction, such as 3/8")
	}
	return p.wrong(p.pos, rest+" is left over behind the size", likeThis)
}

// quote shows a little of what was typed, fit for a message whatever it holds.
func quote(s string) string {
	const most = 24
	s = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return '·'
		}
		return r
	}, strings.ToValidUTF8(strings.TrimSpace(s[:min(len(s), 8*most)]), "·"))
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return "“" + s + "”"
}
