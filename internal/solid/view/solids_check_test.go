package view

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestSolidsAreClosed holds the test solids themselves to account: every edge
// between two faces, and the volume that their sizes give by hand.
func TestSolidsAreClosed(t *testing.T) {
	d := dovetail{width: 120, thickness: 18, long: 160, tails: 3, slope: 1.0 / 7}
	// A tail: 30 wide at the root (pitch 40 less 10), 30 + 2·18/7 at its end,
	// 18 long, 18 thick.
	tail := (30 + 18.0/7) * 18 * 18
	for _, c := range []struct {
		name   string
		body   Body
		volume float64
	}{
		{"box", box(1, 0, 0, 0, 10, 20, 30), 6000},
		{"bored box", boredBox(1, 0, 0, 0, 100, 20, 100, rect(30, 30, 70, 70)), (100*100 - 40*40) * 20},
		{"tail board", d.tailBoard(1), (160-18)*120*18 + 3*tail},
		{"pin board", d.pinBoard(1), 160*120*18 - 3*tail},
		{"mirrored pin board", mirrored(d.pinBoard(1), 50), 160*120*18 - 3*tail},
	} {
		t.Run(c.name, func(t *testing.T) { closed(t, c.body, c.volume) })
	}
	faces := 0
	for _, b := range sideboard() {
		closed(t, b, volume(b))
		faces += len(b.Faces)
	}
	t.Logf("sideboard: %d bodies, %d faces", len(sideboard()), faces)
}

func closed(t *testing.T, b Body, want float64) {
	t.Helper()
	sound := make([]bool, len(b.Faces))
	for i := range sound {
		sound[i] = true
	}
	for _, e := range arrises(&b, sound) {
		if len(e.faces) != 2 {
			t.Errorf("body %d: edge %v–%v has faces %v", b.ID, e.a, e.b, e.faces)
		}
	}
	if got := volume(b); got < want*(1-1e-9) || got > want*(1+1e-9) {
		t.Errorf("body %d: volume %v, want %v", b.ID, got, want)
	}
}

// volume sums the pyramids from the origin over all faces.
func volume(b Body) (sum float64) {
	for _, f := range b.Faces {
		for _, r := range f.rings() {
			sum += winding(r).dot(r[0]) / 6
		}
	}
	return sum
}

func diff(want, got Drawing) string { return cmp.Diff(want, got) }
