package design

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Step leads from a block, or from the top level, to a block inside it: the
// Index-th, from 0, of those that have the type, and the label if one is said.
type Step struct {
	Type, Label string
	Index       int
}

// BlockPath leads to a block. The empty path is the top level.
type BlockPath []Step

// String is the path as a person would say it: case "box" / inside / row #2.
func (p BlockPath) String() string {
	if len(p) == 0 {
		return "the top level"
	}
	parts := make([]string, len(p))
	for i, s := range p {
		parts[i] = s.Type
		if s.Label != "" {
			parts[i] += " " + inQuotes(s.Label)
		}
		if s.Index > 0 {
			parts[i] += fmt.Sprintf(" #%d", s.Index+1)
		}
	}
	return strings.Join(parts, " / ")
}

// EditError tells why an edit was not made, in words for the maker. The text
// is then untouched.
type EditError struct{ Summary string }

// Error is the summary.
func (e *EditError) Error() string { return e.Summary }

func refuse(format string, args ...any) error { return &EditError{fmt.Sprintf(format, args...)} }

// SetAttribute sets an attribute of a block to an expression as it is written
// in the language. An attribute that is there keeps its place, its alignment
// and the comment behind it; comments within an old value of several lines
// move above it. A new one is put behind the last attribute before the first
// inner block. What name and value mean is not checked: Read the result.
func SetAttribute(src []byte, path BlockPath, name, value string) ([]byte, error) {
	value = strings.TrimSpace(value)
	if !hclsyntax.ValidIdentifier(name) {
		return nil, refuse("%s cannot be the name of an entry", quote(clipped(name)))
	}
	t, err := openText(src)
	if err != nil {
		return nil, err
	}
	b, err := t.find(path)
	if err != nil {
		return nil, err
	}
	start, out := t.setIn(b, name, value)
	return unless(checkSet(src, out, path, name, start, start+len(value)), out)
}

// RemoveAttribute takes an attribute away. Comments on its lines stay.
func RemoveAttribute(src []byte, path BlockPath, name string) ([]byte, error) {
	t, err := openText(src)
	if err != nil {
		return nil, err
	}
	b, err := t.find(path)
	if err != nil {
		return nil, err
	}
	a := b.body.Attributes[name]
	if a == nil {
		return nil, refuse("%s has no %s", path, quote(clipped(name)))
	}
	out := t.without(a.SrcRange.Start.Byte, a.SrcRange.End.Byte, t.comments(a.SrcRange.Start.Byte, a.SrcRange.End.Byte))
	return unless(sound(out), out)
}

// AddBlock puts a block, written in the language, at the end of the block at
// parent, indented to fit.
func AddBlock(src []byte, parent BlockPath, text string) ([]byte, error) {
	text = strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n"))
	added, err := openText([]byte(text + "\n"))
	if err != nil {
		return nil, err
	}
	if len(added.top.body.Blocks) != 1 || len(added.top.body.Attributes) != 0 {
		return nil, refuse("what is added must be one block")
	}
	t, err := openText(src)
	if err != nil {
		return nil, err
	}
	b, err := t.find(parent)
	if err != nil {
		return nil, err
	}
	out := t.addIn(b, text)
	return unless(t.checkAdded(out, parent, len(b.body.Blocks)+1), out)
}

// RemoveBlock takes a block away with all that is in it, and the blank line
// that set it off. A comment above it stays.
func RemoveBlock(src []byte, path BlockPath) ([]byte, error) {
	if len(path) == 0 {
		return nil, refuse("the top level cannot be taken away")
	}
	t, err := openText(src)
	if err != nil {
		return nil, err
	}
	b, err := t.find(path)
	if err != nil {
		return nil, err
	}
	out := t.without(b.start, b.close+1, nil)
	return unless(sound(out), out)
}

// unless gives the result of an edit, or none if something is wrong with it.
func unless(err error, out []byte) ([]byte, error) {
	if err != nil {
		return nil, err
	}
	return out, nil
}

// openedText is a text without syntax errors, ready to be changed.
type openedText struct {
	f   *file
	top openedBlock
	end string // how its lines end
}

