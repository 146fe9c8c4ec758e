package measure

import (
	"slices"
	"testing"

	"casewright/internal/testkit"
	"pgregory.net/rapid"
)

// TestFill counts in marks: g is 10 nm, so 17 is 1.7 marks.
func TestFill(t *testing.T) {
	const g = Graduation(10)
	for _, c := range []struct {
		name        string
		parts, want []Length
	}{
		{"nothing", nil, []Length{}},
		{"on the marks already", []Length{20, 30}, []Length{20, 30}},
		{"largest remainder", []Length{17, 24, 39}, []Length{20, 20, 40}},          // 8.0: 1+2+3 leaves 2, to .9 and .7
		{"total half way goes up", []Length{11, 14}, []Length{10, 20}},             // 2.5 prints as 3
		{"two alike cannot be", []Length{15, 15}, []Length{20, 10}},                // 3.0: the earlier first
		{"two alike can be", []Length{14, 14, 12}, []Length{10, 10, 20}},           // 4.0: not 20 10 10
		{"middle of three", []Length{13, 13, 13}, []Length{10, 20, 10}},            // 3.9 prints as 4
		{"outer two of three", []Length{17, 17, 17}, []Length{20, 10, 20}},         // 5.1 prints as 5
		{"one of four", []Length{12, 12, 12, 12}, []Length{20, 10, 10, 10}},        // 4.8 prints as 5
		{"mirrored row", []Length{5, 33, 33, 33, 5}, []Length{10, 30, 30, 30, 10}}, // 10.9: 11 of 0+3+3+3+0, the pair first
		{"below zero", []Length{-17, 47}, []Length{-20, 50}},                       // 3.0: −2+4 leaves 1, to .7 of 47
	} {
		t.Run(c.name, func(t *testing.T) { testkit.Diff(t, c.want, Fill(sum(c.parts), c.parts, g)) })
	}
}

// TestFillPaperInches is the law it is there for: 55 1/4 shared by three bays
// and two 3/4 partitions, printed to 1/16. The bays are 17 11/12 each.
func TestFillPaperInches(t *testing.T) {
	bays := Split(221*Inch/4-3*Inch/2, 3)
	row := []Length{bays[0], 3 * Inch / 4, bays[1], 3 * Inch / 4, bays[2]}
	var got []string
	for _, l := range Fill(221*Inch/4, row, Sixteenths) {
		got = append(got, Style{Inches, Sixteenths}.Format(l))
	}
	// 17 11/12 = 17 14.67/16, so 3 × 14 leaves 2 sixteenths, for the outer two.
	testkit.Diff(t, []string{"17 15/16", "3/4", "17 7/8", "3/4", "17 15/16"}, got)
}

func TestFillWithoutASum(t *testing.T) {
	testkit.Diff(t, []Length{20, 20}, Fill(100, []Length{15, 24}, 10))
}

func TestFillHolds(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		// Few different sizes, so that parts alike are common.
		sizes := rapid.SliceOfN(lengths(), 1, 4).Draw(t, "sizes")
		parts := rapid.SliceOfN(rapid.SampledFrom(sizes), 0, 9).Draw(t, "parts")
		g := rapid.SampledFrom([]Graduation{0, Eighths, SixtyFourths, WholeMillimetre}).Draw(t, "g")
		total := sum(parts)
		out := Fill(total, parts, g)
		step := Length(g.or(Inches))
		if len(out) != len(parts) || sum(out) != g.Round(total) {
			t.Fatalf("%v adds up to %d, not %d", out, sum(out), g.Round(total))
		}
		for i, p := range parts {
			if out[i]%step != 0 || (out[i]-p).Abs() >= step {
				t.Fatalf("part %d is %d and prints %d", i, p, out[i])
			}
		}
		if !printsAlike(parts, out) && couldPrintAlike(parts, step, g.Round(total)) {
			t.Fatalf("%v prints %v, though all that are alike could be", parts, out)
		}
	})
}

// TestFillMirrors: an odd number of parts of one size reads the same from
// both ends.
func TestFillMirrors(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		parts := slices.Repeat([]Length{lengths().Draw(t, "size")}, 2*rapid.IntRange(0, 5).Draw(t, "pairs")+1)
		out := Fill(sum(parts), parts, SixtyFourths)
		back := slices.Clone(out)
		if slices.Reverse(back); !slices.Equal(out, back) {
			t.Fatalf("%d parts of %d print %v", len(parts), parts[0], out)
		}
	})
}

func printsAlike(parts, out []Length) bool {
	as := map[Length]Length{}
	for i, p := range parts {
		if was, ok := as[p]; ok && was != out[i] {
			return false
		}
		as[p] = out[i]
	}
	return true
}

// couldPrintAlike tries every choice of sizes to be taken up.
func couldPrintAlike(parts []Length, step, total Length) bool {
	var sizes []Length
	for _, p := range parts {
		if !slices.Contains(sizes, p) {
			sizes = append(sizes, p)
		}
	}
	for up := range uint(1) << len(sizes) {
		var s Length
		for _, p := range parts {
			s += p - floorMod(p, step)
			k := slices.Index(sizes, p)
			if up>>k&1 == 1 && floorMod(p, step) != 0 {
				s += step
			}
		}
		if s == total {
			return true
		}
	}
	return false
}
