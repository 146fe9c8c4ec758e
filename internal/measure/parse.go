package measure

import (
	"math/big"
	"unicode"
	"unicode/utf8"
)

// ParseLength reads a length as makers write it; a bare number is in unit.
//
//	5 3/8    5-3/8    5 3/8"    5-3/8 in    5.375    .5    5½    1/3
//	1' 4 1/2"    1'-4"    1' 4    1 ft 4 in    4 ft    16''
//	136.5 mm    13.65 cm    1.2 m    136,5 mm    -1/2
//
// Primes, curly quotes, dashes and the minus sign of typeset text are read as
// their plain twins. After feet a bare number is inches, whatever the unit. A
// comma is a decimal comma where it can be nothing else; "1,250" is an error
// that asks. The arithmetic is exact and is rounded once, to the nearest
// nanometre and half to the even one.
//
// The error is always a *ParseError. Texts over 256 bytes and lengths beyond
// MaxLength are refused, so time and memory are bounded.
func ParseLength(text string, unit Unit) (Length, error) {
	p := parser{text: text}
	nm, bad := p.length(unit)
	if bad != nil {
		return 0, bad
	}
	l, ok := fromNanometres(nm)
	if !ok {
		return 0, &ParseError{Summary: quote(text) + " is longer than a kilometre", Mend: "check the number and its unit"}
	}
	return l, nil
}

// Typed is a length together with the text it was read from, so that what the
// maker typed can be shown again as it was. The zero value is nothing typed.
type Typed struct {
	Length Length
	Text   string
}

// ParseTyped is ParseLength, keeping the text as it stands.
func ParseTyped(text string, unit Unit) (Typed, error) {
	l, err := ParseLength(text, unit)
	if err != nil {
		return Typed{}, err
	}
	return Typed{Length: l, Text: text}, nil
}

// maxText is the longest text that is looked at, in bytes.
const maxText = 256

// parser walks once through a text; what it has read is never read again
// further than a few bytes back.
type parser struct {
	text string
	pos  int
}

// length reads the whole text into nanometres.
func (p *parser) length(unit Unit) (*big.Rat, *ParseError) {
	if len(p.text) > maxText {
		return nil, &ParseError{Summary: "this is far too long for a size", Mend: likeThis}
	}
	p.space()
	if p.done() {
		return nil, &ParseError{Summary: "there is no size here", Mend: likeThis}
	}
	neg := p.sign()
	nm, bad := p.measures(unit)
	if bad != nil {
		return nil, bad
	}
	if p.space(); !p.done() {
		return nil, p.junk()
	}
	if neg {
		nm.Neg(nm)
	}
	return nm, nil
}

// measures reads "number unit", or feet and what follows them.
func (p *parser) measures(unit Unit) (*big.Rat, *ParseError) {
	nm, bad := p.number()
	if bad != nil {
		return nil, bad
	}
	mark, bad := p.mark()
	if bad != nil {
		return nil, bad
	}
	if mark == 0 {
		mark = unit.Length()
	}
	nm.Mul(nm, ratOf(mark))
	if mark != Foot {
		return nm, nil
	}
	inches, bad := p.afterFeet()
	if bad != nil {
		return nil, bad
	}
	return nm.Add(nm, inches), nil
}

// afterFeet reads the inches behind feet, in nanometres: none, bare or marked.
// Architects put a dash between the two, and it is no minus.
func (p *parser) afterFeet() (*big.Rat, *ParseError) {
	p.space()
	if p.done() {
		return new(big.Rat), nil
	}
	if isDash(p.peek()) {
		p.next()
		p.space()
	}
	if r := p.peek(); !isNumeral(r) && !p.done() {
		return nil, p.junk()
	}
	n, bad := p.number()
	if bad != nil {
		return nil, bad
	}
	at := p.pos
	mark, bad := p.mark()
	if bad != nil {
		return nil, bad
	}
	if mark != 0 && mark != Inch {
		return nil, p.wrong(at, "feet can only be followed by inches", `write it like 1' 4 1/2", or all in one unit`)
	}
	return n.Mul(n, ratOf(Inch)), nil
}

// sign reads a leading sign, and reports whether it is a minus.
func (p *parser) sign() bool {
	r := p.peek()
	if r != '+' && !isDash(r) {
		return false
	}
	p.next()
	p.space()
	return r != '+'
}

func (p *parser) done() bool { return p.pos >= len(p.text) }

// peek is the next character, or 0 at the end.
func (p *parser) peek() rune {
	if p.done() {
		return 0
	}
	r, _ := utf8.DecodeRuneInString(p.text[p.pos:])
	return r
}

func (p *parser) next() {
	_, size := utf8.DecodeRuneInString(p.text[p.pos:])
	p.pos += size
}

func (p *parser) space() { p.skip(unicode.IsSpace) }

// skip passes over all that are of a kind and returns them.
func (p *parser) skip(kind func(rune) bool) string {
	start := p.pos
	for !p.done() && kind(p.peek()) {
		p.next()
	}
	return p.text[start:p.pos]
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// isNumeral tells what a number can begin with.
func isNumeral(r rune) bool {
	_, vulgar := vulgars[r]
	return isDigit(r) || r == '.' || r == ',' || vulgar
}

// isDash knows the hyphens, dashes and the minus sign of typeset text.
func isDash(r rune) bool {
	switch r {
	case '-', '‐', '‑', '–', '−':
		return true
	}
	return false
}

// isSlash knows the solidus and the fraction slash.
func isSlash(r rune) bool { return r == '/' || r == '⁄' }
