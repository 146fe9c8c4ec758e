package wood

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"casewright/internal/testkit"

	"pgregory.net/rapid"
)

// What holds for every wood there is, whatever the table says.
func TestTablesAreSane(t *testing.T) {
	if n := len(All()); n != 100 {
		t.Errorf("%d woods, want 100", n)
	}
	for _, s := range All() {
		if s.Key == "" || s.Name == "" || s.Group == "" {
			t.Errorf("%q has no name or group", s.Key)
		}
		if !s.Tangential.Known() || !within(float64(s.Tangential.Value), 0.001, 0.005) {
			t.Errorf("%s: C_T %v", s.Key, s.Tangential)
		}
		if r, ok := s.Radial.Get(); ok && !(r < s.Tangential.Value) {
			t.Errorf("%s: C_R %g is not below C_T %g", s.Key, float64(r), float64(s.Tangential.Value))
		}
		if s.ShrinkRadial.Known() && !(s.ShrinkRadial.Value < s.ShrinkTangential.Value) {
			t.Errorf("%s: shrinks more across the rings than along them", s.Key)
		}
		if s.ShrinkVolumetric.Known() && s.ShrinkRadial.Known() {
			// Printed volumetric shrinkage is a test of its own; it lies near the sum.
			sum := float64(s.ShrinkRadial.Value + s.ShrinkTangential.Value)
			if v := float64(s.ShrinkVolumetric.Value); !within(v, 0.7*sum, 1.4*sum) {
				t.Errorf("%s: volumetric shrinkage %g beside %g", s.Key, v, sum)
			}
		}
		s.sane(t)
	}
}

// sane checks weight and strength, where the tables have them.
func (s *Species) sane(t *testing.T) {
	t.Helper()
	if !s.GravityGreen.Known() && !s.Gravity12.Known() {
		var missing *MissingError
		if _, err := s.DensityAt(12); !errors.As(err, &missing) {
			t.Errorf("%s: density without gravity: %v", s.Key, err)
		}
		return
	}
	d, err := s.DensityAt(12)
	if err != nil || !within(float64(d.Value), 150, 1250) {
		t.Errorf("%s: density %g (%v)", s.Key, float64(d.Value), err)
	}
	if e := float64(s.Stiffness.Value); !within(e, 3e9, 25e9) {
		t.Errorf("%s: stiffness %g", s.Key, e)
	}
	if r := float64(s.Rupture.Value / s.Stiffness.Value); !within(r, 0.005, 0.012) {
		t.Errorf("%s: breaks at a strain of %g", s.Key, r)
	}
	if s.RuptureGreen.Known() && !(s.RuptureGreen.Value < s.Rupture.Value && s.StiffnessGreen.Value < s.Stiffness.Value) {
		t.Errorf("%s: stronger green than dry", s.Key)
	}
}

// Green and 12 % gravity are printed from different samples to two places;
// Eq. 4-11 with the printed volumetric shrinkage links them to within 0.03.
func TestGravityColumnsAgree(t *testing.T) {
	checked := 0
	for _, s := range All() {
		if !s.GravityGreen.Known() || !s.Gravity12.Known() || !s.ShrinkVolumetric.Known() {
			continue
		}
		checked++
		want := float64(s.GravityGreen.Value) / (1 - shrunk(float64(s.ShrinkVolumetric.Value), 12))
		if got := float64(s.Gravity12.Value); math.Abs(got-want) > 0.03 {
			t.Errorf("%s: gravity %g at 12 %%, %.3f from green", s.Key, got, want)
		}
	}
	if checked < 60 {
		t.Errorf("only %d woods checked", checked)
	}
}

// C and S are one straight line: C = (S/FS) / (100 − S (FS − 10)/FS), Eq. 13-3
// from 10 %. Rows marked as agreeing must do so to the fifth place printed.
func TestCoefficientsFollowFromShrinkage(t *testing.T) {
	pairs := 0
	check := func(s *Species, shrink Figure[Shrinkage], c Figure[Coefficient]) {
		if !shrink.Known() || !c.Known() {
			return
		}
		pairs++
		want := CoefficientFor(shrink.Value, s.FibreSaturation.Value)
		if math.Abs(float64(c.Value-want)) > 1e-5 {
			t.Errorf("%s: %.5f printed, %.6f from shrinkage %g", s.Key, float64(c.Value), float64(want), float64(shrink.Value))
		}
	}
	for _, s := range All() {
		if s.PairAgrees {
			check(s, s.ShrinkRadial, s.Radial)
			check(s, s.ShrinkTangential, s.Tangential)
		} else if s.ShrinkRadial.Known() && s.Note == "" {
			t.Errorf("%s disagrees with its shrinkage and does not say so", s.Key)
		}
	}
	if pairs < 150 {
		t.Errorf("only %d pairs checked", pairs)
	}
	for _, fs := range []float64{22, 30} {
		if got := ShrinkageFor(CoefficientFor(8, 30), 30); math.Abs(float64(got)-8) > 1e-12 {
			t.Errorf("FS %g: 8 %% came back as %g", fs, float64(got))
		}
	}
}

