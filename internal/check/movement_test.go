package check

import (
	"strings"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/testkit"
	"casewright/internal/why"
	"casewright/internal/wood"

	"pgregory.net/rapid"
)

// panelFit is a flat-sawn black cherry panel made at 8 %, in a season from 6
// to 12 %. Wood Handbook (FPL-GTR-190, 2010) Eq. 13-2 with C_T 0.00248 of
// Table 13-5: 10 in grows 10 × 0.00248 × 4 = 0.0992 in and shrinks 10 × 0.00248
// × 2 = 0.0496 in.
func panelFit(t testing.TB, kind piece.FitKind, wide, room, tongue float64) *piece.Piece {
	w := lookUp(t, "black cherry", wood.FlatSawn, 8)
	p := board("panel", w, 20, wide, 0.25, piece.Place{L: piece.Up, W: piece.Right, T: piece.Back})
	b := bench(p)
	grow, err := w.Species.Move(inch(wide), 8, 12, w.Cut, wood.Width)
	if err != nil {
		t.Fatal(err)
	}
	shrink, _ := w.Species.Move(inch(wide), 8, 6, w.Cut, wood.Width)
	f := &piece.Fit{Kind: kind, Part: p, In: "grooves of the frame", Room: size(room), Across: inch(wide), Grow: grow, Shrink: shrink}
	if tongue > 0 {
		f.Tongue = size(tongue)
	}
	b.Fits = []*piece.Fit{f}
	return b
}

func TestPanels(t *testing.T) {
	for _, c := range []struct {
		name         string
		kind         piece.FitKind
		room, tongue float64
		want         string
	}{
		{"room for all of 0.0992", piece.PanelWidth, 0.0993, 0.3, ""},
		{"a ten-thousandth too little", piece.PanelWidth, 0.0991, 0.3, "stop"},
		// 1/8 must stay beside half of 0.0496: 0.125 + 0.0248 = 0.1498.
		{"1/8 left when dry", piece.PanelWidth, 0.2, 0.1499, ""},
		{"less than 1/8 left", piece.PanelWidth, 0.2, 0.1497, "warn"},
		{"hardly anything left", piece.PanelWidth, 0.2, 0.0249, "warn"},
		{"shrinks out of its groove", piece.PanelWidth, 0.2, 0.0247, "stop"},
		{"a back in rabbets", piece.BackWidth, 0.0991, 0.3, "stop"},
		{"a bottom with room behind", piece.BottomDepth, 0.0993, 0, ""},
		{"a bottom that meets the back keeps the drawer from closing", piece.BottomDepth, 0.0991, 0, "warn"},
	} {
		t.Run(c.name, func(t *testing.T) {
			list := Run(panelFit(t, c.kind, 10, c.room, c.tongue))
			sound(t, list)
			if got := grade(list, "movement.panel"); got != c.want {
				t.Errorf("got %q, want %q\n%s", got, c.want, rendered(list, nil))
			}
		})
	}
}

func TestPanelTellsItsFigures(t *testing.T) {
	d := of(Run(panelFit(t, piece.PanelWidth, 10, 1.0/16, 0.3)), "movement.panel")[0]
	for field, want := range map[string]string{
		d.Figure: `0.099"`, d.Limit: `1/16"`, d.Source: "Eq. 13-2", d.Where: "A1 (case.panel)", d.Summary: "panel of case would fill",
		// Quartersawn, C_R 0.00126 of Table 13-5: 10 × 0.00126 × 4 = 0.0504.
		d.Detail: `0.05"`,
	} {
		if !strings.Contains(field, want) {
			t.Errorf("%q is missing in %q", want, field)
		}
	}
}

