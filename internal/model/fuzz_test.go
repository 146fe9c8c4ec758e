package model_test

import (
	"errors"
	"testing"

	"casewright/internal/model"
)

// FuzzShell: whatever faces come, a file or a fault, never a panic. Bytes are
// corners on a coarse grid, three to a corner; 255 ends a ring, 254 a face.
func FuzzShell(f *testing.F) {
	f.Add(bytesOf(prism(0, 2, rectangle(0, 0, 3, 3))))
	f.Add(bytesOf(prism(0, 2, rectangle(0, 0, 5, 5), backwards(rectangle(1, 1, 3, 3)))))
	f.Add(bytesOf(prism(0, 2, []at{{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {0, 3}})))
	f.Add(bytesOf(prism(0, 1, []at{{0, 0}, {4, 0}, {2, 0}, {2, 2}})))
	f.Add([]byte{255, 254, 1})
	f.Fuzz(func(t *testing.T, b []byte) {
		s := shellOf(b)
		fault := s.Check()
		out, err := model.STEP(model.Scene{Name: "p", Nodes: []model.Node{{Name: "A1", Shell: s}}})
		var f *model.Fault
		switch {
		case (fault == nil) != (err == nil):
			t.Fatalf("Check says %v, STEP says %v", fault, err)
		case err != nil && !errors.As(err, &f):
			t.Fatalf("not a fault: %v", err)
		case err == nil && len(out) == 0:
			t.Fatal("no file and no fault")
		}
	})
}

func bytesOf(s *model.Shell) (b []byte) {
	for _, f := range s.Faces {
		for _, ring := range append([][]vec{f.Outer}, f.Holes...) {
			for _, v := range ring {
				b = append(b, byte(v[0]), byte(v[1]), byte(v[2]))
			}
			b = append(b, 255)
		}
		b[len(b)-1] = 254
	}
	return b
}

// shellOf reads bytes as bytesOf writes them. Normals are worked out, so that
// most shells get past the first check.
func shellOf(b []byte) *model.Shell {
	s := &model.Shell{}
	var rings [][]vec
	var ring []vec
	var corner []float64
	for _, c := range b {
		if c < 254 {
			if corner = append(corner, float64(c)); len(corner) == 3 {
				ring, corner = append(ring, vec{corner[0], corner[1], corner[2]}), nil
			}
			continue
		}
		rings, ring, corner = append(rings, ring), nil, nil
		if c == 254 {
			s.Faces = append(s.Faces, model.PlanarFace{Outer: rings[0], Holes: rings[1:], Normal: newell(rings[0])})
			rings = nil
		}
	}
	return s
}

func newell(ring []vec) (sum vec) {
	for k, a := range ring {
		c := cross(a, ring[(k+1)%len(ring)])
		sum = vec{sum[0] + c[0], sum[1] + c[1], sum[2] + c[2]}
	}
	return sum
}

// BenchmarkPiece writes 200 dovetailed boards in each format.
func BenchmarkPiece(b *testing.B) {
	s := model.Scene{Name: "piece"}
	for range 200 {
		p := pinBoard()
		s.Nodes = append(s.Nodes, model.Node{Name: "A1", Shell: p, Mesh: mesh(p)})
	}
	for _, w := range writers {
		b.Run(w.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := w.write(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
