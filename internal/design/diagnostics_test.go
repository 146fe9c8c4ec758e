package design

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"casewright/internal/diag"
	"casewright/internal/testkit"
)

// faults are texts with one thing wrong. The guillemets mark the span that
// must be reported and are taken away before reading. Texts that do not begin
// with “commission” or “!” get a commission before them; “box:” stands for a
// case with the entries every case needs.
var faults = []struct{ code, name, text string }{
	{"E101", "latin 1", "# caf\xe9\n"}, // checked by hand below: the guillemets would not survive
	{"E102", "tokens", ""},             // built below
	{"E103", "brackets", ""},           //
	{"E104", "line", ""},               //
	{"E118", "problems", ""},           //

	{"E105", "typeset quote", "wood «“oak”» {}"},
	{"E105", "dash", "sizes {\n  a = 20 «–» 1\n}\ncurve \"c\" {\n  chord = a\n  rise = 1\n}"},
	{"E105", "single quotes", "box:\n  wood = «'cherry'»\n}"},
	{"E105", "semicolon", "season {\n  dry = 30«;»\n}"},
	{"E105", "control", "season {\n  dry = 30«\x01»\n}"},
	{"E106", "last block", "season «{»\n  dry = 30\n"},
	{"E106", "inner block, seen by the indent", "case \"a\" {\n  width = 20\n  height = 20\n  depth = 20\n  back «{»\n    rabbet = 3/8\n}\n"},
	{"E106", "seen by the next case", "case \"a\" «{»\n  width = 20\n  height = 20\n  depth = 20\n\nseason {\n  dry = 30\n}\n"},
	{"E106", "list", "site {\n  studs = «[»1, 2\n}\n"},
	{"E106", "remark", "«/*» no end\n"},
	{"E107", "brace", "season {\n}\n«}»\n"},
	{"E108", "quote", "box:\n  wood = «\"cherry»\n}"},
	{"E108", "heredoc", "wood \"a\" {\n  species = «<<END»\n  oak\n}"},
	{"E109", "unit", "box:\n  thickness = «23.5mm»\n}"},
	{"E109", "inch mark", "box:\n  thickness = «3/4\"»\n}"},
	{"E109", "inch mark on a mixed number", "box:\n  thickness = «1 1/4\"» # thick\n}"},
	{"E109", "feet and inches", "curve \"a\" {\n  chord = «4' 9\"»\n  rise = 2\n}"},
	{"E109", "fraction character", "box:\n  thickness = «½»\n}"},
	{"E109", "whole and fraction character", "curve \"a\" {\n  chord = «5½»\n  rise = 1\n}"},
	{"E109", "in a list", "site {\n  studs = [12 1/2, «28\"», 44]\n}"},
	{"E109", "no nought", "box:\n  thickness = «.75»\n}"},
	{"E109", "unit after a blank", "curve \"a\" {\n  chord = «42 in»\n  rise = 2\n}"},
	{"E109", "millimetres after a blank", "curve \"a\" {\n  chord = «420 mm» # clear\n  rise = 2\n}"},
	{"E109", "unit in full", "curve \"a\" {\n  chord = «42 inches»\n  rise = 2\n}"},
	{"E109", "feet", "curve \"a\" {\n  chord = «3 ft»\n  rise = 2\n}"},
	{"E109", "feet and inches in words", "curve \"a\" {\n  chord = «3 ft 6 1/2 in»\n  rise = 2\n}"},
	{"E109", "centimetres", "curve \"a\" {\n  chord = «42 cm»\n  rise = 2\n}"},
	{"E109", "fraction and unit", "box:\n  back { inset = «3/8 in» }\n}"},
	{"E109", "mixed number and unit", "box:\n  thickness = 3 - «2 1/4 in»\n}"},
	{"E109", "unit in a list", "site {\n  studs = [12 1/2, «28 in», 44]\n}"},
	{"E109", "inch mark after a blank", "curve \"a\" {\n  chord = «42 \"»\n  rise = 2\n}"},
	{"E110", "hyphen", "curve \"a\" {\n  chord = «23-1/2»\n  rise = 1\n}"},
	{"E111", "more than one", "curve \"a\" {\n  chord = «5 11/8»\n  rise = 1\n}"},
	{"E111", "nothing below", "curve \"a\" {\n  chord = «5 1/0»\n  rise = 1\n}"},
	{"E111", "decimal", "curve \"a\" {\n  chord = «5.5 1/2»\n  rise = 1\n}"},
	{"E112", "two numbers", "site {\n  studs = [«12 20»]\n}"},
	{"E113", "filled in", "wood \"a\" {\n  species = \"«${»oak}\"\n}"},
	{"E114", "no entry", "season {\n  «dry»\n}"},
	{"E114", "no value", "season {\n  dry =«\n»}"},
	{"E115", "nested on one line", "box:\n  inside { «door {»} }\n}"},
	{"E115", "two entries on a line", "season { dry = 30 «damp» = 60 }"},
	{"E116", "text without quotes", "season {\n  dry = 30 «percent»\n}"},
	{"E116", "comma and another entry", "season {\n  dry = 30«,» damp = 60\n}"},
	{"E116", "list without brackets", "site {\n  studs = 12«,» 20\n}"},
	{"E116", "comma", "season {\n  dry = 30«,»\n  damp = 60\n}"},
	{"E117", "backslash", "wood \"a\" {\n  species = \"oak«\\o»\"\n}"},
	{"E119", "digits", "box:\n  thickness = «11111111111111111111111111111111111111111111»\n}"},
	{"E120", "decimal comma", "curve \"a\" {\n  chord = «32,5»\n  rise = 2\n}"},
	{"E120", "in a sum", "curve \"a\" {\n  chord = (20 + «0,125») * 2\n  rise = 2\n}"},
	{"E120", "thousands", "curve \"a\" {\n  chord = «1,067»\n  rise = 2\n}"},
	{"E120", "thousands twice", "shop {\n  dovetail_kerf = 1 / «1,250,000»\n}"},
	{"E120", "thousands and a point", "curve \"a\" {\n  chord = «1,067.5»\n  rise = 2\n}"},
	{"E120", "with its unit", "curve \"a\" {\n  chord = «32,5 mm»\n  rise = 2\n}"},
	{"E120", "neither", "curve \"a\" {\n  chord = «1,2,3»\n  rise = 2\n}"},

	{"E201", "unknown", "«cupboard» \"a\" {}"},
	{"E201", "elsewhere", "«drawer» {}"},
	{"E201", "in a fill", "box:\n  inside {\n    drawer {\n      «lid» {}\n    }\n  }\n}"},
	{"E202", "misspelt", "box:\n  «thicknes» = 3/4\n}"},
	{"E202", "misspelt and needed", "curve \"a\" {\n  «cord» = 20\n  rise = 1\n}"},
	{"E202", "outside", "«width» = 20"},
	{"E202", "block as entry", "box:\n  «back» = \"panel\"\n}"},
	{"E203", "twice", "season {\n  dry = 30\n  «dry» = 35\n}"},
	{"E203", "size", "sizes {\n  a = 1\n}\nsizes {\n  «a» = 2\n}\ncurve \"c\" {\n  chord = 20\n  rise = a\n}"},
	{"E204", "inside", "box:\n  back {}\n  «back» {}\n}"},
	{"E204", "top level", "season {}\n«season» {}"},
	{"E205", "entry", "«curve \"a\"» {\n  rise = 1\n}"},
	{"E206", "no name", "«curve» {\n  chord = 20\n  rise = 1\n}"},
	{"E206", "name too many", "season «\"winter\"» {}"},
	{"E206", "two names", "wood \"a\" «\"b\"» {}"},
	{"E207", "wood", "wood \"a\" {}\nwood «\"a\"» {}"},
	{"E207", "rows", "box:\n  inside {\n    row \"a\" {}\n    «row \"a\"» {}\n  }\n}"},
	{"E207", "number", "box:\n  inside {\n    row \"2\" {}\n    «row» {}\n  }\n}"},
	{"E208", "dot", "wood «\"a.b\"» {}"},
	{"E208", "empty", "wood «\"\"» {}"},
	{"E209", "yes or no", "box:\n  thickness = «true»\n}"},
	{"E209", "bare word", "box:\n  wood = «cherry»\n}"},
	{"E209", "number for text", "box:\n  wood = «3»\n}"},
	{"E209", "text for number", "season {\n  dry = «\"30\"»\n}"},
	{"E209", "list too short", "site {\n  free_wall = «[6]»\n}"},
	{"E209", "length for list", "site {\n  studs = «6»\n}"},
	{"E210", "choice", "wood \"a\" {\n  cut = «\"flatsawn\"»\n}"},
	{"E211", "unknown", "sizes {\n  side = 3/4\n}\nbox:\n  thickness = «sid»\n  sides = side\n}"},
	{"E211", "minus", "sizes {\n  inset = 1\n  side = 3/4\n}\nbox:\n  thickness = «inset-side»\n}"},
	{"E211", "yes", "box:\n  hung = «yes»\n}"},
	{"E212", "circle", "sizes {\n  «a» = b + 1\n  b = c\n  c = 2 * a\n}"},
	{"E212", "itself", "sizes {\n  «a» = a\n}"},
	{"E213", "by nothing", "box:\n  thickness = «1/0»\n}"},
	{"E213", "area", "box:\n  thickness = «\"3 mm\" * \"4 mm\"»\n}"},
	{"E213", "yes in a sum", "box:\n  thickness = 1 + «true»\n}"},
	{"E214", "condition", "box:\n  thickness = «1 < 2 ? 1 : 2»\n}"},
	{"E214", "path", "box:\n  thickness = «case.width»\n}"},
	{"E215", "unknown", "box:\n  thickness = «mn»(1, 2)\n}"},
	{"E215", "too many", "box:\n  thickness = «mm»(1, 2)\n}"},
	{"E216", "nought", "box:\n  thickness = «0»\n}"},
	{"E216", "less", "box:\n  thickness = «1 - 2»\n}"},
	{"E216", "large", "box:\n  thickness = «900»\n}"},
	{"E216", "beyond measure", "box:\n  thickness = «1e30»\n}"},
	{"E216", "thin", "box:\n  thickness = «1/1000»\n}"},
	{"E217", "whole", "box:\n  inside {\n    shelves {\n      count = «1.5»\n    }\n  }\n}"},
	{"E217", "percent", "season {\n  damp = «101»\n}"},
	{"E217", "legs", "box:\n}\nstand \"s\" {\n  under = \"box\"\n  height = 5\n  legs = «5»\n}"},
	{"E218", "length", "box:\n  thickness = «\"3 furlongs\"»\n}"},
	{"E218", "slope", "box:\n  corners {\n    slope = «\"steep\"»\n  }\n}"},
	{"E218", "angle", "box:\n  hung = true\n  cleat {\n    bevel = «\"45 rad\"»\n  }\n}"},
	{"E218", "temperature", "season {\n  temperature = «\"warm\"»\n}"},
	{"E219", "curve", "box:\n  front = «\"bow\"»\n}"},
	{"E219", "hardware", "box:\n  inside {\n    door {\n      hinges = «\"but hinge\"»\n    }\n  }\n}\nhardware \"butt hinge\" {\n  kind = \"hinge\"\n}"},
	{"E220", "circle", "box:\n  on = «\"lid\"»\n}\ntop \"lid\" {\n  on = \"box\"\n}"},
	{"E221", "first", "box:\n  inside {\n    «divider» {}\n    row {}\n    row {}\n  }\n}"},
	{"E221", "last", "box:\n  inside {\n    row {}\n    row {}\n    «rail» {}\n  }\n}"},
	{"E221", "doubled", "box:\n  inside {\n    row {}\n    rail {}\n    «divider» {}\n    row {}\n  }\n}"},
	{"E221", "kind", "box:\n  inside {\n    column {}\n    «rail» {}\n    column {}\n  }\n}"},
	{"E222", "both ways", "box:\n  inside {\n    row {}\n    «column» {}\n  }\n}"},
	{"E222", "divided and filled", "box:\n  inside {\n    row {}\n    row {}\n    «door» {}\n  }\n}"},
	{"E222", "bank among rows", "box:\n  inside {\n    row {}\n    «bank» {\n      drawers = 2\n    }\n  }\n}"},
	{"E222", "step and ratio", "box:\n  inside {\n    bank {\n      drawers = 2\n      step = 1\n      ratio = «1.5»\n    }\n  }\n}"},
	{"E224", "cleat", "box:\n  «cleat» {}\n}"},
	{"E224", "season", "«season» {\n  dry = 60\n  damp = 30\n}"},
	{"E224", "hung and standing", "box:\n  hung = true\n  on = «\"s\"»\n}\nstand \"s\" {\n  under = \"box\"\n  height = 5\n}"},
	{"E224", "stand of another", "box:\n  on = «\"s\"»\n}\ncase \"other\" {\n  width = 20\n  height = 20\n  depth = 20\n}\nstand \"s\" {\n  under = \"other\"\n  height = 5\n}"},
	{"E225", "none", "!«»"},
	{"E225", "two", "«commission \"b\"» {}"},
	{"N201", "unused", "sizes {\n  «a» = 1\n}"},
	{"N202", "exchanged", "box:\n  thickness = «13/61»\n}"},
	{"N202", "on a whole number", "box:\n  thickness = 2 - «1 11/15»\n}"},
}

