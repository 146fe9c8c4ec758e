package design

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"casewright/internal/diag"
)

// seeds are the three commissions, all faults, and the named files of
// testdata/seeds: each a text that once went wrong or that leans on one limit.
func seeds(f *testing.F) [][]byte {
	f.Helper()
	var out [][]byte
	for _, name := range []string{"hall-cabinet", "sideboard", "bookcase"} {
		out = append(out, example(f, name).Text)
	}
	for _, c := range faults {
		text, _, _ := faultText(c.text)
		out = append(out, []byte(text))
	}
	files, err := filepath.Glob("testdata/seeds/*.hcl")
	if err != nil || len(files) == 0 {
		f.Fatalf("no seeds: %v", err)
	}
	for _, file := range files {
		b, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		out = append(out, b)
	}
	return out
}

// FuzzRead: no text makes Read panic or point outside the text; the same text
// gives the same answer; a text without errors has a commission.
func FuzzRead(f *testing.F) {
	for _, s := range seeds(f) {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		spec, l := Read([]Source{{"t.hcl", text}})
		checkPlaces(t, text, l)
		if spec == nil {
			t.Fatal("no Spec")
		}
		if !l.Has(diag.Error) && spec.Commission.At.IsZero() {
			t.Error("no errors and no commission")
		}
		_, again := Read([]Source{{"t.hcl", text}})
		if a, b := renderAll(l, string(text)), renderAll(again, string(text)); a != b {
			t.Errorf("two readings differ:\n%s\n%s", a, b)
		}
		for _, d := range l {
			for _, e := range d.Edits {
				if e.Span.End.Offset < e.Span.Start.Offset || e.Span.End.Offset > len(text) {
					t.Errorf("mend outside the text: %+v", e)
				}
			}
		}
	})
}

// FuzzEdit: an edit either is refused and gives nothing, or gives a text that
// reads without syntax errors and has exactly the change asked for.
func FuzzEdit(f *testing.F) {
	for _, s := range seeds(f) {
		f.Add(s, uint8(0), "width", "20 1/2")
		f.Add(s, uint8(3), "note", "\"a\" # b")
	}
	f.Add([]byte("a {}\n"), uint8(0), "b", "<<E\nx\nE")
	f.Fuzz(func(t *testing.T, src []byte, which uint8, name, value string) {
		o, err := openText(src)
		if err != nil || len(o.top.body.Blocks) == 0 {
			return
		}
		spots := spotsOf(t, src)
		path := spots[int(which)%len(spots)].path
		before := bytes.Clone(src)
		set, err := SetAttribute(src, path, name, value)
		if err == nil {
			readable(t, set)
			if got := valueOf(t, set, path, name); got != strings.TrimSpace(value) {
				t.Errorf("set %s to %q, it is %q in\n%s", name, value, got, set)
			}
			unset, err := RemoveAttribute(set, path, name)
			if err != nil {
				t.Fatalf("%v\n%s", err, set)
			}
			readable(t, unset)
		}
		if out, err := RemoveBlock(src, path); err == nil {
			readable(t, out)
		}
		if out, err := AddBlock(src, path, value); err == nil {
			readable(t, out)
		}
		if !bytes.Equal(src, before) {
			t.Error("the text handed in was changed")
		}
	})
}

func readable(t *testing.T, src []byte) {
	t.Helper()
	if _, err := openText(src); err != nil {
		t.Errorf("%v\n%s", err, src)
	}
}

func valueOf(t *testing.T, src []byte, path BlockPath, name string) string {
	t.Helper()
	o, err := openText(src)
	if err != nil {
		t.Fatal(err)
	}
	b, err := o.find(path)
	if err != nil {
		t.Fatal(err)
	}
	r := b.body.Attributes[name].Expr.Range()
	return string(src[r.Start.Byte:r.End.Byte])
}

