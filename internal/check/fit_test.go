package check

import (
	"fmt"
	"strings"
	"testing"

	"casewright/internal/design"
	"casewright/internal/measure"
	"casewright/internal/piece"
)

func chest(drawer string) string {
	return job + lines(`case "c" { width = 24; height = 12; depth = 14; wood = "cherry"; inside { drawer { `+drawer+` } } }`)
}

// The opening is 12 − 2 × 3/4 = 10-1/2 high and a drawer h = 10.5 − gap high
// swells h × 0.00248 × 3.5 (7.5 to 11.0 %, Wood Handbook Eq. 13-2, C_T of black
// cherry): with a gap of 6/64 it is 10.406 and swells 0.0905 < 0.0938, with
// 5/64 it swells 0.0906 > 0.0781.
func TestDrawerHeight(t *testing.T) {
	for gap, want := range map[string]string{"": "", "6/64": "", "5/64": "stop", "0": "stop", "1/8": "", "3/16": "warn"} {
		t.Run("top gap "+gap, func(t *testing.T) {
			attribute := ""
			if gap != "" {
				attribute = "top_gap = " + gap
			}
			list := checked(t, chest(attribute))
			if got := grade(list, "fit.drawer"); got != want {
				t.Errorf("got %q, want %q\n%s", got, want, rendered(list, nil))
			}
		})
	}
}

// The mend that is offered must mend.
func TestDrawerMend(t *testing.T) {
	text := chest("top_gap = 1/32")
	d := of(checked(t, text), "fit.drawer")[0]
	if len(d.Edits) != 1 {
		t.Fatalf("no mend for a typed gap: %+v", d)
	}
	e := d.Edits[0]
	if got := text[d.Subject.Start.Offset:d.Subject.End.Offset]; got != "1/32" {
		t.Errorf("the finding points at %q", got)
	}
	mended := text[:e.Span.Start.Offset] + e.Text + text[e.Span.End.Offset:]
	if list := of(checked(t, mended), "fit.drawer"); len(list) > 0 {
		t.Errorf("mended to %s it still says:\n%s", e.Text, rendered(list, []byte(mended)))
	}
}

// Two sides of 1/2 in flat-sawn cherry thicken by 1 × C_R 0.00126 × 3.5 =
// 0.0044 in: a gap of 0.002 each side is too little, 0.003 is enough. At 1/8
// each side and more it racks.
func TestDrawerWidth(t *testing.T) {
	for gap, want := range map[string]string{"0": "stop", "0.002": "stop", "0.003": "", "1/32": "", "0.12": "", "0.13": "warn"} {
		list := checked(t, chest("side_gap = "+gap+"; sides { thickness = 1/2; wood = \"cherry\" }"))
		if got := grade(list, "fit.drawer"); got != want {
			t.Errorf("side gap %s: got %q, want %q\n%s", gap, got, want, rendered(list, nil))
		}
	}
}

// Like drawers with one fault are one finding that names both.
func TestOneMatterOneFinding(t *testing.T) {
	text := job + lines(`case "c" { width = 24; height = 12; depth = 14; drawers { top_gap = 0 }; inside { column "l" { drawer {} }; partition {}; column "r" { drawer {} } } }`)
	list := of(checked(t, text), "fit.drawer")
	if len(list) != 1 {
		t.Fatalf("want one finding:\n%s", rendered(list, []byte(text)))
	}
	if d := list[0]; !strings.Contains(d.Summary, "l drawer and r drawer would stick") || d.Where != "B, C (c.*)" {
		t.Errorf("summary %q, where %q", d.Summary, d.Where)
	}
}

func cupboard(door string) string {
	return job + lines(`case "c" { width = 24; height = 30; depth = 12; inside { door { `+door+` } } }`)
}

