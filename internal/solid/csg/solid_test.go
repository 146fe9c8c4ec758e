package csg

import (
	"testing"

	"casewright/internal/measure"
)

func TestBuildByHand(t *testing.T) {
	slab := func(cuts ...Prism) Body { return Body{block(0, X, 0, 0, 0, 10, 6, 4), cuts} }
	cases := []struct {
		name   string
		body   Body
		faces  int
		volume measure.Volume
	}{
		{"plain block", slab(), 6, 240},
		{"groove", slab(block(1, X, -1, 2, 3, 11, 4, 5)), 10, 220},    // 10·2·1 gone
		{"mortise", slab(block(1, Z, 2, 2, 1, 4, 4, 5)), 11, 228},     // 2·2·3 gone
		{"through", slab(block(1, Z, 2, 2, 0, 4, 4, 4)), 10, 224},     // 2·2·4 gone
		{"rabbet flush", slab(block(1, Y, 0, 0, 0, 2, 6, 2)), 8, 216}, // 2·6·2 gone
		{"two that touch", slab(block(1, Z, 2, 2, 1, 4, 4, 4), block(2, Z, 4, 2, 1, 6, 4, 4)), 14, 216},
		{"two that touch in an edge", slab(block(1, Z, 2, 1, 0, 4, 3, 4), block(2, Z, 4, 3, 0, 6, 5, 4)), 14, 208},
		{"touches from outside", slab(block(1, Z, 10, 0, 0, 12, 6, 4)), 6, 240},
		{"cavity", slab(block(1, Z, 2, 2, 1, 4, 4, 3)), 12, 232},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := mustBuild(t, scaled(c.body, mm))
			if len(s.Faces) != c.faces {
				t.Errorf("%d faces, want %d", len(s.Faces), c.faces)
			}
			if v := s.Volume(); v < c.volume*(1-1e-13) || v > c.volume*(1+1e-13) {
				t.Errorf("volume %v, want %v", v, c.volume)
			}
		})
	}
}
