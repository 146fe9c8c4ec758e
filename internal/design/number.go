package design

import (
	"math/big"
	"strings"
	"unicode/utf8"

	"casewright/internal/diag"
)

// word is a number that HCL would not read as one: 20 1/2.
type word struct {
	end   int
	value *big.Rat // nil when it has been reported
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// number takes a number, a whole number with a fraction, or reports what looks
// like a size and is written in a way the language does not have.
func (s *scan) number() {
	start := s.at
	whole := s.digits(start)
	if whole == start && s.f.text[start] == '.' {
		s.startsWithPoint(start)
		return
	}
	if whole-start > longestWord {
		s.wrong(diag.Diagnostic{Code: "E119", Summary: "this number has too many digits",
			Detail: "Sizes need no more than a few."}, start, whole)
		return
	}
	end := s.fraction(whole)
	if s.decimalComma(start, whole) || s.runTogether(start, whole, end) {
		return
	}
	s.at = end
	if end == whole {
		s.twoNumbers(start, whole)
		return
	}
	s.mixed(start, whole, end)
}

// digits is where the plain number that starts at an offset ends, as HCL
// reads numbers.
func (s *scan) digits(at int) int {
	at = s.run(at)
	if at+1 < len(s.f.text) && s.f.text[at] == '.' && isDigit(s.f.text[at+1]) && at > 0 && isDigit(s.f.text[at-1]) {
		at = s.run(at + 1)
	}
	if e := at; e < len(s.f.text) && (s.f.text[e] == 'e' || s.f.text[e] == 'E') {
		e++
		if e < len(s.f.text) && (s.f.text[e] == '+' || s.f.text[e] == '-') {
			e++
		}
		if end := s.run(e); end > e {
			return end
		}
	}
	return at
}

func (s *scan) run(at int) int {
	for at < len(s.f.text) && isDigit(s.f.text[at]) {
		at++
	}
	return at
}

func (s *scan) blanks(at int) int {
	for at < len(s.f.text) && (s.f.text[at] == ' ' || s.f.text[at] == '\t') {
		at++
	}
	return at
}

// fraction is where the fraction after a whole number ends: " 1/2", "-1/2" or
// " ½"; it is the offset it was given when there is none.
func (s *scan) fraction(whole int) int {
	at := s.blanks(whole)
	if r, n := utf8.DecodeRune(s.f.text[min(at, len(s.f.text)):]); vulgar(r) != nil {
		return at + n
	}
	if at == whole && at < len(s.f.text) && s.f.text[at] == '-' {
		at++
	}
	if at == whole {
		return whole
	}
	over := s.run(at)
	slash := s.blanks(over)
	if over == at || slash >= len(s.f.text) || s.f.text[slash] != '/' {
		return whole
	}
	under := s.blanks(slash + 1)
	if end := s.run(under); end > under {
		return end
	}
	return whole
}

// glyph reports 5½ and 5 ½.
func (s *scan) glyph(start, end int) bool {
	r, n := utf8.DecodeLastRune(s.f.text[start:end])
	f := vulgar(r)
	if f == nil {
		return false
	}
	whole := strings.TrimSpace(string(s.f.text[start : end-n]))
	right := strings.TrimSpace(whole + " " + f.RatString())
	s.wrong(diag.Diagnostic{Code: "E109", Summary: quote(string(s.f.text[start:end])) + " is not how a fraction is written",
		Detail: "Fractions are written with a slash: " + right + ".",
		Edits:  []diag.Edit{{Span: s.f.span(start, end), Text: right, Says: "write " + right}}}, start, end)
	return true
}

func (s *scan) startsWithPoint(start int) {
	end := s.run(start + 1)
	s.wrong(diag.Diagnostic{Code: "E109", Summary: "a number begins with a digit",
		Detail: "Write the nought: 0" + string(s.f.text[start:end]) + ".",
		Edits:  []diag.Edit{{Span: s.f.span(start, start), Text: "0", Says: "write the nought"}}}, start, end)
}

// twoNumbers reports a number that follows another with nothing between.
func (s *scan) twoNumbers(start, whole int) {
	at := s.blanks(whole)
	if at == whole || at >= len(s.f.text) || !isDigit(s.f.text[at]) {
		return
	}
	end := s.digits(at)
	s.wrong(diag.Diagnostic{Code: "E112", Summary: "two numbers stand side by side",
		Detail: "A fraction is written 20 1/2; a list has commas, [12, 20]; a sum has a sign between."}, start, end)
}

// mixed takes a whole number with its fraction.
func (s *scan) mixed(start, whole, end int) {
	text := string(s.f.text[start:end])
	over, under, _ := strings.Cut(string(s.f.text[whole:end]), "/")
	hyphen := strings.HasPrefix(over, "-")
	over, under = strings.Trim(over, "- \t"), strings.TrimSpace(under)
	wholeText := string(s.f.text[start:whole])
	d := diag.Diagnostic{Code: "E111"}
	n, okN := new(big.Rat).SetString(wholeText)
	f, okF := new(big.Rat).SetString(over + "/" + under)
	switch {
	case len(text) > longestWord:
		d.Code, d.Summary, d.Detail = "E119", "this number has too many digits", "Sizes need no more than a few."
	case strings.ContainsAny(wholeText, ".eE") || !okN:
		d.Summary, d.Detail = "a decimal and a fraction cannot be one number", "Write "+quote("20 1/2")+" or "+quote("20.5")+"."
	case !okF:
		d.Summary, d.Detail = "a fraction with nothing under the line has no value", "Write what the inch is divided into: 1/2, 3/16."
	case f.Cmp(big.NewRat(1, 1)) >= 0:
		right := mixedText(new(big.Rat).Add(n, f))
		d.Summary, d.Detail = quote(over+"/"+under)+" after a whole number is one or more", "Did a figure slip? As it stands it is "+right+"."
		d.Edits = []diag.Edit{{Span: s.f.span(start, end), Text: right, Says: "write " + right}}
	case hyphen:
		right := wholeText + " " + over + "/" + under
		d.Code, d.Summary = "E110", quote(text)+" can be read in two ways"
		d.Detail = "For the size write " + right + "; to take away, put blanks round the minus: " + wholeText + " - " + over + "/" + under + "."
		d.Edits = []diag.Edit{{Span: s.f.span(start, end), Text: right, Says: "write " + right}}
	default:
		s.words[start] = word{end, n.Add(n, f)}
		s.poison(start, end)
		return
	}
	s.wrong(d, start, end)
}

// mixedText is 21 1/4 for 85/4.
func mixedText(r *big.Rat) string {
	whole, rest := new(big.Int).QuoRem(r.Num(), r.Denom(), new(big.Int))
	if rest.Sign() == 0 {
		return whole.String()
	}
	fraction := rest.String() + "/" + r.Denom().String()
	if whole.Sign() == 0 {
		return fraction
	}
	return whole.String() + " " + fraction
}

// wrong reports a number and hides it.
func (s *scan) wrong(d diag.Diagnostic, start, end int) {
	if d.Subject.IsZero() {
		d.Subject = s.f.span(start, end)
	}
	s.report(d, start, end)
	s.words[start] = word{end: end}
	s.poison(start, end)
	s.at = end
}

// vulgar is the value of a fraction that is one character, or nil.
func vulgar(r rune) *big.Rat {
	const table = "½1/2 ¼1/4 ¾3/4 ⅛1/8 ⅜3/8 ⅝5/8 ⅞7/8 ⅓1/3 ⅔2/3 ⅕1/5 ⅖2/5 ⅗3/5 ⅘4/5 ⅙1/6 ⅚5/6 ⅐1/7 ⅑1/9 ⅒1/10"
	if r < 0x80 {
		return nil
	}
	for entry := range strings.SplitSeq(table, " ") {
		if f, ok := strings.CutPrefix(entry, string(r)); ok {
			v, _ := new(big.Rat).SetString(f)
			return v
		}
	}
	return nil
}
