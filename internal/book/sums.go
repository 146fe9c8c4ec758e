package book

import (
	"strconv"
	"strings"

	"casewright/internal/measure"
	"casewright/internal/why"
)

// origin is the sum a size comes from, or how it came into the text. A sum
// whose printed figures miss the printed size, because each was rounded, says
// so.
func (m *maker) origin(s why.Size) string {
	if sum := s.Sum(m.fine.Format); sum != "" {
		if l, ok := m.worth(sum); ok && l != m.p.Shown(s) {
			sum += ", before rounding"
		}
		return sum
	}
	switch r := s.Root(); r.Kind() {
	case why.Typed, why.Measured:
		return r.Kind().String() + ": " + r.TypedAs()
	case why.Default:
		return "the usual"
	}
	return ""
}

// worth adds up a printed sum such as “8 23/32 + 2 × 1 3/16”; ok is false for
// words.
func (m *maker) worth(sum string) (total measure.Length, ok bool) {
	sign := measure.Length(1)
	for i, term := range splitSum(sum) {
		switch {
		case i%2 == 1 && term == "+":
			sign = 1
			continue
		case i%2 == 1:
			sign = -1
			continue
		}
		l, ok := m.term(term)
		if !ok {
			return 0, false
		}
		total += sign * l
	}
	return total, true
}

// splitSum parts a sum into terms with the signs between them.
func splitSum(sum string) []string {
	var out []string
	for {
		plus, minus := strings.Index(sum, " + "), strings.Index(sum, " − ")
		at, sign := plus, "+"
		if at < 0 || (minus >= 0 && minus < at) {
			at, sign = minus, "−"
		}
		if at < 0 {
			return append(out, sum)
		}
		out = append(out, sum[:at], sign)
		sum = sum[at+len(" "+sign+" "):]
	}
}

// term reads “2 × 1 3/16” or “−3/4”.
func (m *maker) term(text string) (measure.Length, bool) {
	times := int64(1)
	if rest, negative := strings.CutPrefix(text, "−"); negative {
		times, text = -1, rest
	}
	if n, rest, found := strings.Cut(text, " × "); found {
		k, err := strconv.ParseInt(n, 10, 32)
		if err != nil {
			return 0, false
		}
		times, text = times*k, rest
	}
	l, err := measure.ParseLength(text, m.fine.Unit)
	return measure.Length(times) * l, err == nil
}
