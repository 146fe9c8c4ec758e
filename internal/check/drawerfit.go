package check

import (
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
	"casewright/internal/wood"
)

// uglyGap is the gap above a drawer, or at the closing side of a door, that no
// longer looks meant. Common practice, no source: inset doors are made with
// 1/16 to 3/32 (cabinetmakers' forum thread of 2006), twice the larger is this.
const uglyGap = 3 * measure.Inch / 16

// looseSide is the gap at each side of a drawer that lets it rack and jam.
// Common practice, no source: 1/64 to 1/16 is what is left by hand.
const looseSide = measure.Inch / 8

// fit is what a moving part is held to, whichever way it moves.
type fit struct {
	code, word   string // "fit.drawer", "height"
	room         why.Size
	grow, shrink wood.Move
	parts        []*piece.Part
	ways         string // how to give it room
	tighter      string // how to make the dry gap smaller
	most         measure.Length
}

// drawerFits looks at drawers that would stick in the damp season or show a
// gap in the dry one.
func (r *run) drawerFits() {
	for _, f := range r.p.Fits {
		switch f.Kind {
		case piece.DrawerHeight:
			r.judge(fit{code: "fit.drawer", word: "height", room: f.Room, grow: f.Grow, shrink: f.Shrink, parts: []*piece.Part{f.Part},
				ways:    "leave the top gap open and it is worked out from the season, or give it at least what the drawer grows and 1/32 to slide (top_gap)",
				tighter: "make the opening lower, divided into two drawers", most: uglyGap})
		case piece.DrawerWidth:
			r.judge(sideFit(f.Room, f.Grow, f.Shrink, f.Part))
		}
	}
	if r.hasFit(piece.DrawerWidth) {
		return
	}
	for _, a := range r.p.Assemblies {
		if a.Kind == piece.DrawerAssembly && a.Opening != nil {
			r.drawerWidth(a)
		}
	}
}

func (r *run) hasFit(kind piece.FitKind) bool {
	for _, f := range r.p.Fits {
		if f.Kind == kind {
			return true
		}
	}
	return false
}

func sideFit(room why.Size, grow, shrink wood.Move, parts ...*piece.Part) fit {
	return fit{code: "fit.drawer", word: "width", room: room, grow: grow, shrink: shrink, parts: parts,
		ways:    "leave the side gap open and it is worked out from the season, or give each side at least 1/32 more (side_gap)",
		tighter: "make the side gap smaller (side_gap)", most: 2 * looseSide}
}

// drawerWidth compares the gaps at a drawer's sides with the swelling of both
// sides. The opening's width is held by long grain, and so is the front's.
func (r *run) drawerWidth(a *piece.Assembly) {
	var sides []*piece.Part
	for _, p := range a.Parts {
		if side(p, acrossCase) == wood.Thickness && side(p, frontBack) == wood.Length {
			sides = append(sides, p)
		}
	}
	if len(sides) == 0 {
		return
	}
	s := sides[0]
	both := measure.Length(len(sides)) * s.Thickness.Length()
	room := why.Sum("gaps at both sides", why.Plus(a.Opening.Width), why.Minus(a.Size[0]))
	r.judge(sideFit(room, move(s, both, acrossCase, s.Wood.Moisture, r.p.Air.Damp),
		move(s, both, acrossCase, s.Wood.Moisture, r.p.Air.Dry), sides...))
}

// judge says that a part binds when damp or gapes when dry.
func (r *run) judge(f fit) {
	room := f.room.Length()
	if binds(room, f.grow.Change) {
		r.sticks(f, f.grow.Change-room)
		return
	}
	if dry := room - min(f.shrink.Change, 0); dry > f.most {
		r.gapes(f, dry)
	}
}

func (r *run) sticks(f fit, short measure.Length) {
	d := diag.Diagnostic{Code: f.code, Severity: diag.Stop, Subject: typedAt(f.room, f.parts[0].At),
		Summary: "{who} would stick in the damp season: its " + f.word + " swells more than its gap",
		Figure:  "swells " + r.fmt(f.grow.Change) + " by " + points(f.grow.To) + " moisture",
		Limit:   "gap when made " + r.fmt(f.room.Length()), Source: source(f.grow),
		Detail: "It is " + r.fmt(short) + " too tight. Either " + f.ways + ", or take wood that moves less" + r.quarterWords(f) + "."}
	if f.word == "height" {
		d.Edits = r.mend(f.room, f.grow.Change+measure.Inch/32, "gap of")
	}
	r.add(finding{Diagnostic: d, whole: f.parts[0].Assembly, matter: f.word + " sticks", worse: int64(short)})
}

func (r *run) quarterWords(f fit) string {
	if q, ok := quartered(f.parts[0], f.grow); ok && f.grow.Direction == wood.Width {
		return ": quartersawn it would swell " + r.fmt(q)
	}
	return ""
}

func (r *run) gapes(f fit, dry measure.Length) {
	d := diag.Diagnostic{Code: f.code, Severity: diag.Warn, Subject: typedAt(f.room, f.parts[0].At),
		Summary: "{who} would show a wide gap in the dry season",
		Figure:  r.fmt(dry) + " in all at " + points(f.shrink.To) + " moisture, " + r.fmt(f.room.Length()) + " when made",
		Limit:   r.fmt(f.most), Source: source(f.shrink) + "; limit: " + practice,
		Detail: "Either take quartersawn or calmer wood, which needs less room, or " + f.tighter + "."}
	r.add(finding{Diagnostic: d, whole: f.parts[0].Assembly, matter: f.word + " gapes", worse: int64(dry)})
}