// Two 4 in stiles of flat-sawn cherry grow 8 × 0.00248 × 3.5 = 0.069 in. The
// closing side gets that beside the gap asked for, and the middle of a pair
// twice that, so none binds there. When dry they shrink by a third of
// it more: 0.078 + 0.026 + gap passes 3/16 from a gap of 0.083 on, a pair's
// 0.141 + 0.052 + gap with any gap.
func TestDoors(t *testing.T) {
	for _, c := range []struct{ door, want string }{
		{"stile = 4; gap = 1/64", ""},
		{"stile = 4; gap = 1/65", "stop"}, // at the hinges, where nothing moves: less than 1/64
		{"stile = 4; gap = 0.08", ""},
		{"stile = 4; gap = 0.09", "warn"},
		{"stile = 4; gap = 1/64; pair = true", "warn"},
		{"stile = 2; gap = 1/16; pair = true", ""},
		{"stile = 4; gap = 0; mount = \"overlay\"", ""},
	} {
		t.Run(c.door, func(t *testing.T) {
			list := checked(t, cupboard(c.door))
			if got := grade(list, "fit.door"); got != c.want {
				t.Errorf("got %q, want %q\n%s", got, c.want, rendered(list, nil))
			}
		})
	}
}

// A pair with 2 in stiles of flat-sawn cherry, made at 8 % and going to 12: each
// door grows 4 × 0.00248 × 4 = 0.0397 in, so the gap in the middle takes 0.0794.
func TestPairOfDoors(t *testing.T) {
	for room, want := range map[float64]string{0.0795: "", 0.0793: "stop"} {
		b := panelFit(t, piece.DoorWidth, 4, room, 0)
		b.Parts[0].Width = size(2)
		b.Parts[0].Assembly.Opening = &piece.Opening{Fill: design.Fill{Door: &design.Door{Pair: design.Flag{Value: true}}}}
		if got := grade(Run(b), "fit.door"); got != want {
			t.Errorf("gap %v: got %q, want %q", room, got, want)
		}
	}
}

// 72 times the thickness: 18 in of 1/4.
func TestWideBottoms(t *testing.T) {
	for thick, want := range map[string]string{"1/4": "note", "5/16": "", "3/16": "note"} {
		list := checked(t, chest(`bottom { thickness = `+thick+` }`)) // about 21-1/2 in wide inside
		if got := grade(list, "drawer.wide-bottom"); got != want {
			t.Errorf("%s thick: got %q, want %q\n%s", thick, got, want, rendered(list, nil))
		}
	}
}

func TestStiffer(t *testing.T) {
	r := &run{p: bench()}
	for _, c := range []struct {
		span, thick float64
		want        string
	}{
		{19, 0.25, `Make it 5/16" thick`}, // 19/72 = 0.264
		{36, 0.5, "a muntin"},             // exactly 1/2 in needed: still a bottom
		{37, 0.3125, "Add a muntin"},      // 37/72 = 0.514; 2 × 22.5 hold it
		{60, 0.25, "Add 3 muntins"},       // 60/18 = 3.33: four bays
	} {
		most := thicknesses * inch(c.thick)
		span := inch(c.span)
		if got := r.stiffer((span+thicknesses-1)/thicknesses, span, most); !strings.Contains(got, c.want) {
			t.Errorf("%v of %v: %q has no %q", c.span, c.thick, got, c.want)
		}
	}
}

func TestFormat(t *testing.T) {
	r := &run{p: bench()}
	for l, want := range map[measure.Length]string{
		inch(0.375): `3/8"`, inch(0.0992): `3/32" (0.099")`, inch(0.004): `0.004"`, inch(12.01): `12 1/64"`, 0: `0"`,
	} {
		if got := r.fmt(l); got != want {
			t.Errorf("%s is printed %s, want %s", fmt.Sprint(l), got, want)
		}
	}
	r.style.Unit = measure.Millimetres
	if got := r.fmt(measure.Millimetre * 1234 / 1000); got != "1.23 mm" {
		t.Errorf("got %s", got)
	}
}
