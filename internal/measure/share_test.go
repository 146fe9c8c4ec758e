package measure

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"casewright/internal/testkit"
	"pgregory.net/rapid"
)

func TestMulDiv(t *testing.T) {
	for _, c := range []struct {
		l        Length
		num, den int64
		want     Length
	}{
		{10, 1, 4, 2},   // 2.5 to the even 2
		{14, 1, 4, 4},   // 3.5 to the even 4
		{-10, 1, 4, -2}, // the same below zero
		{10, -1, 4, -2},
		{10, 1, -4, -2},
		{11, 1, 4, 3}, // 2.75
		{0, 5, 7, 0},
		{MaxLength, math.MaxInt64, math.MaxInt64, MaxLength},
		{math.MaxInt64, 3, 2, math.MaxInt64},
		{math.MinInt64, 3, 2, -math.MaxInt64},
		{math.MaxInt64, math.MaxInt64, 1, math.MaxInt64},
	} {
		if got := c.l.MulDiv(c.num, c.den); got != c.want {
			t.Errorf("%d × %d/%d: got %d, want %d", c.l, c.num, c.den, got, c.want)
		}
	}
}

// TestMulDivAgreesWithBig computes the same with numbers of any size.
func TestMulDivAgreesWithBig(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		l, num, den := rapid.Int64().Draw(t, "l"), rapid.Int64().Draw(t, "num"), rapid.Int64().Draw(t, "den")
		if den == 0 {
			t.Skip("no division by zero")
		}
		r := new(big.Rat).Mul(big.NewRat(l, 1), new(big.Rat).SetFrac(big.NewInt(num), big.NewInt(den)))
		want, ok := roundHalfEven(r)
		if want = max(want, -math.MaxInt64); !ok {
			want = int64(r.Sign()) * math.MaxInt64
		}
		if got := Length(l).MulDiv(num, den); got != Length(want) {
			t.Fatalf("got %d, want %d", got, want)
		}
	})
}

func TestFromNumbers(t *testing.T) {
	third := big.NewRat(1, 3)
	if l, ok := FromRat(third, Inches); !ok || l != 8_466_667 { // 25 400 000 / 3 = 8 466 666.6
		t.Errorf("a third of an inch: %d, %v", l, ok)
	}
	huge, _ := new(big.Float).SetPrec(512).SetString("1e100000000")
	tiny, _ := new(big.Float).SetPrec(512).SetString("-1e-100000000")
	for _, c := range []struct {
		name string
		f    *big.Float
		want Length
		ok   bool
	}{
		{"5.375", big.NewFloat(5.375), 43 * Inch / 8, true},
		{"half a nanometre over", big.NewFloat(-0.5), -Inch / 2, true},
		{"nil", nil, 0, false},
		{"infinite", new(big.Float).SetInf(true), 0, false},
		{"huge", huge, 0, false},
		{"tiny", tiny, 0, true},
		{"a kilometre and more", big.NewFloat(39371), 0, false}, // 1000/0.0254 = 39 370.08
		{"a kilometre and less", big.NewFloat(-39370), -39370 * Inch, true},
	} {
		if l, ok := FromBigFloat(c.f, Inches); ok != c.ok || ok && l != c.want {
			t.Errorf("%s: got %d, %v; want %d, %v", c.name, l, ok, c.want, c.ok)
		}
	}
	if _, ok := FromRat(nil, Inches); ok {
		t.Error("nil is no number")
	}
	if _, ok := FromRat(new(big.Rat).SetInt(new(big.Int).Lsh(big.NewInt(1), 100_000)), Inches); ok {
		t.Error("2^100000 is no length")
	}
}

func TestSplitAndShare(t *testing.T) {
	testkit.Diff(t, []Length{4, 4, 4}, Split(12, 3))
	testkit.Diff(t, []Length{3, 4, 3}, Split(10, 3)) // cut marks 3.3 and 6.6
	testkit.Diff(t, []Length{-3, -4, -3}, Split(-10, 3))
	testkit.Diff(t, []Length(nil), Split(10, 0))
	testkit.Diff(t, []Length(nil), Split(10, -1))
	testkit.Diff(t, []Length{Inch, 2 * Inch, 3 * Inch}, Share(6*Inch, []int64{1, 2, 3}))
	testkit.Diff(t, []Length{0, 10, 0}, Share(10, []int64{0, 5, -3}))
	testkit.Diff(t, []Length{5, 5}, Share(10, []int64{0, 0}))
	testkit.Diff(t, []Length(nil), Share(10, nil))
	most := int64(math.MaxInt64)
	testkit.Diff(t, []Length{MaxLength / 4, MaxLength / 4, MaxLength / 4, MaxLength / 4}, Share(MaxLength, []int64{most, most, most, most}))
}

func sum(parts []Length) (s Length) {
	for _, p := range parts {
		s += p
	}
	return s
}

func TestShareAddsUp(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		total := lengths().Draw(t, "total")
		weights := rapid.SliceOfN(rapid.Int64Range(0, math.MaxInt64), 1, 12).Draw(t, "weights")
		parts := Share(total, weights)
		if sum(parts) != total {
			t.Fatalf("%v adds up to %d", parts, sum(parts))
		}
		var all big.Int
		for _, w := range weights {
			all.Add(&all, big.NewInt(w))
		}
		if all.Sign() == 0 {
			return
		}
		for i, w := range weights {
			exact := new(big.Rat).Mul(ratOf(total), new(big.Rat).SetFrac(big.NewInt(w), &all))
			if off := exact.Sub(exact, ratOf(parts[i])); off.Abs(off).Cmp(big.NewRat(1, 1)) > 0 {
				t.Fatalf("share %d of %v is more than a nanometre off", i, parts)
			}
		}
	})
}

func TestSplitIsEven(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		total, n := lengths().Draw(t, "total"), rapid.IntRange(1, 50).Draw(t, "n")
		parts := Split(total, n)
		if sum(parts) != total || len(parts) != n || slices.Max(parts)-slices.Min(parts) > 1 {
			t.Fatalf("%v of %d", parts, total)
		}
	})
}
