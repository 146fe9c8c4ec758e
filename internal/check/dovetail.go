package check

import (
	"fmt"
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
)

// alternative reports the problems for which a dovetail layout may carry
// another that has none.
func alternative(code string) bool {
	return code == "dovetail.rabbet-tail" || code == "dovetail.groove-pin"
}

// attributes are the numbers of the text that shape a row of dovetails.
type attributes struct {
	at, slope diag.Span
	tails     design.Number
	halfPin   why.Size
	lap       why.Size
	block     string // "corners" or "drawer"
}

// attributes finds what the text says about a joint's dovetails.
func (r *run) attributes(j *piece.Joint) attributes {
	if o := j.A.Assembly.Opening; o != nil && o.Fill.Drawer != nil {
		d := o.Fill.Drawer
		return attributes{at: d.At, tails: d.Tails, lap: d.Lap, block: "drawer"}
	}
	for _, c := range r.p.Spec.Cases {
		if c.Name == j.A.Assembly.Path && j.A.Assembly.Kind == piece.CaseAssembly {
			k := c.Corners
			return attributes{at: k.At, tails: k.Tails, halfPin: k.HalfPin, lap: k.Lap, block: "corners"}
		}
	}
	return attributes{}
}

// offer adds the layout that keeps rabbets and grooves out of the pins, and
// the change of the text that gives it. Only a change that was laid out again
// and found clean is offered as an edit.
func (r *run) offer(d *diag.Diagnostic, j *piece.Joint) {
	l := j.Dovetail
	if l == nil || l.Alternative == nil {
		return
	}
	alt := l.Alternative
	a := r.attributes(j)
	d.Detail = "Laid out as " + r.layout(alt) + " it would be hidden (now " + r.layout(l) + "). Or stop the rabbet or groove before the corner."
	pin, text := r.literal(alt.HalfPin)
	switch {
	case a.halfPin.Kind() == why.Typed && clean(l, len(l.Tails), pin):
		d.Edits = []diag.Edit{{Span: a.halfPin.At(), Text: text, Says: "half pins of " + r.style.FormatUnit(pin)}}
	case a.tails.Set && !a.tails.At.IsZero() && clean(l, len(alt.Tails), a.halfPin.Length()):
		d.Edits = []diag.Edit{{Span: a.tails.At, Text: fmt.Sprint(len(alt.Tails)), Says: fmt.Sprintf("%d tails", len(alt.Tails))}}
	case a.block == "corners":
		d.Detail += " To get it write tails = " + fmt.Sprint(len(alt.Tails)) + " and half_pin = " + text + " in corners."
	case a.block == "drawer" && len(alt.Tails) != len(l.Tails):
		d.Detail += " To get it write tails = " + fmt.Sprint(len(alt.Tails)) + " in the drawer."
	}
}

// clean lays the same corner out with other numbers and reports whether
// nothing runs through a pin.
func clean(l *joinery.DovetailLayout, tails int, halfPin measure.Length) bool {
	got, problems := joinery.LayDovetails(joinery.DovetailSpec{Width: l.Width, TailStock: l.TailStock, PinStock: l.PinStock,
		Slope: l.Slope, Lap: l.Lap, Tails: tails, HalfPin: halfPin, Runs: l.Runs})
	for _, p := range problems {
		if p.Grade >= diag.Stop || alternative(p.Code) {
			return false
		}
	}
	return len(got.Tails) > 0
}

// layout tells a row of dovetails by what is marked out first: half pins and
// tails at the tip, from the front edge.
func (r *run) layout(l *joinery.DovetailLayout) string {
	if len(l.Pins) == 0 {
		return "nothing"
	}
	tails := make([]measure.Length, len(l.Tails))
	for i, t := range l.Tails {
		tails[i] = t.Tip()
	}
	out := "half pins " + r.style.Format(l.Pins[0].Tip())
	if last := l.Pins[len(l.Pins)-1].Tip(); last != l.Pins[0].Tip() {
		out += " and " + r.style.Format(last)
	}
	return out + ", tails " + r.row(tails)
}

// row tells sizes in a row, equal neighbours together: "2 × 15/16, 31/32".
func (r *run) row(sizes []measure.Length) string {
	var out []string
	for i := 0; i < len(sizes); {
		n := 1
		for i+n < len(sizes) && sizes[i+n] == sizes[i] {
			n++
		}
		word := r.style.Format(sizes[i])
		if n > 1 {
			word = fmt.Sprintf("%d × %s", n, word)
		}
		out = append(out, word)
		i += n
	}
	return strings.Join(out, ", ")
}
