package design

import (
	"slices"
	"sync"
)

// index is the language looked up by block.
type index struct {
	Language
	byID    map[string]*Block
	homes   map[string][]string // the blocks a type may stand in, by type
	topOnly map[string]bool
}

// language is the schema, built once: it never changes.
var language = sync.OnceValue(func() *index {
	x := &index{Language: Schema(), byID: map[string]*Block{}, homes: map[string][]string{}, topOnly: map[string]bool{}}
	for i := range x.Blocks {
		b := &x.Blocks[i]
		x.byID[b.ID] = b
		for _, k := range b.Blocks {
			if !slices.Contains(x.homes[k.Type], b.Type) {
				x.homes[k.Type] = append(x.homes[k.Type], b.Type)
			}
		}
	}
	for _, k := range x.Top {
		x.topOnly[k.Type] = len(x.homes[k.Type]) == 0
	}
	for _, k := range x.Top {
		x.homes[k.Type] = append(x.homes[k.Type], "")
	}
	return x
})

var noBlock Block

func blockByID(id string) *Block {
	if b := language().byID[id]; b != nil {
		return b
	}
	return &noBlock
}

// homesOf says in words where blocks of a type may stand; "" for an unknown type.
func homesOf(kind string) string {
	var words []string
	for _, h := range language().homes[kind] {
		if h == "" {
			h = "the top level, outside all blocks"
		} else {
			h = "a block " + h
		}
		words = append(words, h)
	}
	return listed(words, "or")
}
