package book

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/sheet"
	"casewright/internal/testkit"
)

// TestEveryPartOnce: each part has its sheet, and only one.
func TestEveryPartOnce(t *testing.T) {
	for _, name := range examples {
		m := newMaker(example(t, name), nil, Options{})
		served := map[string]int{}
		for _, f := range m.families() {
			for _, b := range slices.Concat(f.equal, f.mirror) {
				served[b.part.Mark]++
			}
		}
		for _, p := range m.p.Parts {
			if served[p.Mark] != 1 {
				t.Errorf("%s: %s is on %d sheets", name, p.Mark, served[p.Mark])
			}
		}
	}
}

// TestPairs: the sides of the hall cabinet's drawers are pairs, made alike twice
// over. Its own sides are not: the right one alone has a dado for the letters'
// shelf, so they must not share a sheet.
func TestPairs(t *testing.T) {
	m := newMaker(example(t, "hall-cabinet"), nil, Options{})
	got := map[string]string{}
	for _, f := range m.families() {
		got[f.first.part.Mark] = f.marks() + " | " + runOf(f.mirror)
	}
	for mark, want := range map[string]string{"C2": "C2 and D2 | C3 and D3", "A1": "A1 | ", "A2": "A2 | ", "B1": "B1 | B2", "A6": "A6 and A8 | "} {
		if got[mark] != want {
			t.Errorf("%s: the sheet serves %q, want %q", mark, got[mark], want)
		}
	}
}

// TestSetOut: the left side stands with its length up, its show face to the left
// and its front edge as reference. Lying show face up with the front edge
// towards the maker, its lower end is at one hand and the dado for the divider
// opens below: 3/16 in deep in 9/16 in is from 3/8 in below the show face on.
func TestSetOut(t *testing.T) {
	m := newMaker(example(t, "hall-cabinet"), nil, Options{})
	for _, b := range m.bodies {
		s := m.setOut(b)
		// right × up must point at the eye, else the picture is a mirror image.
		x := cross([3]float64{s.right.X, s.right.Y, s.right.Z}, [3]float64{s.up.X, s.up.Y, s.up.Z})
		if x != [3]float64{-s.down.X, -s.down.Y, -s.down.Z} {
			t.Fatalf("%s is drawn as its mirror image", b.part.Mark)
		}
	}
	s := m.setOut(m.bodies[0])
	for _, c := range s.cuts {
		if c.feature.Kind == joinery.Dado {
			want := stretch{3 * measure.Inch / 8, 9 * measure.Inch / 16}
			if c.at[joinery.T] != want {
				t.Errorf("the dado is %v below the show face, want %v", c.at[joinery.T], want)
			}
			return
		}
	}
	t.Error("the left side has no dado")
}

func cross(a, b [3]float64) (out [3]float64) {
	for i := range out {
		j, k := (i+1)%3, (i+2)%3
		out[i] = a[j]*b[k] - a[k]*b[j]
		if out[i] == 0 {
			out[i] = 0 // no minus zero
		}
	}
	return out
}

// TestExplodedMarks: the exploded views carry the mark of every part of each
// kind of assembly, alone or in a row such as A5–A9.
func TestExplodedMarks(t *testing.T) {
	for _, name := range examples {
		doc := composed(t, name, sheet.Letter)
		var said []string
		for _, p := range doc.Pages {
			if strings.Contains(p.Title, "Exploded") {
				said = append(said, texts(p.Items)...)
			}
		}
		m := newMaker(example(t, name), nil, Options{})
		missing := 0
		for _, p := range m.p.Parts {
			if !marked(said, p.Mark) {
				missing++
				t.Logf("%s: %s has no mark", name, p.Mark)
			}
		}
		if missing > 0 {
			t.Errorf("%s: %d parts have no mark", name, missing)
		}
	}
}

// marked looks for a mark, alone or within a row.
func marked(said []string, mark string) bool {
	var letter string
	var n int
	letter = mark[:1]
	fmt.Sscan(mark[1:], &n)
	var all []string
	for _, s := range said {
		all = append(all, strings.Fields(strings.Trim(s, "()"))...)
	}
	for _, s := range all {
		if s == mark {
			return true
		}
		from, to, ok := strings.Cut(s, "–")
		var a, z int
		if !ok || !strings.HasPrefix(from, letter) {
			continue
		}
		fmt.Sscan(from[1:], &a)
		fmt.Sscan(strings.TrimPrefix(to, letter), &z)
		if a <= n && n <= z {
			return true
		}
	}
	return false
}

// TestPartScale measures a part's sheet on a print of 0.1 mm dots. The ledge is
// 22 1/2 in (571.5 mm) long; at 1:4 its straight back edge is 142.875 mm, and an
// outline of 0.5 mm ends round beyond both its ends.
func TestPartScale(t *testing.T) {
	doc := composed(t, "hall-cabinet", sheet.Letter)
	n := sheetNamed(t, doc, "E1 · ledge")
	page := fmt.Sprint(n)
	img := gray(t, poppler(t, book(t, "hall-cabinet", sheet.Letter), "pdftoppm", "-r", "254", "-gray", "-f", page, "-l", page, "-singlefile"))
	testkit.Near(t, float64(img.longest(writable(sheet.Letter), true))/10, 142.875+0.5, 0.2)
}
