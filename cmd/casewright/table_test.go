package main

import (
	"bytes"
	"strings"
	"testing"

	"casewright/internal/testkit"
)

// Wholes end in one column and fractions begin in one, whatever stands before
// them: 136 is the widest whole, so 26 is set one further, and 1/2 begins where
// the 3/4 of 26 3/4 does. Widths are those on the screen: two for each of 側板.
func TestTable(t *testing.T) {
	tab := table{columns: []column{{title: "part"}, {"length", true}, {title: "nothing"}, {title: "note"}}}
	for _, c := range [][]string{
		{"rail", "26 3/4", "", "a"}, {"é × e\u0301", "~9/16", "", "b"}, {"側板", "~4", "", ""}, {"", "", "", "c"}, {"half", "1/2", "", "d"}, {"mm", "136.5", "", "e"},
	} {
		tab.rows = append(tab.rows, row{cells: c})
	}
	tab.rows = append(tab.rows, row{heading: "B  door"})
	var b bytes.Buffer
	tab.write(&b)
	testkit.Diff(t, strings.Split(strings.TrimPrefix(`
part     length  note
rail    26 3/4   a
é × é     ~9/16  b
側板    ~4
                 c
half       1/2   d
mm     136.5     e

B  door
`, "\n"), "\n"), strings.Split(strings.ReplaceAll(b.String(), "e\u0301", "é"), "\n"))
}

func TestProse(t *testing.T) {
	var b bytes.Buffer
	prose(&b, "  ", strings.Repeat("wood ", 30)+strings.Repeat("x", 100))
	prose(&b, "  ", " ")
	lines := strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
	if len(lines) != 3 || lines[2] != "  "+strings.Repeat("x", 100) {
		t.Errorf("got %q", lines)
	}
	for _, l := range lines[:2] {
		if width(l) > wrapAt || !strings.HasPrefix(l, "  wood") {
			t.Errorf("got %q", l)
		}
	}
}

func TestNearest(t *testing.T) {
	words := []string{"check", "parts", "why", "book", "explain", "init"}
	for word, want := range map[string]string{
		"chek": "check", "CHECK": "check", "part": "parts", "boko": "book", "expl": "explain", "wy": "why", "i": "", "": "", "chainsaw": "",
		strings.Repeat("check", 100): "",
	} {
		if got := nearest(word, words); got != want {
			t.Errorf("%q: got %q, want %q", word, got, want)
		}
	}
}
