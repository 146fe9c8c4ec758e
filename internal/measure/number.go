package measure

import (
	"math/big"
	"strings"
)

// vulgars are the fractions that are one character.
var vulgars = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅐': {1, 7}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8}, '⅑': {1, 9}, '⅒': {1, 10},
}

// number reads 5, 5.375, 5e2, 3/8, ½, 5 3/8, 5-3/8 or 5½.
func (p *parser) number() (*big.Rat, *ParseError) {
	start := p.pos
	if v, ok := p.vulgar(); ok {
		return v, nil
	}
	whole, plain, bad := p.decimal()
	if bad != nil {
		return nil, bad
	}
	if isSlash(p.peek()) {
		if !plain {
			return nil, p.wrong(start, quote(p.text[start:p.pos])+" cannot be the top of a fraction", likeThis)
		}
		return p.under(whole)
	}
	at := p.pos
	part, bad := p.partAfter()
	switch {
	case bad != nil || part == nil:
		return whole, bad
	case !plain:
		return nil, p.wrong(start, "a fraction cannot follow a decimal number", "write one or the other: 5.375 or 5 3/8")
	case part.Cmp(big.NewRat(1, 1)) >= 0:
		// 5 11/8 is likelier a slip of the finger than 6 3/8, and wood is cut once.
		return nil, p.wrong(at, "the fraction behind the whole number is not below one", "write "+mixed(whole.Add(whole, part)))
	}
	return whole.Add(whole, part), nil
}

// partAfter reads the fraction behind a whole number, set off by spaces, one
// dash or nothing; nil when none follows.
func (p *parser) partAfter() (*big.Rat, *ParseError) {
	back := p.pos
	p.space()
	if isDash(p.peek()) && p.pos == back {
		p.next()
	}
	if v, ok := p.vulgar(); ok {
		return v, nil
	}
	top := p.skip(isDigit)
	if top == "" || !isSlash(p.peek()) {
		p.pos = back
		return nil, nil
	}
	return p.under(digits(top))
}

// under reads the slash and what stands below it.
func (p *parser) under(top *big.Rat) (*big.Rat, *ParseError) {
	p.next()
	at := p.pos
	below := p.skip(isDigit)
	if below == "" {
		return nil, p.wrong(at, "the fraction has nothing below its stroke", likeThis)
	}
	bottom := digits(below)
	if bottom.Sign() == 0 {
		return nil, p.wrong(at, "the fraction has a 0 below its stroke", likeThis)
	}
	return top.Quo(top, bottom), nil
}

func (p *parser) vulgar() (*big.Rat, bool) {
	v, ok := vulgars[p.peek()]
	if !ok {
		return nil, false
	}
	p.next()
	return big.NewRat(v[0], v[1]), true
}

// decimal reads digits with a point or comma among them and an exponent
// behind; plain tells that there was neither.
func (p *parser) decimal() (v *big.Rat, plain bool, bad *ParseError) {
	start := p.pos
	run := p.skip(func(r rune) bool { return isDigit(r) || r == '.' || r == ',' })
	whole, part, bad := p.point(start, run)
	if bad != nil {
		return nil, false, bad
	}
	if whole+part == "" {
		p.pos = start
		return nil, false, p.noNumber()
	}
	exp, has, bad := p.exponent()
	if bad != nil {
		return nil, false, bad
	}
	return tens(digits(whole+part), exp-len(part)), len(whole) == len(run) && !has, nil
}

// point parts a run at its decimal point or comma.
func (p *parser) point(at int, run string) (whole, part string, bad *ParseError) {
	dots, commas := strings.Count(run, "."), strings.Count(run, ",")
	i := strings.IndexAny(run, ".,")
	switch {
	case dots+commas == 0:
		return run, "", nil
	case dots > 1:
		return "", "", p.wrong(at, quote(run)+" has more than one decimal point", "keep one")
	case commas > 1 || commas == 1 && dots == 1:
		return "", "", p.wrong(at, quote(run)+" has commas between its digits", "leave out the commas that group digits")
	case commas == 1 && groups(run[:i], run[i+1:]):
		return "", "", p.wrong(at, quote(run)+" can be read in two ways",
			"write "+run[:i]+run[i+1:]+" or "+run[:i]+"."+run[i+1:])
	}
	return run[:i], run[i+1:], nil
}

// groups tells whether a comma may be one that groups thousands.
func groups(before, after string) bool {
	return 1 <= len(before) && len(before) <= 3 && before[0] != '0' && len(after) == 3
}

// mostExponent is far beyond what MaxLength can need, and small enough to
// compute with.
const mostExponent = 24

func (p *parser) exponent() (n int, has bool, bad *ParseError) {
	rest := p.text[p.pos:]
	if len(rest) < 2 || rest[0]|0x20 != 'e' {
		return 0, false, nil
	}
	i := 1
	if rest[1] == '-' || rest[1] == '+' {
		i = 2
	}
	if i == len(rest) || !isDigit(rune(rest[i])) {
		return 0, false, nil // a word follows; it is read as a unit
	}
	at := p.pos
	p.pos += i
	for _, d := range p.skip(isDigit) {
		if n = 10*n + int(d-'0'); n > mostExponent {
			return 0, false, p.wrong(at, "the number is beyond all reason", "write it out, such as 5.375")
		}
	}
	if rest[1] == '-' {
		n = -n
	}
	return n, true, nil
}

// digits is a number of digits only; none is 0.
func digits(s string) *big.Rat {
	var n int64
	if len(s) <= 18 {
		for i := range len(s) {
			n = 10*n + int64(s[i]-'0')
		}
		return new(big.Rat).SetInt64(n)
	}
	i, _ := new(big.Int).SetString(s, 10)
	return new(big.Rat).SetInt(i)
}

// tens is v × 10^exp; it uses v.
func tens(v *big.Rat, exp int) *big.Rat {
	if exp == 0 {
		return v
	}
	by := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(exp, -exp))), nil)
	if exp > 0 {
		return v.Mul(v, new(big.Rat).SetInt(by))
	}
	return v.Quo(v, new(big.Rat).SetInt(by))
}

// mixed writes a number the way it should have been typed.
func mixed(v *big.Rat) string {
	var whole, rest big.Int
	whole.DivMod(v.Num(), v.Denom(), &rest)
	if rest.Sign() == 0 {
		return whole.String()
	}
	return whole.String() + " " + rest.String() + "/" + v.Denom().String()
}
