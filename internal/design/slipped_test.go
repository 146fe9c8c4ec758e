package design

import (
	"strings"
	"testing"
)

// A rule's marks are halves down to 64ths of an inch; everything else under
// the line of a size is likely a slip (rule N202).
func TestSlippedFractions(t *testing.T) {
	for _, c := range []struct{ typed, says, mends string }{
		{"13/61", "no rule is divided in 61sts: was 13/16 meant?", "13/16"},
		{"1 13/61", "no rule is divided in 61sts: was 13/16 meant?", "1 13/16"},
		{"13 / 61", "no rule is divided in 61sts: was 13/16 meant?", "13/16"},
		{"3/23", "no rule is divided in 23rds: was 3/32 meant?", "3/32"},
		{"1/46", "no rule is divided in 46ths: was 1/64 meant?", "1/64"},
		{"11/15", "no rule is divided in 15ths: was 11/16 meant?", "11/16"},
		{"7/36", "no rule is divided in 36ths: was 7/16 or 7/32 meant?", "7/16 7/32"},
		{"15/99", "no rule is divided in 99ths", ""},
		{"2 - 13/61", "no rule is divided in 61sts: was 13/16 meant?", "13/16"},
		{"max(3/4, 13/61)", "no rule is divided in 61sts: was 13/16 meant?", "13/16"},
		{"13/16", "", ""},
		{"1 1/3", "", ""},
		{"5/12", "", ""},
		{"7/10", "", ""},
		{"37/100", "", ""},
		{"12/24", "", ""},      // a half
		{"27/7", "", ""},       // a sum: 27 shared among 7
		{"side * 3/7", "", ""}, // a share of a size
		{"2/7 * side", "", ""}, //
		{"(side + 1)/7", "", ""},
		{`"13/61 in"`, "", ""}, // read by the rules for quoted lengths
	} {
		text := "commission \"x\" {}\nsizes {\n  side = 2\n}\ncurve \"c\" {\n  chord = 20 + side\n  rise = " + c.typed + "\n}\n"
		_, l := Read([]Source{{"t.hcl", []byte(text)}})
		if c.says == "" {
			if len(l) > 0 {
				t.Errorf("%s: %s", c.typed, renderAll(l, text))
			}
			continue
		}
		if len(l) != 1 || l[0].Code != "N202" || l[0].Summary != c.says {
			t.Errorf("%s: want %q, got %s", c.typed, c.says, renderAll(l, text))
			continue
		}
		var mends []string
		for _, e := range l[0].Edits {
			mends = append(mends, e.Text)
		}
		if got := strings.Join(mends, " "); got != c.mends {
			t.Errorf("%s: mends %q, want %q", c.typed, got, c.mends)
		}
		checkEdits(t, text, l[0])
	}
}

// Named sizes are looked at too; millimetre commissions have no inch rule.
func TestSlippedFractionsElsewhere(t *testing.T) {
	for unit, want := range map[string]int{"in": 1, "mm": 0} {
		text := "commission \"x\" {\n  units = \"" + unit + "\"\n}\nsizes {\n  side = 13/61\n}\ncurve \"c\" {\n  chord = 20 + side\n  rise = 1\n}\n"
		if _, l := Read([]Source{{"t.hcl", []byte(text)}}); len(l) != want {
			t.Errorf("%s: %s", unit, renderAll(l, text))
		}
	}
}
