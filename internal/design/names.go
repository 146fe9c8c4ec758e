package design

import (
	"bytes"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/why"

	"github.com/hashicorp/hcl/v2"
)

// name is a named size from a sizes block.
type name struct {
	name  string
	e     expr
	label hcl.Range // where the name itself stands
	state nameState
	value value
	size  why.Size
	used  bool
}

type nameState uint8

const (
	untouched nameState = iota
	underway            // being worked out: meeting it again is a circle
	known
)

// named is the value of a name used in an expression.
func (r *reader) named(e expr, called string) value {
	n := r.names[called]
	if n == nil {
		return r.unknownName(e, called)
	}
	n.used = true
	r.settle(n)
	if n.value.sort == aFault {
		return value{}
	}
	v := value{sort: n.value.sort, num: n.value.num, named: true}
	if n.size.Given() {
		v.sum = []term{{times: 1, of: n}}
	}
	return v
}

// settle works a name out, and whatever it needs before it.
func (r *reader) settle(n *name) {
	switch n.state {
	case known:
		return
	case underway:
		r.circle(n)
		return
	}
	n.state = underway
	r.path = append(r.path, n)
	v := r.eval(n.e)
	switch v.sort {
	case aText:
		v = r.lengthText(n.e, v.text)
	case aFlag, aList:
		v = r.broken(diag.Diagnostic{Code: "E209", Subject: n.e.span(),
			Summary: "a named size is a length or a number, not " + v.sort.String(),
			Detail:  "Write it as 20 1/2, \"520 mm\" or a sum."})
	}
	r.path = r.path[:len(r.path)-1]
	if n.state == known { // a circle was found on the way
		return
	}
	n.state, n.value = known, v
	r.slippedFractions(n.e)
	if v.sort != aFault {
		if l, ok := r.toLength(v.num); ok {
			n.size = r.size(n.name, v, l, n.e)
		}
	}
}

// circle reports names that need each other, all of them at once.
func (r *reader) circle(n *name) {
	from := len(r.path) - 1
	for from > 0 && r.path[from] != n {
		from--
	}
	loop := r.path[from:]
	d := diag.Diagnostic{Code: "E212", Subject: n.e.f.at(n.label),
		Detail: "Give one of them a size that does not need the others."}
	words := make([]string, 0, len(loop)+1)
	for i, m := range loop {
		words = append(words, m.name)
		if i > 0 && i < 10 {
			d.Related = append(d.Related, diag.Related{Span: m.e.f.at(m.label), Message: m.name + " = " + clipped(m.e.typed())})
		}
		m.state, m.value = known, value{}
	}
	if len(words) > 10 {
		words = append(words[:9:9], "…", words[len(words)-1])
	}
	words = append(words, n.name)
	d.Summary = "these sizes need each other: " + strings.Join(words, " → ")
	if len(loop) == 1 {
		d.Summary, d.Detail = "the size "+quote(n.name)+" is made from itself", "Give it a size of its own."
	}
	r.diags.add(d)
}

func (r *reader) unknownName(e expr, called string) value {
	if r.lost(called) {
		return value{}
	}
	d := diag.Diagnostic{Code: "E211", Subject: e.span(), Summary: "there is no size called " + quote(clipped(called))}
	d.Detail = "Name it in a sizes block, or put quotes round it if it is text."
	if left, _, cut := strings.Cut(called, "-"); cut && r.names[left] != nil {
		apart := strings.ReplaceAll(called, "-", " - ")
		d.Detail = "A minus needs blanks round it: " + apart + "."
		d.Edits = []diag.Edit{{Span: d.Subject, Text: apart, Says: "put blanks round the minus"}}
		return r.broken(d)
	}
	switch called {
	case "yes", "on":
		d.Detail, d.Edits = "Write true for yes.", []diag.Edit{{Span: d.Subject, Text: "true", Says: "write true"}}
	case "no", "off":
		d.Detail, d.Edits = "Write false for no.", []diag.Edit{{Span: d.Subject, Text: "false", Says: "write false"}}
	default:
		didYouMean(&d, called, r.nameOrder, asIs)
	}
	return r.broken(d)
}

// lost tells whether a word stands on a line that could not be read: then it
// may well be defined there, and that it is unknown follows from the other fault.
func (r *reader) lost(word string) bool {
	for _, f := range r.files {
		for _, fault := range f.scan.faults {
			from, _ := f.lineOf(fault.start)
			_, to := f.lineOf(min(fault.end, len(f.text)))
			if bytes.Contains(f.text[from:min(to, len(f.text))], []byte(word)) {
				return true
			}
		}
	}
	return false
}

// unusedNames notes names that nothing uses, for one of the two is likely a slip.
func (r *reader) unusedNames() {
	if r.diags.list.Has(diag.Error) {
		return // what was not understood may use them
	}
	for _, called := range r.nameOrder {
		n := r.names[called]
		r.settle(n)
		if !n.used {
			r.diags.add(diag.Diagnostic{Code: "N201", Severity: diag.Note, Subject: n.e.f.at(n.label),
				Summary: "the size " + quote(called) + " is not used", Detail: "Use it, or take it away."})
		}
	}
}
