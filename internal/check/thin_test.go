package check

import (
	"strings"
	"testing"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/wood"
)

// partWith is a 3/4 × 6 × 20 board with cuts that package joinery made.
func partWith(t testing.TB, cuts ...[]joinery.Feature) *piece.Piece {
	p := board("side", lookUp(t, "black cherry", wood.FlatSawn, 8), 20, 6, 0.75, sidePlace)
	for _, c := range cuts {
		if len(c) == 0 {
			t.Fatal("joinery cut nothing")
		}
		for _, f := range c {
			p.Features = append(p.Features, piece.Feature{Feature: f})
		}
	}
	return bench(p)
}

var host = joinery.Box{L: 20 * measure.Inch, W: 6 * measure.Inch, T: 3 * measure.Inch / 4}

func dado(side joinery.Side, at, deep float64) []joinery.Feature {
	l, _ := joinery.LayHousing(host, joinery.HousingSpec{Side: side, At: inch(at), Width: inch(0.75), Depth: inch(deep)})
	return l.Features
}

func groove(face joinery.Face, from, wide, deep float64) []joinery.Feature {
	f, _ := joinery.GrooveSpec{Face: face, Along: joinery.L, From: inch(from), Width: inch(wide), Depth: inch(deep)}.Features(host)
	return f
}

func rabbet(deep float64) []joinery.Feature {
	f, _ := joinery.RabbetSpec{Face: joinery.LowSide, Beside: joinery.BackEdge, Width: inch(0.5), Depth: inch(deep)}.Features(host)
	return f
}

func TestThinStock(t *testing.T) {
	for _, c := range []struct {
		name string
		cuts [][]joinery.Feature
		want string
	}{
		{"housing half deep", [][]joinery.Feature{dado(joinery.Low, 5, 0.375)}, ""},
		{"housing a little over half", [][]joinery.Feature{dado(joinery.Low, 5, 0.38)}, "warn"},
		{"housing that leaves 1/16", [][]joinery.Feature{dado(joinery.High, 5, 0.6875)}, "warn"},
		{"housing all but through", [][]joinery.Feature{dado(joinery.High, 5, 0.69)}, "stop"},
		{"3/16 back to back in 3/4", [][]joinery.Feature{dado(joinery.Low, 5, 0.1875), dado(joinery.High, 5.5, 0.1875)}, ""},
		{"1/4 back to back in 3/4", [][]joinery.Feature{dado(joinery.Low, 5, 0.25), dado(joinery.High, 5.5, 0.25)}, "warn"},
		{"1/4 on both sides, touching but not behind each other", [][]joinery.Feature{dado(joinery.Low, 5, 0.25), dado(joinery.High, 5.75, 0.25)}, ""},
		{"1/4 on one side", [][]joinery.Feature{dado(joinery.Low, 5, 0.25), dado(joinery.Low, 5.5, 0.25)}, ""},
		{"two that meet", [][]joinery.Feature{dado(joinery.Low, 5, 0.375), dado(joinery.High, 5, 0.375)}, "stop"},
		{"groove half deep", [][]joinery.Feature{groove(joinery.LowSide, 1, 0.25, 0.375)}, ""},
		{"groove over half", [][]joinery.Feature{groove(joinery.LowSide, 1, 0.25, 0.376)}, "warn"},
		{"rabbet two thirds", [][]joinery.Feature{rabbet(0.5)}, ""},
		{"rabbet over two thirds", [][]joinery.Feature{rabbet(0.501)}, "warn"},
		{"panel groove, walls of 1/8", [][]joinery.Feature{groove(joinery.BackEdge, 0.125, 0.5, 0.375)}, ""},
		{"panel groove, a wall of less", [][]joinery.Feature{groove(joinery.BackEdge, 0.12, 0.5, 0.375)}, "warn"},
	} {
		t.Run(c.name, func(t *testing.T) {
			list := Run(partWith(t, c.cuts...))
			sound(t, list)
			if got := grade(list, "stock.thin"); got != c.want {
				t.Errorf("got %q, want %q\n%s", got, c.want, rendered(list, nil))
			}
		})
	}
}

// Below a drawer's groove 1/4 in must stay.
func TestBelowTheGroove(t *testing.T) {
	for up, want := range map[string]string{"1/4": "", "15/64": "warn"} {
		list := of(checked(t, chest("groove = "+up)), "stock.thin")
		if got := grade(list, "stock.thin"); got != want {
			t.Errorf("groove up %s: got %q, want %q\n%s", up, got, want, rendered(list, nil))
		}
		if want != "" && !strings.Contains(list[0].Where, ".side.") {
			t.Errorf("where %q", list[0].Where)
		}
	}
}

// From the text: two shelves housed opposite each other in one partition.
func TestOppositeShelves(t *testing.T) {
	text := func(up string) string {
		shelf := func(up string) string { return `shelf { up = ` + up + `; housed = 1/4; thickness = 1/2 }` }
		return job + lines(`case "c" { width = 30; height = 30; depth = 12; inside { column "l" { `+shelf("10")+` }; partition { thickness = 3/4 }; column "r" { `+shelf(up)+` } } }`)
	}
	for up, want := range map[string]string{"10": "warn", "10 1/4": "warn", "10 1/2": ""} {
		list := checked(t, text(up))
		if got := grade(list, "stock.thin"); got != want {
			t.Errorf("the other up %s: got %q, want %q\n%s", up, got, want, rendered(list, nil))
		}
	}
}
