package main

import (
	"encoding/csv"
	"encoding/json"
	"path"
	"runtime/debug"
	"strings"
	"testing"

	"casewright/internal/testkit"
)

var examples = []string{"hall-cabinet", "sideboard", "bookcase"}

func examplePath(name string) string { return path.Join("..", "..", "examples", name) }

// The whole commissions, as a person sees them.
func TestGoldens(t *testing.T) {
	for _, name := range examples {
		code, out, stderr := run(t, "parts", examplePath(name))
		if code != codeGood || stderr != "" {
			t.Errorf("%s: code %d, %s", name, code, stderr)
		}
		testkit.Golden(t, "parts/"+name+".txt", []byte(out))
	}
	_, out, _ := run(t, "why", examplePath("hall-cabinet"), "B3")
	testkit.Golden(t, "why/hall-cabinet-B3.txt", []byte(out))
	_, out, _ = run(t, "why", examplePath("hall-cabinet"), "C1.length")
	testkit.Golden(t, "why/hall-cabinet-C1-length.txt", []byte(out))
}

// The table, CSV and JSON tell the same: the parts of the piece, all of them,
// with the sizes as the piece prints them.
func TestThreeShapesAgree(t *testing.T) {
	for _, name := range examples {
		job, err := open(examplePath(name))
		if err != nil {
			t.Fatal(err)
		}
		var got partsJSON
		_, text, _ := run(t, "parts", examplePath(name), "--json")
		if err := json.Unmarshal([]byte(text), &got); err != nil {
			t.Fatal(err)
		}
		_, text, _ = run(t, "parts", examplePath(name), "--csv")
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		_, table, _ := run(t, "parts", examplePath(name))
		if len(rows) != len(job.Piece.Parts)+1 {
			t.Errorf("%s: %d rows for %d parts", name, len(rows), len(job.Piece.Parts))
		}
		i := 0
		for _, a := range got.Assemblies {
			for _, p := range a.Parts {
				q := job.Piece.Parts[i]
				i++
				if want := job.decimal(job.Piece.Shown(q.Length)); p.Mark != q.Mark || p.Length.Decimal.String() != want || rows[i][7] != want || int64(q.Length.Length()) != p.Length.Nanometres {
					t.Errorf("%s: %s is %s long in JSON and %s in CSV, %s in the piece", name, q.Mark, p.Length.Decimal, rows[i][7], want)
				}
				if !lineHas(table, p.Mark, p.Name, p.Wood, p.Length.Printed, p.Width.Printed, p.Thickness.Printed) {
					t.Errorf("%s: the table lacks %s %s", name, p.Mark, p.Name)
				}
				if (p.WaitsFor != "") != (p.Standing == "waits") || p.Length.Waits && p.WaitsFor == "" {
					t.Errorf("%s: %s waits for nothing: %+v", name, p.Mark, p)
				}
			}
		}
		if i != len(job.Piece.Parts) {
			t.Errorf("%s: %d of %d parts in JSON", name, i, len(job.Piece.Parts))
		}
	}
}

// lineHas reports whether the line that begins with mark has all the words.
func lineHas(table, mark string, words ...string) bool {
	for line := range strings.Lines(table) {
		if !strings.HasPrefix(line, mark+" ") {
			continue
		}
		for _, w := range words {
			if !strings.Contains(line, w) {
				return false
			}
		}
		return true
	}
	return false
}

// Only what follows an opening waits: of a door in an opening that is still to
// be measured the stile's length does, and its width, typed, does not.
func TestOnlyWhatFollowsWaits(t *testing.T) {
	job, err := open(examplePath("hall-cabinet"))
	if err != nil {
		t.Fatal(err)
	}
	stile := job.Piece.Part("cabinet.upper.keys.door.stile.left")
	if !waits(stile, stile.Length) || waits(stile, stile.Width) || waits(stile, stile.Thickness) {
		t.Error("the stile waits wrongly")
	}
	side := job.Piece.Part("cabinet.side.left")
	if waits(side, side.Length) {
		t.Error("a side waits for nothing")
	}
}

// Every size of every part can be asked for and tells its sum.
func TestEverySizeSaysWhy(t *testing.T) {
	for _, name := range examples {
		job, err := open(examplePath(name))
		if err != nil {
			t.Fatal(err)
		}
		for _, target := range job.targets() {
			for _, s := range target.sizes {
				text, err := job.why(target.keys[0] + "." + s.word)
				if err != nil || len(strings.Split(string(text), "\n")) < 4 {
					t.Errorf("%s: %s.%s: %v %q", name, target.keys[0], s.word, err, text)
				}
			}
		}
	}
}

func TestVersion(t *testing.T) {
	for _, c := range []struct {
		info debug.BuildInfo
		want string
	}{
		{debug.BuildInfo{GoVersion: "go1", Main: debug.Module{Version: "v1.2.3"}}, "v1.2.3 (go1)"},
		{debug.BuildInfo{GoVersion: "go1", Main: debug.Module{Version: "(devel)"}}, "built from source (go1)"},
		{debug.BuildInfo{GoVersion: "go1", Settings: []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef"}, {Key: "vcs.modified", Value: "true"}}},
			"built from source at 0123456789ab, changed since (go1)"},
	} {
		if got := versionOf(&c.info); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