// Figures that were kept from memory must not turn into read ones. The counts
// are those of the collection the tables were taken from.
func TestMemoryStaysMemory(t *testing.T) {
	var radial, tangential [Given + 1]int
	for _, s := range All() {
		radial[s.Radial.Status]++
		tangential[s.Tangential.Status]++
	}
	if want := [Given + 1]int{Missing: 1, Read: 36, Memory: 42, Calculated: 10, CalculatedFromMemory: 11}; radial != want {
		t.Errorf("C_R: %v, want %v", radial, want)
	}
	if want := [Given + 1]int{Read: 43, Memory: 41, Calculated: 9, CalculatedFromMemory: 7}; tangential != want {
		t.Errorf("C_T: %v, want %v", tangential, want)
	}
	for _, c := range []struct {
		what      string
		got, want Status
	}{
		{"cherry C_T", find(t, "cherry-black").Tangential.Status, Read},
		{"yellow-poplar C_R", find(t, "yellow-poplar").Radial.Status, Memory},
		{"true hickory C_R", find(t, "hickory-true").Radial.Status, Memory},
		{"true hickory C_T", find(t, "hickory-true").Tangential.Status, Read},
		{"white oak C_T", find(t, "oak-white").Tangential.Status, Calculated},
		{"sapele C_T", find(t, "sapele").Tangential.Status, CalculatedFromMemory},
		{"hard maple shrinkage", find(t, "maple-sugar").ShrinkRadial.Status, Read},
		{"red maple shrinkage", find(t, "maple-red").ShrinkRadial.Status, Memory},
		{"redwood fibre saturation", find(t, "redwood-old-growth").FibreSaturation.Status, Memory},
		{"cherry elastic ratio", find(t, "cherry-black").Elastic.Tangential.Status, Memory},
		{"yellow birch shear ratio", find(t, "birch-yellow").Elastic.ShearRadial.Status, Read},
		{"white oak shear ratio", find(t, "oak-white").Elastic.ShearTangential.Status, Missing},
		{"red oak mix strength", find(t, "oak-red-commercial").Rupture.Status, Borrowed},
		{"red oak mix elastic ratio", find(t, "oak-red-commercial").Elastic.Radial.Status, Memory},
		{"wenge C_R", find(t, "wenge").Radial.Status, Missing},
		{"interior average", Targets()[0].Average.Status, Read},
		{"interior range", Targets()[0].Low.Status, Memory},
	} {
		if c.got != c.want {
			t.Errorf("%s is %s, want %s", c.what, c.got, c.want)
		}
	}
}

func TestEveryFigureHasASource(t *testing.T) {
	for _, s := range All() {
		for what, f := range map[string]Figure[float64]{
			"C_R": bare(s.Radial), "C_T": bare(s.Tangential), "S_R": bare(s.ShrinkRadial), "S_T": bare(s.ShrinkTangential),
			"S_V": bare(s.ShrinkVolumetric), "fs": bare(s.FibreSaturation), "gg": bare(s.GravityGreen), "g12": bare(s.Gravity12),
			"mor": bare(s.Rupture), "moe": bare(s.Stiffness), "hard": bare(s.Hardness), "across": bare(s.CompressionAcross),
			"shear": bare(s.Shear), "mor green": bare(s.RuptureGreen), "moe green": bare(s.StiffnessGreen), "mp": bare(s.Intersection),
			"et": bare(s.Elastic.Tangential), "er": bare(s.Elastic.Radial), "glr": bare(s.Elastic.ShearRadial), "glt": bare(s.Elastic.ShearTangential),
		} {
			if f.Known() != (f.Source != "") || f.Known() != (f.Value > 0) {
				t.Errorf("%s %s: %+v", s.Key, what, f)
			}
		}
	}
}

func bare[T ~float64](f Figure[T]) Figure[float64] {
	return Figure[float64]{float64(f.Value), f.Source, f.Status}
}

