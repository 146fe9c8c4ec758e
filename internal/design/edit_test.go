package design

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"casewright/internal/testkit"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"pgregory.net/rapid"
)

func TestEdits(t *testing.T) {
	box := BlockPath{{Type: "case", Label: "box"}}
	for _, c := range []struct {
		name, src string
		edit      func([]byte) ([]byte, error)
		want      string
	}{
		{"set, comment and alignment kept", "case \"box\" {\n  width     = 20 # outside\n  thickness = 3/4\n}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20 1/2") },
			"case \"box\" {\n  width     = 20 1/2 # outside\n  thickness = 3/4\n}\n"},
		{"a new one is aligned and stands before the blocks", "case \"box\" {\n  thickness = 3/4 # stock\n\n  back {}\n}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20") },
			"case \"box\" {\n  thickness = 3/4 # stock\n  width     = 20\n\n  back {}\n}\n"},
		{"behind a comment of two lines", "case \"box\" {\n  depth = 3 /* a\n  b */ # c\n}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20") },
			"case \"box\" {\n  depth = 3 /* a\n  b */ # c\n  width = 20\n}\n"},
		{"into an empty block", "case \"box\" {}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20") },
			"case \"box\" {\n  width = 20\n}\n"},
		{"into a block on one line", "  case \"box\" { depth = 3 }",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20") },
			"  case \"box\" {\n    depth = 3\n    width = 20\n  }"},
		{"into a block of blocks", "case \"box\" {\n  # said later\n  back {}\n}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20") },
			"case \"box\" {\n  width = 20\n  # said later\n  back {}\n}\n"},
		{"carriage returns", "case \"box\" {\r\n  depth = 3\r\n}\r\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, box, "width", "20") },
			"case \"box\" {\r\n  depth = 3\r\n  width = 20\r\n}\r\n"},
		{"comments of a list move above it", "site {\n  studs = [1, # first\n    2]\n}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, BlockPath{{Type: "site"}}, "studs", "[3]") },
			"site {\n  # first\n  studs = [3]\n}\n"},
		{"behind a text of several lines", "hardware \"a\" {\n  note = <<END\n  x\n  END\n}\n",
			func(b []byte) ([]byte, error) { return SetAttribute(b, BlockPath{{Type: "hardware"}}, "price", "3") },
			"hardware \"a\" {\n  note = <<END\n  x\n  END\n  price = 3\n}\n"},
		{"remove", "case \"box\" {\n  width = 20\n  depth = 3\n}\n",
			func(b []byte) ([]byte, error) { return RemoveAttribute(b, box, "width") },
			"case \"box\" {\n  depth = 3\n}\n"},
		{"remove, the comment stays", "case \"box\" {\n  width = 20 # outside\n}\n",
			func(b []byte) ([]byte, error) { return RemoveAttribute(b, box, "width") },
			"case \"box\" {\n  # outside\n}\n"},
		{"remove from one line", "case \"box\" { width = 20 }\n",
			func(b []byte) ([]byte, error) { return RemoveAttribute(b, box, "width") },
			"case \"box\" { }\n"},
		{"remove a block and the blank line before it", "case \"box\" {\n  width = 20\n\n  # a back\n\n  back {\n    inset = 1\n  }\n}\n",
			func(b []byte) ([]byte, error) { return RemoveBlock(b, append(box, Step{Type: "back"})) },
			"case \"box\" {\n  width = 20\n\n  # a back\n}\n"},
		{"remove the second of two", "wood \"a\" {}\n\nwood \"b\" {}\n",
			func(b []byte) ([]byte, error) { return RemoveBlock(b, BlockPath{{Type: "wood", Index: 1}}) },
			"wood \"a\" {}\n"},
		{"add a block", "case \"box\" {\n  width = 20\n}\n",
			func(b []byte) ([]byte, error) { return AddBlock(b, box, "back {\n  inset = 3/8 # room\n}") },
			"case \"box\" {\n  width = 20\n\n  back {\n    inset = 3/8 # room\n  }\n}\n"},
		{"add to an empty block", "case \"box\" {}\n",
			func(b []byte) ([]byte, error) { return AddBlock(b, box, "back {}\n") },
			"case \"box\" {\n  back {}\n}\n"},
		{"add at the top level", "wood \"a\" {}\n",
			func(b []byte) ([]byte, error) { return AddBlock(b, nil, "wood \"b\" {}") },
			"wood \"a\" {}\n\nwood \"b\" {}\n"},
		{"add to nothing", "",
			func(b []byte) ([]byte, error) { return AddBlock(b, nil, "commission \"b\" {}") },
			"commission \"b\" {}\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := []byte(c.src)
			got, err := c.edit(src)
			if err != nil {
				t.Fatal(err)
			}
			if string(got) != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if string(src) != c.src {
				t.Error("the text handed in was changed")
			}
		})
	}
}