// faultText builds a fault's text and the span that must be reported.
func faultText(text string) (clean string, start, end int) {
	if !strings.HasPrefix(text, "!") {
		text = "commission \"x\" {}\n" + text
	}
	text = strings.TrimPrefix(text, "!")
	text = strings.ReplaceAll(text, "box:\n", "case \"box\" {\n  width = 20\n  height = 20\n  depth = 20\n")
	before, rest, _ := strings.Cut(text, "«")
	marked, after, _ := strings.Cut(rest, "»")
	return before + marked + after, len(before), len(before) + len(marked)
}

func TestFaults(t *testing.T) {
	for _, c := range faults {
		if !strings.Contains(c.text, "«") {
			continue
		}
		t.Run(c.code+" "+c.name, func(t *testing.T) {
			text, start, end := faultText(c.text)
			_, l := Read([]Source{{"t.hcl", []byte(text)}})
			checkPlaces(t, []byte(text), l)
			if len(l) != 1 || l[0].Code != c.code {
				t.Fatalf("want one %s, got %d:\n%s\n%s", c.code, len(l), renderAll(l, text), text)
			}
			if s := l[0].Subject; s.Start.Offset != start || s.End.Offset != end {
				t.Errorf("%s points at %q, want %q", c.code, text[s.Start.Offset:s.End.Offset], text[start:end])
			}
			checkEdits(t, text, l[0])
		})
	}
}

