package why_test

import (
	"testing"

	"casewright/internal/measure"
	"casewright/internal/why"
)

func TestFollows(t *testing.T) {
	const inch = measure.Inch
	width := why.Usual("outside width", 20*inch, "")
	side := why.Usual("side", inch, "")
	inside := why.Sum("inside width", why.Plus(width), why.Times(-2, side))
	opening := inside.Named("opening width")
	gap := why.Usual("gap", inch/16, "")
	door := why.Rule("door width", 8*inch, "half the opening less the gaps", "", opening, gap)
	for _, c := range []struct {
		name string
		a, b why.Size
		want bool
	}{
		{"itself", door, door, true},
		{"a father", door, opening, true},
		{"the same size under its older name", door, inside, true},
		{"a grandfather", door, side, true},
		{"a son", opening, door, false},
		{"a stranger", inside, gap, false},
		{"a like size that is another one", door, why.Usual("side", inch, ""), false},
		{"a size not given", door, why.Size{}, false},
		{"nothing from a size", why.Size{}, door, false},
		{"nothing from nothing", why.Size{}, why.Size{}, false},
	} {
		if got := c.a.Follows(c.b); got != c.want {
			t.Errorf("%s: got %v", c.name, got)
		}
	}
}

// Fathers shared many times over are visited once: 2^60 ways up end at once.
func TestFollowsSharedFathers(t *testing.T) {
	s := why.Usual("first", 0, "")
	for range 60 {
		s = why.Sum("doubled", why.Plus(s), why.Times(2, s))
	}
	if s.Follows(why.Usual("other", 0, "")) {
		t.Error("found what is not there")
	}
}
