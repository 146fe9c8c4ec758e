package testkit

import (
	"flag"
	"hash/fnv"
	"os"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// Explore is the environment variable that, set to anything, lets [Check] draw
// new cases at every run: for looking for faults, not for deciding whether a
// change is good.
const Explore = "EXPLORE"

// Check holds a property on random cases, the same ones at every run: the seed
// comes from the test's name, so a change is judged by itself and not by the
// luck of the draw. A seed given by -rapid.seed is kept.
func Check(t *testing.T, property func(*rapid.T)) {
	t.Helper()
	if seed := flag.Lookup("rapid.seed"); seed.Value.String() == "0" && os.Getenv(Explore) == "" {
		h := fnv.New32a()
		h.Write([]byte(t.Name()))
		if err := seed.Value.Set(strconv.FormatUint(uint64(h.Sum32())|1, 10)); err != nil {
			t.Fatal(err)
		}
		defer seed.Value.Set("0")
	}
	rapid.Check(t, property)
}