func find(t testing.TB, name string) *Species {
	t.Helper()
	s, err := Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestLookup(t *testing.T) {
	for name, want := range map[string]string{
		"cherry-black": "cherry-black", "Black cherry": "cherry-black", "CHERRY": "cherry-black", "Cherry, black": "cherry-black",
		"ash": "ash-white", "walnut": "walnut-black", "Black Walnut": "walnut-black", "maple": "maple-sugar", "hard maple": "maple-sugar",
		"soft maple": "maple-red", "red oak": "oak-red-commercial", "white oak": "oak-white", "northern red oak": "oak-red-northern",
		"poplar": "yellow-poplar", "tulip poplar": "yellow-poplar", "beech": "beech-american", "birch": "birch-yellow",
		"white pine": "pine-eastern-white", "douglas fir": "douglas-fir-coast", "Douglas-fir": "douglas-fir-coast", "mahogany": "mahogany-true",
		"African mahogany": "khaya", "brazilian cherry": "jatoba", "western red cedar": "cedar-western-red", "  sapele ": "sapele",
		"hickory": "hickory-true", "redwood": "redwood-young-growth",
	} {
		if got := find(t, name); got.Key != want {
			t.Errorf("%q is %s, want %s", name, got.Key, want)
		}
	}
}

// Every key, printed name and shop name leads to its own wood, so none hides
// another.
func TestEveryNameResolves(t *testing.T) {
	for _, s := range All() {
		for _, name := range append([]string{s.Key, s.Name}, s.Also...) {
			if got := find(t, name); got != s {
				t.Errorf("%q of %s leads to %s", name, s.Key, got.Key)
			}
		}
	}
}

func TestLookupUnknown(t *testing.T) {
	for _, c := range []struct {
		name  string
		close []string
	}{
		{"chery", []string{"cherry"}},
		{"wallnut", []string{"walnut"}},
		{"mapel", []string{"maple"}},
		{"oak", []string{"red oak", "black oak", "white oak"}},
		{"rosewood", []string{"indian rosewood", "brazilian rosewood"}},
		{"european beech", []string{"american beech"}},
		{"xyzzyplugh", []string{}},
		{"", []string{}},
	} {
		_, err := Lookup(c.name)
		var unknown *UnknownError
		if !errors.As(err, &unknown) {
			t.Errorf("%q: %v", c.name, err)
			continue
		}
		if len(unknown.Close) > 3 {
			t.Errorf("%q: too many suggestions %q", c.name, unknown.Close)
		}
		if len(c.close) > 0 && (len(unknown.Close) < len(c.close) || !slices.Equal(unknown.Close[:len(c.close)], c.close)) {
			t.Errorf("%q: suggestions %q, want %q first", c.name, unknown.Close, c.close)
		}
		if len(c.close) == 0 && len(unknown.Close) > 0 {
			t.Errorf("%q: suggestions %q out of nowhere", c.name, unknown.Close)
		}
		for _, name := range unknown.Close {
			find(t, name)
		}
		if !strings.Contains(err.Error(), "can be defined in the text") {
			t.Errorf("no way out in %q", err)
		}
	}
	_, err := Lookup("oak")
	const want = `no wood called "oak" in the tables; did you mean red oak, black oak or white oak?` +
		` Any other wood can be defined in the text with its shrinkage and specific gravity`
	if err.Error() != want {
		t.Errorf("got  %s\nwant %s", err, want)
	}
}

func TestLookupAnything(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		s, err := Lookup(name)
		if (s == nil) == (err == nil) {
			t.Fatalf("%q: %v, %v", name, s, err)
		}
		if err != nil && len(err.Error()) > 1000 {
			t.Fatalf("message of %d bytes", len(err.Error()))
		}
	})
	if _, err := Lookup(strings.Repeat("oak ", 3<<20)); err == nil || len(err.Error()) > 1000 {
		t.Error("a name of 12 MB")
	}
}

func TestBondingAndTargets(t *testing.T) {
	// FPL-GTR-190 (2010) Table 10-1: one wood of each class.
	for name, want := range map[string]Bonding{"alder": BondsEasily, "walnut": BondsWell, "cherry": BondsWithControl, "teak": BondsHardly, "red oak": BondsWithControl, "wenge": BondsUnknown} {
		if got := find(t, name).Bonding; got.Class != want || (got.Source == "") != (want == BondsUnknown) {
			t.Errorf("%s bonds %s, want %s", name, got.Class, want)
		}
	}
	// Fig. 13-1: 8 % over most of the United States, 6 in the dry southwest, 11 on damp coasts.
	for i, want := range []float64{8, 6, 11} {
		if got := Targets()[i]; got.Use != "interior" || float64(got.Average.Value) != want {
			t.Errorf("target %d: %+v", i, got)
		}
	}
	if got := Targets()[6]; got.Average.Known() || got.Low.Value != 6 || got.High.Value != 8 {
		t.Errorf("furniture lumber: %+v", got)
	}
}

func TestTablesAreReadOnce(t *testing.T) {
	all := All()
	all[0] = nil
	if All()[0] == nil {
		t.Error("a caller reached into the table")
	}
	if find(t, "cherry") != find(t, "cherry-black") {
		t.Error("one wood twice")
	}
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		load()
	}
}

func BenchmarkLookup(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Lookup("Black cherry")
	}
}
