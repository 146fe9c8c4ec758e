package design

import (
	"bytes"
	"slices"
	"strconv"

	"casewright/internal/diag"
	"casewright/internal/measure"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Read reads the texts of one commission. It always returns a Spec, as far as
// the texts could be understood, and everything that is wrong with them,
// gravest first and in the order of the texts. Blocks may stand in any text
// and in any order. It keeps nothing of the texts.
func Read(sources []Source) (*Spec, diag.List) {
	r := &reader{diags: &report{}, names: map[string]*name{}, taken: map[string]diag.Span{}, firstOf: map[string]diag.Span{}}
	r.takeTexts(sources)
	r.unit = r.unitOf()
	r.gatherNames()
	t := &topDraft{Spec: &Spec{
		Commission: usualCommission(r.unit), Season: usualSeason(r.unit), Shop: usualShop(r.unit),
	}}
	r.spec = t.Spec
	for _, b := range r.bodies {
		decode(r, topLevel(), t, node{f: b.f, body: b.body})
	}
	r.settleNames()
	r.finish(t)
	return t.Spec, r.diags.list.Sort()
}

// topDraft is the top level: the Spec, and the drawers and doors blocks that
// hold for all cases.
type topDraft struct {
	*Spec
	drawer *Drawer
	door   *Door
}

// takeTexts scans and parses all texts within the limits.
func (r *reader) takeTexts(sources []Source) {
	total, tokens, blocks, written := 0, 0, 0, 0
	for i, s := range sources {
		total += len(s.Text)
		if total > mostBytes || i >= mostSources {
			r.diags.add(tooLarge(s.Name, "these texts are too large: "+grouped(mostBytes>>20)+" million bytes in "+grouped(mostSources)+" texts is the most"))
			return
		}
		if d, ok := tooRough(s); !ok {
			r.diags.add(d)
			continue
		}
		f := newFile(s)
		f.scan = scanText(f, r.diags, topOnly())
		tokens, blocks = tokens+f.scan.tokens, blocks+f.scan.blocks
		written += len(s.Text) - bytes.Count(f.scan.mask, []byte(" "))
		if tokens > mostTokens || blocks > mostBlocks || written > mostWritten {
			if f.scan.tokens <= mostTokens && f.scan.blocks <= mostBlocks { // else the scan has said so
				r.diags.add(tooLarge(s.Name, "these texts together are far larger than any commission"))
			}
			return
		}
		r.files = append(r.files, f)
		bodies, twice := f.parse(r.diags)
		for _, b := range bodies {
			r.bodies = append(r.bodies, topBody{f, b})
		}
		r.setTwice(f, bodies, twice)
	}
}

func tooLarge(name, what string) diag.Diagnostic {
	start := diag.Pos{Line: 1, Column: 1}
	return diag.Diagnostic{Code: "E102", Subject: diag.Span{File: name, Start: start, End: start}, Summary: what,
		Detail: "A large commission has 2 000 lines. Split the work into several commissions."}
}

// tooRough looks at a text before anything is built from it: more lines, or a
// longer line, than a person writes are refused.
func tooRough(s Source) (diag.Diagnostic, bool) {
	lines, start := 1, 0
	for i, c := range s.Text {
		if c == '\n' {
			lines, start = lines+1, i+1
		}
		if lines > mostLines {
			return tooLarge(s.Name, "this text has more than "+grouped(mostLines)+" lines"), false
		}
		if i-start >= longestLine {
			at := diag.Pos{Line: lines, Column: 1, Offset: start}
			return diag.Diagnostic{Code: "E104", Subject: diag.Span{File: s.Name, Start: at, End: at},
				Summary: "this line has more than " + grouped(longestLine) + " bytes",
				Detail:  "No line that a person writes is so long. Is this the right file?"}, false
		}
	}
	return diag.Diagnostic{}, true
}

// setTwice reports attributes set twice in one block.
func (r *reader) setTwice(f *file, bodies []*hclsyntax.Body, twice []hcl.Range) {
	for _, at := range twice {
		d := diag.Diagnostic{Code: "E203", Subject: f.at(at), Detail: "Keep one of the two."}
		called := string(f.text[at.Start.Byte:at.End.Byte])
		d.Summary = quote(clipped(called)) + " is set twice"
		if first := firstSet(bodies, called, at.Start.Byte); first != nil {
			d.Related = []diag.Related{{Span: f.at(first.NameRange), Message: "the first is here"}}
		}
		r.diags.add(d)
	}
}

// firstSet finds the attribute of a name in the innermost body around an offset.
func firstSet(bodies []*hclsyntax.Body, called string, offset int) *hclsyntax.Attribute {
	for _, b := range bodies {
		for _, k := range b.Blocks {
			if k.OpenBraceRange.Start.Byte < offset && offset < k.CloseBraceRange.End.Byte {
				return firstSet([]*hclsyntax.Body{k.Body}, called, offset)
			}
		}
		if a := b.Attributes[called]; a != nil && a.NameRange.Start.Byte < offset {
			return a
		}
	}
	return nil
}

// unitOf is the commission's unit, which must be known before any size is read.
func (r *reader) unitOf() measure.Unit {
	for _, b := range r.bodies {
		for _, k := range b.body.Blocks {
			a := k.Body.Attributes["units"]
			if k.Type != "commission" || a == nil {
				continue
			}
			if t, ok := a.Expr.(*hclsyntax.TemplateExpr); ok && t.IsStringLiteral() {
				if v, d := t.Value(nil); !d.HasErrors() && v.AsString() == "mm" {
					return measure.Millimetres
				}
			}
		}
	}
	return measure.Inches
}

// gatherNames takes up all named sizes before any is used.
func (r *reader) gatherNames() {
	for _, b := range r.bodies {
		for _, k := range b.body.Blocks {
			if k.Type != "sizes" {
				continue
			}
			for _, a := range inOrder(k.Body.Attributes) {
				r.takeName(b.f, a)
			}
		}
	}
}

func (r *reader) takeName(f *file, a *hclsyntax.Attribute) {
	at := f.at(a.NameRange)
	if first := r.names[a.Name]; first != nil {
		r.diags.add(diag.Diagnostic{Code: "E203", Subject: at, Summary: "the size " + quote(clipped(a.Name)) + " is set twice",
			Detail:  "Keep one of the two.",
			Related: []diag.Related{{Span: first.e.f.at(first.label), Message: "the first is here"}}})
		return
	}
	if len(r.nameOrder) == mostNames {
		r.diags.add(diag.Diagnostic{Code: "E102", Subject: at, Summary: "there are more than " + strconv.Itoa(mostNames) + " named sizes",
			Detail: "Name only what is used in several places."})
	}
	if len(r.nameOrder) > mostNames {
		return
	}
	r.names[a.Name] = &name{name: a.Name, e: expr{f, a.Expr}, label: a.NameRange}
	r.nameOrder = append(r.nameOrder, a.Name)
}

// settleNames works out the names nothing has asked for yet.
func (r *reader) settleNames() {
	for _, called := range r.nameOrder {
		r.settle(r.names[called])
	}
}

// finish does what needs the whole text.
func (r *reader) finish(t *topDraft) {
	r.oneCommission()
	r.inherit(t)
	r.resolve()
	r.circularStanding()
	r.standsAgree()
	r.unusedNames()
}

func (r *reader) oneCommission() {
	if len(r.commissions) == 0 {
		start := diag.Pos{Line: 1, Column: 1}
		d := diag.Diagnostic{Code: "E225", Summary: "there is no block commission",
			Detail: "Every commission begins with one: commission \"name\" { }."}
		if len(r.files) > 0 {
			d.Subject = diag.Span{File: r.files[0].name, Start: start, End: start}
			d.Edits = []diag.Edit{{Span: d.Subject, Text: "commission \"first\" {}\n\n", Says: "begin with commission \"first\" {}"}}
		}
		if !r.diags.list.Has(diag.Error) { // else it may stand in what could not be read
			r.diags.add(d)
		}
		return
	}
	for _, n := range r.commissions[1:] {
		r.diags.add(diag.Diagnostic{Code: "E225", Subject: n.head(), Summary: "there is a second block commission",
			Detail:  "The texts of one folder are one job. Put everything into one block.",
			Related: []diag.Related{{Span: r.commissions[0].head(), Message: "the first is here"}}})
	}
}

var topLevelBlock = &block[topDraft]{Block: Block{Type: "", ID: ""}}

func topLevel() *block[topDraft] { return topLevelBlock }

func init() {
	topLevelBlock.kids = func() []child[topDraft] {
		return []child[topDraft]{
			holds(commissionBlock, func(r *reader, t *topDraft) *Commission { return &t.Commission }),
			holds(seasonBlock, func(r *reader, t *topDraft) *Season { return &t.Season }),
			holds(shopBlock, func(r *reader, t *topDraft) *Shop { return &t.Shop }),
			several(woodBlock, func(t *topDraft) *[]*Wood { return &t.Woods }),
			several(speciesBlock, func(t *topDraft) *[]*OwnSpecies { return &t.Species }),
			sizes(),
			several(curveBlock, func(t *topDraft) *[]*Curve { return &t.Curves }),
			holds(caseBlock, func(r *reader, t *topDraft) *caseDraft {
				c := &caseDraft{Case: new(Case)}
				t.Cases = append(t.Cases, c.Case)
				r.cases = append(r.cases, c)
				return c
			}),
			holds(drawersBlock, func(r *reader, t *topDraft) *Drawer { t.drawer = new(Drawer); return t.drawer }),
			holds(doorsBlock, func(r *reader, t *topDraft) *Door { t.door = new(Door); return t.door }),
			several(standBlock, func(t *topDraft) *[]*Stand { return &t.Stands }),
			several(topBlock, func(t *topDraft) *[]*Slab { return &t.Slabs }),
			several(ledgeBlock, func(t *topDraft) *[]*Slab { return &t.Slabs }),
			several(hardwareBlock, func(t *topDraft) *[]*Hardware { return &t.Hardware }),
			several(matchBlock, func(t *topDraft) *[]*Match { return &t.Matches }),
			holds(siteBlock, func(r *reader, t *topDraft) *Site { return &t.Site }),
			several(measuredBlock, func(t *topDraft) *[]*Measured { return &t.Measured }),
			several(acceptBlock, func(t *topDraft) *[]*Accept { return &t.Accepts }),
		}
	}
}

// sizes is the block of named sizes: its attributes are the names, taken up by
// gatherNames before anything is decoded.
func sizes() child[topDraft] {
	def := Block{Type: "sizes", ID: "sizes", Doc: "Sizes with a name, usable everywhere by that name and in any order. A name is one word of letters, digits and _.",
		Example: `commission "first" {}

sizes {
  side    = 9/16
  inset   = 7/8
  backing = inset - side
}

case "box" {
  width     = 20
  height    = 30
  depth     = 12
  thickness = side

  back {
    thickness = backing
    inset     = inset
  }
}
`}
	return child[topDraft]{
		Child: Child{Type: "sizes", ID: "sizes", Many: true},
		doc:   func() Block { return def },
		kids:  func() []anyChild { return nil },
		read: func(r *reader, t *topDraft, n node) {
			for _, b := range n.body.Blocks {
				r.unknownBlock(n, b, nil)
			}
		},
	}
}

// topOnly are the block types that stand at the top level and nowhere else.
func topOnly() map[string]bool { return language().topOnly }

// once tells blocks of which only one may stand at the top level.
var once = []string{"season", "shop", "drawers", "doors", "site"}

// onceOnly reports a second top-level block of a kind that stands once; over
// several texts decode cannot see it.
func (r *reader) onceOnly(n node) {
	if !slices.Contains(once, n.block.Type) {
		return
	}
	first, again := r.firstOf[n.block.Type]
	if !again {
		r.firstOf[n.block.Type] = n.head()
		return
	}
	r.diags.add(diag.Diagnostic{Code: "E204", Subject: n.head(), Summary: "there are two blocks " + n.block.Type + " at the top level",
		Detail:  "Put everything into one of them.",
		Related: []diag.Related{{Span: first, Message: "the first is here"}}})
}
