package measure

import "math/big"

// Split is total in n shares that are equal to the nanometre and add up to
// total exactly; where it cannot be divided, the odd nanometres are spread
// over the row. No shares for n below 1.
func Split(total Length, n int) []Length {
	if n < 1 {
		return nil
	}
	out := make([]Length, n)
	var from Length
	for i := range out {
		// Cut marks are rounded rather than shares, so the odd nanometres
		// spread by themselves and the last mark is the total.
		to := total.MulDiv(int64(i)+1, int64(n))
		out[i], from = to-from, to
	}
	return out
}

// Share is total in shares proportional to the weights, each true to the
// nanometre, adding up to total exactly. A weight below zero counts as zero
// and gets nothing; when no weight is above zero, the shares are equal. No
// weights, no shares.
func Share(total Length, weights []int64) []Length {
	var all big.Int
	for _, w := range weights {
		all.Add(&all, big.NewInt(max(w, 0)))
	}
	if all.Sign() == 0 {
		return Split(total, len(weights))
	}
	out := make([]Length, len(weights))
	var from Length
	var sum big.Int
	var mark big.Rat
	for i, w := range weights {
		sum.Add(&sum, big.NewInt(max(w, 0)))
		n, _ := roundHalfEven(mark.Mul(ratOf(total), new(big.Rat).SetFrac(&sum, &all)))
		to := Length(n) // between 0 and total: it fits
		out[i], from = to-from, to
	}
	return out
}