func TestEditsRefused(t *testing.T) {
	const src = "case \"box\" {\n  width = 20\n}\n"
	box := BlockPath{{Type: "case"}}
	for _, c := range []struct {
		name string
		edit func() ([]byte, error)
		want string
	}{
		{"no such block", func() ([]byte, error) { return SetAttribute([]byte(src), BlockPath{{Type: "cave"}}, "a", "1") }, "there is no cave"},
		{"no such entry", func() ([]byte, error) { return RemoveAttribute([]byte(src), box, "a") }, "has no “a”"},
		{"not a name", func() ([]byte, error) { return SetAttribute([]byte(src), box, "a b", "1") }, "cannot be the name"},
		{"two lines", func() ([]byte, error) { return SetAttribute([]byte(src), box, "a", "1\nb = 2") }, "not one value"},
		{"a comment", func() ([]byte, error) { return SetAttribute([]byte(src), box, "a", "1 # b") }, "not one value"},
		{"way out of the block", func() ([]byte, error) { return SetAttribute([]byte(src), box, "a", "1\n}\nx {\n b = 1") }, "not one value"},
		{"no value", func() ([]byte, error) { return SetAttribute([]byte(src), box, "width", "20 in") }, "not a value"},
		{"nothing", func() ([]byte, error) { return SetAttribute([]byte(src), box, "width", "") }, "not a value"},
		{"two blocks", func() ([]byte, error) { return AddBlock([]byte(src), box, "a {}\nb {}") }, "must be one block"},
		{"a broken block", func() ([]byte, error) { return AddBlock([]byte(src), box, "a {") }, "must be mended"},
		{"a broken text", func() ([]byte, error) { return AddBlock([]byte("a {"), nil, "b {}") }, "line 1 must be mended"},
		{"everything", func() ([]byte, error) { return RemoveBlock([]byte(src), nil) }, "top level"},
	} {
		out, err := c.edit()
		if err == nil || !strings.Contains(err.Error(), c.want) || out != nil {
			t.Errorf("%s: got %q, %v; want an error with %q", c.name, out, err, c.want)
		}
	}
}

// spots are all blocks of a text by path, and the attributes of each.
type spot struct {
	path       BlockPath
	attributes []*hclsyntax.Attribute
	block      *hclsyntax.Block
}

func spotsOf(t testing.TB, src []byte) []spot {
	t.Helper()
	o, err := openText(src)
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	var out []spot
	var walk func(path BlockPath, b *hclsyntax.Body)
	walk = func(path BlockPath, b *hclsyntax.Body) {
		seen := map[string]int{}
		for _, k := range b.Blocks {
			s := Step{Type: k.Type, Index: seen[k.Type]}
			seen[k.Type]++
			p := append(append(BlockPath{}, path...), s)
			out = append(out, spot{p, inOrder(k.Body.Attributes), k})
			walk(p, k.Body)
		}
	}
	walk(nil, o.top.body)
	return out
}

