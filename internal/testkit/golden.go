package testkit

import (
	"bytes"
	"errors"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

// update is the one flag of its kind: a second definition of -update in the
// same test binary (gotest.tools brings one) can panic at start.
var update = flag.Bool("update", false, "write golden files instead of comparing with them")

// Golden compares got with the file testdata/name beside the test. name may
// hold folders, with forward slashes; it must stay inside testdata. With
// -update the file is written (folders made) and the test passes, except
// under CI=true, where asking for it fails. Text is compared as it is, line
// ends included; what is not UTF-8 is compared byte for byte and reported by
// the place of the first difference.
func Golden(t testing.TB, name string, got []byte) {
	t.Helper()
	if !filepath.IsLocal(filepath.FromSlash(name)) {
		t.Fatalf("golden file %s lies outside testdata", name)
	}
	golden(t, filepath.Join("testdata", filepath.FromSlash(name)), got, *update, OnCI())
}

// golden is Golden with the path, the flag and the machine given, so that
// tests can try all of them.
func golden(t testing.TB, file string, got []byte, write, ci bool) {
	t.Helper()
	if write {
		writeGolden(t, file, got, ci)
		return
	}
	want, err := os.ReadFile(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		t.Fatalf("there is no golden file %s yet; read this output, and if it is right run the test with -update:\n%s", file, clip(got))
	case err != nil:
		t.Fatalf("golden file: %v", err)
	case !bytes.Equal(want, got):
		t.Errorf("%s differs (-golden +got); if the change is meant, run make golden and read the diff:\n%s", file, describe(want, got))
	}
}

func writeGolden(t testing.TB, file string, got []byte, ci bool) {
	t.Helper()
	if ci {
		t.Fatalf("golden file %s is never written under CI=true", file)
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatalf("golden file: %v", err)
	}
	if err := os.WriteFile(file, got, 0o644); err != nil {
		t.Fatalf("golden file: %v", err)
	}
}

// describe shows how two byte strings differ: by lines for text, by the first
// differing byte for anything else.
func describe(want, got []byte) string {
	if utf8.Valid(want) && utf8.Valid(got) {
		return cmp.Diff(lines(want), lines(got))
	}
	n := 0
	for n < len(want) && n < len(got) && want[n] == got[n] {
		n++
	}
	return cmp.Diff(window(want, n), window(got, n)) + "\n" +
		"first difference at byte " + itoa(n) + " of " + itoa(len(want)) + " wanted, " + itoa(len(got)) + " got"
}
