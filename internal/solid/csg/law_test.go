package csg

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/measure"
	"casewright/internal/testkit"
)

// text prints a solid exactly.
func text(s *Solid) string {
	var out strings.Builder
	for i := range s.Vertices {
		for _, x := range s.Vertices[i].Exact() {
			fmt.Fprintf(&out, "%s ", x.RatString())
		}
		out.WriteByte('\n')
	}
	for _, f := range s.Faces {
		fmt.Fprintln(&out, f.Normal, f.Origin, f.Outer, f.Holes)
	}
	m := s.Mesh()
	fmt.Fprintln(&out, m.Points, m.Triangles, m.Face, m.Vertex)
	return out.String()
}

func TestOrderOfCutsIsNothing(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := wild(t)
		want := text(anyBuild(t, b))
		if got := text(anyBuild(t, b)); got != want {
			t.Fatal("two runs differ")
		}
		b.Cuts = rapid.Permutation(b.Cuts).Draw(t, "order")
		if got := text(anyBuild(t, b)); got != want {
			t.Fatalf("another order of cuts gives\n%s\nnot\n%s\n%s", got, want, dump(b))
		}
	})
}

// Moving a body moves its vertices and changes no face, though in one place
// they may be whole and near zero and in another far away.
func TestMovedBodyIsTheSame(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := wild(t)
		far := measure.Length(rapid.Int64Range(-1<<34, 1<<34).Draw(t, "move"))
		p := Placement{Move: [3]measure.Length{far, -far / 3, 12345}}
		s, moved := anyBuild(t, b), anyBuild(t, Placed{b, p}.Apply())
		if len(s.Faces) != len(moved.Faces) || len(s.Vertices) != len(moved.Vertices) {
			t.Fatalf("moved by %d: %d faces, not %d\n%s", far, len(moved.Faces), len(s.Faces), dump(b))
		}
		for i := range s.Faces {
			f, g := &s.Faces[i], &moved.Faces[i]
			if fmt.Sprint(f.Normal, f.Origin, f.loops()) != fmt.Sprint(g.Normal, g.Origin, g.loops()) {
				t.Fatalf("moved by %d: face %d differs\n%s", far, i, dump(b))
			}
		}
		near := func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*(math.Abs(x)+1e-18) }
		if v, w := float64(s.Volume()), float64(moved.Volume()); !near(v, w) && math.Abs(far.Millimetres()) < 100*math.Cbrt(v) {
			t.Fatalf("moved by %d: volume %v, not %v", far, w, v)
		}
	})
}

// A mirror image has the mirrored vertices, faces turned the other way, and the
// same volume; a turn keeps all that too.
func TestTurnedAndMirrored(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := wild(t)
		to := rapid.Permutation([]Axis{X, Y, Z}).Draw(t, "to")
		p := Placement{To: [3]Axis(to)}
		for k := range 3 {
			p.Flip[k] = rapid.Bool().Draw(t, "flip")
		}
		s, other := anyBuild(t, b), anyBuild(t, Placed{b, p}.Apply())
		want := map[string]bool{}
		for i := range s.Vertices {
			var at [3]string
			for k, x := range s.Vertices[i].Exact() {
				if p.Flip[k] {
					x.Neg(x)
				}
				at[p.To[k]] = x.RatString()
			}
			want[fmt.Sprint(at)] = true
		}
		for i := range other.Vertices {
			var at [3]string
			for k, x := range other.Vertices[i].Exact() {
				at[k] = x.RatString()
			}
			if !want[fmt.Sprint(at)] {
				t.Fatalf("vertex %v has no counterpart\n%s", at, dump(b))
			}
		}
		if len(s.Vertices) != len(other.Vertices) || len(s.Faces) != len(other.Faces) || s.Pieces() != other.Pieces() {
			t.Fatalf("%d vertices, %d faces, %d pieces; not %d, %d, %d", len(other.Vertices), len(other.Faces), other.Pieces(), len(s.Vertices), len(s.Faces), s.Pieces())
		}
		if v, w := float64(s.Volume()), float64(other.Volume()); math.Abs(v-w) > 1e-12*v {
			t.Fatalf("volume %v, not %v", w, v)
		}
	})
}

// Points of no special place are inside the mesh exactly when they are inside
// the base and outside every cut. The mesh is asked by counting crossings of a
// ray, the prisms by the outlines alone.
func TestMembership(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := wild(t)
		m := anyBuild(t, b).Mesh()
		box := ready(b.Base).box
		for range 40 {
			var at [3]float64
			for k := range at {
				f := rapid.Float64Range(-0.1, 1.1).Draw(t, "at")
				at[k] = float64(box.lo[k]) + (f+[3]float64{0.000123, 0.000457, 0.000211}[k])*float64(box.hi[k]-box.lo[k])
			}
			want := b.Base.holds(at)
			for _, c := range b.Cuts {
				want = want && !c.holds(at)
			}
			if got := m.holds(at); got != want && !b.close(at) {
				t.Fatalf("%v inside the mesh: %v, inside the body: %v\n%s", at, got, want, dump(b))
			}
		}
	})
}

