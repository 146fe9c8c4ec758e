package check

import (
	"fmt"
	"slices"
	"strings"

	"casewright/internal/diag"
	"casewright/internal/piece"
)

// finding is what a rule has to say about one part, joint or place, before
// equal matters are put together. Where stays empty; Summary may hold {who},
// which becomes the names of all it is about, so its verb must fit one and
// many ("would bind", "can split").
type finding struct {
	diag.Diagnostic
	parts  []*piece.Part
	whole  *piece.Assembly // what it is about when that is all of an assembly, instead of parts
	place  string          // where it is, when it is about no part: "site", "lift car"
	one    string          // what it is called; "" takes the parts' names
	many   string          // for several: "through dovetails"; "" lists their names
	matter string          // findings alike in code, grade, acceptance and matter become one
	worse  int64           // the greatest speaks for its group
	item   string          // this one's line where the group lists its members; "" lists none
}

// group is one matter with all it is about.
type group struct {
	all   []finding
	worst int // the one that speaks
}

// gather puts like findings together, in the order in which the first of each
// was found.
func (r *run) gather() []*group {
	type key struct {
		code, accepted, matter string
		grade                  diag.Severity
	}
	byKey := map[key]*group{}
	var out []*group
	for _, f := range r.found {
		k := key{f.Code, f.Accepted, f.matter, f.Severity}
		g := byKey[k]
		if g == nil {
			g = &group{}
			byKey[k] = g
			out = append(out, g)
		}
		g.all = append(g.all, f)
		if f.worse > g.all[g.worst].worse {
			g.worst = len(g.all) - 1
		}
	}
	return out
}

// diagnostic words the group.
func (g *group) diagnostic(r *run) diag.Diagnostic {
	d := g.all[g.worst].Diagnostic
	d.Summary = strings.ReplaceAll(d.Summary, "{who}", g.who())
	d.Where = g.where(r)
	if g.differ() {
		d.Figure += ", at its worst"
	}
	if lines := g.items(); len(lines) > 0 {
		d.Detail = strings.Join(lines, "\n") + "\n" + d.Detail
	}
	return d
}

// differ reports whether the figures of the group are not all the same.
func (g *group) differ() bool {
	return slices.ContainsFunc(g.all, func(f finding) bool { return f.Figure != g.all[0].Figure })
}

// items are the members' own lines, each once.
func (g *group) items() []string {
	var out []string
	for _, f := range g.all {
		if f.item != "" && !slices.Contains(out, f.item) {
			out = append(out, f.item)
		}
	}
	if more := len(out) - mostItems; more > 0 {
		out = append(out[:mostItems], fmt.Sprintf("And %d more like these.", more))
	}
	return out
}

// parts are the parts of the whole group, each once.
func (g *group) parts() []*piece.Part {
	var out []*piece.Part
	for _, f := range g.all {
		for _, p := range f.parts {
			if !slices.Contains(out, p) {
				out = append(out, p)
			}
		}
	}
	return out
}

// wholes are the assemblies the group is about, each once.
func (g *group) wholes() []*piece.Assembly {
	var out []*piece.Assembly
	for _, f := range g.all {
		if f.whole != nil && !slices.Contains(out, f.whole) {
			out = append(out, f.whole)
		}
	}
	return out
}

// who names what the group is about.
func (g *group) who() string {
	var names []string
	for _, f := range g.all {
		name := f.one
		if name == "" && f.whole != nil {
			name = f.whole.Name
		}
		if name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	many := g.all[0].many
	switch {
	case len(g.all) > 1 && many != "":
		return fmt.Sprintf("%d %s", len(g.all), many)
	case len(names) > 0:
		return listed(names)
	}
	return called(g.parts())
}

// mostNames is how many names one line can hold and still be read.
const mostNames = 3

// listed joins names: "a, b and c".
func listed(names []string) string {
	if len(names) > mostNames {
		rest := len(names) - mostNames + 1
		names = append(slices.Clone(names[:mostNames-1]), fmt.Sprintf("%d more", rest))
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// called is what a maker would call the parts: "left side and top of cabinet",
// "bottom of left drawer and right drawer".
func called(parts []*piece.Part) string {
	var names, homes []string
	for _, p := range parts {
		if !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
		if home := p.Assembly.Name; home != p.Name && !slices.Contains(homes, home) {
			homes = append(homes, home)
		}
	}
	if len(homes) == 0 {
		return listed(names)
	}
	return listed(names) + " of " + listed(homes)
}

// where tells the marks, and the paths they stand for.
func (g *group) where(r *run) string {
	var letters, paths []string
	for _, a := range g.wholes() {
		letters, paths = append(letters, a.Letter), append(paths, a.Path)
	}
	if len(letters) > 0 {
		return marked(letters, onePattern(paths, r.assemblyPaths()))
	}
	parts := g.parts()
	if len(parts) == 0 {
		return g.all[g.worst].place
	}
	for _, p := range parts {
		paths = append(paths, p.Path)
	}
	return marked(marks(parts), onePattern(paths, r.partPaths()))
}

// How many marks, paths and lines are printed before the rest is only counted.
const (
	mostMarks = 16
	mostPaths = 4
	mostItems = 12
)

func shortened(words []string, most int) string {
	if len(words) > most {
		return strings.Join(words[:most], ", ") + fmt.Sprintf(" and %d more", len(words)-most)
	}
	return strings.Join(words, ", ")
}

func marked(marks, paths []string) string {
	return shortened(marks, mostMarks) + " (" + shortened(paths, mostPaths) + ")"
}

func (r *run) partPaths() []string {
	out := make([]string, len(r.p.Parts))
	for i, p := range r.p.Parts {
		out[i] = p.Path
	}
	return out
}

func (r *run) assemblyPaths() []string {
	out := make([]string, len(r.p.Assemblies))
	for i, a := range r.p.Assemblies {
		out[i] = a.Path
	}
	return out
}

// onePattern is the paths as one pattern, where one names just these of all.
func onePattern(paths, all []string) []string {
	if len(paths) < 2 {
		return paths
	}
	want := pattern(paths)
	if want == nil {
		return paths
	}
	n := 0
	for _, p := range all {
		if pathMatches(want, p) {
			n++
		}
	}
	if n != len(paths) {
		return paths
	}
	return []string{strings.Join(want, ".")}
}

// pattern is the path with * where the paths differ; nil where they have not
// even their length and first name in common.
func pattern(paths []string) []string {
	out := strings.Split(paths[0], ".")
	for _, path := range paths[1:] {
		names := strings.Split(path, ".")
		if len(names) != len(out) || names[0] != out[0] {
			return nil
		}
		for i := range out {
			if names[i] != out[i] {
				out[i] = "*"
			}
		}
	}
	return out
}

// pathMatches reports whether the path is the one wanted; * stands for any one
// name. It cuts nothing up, for it is asked once for every part.
func pathMatches(want []string, path string) bool {
	for i, w := range want {
		name, rest, more := strings.Cut(path, ".")
		if w != "*" && w != name || more == (i == len(want)-1) {
			return false
		}
		path = rest
	}
	return true
}
