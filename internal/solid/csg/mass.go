package csg

import (
	"math"

	"casewright/internal/measure"
)

// corner is the low corner of what the solid fills, in nm. Sums are taken from
// there, so that a small solid far out loses nothing to rounding.
func (s *Solid) corner() [3]float64 {
	at := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	for i := range s.Vertices {
		for k := range at {
			at[k] = min(at[k], s.Vertices[i].near[k])
		}
	}
	return at
}

// fan calls do for triangles from a face's first vertex to each of its edges.
// They may overlap and be turned over; their signed sum is the face.
func (s *Solid) fan(f *Face, at [3]float64, do func(a, b, c [3]float64)) {
	a := minus(s.Vertices[f.Outer[0]].near, at)
	each := func(loop []int32) {
		b := minus(s.Vertices[loop[len(loop)-1]].near, at)
		for _, p := range loop {
			c := minus(s.Vertices[p].near, at)
			do(a, b, c)
			b = c
		}
	}
	each(f.Outer)
	for _, h := range f.Holes {
		each(h)
	}
}

// cone is six times the signed volume between a face and a point, in nm³.
func (s *Solid) cone(f *Face, at [3]float64) (sum float64) {
	s.fan(f, at, func(a, b, c [3]float64) { sum += dot(a, times(b, c)) })
	return sum
}

// Volume is the volume by the divergence theorem, right to about one part in
// 10^13. The zero Solid has none.
func (s *Solid) Volume() measure.Volume {
	at, sum := s.corner(), 0.0
	for i := range s.Faces {
		sum += s.cone(&s.Faces[i], at)
	}
	return measure.Volume(sum / 6e18)
}

// FaceArea is the area of face i.
func (s *Solid) FaceArea(i int) measure.Area {
	f := &s.Faces[i]
	at := s.Vertices[f.Outer[0]].near
	var sum [3]float64
	s.fan(f, at, func(a, b, c [3]float64) {
		n := times(minus(b, a), minus(c, a))
		for k := range sum {
			sum[k] += n[k]
		}
	})
	return measure.Area(dot(sum, f.Unit()) / 2e12)
}

// Area is the area of the whole skin.
func (s *Solid) Area() (sum measure.Area) {
	for i := range s.Faces {
		sum += s.FaceArea(i)
	}
	return sum
}

// Moments are a solid's volume and how it is spread: Centroid in mm, and
// Second[i][j], the integral of xᵢxⱼ about the centroid along the frame's axes
// in mm⁵. Multiply by a density for mass; the moment of inertia about the x
// axis is then Second[1][1] + Second[2][2].
type Moments struct {
	Volume   measure.Volume
	Centroid [3]float64
	Second   [3][3]float64
}

// Moments integrates over the solid by cones to its low corner. A solid without
// volume has its centroid at the origin.
func (s *Solid) Moments() Moments {
	if len(s.Faces) == 0 {
		return Moments{}
	}
	at := s.corner()
	var six float64 // six times the volume
	var first [3]float64
	var second [3][3]float64
	for i := range s.Faces {
		s.fan(&s.Faces[i], at, func(a, b, c [3]float64) {
			for k := range 3 { // to mm
				a[k], b[k], c[k] = a[k]/1e6, b[k]/1e6, c[k]/1e6
			}
			det := dot(a, times(b, c))
			six += det
			// Over the tetrahedron 0abc: ∫x = det/24·Σ, ∫xᵢxⱼ = det/120·(ΣᵢΣⱼ + Σ pᵢpⱼ).
			for k := range 3 {
				sk := a[k] + b[k] + c[k]
				first[k] += det * sk
				for j := k; j < 3; j++ {
					second[k][j] += det * (sk*(a[j]+b[j]+c[j]) + a[k]*a[j] + b[k]*b[j] + c[k]*c[j])
				}
			}
		})
	}
	return moments(six, first, second, at)
}

func moments(six float64, first [3]float64, second [3][3]float64, at [3]float64) Moments {
	m := Moments{Volume: measure.Volume(six / 6)}
	if six <= 0 {
		return m
	}
	var c [3]float64
	for k := range c {
		c[k] = first[k] / (4 * six)
		m.Centroid[k] = c[k] + at[k]/1e6
	}
	for k := range 3 {
		for j := k; j < 3; j++ {
			m.Second[k][j] = second[k][j]/120 - six/6*c[k]*c[j]
			m.Second[j][k] = m.Second[k][j]
		}
	}
	return m
}
