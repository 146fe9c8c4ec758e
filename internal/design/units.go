package design

import (
	"errors"
	"math/big"
	"strings"

	"casewright/internal/measure"
)

// unitLength is how long one of the commission's units is.
func unitLength(u measure.Unit) measure.Length { return u.Length() }

// readLength reads a length from a string.
func readLength(said string, u measure.Unit) (measure.Length, error) {
	return measure.ParseLength(said, u)
}

// mend is what measure proposes for a text it cannot read.
func mend(err error) string {
	var p *measure.ParseError
	if errors.As(err, &p) {
		return sentence(p.Summary) + " " + sentence(p.Mend)
	}
	return ""
}

// sentence gives words their capital and full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	if c := s[0]; c >= 'a' && c <= 'z' {
		s = strings.ToUpper(s[:1]) + s[1:]
	}
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// unitsApart writes a size with its unit the way a string holds it, 23.5 in
// for 23.5in, and tells whether it is a length at all. Feet become inches: an
// inch mark would need a backslash in a string.
func unitsApart(typed string) (string, bool) {
	typed = strings.ReplaceAll(strings.Join(strings.Fields(typed), " "), " / ", "/")
	l, err := measure.ParseLength(typed, measure.Inches)
	if err != nil {
		return "", false
	}
	cut := strings.IndexAny(typed, "\"'′″’”‘“")
	if cut < 0 {
		cut = strings.IndexFunc(typed, func(r rune) bool { return r >= 'A' && r <= 'z' })
		if cut <= 0 {
			return typed, true
		}
		return strings.TrimSpace(typed[:cut]) + " " + typed[cut:], true
	}
	return mixedText(new(big.Rat).SetFrac64(int64(l), int64(measure.Inch))) + " in", true
}
