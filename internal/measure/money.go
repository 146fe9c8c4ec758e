package measure

import (
	"strconv"
	"strings"
	"unicode"
)

// mostCents keeps sums of amounts far within int64: ten milliard.
const mostCents = 1_000_000_000_000

const moneyLike = "write it like 68, 68.50 or 1 240.00"

// ParseMoney reads an amount in the shop's currency: 68, 68.50, 1 240.00,
// 1,240.00, 68,50, -12. Thousands are grouped by spaces or commas or not at
// all; cents have one or two digits behind a point, or behind a comma when
// that cannot group thousands. No currency sign is read. Anything else, or
// an amount beyond ten milliard, is a *ParseError.
func ParseMoney(text string) (Money, error) {
	p := parser{text: text}
	if len(text) > maxText {
		return 0, p.wrong(0, "this is far too long for an amount", moneyLike)
	}
	p.space()
	start := p.pos
	neg := p.sign()
	body := strings.TrimRightFunc(text[p.pos:], unicode.IsSpace)
	whole, cents := pointOff(body)
	n, ok := ungroup(whole)
	c, alright := centsOf(cents)
	if !ok || !alright || n > mostCents/100 {
		return 0, p.wrong(start, quote(text)+" is not an amount of money", moneyLike)
	}
	m := Money(100*n + c)
	if neg {
		m = -m
	}
	return m, nil
}

// pointOff parts an amount at its decimal point or comma, which stays with the
// cents.
func pointOff(s string) (whole, cents string) {
	i := strings.LastIndexAny(s, ".,")
	if i < 0 || s[i] == ',' && len(s)-i == 4 {
		return s, ""
	}
	return s[:i], s[i:]
}

// ungroup reads whole units whose thousands may be grouped, all by one sign.
func ungroup(s string) (int64, bool) {
	var by rune
	groups := strings.FieldsFunc(s, func(r rune) bool {
		if r != ',' && !unicode.IsSpace(r) {
			return false
		}
		if by == 0 {
			by = r
		}
		return r == by
	})
	if len(groups) == 0 || by != 0 && strings.Count(s, string(by)) != len(groups)-1 {
		return 0, false
	}
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && len(groups) > 1 && len(g) > 3 {
			return 0, false
		}
	}
	return plainDigits(strings.Join(groups, ""))
}

func centsOf(s string) (int64, bool) {
	switch len(s) {
	case 0:
		return 0, true
	case 2:
		return plainDigits(s[1:] + "0")
	case 3:
		return plainDigits(s[1:])
	}
	return 0, false
}

func plainDigits(s string) (int64, bool) {
	if strings.Trim(s, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.ParseInt(s, 10, 64)
	return n, err == nil
}

// Format prints the amount with its cents and grouped thousands: "1 240.00".
func (m Money) Format() string {
	cents := magnitude(int64(m))
	digits := strconv.FormatUint(cents/100, 10)
	var b strings.Builder
	if m < 0 {
		b.WriteByte('-')
	}
	for i := range len(digits) {
		if i > 0 && (len(digits)-i)%3 == 0 {
			b.WriteByte(' ')
		}
		b.WriteByte(digits[i])
	}
	b.WriteByte('.')
	b.WriteByte(byte('0' + cents%100/10))
	b.WriteByte(byte('0' + cents%10))
	return b.String()
}

// MulDiv is m × num / den, rounded once to the cent and half to the even one:
// the one place where money is rounded. It behaves as [Length.MulDiv] does.
func (m Money) MulDiv(num, den int64) Money { return Money(Length(m).MulDiv(num, den)) }

// For is what work at this hourly rate comes to, rounded as MulDiv rounds.
func (m Money) For(worked WorkTime) Money { return m.MulDiv(int64(worked), int64(Hour)) }

// WorkTime is time spent at work, in whole seconds. It is counted rather than
// measured in fractions of an hour, so that hours times rate is exact.
type WorkTime int64

// The units that work is counted in.
const (
	Second WorkTime = 1
	Minute          = 60 * Second
	Hour            = 60 * Minute
)

// Hours is the time in hours.
func (w WorkTime) Hours() float64 { return float64(w) / float64(Hour) }
