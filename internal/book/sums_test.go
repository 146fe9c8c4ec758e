package book

import (
	"fmt"
	"strings"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/sheet"
)

// TestWorth adds printed sums by hand.
func TestWorth(t *testing.T) {
	m := &maker{}
	for _, c := range []struct {
		sum  string
		want measure.Length
		ok   bool
	}{
		{"8 23/32 + 2 × 1 3/16", 11*measure.Inch + 3*measure.Inch/32, true},
		{"20 1/2 − 2 × 9/16", 19*measure.Inch + 3*measure.Inch/8, true},
		{"−3/4 + 1", measure.Inch / 4, true},
		{"12", 12 * measure.Inch, true},
		{"half of what the gaps leave", 0, false},
		{"two × 3/4", 0, false},
		{"", 0, false},
	} {
		got, ok := m.worth(c.sum)
		if got != c.want || ok != c.ok {
			t.Errorf("%q: got %d, %v; want %d, %v", c.sum, got, ok, c.want, c.ok)
		}
	}
}

// TestChainsAddUp: along every chain of every view the printed values add up
// to the value printed for the same stretch anywhere else in that view, and
// miss the true stretch by no more than the rule's graduation.
func TestChainsAddUp(t *testing.T) {
	for _, name := range examples {
		m := newMaker(example(t, name), nil, Options{})
		views := []*arrangement{m.coverViews()}
		for _, a := range m.p.Assemblies {
			views = append(views, m.assemblyViews(a))
		}
		for _, f := range m.families() {
			views = append(views, m.partViews(f, m.setOut(f.first)))
		}
		chains := 0
		for _, a := range views {
			for _, p := range a.panels {
				chains += addsUp(t, m, name+", "+p.name, p)
			}
		}
		if chains < 20 {
			t.Errorf("%s: only %d chains were looked at", name, chains)
		}
	}
}

func addsUp(t *testing.T, m *maker, where string, p *panel) int {
	t.Helper()
	v := sheet.ViewAt(p.model, sheet.Pt(0, 0), sheet.FullSize)
	printed := map[string]measure.Length{}
	for _, d := range p.dims {
		var sum measure.Length
		for _, label := range d.on(m, v).Labels {
			l, err := measure.ParseLength(label, m.fine.Unit)
			if err != nil {
				t.Fatalf("%s: %v", where, err)
			}
			sum += l
		}
		from, to := d.stops[0], d.stops[len(d.stops)-1]
		if off := (sum - (to - from)).Abs(); off > measure.Length(m.p.Spec.Commission.Rule) {
			t.Errorf("%s: a chain adds up to %s, the stretch is %s", where, m.length(sum), m.gap(to-from))
		}
		key := fmt.Sprint(d.side/2, from, to)
		if other, ok := printed[key]; ok && other != sum {
			t.Errorf("%s: one stretch is printed as %s and as %s", where, m.length(sum), m.length(other))
		}
		printed[key] = sum
	}
	return len(p.dims)
}

// TestFillingsAddUp: every line of “What fills what” holds as printed.
func TestFillingsAddUp(t *testing.T) {
	for _, name := range examples {
		m := newMaker(example(t, name), nil, Options{})
		for _, g := range m.p.Fillings() {
			var sum measure.Length
			for _, s := range strings.Split(m.membersWords(g), " + ") {
				sum += leading(t, m, s)
			}
			if total := leading(t, m, m.size(g.Total)); sum != total {
				t.Errorf("%s, %s: %s is %s, not %s", name, g.Name, m.membersWords(g), m.length(sum), m.length(total))
			}
		}
	}
}

// leading reads the length a text begins with.
func leading(t *testing.T, m *maker, text string) measure.Length {
	t.Helper()
	words := strings.Fields(text)
	for n := min(2, len(words)); n > 0; n-- {
		if l, err := measure.ParseLength(strings.Join(words[:n], " "), m.fine.Unit); err == nil {
			return l
		}
	}
	t.Fatalf("no length in %q", text)
	return 0
}

// TestDovetailMarks: the printed distances rise, and the last is the printed
// width, so that tails and pins add up to the board.
func TestDovetailMarks(t *testing.T) {
	for _, name := range examples {
		m := newMaker(example(t, name), nil, Options{})
		for _, u := range m.layouts {
			for _, tip := range []bool{true, false} {
				at := append(append([]measure.Length{0}, edges(u.layout.Tails, tip)...), u.layout.Width)
				for i := 1; i < len(at); i++ {
					a, z := leading(t, m, m.gap(at[i-1])), leading(t, m, m.gap(at[i]))
					if z <= a {
						t.Errorf("%s, %s: %s is followed by %s", name, u.name, m.gap(at[i-1]), m.gap(at[i]))
					}
				}
			}
		}
	}
}
