package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"

	"casewright/internal/diag"

	"github.com/spf13/cobra"
)

func newCheck() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check [PATH]",
		Short: "Say what is wrong with the text and with the piece",
		Long: `Reads the commission in the folder or file PATH (by default the current folder),
works the piece out and says what stands against it.

Errors in the text go to standard error, all of them at once, each with its line and
a way to mend it. Without errors the piece is checked, and findings go to standard
output: a stop would hurt wood or people, a warning will likely cost wood, time or
looks, a note is worth knowing. Each has a code; “casewright explain CODE” tells more.

A finding you can live with is accepted in the text, with the reason:

  accept "machine.short" {
    reason = "all of them by hand"
  }

The exit code is 1 if there is an error, or a stop that is not accepted.`,
		Example: `  casewright check
  casewright check examples/hall-cabinet
  casewright check examples/hall-cabinet --json`,
		Args: atMost(1, "one PATH"),
		RunE: func(c *cobra.Command, args []string) error { return runCheck(c, pathArg(args), asJSON) },
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print everything, errors too, as JSON to standard output")
	return c
}

func runCheck(c *cobra.Command, path string, asJSON bool) error {
	job, err := open(path)
	if err != nil {
		return err
	}
	job.Shape(nil)
	switch {
	case asJSON:
		err = writeJSON(c.OutOrStdout(), job.checkJSON())
	case job.Sound():
		err = job.writeFindings(c.OutOrStdout())
	default:
		job.renderErrors(c.ErrOrStderr())
	}
	if err == nil && !job.Safe() {
		err = stopped{}
	}
	return err
}

func (j *commission) writeFindings(w io.Writer) error {
	var b bytes.Buffer
	for _, d := range j.Diags() {
		diag.Render(&b, d, j.text)
		fmt.Fprintln(&b)
	}
	if len(j.Piece.Parts) == 0 {
		fmt.Fprintln(&b, noParts)
	}
	fmt.Fprintln(&b, tally(j.Diags()))
	return write(w, b.Bytes())
}

// tally is the summary line.
func tally(list diag.List) string {
	if len(list) == 0 {
		return "nothing found"
	}
	s := fmt.Sprintf("%s: %d stop, %d warn, %s", count(len(list), "finding", "findings"),
		list.Count(diag.Stop), list.Count(diag.Warn), count(list.Count(diag.Note), "note", "notes"))
	if n := accepted(list); n > 0 {
		s += fmt.Sprintf(", %d accepted", n)
	}
	return s
}

func accepted(list diag.List) int {
	n := 0
	for _, d := range list {
		if d.Accepted != "" {
			n++
		}
	}
	return n
}

// checkJSON is what check prints as JSON.
type checkJSON struct {
	Commission string     `json:"commission"`
	Errors     int        `json:"errors"`
	Stops      int        `json:"stops"`
	Warnings   int        `json:"warnings"`
	Notes      int        `json:"notes"`
	Accepted   int        `json:"accepted"`
	Findings   []diagJSON `json:"findings"` // errors too, gravest first
}

type diagJSON struct {
	Code     string        `json:"code"`
	Severity string        `json:"severity"`
	Summary  string        `json:"summary"`
	Detail   string        `json:"detail,omitempty"`
	At       *spanJSON     `json:"at,omitempty"`
	Where    string        `json:"where,omitempty"`
	Found    string        `json:"found,omitempty"`
	Limit    string        `json:"limit,omitempty"`
	Source   string        `json:"source,omitempty"`
	Accepted string        `json:"accepted_because,omitempty"`
	Related  []relatedJSON `json:"related,omitempty"`
	Mends    []mendJSON    `json:"mends,omitempty"`
}

type spanJSON struct {
	File  string  `json:"file"`
	Start posJSON `json:"start"`
	End   posJSON `json:"end"`
}

// posJSON counts lines and columns from 1, columns in characters as one sees
// them, and bytes from 0.
type posJSON struct {
	Line   int `json:"line"`
	Column int `json:"column"`
	Offset int `json:"offset"`
}

type relatedJSON struct {
	At      *spanJSON `json:"at"`
	Message string    `json:"message"`
}

type mendJSON struct {
	Says string    `json:"says"`
	At   *spanJSON `json:"at"`
	Text string    `json:"text"`
}

func (j *commission) checkJSON() checkJSON {
	list := j.Diags()
	out := checkJSON{Commission: j.Spec.Commission.Name, Errors: list.Count(diag.Error), Stops: list.Count(diag.Stop),
		Warnings: list.Count(diag.Warn), Notes: list.Count(diag.Note), Accepted: accepted(list), Findings: []diagJSON{}}
	for _, d := range list {
		out.Findings = append(out.Findings, toJSON(d))
	}
	return out
}

func toJSON(d diag.Diagnostic) diagJSON {
	out := diagJSON{Code: d.Code, Severity: d.Severity.String(), Summary: d.Summary, Detail: d.Detail, At: spanOf(d.Subject),
		Where: d.Where, Found: d.Figure, Limit: d.Limit, Source: d.Source, Accepted: d.Accepted}
	for _, r := range d.Related {
		out.Related = append(out.Related, relatedJSON{spanOf(r.Span), r.Message})
	}
	for _, e := range d.Edits {
		out.Mends = append(out.Mends, mendJSON{e.Says, spanOf(e.Span), e.Text})
	}
	return out
}

func spanOf(s diag.Span) *spanJSON {
	if s.IsZero() {
		return nil
	}
	return &spanJSON{s.File, posJSON(s.Start), posJSON(s.End)}
}

func writeJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return err
	}
	return write(w, b.Bytes())
}

// write hands a whole result over at once.
func write(w io.Writer, b []byte) error {
	if _, err := w.Write(b); err != nil {
		return fmt.Errorf("the result could not be written: %w", err)
	}
	return nil
}