func (p *Prism) holds(at [3]float64) bool {
	a, u, v := p.Axis, (p.Axis+1)%3, (p.Axis+2)%3
	inside := false
	for i, c := range p.Outline {
		d := p.Outline[(i+1)%len(p.Outline)]
		x, y, z, w := float64(c.U), float64(c.V), float64(d.U), float64(d.V)
		if (y > at[v]) != (w > at[v]) && at[u] < x+(z-x)*(at[v]-y)/(w-y) {
			inside = !inside
		}
	}
	return inside && float64(p.From) < at[a] && at[a] < float64(p.To)
}

// close tells whether a point is nearer to some prism's skin than the rounding
// of this test.
func (b Body) close(at [3]float64) bool {
	for _, p := range append([]Prism{b.Base}, b.Cuts...) {
		q := ready(p)
		tiny := 1e-9 * float64(q.box.hi[0]-q.box.lo[0]+q.box.hi[1]-q.box.lo[1]+q.box.hi[2]-q.box.lo[2])
		for _, c := range [3][3]float64{{tiny, 0, 0}, {0, tiny, 0}, {0, 0, tiny}} {
			up, down := at, at
			for k := range c {
				up[k], down[k] = up[k]+c[k], down[k]-c[k]
			}
			if p.holds(up) != p.holds(down) {
				return true
			}
		}
	}
	return false
}

// holds counts how often a ray along x crosses the mesh.
func (m *Mesh) holds(at [3]float64) bool {
	inside := false
	for _, t := range m.Triangles {
		var p [3][3]float64
		for j := range 3 {
			for k := range 3 {
				p[j][k] = m.Points[t[j]][k]*1e6 - at[k]
			}
		}
		var d [3]float64
		for j := range 3 {
			a, b := p[(j+1)%3], p[(j+2)%3]
			d[j] = a[1]*b[2] - a[2]*b[1]
		}
		if (d[0] > 0) != (d[1] > 0) || (d[1] > 0) != (d[2] > 0) {
			continue
		}
		if x := (d[0]*p[0][0] + d[1]*p[1][0] + d[2]*p[2][0]) / (d[0] + d[1] + d[2]); x > 0 {
			inside = !inside
		}
	}
	return inside
}

// Between two neighbouring levels of its vertices a section's area is a
// polynomial of second degree, so that Simpson's rule is exact: the prismatoid
// formula. Levels are whole numbers of the unit or lie a fraction of a nanometre
// from where the section is taken.
func TestSectionsAddUpToTheVolume(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := scaled(wild(t), 2*1000)
		s := anyBuild(t, b)
		axis := Axis(rapid.IntRange(0, 2).Draw(t, "axis"))
		levels := map[measure.Length]bool{}
		for i := range s.Vertices {
			levels[measure.Length(math.Round(s.Vertices[i].near[axis]/2)*2)] = true
		}
		area := func(at measure.Length, beyond bool) float64 {
			cut, err := SectionAt(b, axis, at, beyond)
			if err != nil {
				t.Fatal(err)
			}
			return float64(cut.Area())
		}
		sum := 0.0
		list := sortedLevels(levels)
		for i := 0; i+1 < len(list); i++ {
			lo, hi := list[i], list[i+1]
			sum += (hi - lo).Millimetres() / 6 * (area(lo, true) + 4*area((lo+hi)/2, true) + area(hi, false))
		}
		if v := float64(s.Volume()); math.Abs(sum-v) > 1e-3*v {
			t.Fatalf("sections add up to %v, the solid has %v\n%s", sum, v, dump(b))
		}
	})
}

func sortedLevels(set map[measure.Length]bool) (list []measure.Length) {
	for at := range set {
		i := len(list)
		list = append(list, at)
		for ; i > 0 && list[i-1] > at; i-- {
			list[i] = list[i-1]
		}
		list[i] = at
	}
	return list
}

// V - E + F is 2 for every closed skin less 2 for every way through it.
func TestEuler(t *testing.T) {
	slab := block(0, X, 0, 0, 0, 20, 20, 4)
	hole := func(x, y measure.Length) Prism { return block(1, Z, x, y, -1, x+2, y+2, 5) }
	for _, c := range []struct {
		name string
		body Body
		want int
	}{
		{"block", Body{Base: slab}, 2},
		{"blind mortise", Body{slab, []Prism{block(1, Z, 2, 2, 1, 4, 4, 5)}}, 2},
		{"one hole", Body{slab, []Prism{hole(2, 2)}}, 0},
		{"three holes", Body{slab, []Prism{hole(2, 2), hole(6, 6), hole(12, 9)}}, -4},
		{"cavity", Body{slab, []Prism{block(1, Z, 2, 2, 1, 4, 4, 3)}}, 4},
		// Where they touch no wood is left: the two are one way through.
		{"holes that touch in an edge", Body{slab, []Prism{hole(2, 2), hole(4, 4)}}, 0},
	} {
		m := mustBuild(t, scaled(c.body, mm)).Mesh()
		if got := len(m.Points) - len(m.Triangles)*3/2 + len(m.Triangles); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}

// A face's origin names a prism of that tag whose side of that number lies in
// the face's plane and looks the right way: with the base, against a cut.
func TestOriginsAreTrue(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		b := wild(t)
		s := anyBuild(t, b)
		for i, f := range s.Faces {
			found := f.Origin.Base && made(&b.Base, f.Origin, s, &f)
			for j := range b.Cuts {
				found = found || !f.Origin.Base && made(&b.Cuts[j], f.Origin, s, &f)
			}
			if !found {
				t.Fatalf("face %d: no prism answers to %+v\n%s", i, f.Origin, dump(b))
			}
		}
	})
}

