package wood

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"casewright/internal/measure"
	"casewright/internal/testkit"
	"pgregory.net/rapid"
)

// Every cell kept of Table 4-2 (FPL-GTR-190 (2010) p. 4-4), 30 to 110 °F. The
// table is printed to 0.1 point and was worked with the Fahrenheit
// coefficients; the Celsius set differs from those by under 0.03 point, and
// rounding adds 0.05. So 0.1 point tells a wrong coefficient from rounding.
func TestEMCTable(t *testing.T) {
	f, err := os.Open("testdata/emc.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in := csv.NewReader(f)
	in.Comment = '#'
	rows, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	const cells = 72
	if len(rows)-1 != cells {
		t.Fatalf("%d cells, want %d", len(rows)-1, cells)
	}
	for _, r := range rows[1:] {
		fahrenheit, rh, want := number(t, r[0]), number(t, r[1]), number(t, r[2])
		got, err := EMC(measure.Humidity(rh), measure.Temperature((fahrenheit-32)/1.8))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(got)-want) > 0.1 {
			t.Errorf("%g °F %g %%: EMC %.3f, table %g", fahrenheit, rh, float64(got), want)
		}
	}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestEMCRange(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name   string
		h      measure.Humidity
		t      measure.Temperature
		refuse bool
	}{
		{"bone dry", 0, 20, false},
		{"nearly saturated", 99.99, 20, false},
		{"saturated", 100, 20, true},
		{"below nothing", -1, 20, true},
		{"a fraction taken for more than all", 4000, 20, true},
		{"no number", measure.Humidity(nan), 20, true},
		{"coldest", 40, -40, false},
		{"too cold", 40, -40.1, true},
		{"hottest", 40, 100, false},
		{"Fahrenheit taken for Celsius", 40, 212, true},
		{"no temperature", 40, measure.Temperature(nan), true},
	} {
		mc, err := EMC(c.h, c.t)
		if (err != nil) != c.refuse {
			t.Errorf("%s: error %v", c.name, err)
		}
		if err == nil && !within(float64(mc), 0, 40) {
			t.Errorf("%s: EMC %g", c.name, float64(mc))
		}
	}
	if _, err := EMC(140, 20); err.Error() != "the relative humidity is 140 %; it must be from 0 to below 100 %" {
		t.Error(err)
	}
}

// Damper air never leaves wood drier, and HumidityFor turns EMC round.
func TestEMCProperties(t *testing.T) {
	testkit.Check(t, func(t *rapid.T) {
		temp := measure.Temperature(rapid.Float64Range(-40, 100).Draw(t, "temperature"))
		h := measure.Humidity(rapid.Float64Range(0, 99.8).Draw(t, "humidity"))
		low, err := EMC(h, temp)
		if err != nil {
			t.Fatal(err)
		}
		high, err := EMC(h+0.1, temp)
		if err != nil || !(high > low) {
			t.Fatalf("EMC %g at %g %%, then %g (%v)", float64(low), float64(h), float64(high), err)
		}
		back, err := HumidityFor(low, temp)
		if err != nil || math.Abs(float64(back-h)) > 1e-6 {
			t.Fatalf("%g %% came back as %g (%v)", float64(h), float64(back), err)
		}
	})
}

func TestHumidityForRange(t *testing.T) {
	for _, mc := range []measure.MoistureContent{-1, 60, measure.MoistureContent(math.NaN())} {
		if h, err := HumidityFor(mc, 20); err == nil {
			t.Errorf("%g %% is kept by air of %g %%", float64(mc), float64(h))
		}
	}
	if _, err := HumidityFor(8, 200); err == nil {
		t.Error("200 °C passed")
	}
}

// Rule of thumb at room temperature, E. Wengert: 30 % RH gives 6 %, 50 % gives
// 9, 65 % gives 12. He rounds to whole points.
func TestClimate(t *testing.T) {
	c, err := NewClimate(30, 65, 21, 50, 21)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []struct {
		air  Air
		want float64
	}{{c.Dry, 6}, {c.Shop, 9}, {c.Damp, 12}} {
		if math.Abs(float64(a.air.Moisture)-a.want) > 0.5 {
			t.Errorf("%g %% RH: %.2f %%, want about %g", float64(a.air.Humidity), float64(a.air.Moisture), a.want)
		}
	}
	if c.Dry.Humidity != 30 || c.Damp.Temperature != 21 {
		t.Errorf("the air is forgotten: %+v", c)
	}
	for name, err := range map[string]error{
		"dry above damp": second(NewClimate(60, 30, 21, 50, 21)),
		"damp 100 %":     second(NewClimate(30, 100, 21, 50, 21)),
		"hot shop":       second(NewClimate(30, 60, 21, 50, 150)),
	} {
		if err == nil {
			t.Errorf("%s passed", name)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func BenchmarkEMC(b *testing.B) {
	for b.Loop() {
		_, _ = EMC(42, 21)
	}
}