// openedBlock is a block with where it starts and where its braces are; the
// top level has none and open and close are -1 and the text's end.
type openedBlock struct {
	body               *hclsyntax.Body
	start, open, close int
}

func openText(src []byte) (*openedText, error) {
	if d, ok := tooRough(Source{Text: src}); !ok {
		return nil, refuse("the text cannot be changed: %s", d.Summary)
	}
	f, diags := newFile(Source{Text: src}), &report{}
	f.scan = scanText(f, diags, topOnly())
	bodies, twice := f.parse(diags)
	if len(diags.list) > 0 {
		d := diags.list.Sort()[0]
		return nil, refuse("line %d must be mended first: %s", d.Subject.Start.Line, d.Summary)
	}
	if len(twice) > 0 {
		return nil, refuse("line %d must be mended first: this is set twice", f.line(twice[0].Start.Byte)+1)
	}
	t := &openedText{f: f, end: "\n", top: openedBlock{body: &hclsyntax.Body{Attributes: hclsyntax.Attributes{}}, open: -1, close: len(src)}}
	if bytes.Contains(src, []byte("\r\n")) {
		t.end = "\r\n"
	}
	for _, b := range bodies {
		t.top.body.Blocks = append(t.top.body.Blocks, b.Blocks...)
		for n, a := range b.Attributes {
			if t.top.body.Attributes[n] != nil {
				return nil, refuse("line %d must be mended first: this is set twice", f.line(a.NameRange.Start.Byte)+1)
			}
			t.top.body.Attributes[n] = a
		}
	}
	return t, nil
}

// find follows a path.
func (t *openedText) find(path BlockPath) (openedBlock, error) {
	at := t.top
	for i, s := range path {
		n := 0
		var next *hclsyntax.Block
		for _, b := range at.body.Blocks {
			if b.Type != s.Type || s.Label != "" && (len(b.Labels) == 0 || b.Labels[0] != s.Label) {
				continue
			}
			if n == s.Index {
				next = b
			}
			n++
		}
		if next == nil {
			return at, refuse("there is no %s", path[:i+1])
		}
		at = openedBlock{next.Body, next.TypeRange.Start.Byte, next.OpenBraceRange.Start.Byte, next.CloseBraceRange.Start.Byte}
	}
	return at, nil
}

// splice replaces a stretch of the text.
func (t *openedText) splice(start, end int, with string) []byte {
	out := make([]byte, 0, len(t.f.text)+len(with))
	out = append(out, t.f.text[:start]...)
	out = append(out, with...)
	return append(out, t.f.text[end:]...)
}

// setIn sets an attribute and gives the place of its new value.
func (t *openedText) setIn(b openedBlock, name, value string) (int, []byte) {
	if a := b.body.Attributes[name]; a != nil {
		r := a.Expr.Range()
		kept := t.comments(r.Start.Byte, r.End.Byte)
		if len(kept) == 0 {
			return r.Start.Byte, t.splice(r.Start.Byte, r.End.Byte, value)
		}
		line, _ := t.f.lineOf(a.SrcRange.Start.Byte)
		above := t.onLines(kept, t.margin(line))
		out := t.splice(r.Start.Byte, r.End.Byte, value)
		out = append(out[:line:line], append([]byte(above), out[line:]...)...)
		return r.Start.Byte + len(above), out
	}
	last := lastBefore(b.body)
	switch {
	case last != nil && !t.oneLine(b):
		entry := t.margin(last.NameRange.Start.Byte) + aligned(name, last)
		at := t.endOfLine(last.SrcRange.End.Byte)
		return t.insertLine(at, entry, value)
	case b.open < 0:
		at := t.startOfTop()
		lead := name + " = "
		return at + len(lead), t.splice(at, at, lead+value+t.end)
	case t.oneLine(b):
		margin := t.margin(b.start)
		inner := strings.TrimSpace(string(t.f.text[b.open+1 : b.close]))
		lead := t.end
		if inner != "" {
			lead += margin + "  " + inner + t.end
		}
		lead += margin + "  " + name + " = "
		return b.open + 1 + len(lead), t.splice(b.open+1, b.close, lead+value+t.end+margin)
	}
	return t.insertLine(t.endOfLine(b.open+1), t.margin(b.start)+"  "+name+" = ", value)
}