func made(p *Prism, o Origin, s *Solid, f *Face) bool {
	if p.Tag != o.Tag {
		return false
	}
	on := func(v *Vertex) bool {
		x, a := v.Exact(), p.Axis
		if o.Side < firstWall {
			return x[a].Cmp(wholeRat([2]measure.Length{p.From, p.To}[o.Side])) == 0
		}
		if o.Side-firstWall >= len(p.Outline) {
			return false
		}
		c, d := p.Outline[o.Side-firstWall], p.Outline[(o.Side-firstWall+1)%len(p.Outline)]
		l := x[(a+1)%3].Sub(x[(a+1)%3], wholeRat(c.U))
		r := x[(a+2)%3].Sub(x[(a+2)%3], wholeRat(c.V))
		return l.Mul(l, wholeRat(d.V-c.V)).Cmp(r.Mul(r, wholeRat(d.U-c.U))) == 0
	}
	for _, q := range f.Outer {
		if !on(&s.Vertices[q]) {
			return false
		}
	}
	if o.Side < firstWall { // From looks down, To up; a cut's face looks into it
		return (f.Normal[p.Axis] > 0) == ((o.Side == ToEnd) == o.Base)
	}
	return true
}

func wholeRat(l measure.Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// Fit is the same whichever body is asked, agrees with what the bodies have in
// common, and does not change when both are turned alike.
func TestFitIsSymmetric(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		a, b := wild(t), wild(t)
		p := Placement{To: [3]Axis(rapid.Permutation([]Axis{X, Y, Z}).Draw(t, "to"))}
		for k := range 3 {
			p.Flip[k], p.Move[k] = rapid.Bool().Draw(t, "flip"), measure.Length(rapid.IntRange(-9, 9).Draw(t, "move"))
		}
		fit := func(a, b Body) Fit {
			f, err := FitOf(a, Placed{Body: b})
			if err != nil {
				t.Fatal(err)
			}
			return f
		}
		one, other, turned := fit(a, b), fit(b, a), fit(Placed{a, p}.Apply(), Placed{b, p}.Apply())
		common, err := Common(a, Placed{Body: b})
		if err != nil {
			t.Fatal(err)
		}
		if wrong := unsound(common); wrong != "" {
			t.Fatalf("%s\n%s%s", wrong, dump(a), dump(b))
		}
		size := float64(ready(a.Base).box.hi[0]-ready(a.Base).box.lo[0]) / 1e6
		for _, f := range []Fit{other, turned, {Overlap: common.Volume(), Contact: one.Contact}} {
			if math.Abs(float64(f.Overlap-one.Overlap)) > 1e-12*size*size*size || math.Abs(float64(f.Contact-one.Contact)) > 1e-12*size*size {
				t.Fatalf("%v and %v, %v and %v\n%s%s", f.Overlap, one.Overlap, f.Contact, one.Contact, dump(a), dump(b))
			}
		}
	})
}

// A placement given to FitOf is the placement applied before; faces keep the
// names that they have in the body's own frame.
func TestPlacedFitKeepsNames(t *testing.T) {
	// A peg along Z stands on a board, turned end for end: its To end, which is
	// up in its own frame, is what touches.
	board, peg := scaled(Body{Base: block(1, Z, 0, 0, 0, 9, 9, 1)}, mm), scaled(Body{Base: block(2, Z, 0, 0, 0, 2, 3, 5)}, mm)
	at := Placement{To: [3]Axis{X, Y, Z}, Flip: [3]bool{true, false, true}, Move: [3]measure.Length{4 * mm, 0, 6 * mm}}
	f, err := FitOf(board, Placed{peg, at})
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Touches) != 1 || f.Overlap != 0 {
		t.Fatalf("%+v", f)
	}
	got := f.Touches[0]
	if got.A != (Origin{1, true, ToEnd}) || got.B != (Origin{2, true, ToEnd}) || got.Normal != [3]int64{0, 0, 1} {
		t.Errorf("%+v", got)
	}
	near(t, "contact", float64(got.Area), 6, 1e-13)
}
