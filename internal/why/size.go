package why

import (
	"slices"

	"casewright/internal/diag"
	"casewright/internal/measure"
)

// Kind says where a size comes from. Typed, derived and measured sizes look
// different wherever they are shown.
type Kind uint8

const (
	// Missing is the kind of the zero Size.
	Missing Kind = iota
	// Typed stands in the design text.
	Typed
	// Default is used because the text is silent.
	Default
	// Measured was read off the rule at the bench.
	Measured
	// Derived follows from other sizes.
	Derived
)

// String is the word shown beside the size.
func (k Kind) String() string {
	switch k {
	case Typed:
		return "typed"
	case Default:
		return "default"
	case Measured:
		return "measured"
	case Derived:
		return "derived"
	}
	return "missing"
}

// Size is a length that can say why. The zero Size is not given and has length 0.
type Size struct{ n *node }

type node struct {
	name   string
	value  measure.Length
	kind   Kind
	at     diag.Span
	text   string // as typed, or the rule in words
	source string // who says so, for defaults and rules
	terms  []Term
	rule   bool // value comes from a rule, not from adding the terms
}

// Term is a size taken a whole number of times in a sum; negative takes away.
type Term struct {
	Times int64
	Of    Size
}

// Plus takes s once.
func Plus(s Size) Term { return Term{1, s} }

// Minus takes s away once.
func Minus(s Size) Term { return Term{-1, s} }

// Times takes s n times.
func Times(n int64, s Size) Term { return Term{n, s} }

// Given is a size that stands in the text at the span, as typed.
func Given(name string, v measure.Length, at diag.Span, typed string) Size {
	return Size{&node{name: name, value: v, kind: Typed, at: at, text: typed}}
}

// Usual is a default: used because the text is silent. The source is a
// published title, or "common practice, no source".
func Usual(name string, v measure.Length, source string) Size {
	return Size{&node{name: name, value: v, kind: Default, source: source}}
}

// Read is a size measured at the bench.
func Read(name string, v measure.Length, at diag.Span, typed string) Size {
	return Size{&node{name: name, value: v, kind: Measured, at: at, text: typed}}
}

// Sum adds its terms. Terms that are not given count as nothing and are left
// out of the explanation.
func Sum(name string, terms ...Term) Size {
	var total measure.Length
	kept := make([]Term, 0, len(terms))
	for _, t := range terms {
		if t.Of.n == nil || t.Times == 0 {
			continue
		}
		total += measure.Length(t.Times) * t.Of.n.value
		kept = append(kept, t)
	}
	return Size{&node{name: name, value: total, kind: Derived, terms: kept}}
}

// Rule is the outcome of anything that is not a plain sum: a share, a
// movement, a chord and rise. The rule is said in words with its source;
// inputs are the sizes it started from.
func Rule(name string, v measure.Length, rule, source string, inputs ...Size) Size {
	terms := make([]Term, 0, len(inputs))
	for _, s := range inputs {
		if s.n != nil {
			terms = append(terms, Plus(s))
		}
	}
	return Size{&node{name: name, value: v, kind: Derived, text: rule, source: source, terms: terms, rule: true}}
}

// Written is the same size with the text it stands in: a sum somebody wrote
// (inset - side) keeps its terms and points at the sum, not at its terms.
func (s Size) Written(at diag.Span, typed string) Size {
	if s.n == nil {
		return s
	}
	n := *s.n
	n.at, n.text = at, typed
	return Size{&n}
}

// Named is the same size under another name, with s as its father.
func (s Size) Named(name string) Size {
	if s.n == nil || s.n.name == name {
		return s
	}
	return Sum(name, Plus(s))
}

// Length is the value; 0 when the size is not given.
func (s Size) Length() measure.Length {
	if s.n == nil {
		return 0
	}
	return s.n.value
}

// Given reports whether the size has a value at all.
func (s Size) Given() bool { return s.n != nil }

// Or is s where it is given, else other.
func (s Size) Or(other Size) Size {
	if s.n != nil {
		return s
	}
	return other
}

// Kind says where the size comes from.
func (s Size) Kind() Kind {
	if s.n == nil {
		return Missing
	}
	return s.n.kind
}

// Name is what the size is called.
func (s Size) Name() string {
	if s.n == nil {
		return ""
	}
	return s.n.name
}

// At is the text behind the size: its own place if it was typed or measured,
// else that of the first father that has one.
func (s Size) At() diag.Span {
	if s.n == nil {
		return diag.Span{}
	}
	if !s.n.at.IsZero() {
		return s.n.at
	}
	for _, t := range s.n.terms {
		if at := t.Of.At(); !at.IsZero() {
			return at
		}
	}
	return diag.Span{}
}

// Terms are what the size adds up, or nil where it is no plain sum.
func (s Size) Terms() []Term {
	if s.n == nil || s.n.rule {
		return nil
	}
	return slices.Clone(s.n.terms)
}

// TypedAs is the size as it was written by hand, or "".
func (s Size) TypedAs() string {
	if s.n == nil || s.n.rule || (s.n.kind != Typed && s.n.kind != Measured) {
		return ""
	}
	return s.n.text
}
