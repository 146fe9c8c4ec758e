package piece_test

import (
	"testing"

	"casewright/internal/testkit"
)

// Drawers and doors are called as one would call across the shop.
func TestNames(t *testing.T) {
	want := map[string][]string{
		"hall-cabinet": {"cabinet", "keys door", "left drawer", "right drawer", "ledge"},
		"sideboard": {"carcase", "left top drawer", "left door", "middle top drawer", "bank 1 drawer", "bank 2 drawer", "bank 3 drawer",
			"right top drawer", "right door", "stand", "top"},
		"bookcase": {"base", "drawer", "left door", "right door", "upper", "plinth", "base top"},
	}
	for _, name := range commissions {
		var got []string
		for _, a := range example(t, name).Assemblies {
			got = append(got, a.Name)
		}
		testkit.Diff(t, want[name], got)
	}
}
