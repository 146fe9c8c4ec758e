package check

import (
	"strings"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
)

// Whatever edit is offered, the text with it must still be a text, and the
// finding must be gone or milder.
func TestMendsMend(t *testing.T) {
	divider := func(housed string) string {
		return job + lines(`sizes { deep = `+housed+`; three = 3 }; case "c" { width = 24; height = 24; depth = 12; thickness = 3/4; wood = "cherry"; inside { row "a" {}; divider { housed = `+housed+` }; row "b" {} } }`)
	}
	for name, c := range map[string]struct{ text, code string }{
		"housing as typed":             {divider("0.45"), "stock.thin"},
		"housing by a name":            {strings.Replace(divider("0.45"), "housed = 0.45", "housed = deep", 1), "stock.thin"},
		"back rabbet":                  {corners("", `; back { inset = 1/2; rabbet = 0.6 }`), "stock.thin"},
		"top gap":                      {chest("top_gap = 1/64"), "fit.drawer"},
		"tails over a groove":          {chest("tails = 10; groove = 1"), "dovetail.groove-pin"},
		"top gap from a drawers block": {job + lines(stuck), "fit.drawer"},
	} {
		t.Run(name, func(t *testing.T) {
			found := of(checked(t, c.text), c.code)
			if len(found) == 0 || len(found[0].Edits) == 0 {
				t.Fatalf("no mend offered:\n%s", rendered(found, []byte(c.text)))
			}
			for _, e := range found[0].Edits {
				mended := c.text[:e.Span.Start.Offset] + e.Text + c.text[e.Span.End.Offset:]
				if again := of(checked(t, mended), c.code); len(again) > 0 {
					t.Errorf("with %s it still says:\n%s", e.Text, rendered(again, []byte(mended)))
				}
			}
		})
	}
}

// Where a size follows from others no single edit is known to mend.
func TestNoMendForSums(t *testing.T) {
	text := job + lines(`sizes { a = 1/4 }; case "c" { width = 24; height = 24; depth = 12; thickness = 3/4; wood = "cherry"; inside { row "a" {}; divider { housed = a + 0.2 }; row "b" {} } }`)
	found := of(checked(t, text), "stock.thin")
	if len(found) == 0 || len(found[0].Edits) != 0 {
		t.Errorf("got %+v", found)
	}
}

// Texts that are wrong still give a piece as far as they go; looking it over
// must neither panic nor point outside the text.
func FuzzRun(f *testing.F) {
	for _, name := range examples {
		f.Add(string(exampleText(f, name)))
	}
	f.Add(job + lines(stuck))
	f.Add(job + lines(`case "c" { width = 1; height = 1; depth = 1; hung = true; back {} }; accept "x" { of = "*.*"; reason = "" }; site { studs = [0]; free_wall = [9, 1]; projection = 0; niche { width { up = 0; is = 0 }; width { up = 0; is = 1 }; ceiling = [0] }; passage "p" {} }`))
	f.Add(job + lines(`match "m" { kind = "run"; parts = ["*.*"] }; case "c" { width = 9; height = 9; depth = 9; inside { drawer { top_gap = 9; tails = 99 } } }`))
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<16 {
			t.Skip("long texts are the language's to try")
		}
		spec, _ := design.Read([]design.Source{{Name: "f.hcl", Text: []byte(text)}})
		p, _ := piece.Build(spec)
		for _, d := range Run(p) {
			within(t, d, len(text))
		}
	})
}

func within(t *testing.T, d diag.Diagnostic, length int) {
	t.Helper()
	spans := []diag.Span{d.Subject}
	for _, e := range d.Edits {
		spans = append(spans, e.Span)
	}
	for _, s := range spans {
		if s.Start.Offset < 0 || s.End.Offset < s.Start.Offset || s.End.Offset > length {
			t.Errorf("%s points outside the text: %+v", d.Code, s)
		}
	}
}
