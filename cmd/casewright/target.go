package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"casewright/internal/piece"
	"casewright/internal/why"
)

// target is a thing with sizes that can be asked about.
type target struct {
	kind  targetKind
	keys  []string // what it can be called, each its own or the likeliest's
	name  string   // its printed name, which others may have too
	path  string
	title string
	part  *piece.Part // nil for what is no part
	sizes []sizeWord
}

type targetKind uint8

const (
	aPart targetKind = iota
	anOpening
	anAssembly
	aCurve
)

type sizeWord struct {
	word string
	size why.Size
}

var sizeWords = []string{"length", "width", "thickness", "shoulder", "height", "depth", "room", "chord", "rise", "flats",
	"blank", "blank.length", "blank.width", "blank.thickness"}

func isSizeWord(word string) bool { return slices.Contains(sizeWords, word) }

// targets are all things with sizes, parts first.
func (j *commission) targets() []target {
	var out []target
	for _, p := range j.Piece.Parts {
		out = append(out, j.partTarget(p))
	}
	for _, o := range j.Piece.Openings {
		out = append(out, target{kind: anOpening, keys: []string{o.Path}, path: o.Path, title: "opening " + o.Path,
			sizes: given(sizeWord{"width", o.Width}, sizeWord{"height", o.Height}, sizeWord{"depth", o.Depth})})
	}
	for _, a := range j.Piece.Assemblies {
		out = append(out, target{kind: anAssembly, keys: []string{a.Letter, a.Path}, name: a.Name, path: a.Path, title: fmt.Sprintf("%s %s (%s), outside", a.Letter, a.Name, a.Path),
			sizes: given(sizeWord{"width", a.Size[0]}, sizeWord{"height", a.Size[1]}, sizeWord{"depth", a.Size[2]})})
	}
	for _, c := range j.Piece.Curves {
		out = append(out, target{kind: aCurve, keys: []string{c.Name}, title: "curve “" + c.Name + "”",
			sizes: given(sizeWord{"chord", c.Spec.Chord}, sizeWord{"rise", c.Spec.Rise}, sizeWord{"flats", c.Spec.Flats})})
	}
	return out
}

func (j *commission) partTarget(p *piece.Part) target {
	t := target{keys: []string{p.Mark, p.Path}, name: p.Name, path: p.Path, title: fmt.Sprintf("%s %s (%s)", p.Mark, p.Name, p.Path), part: p,
		sizes: given(
			sizeWord{"length", p.Length}, sizeWord{"width", p.Width}, sizeWord{"thickness", p.Thickness}, sizeWord{"shoulder", p.Shoulder},
			sizeWord{"blank.length", p.Blank.Length}, sizeWord{"blank.width", p.Blank.Width}, sizeWord{"blank.thickness", p.Blank.Thickness})}
	for _, f := range j.Piece.Fits {
		if f.Part == p {
			t.sizes = append(t.sizes, given(sizeWord{"room", f.Room})...)
		}
	}
	return t
}

func given(all ...sizeWord) []sizeWord {
	var out []sizeWord
	for _, s := range all {
		if s.size.Given() {
			out = append(out, s)
		}
	}
	return out
}

// why explains what is asked about, lists what is below it, or says what may
// have been meant.
func (j *commission) why(what string) ([]byte, error) {
	all := j.targets()
	for key, word := range splits(what) {
		found := called(all, key)
		switch {
		case len(found) > 0 && word == "":
			return j.explainAll(found[0]), nil
		case len(found) > 0:
			return j.explainOne(found, key, word)
		}
		if inside := below(all, key); len(inside) > 0 && word == "" {
			return listBelow(key, inside), nil
		} else if len(inside) > 0 {
			return nil, fmt.Errorf("%s is divided and has no %s of its own\n  what is below it: casewright why %s", key, strings.ReplaceAll(word, ".", " "), key)
		}
		switch named := ofName(all, key); {
		case len(named) > 1:
			return nil, several(named, key, word)
		case len(named) == 1 && word == "":
			return j.explainAll(named[0]), nil
		case len(named) == 1:
			return j.explainOne(named, key, word)
		}
	}
	return nil, unknown(all, what)
}