// comments are the comments of a text outside a stretch, in order.
func commentsOf(t testing.TB, src []byte, start, end int) []string {
	t.Helper()
	o, err := openText(src)
	if err != nil {
		t.Fatal(err)
	}
	return append(o.comments(0, start), o.comments(end, len(src))...)
}

// TestRandomEdits makes long runs of random edits on the three commissions.
// After each the text reads, every comment is there that was not inside a
// removed block, and no line is touched that need not be.
func TestRandomEdits(t *testing.T) {
	testkit.Check(t, func(r *rapid.T) {
		name := rapid.SampledFrom([]string{"hall-cabinet", "sideboard", "bookcase"}).Draw(r, "example")
		src := example(t, name).Text
		for range rapid.IntRange(1, 12).Draw(r, "edits") {
			src = randomEdit(t, r, src)
		}
	})
}

func randomEdit(t *testing.T, r *rapid.T, src []byte) []byte {
	spots := spotsOf(t, src)
	if len(spots) == 0 {
		return src
	}
	at := rapid.SampledFrom(spots).Draw(r, "block")
	var out []byte
	var err error
	touched, cutStart, cutEnd := 0, 0, 0
	switch kind := rapid.SampledFrom([]string{"set", "new", "unset", "add", "remove"}).Draw(r, "kind"); {
	case kind == "set" && len(at.attributes) > 0:
		a := rapid.SampledFrom(at.attributes).Draw(r, "attribute")
		value := rapid.SampledFrom([]string{"20 1/2", `"136.5 mm"`, "[1, 2 3/8]", "max(a, 2 * b)", "true"}).Draw(r, "value")
		out, err = SetAttribute(src, at.path, a.Name, value)
		touched = 1 + strings.Count(string(src[a.SrcRange.Start.Byte:a.SrcRange.End.Byte]), "\n")
	case kind == "new":
		out, err = SetAttribute(src, at.path, fmt.Sprintf("new_%d", len(src)), "5 3/8")
		touched = 3
	case kind == "unset" && len(at.attributes) > 0:
		a := rapid.SampledFrom(at.attributes).Draw(r, "attribute")
		out, err = RemoveAttribute(src, at.path, a.Name)
		touched = 2 + strings.Count(string(src[a.SrcRange.Start.Byte:a.SrcRange.End.Byte]), "\n")
	case kind == "add":
		out, err = AddBlock(src, at.path, "extra \"x\" { # added\n  a = 1\n}")
		touched = 6
	case kind == "remove":
		cutStart, cutEnd = at.block.TypeRange.Start.Byte, at.block.CloseBraceRange.End.Byte
		out, err = RemoveBlock(src, at.path)
		touched = 2 + strings.Count(string(src[cutStart:cutEnd]), "\n")
	default:
		return src
	}
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	had, has := commentsOf(t, src, cutStart, cutEnd), commentsOf(t, out, 0, 0)
	for _, c := range had {
		i := indexOf(has, c)
		if i < 0 {
			t.Fatalf("the comment %q is gone from\n%s", c, out)
		}
		has = append(has[:i:i], has[i+1:]...)
	}
	if n := linesTouched(src, out); n > touched {
		t.Fatalf("%d lines touched, want at most %d\n%s", n, touched, out)
	}
	return out
}

func indexOf(all []string, s string) int {
	for i, x := range all {
		if x == s {
			return i
		}
	}
	return -1
}

// linesTouched counts the lines between the first and the last that differ, in
// whichever text has more of them.
func linesTouched(a, b []byte) int {
	x, y := bytes.SplitAfter(a, []byte("\n")), bytes.SplitAfter(b, []byte("\n"))
	for len(x) > 0 && len(y) > 0 && bytes.Equal(x[0], y[0]) {
		x, y = x[1:], y[1:]
	}
	for len(x) > 0 && len(y) > 0 && bytes.Equal(x[len(x)-1], y[len(y)-1]) {
		x, y = x[:len(x)-1], y[:len(y)-1]
	}
	return max(len(x), len(y))
}
