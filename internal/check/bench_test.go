package check

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/testkit"
	"casewright/internal/wood"

	"pgregory.net/rapid"
)

func TestMachines(t *testing.T) {
	w := lookUp(t, "black cherry", wood.FlatSawn, 8)
	for _, c := range []struct {
		name       string
		l, w, th   float64
		blank      float64
		joined     bool
		code, want string
		detail     string
	}{
		{"12 in long", 12, 3, 0.75, 13, false, "machine.short", "", ""},
		{"shorter, in a blank of its own that is long enough", 11.5, 3, 0.75, 12.5, false, "machine.short", "", ""},
		{"shorter, joined", 10, 3, 0.75, 12, true, "machine.short", "note", `A1 from a blank 12" long.`},
		{"shorter, in a short blank", 10, 3, 0.75, 11, false, "machine.short", "stop", "crosscut last"},
		{"1/4 thick", 20, 3, 0.25, 21, false, "machine.thin", "", ""},
		{"3/16 thick", 20, 3, 0.1875, 21, false, "machine.thin", "note", "carrier board"},
		{"thinner than any manual takes", 20, 3, 0.18, 21, false, "machine.thin", "warn", ""},
		{"3/4 wide", 20, 0.75, 0.5, 21, false, "machine.narrow", "", ""},
		{"narrower", 20, 0.74, 0.5, 21, false, "machine.narrow", "note", "wide blank"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := board("slip", w, c.l, c.w, c.th, runPlace)
			b := bench(p)
			p.Blank.Length = size(c.blank)
			if c.joined {
				p.Blank.Joined = []*piece.Part{p}
			}
			list := Run(b)
			sound(t, list)
			if got := grade(list, c.code); got != c.want {
				t.Fatalf("got %q, want %q\n%s", got, c.want, rendered(list, nil))
			}
			if c.want != "" && !strings.Contains(of(list, c.code)[0].Detail, c.detail) {
				t.Errorf("%q is missing in %q", c.detail, of(list, c.code)[0].Detail)
			}
		})
	}
}

// The shop's air of 38 % at 70 °F brings wood to 7.4 % (Wood Handbook Eq. 4-5).
func TestMoisture(t *testing.T) {
	for mc, want := range map[string]string{"7.5": "", "6": "", "8": "", "8.1": "note", "5.9": "note", "10": "note", "10.1": "warn"} {
		text := strings.Replace(job, "moisture = 7.5", "moisture = "+mc, 1) + lines(`case "c" { width = 20; height = 20; depth = 8; wood = "cherry" }`)
		list := of(checked(t, text), "moisture.today")
		if got := grade(list, "moisture.today"); got != want {
			t.Errorf("%s %%: got %q, want %q", mc, got, want)
		}
		if len(list) > 1 {
			t.Errorf("%s %%: one wood, %d findings", mc, len(list))
		}
	}
	// In a damper shop, 65 % at 70 °F: 12.0 % (Table 4-2), dry wood is far from home.
	text := strings.Replace(job, "humidity    = 38", "humidity    = 65", 1) + lines(`case "c" { width = 20; height = 20; depth = 8; wood = "cherry" }`)
	if d := of(checked(t, text), "moisture.today"); len(d) != 1 || !strings.Contains(d[0].Limit, "12.0 %") {
		t.Errorf("got %+v", d)
	}
}

func TestUnlikeMoisture(t *testing.T) {
	for mc, want := range map[float64]string{8: "", 10: "", 10.01: "warn"} {
		a := board("a", lookUp(t, "black cherry", wood.FlatSawn, 8), 20, 4, 0.75, sidePlace)
		c := board("b", lookUp(t, "black cherry", wood.FlatSawn, 0), 20, 4, 0.75, topPlace)
		c.Wood.Moisture = measure.MoistureContent(mc)
		b := bench(a, c)
		b.Joints = []*piece.Joint{{Kind: "through dovetail", Name: "a to b", A: a, B: c, Glued: "all"}}
		if got := grade(Run(b), "moisture.apart"); got != want {
			t.Errorf("8 and %v %%: got %q, want %q", mc, got, want)
		}
	}
}

func TestSets(t *testing.T) {
	cherry, ash := lookUp(t, "black cherry", wood.FlatSawn, 8), lookUp(t, "white ash", wood.FlatSawn, 8)
	for _, c := range []struct {
		kind  string
		thick float64
		wood  *piece.Wood
		want  string
	}{
		{"run", 0.75, cherry, ""}, {"run", 0.8, cherry, "warn"}, {"run", 0.75, ash, "warn"},
		{"ring", 0.8, cherry, ""}, {"ring", 0.75, ash, "warn"}, {"book", 0.8, cherry, "warn"},
	} {
		parts := []*piece.Part{board("odd", c.wood, 20, 4, c.thick, topPlace), board("x", cherry, 20, 4, 0.75, topPlace), board("y", cherry, 20, 4, 0.75, topPlace)}
		b := bench(parts...)
		b.Sets = []*piece.Set{{Name: "s", Kind: c.kind, Parts: parts}}
		list := of(Run(b), "set.match")
		if got := grade(list, "set.match"); got != c.want {
			t.Errorf("%s of %v and %s: got %q, want %q", c.kind, c.thick, c.wood.Name, got, c.want)
		}
		if c.want != "" && list[0].Where != "A1 (case.odd)" {
			t.Errorf("the odd one out is named as %q", list[0].Where)
		}
	}
}

