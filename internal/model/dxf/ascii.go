package dxf

import (
	"regexp"
	"strings"
)

// ASCII puts words into plain ASCII, as a reader of DXF can be trusted to show
// them: stacked fractions are written out and tied to their whole number
// (5 3/8 and 5⅜ become 5-3/8), signs become letters (× x, ° deg, Ø dia),
// accents are dropped except that ä, ö, ü, ß become ae, oe, ue, ss; control
// characters become a space, anything else a question mark. Blanks at either
// end are dropped.
func ASCII(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch f, ok := written[r]; {
		case ok:
			b.WriteString(f)
		case r < ' ' || r == 0x7f:
			b.WriteByte(' ')
		case r < 0x7f:
			b.WriteRune(r)
		default:
			b.WriteByte('?')
		}
	}
	tied := whole.ReplaceAllString(b.String(), "$1-$2")
	// Two percent signs and a caret begin codes of the format.
	return strings.NewReplacer("%%", "% %", "^", "^ ").Replace(strings.TrimSpace(tied))
}

// whole finds a whole number and its fraction.
var whole = regexp.MustCompile(`(\d) +(\d+/\d+)`)

// written is how a sign reads in ASCII. Fractions begin with a blank, which
// whole ties to the number before it.
var written = letters()

func letters() map[rune]string {
	w := map[rune]string{
		'½': " 1/2", '¼': " 1/4", '¾': " 3/4", '⅛': " 1/8", '⅜': " 3/8", '⅝': " 5/8", '⅞': " 7/8", '⅓': " 1/3", '⅔': " 2/3",
		'⁄': "/", '×': "x", '·': ".", '÷': "/", '−': "-", '–': "-", '—': "-", '‑': "-", '±': "+/-", '°': " deg", 'Ø': "dia ", '⌀': "dia ",
		'″': `"`, '′': "'", '“': `"`, '”': `"`, '„': `"`, '‘': "'", '’': "'", '…': "...", '→': "->", '←': "<-",
		'≤': "<=", '≥': ">=", '≈': "~", '²': "2", '³': "3", '\u00a0': " ", '\u202f': " ", '\u2009': " ",
		'ä': "ae", 'ö': "oe", 'ü': "ue", 'Ä': "Ae", 'Ö': "Oe", 'Ü': "Ue", 'ß': "ss", 'æ': "ae", 'Æ': "Ae", 'œ': "oe", 'ø': "o",
	}
	for plain, accented := range map[string]string{
		"a": "àáâãå", "A": "ÀÁÂÃÅ", "c": "ç", "C": "Ç", "e": "èéêë", "E": "ÈÉÊË", "i": "ìíîï", "I": "ÌÍÎÏ",
		"n": "ñ", "N": "Ñ", "o": "òóôõ", "O": "ÒÓÔÕ", "u": "ùúû", "U": "ÙÚÛ", "y": "ýÿ", "Y": "Ý",
	} {
		for _, r := range accented {
			w[r] = plain
		}
	}
	return w
}