// TestRubbish holds ten megabytes of several kinds of rubbish to a bounded
// effort. The time is generous, for slow machines; what it guards against is
// work that grows with the square of the text, which would take hours.
func TestRubbish(t *testing.T) {
	const size = 10 << 20
	head := "commission \"x\" {}\n"
	rep := func(s string) []byte { return []byte(head + strings.Repeat(s, size/len(s))) }
	for name, text := range map[string][]byte{
		"noughts": make([]byte, size), "letters": rep("a"), "words": rep("word "), "lines of words": rep("word\n"),
		"quotes": rep("\""), "braces": rep("{"), "closing braces": rep("}"), "brackets on lines": rep("[\n"),
		"minus": rep("-"), "minus lines": rep("a = -\n"), "comments": rep("# remark\n"), "long comment": rep("/* x"),
		"blank lines": rep("\n"), "blocks": rep("a {}\n"), "blocks on a line": rep("a {} "), "numbers": rep("1 1/2\n"),
		"wrong bytes": bytes.Repeat([]byte{0xff, '\n'}, size/2), "heredocs": rep("a = <<E\n"), "names": rep("sizes {\na = a\n}\n"),
		"inch marks": rep("a = 1\"\n"), "long lines": rep("a = \"" + strings.Repeat("é", 900) + "\"\n"), "sums": rep("a = 1" + strings.Repeat("+1", 900) + "\n"),
		"valid long texts": rep("wood \"a\" {\n  species = \"" + strings.Repeat("é", 1900) + "\"\n}\n"), "unclosed": rep("case \"a\" {\n"), "unclosed inside": rep("case \"a\" {\n  inside {\n    row {\n"),
	} {
		rubbish(t, name, text)
		// The same within the limits of lines and tokens, where more is done.
		rubbish(t, name+", cut", text[:min(len(text), lineStart(text, mostLines-10))])
		rubbish(t, name+", short", text[:min(len(text), lineStart(text, mostTokens/8))])
	}
}

// lineStart is where the n-th line begins, or the end of the text.
func lineStart(text []byte, n int) int {
	at := 0
	for range n {
		i := bytes.IndexByte(text[at:], '\n')
		if i < 0 {
			return len(text)
		}
		at += i + 1
	}
	return at
}

func rubbish(t *testing.T, name string, text []byte) {
	t.Helper()
	start := time.Now()
	_, l := Read([]Source{{"t.hcl", text}})
	took := time.Since(start)
	if !l.Has(diag.Error) && !strings.HasPrefix(name, "comments") && !strings.HasPrefix(name, "blank") {
		t.Errorf("%s: nothing is wrong?", name)
	}
	if took > 10*time.Second {
		t.Errorf("%s took %v", name, took)
	}
	t.Logf("%-24s %6.2f s, %d diagnostics", name, took.Seconds(), len(l))
}

func BenchmarkSideboard(b *testing.B) {
	s := []Source{example(b, "sideboard")}
	b.ReportAllocs()
	for b.Loop() {
		Read(s)
	}
}

// BenchmarkTwoThousandLines reads a commission of 2 000 lines: the sideboard's
// case again and again, under other names.
func BenchmarkTwoThousandLines(b *testing.B) {
	s := []Source{{"t.hcl", twoThousandLines(b)}}
	if _, l := Read(s); l.Has(diag.Error) {
		b.Fatal(oneLine(l[0]))
	}
	b.ReportAllocs()
	for b.Loop() {
		Read(s)
	}
}

func twoThousandLines(t testing.TB) []byte {
	text := string(example(t, "sideboard").Text)
	from, to := strings.Index(text, "case \"carcase\""), strings.Index(text, "stand \"stand\"")
	out := text
	for i := 0; strings.Count(out, "\n") < 2000; i++ {
		one := strings.Replace(text[from:to], "\"carcase\"", "\"carcase "+string(rune('a'+i))+"\"", 1)
		out += strings.Replace(one, "  on        = \"stand\"\n", "", 1)
	}
	return []byte(out)
}
