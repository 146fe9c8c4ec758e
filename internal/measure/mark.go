package measure

import (
	"strings"
	"unicode"
)

// unitWords are the units that can be written out. A slice, so that of two
// equally close words the same one is always proposed.
var unitWords = []struct {
	word string
	long Length
}{
	{"in", Inch}, {"inch", Inch}, {"inches", Inch}, {"ins", Inch},
	{"ft", Foot}, {"foot", Foot}, {"feet", Foot},
	{"mm", Millimetre}, {"millimetre", Millimetre}, {"millimetres", Millimetre}, {"millimeter", Millimetre}, {"millimeters", Millimetre},
	{"cm", Centimetre}, {"centimetre", Centimetre}, {"centimetres", Centimetre}, {"centimeter", Centimetre}, {"centimeters", Centimetre},
	{"m", Metre}, {"metre", Metre}, {"metres", Metre}, {"meter", Metre}, {"meters", Metre},
}

// mark reads the unit behind a number: a word or the strokes for feet and
// inches. No unit is 0.
func (p *parser) mark() (Length, *ParseError) {
	p.space()
	switch r := p.peek(); {
	case isDouble(r):
		p.next()
		return Inch, nil
	case isPrime(r):
		p.next()
		if isPrime(p.peek()) { // '' is typed for "
			p.next()
			return Inch, nil
		}
		return Foot, nil
	case unicode.IsLetter(r):
		return p.word()
	}
	return 0, nil
}

func (p *parser) word() (Length, *ParseError) {
	at := p.pos
	word := p.skip(unicode.IsLetter)
	low := strings.ToLower(word)
	for _, u := range unitWords {
		if u.word == low {
			if u.long >= Inch && p.peek() == '.' && u.long != Metre {
				p.next() // in. and ft. are abbreviations
			}
			return u.long, nil
		}
	}
	mend := "write in, ft, mm, cm or m"
	if near := closeUnit(low); near != "" {
		mend = "did you mean " + near + "? The units are in, ft, mm, cm and m"
	}
	return 0, p.wrong(at, quote(word)+" is not a unit of length", mend)
}

// closeUnit is the known unit that a word is a slip away from, or "".
func closeUnit(word string) string {
	best, near := "", 3
	for _, u := range unitWords {
		// Half the letters wrong is no slip: "yd" is not "in".
		if d := slips(word, u.word); d < near && 2*d <= len(word) {
			best, near = u.word, d
		}
	}
	return best
}

// slips counts the letters to add, drop or change to make b out of a
// (Levenshtein's distance). Words much longer than any unit are not looked at.
func slips(a, b string) int {
	if len(a) > 16 {
		return len(a)
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}

// isPrime knows the strokes for feet: plain, typeset, and the quotes that word
// processors put in their place.
func isPrime(r rune) bool { return strings.ContainsRune("'′’‘", r) }

// isDouble knows the strokes for inches.
func isDouble(r rune) bool { return strings.ContainsRune("\"″”“", r) }
