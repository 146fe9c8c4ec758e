package design

import (
	"math/big"
	"strconv"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/measure"
)

// slopeAt is a dovetail's slope: "1:8", or the bare fraction 1/8.
func slopeAt[T any](name, doc string, at func(*T) (*measure.Slope, *bool), opts ...option) attr[T] {
	s := newSettings(name, KindSlope, doc, `"1:8"`, opts)
	return attr[T]{
		Attribute: s.Attribute,
		read: func(r *reader, t *T, e expr) {
			if slope, ok := r.slope(&s.Attribute, e); ok {
				to, has := at(t)
				*to, *has = slope, true
			}
		},
		fill: func(dst, src *T) {
			to, has := at(dst)
			from, given := at(src)
			if !*has && *given {
				*to, *has = *from, true
			}
		},
	}
}

func (r *reader) slope(a *Attribute, e expr) (measure.Slope, bool) {
	v := r.eval(e)
	said := v.text
	switch {
	case v.sort == aFault:
		return measure.Slope{}, false
	case v.sort == aNumber && v.num.Sign() > 0:
		said = "1:" + new(big.Rat).Inv(v.num).FloatString(4)
	case v.sort != aText:
		r.wrongKind(a, e, v)
		return measure.Slope{}, false
	}
	slope, err := measure.ParseSlope(said)
	if err != nil {
		r.diags.add(diag.Diagnostic{Code: "E218", Subject: e.span(), Summary: quote(clipped(strings.Trim(e.typed(), `"`))) + " is not a slope",
			Detail: "Write a dovetail's slope as \"1:8\": one across to eight along."})
		return measure.Slope{}, false
	}
	return slope, true
}

// angleAt is an angle in degrees, bare or as "45 deg".
func angleAt[T any](name, doc, example string, at func(*T) *measure.Angle, opts ...option) attr[T] {
	s := newSettings(name, KindAngle, doc, example, append([]option{fromTo(0, 90)}, opts...))
	return attr[T]{Attribute: s.Attribute, read: func(r *reader, t *T, e expr) {
		v := r.eval(e)
		var degrees float64
		switch v.sort {
		case aFault:
			return
		case aText:
			var ok bool
			if degrees, ok = degreesOf(v.text); !ok || degrees < s.number.least || degrees > s.number.most {
				r.diags.add(diag.Diagnostic{Code: "E218", Subject: e.span(), Summary: quote(clipped(v.text)) + " is not an angle",
					Detail: "Write it as \"45 deg\", from " + floatText(s.number.least) + " to " + floatText(s.number.most) + "."})
				return
			}
		default:
			n, ok := r.plain(s, e, false)
			if !ok {
				return
			}
			degrees, _ = n.Float64()
		}
		*at(t) = measure.Degrees(degrees)
	}}
}

func degreesOf(said string) (float64, bool) {
	figure := strings.TrimSpace(said)
	for _, unit := range []string{"degrees", "deg", "°"} {
		if cut, ok := strings.CutSuffix(figure, unit); ok {
			figure = strings.TrimSpace(cut)
			break
		}
	}
	d, err := strconv.ParseFloat(figure, 64)
	return d, err == nil && d == d
}
