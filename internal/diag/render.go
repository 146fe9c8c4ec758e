package diag

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// wrapAt is the width messages are wrapped to: a half-screen terminal beside
// the text, and short enough to read at a glance.
const wrapAt = 84

// Sources gives the text of a file by the name used in spans; ok is false when
// it is not at hand, and then no source line is shown.
type Sources func(file string) (text []byte, ok bool)

// Render writes one diagnostic for a terminal: heading, source line with
// carets, figure and limit, then the ways out. It writes plain text.
func Render(w io.Writer, d Diagnostic, src Sources) {
	head := d.Severity.String()
	if d.Accepted != "" {
		head = "accepted " + head
	}
	fmt.Fprintf(w, "%s %s: %s\n", head, d.Code, oneLine(d.Summary))
	if d.Where != "" {
		fmt.Fprintf(w, "   at %s\n", d.Where)
	}
	snippet(w, d.Subject, "", src)
	for _, r := range d.Related {
		snippet(w, r.Span, r.Message, src)
	}
	paragraph(w, "   ", d.Detail)
	labelled(w, "found", d.Figure)
	labelled(w, "limit", d.Limit)
	labelled(w, "source", d.Source)
	for _, e := range d.Edits {
		labelled(w, "mend", e.Says)
	}
	labelled(w, "accepted because", d.Accepted)
}

func labelled(w io.Writer, label, text string) {
	if text != "" {
		paragraph(w, "   ", label+": "+text)
	}
}

// snippet shows the line a span starts on with carets under the span.
func snippet(w io.Writer, s Span, message string, src Sources) {
	if s.IsZero() {
		return
	}
	note := ""
	if message != "" {
		note = "  " + oneLine(message)
	}
	fmt.Fprintf(w, "  --> %s:%d:%d%s\n", s.File, s.Start.Line, s.Start.Column, note)
	text, ok := src(s.File)
	if !ok || s.Start.Offset > len(text) {
		return
	}
	line, from := lineAround(text, s.Start.Offset)
	to := min(s.End.Offset, from+len(line))
	before := line[:s.Start.Offset-from]
	under := line[len(before):max(to-from, len(before))]
	margin := fmt.Sprintf("%4d | ", s.Start.Line)
	line, before, under = window(line, before, under)
	fmt.Fprintf(w, "%s%s\n", margin, printable(line))
	fmt.Fprintf(w, "%s%s%s\n", strings.Repeat(" ", len(margin)-2)+"| ",
		strings.Repeat(" ", uniseg.StringWidth(printable(before))),
		strings.Repeat("^", max(1, uniseg.StringWidth(printable(under)))))
}

// window cuts very long lines down to the part around the span, so that ten
// megabytes on one line still print a readable message.
func window(line, before, under string) (string, string, string) {
	const room = 100
	if len(line) <= 2*room {
		return line, before, under
	}
	start := max(0, len(before)-room/2)
	end := min(len(line), len(before)+room)
	if len(under) > end-len(before) {
		under = under[:end-len(before)]
	}
	return line[start:end], before[start:], under
}

func lineAround(text []byte, offset int) (line string, from int) {
	from = offset
	for from > 0 && text[from-1] != '\n' {
		from--
	}
	to := offset
	for to < len(text) && text[to] != '\n' {
		to++
	}
	return strings.TrimSuffix(string(text[from:to]), "\r"), from
}

// printable replaces what would disturb a terminal: tabs by a blank, control
// characters and broken UTF-8 by a mark.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case r < ' ' || r == 0x7f || r == utf8.RuneError:
			return '·'
		}
		return r
	}, s)
}

func oneLine(s string) string { return printable(strings.ReplaceAll(s, "\n", " ")) }

// paragraph writes text wrapped at wrapAt with every line indented.
func paragraph(w io.Writer, indent, text string) {
	for para := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		width := 0
		for word := range strings.FieldsSeq(printable(para)) {
			n := uniseg.StringWidth(word)
			switch {
			case width == 0:
				fmt.Fprint(w, indent)
			case width+1+n > wrapAt:
				fmt.Fprint(w, "\n"+indent)
				width = 0
			default:
				fmt.Fprint(w, " ")
				width++
			}
			fmt.Fprint(w, word)
			width += n
		}
		if width > 0 {
			fmt.Fprintln(w)
		}
	}
}
