package design

import (
	"math/big"
	"testing"

	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/testkit"
	"casewright/internal/why"

	"pgregory.net/rapid"
)

// chord reads one expression as a curve's chord, in a commission with some
// names.
func chord(t *testing.T, units, value string) (why.Size, diag.List) {
	t.Helper()
	text := "commission \"x\" {\n  units = \"" + units + "\"\n}\nsizes {\n  bay = 17\n  side = 3/4\n  board = \"19 mm\"\n}\n" +
		"curve \"c\" {\n  rise  = 1\n  flats = 0 * (bay + side) + 0 * board\n  chord = " + value + "\n}\n"
	spec, l := Read([]Source{{"t.hcl", []byte(text)}})
	if len(spec.Curves) != 1 {
		t.Fatalf("%s: %s", value, renderAll(l, text))
	}
	return spec.Curves[0].Chord, l
}

// TestSizes holds expressions to exact values, worked out by hand: one inch is
// 25 400 000 nm, one 64th 396 875.
func TestSizes(t *testing.T) {
	const in, mm = measure.Inch, measure.Millimetre
	for _, c := range []struct {
		units, value string
		want         measure.Length
	}{
		{"in", "20 1/2", 20*in + in/2}, {"in", "5\t3/8", 5*in + 3*in/8}, {"in", "20 1 / 2", 20*in + in/2},
		{"in", "9/16", 9 * in / 16}, {"in", "20.5", 20*in + in/2}, {"in", "2e1", 20 * in},
		{"in", "2 * 3 1/2", 7 * in}, {"in", "3 1/2 * 2", 7 * in}, {"in", "3 1/2 / 2", 7 * in / 4}, {"in", "(20 1/2)", 20*in + in/2},
		{"in", "20 1/2 - 2 * side", 19 * in}, {"in", "bay - -3 1/2", 20*in + in/2}, {"in", "-3 1/2 + bay", 13*in + in/2},
		{"in", "max(3 1/2, side, 2)", 3*in + in/2}, {"in", "min(bay, 20 1/2)", 17 * in},
		{"in", "mm(136.5)", 136*mm + mm/2}, {"mm", "inch(1 1/2)", 3 * in / 2}, {"in", "\"136.5 mm\"", 136*mm + mm/2},
		{"in", "\"1 ft 4 1/2 in\"", 16*in + in/2}, {"mm", "136.5", 136*mm + mm/2}, {"mm", "\"5 3/8 in\"", 5*in + 3*in/8},
		{"in", "\"1\" + 1", 2 * in}, {"in", "1 + \"10 mm\"", in + 10*mm}, {"in", "board + 1", in + 19*mm}, {"mm", "board + 1", 20 * mm},
		{"in", "1/3", 8466667}, {"in", "3 * (1/3)", in}, {"in", "0.1 + 0.2", 3 * in / 10},
		{"in", "\"60 mm\" / \"20 mm\"", 3 * in}, {"in", "bay / 2", 17 * in / 2}, {"in", "side * bay / 17", 3 * in / 4},
	} {
		got, l := chord(t, c.units, c.value)
		if l.Has(diag.Error) || got.Length() != c.want {
			t.Errorf("%s in %s is %d nm, want %d; %v", c.value, c.units, got.Length(), c.want, l)
		}
	}
}