// insertLine puts a line behind the line that ends at an offset.
func (t *openedText) insertLine(at int, entry, value string) (int, []byte) {
	lead := t.end + entry
	return at + len(lead), t.splice(at, at, lead+value)
}

// lastBefore is the last attribute before the first inner block.
func lastBefore(b *hclsyntax.Body) *hclsyntax.Attribute {
	var last *hclsyntax.Attribute
	for _, a := range inOrder(b.Attributes) {
		if len(b.Blocks) == 0 || a.SrcRange.Start.Byte < b.Blocks[0].TypeRange.Start.Byte {
			last = a
		}
	}
	return last
}

// aligned writes a name so that its equals sign stands under another's.
func aligned(name string, above *hclsyntax.Attribute) string {
	room := above.EqualsRange.Start.Byte - above.NameRange.Start.Byte - len(name)
	return name + strings.Repeat(" ", max(1, room)) + "= "
}

// margin is the white space a line begins with.
func (t *openedText) margin(offset int) string {
	from, _ := t.f.lineOf(offset)
	return string(t.f.text[from : from+t.f.scan.indent(offset)])
}

// endOfLine is where the line goes on being this line: before the next line
// end that is not within a comment, and before its carriage return.
func (t *openedText) endOfLine(offset int) int {
	n := bytes.IndexByte(t.f.scan.mask[offset:], '\n')
	if n < 0 {
		return len(t.f.text)
	}
	at := offset + n
	if at > 0 && t.f.text[at-1] == '\r' {
		at--
	}
	return at
}

func (t *openedText) oneLine(b openedBlock) bool {
	return b.open >= 0 && !bytes.ContainsRune(t.f.scan.mask[b.open:b.close], '\n')
}

// startOfTop is before the first block, behind a byte order mark and the
// comments that open the text.
func (t *openedText) startOfTop() int {
	if len(t.top.body.Blocks) == 0 {
		return t.endOfText()
	}
	from, _ := t.f.lineOf(t.top.body.Blocks[0].TypeRange.Start.Byte)
	return from
}

func (t *openedText) endOfText() int { return len(t.f.text) }

// comments are the comments within a stretch.
func (t *openedText) comments(start, end int) []string {
	var out []string
	for _, c := range t.f.scan.comments {
		if c.start >= start && c.end <= end {
			out = append(out, strings.TrimRight(string(t.f.text[c.start:c.end]), " \t\r"))
		}
	}
	return out
}

func (t *openedText) onLines(comments []string, margin string) string {
	var b strings.Builder
	for _, c := range comments {
		b.WriteString(margin + c + t.end)
	}
	return b.String()
}

// without takes a stretch away, and its lines where nothing else stands on
// them; kept comments stay on lines of their own.
func (t *openedText) without(start, end int, kept []string) []byte {
	from, _ := t.f.lineOf(start)
	to := t.endOfLine(end)
	before, behind := t.f.text[from:start], t.f.text[end:to]
	if len(bytes.TrimSpace(before)) > 0 || len(bytes.TrimSpace(behind)) > 0 {
		line := strings.TrimLeft(string(behind), " \t")
		if len(kept) > 0 {
			line = strings.TrimSpace(t.onLines(kept, t.margin(start))) + t.end + t.margin(start) + line
		}
		return t.splice(start, to, line)
	}
	if to < len(t.f.text) {
		to += len(t.end)
	}
	to = min(to, len(t.f.text))
	if len(kept) == 0 && t.blankAbove(from) && t.blankOrCloseBelow(to) {
		from, _ = t.f.lineOf(from - 1)
	}
	return t.splice(from, to, t.onLines(kept, t.margin(start)))
}

// blankAbove tells whether the line above a line's start is blank.
func (t *openedText) blankAbove(from int) bool {
	if from == 0 {
		return false
	}
	above, _ := t.f.lineOf(from - 1)
	return len(bytes.TrimSpace(t.f.text[above:from])) == 0
}

