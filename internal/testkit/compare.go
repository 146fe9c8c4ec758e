package testkit

import (
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Diff fails the test, and goes on, when want and got differ, and prints the
// difference as -want +got. Unexported fields make go-cmp panic unless an
// option says what to do with them (cmp.AllowUnexported, cmpopts.IgnoreFields).
func Diff(t testing.TB, want, got any, opts ...cmp.Option) {
	t.Helper()
	if d := cmp.Diff(want, got, opts...); d != "" {
		t.Errorf("not as wanted (-want +got):\n%s", d)
	}
}

// Near fails the test, and goes on, unless got lies within tol of want: an
// absolute tolerance in the unit of the two numbers, and the edge counts as
// near. NaN is near nothing, an infinity only to itself. A negative or NaN tol
// is a mistake in the test and stops it.
func Near(t testing.TB, got, want, tol float64) {
	t.Helper()
	if !(tol >= 0) {
		t.Fatalf("tolerance %v makes no sense", tol)
	}
	if got == want || math.Abs(got-want) <= tol && !math.IsInf(want, 0) {
		return
	}
	t.Errorf("got %v, want %v within %v; off by %v", got, want, tol, got-want)
}

// OnCI tells whether this run is the one that decides (CI=true): there golden
// files are not written and a missing outside reader fails instead of
// skipping.
func OnCI() bool { return os.Getenv("CI") == "true" }

// NeedTool returns the path of an outside program that checks our output, such
// as pdftotext. Where the program is missing the test is skipped with the
// package to install; under CI=true it fails, so that a check cannot vanish
// unseen.
func NeedTool(t testing.TB, program, debianPackage string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err == nil {
		return path
	}
	if OnCI() {
		t.Fatalf("%s is missing and CI=true: install %s", program, debianPackage)
	}
	t.Skipf("%s is missing: install %s to run this check", program, debianPackage)
	return ""
}

// lines keeps the line ends, so that a lost or doubled one shows in the diff.
func lines(b []byte) []string { return strings.SplitAfter(string(b), "\n") }

// window is a few bytes either side of n.
func window(b []byte, n int) []byte { return b[max(0, min(n-8, len(b))):min(n+8, len(b))] }

// clip keeps a first golden readable on a terminal.
func clip(b []byte) []byte {
	const most = 8 << 10
	if len(b) <= most {
		return b
	}
	return append(b[:most:most], "\n… (cut short)"...)
}

func itoa(n int) string { return strconv.Itoa(n) }
