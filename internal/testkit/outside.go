package testkit

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Node runs a script of the folder outside/ with node and decodes the JSON
// that it prints into out. The scripts read our files with other people's
// libraries. Where node or the libraries are missing the test is skipped with
// what to do; under CI=true it fails. A script that fails, or prints anything
// but JSON, stops the test.
func Node(t testing.TB, out any, script string, args ...string) {
	t.Helper()
	node := NeedTool(t, "node", "nodejs")
	folder := outside(t)
	if _, err := os.Stat(filepath.Join(folder, "node_modules")); err != nil {
		missing(t, "outside/node_modules is missing", "run npm ci --prefix outside")
	}
	watched(t, filepath.Join(folder, script), filepath.Join(folder, "package-lock.json"))
	runJSON(t, out, exec.Command(node, append([]string{filepath.Join(folder, script)}, args...)...))
}

// Python runs a script of the folder outside/ with a Python that has the
// module, and decodes the JSON that it prints into out. Where there is none the
// test is skipped with the package to install; under CI=true it fails.
func Python(t testing.TB, out any, module, debianPackage, script string, args ...string) {
	t.Helper()
	folder := outside(t)
	watched(t, filepath.Join(folder, script))
	// Debian's own Python comes first: its packages are not seen by others.
	for _, python := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(python, "-c", "import "+module).Run() == nil {
			runJSON(t, out, exec.Command(python, append([]string{filepath.Join(folder, script)}, args...)...))
			return
		}
	}
	missing(t, "no Python has the module "+module, "install "+debianPackage)
}

// watched opens files that only the other program reads: go test repeats a
// test it has a result for when a file changes that the test itself opened.
func watched(t testing.TB, files ...string) {
	t.Helper()
	for _, f := range files {
		if _, err := os.ReadFile(f); err != nil {
			t.Fatal(err)
		}
	}
}

// missing ends the test the way the machine asks for.
func missing(t testing.TB, what, mend string) {
	t.Helper()
	if OnCI() {
		t.Fatalf("%s and CI=true: %s", what, mend)
	}
	t.Skipf("%s: %s to run this check", what, mend)
}

// outside is the folder of other people's readers, found from wherever the
// test runs.
func outside(t testing.TB) string {
	t.Helper()
	at, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return filepath.Join(at, "outside")
		}
		up := filepath.Dir(at)
		if up == at {
			t.Fatal("no go.mod above the test")
		}
		at = up
	}
}

func runJSON(t testing.TB, out any, cmd *exec.Cmd) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err != nil {
		t.Fatalf("%v: %v\n%s%s", cmd.Args, err, clip(stdout.Bytes()), clip(stderr.Bytes()))
	}
	if err := json.Unmarshal(stdout.Bytes(), out); err != nil {
		t.Fatalf("%v: %v in\n%s", cmd.Args, err, clip(stdout.Bytes()))
	}
}
