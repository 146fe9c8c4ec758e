package design

import (
	"math/big"
	"slices"
	"strconv"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// The kinds of attributes, in the words the documentation and messages use.
const (
	KindLength      = "length"
	KindLengths     = "list of lengths"
	KindText        = "text"
	KindTexts       = "list of texts"
	KindNumber      = "number"
	KindCount       = "whole number"
	KindFlag        = "yes or no"
	KindChoice      = "one of"
	KindHumidity    = "humidity in %"
	KindTemperature = "temperature"
	KindSlope       = "slope"
	KindAngle       = "angle"
	KindMoney       = "amount of money"
	KindGraduation  = "graduation of a rule"
	KindName        = "name"
	KindColor       = "colour"
)

// settings are what options of an attribute set.
type settings struct {
	Attribute
	limits limits
	number struct{ least, most float64 }
}

type option func(*settings)

// usual says in words what holds when the attribute is not given.
func usual(words string) option { return func(s *settings) { s.Usual = words } }

// required marks an attribute that must be given.
func required(s *settings) { s.Required = true }

// orZero lets a length be 0.
func orZero(s *settings) { s.limits.least = 0 }

// signed lets a length be negative.
func signed(s *settings) { s.limits.least = -largestSize }

// fromTo bounds a number.
func fromTo(least, most float64) option {
	return func(s *settings) { s.number.least, s.number.most = least, most }
}

func choices(words ...string) option { return func(s *settings) { s.Choices = words } }

func newSettings(name, kind, doc, example string, opts []option) *settings {
	s := &settings{Attribute: Attribute{Name: name, Kind: kind, Doc: doc, Example: example}}
	s.limits = limits{smallestSize, largestSize}
	s.number.most = 1e9
	for _, o := range opts {
		o(s)
	}
	return s
}

// lengthAt is a length kept in a why.Size.
func lengthAt[T any](name, doc, example string, at func(*T) *why.Size, opts ...option) attr[T] {
	s := newSettings(name, KindLength, doc, example, opts)
	return attr[T]{
		Attribute: s.Attribute,
		read: func(r *reader, t *T, e expr) {
			if size, ok := r.typedSize(&s.Attribute, s.limits, e); ok {
				*at(t) = size
			}
		},
		fill: func(dst, src *T) { *at(dst) = at(dst).Or(*at(src)) },
	}
}

// lengthsAt is a list of lengths, of a given number of members if many > 0.
func lengthsAt[T any](name, doc, example string, many int, at func(*T) *[]why.Size, opts ...option) attr[T] {
	s := newSettings(name, KindLengths, doc, example, opts)
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		v := r.eval(e)
		if v.sort == aFault {
			return
		}
		if v.sort != aList || many > 0 && len(v.list) != many {
			d := diag.Diagnostic{Code: "E209", Subject: e.span(), Summary: name + " takes a list of lengths, not " + v.sort.String()}
			if v.sort == aList {
				d.Summary = name + " takes " + plural(many, "length") + ", not " + strconv.Itoa(len(v.list))
			}
			d.Detail = "Write " + name + " = " + example + "."
			r.diags.add(d)
			return
		}
		for _, x := range v.list {
			if size, ok := r.typedSize(&s.Attribute, s.limits, expr{e.f, x}); ok {
				*at(t) = append(*at(t), size)
			}
		}
	}}
}

// wordsAt is the shape of all attributes kept in a Text.
func wordsAt[T any](s *settings, at func(*T) *Text, check func(r *reader, said Text, e expr) bool) attr[T] {
	return attr[T]{
		Attribute: s.Attribute,
		read: func(r *reader, t *T, e expr) {
			said, ok := r.words(&s.Attribute, e)
			if ok && (check == nil || check(r, said, e)) {
				*at(t) = said
			}
		},
		fill: func(dst, src *T) {
			if !at(dst).Given() {
				*at(dst) = *at(src)
			}
		},
	}
}

// words evaluates text in quotes. A bare word is most often text whose quotes
// were forgotten.
func (r *reader) words(a *Attribute, e expr) (Text, bool) {
	if word, bare := e.bareWord(); bare && r.names[word] == nil {
		d := diag.Diagnostic{Code: "E209", Subject: e.span(), Summary: a.Name + " takes text, and text stands in quotes",
			Detail: "Write " + a.Name + " = " + inQuotes(word) + ".",
			Edits:  []diag.Edit{{Span: e.span(), Text: inQuotes(word), Says: "write " + inQuotes(word)}}}
		r.diags.add(d)
		return Text{}, false
	}
	v := r.eval(e)
	switch {
	case v.sort == aFault:
		return Text{}, false
	case v.sort != aText:
		r.wrongKind(a, e, v)
		return Text{}, false
	case strings.TrimSpace(v.text) == "":
		r.diags.add(diag.Diagnostic{Code: "E209", Subject: e.span(), Summary: a.Name + " is empty",
			Detail: "Say something, or take the line away."})
		return Text{}, false
	}
	return Text{v.text, e.span()}, true
}

