package lettering

import (
	"math"
	"strings"
)

// Run is a stretch of letters on one baseline.
type Run struct {
	X, Y float64 // start of the run, from the start of the line's baseline
	Face Face
	Size Points
	Text string
}

// Bar is the stroke between a fraction's figures.
type Bar struct {
	X1, X2, Y float64
	Thick     float64
}

// Line is one line of text, set: letters in place and the room they take. The
// zero Line is empty.
type Line struct {
	Runs    []Run
	Bars    []Bar
	Text    string  // what the line says, as it should read when copied out
	Width   float64 // from the start of the baseline to the end
	Ascent  float64 // room above the baseline
	Descent float64 // room below the baseline
}

// How a stacked fraction is proportioned, in parts of the type size (own
// choice, made by eye so that 9/16 at 9 pt still reads and a line with a
// fraction needs no extra leading).
const (
	fractionSize = 0.7   // size of the small figures
	fractionBar  = 0.05  // thickness of the bar
	fractionGap  = 0.085 // between bar and figures
	fractionSide = 0.05  // bar beyond the wider figure, and clear space beside the bar
	wholeGap     = 0.06  // between the whole number and the bar
	descenders   = 0.22  // room below the baseline for g, p, y
)

// Set sets s as one line. Vulgar fractions of a rule ("3/8", "5-3/8",
// "5 ⅜") are stacked, any other slash is left alone. Letters the face does
// not have become "?".
func Set(s string, face Face, size Points) Line {
	return setPieces(face.Printable(s), split(face.Printable(s)), face, size)
}

// SetPlain sets s as one line and stacks no fractions.
func SetPlain(s string, face Face, size Points) Line {
	s = face.Printable(s)
	return setPieces(s, []piece{{text: s}}, face, size)
}

func setPieces(s string, pieces []piece, face Face, size Points) Line {
	em := size.Millimetres()
	l := Line{Text: s, Ascent: face.CapHeight(size), Descent: descenders * em}
	for _, p := range pieces {
		if p.den == "" {
			l.addText(p.text, face, size)
			continue
		}
		if p.afterWhole {
			l.Width += wholeGap * em
		}
		l.addFraction(p, face, size)
	}
	return l
}

func (l *Line) addText(s string, face Face, size Points) {
	if s == "" {
		return
	}
	l.Runs = append(l.Runs, Run{X: l.Width, Face: face, Size: size, Text: s})
	l.Width += face.Width(s, size)
}

func (l *Line) addFraction(p piece, face Face, size Points) {
	em := size.Millimetres()
	small := Points(math.Round(float64(size)*fractionSize*100) / 100)
	digit := face.tables().digit * small.Millimetres()
	axis := -face.CapHeight(size) / 2 // the bar stands at half the height of the figures beside it
	num, den := face.Width(p.num, small), face.Width(p.den, small)
	wide := math.Max(num, den) + 2*fractionSide*em
	x := l.Width + fractionSide*em
	half := fractionBar * em / 2
	up := axis - half - fractionGap*em
	down := axis + half + fractionGap*em + digit
	l.Runs = append(l.Runs,
		Run{X: x + (wide-num)/2, Y: up, Face: face, Size: small, Text: p.num},
		Run{X: x + (wide-den)/2, Y: down, Face: face, Size: small, Text: p.den})
	l.Bars = append(l.Bars, Bar{X1: x, X2: x + wide, Y: axis, Thick: fractionBar * em})
	l.Width = x + wide + fractionSide*em
	l.Ascent = math.Max(l.Ascent, digit-up)
	l.Descent = math.Max(l.Descent, down)
}

// piece is either plain text or a fraction.
type piece struct {
	text       string
	num, den   string
	afterWhole bool
}

// split finds the fractions. A fraction is digits, a slash and one of the
// denominators a rule has, standing free of letters, points and other slashes:
// "1/3", "3/4/26" and "and/or" stay text.
func split(s string) []piece {
	r := []rune(spellOut(s))
	var out []piece
	start := 0
	for i := 0; i < len(r); {
		n, ok := fractionAt(r, i)
		if !ok {
			i++
			continue
		}
		text, whole := cutWhole(string(r[start:i]))
		out = append(out, piece{text: text})
		num, den, _ := strings.Cut(string(r[i:i+n]), "/")
		out = append(out, piece{num: num, den: den, afterWhole: whole})
		i += n
		start = i
	}
	return append(out, piece{text: string(r[start:])})
}

// cutWhole takes off the blank or hyphen between a whole number and its
// fraction.
func cutWhole(before string) (text string, whole bool) {
	n := len(before)
	if n >= 2 && (before[n-1] == ' ' || before[n-1] == '-') && isDigit(rune(before[n-2])) {
		return before[:n-1], true
	}
	return before, false
}

// fractionAt is the length of the fraction that starts at i.
func fractionAt(r []rune, i int) (int, bool) {
	if !isDigit(r[i]) || (i > 0 && !mayPrecede(r[i-1])) {
		return 0, false
	}
	j := digits(r, i)
	if j == len(r) || r[j] != '/' || j-i > 2 {
		return 0, false
	}
	k := digits(r, j+1)
	if k == j+1 || (k < len(r) && !mayFollow(r[k])) {
		return 0, false
	}
	switch string(r[j+1 : k]) {
	case "2", "4", "8", "16", "32", "64", "128":
		return k - i, true
	}
	return 0, false
}

func digits(r []rune, i int) int {
	for i < len(r) && isDigit(r[i]) {
		i++
	}
	return i
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

func mayPrecede(r rune) bool {
	return !isDigit(r) && !isLetter(r) && r != '/' && r != '.' && r != ','
}

func mayFollow(r rune) bool { return !isDigit(r) && !isLetter(r) && r != '/' }

func isLetter(r rune) bool {
	return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || r >= 0xc0 && r < 0x250 && r != '×' && r != '÷'
}

// spellOut writes the ready-made fraction letters as figures, so that ½ and
// 7/16 in one column are set alike.
func spellOut(s string) string {
	if !strings.ContainsAny(s, "¼½¾⅛⅜⅝⅞") {
		return s
	}
	var b strings.Builder
	last := ' '
	for _, r := range s {
		f, ok := ready[r]
		if ok && isDigit(last) {
			b.WriteByte(' ')
		}
		if ok {
			b.WriteString(f)
		} else {
			b.WriteRune(r)
		}
		last = r
	}
	return b.String()
}

var ready = map[rune]string{
	'¼': "1/4", '½': "1/2", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
}

// FractionWidth is how much of the line stands to the right of the last whole
// number: the stacked fraction and whatever follows it. Columns of sizes are
// lined up by it, whole numbers under whole numbers.
func (l Line) FractionWidth() float64 {
	if len(l.Bars) == 0 {
		return 0
	}
	return l.Width - l.Bars[0].X1
}
