package compile

import (
	"cmp"
	"slices"
	"strings"

	"casewright/internal/design"
	"casewright/internal/diag"
)

// woodAndAir are the errors of package piece that hang on a wood, species,
// season or shop block alone. All its others are about sizes, and a size that
// could not be read makes many others look wrong; they are told once the texts
// can be read.
var woodAndAir = []string{"E320", "E321", "E322", "E323"}

// independent picks from what is wrong with the piece what does not merely
// follow from what is wrong with the text.
func independent(spec *design.Spec, said, text diag.List) diag.List {
	if slices.ContainsFunc(text, unread) {
		return nil
	}
	blocks := readBlocks(spec)
	var out diag.List
	for _, d := range said {
		near := func(e diag.Diagnostic) bool {
			return e.Severity == diag.Error && e.Subject.File == d.Subject.File &&
				(e.Subject.Start.Line == d.Subject.Start.Line || blocks.share(e.Subject, d.Subject))
		}
		if slices.Contains(woodAndAir, d.Code) && !slices.ContainsFunc(text, near) {
			out = append(out, d)
		}
	}
	return out
}

// unread reports whether a stretch of text was skipped: then whole blocks may
// be missing, and anything may follow.
func unread(d diag.Diagnostic) bool {
	return d.Severity == diag.Error && strings.HasPrefix(d.Code, "E1")
}

// blocks are the heads of top-level blocks in the order of the texts. A block
// is taken to reach to the next head.
type blocks []head

type head struct {
	at    diag.Span
	small bool // a wood, species, season or shop block: one slip in it spoils it
}

func readBlocks(spec *design.Spec) blocks {
	bs := blocks{{spec.Commission.At, false}, {spec.Season.At, true}, {spec.Shop.At, true}, {spec.Site.At, false}}
	add := func(at diag.Span, small bool) { bs = append(bs, head{at, small}) }
	for _, w := range spec.Woods {
		add(w.At, true)
	}
	for _, s := range spec.Species {
		add(s.At, true)
	}
	for _, c := range spec.Curves {
		add(c.At, false)
	}
	for _, c := range spec.Cases {
		add(c.At, false)
	}
	for _, s := range spec.Stands {
		add(s.At, false)
	}
	for _, s := range spec.Slabs {
		add(s.At, false)
	}
	slices.SortFunc(bs, func(a, b head) int { return bySpan(a.at, b.at) })
	return bs
}

func bySpan(a, b diag.Span) int {
	return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Start.Offset, b.Start.Offset))
}

// share reports whether two places lie in the same small block.
func (bs blocks) share(a, b diag.Span) bool {
	i, j := bs.of(a), bs.of(b)
	return i == j && i >= 0 && bs[i].small
}

// of is the index of the head last before the place, or -1.
func (bs blocks) of(at diag.Span) int {
	i, found := slices.BinarySearchFunc(bs, at, func(h head, at diag.Span) int { return bySpan(h.at, at) })
	if found {
		return i
	}
	return i - 1
}