// splits are the ways to read what is asked about: as a whole, and as a thing
// with one of its sizes behind a dot.
func splits(what string) func(yield func(key, word string) bool) {
	return func(yield func(key, word string) bool) {
		if !yield(what, "") {
			return
		}
		for dot := strings.LastIndexByte(what, '.'); dot > 0; dot = strings.LastIndexByte(what[:dot], '.') {
			if word := strings.ToLower(what[dot+1:]); isSizeWord(word) && !yield(what[:dot], word) {
				return
			}
		}
	}
}

// called are the things that a key may mean, the likeliest first.
func called(all []target, key string) []target {
	var found []target
	for _, t := range all {
		if slices.ContainsFunc(t.keys, func(k string) bool { return strings.EqualFold(k, key) }) {
			found = append(found, t)
		}
	}
	return found
}

// ofName are the parts and assemblies of a printed name.
func ofName(all []target, name string) []target {
	var found []target
	for _, t := range all {
		if t.name != "" && strings.EqualFold(t.name, name) {
			found = append(found, t)
		}
	}
	return found
}

// below are the things whose paths go on from a path.
func below(all []target, path string) []target {
	path = strings.ToLower(path) + "."
	var found []target
	for _, t := range all {
		if strings.HasPrefix(strings.ToLower(t.path), path) {
			found = append(found, t)
		}
	}
	return found
}

// listBelow lists what is below a path that is no thing of its own: what holds
// others first.
func listBelow(path string, inside []target) []byte {
	var b bytes.Buffer
	b.WriteString("below " + path + "\n\n")
	t := table{columns: []column{{title: "mark"}, {title: "path"}, {title: "which is"}}}
	for _, kind := range []targetKind{anOpening, anAssembly, aPart} {
		heading := map[targetKind]string{anOpening: "openings", anAssembly: "assemblies", aPart: "parts"}[kind]
		for _, x := range inside {
			if x.kind != kind {
				continue
			}
			if heading != "" {
				t.rows = append(t.rows, row{heading: heading})
				heading = ""
			}
			t.rows = append(t.rows, row{cells: cellsOf(x)})
		}
	}
	t.write(&b)
	return b.Bytes()
}

func cellsOf(t target) []string {
	if t.keys[0] == t.path {
		return []string{"", t.path, ""} // an opening: it has no mark
	}
	return []string{t.keys[0], t.path, t.name}
}

// several says which things share a name, for only one can be asked about.
func several(named []target, name, word string) error {
	var b strings.Builder
	kind := "parts"
	if slices.ContainsFunc(named, func(t target) bool { return t.kind != aPart }) {
		kind = "things"
	}
	fmt.Fprintf(&b, "%d %s are called %q; ask for one by its mark:", len(named), kind, clip(name))
	for _, t := range named {
		mark := strings.TrimSuffix(t.keys[0]+"."+word, ".")
		fmt.Fprintf(&b, "\n  %-*s  %s", len(word)+4, mark, t.path)
	}
	return fmt.Errorf("%s", b.String())
}

// unknown says what may have been meant: a thing, the beginning of a path, a
// name, or a size of one of them.
func unknown(all []target, what string) error {
	var known []string
	for _, t := range all {
		known = append(known, t.keys...)
		for _, k := range t.keys {
			for _, s := range t.sizes {
				known = append(known, k+"."+s.word)
			}
		}
		for dot := strings.LastIndexByte(t.path, '.'); dot > 0; dot = strings.LastIndexByte(t.path[:dot], '.') {
			known = append(known, t.path[:dot])
		}
		if t.name != "" {
			known = append(known, t.name)
		}
	}
	return fmt.Errorf("the piece has nothing called %q%s\n  “casewright parts” lists the marks, “casewright parts --csv” the paths", clip(what), didYouMean(what, known))
}
