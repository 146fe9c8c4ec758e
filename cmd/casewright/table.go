package main

import (
	"bytes"
	"strings"

	"github.com/rivo/uniseg"
)

// wrapAt is the width prose is wrapped to, the same as that of messages.
const wrapAt = 84

// column is one column of a table in plain text.
type column struct {
	title  string
	figure bool // numbers: wholes end and fractions begin at one line
}

// table is rows in groups, each group under a heading. Columns are as wide
// throughout as their widest cell; one that is empty throughout is left out.
type table struct {
	columns []column
	rows    []row
}

// row is a heading, or as many cells as the table has columns.
type row struct {
	heading string
	cells   []string
}

const between = "  " // columns

func (t *table) write(b *bytes.Buffer) {
	wholes, widths, used := t.measure()
	line := func(cells []string) {
		var l strings.Builder
		for i, cell := range cells {
			if !used[i] {
				continue
			}
			l.WriteString(cell + strings.Repeat(" ", widths[i]-width(cell)) + between)
		}
		b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
	}
	titles := make([]string, len(t.columns))
	for i, c := range t.columns {
		titles[i] = c.title
		if c.figure {
			titles[i] = strings.Repeat(" ", max(0, min(wholes[i], widths[i]-width(c.title)))) + c.title
		}
	}
	line(titles)
	for _, r := range t.rows {
		if r.heading != "" {
			b.WriteString("\n" + r.heading + "\n")
			continue
		}
		cells := make([]string, len(r.cells))
		for i, cell := range r.cells {
			cells[i] = t.lined(i, cell, wholes[i])
		}
		line(cells)
	}
}

// lined puts a figure so that its whole ends where the others' do.
func (t *table) lined(i int, cell string, wholes int) string {
	if !t.columns[i].figure || cell == "" {
		return cell
	}
	n := wholes - width(whole(cell))
	if !strings.ContainsAny(whole(cell), "0123456789") {
		n++ // a fraction alone stands where the blank before it would be passed
	}
	return strings.Repeat(" ", n) + cell
}

// measure is the width of the widest whole of each column, the width of each
// column, and whether it has anything in it.
func (t *table) measure() (wholes, widths []int, used []bool) {
	wholes, widths, used = make([]int, len(t.columns)), make([]int, len(t.columns)), make([]bool, len(t.columns))
	for _, r := range t.rows {
		for i, cell := range r.cells {
			used[i] = used[i] || cell != ""
			if t.columns[i].figure {
				wholes[i] = max(wholes[i], width(whole(cell)))
			}
		}
	}
	for i, c := range t.columns {
		widths[i] = width(c.title)
	}
	for _, r := range t.rows {
		for i, cell := range r.cells {
			widths[i] = max(widths[i], width(t.lined(i, cell, wholes[i])))
		}
	}
	return wholes, widths, used
}

// whole is the part of a printed size before its fraction: "~12" of "~12 1/8",
// "136" of "136.5", "~" of "~9/16".
func whole(size string) string {
	if i := strings.IndexAny(size, " ."); i >= 0 {
		return size[:i]
	}
	if strings.Contains(size, "/") {
		return size[:strings.IndexFunc(size, func(r rune) bool { return r >= '0' && r <= '9' })]
	}
	return size
}

func width(s string) int { return uniseg.StringWidth(s) }

// prose writes text wrapped, every line indented.
func prose(b *bytes.Buffer, indent, text string) { hanging(b, indent, indent, text) }

// hanging writes text wrapped, its first line indented in another way than the
// rest.
func hanging(b *bytes.Buffer, first, rest, text string) {
	at := 0
	for word := range strings.FieldsSeq(text) {
		switch {
		case at == 0:
			b.WriteString(first)
			at = width(first)
		case at+1+width(word) > wrapAt:
			b.WriteString("\n" + rest)
			at = width(rest)
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += width(word)
	}
	if at > 0 {
		b.WriteByte('\n')
	}
}