// TestWhy sees what a size can tell about itself.
func TestWhy(t *testing.T) {
	for _, c := range []struct{ value, sum, typed string }{
		{"20 1/2 - 2 * side", "20 1/2 − 2 × 3/4", ""},
		{"(bay + side) * 2 - bay", "2 × 17 + 2 × 3/4 − 17", ""},
		{"side", "", ""}, // the same size: nothing is added up
		{"20 1/2", "", "20 1/2"}, {"bay / 2", "", "bay / 2"}, {"max(bay,  side)", "", "max(bay, side)"},
	} {
		got, _ := chord(t, "in", c.value)
		if s := got.Sum(inches); s != c.sum {
			t.Errorf("%s is explained as %q, want %q", c.value, s, c.sum)
		}
		if got.TypedAs() != c.typed || got.At().Start.Line != 12 {
			t.Errorf("%s was typed as %q in line %d", c.value, got.TypedAs(), got.At().Start.Line)
		}
	}
	side, _ := chord(t, "in", "side")
	lines := side.Explain(inches, 0)
	if len(lines) != 1 || lines[0].Kind != why.Typed || lines[0].Typed != "3/4" || lines[0].At.Start.Line != 6 {
		t.Errorf("a named size is explained as %+v", lines)
	}
}

// TestMixedNumbers: a whole number and a fraction, whatever they are, mean
// their exact sum, and with any operator around them the text means what it
// says.
func TestMixedNumbers(t *testing.T) {
	testkit.Check(t, func(r *rapid.T) {
		whole := rapid.Int64Range(0, 300).Draw(r, "whole")
		under := rapid.Int64Range(2, 64).Draw(r, "under")
		over := rapid.Int64Range(1, under-1).Draw(r, "over")
		times := rapid.Int64Range(1, 2).Draw(r, "times")
		n := big.NewRat(whole*under+over, under)
		text := n.Num().String() + "/" + n.Denom().String()
		mixed := mixedText(n)
		want, ok := measure.FromRat(new(big.Rat).Mul(n, big.NewRat(times, 1)), measure.Inches)
		if !ok {
			return
		}
		for _, value := range []string{mixed + " * " + big.NewInt(times).String(), big.NewInt(times).String() + " * " + mixed, big.NewInt(times).String() + " * (" + text + ")"} {
			if got, l := chord(t, "in", value); got.Length() != want {
				t.Fatalf("%s is %d nm, want %d; %v", value, got.Length(), want, l)
			}
		}
	})
}

// TestOrderOfTexts: sizes, curves and cases may stand in any order and any
// text.
func TestOrderOfTexts(t *testing.T) {
	a := Source{"a.hcl", []byte("curve \"c\" {\n  chord = b * 2\n  rise = a\n}\n")}
	b := Source{"b.hcl", []byte("sizes {\n  b = a + 1\n}\ncommission \"x\" {}\n")}
	c := Source{"c.hcl", []byte("sizes {\n  a = 2\n}\n")}
	for _, order := range [][]Source{{a, b, c}, {c, b, a}, {b, c, a}} {
		spec := mustRead(t, order...)
		wantSize(t, "chord", spec.Curves[0].Chord, 6, 1)
	}
}

// TestFirstCabinet is the ten lines somebody starts with, and the defaults
// that make them enough.
func TestFirstCabinet(t *testing.T) {
	spec := mustRead(t, Source{"first.hcl", []byte("commission \"first\" {}\ncase \"box\" {\n  width = 20\n  height = 30\n  depth = 12\n  wood = \"cherry\"\n  inside {\n    door {}\n  }\n}\n")})
	if !spec.Season.Usual || spec.Season.Dry != 30 || spec.Season.Damp != 60 || spec.Shop.Humidity != 40 {
		t.Errorf("season %+v, shop %v", spec.Season, spec.Shop.Humidity)
	}
	if c := spec.Season.Temperature; c < 21.1 || c > 21.12 { // (70 − 32) × 5/9 = 21.11
		t.Errorf("70 °F is taken as %v °C", c)
	}
	if k := spec.Shop.SmallestChisel; k.Kind() != why.Default || k.Length() != measure.Inch/8 {
		t.Errorf("chisel %v", k.Length())
	}
	if spec.Commission.Rule != measure.ThirtySeconds || spec.Commission.Gaps != measure.SixtyFourths {
		t.Errorf("rule %v, gaps %v", spec.Commission.Rule, spec.Commission.Gaps)
	}
	if c := spec.Cases[0]; c.Thickness.Given() || c.Back != nil || c.Inside.Fill.Door == nil {
		t.Errorf("case %+v", c)
	}
	mm := mustRead(t, Source{"mm.hcl", []byte("commission \"mm\" {\n  units = \"mm\"\n}\nseason {\n  temperature = \"70 F\"\n}\n")})
	if mm.Commission.Rule != measure.HalfMillimetre || mm.Shop.PlanerWidth.Length() != 300*measure.Millimetre || mm.Shop.Temperature != 21 {
		t.Errorf("millimetres: %v %v %v", mm.Commission.Rule, mm.Shop.PlanerWidth.Length(), mm.Shop.Temperature)
	}
	if c := mm.Season.Temperature; c < 21.1 || c > 21.12 {
		t.Errorf("\"70 F\" is taken as %v °C", c)
	}
}