func (t *openedText) blankOrCloseBelow(to int) bool {
	line := bytes.TrimSpace(t.f.text[to:t.f.lineEnd(t.f.line(to))])
	return len(line) == 0 || line[0] == '}'
}

// addIn puts a block at the end of another.
func (t *openedText) addIn(b openedBlock, text string) []byte {
	if b.open < 0 {
		lead := ""
		if trimmed := bytes.TrimRight(t.f.text, " \t\r\n"); len(trimmed) > 0 {
			lead = t.end
			if t.f.text[len(t.f.text)-1] != '\n' {
				lead += t.end
			}
		}
		return t.splice(len(t.f.text), len(t.f.text), lead+t.indented(text, "")+t.end)
	}
	margin := t.margin(b.start)
	block := t.indented(text, margin+"  ")
	if t.oneLine(b) {
		inner := strings.TrimSpace(string(t.f.text[b.open+1 : b.close]))
		if inner != "" {
			inner = margin + "  " + inner + t.end + t.end
		}
		return t.splice(b.open+1, b.close, t.end+inner+block+t.end+margin)
	}
	lead := ""
	if len(b.body.Blocks)+len(b.body.Attributes) > 0 {
		lead = t.end
	}
	from, _ := t.f.lineOf(b.close)
	if len(bytes.TrimSpace(t.f.text[from:b.close])) == 0 {
		return t.splice(from, from, lead+block+t.end)
	}
	return t.splice(b.close, b.close, t.end+lead+block+t.end+margin)
}

// indented puts a margin before every line that is not part of a text of
// several lines, and ends lines as this text does.
func (t *openedText) indented(text, margin string) string {
	lines := strings.Split(text, "\n")
	closing := ""
	for i, l := range lines {
		switch {
		case closing != "":
			if strings.TrimSpace(l) == closing {
				closing = ""
			}
		case strings.TrimSpace(l) != "":
			lines[i] = margin + l
		}
		if _, after, ok := strings.Cut(l, "<<"); ok && closing == "" {
			if word := strings.TrimSpace(strings.TrimPrefix(after, "-")); hclsyntax.ValidIdentifier(word) {
				closing = word
			}
		}
	}
	return strings.Join(lines, t.end)
}

// sound refuses a result that does not read any more. It cannot happen for
// values that are values, and is the last guard against those that are not.
func sound(out []byte) error {
	_, err := openText(out)
	if err != nil {
		return refuse("the text would no longer read: %v", err)
	}
	return nil
}

// checkSet sees that the attribute has exactly the value, and nothing slipped
// in with it.
func checkSet(src, out []byte, path BlockPath, name string, start, end int) error {
	t, err := openText(out)
	if err != nil {
		return refuse("this is not a value: %v", err)
	}
	b, err := t.find(path)
	if err != nil {
		return err
	}
	a := b.body.Attributes[name]
	if a == nil || a.Expr.Range().Start.Byte != start || a.Expr.Range().End.Byte != end {
		return refuse("%s is not one value", quote(clipped(string(out[start:end]))))
	}
	before, err := openText(src)
	if err != nil {
		return err
	}
	if got, had := t.count(), before.count(); got != had && got != had+1 {
		return refuse("%s is more than a value", quote(clipped(string(out[start:end]))))
	}
	return nil
}

// count is how many attributes and blocks a text has.
func (t *openedText) count() int { return countIn(t.top.body) }

func countIn(b *hclsyntax.Body) int {
	n := len(b.Attributes)
	for _, k := range b.Blocks {
		n += 1 + countIn(k.Body)
	}
	return n
}

func (t *openedText) checkAdded(out []byte, parent BlockPath, blocks int) error {
	after, err := openText(out)
	if err != nil {
		return refuse("the text would no longer read: %v", err)
	}
	b, err := after.find(parent)
	if err != nil {
		return err
	}
	if len(b.body.Blocks) != blocks {
		return refuse("what is added must be one block")
	}
	return nil
}