// Lapped boards: every joint takes a whole board's shrinkage and must keep 1/16.
func TestLappedBack(t *testing.T) {
	for tongue, want := range map[float64]string{0.0625 + 0.0497: "", 0.0625 + 0.0495: "warn", 0.0495: "stop"} {
		b := panelFit(t, piece.BackWidth, 10, 0.2, tongue)
		b.Joints = []*piece.Joint{{Kind: "shiplap", A: b.Parts[0]}}
		if got := grade(Run(b), "movement.panel"); got != want {
			t.Errorf("overlap %v: got %q, want %q", tongue, got, want)
		}
	}
}

// More room never makes a fit bind, and a fit that binds with some room binds
// with less: for any kind, wood and size.
func TestRoomIsMonotone(t *testing.T) {
	kinds := []piece.FitKind{piece.PanelWidth, piece.BackWidth, piece.BottomDepth, piece.DrawerHeight, piece.DrawerWidth, piece.DoorWidth, piece.DoorHeight}
	testkit.Check(t, func(rt *rapid.T) {
		kind := rapid.SampledFrom(kinds).Draw(rt, "kind")
		wide := rapid.Float64Range(1, 30).Draw(rt, "wide")
		room := rapid.Float64Range(0, 0.4).Draw(rt, "room")
		more := rapid.Float64Range(0, 0.4).Draw(rt, "more")
		if sticking(t, kind, wide, room+more) && !sticking(t, kind, wide, room) {
			rt.Fatalf("%s of %v in: binds with %v of room and not with %v", kind, wide, room+more, room)
		}
		// Growth of width × C_T × 4 points, reckoned here a second time.
		if grows := wide * 0.00248 * 4; (grows > room+1e-6) != sticking(t, kind, wide, room) && (grows-room > 1e-6 || room-grows > 1e-6) {
			rt.Fatalf("%s of %v in grows %v in %v of room: binds = %v", kind, wide, grows, room, sticking(t, kind, wide, room))
		}
	})
}

// sticking reports whether a fit binds when damp, by whatever rule.
func sticking(t testing.TB, kind piece.FitKind, wide, room float64) bool {
	for _, d := range Run(panelFit(t, kind, wide, room, 0)) {
		if strings.HasPrefix(d.Code, "movement.panel") || strings.HasPrefix(d.Code, "fit.") && strings.Contains(d.Summary, "stick") {
			return true
		}
	}
	return false
}

var (
	sidePlace = piece.Place{L: piece.Up, W: piece.Back, T: piece.Left}
	runPlace  = piece.Place{L: piece.Back, W: piece.Up, T: piece.Right}
	topPlace  = piece.Place{L: piece.Right, W: piece.Back, T: piece.Up}
)

// A runner glued across a solid side of flat-sawn cherry, made at 8 % in a
// season from 6 to 12 %. By Eq. 13-2 the side moves 0.00248 a point; the runner
// moves 0.15/30 % = 0.00005 along its grain (Wood Handbook p. 4-5: 0.1 to 0.2 %
// green to oven-dry). Over 4 points they differ by 0.00972 of the glued width:
// 1/16 in at 6.43 in, 1/8 at 12.86.
func TestCrossGrain(t *testing.T) {
	for _, c := range []struct {
		name  string
		long  float64
		glued string
		want  string
	}{
		{"6-1/4 in glued", 6.25, "all", ""},
		{"6-5/8 in glued", 6.625, "all", "warn"},
		{"12-3/4 in glued", 12.75, "all", "warn"},
		{"13 in glued", 13, "all", "stop"},
		{"13 in dry", 13, "", ""},
		{"13 in, front end glued", 13, "front 3 in", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := lookUp(t, "black cherry", wood.FlatSawn, 8)
			s := board("side", w, 30, 20, 0.75, sidePlace)
			run := board("runner", w, c.long, 1, 0.75, runPlace)
			b := bench(s, run)
			b.Joints = []*piece.Joint{{Kind: "housing", Name: "runner in side", A: s, B: run, Glued: c.glued}}
			list := Run(b)
			sound(t, list)
			if got := grade(list, "movement.crossgrain"); got != c.want {
				t.Errorf("got %q, want %q\n%s", got, c.want, rendered(list, nil))
			}
		})
	}
}

