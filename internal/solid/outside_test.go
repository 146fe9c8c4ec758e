package solid_test

import (
	"os"
	"path/filepath"
	"testing"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

// Whole commissions before somebody else's eyes: the Khronos validator has
// nothing to say of any severity, and Open CASCADE reads as many valid solids
// as there are parts, each of the volume we have for it.
func TestOutsideReaders(t *testing.T) {
	for _, name := range commissions {
		m := shaped(t, example(t, name))
		scene := m.Scene()
		var seen []struct{ Messages []any }
		testkit.Node(t, &seen, "gltf.mjs", save(t, name+".glb", model.GLB, scene))
		if len(seen) != 1 || len(seen[0].Messages) != 0 {
			t.Errorf("%s: the validator says %v", name, seen)
		}
		var read []struct {
			Valid  bool
			Solids []struct {
				Volume float64
				Valid  bool
			}
		}
		testkit.Node(t, &read, "step.mjs", save(t, name+".step", model.STEP, scene))
		if len(read) != 1 || !read[0].Valid || len(read[0].Solids) != len(m.Bodies) {
			t.Fatalf("%s: Open CASCADE finds it not valid, or %d solids of %d", name, len(read[0].Solids), len(m.Bodies))
		}
		for i, b := range m.Bodies {
			got := read[0].Solids[i]
			if !got.Valid {
				t.Errorf("%s: %s is no valid solid", name, b.Part.Path)
			}
			testkit.Near(t, got.Volume, float64(b.Volume), 2e-6*float64(b.Volume))
		}
	}
}

func save(t *testing.T, name string, write func(model.Scene) ([]byte, error), s model.Scene) string {
	t.Helper()
	b, err := write(s)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, b, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}
