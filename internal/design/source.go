package design

import (
	"bytes"
	"slices"
	"unicode/utf8"

	"casewright/internal/diag"

	"github.com/hashicorp/hcl/v2"
	"github.com/rivo/uniseg"
)

// Source is one text of a commission. Name is what diagnostics call it, most
// often a file's name.
type Source struct {
	Name string
	Text []byte
}

// file is a source while it is read.
type file struct {
	name  string
	text  []byte
	lines []int // offset of each line's first byte
	scan  *scan
}

func newFile(s Source) *file {
	f := &file{name: s.Name, text: s.Text, lines: []int{0}}
	for at := 0; ; {
		n := bytes.IndexByte(s.Text[at:], '\n')
		if n < 0 {
			return f
		}
		at += n + 1
		f.lines = append(f.lines, at)
	}
}

// line is the number, from 0, of the line an offset stands on.
func (f *file) line(offset int) int {
	i, found := slices.BinarySearch(f.lines, offset)
	if !found {
		i--
	}
	return i
}

// lineEnd is the offset just after the last byte of a line, its newline left out.
func (f *file) lineEnd(line int) int {
	if line+1 < len(f.lines) {
		return f.lines[line+1] - 1
	}
	return len(f.text)
}

// pos turns an offset into a place. Offsets beyond the text mean its end.
func (f *file) pos(offset int) diag.Pos {
	offset = max(0, min(offset, len(f.text)))
	line := f.line(offset)
	return diag.Pos{Line: line + 1, Column: columns(f.text[f.lines[line]:offset]) + 1, Offset: offset}
}

// span is the stretch from start up to, not including, end.
func (f *file) span(start, end int) diag.Span {
	start = max(0, min(start, len(f.text)))
	return diag.Span{File: f.name, Start: f.pos(start), End: f.pos(max(start, end))}
}

// at is the stretch of an HCL range.
func (f *file) at(r hcl.Range) diag.Span { return f.span(r.Start.Byte, r.End.Byte) }

// columns counts the grapheme clusters of a stretch of one line.
func columns(b []byte) int {
	for _, c := range b {
		if c >= utf8.RuneSelf {
			return uniseg.GraphemeClusterCount(string(b))
		}
	}
	return len(b)
}
