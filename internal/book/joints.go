package book

import (
	"fmt"
	"math"
	"slices"

	"casewright/internal/joinery"
	"casewright/internal/piece"
	"casewright/internal/sheet"
	"casewright/internal/sheet/lettering"
	"casewright/internal/solid"
	"casewright/internal/solid/view"
)

// jointUse is one kind of joint at one size, with everything made so.
type jointUse struct {
	key    string
	joints []*piece.Joint
}

// jointUses gathers joints that are cut alike, those made most often first.
func (m *maker) jointUses() []*jointUse {
	var out []*jointUse
	at := map[string]*jointUse{}
	for _, j := range m.p.Joints {
		if j.A == nil || j.B == nil || j.A == j.B {
			continue
		}
		k := fmt.Sprint(j.Kind, "|", m.size(j.Depth), "|", m.size(j.Tongue), "|", m.size(j.A.Thickness), "|", m.size(j.B.Thickness))
		if j.Dovetail != nil {
			k += "|" + m.layoutName(j)
		}
		if at[k] == nil {
			at[k] = &jointUse{key: k}
			out = append(out, at[k])
		}
		at[k].joints = append(at[k].joints, j)
	}
	slices.SortStableFunc(out, func(a, b *jointUse) int { return len(b.joints) - len(a.joints) })
	return out
}

// Pictures on a sheet of joints, and how many sheets there are at most.
const (
	jointColumns   = 3
	jointRows      = 3
	jointSheetsMax = 2
)

// joints shows each joint apart, with the sizes that matter.
func (m *maker) joints() error {
	const each = jointColumns * jointRows
	uses := slices.DeleteFunc(m.jointUses(), func(u *jointUse) bool { return !m.canShow(u.joints[0]) })
	for n := 0; n < jointSheetsMax && n*each < len(uses); n++ {
		m.jointSheet(uses[n*each:min(len(uses), (n+1)*each)], len(uses)-jointSheetsMax*each)
	}
	return nil
}

func (m *maker) canShow(j *piece.Joint) bool {
	return m.model.Body(j.A).Solid != nil && m.model.Body(j.B).Solid != nil && len(m.featuresOf(j)) > 0
}

func (m *maker) jointSheet(uses []*jointUse, left int) {
	d := m.page("Joints", m.paper)
	m.mark("joints")
	box := writable(d.paper)
	lead := "Each joint once, drawn apart and not to scale; cut faces are grey."
	if left > 0 {
		lead += fmt.Sprintf(" %d more, made less often, are on the sheets of their parts.", left)
	}
	d.add(sheet.Text{At: sheet.Pt(box.X, box.Y), Text: "Joints", Size: sheet.SizeHead, Level: sheet.Top},
		sheet.Paragraph{At: sheet.Pt(box.X, box.Y+titleDrop), Width: box.W, Text: lead, Ink: sheet.Dark, Size: 9.5})
	room := box.Trim(0, titleDrop+9, 0, 0)
	high := room.H / jointRows
	for i, u := range uses {
		cell := room.Columns(jointColumns, 6)[i%jointColumns]
		cell.Y, cell.H = room.Y+high*float64(i/jointColumns), high
		d.add(m.jointCell(u, cell)...)
	}
}

// jointCell is one picture with its words below.
func (m *maker) jointCell(u *jointUse, cell sheet.Box) []sheet.Item {
	j := u.joints[0]
	head := sheet.Paragraph{Width: cell.W, Text: capital(j.Kind), Face: lettering.Bold, Size: 9.5, At: sheet.Pt(cell.X, cell.Y)}
	words := sheet.Paragraph{Width: cell.W, Text: m.jointCellWords(u), Size: 8.5}
	words.At = sheet.Pt(cell.X, cell.Bottom()-words.Height()-5)
	room := cell.Trim(2, head.Height()+2, 2, cell.Bottom()-words.At.Y+2)
	drawn := m.drawing("joint "+u.key, func() view.Drawing { return m.jointPicture(j) })
	out := []sheet.Item{head, words}
	if len(drawn.Lines) == 0 || room.H <= 5 {
		return out
	}
	v := fitted(boundsOf(drawn), room)
	out = append(out, pictureQuill.ink(drawn, v)...)
	return append(out, m.jointMarks(drawn, v, j)...)
}

// jointMarks puts the two parts' marks on them.
func (m *maker) jointMarks(drawn view.Drawing, v sheet.View, j *piece.Joint) []sheet.Item {
	owners := m.ownersOf(drawn)
	var want []balloonFor
	for _, b := range m.bodies {
		if b.part == j.A || b.part == j.B {
			want = append(want, balloonFor{mark: b.part.Mark, room: owners.box, covers: func(o *body) bool { return o == b }})
		}
	}
	out, _ := balloonsIn(v.OnPaper().Inset(-1), v, owners, nil, want)
	return out
}

// mostNamed is how many pairs a joint's words name before they only count.
const mostNamed = 8

func (m *maker) jointCellWords(u *jointUse) string {
	j := u.joints[0]
	text := m.jointSizes(j)
	if text != "" {
		text += "; "
	}
	text += j.A.Mark + " " + m.size(j.A.Thickness) + " thick, " + j.B.Mark + " " + m.size(j.B.Thickness) + "."
	if name := m.layoutName(j); name != "" {
		text += " Laid out: " + name + "."
	}
	var pairs []string
	for i, o := range u.joints {
		if i == mostNamed && len(u.joints) > mostNamed+1 {
			pairs = append(pairs, fmt.Sprintf("%d more", len(u.joints)-i))
			break
		}
		pairs = append(pairs, o.A.Mark+" to "+o.B.Mark)
	}
	return text + " " + listed(pairs) + "."
}