// checkEdits tries every proposed mend: it must do away with the fault and
// bring no other syntax error.
func checkEdits(t *testing.T, text string, d diag.Diagnostic) {
	t.Helper()
	for _, e := range d.Edits {
		mended := text[:e.Span.Start.Offset] + e.Text + text[e.Span.End.Offset:]
		_, l := Read([]Source{{"t.hcl", []byte(mended)}})
		for _, after := range l {
			if after.Code == d.Code && after.Subject.Start.Offset == d.Subject.Start.Offset || strings.HasPrefix(after.Code, "E1") && !strings.HasPrefix(d.Summary, "a typeset") && !strings.HasPrefix(d.Summary, "a single") {
				t.Errorf("after the mend %q: %s\n%s", e.Says, oneLine(after), mended)
			}
		}
	}
}

func renderAll(l diag.List, text string) string {
	var b bytes.Buffer
	for _, d := range l {
		diag.Render(&b, d, func(string) ([]byte, bool) { return []byte(text), true })
	}
	return b.String()
}

// checkPlaces sees that every place lies in the text and that its three
// numbers agree.
func checkPlaces(t testing.TB, text []byte, l diag.List) {
	t.Helper()
	f := newFile(Source{"t.hcl", text})
	at := func(p diag.Pos) {
		if p.Offset < 0 || p.Offset > len(text) || p != f.pos(p.Offset) {
			t.Errorf("place %+v is not in the text, or its numbers disagree", p)
		}
	}
	span := func(s diag.Span) {
		if !s.IsZero() {
			at(s.Start)
			at(s.End)
			if s.End.Offset < s.Start.Offset {
				t.Errorf("span %+v ends before it starts", s)
			}
		}
	}
	for _, d := range l {
		if d.Code == "" || d.Severity == 0 || d.Summary == "" {
			t.Errorf("half a diagnostic: %+v", d)
		}
		span(d.Subject)
		for _, r := range d.Related {
			span(r.Span)
		}
		for _, e := range d.Edits {
			span(e.Span)
		}
	}
}

