package check

import (
	"casewright/internal/piece"
)

// doorFits looks at inset doors that would stick in the damp season or show a
// gap in the dry one. A door that lies over its case has nothing to stick to.
func (r *run) doorFits() {
	for _, f := range r.p.Fits {
		if f.Kind != piece.DoorWidth && f.Kind != piece.DoorHeight {
			continue
		}
		door := f.Part.Assembly
		if overlay(door) {
			continue
		}
		g := fit{code: "fit.door", word: "width", room: f.Room, grow: f.Grow, shrink: f.Shrink, parts: door.Parts[:1],
			ways:    "leave the gap open and it is worked out from the season, or give it what the stiles grow and 1/16 more (gap)",
			tighter: "make the stiles narrower", most: uglyGap}
		if f.Kind == piece.DoorHeight {
			g.word = "height"
		}
		// The gap in the middle takes what both doors of a pair grow.
		if paired(door) && f.Across < 4*f.Part.Width.Length() {
			g.grow.Change *= 2
			g.shrink.Change *= 2
		}
		r.judge(g)
	}
}

func overlay(door *piece.Assembly) bool {
	o := door.Opening
	return o != nil && o.Fill.Door != nil && o.Fill.Door.Mount.Value == "overlay"
}

func paired(door *piece.Assembly) bool {
	o := door.Opening
	return o != nil && o.Fill.Door != nil && o.Fill.Door.Pair.Value
}
