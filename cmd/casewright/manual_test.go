package main

import (
	"strings"
	"testing"

	"casewright/internal/compile"
	"casewright/internal/design"
	"casewright/internal/measure"
)

// silent is a commission that gives no size it need not give.
const silent = `commission "silent" {}

case "lower" {
  width  = 40
  height = 30
  depth  = 18
  top_rails {}
  back {}
  inside {
    column {
      row {
        drawer {}
      }
      divider {}
      row {
        shelf {
          up = 3
        }
      }
    }
    partition {}
    column {
      row {
        shelves {
          count = 1
        }
      }
      rail {}
      row {
        door {}
      }
    }
  }
}

stand "legs" {
  under  = "lower"
  height = 6
}

top "lid" {
  on = "lower"
}

case "hung" {
  width  = 20
  height = 20
  depth  = 8
  hung   = true
  back {}
}
`

// What the manual tells of a default is what is built. The first length in the
// manual's words must be the size of the part.
func TestManualTellsDefaults(t *testing.T) {
	s := compiled(t, silent)
	sizes := map[string]measure.Length{}
	for _, target := range s.targets() {
		for _, w := range target.sizes {
			sizes[target.keys[len(target.keys)-1]+" "+w.word] = w.size.Length()
		}
	}
	schema := design.Schema()
	for _, c := range []struct{ block, entry, built string }{
		{"case", "thickness", "lower.side.left thickness"},
		{"top_rails", "width", "lower.top_rail.back width"},
		{"back", "thickness", "lower.back.1 thickness"},
		{"cleat", "thickness", "hung.cleat.wall thickness"},
		{"cleat", "height", "hung.cleat.wall width"},
		{"drawer/front", "thickness", "lower.1.1.front thickness"},
		{"drawer/sides", "thickness", "lower.1.1.side.left thickness"},
		{"drawer/back", "thickness", "lower.1.1.back thickness"},
		{"drawer/bottom", "thickness", "lower.1.1.bottom thickness"},
		{"door", "thickness", "lower.2.2.door.stile.left thickness"},
		{"door", "stile", "lower.2.2.door.stile.left width"},
		{"door", "bottom_rail", "lower.2.2.door.rail.bottom width"},
		{"divider", "thickness", "lower.1.divider thickness"},
		{"partition", "thickness", "lower.partition thickness"},
		{"rail", "thickness", "lower.2.rail.back_rail thickness"},
		{"rail", "width", "lower.2.rail.front_rail width"},
		{"shelf", "thickness", "lower.1.2.shelf thickness"},
		{"shelves", "thickness", "lower.2.1.shelf.1 thickness"},
		{"stand", "leg", "legs.leg.front.1 thickness"},
		{"stand", "rail", "legs.front_rail_1 width"},
		{"stand", "thickness", "legs.front_rail_1 thickness"},
		{"top", "thickness", "lid thickness"},
	} {
		got, ok := sizes[c.built]
		if !ok {
			t.Errorf("%s.%s: nothing is built of the name %s", c.block, c.entry, c.built)
			continue
		}
		if told := told(t, schema, c.block, c.entry); told != got {
			t.Errorf("%s.%s: the manual tells %v, %s is %v", c.block, c.entry, told, c.built, got)
		}
	}
}

// told is the first length in inches of what the manual says of an entry that
// is not given.
func told(t *testing.T, l design.Language, block, entry string) measure.Length {
	t.Helper()
	b, _ := l.Find(block)
	for _, a := range b.Attributes {
		words := strings.Fields(strings.ReplaceAll(a.Usual, ",", ""))
		for i := range words {
			if a.Name != entry || words[i] != "in" {
				continue
			}
			for from := max(0, i-2); from < i; from++ {
				if n, err := measure.ParseLength(strings.Join(words[from:i], " "), measure.Inches); err == nil {
					return n
				}
			}
		}
	}
	t.Fatalf("the manual tells no length for %s.%s", block, entry)
	return 0
}

// compiled is a commission from one text, which must be sound.
func compiled(t *testing.T, text string) *commission {
	t.Helper()
	sources := []design.Source{{Name: "t.hcl", Text: []byte(text)}}
	job := &commission{compile.Run(sources), sources}
	if !job.Sound() {
		var b strings.Builder
		job.renderErrors(&b)
		t.Fatal(b.String())
	}
	return job
}