// featuresOf are the corners, in the piece, of what a joint takes from its
// parts.
func (m *maker) featuresOf(j *piece.Joint) []view.Vec3 {
	var out []view.Vec3
	for _, p := range []*piece.Part{j.A, j.B} {
		box := [3]float64{p.Length.Length().Millimetres(), p.Width.Length().Millimetres(), p.Thickness.Length().Millimetres()}
		for _, f := range p.Features {
			if f.Joint != j {
				continue
			}
			for _, q := range f.Outline {
				for _, along := range [2]float64{f.From.Millimetres(), f.To.Millimetres()} {
					var c [3]float64
					c[f.Axis], c[(f.Axis+1)%3], c[(f.Axis+2)%3] = along, q.U.Millimetres(), q.V.Millimetres()
					for a := range c {
						c[a] = math.Min(math.Max(c[a], 0), box[a])
					}
					v := solid.InPiece(p.Place, c)
					out = append(out, view.Vec3{X: v[0], Y: v[1], Z: v[2]})
				}
			}
		}
	}
	return out
}

// jointPicture shows both parts near the joint, moved apart, from where most of
// what the joint made is seen.
func (m *maker) jointPicture(j *piece.Joint) view.Drawing {
	bodies := m.cropped(j)
	var best view.Drawing
	most := -1.0
	for _, x := range []float64{-1, 1} {
		for _, z := range []float64{-1, 1} {
			cam, err := view.Looking(view.Vec3{X: x, Y: 1, Z: z}, view.Vec3{Z: 1})
			if err != nil {
				continue
			}
			d := view.Project(bodies, cam, view.Options{Fills: true})
			seen := 0.0
			for _, f := range d.Fills {
				if m.madeBy(f, j) {
					seen += math.Abs(shoelaceOf(f.Outer))
				}
			}
			if z < 0 { // from above is how work lies on the bench: preferred
				seen *= 1.3
			}
			if seen > most {
				best, most = d, seen
			}
		}
	}
	return best
}

func (m *maker) madeBy(f view.Fill, j *piece.Joint) bool {
	p := m.p.Parts[f.Body]
	return f.Tag > 0 && f.Tag <= len(p.Features) && p.Features[f.Tag-1].Joint == j
}

func shoelaceOf(r []view.Point2) float64 {
	sum := 0.0
	for i, a := range r {
		b := r[(i+1)%len(r)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum / 2
}

// cropped is the two parts cut off around the joint, the second moved out of
// the first.
func (m *maker) cropped(j *piece.Joint) []view.Body {
	lo, hi := spaceOf(m.featuresOf(j))
	thick := math.Max(j.A.Thickness.Length().Millimetres(), j.B.Thickness.Length().Millimetres())
	reach, longest := 2.5*thick, 9*thick
	if j.Dovetail == nil && !mortised(j) {
		longest = 4 * thick
	}
	for a := range lo {
		if hi[a]-lo[a] > longest { // of a long run, one end is enough
			hi[a] = lo[a] + longest
			lo[a] -= reach
			continue
		}
		lo[a], hi[a] = lo[a]-reach, hi[a]+reach
	}
	var out []view.Body
	for _, b := range m.model.Show(solid.Pose{}) {
		p := m.p.Parts[b.ID]
		if p != j.A && p != j.B {
			continue
		}
		for a := range 3 {
			n, at := [3]float64{}, [3]float64{}
			n[a], at[a] = -1, lo[a]
			_, rest := view.Cut([]view.Body{b}, view.Plane{At: vec(at), Normal: vec(n)})
			n[a], at[a] = 1, hi[a]
			if _, rest = view.Cut(rest, view.Plane{At: vec(at), Normal: vec(n)}); len(rest) == 0 {
				break
			}
			b = rest[0]
		}
		if p == j.B {
			b = b.Moved(m.outOf(j, thick))
		}
		out = append(out, b)
	}
	return out
}

// mortised reports whether the joint is a tenon in a mortise, which is shown
// whole.
func mortised(j *piece.Joint) bool {
	return slices.ContainsFunc(j.A.Features, func(f piece.Feature) bool { return f.Joint == j && f.Kind == joinery.Mortise })
}

func vec(c [3]float64) view.Vec3 { return view.Vec3{X: c[0], Y: c[1], Z: c[2]} }

// spaceOf is the room around some places.
func spaceOf(pts []view.Vec3) (lo, hi [3]float64) {
	lo, hi = [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}, [3]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for _, p := range pts {
		for a, c := range [3]float64{p.X, p.Y, p.Z} {
			lo[a], hi[a] = math.Min(lo[a], c), math.Max(hi[a], c)
		}
	}
	return lo, hi
}

// outOf is how the second part leaves the first: from the joint towards its own
// middle, along the axis in which that is farthest.
func (m *maker) outOf(j *piece.Joint, thick float64) view.Vec3 {
	lo, hi := spaceOf(m.featuresOf(j))
	a, z := j.B.Corners()
	l, h := millimetres(a), millimetres(z)
	axis, far := 0, 0.0
	for i := range lo {
		if d := (l[i] + h[i] - lo[i] - hi[i]) / 2; math.Abs(d) > math.Abs(far) {
			axis, far = i, d
		}
	}
	var out [3]float64
	out[axis] = math.Copysign(2.2*thick+6, far)
	return vec(out)
}
