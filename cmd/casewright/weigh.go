package main

import (
	"bytes"
	"fmt"

	"casewright/internal/measure"
	"casewright/internal/solid"

	"github.com/spf13/cobra"
)

func newWeigh() *cobra.Command {
	var drawers, doors float64
	var loaded bool
	c := &cobra.Command{
		Use:   "weigh [PATH]",
		Short: "Weigh the piece and find its centre of gravity",
		Long: `Weighs the wood of the commission in PATH (by default the current folder): each
assembly and the whole, at the moisture each wood has today, and where the centre of
gravity lies. Weights are of average wood of the species; a board can be a tenth off.
Hardware is not weighed.

With drawers drawn out or doors open the centre moves forward: what matters for tipping.
Whether a piece is safe to stand or hang is a matter of the standard for its kind, of
local codes and of licensed practice; these are figures to begin from.`,
		Example: `  casewright weigh examples/sideboard
  casewright weigh examples/sideboard --drawers 0.66 --doors 90
  casewright weigh examples/bookcase --loaded`,
		Args: atMost(1, "one PATH"),
		RunE: func(c *cobra.Command, args []string) error {
			if drawers < 0 || drawers > 1 {
				return fmt.Errorf("--drawers is a share of a drawer's depth, from 0 (shut) to 1 (all the way out)")
			}
			if doors < 0 || doors > 180 {
				return fmt.Errorf("--doors is an angle in degrees, from 0 (shut) to 180")
			}
			return runWeigh(c, args, solid.State{Drawers: drawers, Doors: measure.Degrees(doors)}, loaded)
		},
	}
	c.Flags().Float64Var(&drawers, "drawers", 0, "how far all drawers are out, as a share of their depth")
	c.Flags().Float64Var(&doors, "doors", 0, "how far all doors are open, in degrees")
	c.Flags().BoolVar(&loaded, "loaded", false, "with what the text says its shelves carry")
	return c
}

func runWeigh(c *cobra.Command, args []string, s solid.State, loaded bool) error {
	job, err := openShaped(c, args)
	if err != nil {
		return err
	}
	if loaded {
		s.Contents = job.Model.ShelfContents()
	}
	return write(c.OutOrStdout(), job.weights(job.Model.Weigh(s)))
}

func (j *commission) weights(w solid.Weights) []byte {
	var b bytes.Buffer
	t := table{columns: []column{{title: ""}, {title: "assembly"}, {title: "weight", figure: true}, {title: "from the left", figure: true},
		{title: "from the front", figure: true}, {title: "up", figure: true}}}
	for i, a := range j.Piece.Assemblies {
		t.rows = append(t.rows, row{cells: append([]string{a.Letter, a.Name}, j.load(w.Assemblies[i])...)})
	}
	t.rows = append(t.rows, row{cells: append([]string{"", "all of it"}, j.load(w.Whole)...)})
	t.write(&b)
	fmt.Fprintf(&b, "\nCentres of gravity from the left front bottom corner of case %q.\n", j.Spec.Cases[0].Name)
	return b.Bytes()
}

// load is a load's weight and centre in the commission's units.
func (j *commission) load(l solid.Load) []string {
	style := j.Spec.Commission.Style()
	weight := fmt.Sprintf("%.1f kg", float64(l.Mass))
	if style.Unit == measure.Inches {
		weight = fmt.Sprintf("%.1f lb", l.Mass.Pounds())
	}
	out := []string{weight}
	for _, mm := range l.Centre {
		out = append(out, style.FormatUnit(measure.Length(mm*float64(measure.Millimetre))))
	}
	return out
}
