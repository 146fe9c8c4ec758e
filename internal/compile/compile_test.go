package compile_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"casewright/internal/compile"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/testkit"
)

func source(text string) []design.Source { return []design.Source{{Name: "t.hcl", Text: []byte(text)}} }

func example(t testing.TB, name string) []design.Source {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", name, "commission.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	return []design.Source{{Name: "commission.hcl", Text: text}}
}

// codes are the codes and places of a list: "E321:3".
func codes(list diag.List) []string {
	out := []string{}
	for _, d := range list {
		out = append(out, fmt.Sprintf("%s:%d", d.Code, d.Subject.Start.Line))
	}
	return out
}

func TestExamplesAreSound(t *testing.T) {
	for _, name := range []string{"hall-cabinet", "sideboard", "bookcase"} {
		r := compile.Run(example(t, name))
		if !r.Sound() || !r.Safe() || len(r.Piece.Parts) == 0 {
			t.Errorf("%s: sound %v, safe %v, %d parts, %v", name, r.Sound(), r.Safe(), len(r.Piece.Parts), codes(r.Text))
		}
	}
}

// Which errors are told together: all of the text, and of the piece those that
// cannot come from them.
func TestErrorsTogether(t *testing.T) {
	const box = "case \"box\" {\n width = 20\n height = 30\n depth = 12\n%s\n}\n"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"nothing wrong", "commission \"c\" {}\n" + fmt.Sprintf(box, ""), []string{}},
		{"only the piece: an unknown wood", "commission \"c\" {}\n" + fmt.Sprintf(box, " wood = \"wallnut\""), []string{"E321:6"}},
		{"only the piece: rows that overfill", "commission \"c\" {}\n" + fmt.Sprintf(box, "inside {\n row \"a\" {\n height = 40\n }\n row \"b\" {}\n }"), []string{"E311:10"}},
		{"a slip beside an unknown wood, in one block", "commission \"c\" {}\n" + fmt.Sprintf(box, " hung = 3\n wood = \"wallnut\""), []string{"E209:6", "E321:7"}},
		{"two unknown woods in two blocks", "commission \"c\" {}\nwood \"w\" {\n species = \"oaak tree\"\n}\n" + fmt.Sprintf(box, " wood = \"wallnut\"\n hung = 3"), []string{"E321:3", "E321:9", "E209:10"}},
		{"a size that cannot be read makes others wrong, which is not told", "commission \"c\" {}\n" + fmt.Sprintf(strings.Replace(box, "height = 30", "height = true", 1), "inside {\n row \"a\" {\n height = 40\n }\n row \"b\" {}\n }"), []string{"E209:4"}},
		{"a wood whose species cannot be read is not unknown as well", "commission \"c\" {}\nwood \"w\" {\n species = 3\n}\n" + fmt.Sprintf(box, " wood = \"w\""), []string{"E209:3"}},
		{"text that was skipped may have held the wood", "commission \"c\" {}\nwood \"w\" {\n species = = \"cherry\"\n}\n" + fmt.Sprintf(box, " wood = \"w\""), []string{"E114:3"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := compile.Run(source(c.text))
			testkit.Diff(t, c.want, codes(r.Text))
			if r.Sound() != (len(c.want) == 0) || r.Sound() != r.Safe() {
				t.Errorf("sound %v, safe %v", r.Sound(), r.Safe())
			}
			if !r.Sound() && len(r.Findings) > 0 {
				t.Errorf("a piece that is not whole was checked: %v", codes(r.Findings))
			}
		})
	}
}

// Everything is told in the order of gravity, and the checks keep their own
// order within.
func TestDiagsInOrder(t *testing.T) {
	sources := append(example(t, "hall-cabinet"), design.Source{Name: "more.hcl", Text: []byte("sizes {\n nothing_uses_it = 3\n}\n")})
	r := compile.Run(sources)
	all := r.Diags()
	if len(all) != len(r.Findings)+1 {
		t.Fatalf("%d of %d findings and one note", len(all), len(r.Findings))
	}
	if !slices.IsSortedFunc(all, func(a, b diag.Diagnostic) int { return int(b.Severity) - int(a.Severity) }) {
		t.Error("not the gravest first")
	}
	if last := all[len(all)-1]; last.Code != "N201" {
		t.Errorf("the note on the text is not last but %s", last.Code)
	}
	testkit.Diff(t, codes(r.Findings), codes(all[:len(all)-1]))
}

