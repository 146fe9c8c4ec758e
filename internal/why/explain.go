package why

import (
	"fmt"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/measure"
)

// Line is one step of an explanation, indented by Depth.
type Line struct {
	Depth   int
	Name    string         // what the size is called
	Called  string         // what the sum above it calls it
	Value   measure.Length // its value
	Kind    Kind
	Names   string    // the sum in names: "case width − 2 × side"
	Figures string    // the same sum in figures: "20 1/2 − 2 × 9/16"
	Rule    string    // the rule in words, where it is not a plain sum
	Source  string    // who says so
	At      diag.Span // the text behind it, for typed and measured sizes
	Typed   string    // as written by hand
}

// Explain tells how the size came about, fathers below sons, each father once.
// format prints one length. Depth is limited to deep levels; 0 means all.
func (s Size) Explain(format func(measure.Length) string, deep int) []Line {
	var lines []Line
	seen := map[*node]bool{}
	var walk func(s Size, depth int)
	walk = func(s Size, depth int) {
		called := s.Name() // as the sum above calls it, whatever its root is called
		s = s.Root()
		if s.n == nil || seen[s.n] || (deep > 0 && depth > deep) {
			return
		}
		seen[s.n] = true
		l := s.n.line(depth, format)
		l.Called = called
		if depth == 0 {
			l.Name = called
		}
		lines = append(lines, l)
		for _, t := range s.n.terms {
			walk(t.Of, depth+1)
		}
	}
	walk(s, 0)
	return lines
}

// Root is the size that s only renames, or s itself: two sizes with one root
// are one size under two names.
func (s Size) Root() Size {
	for s.n != nil && !s.n.rule && len(s.n.terms) == 1 && s.n.terms[0].Times == 1 {
		s = s.n.terms[0].Of
	}
	return s
}

func (n *node) line(depth int, format func(measure.Length) string) Line {
	l := Line{Depth: depth, Name: n.name, Value: n.value, Kind: n.kind, Source: n.source, At: n.at}
	switch {
	case n.rule:
		l.Rule = n.text
	case len(n.terms) > 0:
		l.Names = n.join(func(s Size) string { return s.n.name })
		l.Figures = n.join(func(s Size) string { return format(s.n.value) })
	default:
		l.Typed = n.text
	}
	return l
}

func (n *node) join(show func(Size) string) string {
	var b strings.Builder
	for i, t := range n.terms {
		times := t.Times
		switch {
		case times < 0 && i == 0:
			b.WriteString("−")
		case times < 0:
			b.WriteString(" − ")
		case i > 0:
			b.WriteString(" + ")
		}
		if times < 0 {
			times = -times
		}
		if times != 1 {
			fmt.Fprintf(&b, "%d × ", times)
		}
		b.WriteString(show(t.Of))
	}
	return b.String()
}

// Sum is the size's sum in figures on one line, or the rule in words, or "".
func (s Size) Sum(format func(measure.Length) string) string {
	s = s.Root()
	switch {
	case s.n == nil:
		return ""
	case s.n.rule:
		return s.n.text
	case len(s.n.terms) > 0:
		return s.n.join(func(s Size) string { return format(s.n.value) })
	}
	return ""
}