func textAt[T any](name, doc, example string, at func(*T) *Text, opts ...option) attr[T] {
	return wordsAt(newSettings(name, KindText, doc, example, opts), at, nil)
}

// choiceAt is one of a few words.
func choiceAt[T any](name, doc string, at func(*T) *Text, opts ...option) attr[T] {
	s := newSettings(name, KindChoice, doc, "", opts)
	s.Example = inQuotes(s.Choices[0])
	return wordsAt(s, at, func(r *reader, said Text, e expr) bool {
		if slices.Contains(s.Choices, said.Value) {
			return true
		}
		d := diag.Diagnostic{Code: "E210", Subject: said.At, Summary: name + " cannot be " + quote(clipped(said.Value)),
			Detail: "It is one of " + choiceWords(s.Choices) + "."}
		didYouMean(&d, said.Value, s.Choices, inQuotes)
		r.diags.add(d)
		return false
	})
}

// refers is the name of something that has a block elsewhere; kinds are the
// block types it may name.
func refers[T any](name, doc, example string, at func(*T) *Text, kinds []string, opts ...option) attr[T] {
	s := newSettings(name, KindName+" of a "+listed(kinds, "or"), doc, example, opts)
	return wordsAt(s, at, func(r *reader, said Text, e expr) bool {
		r.refs = append(r.refs, ref{name, said, kinds})
		return true
	})
}

// woodAt names a wood block or a species.
func woodAt[T any](doc string, at func(*T) *Text, opts ...option) attr[T] {
	return wordsAt(newSettings("wood", KindName+" of a wood or species", doc, `"cherry"`, opts), at, nil)
}

func colorAt[T any](name, doc string, at func(*T) *Text, opts ...option) attr[T] {
	return wordsAt(newSettings(name, KindColor, doc, `"#a0623a"`, opts), at, func(r *reader, said Text, e expr) bool {
		if len(said.Value) == 7 && said.Value[0] == '#' && isHex([]byte(said.Value[1:])) {
			return true
		}
		r.diags.add(diag.Diagnostic{Code: "E209", Subject: said.At, Summary: quote(clipped(said.Value)) + " is not a colour",
			Detail: "Write it as \"#rrggbb\", two hexadecimal digits each for red, green and blue."})
		return false
	})
}

func textsAt[T any](name, doc, example string, at func(*T) *[]Text, opts ...option) attr[T] {
	s := newSettings(name, KindTexts, doc, example, opts)
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		v := r.eval(e)
		if v.sort != aList {
			if v.sort != aFault {
				r.wrongKind(&s.Attribute, e, v)
			}
			return
		}
		for _, x := range v.list {
			if said, ok := r.words(&s.Attribute, expr{e.f, x}); ok {
				*at(t) = append(*at(t), said)
			}
		}
	}}
}

// plain evaluates a bare number within its bounds; unit ends a message that
// quotes a bound.
func (r *reader) plain(s *settings, e expr, whole bool) (*big.Rat, bool) {
	v := r.eval(e)
	if v.sort == aFault {
		return nil, false
	}
	if v.sort != aNumber {
		r.wrongKind(&s.Attribute, e, v)
		return nil, false
	}
	f, _ := v.num.Float64()
	d := diag.Diagnostic{Code: "E217", Subject: e.span()}
	switch {
	case whole && !v.num.IsInt():
		d.Summary, d.Detail = s.Name+" is a whole number", "It is "+e.typed()+"."
	case f < s.number.least:
		d.Summary, d.Detail = s.Name+" cannot be less than "+floatText(s.number.least), "It is "+e.typed()+"."
	case f > s.number.most:
		d.Summary, d.Detail = s.Name+" cannot be more than "+floatText(s.number.most), "It is "+clipped(e.typed())+"."
	default:
		return v.num, true
	}
	r.diags.add(d)
	return nil, false
}