// A stop that the maker accepts in the text no longer counts as one.
func TestAcceptedStopIsSafe(t *testing.T) {
	const text = `commission "c" {}
case "box" {
  width = 30
  height = 30
  depth = 20
  wood = "white oak"
  inside {
    door {
      panel {
        groove = 1/8
      }
    }
  }
}
`
	r := compile.Run(source(text))
	if r.Safe() || !r.Sound() {
		t.Fatalf("want a stop: %v %v", codes(r.Text), codes(r.Findings))
	}
	var accepts strings.Builder
	for _, d := range r.Findings {
		if d.Severity == diag.Stop {
			fmt.Fprintf(&accepts, "accept %q {\n reason = \"a trial held\"\n}\n", d.Code)
		}
	}
	if r := compile.Run(source(text + accepts.String())); !r.Safe() {
		t.Errorf("accepted, and still not safe: %v %v", codes(r.Text), codes(r.Findings))
	}
}

// Runs share nothing: many at once give what one alone gives.
func TestManyAtOnce(t *testing.T) {
	sources := example(t, "sideboard")
	want := compile.Run(sources)
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			got := compile.Run(sources)
			if !reflect.DeepEqual(got.Diags(), want.Diags()) || marks(got) != marks(want) {
				t.Error("another result beside others")
			}
		})
	}
	wait.Wait()
}

func marks(r compile.Result) string {
	var b strings.Builder
	for _, p := range r.Piece.Parts {
		fmt.Fprintln(&b, p.Mark, p.Path, r.Piece.Shown(p.Length), r.Piece.Shown(p.Width), r.Piece.Shown(p.Thickness), p.Place)
	}
	return b.String()
}

// chest writes a commission with n columns of m drawers each, and the rails
// and partitions between them: about nine parts to a drawer.
func chest(n, m int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "commission \"chest\" {}\ncase \"chest\" {\n width = %d\n height = %d\n depth = 16\n thickness = 7/8\n wood = \"cherry\"\n inside {\n", 16*n+2, 7*m+2)
	for c := range n {
		if c > 0 {
			b.WriteString("  partition {\n   thickness = 3/4\n  }\n")
		}
		fmt.Fprintf(&b, "  column \"c%d\" {\n", c)
		for r := range m {
			if r > 0 {
				b.WriteString("   rail {\n    thickness = 3/4\n   }\n")
			}
			fmt.Fprintf(&b, "   row \"r%d\" {\n    drawer {}\n   }\n", r)
		}
		b.WriteString("  }\n")
	}
	return b.String() + " }\n}\n"
}

// parted is a chest of drawers with about that many parts.
func parted(t testing.TB, n, m, least int) []design.Source {
	t.Helper()
	sources := source(chest(n, m))
	r := compile.Run(sources)
	if !r.Sound() {
		t.Fatalf("%v", codes(r.Text))
	}
	if got := len(r.Piece.Parts); got < least || got > least*5/4 {
		t.Fatalf("%d parts, want about %d", got, least)
	}
	return sources
}

// allocated is what one run takes from the heap in all.
func allocated(sources []design.Source) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	compile.Run(sources)
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// Memory is the same on every machine, so the limits on it are tests; those on
// time are benchmarks below.
func TestMemory(t *testing.T) {
	if got := allocated(example(t, "sideboard")); got > 20<<20 {
		t.Errorf("the sideboard takes %d bytes, more than 20 MB", got)
	}
	small, large := allocated(parted(t, 5, 5, 200)), allocated(parted(t, 14, 17, 2000))
	// Ten times the parts: 16 leaves room for tables that grow by doubling, and
	// none for anything that looks at all pairs.
	if ratio := float64(large) / float64(small); ratio > 16 {
		t.Errorf("2 000 parts take %.1f times the memory of 200", ratio)
	}
}

func bench(b *testing.B, sources []design.Source) {
	parts := len(compile.Run(sources).Piece.Parts)
	b.ReportAllocs()
	for b.Loop() {
		compile.Run(sources)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(parts), "ns/part")
}

// The target is 10 ms and 20 MB on one core.
func BenchmarkSideboard(b *testing.B) { bench(b, example(b, "sideboard")) }

// ns/part should differ little between the two.
func BenchmarkChest(b *testing.B) {
	b.Run("200", func(b *testing.B) { bench(b, parted(b, 5, 5, 200)) })
	b.Run("2000", func(b *testing.B) { bench(b, parted(b, 14, 17, 2000)) })
}
