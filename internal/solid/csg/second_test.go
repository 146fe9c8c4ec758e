package csg

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"
)

// Cuts along one axis leave a section that is a plane difference of outlines:
// the same area must come from somebody else's polygon code.
func TestSectionsAgainstSimplefeatures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := wild(t)
		base := b.Base
		for i := range b.Cuts {
			b.Cuts[i].Axis, b.Cuts[i].From, b.Cuts[i].To = base.Axis, base.From, base.To
		}
		cut, err := SectionAt(b, base.Axis, base.From, true)
		if err != nil {
			t.Fatal(err)
		}
		rest := polygon(t, base)
		for _, c := range b.Cuts {
			if rest, err = geom.Difference(rest, polygon(t, c)); err != nil {
				t.Skip("simplefeatures:", err)
			}
		}
		got, want := cut.Area().SquareMillimetres(), rest.Area()/1e12
		if math.Abs(got-want) > 1e-6*polygon(t, base).Area()/1e12 {
			t.Fatalf("%v mm², simplefeatures has %v\n%s", got, want, dump(b))
		}
	})
}

func polygon(t *rapid.T, p Prism) geom.Geometry {
	var text strings.Builder
	for i := range len(p.Outline) + 1 {
		c := p.Outline[i%len(p.Outline)]
		fmt.Fprintf(&text, "%d %d,", c.U, c.V)
	}
	g, err := geom.UnmarshalWKT("POLYGON((" + strings.TrimSuffix(text.String(), ",") + "))")
	if err != nil { // it refuses rings that touch themselves
		t.Skip("simplefeatures:", err)
	}
	return g
}
