package design

import (
	"slices"
	"strings"
	"unicode"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/why"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// reader reads one commission.
type reader struct {
	files     []*file
	bodies    []topBody
	diags     *report
	unit      measure.Unit
	names     map[string]*name
	nameOrder []string
	path      []*name // names being worked out
	spec      *Spec
	refs      []ref
	taken     map[string]diag.Span // names given, by kind and name
	firstOf   map[string]diag.Span // blocks that stand once at the top level

	cases       []*caseDraft
	commissions []node
}

// topBody is one item at the top level of a text.
type topBody struct {
	f    *file
	body *hclsyntax.Body
}

// decode reads a block into t: the attributes in text order, then the blocks.
func decode[T any](r *reader, b *block[T], t *T, n node) {
	if b.begin != nil {
		b.begin(r, t, n)
	}
	attributes(r, b, t, n)
	kids := b.children()
	var types []string
	for _, k := range kids {
		types = append(types, k.Type)
	}
	seen := map[string]diag.Span{}
	for _, inside := range n.body.Blocks {
		if r.diags.full() {
			return
		}
		i := slices.Index(types, inside.Type)
		if i < 0 {
			r.unknownBlock(n, inside, types)
			continue
		}
		r.blockInside(n, kids[i].Child, inside, seen)
		in := node{f: n.f, block: inside, body: inside.Body, where: whereOf(inside)}
		if n.block == nil {
			r.onceOnly(in)
		}
		kids[i].read(r, t, in)
	}
	for _, k := range kids {
		if _, there := seen[k.Type]; k.Required && !there {
			r.diags.add(diag.Diagnostic{Code: "E205", Subject: n.head(), Summary: n.where + " has no block " + k.Type,
				Detail: "Add " + k.Type + " { … } to it."})
		}
	}
	if b.end != nil {
		b.end(r, t, n)
	}
}

// head is where a block begins: its kind and its label.
func (n node) head() diag.Span {
	if n.block == nil {
		return n.f.span(0, 0)
	}
	end := n.block.TypeRange.End.Byte
	if k := len(n.block.LabelRanges); k > 0 {
		end = n.block.LabelRanges[k-1].End.Byte
	}
	return n.f.span(n.block.TypeRange.Start.Byte, end)
}

// label is the block's name with its place; empty when it has none.
func (n node) label() Text {
	if n.block == nil || len(n.block.Labels) == 0 {
		return Text{}
	}
	return Text{n.block.Labels[0], n.f.at(n.block.LabelRanges[0])}
}

// whereOf names a block in a message.
func whereOf(b *hclsyntax.Block) string {
	if len(b.Labels) > 0 {
		return b.Type + " " + quote(clipped(b.Labels[0]))
	}
	return "block " + b.Type
}

// attributes reads what a block sets, in the order of the text.
func attributes[T any](r *reader, b *block[T], t *T, n node) {
	var strange []string
	for _, a := range inOrder(n.body.Attributes) {
		i := slices.IndexFunc(b.attrs, func(x attr[T]) bool { return x.Name == a.Name })
		if i < 0 {
			var free, kids []string
			for _, x := range b.attrs {
				if n.body.Attributes[x.Name] == nil {
					free = append(free, x.Name)
				}
			}
			for _, k := range b.children() {
				kids = append(kids, k.Type)
			}
			r.unknownAttribute(n, a, free, kids)
			strange = append(strange, a.Name)
			continue
		}
		b.attrs[i].read(r, t, expr{n.f, a.Expr})
	}
	for _, x := range b.attrs {
		misspelt := len(strange) > 0 && len(closest(x.Name, strange)) > 0
		if x.Required && n.body.Attributes[x.Name] == nil && !misspelt && !n.f.scan.faulty(n.extent()) {
			r.diags.add(diag.Diagnostic{Code: "E205", Subject: n.head(), Summary: n.where + " has no " + x.Name,
				Detail: sentence(x.Doc) + " Add " + x.Name + " = " + x.Example + "."})
		}
	}
}

// extent is the stretch of text a block takes.
func (n node) extent() (start, end int) {
	if n.block == nil {
		return 0, 0
	}
	return n.block.TypeRange.Start.Byte, n.block.CloseBraceRange.End.Byte
}

// inOrder gives attributes in text order; HCL keeps them in a map.
func inOrder(set hclsyntax.Attributes) []*hclsyntax.Attribute {
	out := make([]*hclsyntax.Attribute, 0, len(set))
	for _, a := range set {
		out = append(out, a)
	}
	slices.SortFunc(out, func(a, b *hclsyntax.Attribute) int { return a.NameRange.Start.Byte - b.NameRange.Start.Byte })
	return out
}

func (r *reader) unknownAttribute(n node, a *hclsyntax.Attribute, free, kids []string) {
	d := diag.Diagnostic{Code: "E202", Subject: n.f.at(a.NameRange), Summary: n.where + " has nothing called " + quote(clipped(a.Name))}
	if n.block == nil {
		d.Summary = "nothing called " + quote(clipped(a.Name)) + " can stand outside a block"
		d.Detail = "Entries stand inside blocks: case \"cabinet\" { … }."
	}
	if slices.Contains(kids, a.Name) {
		d.Detail = a.Name + " is a block: write " + a.Name + " { … } without the equals sign."
		r.diags.add(d)
		return
	}
	if len(free) > 0 {
		d.Detail = "It can still have " + listed(free, "and") + "."
	}
	didYouMean(&d, a.Name, free, asIs)
	r.diags.add(d)
}

func (r *reader) unknownBlock(n node, b *hclsyntax.Block, legal []string) {
	d := diag.Diagnostic{Code: "E201", Subject: n.f.at(b.TypeRange), Summary: "no block " + quote(clipped(b.Type)) + " can stand in " + n.where}
	if n.block == nil {
		d.Summary = "there is no block called " + quote(clipped(b.Type))
		if homesOf(b.Type) != "" {
			d.Summary = "a block " + b.Type + " cannot stand at the top level"
		}
	}
	d.Detail = "What can stand here: " + listed(legal, "and") + "."
	if len(legal) == 0 {
		d.Detail = "No block can."
	}
	if home := homesOf(b.Type); home != "" && !slices.Contains(legal, b.Type) {
		d.Detail = "It belongs in " + home + "."
	} else {
		didYouMean(&d, b.Type, legal, asIs)
	}
	r.diags.add(d)
}

// blockInside checks a block's label and that it stands as often as it may.
func (r *reader) blockInside(n node, c Child, b *hclsyntax.Block, seen map[string]diag.Span) {
	head := node{f: n.f, block: b}.head()
	if first, again := seen[b.Type]; again && !c.Many {
		r.diags.add(diag.Diagnostic{Code: "E204", Subject: head, Summary: n.where + " has two blocks " + b.Type,
			Detail:  "Put everything into one of them.",
			Related: []diag.Related{{Span: first, Message: "the first is here"}}})
	} else if !again {
		seen[b.Type] = head
	}
	r.checkLabel(n, c, b, head)
}

func (r *reader) checkLabel(n node, c Child, b *hclsyntax.Block, head diag.Span) {
	def := blockByID(c.ID)
	switch {
	case len(b.Labels) == 0 && def.Label == MustHaveLabel:
		r.diags.add(diag.Diagnostic{Code: "E206", Subject: head, Summary: "this " + b.Type + " has no name",
			Detail: "Write it behind the kind, in quotes: " + b.Type + " \"…\" {. It is " + def.LabelDoc + "."})
	case len(b.Labels) > 0 && def.Label == NoLabel:
		at := n.f.at(b.LabelRanges[0])
		r.diags.add(diag.Diagnostic{Code: "E206", Subject: at, Summary: "a block " + b.Type + " takes no name",
			Detail: "Take the name away.", Edits: []diag.Edit{{Span: at, Says: "take the name away"}}})
	case len(b.Labels) > 1:
		r.diags.add(diag.Diagnostic{Code: "E206", Subject: n.f.at(b.LabelRanges[1]), Summary: "this " + b.Type + " has two names",
			Detail: "Keep one. A name of several words stands in one pair of quotes."})
	case len(b.Labels) == 1 && !def.FreeLabel:
		r.checkName(b.Labels[0], n.f.at(b.LabelRanges[0]))
	}
}

// checkName holds a label to what paths and part marks can carry.
func (r *reader) checkName(called string, at diag.Span) {
	d := diag.Diagnostic{Code: "E208", Subject: at}
	bad := strings.IndexFunc(called, func(c rune) bool { return !nameChar(c) })
	switch {
	case strings.TrimSpace(called) == "":
		d.Summary, d.Detail = "this name is empty", "Give it a word."
	case len([]rune(called)) > longestName:
		d.Summary, d.Detail = "this name is too long", "Keep names to a few words."
	case bad >= 0:
		c := []rune(called[bad:])[0]
		d.Summary = "a name cannot hold " + quote(string(c))
		d.Detail = "Names are letters, digits, blanks, - and _, so that they can stand in a path such as cabinet.upper.keys."
	case strings.TrimSpace(called) != called:
		d.Summary, d.Detail = "this name begins or ends with a blank", "Take the blank away."
	default:
		return
	}
	r.diags.add(d)
}

// nameChar tells what names are made of.
func nameChar(c rune) bool {
	return c == ' ' || c == '-' || c == '_' || unicode.IsLetter(c) || unicode.IsDigit(c) || unicode.Is(unicode.Mn, c)
}

// unique reports a name given twice within one kind.
func (r *reader) unique(kind string, name Text) {
	if !name.Given() {
		return
	}
	key := kind + "\x00" + name.Value
	first, taken := r.taken[key]
	if !taken {
		r.taken[key] = name.At
		return
	}
	r.diags.add(diag.Diagnostic{Code: "E207", Subject: name.At, Summary: "there are two of the name " + quote(clipped(name.Value)),
		Detail:  "Each " + kind + " needs a name of its own.",
		Related: []diag.Related{{Span: first, Message: "the first is here"}}})
}

// typedSize reads a length attribute; ok is false when it was wrong and has
// been reported.
func (r *reader) typedSize(a *Attribute, lim limits, e expr) (why.Size, bool) {
	v := r.eval(e)
	if v.sort == aText {
		v = r.lengthText(e, v.text)
	}
	switch v.sort {
	case aFault:
		return why.Size{}, false
	case aFlag, aList:
		r.wrongKind(a, e, v)
		return why.Size{}, false
	}
	l, ok := r.toLength(v.num)
	if !ok || !r.within(a, lim, l, e) {
		if !ok {
			r.within(a, lim, 2*measure.MaxLength, e)
		}
		return why.Size{}, false
	}
	r.slippedFractions(e)
	return r.size(strings.ReplaceAll(a.Name, "_", " "), v, l, e), true
}

// wrongKind reports a value of a kind that the attribute cannot be.
func (r *reader) wrongKind(a *Attribute, e expr, v value) {
	d := diag.Diagnostic{Code: "E209", Subject: e.span(),
		Summary: a.Name + " takes " + kindWords(a) + ", not " + v.sort.String(),
		Detail:  "Write " + a.Name + " = " + a.Example + "."}
	r.diags.add(d)
}

// kindWords is what an attribute takes, with an example.
func kindWords(a *Attribute) string {
	switch a.Kind {
	case KindLength:
		return "a length such as 20 1/2 or \"520 mm\""
	case KindText:
		return "text in quotes"
	case KindFlag:
		return "true or false"
	case KindChoice:
		return "one of " + choiceWords(a.Choices)
	case KindCount:
		return "a whole number"
	}
	if strings.HasPrefix(a.Kind, KindName) {
		return "the " + a.Kind
	}
	return "a " + a.Kind
}

func choiceWords(choices []string) string {
	quoted := make([]string, len(choices))
	for i, c := range choices {
		quoted[i] = `"` + c + `"`
	}
	return listed(quoted, "or")
}

// limits of a length.
type limits struct{ least, most measure.Length }

// within holds a length to its limits.
func (r *reader) within(a *Attribute, lim limits, l measure.Length, e expr) bool {
	d := diag.Diagnostic{Code: "E216", Subject: e.span()}
	is := measure.Decimal(l, r.unit, 6) + " " + r.unit.String()
	switch {
	case l < lim.least && l < 0:
		d.Summary = a.Name + " cannot be less than nothing"
		d.Detail = "It comes to " + is + ". Is something taken away from something smaller?"
	case l < lim.least && l == 0:
		d.Summary, d.Detail = a.Name+" cannot be 0", "Give it a size, or take the line away."
	case l < lim.least:
		d.Summary = a.Name + " of " + is + " is thinner than anything"
		d.Detail = "The least size is " + measure.Decimal(lim.least, measure.Millimetres, 6) + " mm."
	case l > lim.most:
		d.Summary = a.Name + " is larger than " + measure.Decimal(lim.most, r.unit, 1) + " " + r.unit.String()
		d.Detail = "Nothing in a piece is. Did the unit slip? Bare numbers here are " + unitWord(r.unit) + "."
	default:
		return true
	}
	r.diags.add(d)
	return false
}

func unitWord(u measure.Unit) string {
	if u == measure.Millimetres {
		return "millimetres"
	}
	return "inches"
}