// TestNearestSays: a drawer's own words come before its bank's, those before
// the case's, and those before the commission's, wherever the blocks stand.
func TestNearestSays(t *testing.T) {
	spec := mustRead(t, Source{"t.hcl", []byte(`commission "x" {}
case "box" {
  width     = 20
  height    = 30
  depth     = 12
  thickness = 5/8
  inside {
    row {
      drawer {
        lap = 1/8
      }
    }
    row {
      bank {
        drawers = 3
        ratio   = 3/2
        drawer {
          lap = 3/16
        }
      }
    }
  }
  drawers {
    lap    = 1/4
    groove = 1/4
    front {
      thickness = 7/8
    }
  }
}
drawers {
  groove   = 1/2
  side_gap = 1/64
  slope    = "1:6"
  front {
    wood = "oak"
  }
}
`)})
	rows := spec.Cases[0].Inside.Rows
	own := rows[0].Space.Fill.Drawer
	wantSize(t, "own lap", own.Lap, 1, 8)
	wantSize(t, "the case's groove", own.Groove, 1, 4)
	wantSize(t, "the commission's gap", own.SideGap, 1, 64)
	wantSize(t, "the case's front", own.Front.Thickness, 7, 8)
	if own.Front.Wood.Value != "oak" || own.Slope != (measure.Slope{Rise: 1, Run: 6}) || !own.HasSlope {
		t.Errorf("front of %q, slope %v", own.Front.Wood.Value, own.Slope)
	}
	bank := rows[1].Space
	wantSize(t, "the bank's lap", bank.Rows[2].Space.Fill.Drawer.Lap, 3, 16)
	if bank.Rows[2].Share.Value != 2.25 || bank.Rows[0].Share.Value != 1 {
		t.Errorf("shares %v, %v", bank.Rows[0].Share, bank.Rows[2].Share)
	}
	b := spec.Cases[0].Inside.Between[0]
	if b.Kind != Divider || b.At.IsZero() {
		t.Errorf("between two rows with nothing between stands %+v", b)
	}
	wantSize(t, "it is as thick as the case", b.Thickness, 5, 8)
	if rows[0].Name != "1" || rows[1].Name != "2" {
		t.Errorf("rows are called %q and %q", rows[0].Name, rows[1].Name)
	}
}

// TestSeveralAtOnce: what is wrong in one place does not hide what is wrong in
// another, and what follows from a fault is not reported again.
func TestSeveralAtOnce(t *testing.T) {
	text := `commission "x" {}
sizes {
  side = 23-1/2
  inset = 1 2
  other = side + 1
}
case "box" {
  width  = inset
  height = 23.5in
  dept   = 12
  wood   = oak
  inside {
    row { door {} }
    column {}
    row
  }
}
curve "c" {
  chord = other
  rise  = 0
}
`
	_, l := Read([]Source{{"t.hcl", []byte(text)}})
	var got string
	for _, d := range l {
		got += d.Code + " "
	}
	const want = "E110 E112 E109 E202 E209 E115 E114 E216 "
	if got != want {
		t.Errorf("got  %s\nwant %s\n%s", got, want, renderAll(l, text))
	}
}
