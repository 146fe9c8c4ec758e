package check

import (
	"fmt"
	"slices"

	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
)

const onSite = "measured on site"

// site looks at whether the piece goes where it is to stand or hang.
func (r *run) site() {
	if len(r.p.Parts) == 0 {
		return
	}
	r.projection()
	r.freeWall()
	r.niche()
}

// reach is how far all parts go along an axis, and the two at its ends.
func (r *run) reach(axis piece.Dir) (lo, hi measure.Length, first, last *piece.Part) {
	for _, p := range r.p.Parts {
		a, b := extent(p, axis)
		if first == nil || a < lo {
			lo, first = a, p
		}
		if last == nil || b > hi {
			hi, last = b, p
		}
	}
	return lo, hi, first, last
}

// projection holds how far the piece stands out against the most allowed.
func (r *run) projection() {
	most := r.p.Spec.Site.Projection
	front, back, part, _ := r.reach(frontBack)
	out := back - front
	if !most.Given() || out <= most.Length() {
		return
	}
	over := out - most.Length()
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "site.projection", Severity: diag.Warn, Subject: orSpan(most.At(), r.p.Spec.Site.At),
		Summary: "{who} would stand out from the wall further than it may",
		Figure:  r.style.FormatUnit(out) + ", knobs and pulls not counted", Limit: r.style.FormatUnit(most.Length()), Source: "the site: projection",
		Detail: "Take " + r.fmt(over) + " off the depth or off a bow's rise, or ask whether the limit can give."},
		parts: []*piece.Part{part}, matter: "projection", worse: int64(over)})
}

func (r *run) freeWall() {
	w := r.p.Spec.Site.FreeWall
	if len(w) != 2 {
		return
	}
	free := (w[1].Length() - w[0].Length()).Abs()
	left, right, part, _ := r.reach(acrossCase)
	if right-left <= free {
		return
	}
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "site.wall", Severity: diag.Warn, Subject: orSpan(w[0].At(), r.p.Spec.Site.At),
		Summary: "{who} would be wider than the free wall",
		Figure:  r.style.FormatUnit(right - left), Limit: r.style.FormatUnit(free), Source: "the site: free_wall",
		Detail: "Make it " + r.fmt(right-left-free) + " narrower, or find what stands beside the free wall another place."},
		parts: []*piece.Part{part}, matter: "wall", worse: int64(right - left)})
}

// niche holds each assembly against the niche at its own height, and the whole
// against the ceiling at its lower end.
func (r *run) niche() {
	n := r.p.Spec.Site.Niche
	if n == nil {
		return
	}
	for _, a := range r.p.Assemblies {
		if big(a) {
			r.inNiche(n.Widths, a)
		}
	}
	r.ceiling()
}

// big reports whether the assembly is carried in by itself; doors and drawers
// travel in their case or are taken out of it.
func big(a *piece.Assembly) bool {
	return a.Kind != piece.DrawerAssembly && a.Kind != piece.DoorAssembly
}

// box is the outside of an assembly with all that stands out from it.
func box(a *piece.Assembly) (lo, hi piece.Vec) {
	for i, p := range a.Parts {
		u, v := p.Corners()
		if i == 0 {
			lo, hi = u, v
		}
		lo = piece.Vec{X: min(lo.X, u.X), Y: min(lo.Y, u.Y), Z: min(lo.Z, u.Z)}
		hi = piece.Vec{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
	}
	return lo, hi
}

// niche widths are read at a few heights and taken as straight between them.
func widthAt(stations []station, up measure.Length) measure.Length {
	for i, s := range stations {
		if up > s.up {
			continue
		}
		if i == 0 {
			return s.is
		}
		before := stations[i-1]
		return before.is + (s.is-before.is).MulDiv(int64(up-before.up), int64(s.up-before.up))
	}
	return stations[len(stations)-1].is
}

// station is a width of the niche at a height.
type station struct{ up, is measure.Length }

// narrowest is the least width of the niche between two heights.
func narrowest(stations []station, lo, hi measure.Length) measure.Length {
	least := min(widthAt(stations, lo), widthAt(stations, hi))
	for _, s := range stations {
		if s.up > lo && s.up < hi {
			least = min(least, s.is)
		}
	}
	return least
}

func (r *run) inNiche(widths []design.Station, a *piece.Assembly) {
	if len(widths) == 0 || len(a.Parts) == 0 {
		return
	}
	stations := make([]station, 0, len(widths))
	for _, w := range widths {
		stations = append(stations, station{w.Up.Length(), w.Is.Length()})
	}
	slices.SortFunc(stations, func(x, y station) int { return int(min(max(x.up-y.up, -1), 1)) })
	lo, hi := box(a)
	wide, room := hi.X-lo.X, narrowest(stations, lo.Z, hi.Z)
	if wide <= room {
		return
	}
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "site.niche", Severity: diag.Warn, Subject: orSpan(a.Size[0].At(), a.At),
		Summary: "{who} would be wider than the niche at that height",
		Figure:  r.style.FormatUnit(wide), Limit: r.style.FormatUnit(room), Source: onSite + ": niche",
		Detail:  "Make it " + r.fmt(wide-room) + " narrower, and less again to get it in; or give it scribed fillers at both sides that can be planed to the walls.",
		Related: related(widths[0].Is, "the niche")},
		whole: a, matter: "niche", worse: int64(wide - room)})
}

