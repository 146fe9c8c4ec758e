package compile_test

import (
	"strings"
	"testing"

	"casewright/internal/compile"
	"casewright/internal/diag"
	"casewright/internal/testkit/designs"
)

// Whatever the text, a run ends without panic, says where each error is, and
// checks only what is sound.
func FuzzRun(f *testing.F) {
	f.Add("")
	f.Add(chest(2, 2))
	f.Add("commission \"c\" {}\ncase \"box\" {\n width = 1e-30\n height = 30000\n depth = -1\n}\n")
	f.Add("sizes {\n a = b\n b = a\n}\n")
	f.Add("commission \"c\" {}\ncase \"b\" {\n inside {\n bank {\n drawers = 100000\n }\n }\n}\n")
	f.Add(strings.Repeat("case \"a\" {\n inside {\n", 50))
	for seed := range uint64(4) {
		f.Add(designs.Draw(seed))
	}
	f.Fuzz(func(t *testing.T, text string) {
		r := compile.Run(source(text))
		if !r.Sound() && len(r.Findings) > 0 {
			t.Error("checked what is not sound")
		}
		for _, d := range r.Text {
			if d.Severity == diag.Error && (d.Code == "" || d.Summary == "" || d.Subject.End.Offset > len(text)) {
				t.Errorf("a poor message: %+v", d)
			}
		}
	})
}
