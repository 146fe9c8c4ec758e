package design

import (
	"math/big"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// sort is what an expression turned out to be.
type sort uint8

const (
	aFault  sort = iota // reported already, or follows from something that was
	aNumber             // a bare number: a count, or a length in the commission's unit
	aLength             // surely a length: it was said with a unit
	aText
	aFlag
	aList
)

func (k sort) String() string {
	return [...]string{"nothing", "a number", "a length", "text", "a yes or no", "a list"}[k]
}

// value is an evaluated expression. num is in the commission's unit for
// lengths. sum says which sizes it was added up from; nil when it was not.
type value struct {
	sort  sort
	num   *big.Rat
	text  string
	flag  bool
	list  []hclsyntax.Expression
	sum   []term
	named bool // a named size takes part
}

// term is a part of a sum: a named size, or a number typed in place.
type term struct {
	times int64
	of    *name     // nil for a number typed in place
	at    hcl.Range // where that number stands
	num   *big.Rat
}

// expr is an expression with the text it stands in.
type expr struct {
	f *file
	x hclsyntax.Expression
}

func (e expr) span() diag.Span { return e.f.at(e.x.Range()) }

// typed is the expression as it was written.
func (e expr) typed() string {
	r := e.x.Range()
	return strings.Join(strings.Fields(string(e.f.text[r.Start.Byte:min(r.End.Byte, len(e.f.text))])), " ")
}

// eval works out an expression. What is wrong with it is reported, and the
// value is then broken.
func (r *reader) eval(e expr) value {
	switch x := e.x.(type) {
	case *hclsyntax.ParenthesesExpr:
		return r.eval(expr{e.f, x.Expression})
	case *hclsyntax.LiteralValueExpr:
		return r.literal(e, x)
	case *hclsyntax.TemplateExpr:
		return r.quotedText(e, x)
	case *hclsyntax.ScopeTraversalExpr:
		return r.lookUp(e, x)
	case *hclsyntax.UnaryOpExpr:
		return r.negate(e, x)
	case *hclsyntax.BinaryOpExpr:
		return r.reckon(e, x)
	case *hclsyntax.FunctionCallExpr:
		return r.call(e, x)
	case *hclsyntax.TupleConsExpr:
		return value{sort: aList, list: x.Exprs}
	}
	return r.notHere(e)
}

func (r *reader) broken(d diag.Diagnostic) value {
	r.diags.add(d)
	return value{}
}

func (r *reader) notHere(e expr) value {
	if e.f.faulty(e.x.Range()) {
		return value{}
	}
	return r.broken(diag.Diagnostic{Code: "E214", Subject: e.span(),
		Summary: quote(clipped(e.typed())) + " is more than this language has",
		Detail:  "A value is a size, a number, text in quotes, true or false, a list in [ ], or a sum with + - * / and the functions min, max, mm and inch."})
}

// faulty tells whether the first walk reported something in the range.
func (f *file) faulty(rng hcl.Range) bool { return f.scan.faulty(rng.Start.Byte, rng.End.Byte) }

func (r *reader) literal(e expr, x *hclsyntax.LiteralValueExpr) value {
	switch {
	case e.f.faulty(x.SrcRange):
		return value{}
	case x.Val.Type() == cty.Bool:
		return value{sort: aFlag, flag: x.Val.True()}
	case x.Val.Type() != cty.Number:
		return r.notHere(e)
	}
	n := e.f.numberAt(x.SrcRange)
	if n == nil {
		return r.notHere(e)
	}
	return value{sort: aNumber, num: n, sum: []term{{times: 1, at: x.SrcRange, num: n}}}
}

// numberAt is the exact value of a number in the text; HCL's own holds 512
// bits, which is not enough for a third.
func (f *file) numberAt(rng hcl.Range) *big.Rat {
	if w, ok := f.scan.words[rng.Start.Byte]; ok {
		return w.value
	}
	typed := string(f.text[rng.Start.Byte:rng.End.Byte])
	mantissa, exponent, _ := strings.Cut(strings.ToLower(typed), "e")
	if len(typed) > longestWord || len(strings.TrimLeft(exponent, "+-0")) > 2 || mantissa == "" {
		return nil
	}
	n, ok := new(big.Rat).SetString(typed)
	if !ok {
		return nil
	}
	return n
}

func (r *reader) quotedText(e expr, x *hclsyntax.TemplateExpr) value {
	if e.f.faulty(x.SrcRange) {
		return value{}
	}
	var b strings.Builder
	for _, part := range x.Parts {
		lit, ok := part.(*hclsyntax.LiteralValueExpr)
		if !ok || lit.Val.Type() != cty.String {
			return r.notHere(e)
		}
		b.WriteString(lit.Val.AsString())
	}
	return value{sort: aText, text: b.String()}
}

func (r *reader) lookUp(e expr, x *hclsyntax.ScopeTraversalExpr) value {
	if e.f.faulty(x.SrcRange) {
		return value{}
	}
	if len(x.Traversal) != 1 {
		return r.broken(diag.Diagnostic{Code: "E214", Subject: e.span(),
			Summary: quote(clipped(e.typed())) + " points into something, and names here are single words",
			Detail:  "Give the size a name in a sizes block and use that name in both places."})
	}
	return r.named(e, x.Traversal.RootName())
}

func (r *reader) negate(e expr, x *hclsyntax.UnaryOpExpr) value {
	if x.Op != hclsyntax.OpNegate {
		return r.notHere(e)
	}
	v := r.amount(expr{e.f, x.Val})
	if v.sort == aFault {
		return v
	}
	return value{sort: v.sort, num: new(big.Rat).Neg(v.num), sum: scaled(v.sum, -1), named: v.named}
}

// amount evaluates something that must be a number or a length; text is read
// as a length with its unit.
func (r *reader) amount(e expr) value {
	v := r.eval(e)
	switch v.sort {
	case aFault, aNumber, aLength:
		return v
	case aText:
		return r.lengthText(e, v.text)
	}
	return r.broken(diag.Diagnostic{Code: "E213", Subject: e.span(),
		Summary: "sizes can be reckoned with, " + v.sort.String() + " cannot",
		Detail:  "A sum is made of sizes, numbers and named sizes."})
}

func (r *reader) lengthText(e expr, said string) value {
	l, err := readLength(said, r.unit)
	if err != nil {
		d := diag.Diagnostic{Code: "E218", Subject: e.span(), Summary: quote(clipped(said)) + " is not a length",
			Detail: mend(err)}
		return r.broken(d)
	}
	n := new(big.Rat).SetFrac64(int64(l), int64(unitLength(r.unit)))
	return value{sort: aLength, num: n, sum: []term{{times: 1, at: e.x.Range(), num: n}}}
}

// reckon does one sum. A bare number beside a length is in the commission's
// unit; a length times a length is an area and refused.
func (r *reader) reckon(e expr, x *hclsyntax.BinaryOpExpr) value {
	a, b := r.amount(expr{e.f, x.LHS}), r.amount(expr{e.f, x.RHS})
	if a.sort == aFault || b.sort == aFault {
		return value{}
	}
	v := value{sort: max(a.sort, b.sort), named: a.named || b.named}
	both := a.sort == aLength && b.sort == aLength
	switch x.Op {
	case hclsyntax.OpAdd:
		v.num, v.sum = new(big.Rat).Add(a.num, b.num), joined(a.sum, b.sum)
	case hclsyntax.OpSubtract:
		v.num, v.sum = new(big.Rat).Sub(a.num, b.num), joined(a.sum, scaled(b.sum, -1))
	case hclsyntax.OpMultiply:
		if both {
			return r.cannot(e, "a length times a length is an area, not a size", "Take the unit away from one of them.")
		}
		v.num, v.sum = new(big.Rat).Mul(a.num, b.num), multiplied(a, b)
	case hclsyntax.OpDivide:
		switch {
		case b.num.Sign() == 0:
			return r.cannot(e, "this divides by nothing", "What stands below the line comes to 0.")
		case b.sort == aLength && a.sort == aNumber:
			return r.cannot(e, "a number divided by a length is not a size", "Take the unit away from what stands below the line.")
		case both:
			v.sort = aNumber
		}
		v.num = new(big.Rat).Quo(a.num, b.num)
	default:
		return r.notHere(e)
	}
	if v.num.Num().BitLen()+v.num.Denom().BitLen() > mostBits {
		return r.cannot(e, "this number grows beyond all measure", "Sizes need no more than a few digits.")
	}
	return v
}

func (r *reader) cannot(e expr, what, mend string) value {
	return r.broken(diag.Diagnostic{Code: "E213", Subject: e.span(), Summary: what, Detail: mend})
}

// call works out min, max, mm and inch.
func (r *reader) call(e expr, x *hclsyntax.FunctionCallExpr) value {
	known := []string{"inch", "max", "min", "mm"}
	args := make([]value, len(x.Args))
	ok := !e.f.faulty(x.NameRange)
	for i, a := range x.Args {
		args[i] = r.amount(expr{e.f, a})
		ok = ok && args[i].sort != aFault
	}
	if !ok {
		return value{}
	}
	d := diag.Diagnostic{Code: "E215", Subject: e.f.at(x.NameRange)}
	switch {
	case x.ExpandFinal:
		return r.notHere(e)
	case (x.Name == "min" || x.Name == "max") && len(args) > 0:
		return extreme(args, x.Name == "max")
	case (x.Name == "mm" || x.Name == "inch") && len(args) == 1 && args[0].sort == aNumber:
		return r.inUnit(args[0], x.Name)
	case x.Name == "min" || x.Name == "max":
		d.Summary, d.Detail = x.Name+" needs sizes to choose from", "Write "+x.Name+"(a, b)."
	case x.Name == "mm" || x.Name == "inch":
		d.Summary, d.Detail = x.Name+" takes one bare number", "Write "+x.Name+"(12)."
	default:
		d.Summary, d.Detail = "there is no function "+quote(clipped(x.Name)), "The functions are min, max, mm and inch."
		didYouMean(&d, x.Name, known, asIs)
	}
	return r.broken(d)
}

func extreme(args []value, greatest bool) value {
	best := args[0]
	for _, a := range args[1:] {
		if c := a.num.Cmp(best.num); c > 0 == greatest && c != 0 {
			best = a
		}
	}
	for _, a := range args {
		best.sort = max(best.sort, a.sort)
		best.named = best.named || a.named
	}
	best.sum = nil // the choice is not a sum
	return best
}

func (r *reader) inUnit(v value, unit string) value {
	from := measure.Millimetre
	if unit == "inch" {
		from = measure.Inch
	}
	return value{sort: aLength, num: new(big.Rat).Mul(v.num, big.NewRat(int64(from), int64(unitLength(r.unit)))), named: v.named}
}

func scaled(sum []term, by int64) []term {
	out := make([]term, len(sum))
	for i, t := range sum {
		t.times *= by
		out[i] = t
	}
	return out
}

// joined is the sum of two sums; nil when either is not one.
func joined(a, b []term) []term {
	if a == nil || b == nil || len(a)+len(b) > mostTerms {
		return nil
	}
	return append(append(make([]term, 0, len(a)+len(b)), a...), b...)
}

// multiplied keeps 2 * side as a sum.
func multiplied(a, b value) []term {
	if a.named == b.named {
		return nil
	}
	if a.named {
		a, b = b, a
	}
	const most = 1000
	if !a.num.IsInt() || !a.num.Num().IsInt64() || b.sum == nil || a.sort == aLength {
		return nil
	}
	n := a.num.Num().Int64()
	if n > most || n < -most {
		return nil
	}
	for _, t := range b.sum {
		if t.times*n > most || t.times*n < -most {
			return nil
		}
	}
	return scaled(b.sum, n)
}

// toLength rounds an amount once to whole nanometres; ok is false when it is
// beyond all furniture.
func (r *reader) toLength(n *big.Rat) (l measure.Length, ok bool) {
	return measure.FromRat(n, r.unit)
}

// size makes the size an attribute or a named size has: a sum of named sizes
// where the text says one, else the length as it was typed.
func (r *reader) size(called string, v value, l measure.Length, e expr) why.Size {
	at, typed := e.span(), e.typed()
	if v.named && v.sum != nil {
		if s := why.Sum(called, r.terms(v.sum, e.f)...); s.Length() == l {
			return s.Written(at, typed)
		}
	}
	return why.Given(called, l, at, typed)
}

func (r *reader) terms(sum []term, f *file) []why.Term {
	out := make([]why.Term, 0, len(sum))
	for _, t := range sum {
		of := why.Size{}
		if t.of != nil {
			of = t.of.size
		} else if l, ok := r.toLength(t.num); ok {
			typed := string(f.text[t.at.Start.Byte:t.at.End.Byte])
			of = why.Given(typed, l, f.at(t.at), typed)
		}
		out = append(out, why.Times(t.times, of))
	}
	return out
}

// bareWord is the word an expression consists of, if it is one.
func (e expr) bareWord() (string, bool) {
	x, ok := e.x.(*hclsyntax.ScopeTraversalExpr)
	if !ok || len(x.Traversal) != 1 || e.f.faulty(x.SrcRange) {
		return "", false
	}
	return x.Traversal.RootName(), true
}
