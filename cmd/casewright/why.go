package main

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"

	"github.com/spf13/cobra"
)

func newWhy() *cobra.Command {
	return &cobra.Command{
		Use:   "why [PATH] WHAT",
		Short: "Tell how a size came about",
		Long: `Tells how a size of the commission in PATH (by default the current folder) came about:
the sum in names, the same sum in figures, and below it where each of its terms comes
from, down to what stands in the text, was measured, or is a default with its source.

WHAT is a part by its mark, path or name, an opening, an assembly by its letter, or a
curve, with a dot and the size behind it; without one all its sizes are told, one step
deep. The beginning of a path lists what is below it.

  parts       length, width, thickness, shoulder,
              blank.length, blank.width, blank.thickness,
              room (what a part that moves has to move in)
  openings    width, height, depth
  assemblies  width, height, depth
  curves      chord, rise, flats

Values on no mark of the rule are shown as decimals.`,
		Example: `  casewright why examples/hall-cabinet A3.length
  casewright why examples/hall-cabinet cabinet.upper.keys.width
  casewright why examples/hall-cabinet C1
  casewright why examples/hall-cabinet cabinet.upper
  casewright why A3.blank.length`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("why takes the size that is asked about, such as A3.length\n  see: casewright why --help")
			}
			return atMost(2, "PATH and WHAT")(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error {
			job, err := openSound(c, args[:len(args)-1])
			if err != nil {
				return err
			}
			text, err := job.why(args[len(args)-1])
			if err != nil {
				return err
			}
			return write(c.OutOrStdout(), text)
		},
	}
}

// explainAll tells all sizes of one thing, one step deep: told in full, they
// would repeat what they share.
func (j *commission) explainAll(t target) []byte {
	var b bytes.Buffer
	b.WriteString(t.title + "\n")
	for _, s := range t.sizes {
		b.WriteByte('\n')
		j.explain(&b, t.part, s, 1)
	}
	return b.Bytes()
}

// explainOne tells one size, or the three of a blank, of the first thing found
// that has it.
func (j *commission) explainOne(found []target, key, word string) ([]byte, error) {
	var has []string
	for _, t := range found {
		var b bytes.Buffer
		for _, s := range t.sizes {
			has = append(has, s.word)
			if s.word == word || strings.HasPrefix(s.word, word+".") {
				b.WriteByte('\n')
				j.explain(&b, t.part, s, 0)
			}
		}
		if b.Len() > 0 {
			return append([]byte(t.title+"\n"), b.Bytes()...), nil
		}
	}
	return nil, fmt.Errorf("%s has no %s\n  it has: %s", key, strings.ReplaceAll(word, ".", " "), strings.Join(has, ", "))
}

func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}

// explain writes one size with its sum and its fathers, as many levels down as
// deep says; 0 means all.
func (j *commission) explain(b *bytes.Buffer, p *piece.Part, s sizeWord, deep int) {
	f := newPrinter(j.Spec.Commission)
	fmt.Fprintf(b, "%s %s", strings.ReplaceAll(s.word, ".", " "), f.unit(f.settled(j.shown(s))))
	if shown := j.shown(s); shown != s.size.Length() {
		fmt.Fprintf(b, ", rounded from %s", f.unit(f.exact(s.size.Length())))
	}
	if p != nil && waits(p, s.size) {
		fmt.Fprintf(b, ", planned: waits for the opening %s to be measured", p.WaitsFor.Path)
	}
	b.WriteByte('\n')
	for i, l := range s.size.Explain(f.exact, deep) {
		indent := strings.Repeat("  ", l.Depth+1)
		figure := f.exact(l.Value)
		switch {
		case i == 0:
		case l.Names == "" && l.Rule == "": // nothing below it: one line tells all
			leaf(b, l, l.Called+": "+f.unit(figure)+", "+origin(l, figure))
			continue
		default:
			fmt.Fprintf(b, "%s%s: %s\n", strings.Repeat("  ", l.Depth), l.Called, f.unit(figure))
		}
		reason(b, indent, l, figure)
	}
}

// leaf writes a size that follows from no other. A place in a text is not parted
// from it, so that it can be clicked and searched for.
func leaf(b *bytes.Buffer, l why.Line, text string) {
	indent := strings.Repeat("  ", l.Depth)
	if l.Kind == why.Default {
		hanging(b, indent, indent+"  ", text)
		return
	}
	b.WriteString(indent + text + "\n")
}

// shown is a size as the piece prints it. Room that lies on a mark of the finer
// graduation of gaps is told by that mark.
func (j *commission) shown(s sizeWord) measure.Length {
	if _, exact := j.Spec.Commission.GapStyle().Exact(s.size.Length()); exact && s.word == "room" {
		return s.size.Length()
	}
	return j.Piece.Shown(s.size)
}

// reason writes where one size comes from.
func reason(b *bytes.Buffer, indent string, l why.Line, figure string) {
	switch {
	case l.Names != "":
		prose(b, indent, "= "+l.Names)
		prose(b, indent, "= "+l.Figures)
		written(b, indent, place(l))
	case l.Rule != "":
		prose(b, indent, l.Rule)
		if l.Source != "" && !strings.Contains(l.Rule, l.Source) {
			prose(b, indent, "source: "+l.Source)
		}
		written(b, indent, place(l))
	default:
		prose(b, indent, origin(l, figure))
	}
}

// origin tells where a size comes from that follows from no other. What was
// typed is repeated only where it was written in another way.
func origin(l why.Line, figure string) string {
	switch {
	case l.Kind == why.Default && l.Source == "":
		return "by default"
	case l.Kind == why.Default:
		return "by default (" + l.Source + ")"
	case l.Typed == figure:
		return l.Kind.String() + ", " + place(l)
	}
	return strings.TrimSpace(l.Kind.String()+" "+l.Typed) + ", " + place(l)
}

// place is the file, line and column behind a size, or "".
func place(l why.Line) string {
	if l.At.IsZero() {
		return ""
	}
	return fmt.Sprintf("%s:%d:%d", l.At.File, l.At.Start.Line, l.At.Start.Column)
}

func written(b *bytes.Buffer, indent, at string) {
	if at != "" {
		prose(b, indent, "written so, "+at)
	}
}