const stuck = `case "c" { width = 24; height = 12; depth = 14; drawers { top_gap = 0 }; inside { column "l" { drawer {} }; partition {}; column "r" { drawer {} } } }`

func TestAccept(t *testing.T) {
	for _, c := range []struct {
		name, accept   string
		stops, allowed int
		unused         string
	}{
		{"everywhere", `accept "fit.drawer" { reason = "planed in August" }`, 0, 1, ""},
		{"by pattern", `accept "fit.drawer" { of = "c.*.side.left"; reason = "planed in August" }`, 0, 1, ""},
		{"by opening, one of two", `accept "fit.drawer" { of = "c.l"; reason = "planed in August" }`, 1, 1, ""},
		{"by mark", `accept "fit.drawer" { of = "B2"; reason = "planed in August" }`, 1, 1, ""},
		{"somewhere else", `accept "fit.drawer" { of = "c.x"; reason = "r" }`, 1, 0, "is found at c."},
		{"not found", `accept "fit.door" { reason = "r" }`, 1, 0, "is gone"},
		{"no such code", `accept "fit.drawr" { reason = "r" }`, 1, 0, "No finding goes by that name"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := job + lines(stuck+"; "+c.accept)
			list := checked(t, text)
			allowed := 0
			for _, d := range of(list, "fit.drawer") {
				if d.Accepted == "planed in August" {
					allowed++
				}
			}
			if list.Count(diag.Stop) != c.stops || allowed != c.allowed {
				t.Errorf("%d stops and %d accepted, want %d and %d\n%s", list.Count(diag.Stop), allowed, c.stops, c.allowed, rendered(list, []byte(text)))
			}
			unused := of(list, "accept.unused")
			if (len(unused) > 0) != (c.unused != "") {
				t.Fatalf("unused: %+v", unused)
			}
			if c.unused != "" && !strings.Contains(unused[0].Detail, c.unused) {
				t.Errorf("%q is missing in %q", c.unused, unused[0].Detail)
			}
		})
	}
}

// Gravest first, and hurting people before hurting wood before looks.
func TestOrder(t *testing.T) {
	text := changed(t, "hall-cabinet", "[12 1/2, 28 1/4, 44 1/8]", "[12]")
	text = strings.Replace(text, `pull       = "drawer pull"`, "pull       = \"drawer pull\"\n    top_gap    = 0", 1)
	text = strings.Replace(text, "projection = 7", "projection = 6", 1)
	var codes []string
	for _, d := range checked(t, text) {
		codes = append(codes, d.Code)
	}
	want := []string{"fit.drawer", "hang.studs", "site.projection", "machine.short", "machine.thin"}
	if !slices.Equal(codes, want) {
		t.Errorf("got %v, want %v", codes, want)
	}
}

func TestSameTwice(t *testing.T) {
	for _, name := range examples {
		text := exampleText(t, name)
		if !reflect.DeepEqual(Run(built(t, text)), Run(built(t, text))) {
			t.Errorf("%s is judged differently the second time", name)
		}
	}
}

// A piece of which nothing could be built is looked over without a word.
func TestNothing(t *testing.T) {
	spec, _ := design.Read(nil)
	p, _ := piece.Build(spec)
	if list := Run(p); len(list) != 0 {
		t.Errorf("got %v", list)
	}
}

// What the tool chooses by itself must not stop it: any sound case of any
// usual wood with the usual joints, back, drawers and doors.
func TestDefaultsNeverStop(t *testing.T) {
	testkit.Check(t, func(rt *rapid.T) {
		text := defaultCase(rt)
		for _, d := range Run(built(t, []byte(text))) {
			if d.Severity >= diag.Stop {
				rt.Fatalf("%s: %s, found %s, limit %s\n%s", d.Code, d.Summary, d.Figure, d.Limit, text)
			}
		}
	})
}

func defaultCase(rt *rapid.T) string {
	pick := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(rt, name) }
	fill := pick("fill", "drawer {}", "door {}", "door { pair = true }", "shelves { count = 2 }")
	text := strings.Replace(job, "black cherry", pick("wood", "black cherry", "white oak", "sugar maple", "black walnut", "white ash"), 1)
	text = strings.Replace(text, `cut      = "flat"`, `cut      = "`+pick("cut", "flat", "rift", "quarter")+`"`, 1)
	return text + lines(`case "c" { width = `+pick("width", "16", "23 1/3", "31", "40")+`; height = `+pick("height", "14", "19 7/16", "30")+
		`; depth = `+pick("depth", "9", "12 1/2", "18")+`; wood = "cherry"; back { style = "shiplap" }; inside { `+fill+` } }`)
}

func BenchmarkSideboard(b *testing.B) {
	p := built(b, exampleText(b, "sideboard"))
	b.ReportAllocs()
	for b.Loop() {
		Run(p)
	}
}
