package model

import (
	"math"
	"strconv"
	"strings"
)

// plain writes a number with at most nine decimals, no exponent and no
// trailing zeros; never "-0".
func plain(f float64) string { return trimmed(f, 9) }

func trimmed(f float64, decimals int) string {
	s := strconv.FormatFloat(f, 'f', decimals, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// rounded keeps nine decimals, so that the last bits, which may differ between
// processors, do not reach a file; never -0.
func rounded(f float64) float64 {
	r := math.Round(f*1e9) / 1e9
	if r == 0 {
		return 0
	}
	return r
}
