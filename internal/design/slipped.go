package design

import (
	"slices"
	"strconv"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/measure"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// divisions of an inch that rules have: common practice, no source.
var divisions = []int{2, 4, 8, 16, 32, 64}

// plainShares are other figures that people do write under the line: shares of
// a length, and decimal rules. Our choice.
var plainShares = []int{3, 6, 10, 12, 20, 50, 100, 1000}

// slippedFractions notes each fraction in a size that no rule has, such as
// 13/61: two figures were exchanged. A fraction that something is multiplied
// by or divided by is a share and may be any; so may one made from names.
func (r *reader) slippedFractions(e expr) {
	if r.unit != measure.Inches || e.f.faulty(e.x.Range()) {
		return
	}
	switch x := e.x.(type) {
	case *hclsyntax.ParenthesesExpr:
		r.slippedFractions(expr{e.f, x.Expression})
	case *hclsyntax.UnaryOpExpr:
		r.slippedFractions(expr{e.f, x.Val})
	case *hclsyntax.BinaryOpExpr:
		switch x.Op {
		case hclsyntax.OpAdd, hclsyntax.OpSubtract:
			r.slippedFractions(expr{e.f, x.LHS})
			r.slippedFractions(expr{e.f, x.RHS})
		case hclsyntax.OpDivide:
			if isLiteral(x.LHS) && isLiteral(x.RHS) {
				r.slippedFraction(e.f, x.Range())
			}
		}
	case *hclsyntax.FunctionCallExpr:
		if x.Name == "max" || x.Name == "min" {
			for _, a := range x.Args {
				r.slippedFractions(expr{e.f, a})
			}
		}
	case *hclsyntax.LiteralValueExpr:
		r.slippedFraction(e.f, x.SrcRange)
	}
}

func isLiteral(x hclsyntax.Expression) bool {
	_, ok := x.(*hclsyntax.LiteralValueExpr)
	return ok
}

// slippedFraction looks at one number as it is typed: 13/61 or 20 13/61.
func (r *reader) slippedFraction(f *file, at hcl.Range) {
	typed := strings.Join(strings.Fields(string(f.text[at.Start.Byte:at.End.Byte])), " ")
	left, right, ok := strings.Cut(strings.ReplaceAll(strings.ReplaceAll(typed, " /", "/"), "/ ", "/"), "/")
	whole, numerator, mixed := strings.Cut(left, " ")
	if !mixed {
		whole, numerator = "", left
	}
	over, err := strconv.Atoi(numerator)
	under, err2 := strconv.Atoi(right)
	if !ok || err != nil || err2 != nil || over <= 0 || over >= under || usualFraction(over, under) {
		return
	}
	d := diag.Diagnostic{Code: "N202", Severity: diag.Note, Subject: f.at(at), Summary: "no rule is divided in " + ordinal(under),
		Detail: "It is kept exactly as it stands; the marks of a rule are halves, quarters, 8ths, 16ths, 32nds and 64ths."}
	var likely []string
	for _, n := range slipsOf(over, under) {
		meant := numerator + "/" + strconv.Itoa(n)
		likely = append(likely, meant)
		written := strings.TrimSpace(whole + " " + meant)
		d.Edits = append(d.Edits, diag.Edit{Span: d.Subject, Text: written, Says: "write " + written})
	}
	if len(likely) > 0 {
		d.Summary += ": was " + listed(likely, "or") + " meant?"
	}
	r.diags.add(d)
}

// usualFraction tells whether a fraction lies on a mark of a rule or is a plain
// share, perhaps not in its lowest terms.
func usualFraction(over, under int) bool {
	for {
		if slices.Contains(divisions, under) || slices.Contains(plainShares, under) {
			return true
		}
		if over%2 != 0 || under%2 != 0 {
			return false
		}
		over, under = over/2, under/2
	}
}

// slipsOf are the divisions that under may have been meant for, at most two:
// those of the same figures first, else those that one wrong figure makes. The
// fraction must be in its lowest terms, as makers say it.
func slipsOf(over, under int) []int {
	var same, near []int
	typed := strconv.Itoa(under)
	for _, n := range divisions {
		if over%2 == 0 || over >= n {
			continue
		}
		said := strconv.Itoa(n)
		switch {
		case sortedFigures(said) == sortedFigures(typed):
			same = append(same, n)
		case distance(said, typed) == 1:
			near = append(near, n)
		}
	}
	if len(same) > 0 {
		return same
	}
	return near[:min(len(near), 2)]
}

func sortedFigures(s string) string {
	b := []byte(s)
	slices.Sort(b)
	return string(b)
}

// ordinal is 61sts, 32nds, 63rds, 15ths.
func ordinal(n int) string {
	ending := "ths"
	if n/10%10 != 1 {
		switch n % 10 {
		case 1:
			ending = "sts"
		case 2:
			ending = "nds"
		case 3:
			ending = "rds"
		}
	}
	return strconv.Itoa(n) + ending
}
