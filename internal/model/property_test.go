package model_test

import (
	"bytes"
	"math"
	"testing"

	"pgregory.net/rapid"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

// drawn is a random prism, turned and moved at random, with the volume of its
// base by the shoelace formula times its height.
type drawn struct {
	shell  *model.Shell
	volume float64
	holes  int
	place  [4]vec // axes and origin
}

// prisms are star-shaped: corners at about equal angles, at any distance, so
// outlines never cross. A square hole fits: with five corners or more two
// neighbours are at most 2π/5·1.8 apart, so no edge comes nearer to the middle
// than cos(65°) of the nearest corner.
var prisms = rapid.Custom(func(t *rapid.T) drawn {
	n := rapid.IntRange(5, 14).Draw(t, "corners")
	near, base := math.Inf(1), make([]at, n)
	for k := range base {
		r := rapid.Float64Range(10, 300).Draw(t, "radius")
		sin, cos := math.Sincos((float64(k) + rapid.Float64Range(-0.4, 0.4).Draw(t, "shift")) * 2 * math.Pi / float64(n))
		base[k], near = at{r * cos, r * sin}, min(near, r)
	}
	height := rapid.Float64Range(0.5, 2000).Draw(t, "height")
	d := drawn{volume: shoelace(base) * height}
	if rapid.Bool().Draw(t, "hole") {
		h := near * rapid.Float64Range(0.05, 0.25).Draw(t, "hole size")
		d.shell = prism(0, height, base, backwards(rectangle(-h, -h, h, h)))
		d.volume -= 4 * h * h * height
		d.holes = 1
	} else {
		d.shell = prism(0, height, base)
	}
	d.turn(t)
	return d
})

func shoelace(ring []at) float64 {
	two := 0.0
	for k, a := range ring {
		b := ring[(k+1)%len(ring)]
		two += a.x*b.y - b.x*a.y
	}
	return two / 2
}

// turn tilts the prism and moves it up to 2 m away.
func (d *drawn) turn(t *rapid.T) {
	full := rapid.Float64Range(0, 2*math.Pi)
	s1, c1 := math.Sincos(full.Draw(t, "turn"))
	s2, c2 := math.Sincos(full.Draw(t, "tilt"))
	far := rapid.Float64Range(-2000, 2000)
	d.place = [4]vec{{c1, s1, 0}, {-s1 * c2, c1 * c2, s2}, {s1 * s2, -c1 * s2, c2},
		{far.Draw(t, "x"), far.Draw(t, "y"), far.Draw(t, "z")}}
	for i := range d.shell.Faces {
		f := &d.shell.Faces[i]
		f.Normal = d.carry(f.Normal, false)
		for _, ring := range append([][]vec{f.Outer}, f.Holes...) {
			for k := range ring {
				ring[k] = d.carry(ring[k], true)
			}
		}
	}
}

func (d *drawn) carry(v vec, move bool) (out vec) {
	for k := range out {
		out[k] = d.place[0][k]*v[0] + d.place[1][k]*v[1] + d.place[2][k]*v[2]
		if move {
			out[k] += d.place[3][k]
		}
	}
	return out
}

// single is how far, in mm³, a volume summed up from corners in single
// precision may be off: each corner by 2⁻²⁴ of its distance in each of three
// directions, over the whole surface.
func single(s *model.Shell) float64 {
	surface, far := 0.0, 0.0
	for _, f := range s.Faces {
		for k, v := range f.Outer {
			spoke, next := sub(v, f.Outer[0]), sub(f.Outer[(k+1)%len(f.Outer)], f.Outer[0])
			c := cross(spoke, next)
			surface += math.Sqrt(dot(c, c)) / 2
			far = max(far, math.Abs(v[0]), math.Abs(v[1]), math.Abs(v[2]))
		}
	}
	return math.Sqrt(3) * surface * far / (1 << 24)
}

// moved puts triangles near the origin before their volume is summed up.
func moved(all []triangle, by vec) []triangle {
	out := make([]triangle, len(all))
	for i, t := range all {
		out[i] = triangle{sub(t[0], by), sub(t[1], by), sub(t[2], by)}
	}
	return out
}

// TestAnyPrism: whatever prism goes out as STL or GLB comes back with its
// volume and its triangles, and twice with the same bytes.
func TestAnyPrism(t *testing.T) {
	testkit.Check(t, func(rt *rapid.T) {
		d := prisms.Draw(rt, "prism")
		m := mesh(d.shell)
		stl, err := model.STL("A1", m)
		if err != nil {
			rt.Fatal(err)
		}
		out, err := model.GLB(oneNode(d.shell))
		if err != nil {
			rt.Fatal(err)
		}
		again, _ := model.GLB(oneNode(d.shell))
		if !bytes.Equal(out, again) {
			rt.Fatal("two runs differ")
		}
		from := m.Positions[0]
		a := moved(readSTL(t, stl), from)
		b := moved(readGLB(t, out).triangles(0), yUp(from))
		if len(a) != len(m.Triangles) || len(b) != len(a) {
			rt.Fatalf("%d triangles became %d and %d", len(m.Triangles), len(a), len(b))
		}
		tol := single(d.shell)
		if va, vb := volume(a), volume(b)*1e9; math.Abs(va-d.volume) > tol || math.Abs(vb-d.volume) > tol {
			rt.Fatalf("volume %v: STL %v, GLB %v, tolerance %v", d.volume, va, vb, tol)
		}
	})
}

// TestAnyShell: sound prisms pass, and losing any one face is noticed.
func TestAnyShell(t *testing.T) {
	testkit.Check(t, func(rt *rapid.T) {
		d := prisms.Draw(rt, "prism")
		if err := d.shell.Check(); err != nil {
			rt.Fatal(err)
		}
		lost := rapid.IntRange(0, len(d.shell.Faces)-1).Draw(rt, "lost")
		rest := append([]model.PlanarFace{}, d.shell.Faces[:lost]...)
		if err := (&model.Shell{Faces: append(rest, d.shell.Faces[lost+1:]...)}).Check(); err == nil {
			rt.Fatalf("nobody misses face %d", lost)
		}
	})
}