func related(s why.Size, message string) []diag.Related {
	if s.At().IsZero() {
		return nil
	}
	return []diag.Related{{Span: s.At(), Message: message}}
}

func (r *run) ceiling() {
	heights := r.p.Spec.Site.Niche.Ceiling
	if len(heights) == 0 {
		return
	}
	least := heights[0]
	for _, h := range heights[1:] {
		if h.Length() < least.Length() {
			least = h
		}
	}
	_, top, _, part := r.reach(upright)
	if top <= least.Length() {
		return
	}
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "site.niche", Severity: diag.Warn, Subject: orSpan(least.At(), r.p.Spec.Site.At),
		Summary: "{who} would reach above the ceiling",
		Figure:  r.style.FormatUnit(top), Limit: r.style.FormatUnit(least.Length()), Source: onSite + ": niche, ceiling",
		Detail: "Make the piece " + r.fmt(top-least.Length()) + " lower, and less again to stand it up; or build it in more parts."},
		parts: []*piece.Part{part}, matter: "ceiling", worse: int64(top)})
}

// passages holds every assembly against every way it has to go.
func (r *run) passages() {
	for _, way := range r.p.Spec.Site.Passages {
		for _, a := range r.p.Assemblies {
			if big(a) && len(a.Parts) > 0 {
				r.passage(way.Name, a, [3]why.Size{way.Width, way.Height, way.Depth}, orSpan(way.At, r.p.Spec.Site.At))
			}
		}
	}
}

// passage asks whether a box goes through straight: carried endways through a
// doorway only its two smaller sizes matter, in a lift all three do.
func (r *run) passage(name string, a *piece.Assembly, way [3]why.Size, at diag.Span) {
	var room []measure.Length
	for _, s := range way {
		if s.Given() {
			room = append(room, s.Length())
		}
	}
	lo, hi := box(a)
	size := []measure.Length{hi.X - lo.X, hi.Y - lo.Y, hi.Z - lo.Z}
	slices.Sort(room)
	slices.Sort(size)
	if through(size, room) {
		return
	}
	r.add(finding{Diagnostic: diag.Diagnostic{Code: "site.passage", Severity: diag.Warn, Subject: at,
		Summary: "{who} would not go through the " + name + " straight",
		Figure:  r.sizes(size), Limit: r.sizes(room), Source: onSite + ": passage",
		Detail: "Try it with a box of laths of that size before building: tilted it may go. Otherwise build it in two parts, or take off what stands out and fit it in the room."},
		whole: a, matter: name, worse: int64(size[2])})
}

// through reports whether sizes, least first, go through room, least first.
func through(size, room []measure.Length) bool {
	for i, l := range room {
		if size[i] > l {
			return false
		}
	}
	return true
}

func (r *run) sizes(l []measure.Length) string {
	out := ""
	for i, s := range l {
		if i > 0 {
			out += " × "
		}
		out += r.style.FormatUnit(s)
	}
	return out
}

// hangs tells a count of studs in words.
func hangs(n int) string {
	switch n {
	case 0:
		return "no stud"
	case 1:
		return "one stud"
	}
	return fmt.Sprintf("%d studs", n)
}
