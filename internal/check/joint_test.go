package check

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func corners(attributes, more string) string {
	return job + lines(`case "c" { width = 20; height = 26; depth = 6; thickness = 3/4; wood = "cherry"; corners { joint = "through dovetail"; `+attributes+` }`+more+` }`)
}

// Slopes from 1:5 to 1:8 and no finding (Joyce); half pins at least 3/16 at the
// base, and each finding at the number that asked for it.
func TestDovetails(t *testing.T) {
	for _, c := range []struct{ attributes, code, want, at string }{
		{`slope = "1:5"`, "dovetail.coarse", "", ""},
		{`slope = "1:4.9"`, "dovetail.coarse", "warn", ""},
		{`slope = "1:8"`, "dovetail.fine", "", ""},
		{`slope = "1:8.1"`, "dovetail.fine", "warn", ""},
		{`tails = 4; half_pin = 1/4`, "dovetail.half-pin", "", ""},
		{`tails = 4; half_pin = 1/32`, "dovetail.half-pin", "warn", "1/32"}, // base: 1/32 + 3/4 / 8 = 1/8
		{`tails = 100`, "dovetail.no-room", "stop", "100"},
	} {
		t.Run(c.attributes, func(t *testing.T) {
			text := corners(c.attributes, "")
			list := checked(t, text)
			if got := grade(list, c.code); got != c.want {
				t.Fatalf("%s: got %q, want %q\n%s", c.code, got, c.want, rendered(list, []byte(text)))
			}
			if c.want == "" {
				return
			}
			found := of(list, c.code)
			if len(found) != 1 {
				t.Fatalf("four corners alike must be one finding:\n%s", rendered(list, []byte(text)))
			}
			if got := text[found[0].Subject.Start.Offset:found[0].Subject.End.Offset]; c.at != "" && got != c.at {
				t.Errorf("points at %q, want %q", got, c.at)
			}
			if !strings.HasPrefix(found[0].Summary, "4 through dovetails of c: ") {
				t.Errorf("summary %q", found[0].Summary)
			}
		})
	}
}

// Ten tails in 6 in leave sockets of 9/32 at the wide end.
func TestChisel(t *testing.T) {
	for chisel, want := range map[string]string{"9/32": "", "5/16": "warn"} {
		text := strings.Replace(corners("tails = 10", ""), "shop {", "shop {\n  smallest_chisel = "+chisel, 1)
		list := of(checked(t, text), "dovetail.chisel")
		if got := grade(list, "dovetail.chisel"); got != want {
			t.Fatalf("chisel of %s: got %q, want %q", chisel, got, want)
		}
		if want != "" && text[list[0].Subject.Start.Offset:list[0].Subject.End.Offset] != "10" {
			t.Errorf("points at %+v", list[0].Subject)
		}
	}
}

// A groove through a pin comes with the layout that hides it, and where the
// text asked for the number of tails, with a mend that really gives it.
func TestDovetailAlternative(t *testing.T) {
	told, mended := 0, 0
	for _, tails := range []string{"4", "10", "12"} {
		for _, up := range []string{"3/4", "1", "2", "3"} {
			text := chest("tails = " + tails + "; groove = " + up)
			for _, d := range of(checked(t, text), "dovetail.groove-pin") {
				if !strings.Contains(d.Detail, "half pins ") {
					continue // no other layout was found
				}
				told++
				for _, e := range d.Edits {
					mended++
					better := text[:e.Span.Start.Offset] + e.Text + text[e.Span.End.Offset:]
					if again := of(checked(t, better), d.Code); len(again) > 0 {
						t.Errorf("tails %s, groove up %s, mended to %s it still says:\n%s", tails, up, e.Text, rendered(again, []byte(better)))
					}
				}
			}
		}
	}
	if told == 0 || mended == 0 {
		t.Errorf("%d layouts told, %d mends offered: this proves nothing", told, mended)
	}
}

// Every code that a joint can give is explained, and so is every code here.
func TestRules(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range Rules() {
		switch {
		case seen[r.Code]:
			t.Errorf("%s is explained twice", r.Code)
		case r.Title == "" || len(r.Explains) < 20:
			t.Errorf("%s is hardly explained", r.Code)
		case rank(r.Code) == len(order):
			t.Errorf("%s has no rank", r.Code)
		}
		seen[r.Code] = true
	}
	for _, code := range codesIn(t, filepath.Join("..", "joinery"), `(?:stop|warn|note)\("([a-z]+\.[a-z-]+)"`) {
		// No part of a piece is laid out by joinery's frame: piece makes stiles,
		// rails and panels itself.
		if !strings.HasPrefix(code, "frame.") && !saidElsewhere[code] && !seen[code] {
			t.Errorf("joint code %s is explained nowhere", code)
		}
	}
	for _, code := range codesIn(t, ".", `[cC]ode:\s*"([a-z]+\.[a-z-]+)"`) {
		if !seen[code] {
			t.Errorf("%s is explained nowhere", code)
		}
	}
}

func codesIn(t *testing.T, folder, form string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no source in %s: %v", folder, err)
	}
	var out []string
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") {
			continue
		}
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(form).FindAllSubmatch(b, -1) {
			out = append(out, string(m[1]))
		}
	}
	if len(out) < 5 {
		t.Fatalf("only %d codes read from %s: the form has changed", len(out), folder)
	}
	return out
}