// TestEveryCode sees that every code is explained, has a case, and that none
// is reported that is not.
func TestEveryCode(t *testing.T) {
	var tried, told []string
	for _, c := range faults {
		tried = append(tried, c.code)
	}
	for _, e := range Explanations() {
		told = append(told, e.Code)
		if !slices.Contains(tried, e.Code) {
			t.Errorf("%s has no case", e.Code)
		}
	}
	for _, c := range tried {
		if !slices.Contains(told, c) {
			t.Errorf("%s is not explained", c)
		}
	}
	if !slices.IsSorted(told) {
		t.Error("explanations are out of order")
	}
}

func TestFaultsRendered(t *testing.T) {
	var b bytes.Buffer
	for _, c := range faults {
		if !strings.Contains(c.text, "«") {
			continue
		}
		text, _, _ := faultText(c.text)
		_, l := Read([]Source{{"t.hcl", []byte(text)}})
		fmt.Fprintf(&b, "== %s %s\n%s\n", c.code, c.name, renderAll(l, text))
	}
	testkit.Golden(t, "faults.golden", b.Bytes())
}

func one(t *testing.T, text []byte, code string) diag.Diagnostic {
	t.Helper()
	_, l := Read([]Source{{"t.hcl", text}})
	checkPlaces(t, text, l)
	if len(l) == 0 || l[0].Code != code {
		t.Fatalf("want %s first, got %d diagnostics, first %v", code, len(l), l[:min(len(l), 3)])
	}
	return l[0]
}

