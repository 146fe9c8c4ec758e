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
// the same area must come from somebody else's polygon code. The bodies are the
// same in every run, for that code is wrong itself about once in a thousand
// (30 mm² came out as none).
func TestSectionsAgainstSimplefeatures(t *testing.T) {
	compared := 0
	for seed := range 150 {
		b := rapid.Custom(wild).Example(seed)
		base := b.Base
		for i := range b.Cuts {
			b.Cuts[i].Axis, b.Cuts[i].From, b.Cuts[i].To = base.Axis, base.From, base.To
		}
		want, ok := areaLeft(b)
		if !ok {
			continue
		}
		compared++
		cut, err := SectionAt(b, base.Axis, base.From, true)
		if err != nil {
			t.Fatal(err)
		}
		whole, _ := areaLeft(Body{Base: base})
		if got := cut.Area().SquareMillimetres(); math.Abs(got-want) > 1e-6*whole {
			t.Errorf("%v mm², simplefeatures has %v\n%s", got, want, dump(b))
		}
	}
	if compared < 75 {
		t.Errorf("only %d bodies compared", compared)
	}
}

// areaLeft is the base's outline less the cuts', in mm²; ok is false where
// simplefeatures refuses, as it does rings that touch themselves.
func areaLeft(b Body) (area float64, ok bool) {
	rest, err := polygon(b.Base)
	for i := 0; i < len(b.Cuts) && err == nil; i++ {
		var cut geom.Geometry
		if cut, err = polygon(b.Cuts[i]); err == nil {
			rest, err = geom.Difference(rest, cut)
		}
	}
	if err != nil {
		return 0, false
	}
	return rest.Area() / 1e12, true
}

func polygon(p Prism) (geom.Geometry, error) {
	var text strings.Builder
	for i := range len(p.Outline) + 1 {
		c := p.Outline[i%len(p.Outline)]
		fmt.Fprintf(&text, "%d %d,", c.U, c.V)
	}
	return geom.UnmarshalWKT("POLYGON((" + strings.TrimSuffix(text.String(), ",") + "))")
}
