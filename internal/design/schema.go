package design

import (
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Attribute describes one attribute of the language.
type Attribute struct {
	Name     string
	Kind     string   // "length", "text", "number", "yes or no", "one of", "name of a curve" …
	Doc      string   // one sentence for a maker
	Usual    string   // what holds when it is not given, in words; "" when nothing does
	Choices  []string // the only words it takes, if there are such
	Required bool
	Example  string // a value as it is written
}

// LabelRule says whether a block has a name behind its kind.
type LabelRule uint8

// The label rules.
const (
	NoLabel LabelRule = iota
	MayHaveLabel
	MustHaveLabel
)

// Block describes one kind of block of the language.
type Block struct {
	Type       string
	Label      LabelRule
	LabelDoc   string // what the label says
	FreeLabel  bool   // the label is a path or code, not a name
	Doc        string
	Attributes []Attribute
	Blocks     []Child // the blocks that may stand inside
	Example    string  // a whole text, or "" for a block shown elsewhere
	ID         string  // tells blocks of one type in different places apart, e.g. "drawer/front"
}

// Child is a block inside another, by its ID in [Language].Blocks.
type Child struct {
	Type     string
	ID       string
	Many     bool // may stand several times
	Required bool
}

// attr is an attribute with how it is read into a T and how a T that lacks it
// takes it over from another (nil: it does not).
type attr[T any] struct {
	Attribute
	read func(r *reader, t *T, e expr)
	fill func(dst, src *T)
}

// node is a block in a text.
type node struct {
	f     *file
	block *hclsyntax.Block // nil for the top level
	body  *hclsyntax.Body
	where string // for messages: row “upper” of case “cabinet”
}

// child is a block inside a P.
type child[P any] struct {
	Child
	doc  func() Block
	kids func() []anyChild
	read func(r *reader, p *P, n node)
	fill func(dst, src *P)
	when func(p *P, n node) // told of the block before anything is read, or nil
}

// block is a kind of block read into a T.
type block[T any] struct {
	Block
	attrs []attr[T]
	kids  func() []child[T] // a function, for rows hold columns hold rows
	begin func(r *reader, t *T, n node)
	end   func(r *reader, t *T, n node)
}

// anyChild is a child without its Go types, for walking over the language.
type anyChild struct {
	Child
	doc  func() Block
	kids func() []anyChild
}

// describe is the block as plain data.
func (b *block[T]) describe() Block {
	out := b.Block
	for _, a := range b.attrs {
		out.Attributes = append(out.Attributes, a.Attribute)
	}
	for _, k := range b.children() {
		out.Blocks = append(out.Blocks, k.Child)
	}
	return out
}

func (b *block[T]) children() []child[T] {
	if b.kids == nil {
		return nil
	}
	return b.kids()
}

func (b *block[T]) anyChildren() []anyChild {
	var out []anyChild
	for _, k := range b.children() {
		out = append(out, anyChild{k.Child, k.doc, k.kids})
	}
	return out
}

// fill takes over from src what dst does not say.
func (b *block[T]) fill(dst, src *T) {
	for _, a := range b.attrs {
		if a.fill != nil {
			a.fill(dst, src)
		}
	}
	for _, k := range b.children() {
		if k.fill != nil {
			k.fill(dst, src)
		}
	}
}

// inner is a block that stands once inside a P and is part of it.
func inner[P, C any](b *block[C], at func(*P) *C) child[P] {
	c := holds(b, func(_ *reader, p *P) *C { return at(p) })
	c.Many = false
	c.fill = func(dst, src *P) { b.fill(at(dst), at(src)) }
	return c
}

// single is a block that stands once inside a P and may be missing.
func single[P, C any](b *block[C], at func(*P) **C) child[P] {
	c := holds(b, func(_ *reader, p *P) *C {
		*at(p) = new(C)
		return *at(p)
	})
	c.Many = false
	return c
}

// several is a block that may stand many times inside a P.
func several[P, C any](b *block[C], at func(*P) *[]*C) child[P] {
	return holds(b, func(_ *reader, p *P) *C {
		c := new(C)
		*at(p) = append(*at(p), c)
		return c
	})
}

// holds is a block inside a P read into what place gives.
func holds[P, C any](b *block[C], place func(r *reader, p *P) *C) child[P] {
	return child[P]{
		Child: Child{Type: b.Type, ID: b.ID, Many: true},
		doc:   b.describe,
		kids:  b.anyChildren,
		read:  func(r *reader, p *P, n node) { decode(r, b, place(r, p), n) },
	}
}

// Language is the whole language as plain data.
type Language struct {
	Top    []Child // what stands at the top level
	Blocks []Block // every block once, in the order of the documentation
}

// Find is the block with an ID; ok is false when there is none.
func (l Language) Find(id string) (b Block, ok bool) {
	for _, b := range l.Blocks {
		if b.ID == id {
			return b, true
		}
	}
	return Block{}, false
}

// Schema gives the language as data: for completion in an editor and for the
// written documentation. The result is the caller's to keep.
func Schema() Language {
	var l Language
	seen := map[string]bool{}
	var walk func(kids []anyChild)
	walk = func(kids []anyChild) {
		for _, k := range kids {
			if seen[k.ID] {
				continue
			}
			seen[k.ID] = true
			l.Blocks = append(l.Blocks, k.doc())
			walk(k.kids())
		}
	}
	for _, k := range topLevel().children() {
		l.Top = append(l.Top, k.Child)
	}
	walk(topLevel().anyChildren())
	return l
}
