package lettering

import "strings"

// Wrap breaks s into lines no wider than width millimetres. Line breaks in s
// are kept. A number is never parted from its fraction or its unit; a word
// wider than the line is broken inside, and a single letter wider than the
// line stands alone. Empty text gives one empty line.
func Wrap(s string, face Face, size Points, width float64) []Line {
	var out []Line
	for _, text := range WrapText(s, face, size, width) {
		out = append(out, Set(text, face, size))
	}
	return out
}

// WrapText is [Wrap] before setting: the text of each line.
func WrapText(s string, face Face, size Points, width float64) []string {
	var out []string
	for _, para := range strings.Split(s, "\n") {
		out = append(out, wrapParagraph(face.Printable(para), face, size, width)...)
	}
	return out
}

func wrapParagraph(s string, face Face, size Points, width float64) []string {
	w := wrapper{face: face, size: size, width: width, blank: face.Width(" ", size)}
	for _, word := range glue(strings.Fields(s)) {
		w.add(word)
	}
	return append(w.lines, w.line)
}

type wrapper struct {
	face         Face
	size         Points
	width, blank float64
	lines        []string
	line         string
	used         float64
}

func (w *wrapper) add(word string) {
	long := Set(word, w.face, w.size).Width
	if w.line != "" && w.used+w.blank+long <= w.width+fits {
		w.line += " " + word
		w.used += w.blank + long
		return
	}
	if w.line != "" {
		w.lines = append(w.lines, w.line)
	}
	w.line, w.used = word, long
	if long > w.width+fits {
		w.breakWord(word)
	}
}

// fits forgives the rounding of sums of widths; it is a tenth of a micrometre.
const fits = 1e-4

// breakWord spreads a word that is wider than the line over several, first at
// the blanks it was glued over, then letter by letter.
func (w *wrapper) breakWord(word string) {
	if before, after, ok := strings.Cut(word, " "); ok {
		w.line, w.used = "", 0
		w.add(before)
		w.add(after)
		return
	}
	runes := []rune(word)
	for len(runes) > 0 {
		n := 1
		for n < len(runes) && Set(string(runes[:n+1]), w.face, w.size).Width <= w.width+fits {
			n++
		}
		if n == len(runes) {
			break
		}
		w.lines = append(w.lines, string(runes[:n]))
		runes = runes[n:]
	}
	w.line = string(runes)
	w.used = Set(w.line, w.face, w.size).Width
}

// glue joins words that must stay on one line: "5" "3/8" "in".
func glue(words []string) []string {
	var out []string
	for _, word := range words {
		if len(out) > 0 && sticks(out[len(out)-1], word) {
			out[len(out)-1] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

func sticks(before, word string) bool {
	if !isDigit(rune(before[len(before)-1])) {
		return false
	}
	if r := []rune(word); isDigit(r[0]) {
		_, ok := fractionAt(r, 0)
		return ok
	}
	switch strings.TrimRight(word, ".,;:)") {
	case "in", "ft", "mm", "cm", "m", "lb", "kg", "pt", "%", "h", "min", "°", "°F", "°C":
		return true
	}
	return false
}

// Ellipsis is s if it fits in width millimetres, else as much of it as fits
// with "…" at the end; "" if not even that fits.
func Ellipsis(s string, face Face, size Points, width float64) string {
	if Set(s, face, size).Width <= width+fits {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n >= 0; n-- {
		cut := strings.TrimRight(string(runes[:n]), " ") + "…"
		if Set(cut, face, size).Width <= width+fits {
			return cut
		}
	}
	return ""
}

// LineHeight is the usual distance between baselines in millimetres: 1.3 times
// the type size, which leaves room for stacked fractions (own choice, by eye).
func LineHeight(size Points) float64 { return 1.3 * size.Millimetres() }
