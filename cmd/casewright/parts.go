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

type partsFlags struct{ json, csv, short bool }

func newParts() *cobra.Command {
	var f partsFlags
	c := &cobra.Command{
		Use:   "parts [PATH]",
		Short: "List all parts with their sizes",
		Long: `Lists every part of the commission in the folder or file PATH (by default the current
folder), by assembly, each with its mark.

Sizes are finished sizes with all joinery: length runs with the grain, and the length
between shoulders stands beside it. They are printed as the rule reads, rounded once
for the whole piece so that what fills a space still adds up. A size with ~ before it
is planned only: it waits for its opening to be measured.

“grain” is the way the length runs, “show” the face that is seen, “edge” the long edge
to measure from, all as seen from before the piece.

With --csv and --json sizes are decimal numbers of the commission's unit, rounded as
in the table; JSON has the exact size in nanometres as well.`,
		Example: `  casewright parts examples/hall-cabinet
  casewright parts examples/hall-cabinet --short
  casewright parts examples/hall-cabinet --csv > parts.csv`,
		Args: atMost(1, "one PATH"),
		RunE: func(c *cobra.Command, args []string) error { return runParts(c, args, f) },
	}
	c.Flags().BoolVar(&f.csv, "csv", false, "print a table for spreadsheets")
	c.Flags().BoolVar(&f.json, "json", false, "print JSON")
	c.Flags().BoolVar(&f.short, "short", false, "leave out blank, grain, show face and edge")
	return c
}

func runParts(c *cobra.Command, args []string, f partsFlags) error {
	if (f.json || f.csv) && f.short || f.json && f.csv {
		return errors.New("--json, --csv and --short exclude each other: give one of them")
	}
	job, err := openSound(c, args)
	if err != nil {
		return err
	}
	switch {
	case f.json:
		return writeJSON(c.OutOrStdout(), job.partsJSON())
	case f.csv:
		return job.writeCSV(c.OutOrStdout())
	}
	return write(c.OutOrStdout(), job.partsTable(f.short))
}

// partsTable is the list for a person.
func (j *commission) partsTable(short bool) []byte {
	var b bytes.Buffer
	p, f := j.Piece, newPrinter(j.Spec.Commission)
	fmt.Fprintf(&b, "%s: %s, sizes in %s\n\n", j.title(), count(len(p.Parts), "part", "parts"), j.graduations(f))
	t := table{columns: []column{{title: "mark"}, {title: "part"}, {title: "wood"}, {"length", true}, {"width", true}, {"thick", true}, {"shoulder", true}}}
	if !short {
		t.columns = append(t.columns, column{title: "blank"}, column{title: "grain"}, column{title: "show"}, column{title: "edge"})
	}
	t.columns = append(t.columns, column{title: "standing"}, column{title: "belongs with"})
	for _, a := range p.Assemblies {
		t.rows = append(t.rows, row{heading: assemblyHeading(a)})
		for _, q := range a.Parts {
			t.rows = append(t.rows, row{cells: j.partCells(f, q, short)})
		}
	}
	t.write(&b)
	if waiting := j.firstWaiting(); waiting != nil {
		b.WriteByte('\n')
		b.WriteString("~ planned: waits for its opening to be measured. Write what the rule says into the\n")
		fmt.Fprintf(&b, "text, and the size follows: measured %q { … }\n", waiting.Path)
	}
	return b.Bytes()
}

// assemblyHeading is the letter and the name, and the path where the name does
// not say it.
func assemblyHeading(a *piece.Assembly) string {
	if a.Path == a.Name {
		return a.Letter + "  " + a.Name
	}
	return fmt.Sprintf("%s  %s (%s)", a.Letter, a.Name, a.Path)
}

func (j *commission) partCells(f printer, q *piece.Part, short bool) []string {
	size := func(s why.Size) string {
		if !s.Given() {
			return ""
		}
		text := f.settled(j.Piece.Shown(s))
		if waits(q, s) {
			return "~" + text
		}
		return text
	}
	cells := []string{q.Mark, q.Name, q.Wood.Name, size(q.Length), size(q.Width), size(q.Thickness), size(q.Shoulder)}
	if !short {
		blank := size(q.Blank.Length) + " × " + size(q.Blank.Width) + " × " + size(q.Blank.Thickness)
		cells = append(cells, blank, grainRuns(q), showFace(q), reference(q))
	}
	return append(cells, standing(q), belongs(q))
}

// standing is how far a part has come, in words.
func standing(q *piece.Part) string {
	if q.WaitsFor != nil {
		return "waits for " + q.WaitsFor.Path
	}
	return string(q.Standing)
}

// belongs is what a part must be made together with.
func belongs(q *piece.Part) string {
	var out []string
	if q.Mirror != nil {
		out = append(out, "mirrors "+q.Mirror.Mark)
	}
	if q.Set != nil {
		out = append(out, q.Set.Kind+" “"+q.Set.Name+"”")
	}
	if q.Bow != nil {
		out = append(out, "curve “"+q.Bow.Curve.Name+"”")
	}
	if others := joinedWith(q); len(others) > 0 {
		out = append(out, "one blank with "+strings.Join(others, " "))
	}
	return strings.Join(out, ", ")
}

// joinedWith are the marks of the parts that share this part's blank.
func joinedWith(q *piece.Part) []string {
	var out []string
	for _, o := range q.Blank.Joined {
		if o != q {
			out = append(out, o.Mark)
		}
	}
	return out
}

func (j *commission) title() string {
	if t := j.Spec.Commission.Title; t.Given() {
		return t.Value
	}
	return j.Spec.Commission.Name
}

// graduations is the unit of the sizes and what they are rounded to.
func (j *commission) graduations(f printer) string {
	c := j.Spec.Commission
	if c.Unit == measure.Millimetres {
		return "mm to " + f.exact(measure.Length(c.Rule))
	}
	s := "inches to " + f.gaps.Format(measure.Length(c.Rule))
	if c.Gaps != c.Rule {
		s += ", at gaps to " + f.gaps.Format(measure.Length(c.Gaps))
	}
	return s
}

// firstWaiting is the opening that the first waiting part waits for.
func (j *commission) firstWaiting() *piece.Opening {
	for _, q := range j.Piece.Parts {
		if q.WaitsFor != nil {
			return q.WaitsFor
		}
	}
	return nil
}