func TestNotUTF8(t *testing.T) {
	d := one(t, []byte("commission \"x\" {}\n# caf\xe9 \xff\n"), "E101")
	if d.Subject.Start.Line != 2 || d.Subject.Start.Column != 6 || !strings.Contains(d.Summary, "2 bytes") {
		t.Error(oneLine(d))
	}
	d = one(t, []byte("\xff\xfec\x00o\x00"), "E101")
	if !strings.Contains(d.Summary, "UTF-16") {
		t.Error(oneLine(d))
	}
	mustRead(t, Source{"t.hcl", []byte("\ufeffcommission \"x\" {}\r\nseason {\r\n  dry = 35\r\n}\r\n")})
}

func TestTooMuch(t *testing.T) {
	head := "commission \"x\" {}\n"
	d := one(t, []byte(head+strings.Repeat("wood \"a\" {}\n", mostBlocks+10)), "E102")
	if d.Subject.Start.Line < 2 {
		t.Error(oneLine(d))
	}
	one(t, []byte(head+strings.Repeat("\n", mostLines+1)), "E102")
	one(t, bytes.Repeat([]byte("a = 1\n"), mostTokens/3+9), "E102")
	one(t, make([]byte, mostBytes+1), "E102")
	d = one(t, []byte(head+"sizes {\n  a = "+strings.Repeat("(", 3_000)+"\n}\n"), "E103")
	if d.Subject.Start.Line != 3 || d.Subject.Start.Column != 7+deepest-1 { // the brace is one of them
		t.Error(oneLine(d))
	}
	d = one(t, []byte(head+"sizes {\n  a = "+strings.Repeat("-", 1000)+"1\n}\n"), "E103")
	if d.Subject.Start.Line != 3 {
		t.Error(oneLine(d))
	}
	one(t, []byte(head+strings.Repeat("row {\n", 9_000)), "E103")
	d = one(t, []byte(head+"sizes {\n  a = 1"+strings.Repeat("+1", longestLine)+"\n}\n"), "E104")
	if d.Subject.Start.Line != 3 {
		t.Error(oneLine(d))
	}
	one(t, []byte(head+"sizes {\n  a = (1"+strings.Repeat("+1\n", longestItem)+")\n}\n"), "E104")
	_, l := Read([]Source{{"t.hcl", []byte(head + "season {\n" + strings.Repeat("  dri = 1;\n", 300) + "}\n")}})
	if len(l) != mostProblems+1 || l.Count(diag.Error) != mostProblems+1 || !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "E118" }) {
		t.Errorf("%d diagnostics, want %d and E118 among them", len(l), mostProblems+1)
	}
}