// A case corner: grain that runs round moves alike however deep the case, grain
// of the side from front to back does not, and flat beside quartersawn differs
// by C_T − C_R = 0.00248 − 0.00126, over 4 points 1/16 in at 12.8 in.
func TestCornerGrain(t *testing.T) {
	flat, quarter := lookUp(t, "black cherry", wood.FlatSawn, 8), lookUp(t, "black cherry", wood.QuarterSawn, 8)
	for _, c := range []struct {
		name   string
		side   *piece.Wood
		place  piece.Place
		l, w   float64
		deep   float64
		want   string
		detail string
	}{
		{"round the case", flat, sidePlace, 30, 24, 24, "", ""},
		{"from front to back in the side", flat, runPlace, 24, 30, 24, "stop", "Turn the grain"},
		{"flat and quartersawn, 12 in", quarter, sidePlace, 30, 12, 12, "", ""},
		{"flat and quartersawn, 13 in", quarter, sidePlace, 30, 13, 13, "warn", "one cut for both"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := board("side", c.side, c.l, c.w, 0.75, c.place)
			top := board("top", flat, 30, c.deep, 0.75, topPlace)
			b := bench(s, top)
			b.Joints = []*piece.Joint{{Kind: "through dovetail", Name: "side to top", A: s, B: top, Glued: "all"}}
			list := of(Run(b), "movement.crossgrain")
			if got := grade(list, "movement.crossgrain"); got != c.want {
				t.Fatalf("got %q, want %q\n%s", got, c.want, rendered(list, nil))
			}
			if c.want != "" && !strings.Contains(list[0].Detail, c.detail) {
				t.Errorf("%q is missing in %q", c.detail, list[0].Detail)
			}
		})
	}
}

// A stand's ends lie with the grain under sides that move: from 6.2 to 11.0 %
// a 14 in flat-sawn cherry side moves 14 × 0.00248 × 4.8 = 0.167 in.
func TestSlots(t *testing.T) {
	text := job + lines(`case "c" { width = 30; height = 30; depth = 14 }; stand "feet" { under = "c"; style = "plinth"; height = 4 }`)
	list := of(checked(t, text), "movement.slots")
	if len(list) != 1 {
		t.Fatalf("want one finding:\n%s", rendered(list, []byte(text)))
	}
	if d := list[0]; !strings.Contains(d.Figure, `0.16`) || !strings.HasPrefix(d.Summary, "feet must") {
		t.Errorf("figure %q, summary %q", d.Figure, d.Summary)
	}
	// A top of the same wood moves with its case, and so needs nothing.
	text = job + lines(`case "c" { width = 30; height = 30; depth = 14 }; top "lid" { on = "c" }`)
	if list := of(checked(t, text), "movement.slots"); len(list) > 0 {
		t.Errorf("a top of the case's own wood:\n%s", rendered(list, nil))
	}
}

func TestExtents(t *testing.T) {
	w := lookUp(t, "black cherry", wood.FlatSawn, 8)
	a := board("a", w, 10, 4, 1, sidePlace)
	b := board("b", w, 20, 6, 1, topPlace)
	b.Place.At = piece.Vec{Y: inch(3), Z: inch(2)}
	for axis, want := range map[piece.Dir]measure.Length{acrossCase: 0, frontBack: inch(1), upright: inch(1)} {
		if got := shared(a, b, axis); got != want {
			t.Errorf("axis %d: %v shared, want %v", axis, got, want)
		}
	}
}

func TestMendOnlyWhatIsTyped(t *testing.T) {
	r := &run{p: bench()}
	if e := r.mend(why.Usual("gap", inch(1), practice), inch(2), "gap of"); e != nil {
		t.Errorf("a default has no text to mend: %v", e)
	}
}
