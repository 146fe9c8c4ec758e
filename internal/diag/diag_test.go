package diag_test

import (
	"bytes"
	"strings"
	"testing"

	"casewright/internal/diag"
	"casewright/internal/testkit"
)

const text = "case \"box\" {\n\twidth = 23-1/2 # naïve ½\n}\n"

func span(word string) diag.Span {
	from := strings.Index(text, word)
	line := 1 + strings.Count(text[:from], "\n")
	col := from - strings.LastIndex(text[:from], "\n")
	return diag.Span{File: "a.hcl", Start: diag.Pos{Line: line, Column: col, Offset: from}, End: diag.Pos{Line: line, Column: col + len(word), Offset: from + len(word)}}
}

func sources(file string) ([]byte, bool) { return []byte(text), file == "a.hcl" }

func TestRender(t *testing.T) {
	var out bytes.Buffer
	diag.Render(&out, diag.Diagnostic{Code: "E110", Severity: diag.Error, Summary: "23-1/2 would be 23 less 1/2", Subject: span("23-1/2"),
		Detail:  "Makers write a hyphen between the whole and its fraction; in a sum it takes away. Neither reading is taken, so that no board is cut to the wrong one.",
		Related: []diag.Related{{Span: span("case"), Message: "in this case"}},
		Edits:   []diag.Edit{{Span: span("23-1/2"), Text: "23 1/2", Says: "write 23 1/2"}}}, sources)
	diag.Render(&out, diag.Diagnostic{Code: "movement.panel", Severity: diag.Stop, Summary: "the panel has no room", Where: "B5 panel",
		Figure: `grows 3/32"`, Limit: `room 1/16"`, Source: "a handbook, table 1", Accepted: "a trial piece held"}, sources)
	testkit.Golden(t, "render.golden", out.Bytes())
}

// Broken text, control characters and endless lines still print, on lines of a
// bearable length, without a character that could harm a terminal.
func TestRenderHostileText(t *testing.T) {
	hostile := "\x1b[31m" + strings.Repeat("x", 1_000_000) + "\xff\xfe\n"
	d := diag.Diagnostic{Code: "E101", Severity: diag.Error, Summary: "bad\nbytes \x1b[0m", Subject: diag.Span{File: "h",
		Start: diag.Pos{Line: 1, Column: 500_000, Offset: 500_000}, End: diag.Pos{Line: 1, Column: 900_000, Offset: 900_000}}}
	var out bytes.Buffer
	diag.Render(&out, d, func(string) ([]byte, bool) { return []byte(hostile), true })
	if strings.ContainsRune(out.String(), 0x1b) {
		t.Error("an escape reached the terminal")
	}
	for line := range strings.Lines(out.String()) {
		if len(line) > 300 {
			t.Errorf("a line of %d bytes", len(line))
		}
	}
}

func TestRenderOutsideTheText(t *testing.T) {
	var out bytes.Buffer
	d := diag.Diagnostic{Code: "E1", Severity: diag.Error, Summary: "s", Subject: diag.Span{File: "a.hcl", Start: diag.Pos{Line: 99, Column: 1, Offset: 9999}, End: diag.Pos{Offset: 10000}}}
	diag.Render(&out, d, sources)
	if !strings.Contains(out.String(), "a.hcl:99:1") {
		t.Errorf("got %q", out.String())
	}
}

func TestSortAndCount(t *testing.T) {
	at := func(offset int) diag.Span {
		return diag.Span{File: "a", Start: diag.Pos{Line: 1, Column: offset, Offset: offset}}
	}
	list := diag.List{
		{Code: "N1", Severity: diag.Note, Subject: at(1)},
		{Code: "E2", Severity: diag.Error, Subject: at(9)},
		{Code: "S1", Severity: diag.Stop, Subject: at(5), Accepted: "I know"},
		{Code: "E1", Severity: diag.Error, Subject: at(2)},
		{Code: "E2", Severity: diag.Error, Subject: at(9)},
	}
	var got []string
	for _, d := range list.Sort() {
		got = append(got, d.Code)
	}
	testkit.Diff(t, []string{"E1", "E2", "S1", "N1"}, got)
	if list.Count(diag.Stop) != 0 || !list.Has(diag.Error) || (diag.List{list[2]}).Has(diag.Stop) {
		t.Error("an accepted stop still counts")
	}
	if list[0].Code != "N1" {
		t.Error("Sort changed the list it was given")
	}
}