func floatText(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// numberAt is a number; countAt a whole one.
func numberAt[T any](name, doc, example string, at func(*T) *Number, opts ...option) attr[T] {
	return numeral(newSettings(name, KindNumber, doc, example, opts), at, false)
}

func countAt[T any](name, doc, example string, at func(*T) *Number, opts ...option) attr[T] {
	return numeral(newSettings(name, KindCount, doc, example, opts), at, true)
}

func numeral[T any](s *settings, at func(*T) *Number, whole bool) attr[T] {
	return attr[T]{
		Attribute: s.Attribute,
		read: func(r *reader, t *T, e expr) {
			if n, ok := r.plain(s, e, whole); ok {
				f, _ := n.Float64()
				*at(t) = Number{f, true, e.span()}
			}
		},
		fill: func(dst, src *T) {
			if !at(dst).Set {
				*at(dst) = *at(src)
			}
		},
	}
}

func flagAt[T any](name, doc string, at func(*T) *Flag, opts ...option) attr[T] {
	s := newSettings(name, KindFlag, doc, "true", opts)
	return attr[T]{
		Attribute: s.Attribute,
		read: func(r *reader, t *T, e expr) {
			v := r.eval(e)
			switch v.sort {
			case aFault:
			case aFlag:
				*at(t) = Flag{v.flag, true, e.span()}
			default:
				r.wrongKind(&s.Attribute, e, v)
			}
		},
		fill: func(dst, src *T) {
			if !at(dst).Set {
				*at(dst) = *at(src)
			}
		},
	}
}

func humidityAt[T any](name, doc, example string, at func(*T) *measure.Humidity, opts ...option) attr[T] {
	s := newSettings(name, KindHumidity, doc, example, append([]option{fromTo(0, 100)}, opts...))
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		if n, ok := r.plain(s, e, false); ok {
			f, _ := n.Float64()
			*at(t) = measure.Humidity(f)
		}
	}}
}

// temperatureAt takes a bare number in the scale that goes with the
// commission's unit, or text with its scale: "21 C".
func temperatureAt[T any](name, doc, example string, at func(*T) *measure.Temperature, opts ...option) attr[T] {
	s := newSettings(name, KindTemperature, doc, example, opts)
	s.number.least, s.number.most = -100, 200
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		v := r.eval(e)
		degrees, fahrenheit := 0.0, r.unit == measure.Inches
		switch v.sort {
		case aFault:
			return
		case aNumber:
			n, ok := r.plain(s, e, false)
			if !ok {
				return
			}
			degrees, _ = n.Float64()
		case aText:
			var ok bool
			if degrees, fahrenheit, ok = scaleOf(v.text); !ok {
				r.diags.add(diag.Diagnostic{Code: "E218", Subject: e.span(), Summary: quote(clipped(v.text)) + " is not a temperature",
					Detail: "Write it as \"70 F\" or \"21 C\"."})
				return
			}
		default:
			r.wrongKind(&s.Attribute, e, v)
			return
		}
		if fahrenheit {
			degrees = (degrees - 32) * 5 / 9
		}
		if degrees < -40 || degrees > 60 {
			r.diags.add(diag.Diagnostic{Code: "E217", Subject: e.span(), Summary: name + " is no air that furniture stands in",
				Detail: "It comes to " + strconv.FormatFloat(degrees, 'f', 0, 64) + " °C. Bare numbers are °F in an inch commission and °C in a millimetre one."})
			return
		}
		*at(t) = measure.Temperature(degrees)
	}}
}

func scaleOf(said string) (degrees float64, fahrenheit, ok bool) {
	said = strings.TrimSpace(said)
	figure := strings.TrimRight(said, "CFcf")
	scale := strings.ToUpper(said[len(figure):])
	figure = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(figure), "°"))
	degrees, err := strconv.ParseFloat(figure, 64)
	return degrees, scale == "F", err == nil && (scale == "F" || scale == "C") && degrees > -200 && degrees < 400
}

func moneyAt[T any](name, doc, example string, at func(*T) *measure.Money, opts ...option) attr[T] {
	s := newSettings(name, KindMoney, doc, example, append([]option{fromTo(0, 1e7)}, opts...))
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		if n, ok := r.plain(s, e, false); ok {
			cents, _ := new(big.Rat).Mul(n, big.NewRat(100, 1)).Float64()
			*at(t) = measure.Money(cents + 0.5)
		}
	}}
}

// graduationAt is what a rule is divided into.
func graduationAt[T any](name, doc, example string, at func(*T) *measure.Graduation, opts ...option) attr[T] {
	s := newSettings(name, KindGraduation, doc, example, opts)
	s.limits = limits{measure.Millimetre / 100, measure.Inch}
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		if size, ok := r.typedSize(&s.Attribute, s.limits, e); ok {
			*at(t) = measure.Graduation(size.Length())
		}
	}}
}
