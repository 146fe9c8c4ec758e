package design

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"casewright/internal/testkit"
)

// TestManual keeps docs/language.md what the tables say. With -update it is
// written.
func TestManual(t *testing.T) {
	file := filepath.Join("..", "..", "docs", "language.md")
	if f := flag.Lookup("update"); f != nil && f.Value.String() == "true" && !testkit.OnCI() {
		if err := os.WriteFile(file, []byte(Manual()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != Manual() {
		t.Error("docs/language.md is stale: go test ./internal/design -run TestManual -update")
	}
}

// TestManualTellsTwins sees that a block told by another one's table is told
// nowhere else, and that what is pointed to is there, with every entry.
func TestManualTellsTwins(t *testing.T) {
	for _, c := range []struct{ block, by string }{{"drawer", "drawers"}, {"door", "doors"}} {
		_, section, ok := strings.Cut(Manual(), "\n### "+c.block+"\n")
		section, _, _ = strings.Cut(section, "\n### ")
		if !ok || !strings.Contains(section, "the entries and blocks of [`"+c.by+"`](#"+c.by+")") || strings.Contains(section, "| entry |") {
			t.Errorf("%s does not point to %s:\n%s", c.block, c.by, section)
		}
		_, section, _ = strings.Cut(Manual(), "\n### "+c.by+"\n")
		section, _, _ = strings.Cut(section, "\n### ")
		def, _ := Schema().Find(c.block)
		for _, a := range def.Attributes {
			if !strings.Contains(section, "\n| `"+a.Name+"` |") {
				t.Errorf("%s lacks %s", c.by, a.Name)
			}
		}
	}
}

// TestManualExamples reads every example of the manual as a commission.
func TestManualExamples(t *testing.T) {
	found := regexp.MustCompile("(?s)```hcl\n(.*?)```").FindAllStringSubmatch(Manual(), -1)
	if len(found) < 20 {
		t.Fatalf("only %d examples in the manual", len(found))
	}
	for _, m := range found {
		_, l := Read([]Source{{"example.hcl", []byte(m[1])}})
		if len(l) > 0 {
			t.Errorf("%s\n%s", m[1], renderAll(l, m[1]))
		}
	}
}

// TestEveryAttributeExample tries the example of every entry in its own block.
func TestEveryAttributeExample(t *testing.T) {
	l := Schema()
	for _, b := range l.Blocks {
		for _, a := range b.Attributes {
			text, ok := around(l, b, a.Name+" = "+a.Example)
			if !ok {
				t.Errorf("no way leads to block %s", b.ID)
				continue
			}
			_, found := Read([]Source{{"example.hcl", []byte(text)}})
			for _, d := range found {
				// Only this entry is tried: what else the block lacks, and
				// names that are defined nowhere, are beside the point.
				if d.Code != "E205" && d.Code != "E219" && d.Code != "E224" {
					t.Errorf("%s in %s: %s\n%s", a.Name, b.ID, oneLine(d), text)
				}
			}
		}
	}
}

// around wraps an entry in its block and the blocks around it.
func around(l Language, b Block, entry string) (string, bool) {
	head := b.Type
	if b.Label == MustHaveLabel {
		head += ` "a"`
	}
	text := head + " {\n" + entry + "\n}\n"
	for depth := 0; depth < 5; depth++ {
		for _, k := range l.Top {
			if k.ID == b.ID {
				if b.ID == "commission" {
					return text, true
				}
				return "commission \"x\" {}\n" + text, true
			}
		}
		found := false
		for _, outer := range l.Blocks {
			for _, k := range outer.Blocks {
				if k.ID == b.ID && !found && outer.ID != b.ID && outer.ID != "row" && outer.ID != "column" && outer.ID != "bank" {
					head := outer.Type
					if outer.Label == MustHaveLabel {
						head += ` "a"`
					}
					if b.ID == "divider" || b.ID == "rail" {
						text = "row {}\n" + text + "row {}\n"
					}
					if b.ID == "partition" {
						text = "column {}\n" + text + "column {}\n"
					}
					text, b, found = head+" {\n"+text+"}\n", outer, true
				}
			}
		}
		if !found {
			return "", false
		}
	}
	return "", false
}

// TestSchemaIsWhole sees that each block and entry says what it is for, and
// that examples are given where a length or a name is asked for.
func TestSchemaIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, b := range Schema().Blocks {
		if b.Doc == "" || seen[b.ID] {
			t.Errorf("block %s has no sentence, or stands twice", b.ID)
		}
		seen[b.ID] = true
		if b.Label != NoLabel && b.LabelDoc == "" {
			t.Errorf("block %s does not say what its name is", b.ID)
		}
		names := map[string]bool{}
		for _, a := range b.Attributes {
			if a.Doc == "" || a.Kind == "" || a.Example == "" || names[a.Name] {
				t.Errorf("%s in %s lacks something, or stands twice: %+v", a.Name, b.ID, a)
			}
			if a.Kind == KindChoice && len(a.Choices) == 0 {
				t.Errorf("%s in %s has no choices", a.Name, b.ID)
			}
			names[a.Name] = true
		}
	}
	for _, id := range strings.Fields("commission season shop wood species sizes curve case corners top_rails back cleat inside row column divider rail partition bank drawer drawers door doors panel shelf shelves stand top ledge hardware match site passage niche measured accept") {
		if !seen[id] {
			t.Errorf("block %s is not in the schema", id)
		}
	}
}
