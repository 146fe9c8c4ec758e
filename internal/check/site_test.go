package check

import (
	"strings"
	"testing"

	"casewright/internal/measure"
)

// changed is an example with one line written anew; the line must be there.
func changed(t testing.TB, name, old, by string) string {
	t.Helper()
	text := string(exampleText(t, name))
	if !strings.Contains(text, old) {
		t.Fatalf("%s has no %q", name, old)
	}
	return strings.Replace(text, old, by, 1)
}

// What was measured on site, at the edge: the hall cabinet is 22-1/2 in wide
// over its ledge and stands out 5-3/8 and the bow's rise of 1-1/2; the
// sideboard is 57 and twice 3/4 wide, its case 28-5/8 × 17-1/2 × 57; the
// bookcase's widest, its base top, 39-1/4 in, and it is 3-1/2 + 26-1/4 + 3/4 +
// 56-3/4 = 87-1/4 in high.
func TestSite(t *testing.T) {
	for _, c := range []struct{ example, old, by, code, want string }{
		{"hall-cabinet", "projection = 7", "projection = 6 7/8", "site.projection", ""},
		{"hall-cabinet", "projection = 7", "projection = 6 55/64", "site.projection", "warn"},
		{"hall-cabinet", "[6, 44]", "[6, 28 1/2]", "site.wall", ""},
		{"hall-cabinet", "[6, 44]", "[6, 28 31/64]", "site.wall", "warn"},
		{"sideboard", "[0, 71]", "[0, 58 1/2]", "site.wall", ""},
		{"sideboard", "[0, 71]", "[0, 58]", "site.wall", "warn"},
		{"bookcase", `is = "1004 mm"`, "is = 39 1/4", "site.niche", ""},
		{"bookcase", `is = "1012 mm"`, "is = 37", "site.niche", "warn"},
		// Only the 38-1/2 in upper case stands as high as 1200 mm.
		{"bookcase", `is = "1004 mm"`, "is = 38 1/2", "site.niche", "warn"}, // the line to it is narrower than the base top
		{"bookcase", `"2381 mm"`, "87 1/4", "site.niche", ""},
		{"bookcase", `"2381 mm"`, "87 15/64", "site.niche", "warn"},
		{"sideboard", "width  = 29 1/2", "width  = 17 1/2", "site.passage", ""},
		{"sideboard", "width  = 29 1/2", "width  = 17 7/16", "site.passage", "warn"},
		{"sideboard", "height = 80", "height = 28", "site.passage", ""}, // laid on its back
		{"sideboard", "height = 80", "height = 17", "site.passage", "warn"},
		{"bookcase", `width  = "1100 mm"`, `width  = "900 mm"`, "site.passage", "warn"}, // 38-1/2 in is 978 mm
	} {
		t.Run(c.by+" "+c.code, func(t *testing.T) {
			text := changed(t, c.example, c.old, c.by)
			list := checked(t, text)
			if got := grade(list, c.code); got != c.want {
				t.Errorf("got %q, want %q\n%s", got, c.want, rendered(of(list, c.code), []byte(text)))
			}
		})
	}
}

func TestSitePointsAtTheLimit(t *testing.T) {
	text := changed(t, "hall-cabinet", "projection = 7", "projection = 6")
	d := of(checked(t, text), "site.projection")[0]
	if got := text[d.Subject.Start.Offset:d.Subject.End.Offset]; got != "6" {
		t.Errorf("points at %q", got)
	}
	if d.Figure != `6 7/8", knobs and pulls not counted` || d.Limit != `6"` || !strings.Contains(d.Detail, `7/8"`) {
		t.Errorf("figure %q, limit %q, detail %q", d.Figure, d.Limit, d.Detail)
	}
}

// The width of a niche between two heights is taken on the straight line.
func TestNicheWidth(t *testing.T) {
	s := []station{{0, 1000}, {100, 980}, {200, 1020}}
	for up, want := range map[measure.Length]measure.Length{-5: 1000, 0: 1000, 50: 990, 100: 980, 150: 1000, 300: 1020} {
		if got := widthAt(s, up); got != want {
			t.Errorf("at %d: %d, want %d", up, got, want)
		}
	}
	for _, c := range []struct{ lo, hi, want measure.Length }{{0, 50, 990}, {50, 150, 980}, {120, 200, 988}} {
		if got := narrowest(s, c.lo, c.hi); got != c.want {
			t.Errorf("%d to %d: %d, want %d", c.lo, c.hi, got, c.want)
		}
	}
}

// The cleat of the hall cabinet is 20-1/8 in on its case and 1 less on the
// wall, so 17-1/8 in of it take screws.
func TestStuds(t *testing.T) {
	for studs, want := range map[string]string{
		"[12 1/2, 28 1/4, 44 1/8]": "",
		"[12, 29 1/8]":             "",     // just reached
		"[12, 29 3/16]":            "warn", // just not
		"[12]":                     "warn",
		"[2, 4, 60]":               "warn", // none behind any place on the free wall from 6 to 44
		"[41, 43]":                 "warn", // the end of the free wall keeps the cleat off the second: 44 − 20-1/2 + …
		"[38, 42]":                 "",
	} {
		text := changed(t, "hall-cabinet", "[12 1/2, 28 1/4, 44 1/8]", studs)
		list := of(checked(t, text), "hang.studs")
		if got := grade(list, "hang.studs"); got != want {
			t.Errorf("studs %s: got %q, want %q\n%s", studs, got, want, rendered(list, []byte(text)))
		}
	}
	for wall, want := range map[string]string{"old plaster on lath": "note", "brick, plastered": "", "Concrete": ""} {
		text := changed(t, "hall-cabinet", "studs      = [12 1/2, 28 1/4, 44 1/8]", "")
		text = strings.Replace(text, "old plaster on lath", wall, 1)
		text = strings.Replace(text, `  studs_from = "door casing"`, "", 1)
		if got := grade(checked(t, text), "hang.studs"); got != want {
			t.Errorf("no studs in %s: got %q, want %q", wall, got, want)
		}
	}
}
