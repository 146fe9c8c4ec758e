package model

import (
	"fmt"
	"strings"
)

// Kind is a way in which input can be unfit for a file. It is an error, so
// that errors.Is(err, model.Open) asks for one.
type Kind string

// What can be wrong.
const (
	Empty      Kind = "nothing to write"
	Unnamed    Kind = "without a name"
	BadTree    Kind = "tree of nodes not as it must be"
	BadIndex   Kind = "index out of range"
	BadPlace   Kind = "place that does more than turn and move"
	NotFinite  Kind = "coordinate that is no number, or farther than a kilometre"
	Degenerate Kind = "face or edge without size"
	Open       Kind = "open edge: a face is missing or turned over"
	Crowded    Kind = "edge between more than two faces"
	NotFlat    Kind = "corner outside the plane of its face"
	Crossing   Kind = "outline that crosses itself or its holes"
	Inverted   Kind = "inside out"
	TooLarge   Kind = "more than the format holds"
	NotText    Kind = "text that the format cannot hold"
)

// Error is the kind in words.
func (k Kind) Error() string { return string(k) }

// Fault says what is wrong with the input and where. It unwraps to its Kind.
// Its words are for whoever wrote the caller: a solid that was made soundly
// never causes one.
type Fault struct {
	Kind   Kind
	Node   string // name of the node; "" if there is none
	Face   int    // index of the face or face tag, negative if none is to blame
	At     Vec    // where, in the node's own frame; zero if nowhere in particular
	Detail string // the rest, if any
}

// none is the Face of a fault that no face is to blame for.
const none = -1

// Error is one line.
func (f *Fault) Error() string {
	var b strings.Builder
	if f.Node != "" {
		fmt.Fprintf(&b, "%s: ", f.Node)
	}
	b.WriteString(string(f.Kind))
	if f.Face >= 0 {
		fmt.Fprintf(&b, ", face %d", f.Face)
	}
	if f.At != (Vec{}) {
		fmt.Fprintf(&b, ", near (%.6g, %.6g, %.6g) mm", f.At[0], f.At[1], f.At[2])
	}
	if f.Detail != "" {
		fmt.Fprintf(&b, ": %s", f.Detail)
	}
	return b.String()
}

// Unwrap is the kind.
func (f *Fault) Unwrap() error { return f.Kind }

// named puts a node's name to a fault that came up without one.
func (f *Fault) named(node string) error {
	if f == nil {
		return nil
	}
	g := *f
	g.Node = node
	return &g
}
