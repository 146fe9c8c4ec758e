package measure

import (
	"cmp"
	"slices"
)

// Fill gives the printed sizes of parts that stand side by side and fill
// total. Provided that the parts add up to total:
//
//   - the results add up to total as printed, that is, rounded to g;
//   - each is a multiple of g and differs from its part by less than one g.
//
// Every part is first taken down to the mark below it; the marks then missing
// go to the parts with the most left over (the method of largest remainders),
// the earlier first among those with as much.
//
// Parts of one size are printed as one size whenever some dealing out of the
// missing marks allows it, even where another would lie a little nearer: two
// doors that are alike must not read 17 and 17 1/32. When none does, one size
// is divided: the extra marks go to its outermost pairs first and an odd one
// to its middle part, so that a row that mirrors itself is printed mirrored;
// where there is no middle part, to the earliest one left.
//
// When the parts do not add up to total there is nothing to distribute, and
// each is printed as it would be alone. The graduation's zero value is
// 1/64 in. Lengths are taken to be within MaxLength.
func Fill(total Length, parts []Length, g Graduation) []Length {
	g = g.or(Inches)
	step := Length(g)
	out := make([]Length, len(parts))
	var sum, floors Length
	for i, p := range parts {
		out[i] = p - floorMod(p, step)
		floors += out[i]
		sum += p
	}
	if sum != total {
		for i, p := range parts {
			out[i] = g.Round(p)
		}
		return out
	}
	// At most one mark for each part that is not on one: the remainders add
	// up to the missing marks, give or take a half, and each is below one.
	for _, i := range deal(alike(parts, step), int((g.Round(total)-floors)/step)) {
		out[i] += step
	}
	return out
}

// floorMod is how far l lies above the mark below it.
func floorMod(l, step Length) Length { return ((l % step) + step) % step }

// alike gathers the places of parts of one size, the most left over first,
// then in the order of the row. Parts on a mark need nothing and are left out.
func alike(parts []Length, step Length) [][]int {
	at := map[Length]int{}
	var groups [][]int
	for i, p := range parts {
		if floorMod(p, step) == 0 {
			continue
		}
		k, known := at[p]
		if !known {
			k = len(groups)
			at[p], groups = k, append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	slices.SortStableFunc(groups, func(a, b []int) int {
		return cmp.Compare(floorMod(parts[b[0]], step), floorMod(parts[a[0]], step))
	})
	return groups
}

// mostDealt bounds the table that whole looks up: far beyond any row of
// furniture. Longer rows are dealt by remainder alone.
const mostDealt = 1 << 22

// deal chooses the places that get one of n marks.
func deal(groups [][]int, n int) []int {
	chosen := make([]int, 0, n)
	if len(groups)*(n+1) <= mostDealt {
		if whole := wholeGroups(groups, n); whole != nil {
			for _, k := range whole {
				chosen = append(chosen, groups[k]...)
			}
			return chosen
		}
	}
	for _, group := range groups {
		if left := n - len(chosen); left < len(group) {
			return append(chosen, symmetric(group, left)...)
		}
		chosen = append(chosen, group...)
	}
	return chosen
}

// wholeGroups finds groups that take n marks without dividing one, preferring
// those in front; nil when there are none such.
func wholeGroups(groups [][]int, n int) []int {
	// can[k][m]: m marks can be dealt to groups k and after.
	can := make([][]bool, len(groups)+1)
	can[len(groups)] = make([]bool, n+1)
	can[len(groups)][0] = true
	for k := len(groups) - 1; k >= 0; k-- {
		can[k] = slices.Clone(can[k+1])
		for m := len(groups[k]); m <= n; m++ {
			can[k][m] = can[k][m] || can[k+1][m-len(groups[k])]
		}
	}
	if !can[0][n] {
		return nil
	}
	chosen := []int{}
	for k, group := range groups {
		if len(group) <= n && can[k+1][n-len(group)] {
			chosen = append(chosen, k)
			n -= len(group)
		}
	}
	return chosen
}

// symmetric chooses n of the places so that the choice mirrors itself where
// it can: pairs from the outside in, the odd one in the middle.
func symmetric(places []int, n int) []int {
	m := len(places)
	chosen := make([]int, 0, n)
	for i := range n / 2 {
		chosen = append(chosen, places[i], places[m-1-i])
	}
	switch {
	case n%2 == 0:
	case m%2 == 1:
		chosen = append(chosen, places[m/2])
	default:
		chosen = append(chosen, places[n/2])
	}
	return chosen
}
