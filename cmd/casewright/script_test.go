package main

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"casewright": main})
}

// TestScripts runs the commands as a person does, from files in
// testdata/script. Beside the usual script words there are:
//
//	code N ARGS…          casewright ARGS must end with exit code N
//	fill FILE BYTES TEXT  writes TEXT again and again, up to BYTES
//	files DIR NAMES…      DIR holds exactly these
//
// TEXT is in Go's quoted form.
func TestScripts(t *testing.T) {
	examples, err := filepath.Abs(filepath.Join("..", "..", "examples"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		RequireExplicitExec: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", examples)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"code": code, "fill": fill, "files": files},
	})
}

// badInput is how long any command may take on bad input. The promise is 2 s
// on a quiet machine; tests run beside others.
const badInput = 10 * time.Second

func code(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: code N ARGS…")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	start := time.Now()
	err = ts.Exec("casewright", args[1:]...)
	if took := time.Since(start); took > badInput {
		ts.Fatalf("it took %v", took)
	}
	got := 0
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d\nstdout: %s\nstderr: %s", got, want, ts.ReadFile("stdout"), ts.ReadFile("stderr"))
	}
}

func fill(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: fill FILE BYTES TEXT")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	text, err := strconv.Unquote(`"` + args[2] + `"`)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Repeat(text, n/len(text)+1)[:n]), 0o666))
}

func files(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: files DIR NAMES…")
	}
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if want := args[1:]; strings.Join(got, " ") != strings.Join(want, " ") {
		ts.Fatalf("%s holds %q, want %q", args[0], got, want)
	}
}

// run is one command in this process.
func run(t testing.TB, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, err strings.Builder
	code = Main{}.Run(context.Background(), args, strings.NewReader(""), &out, &err)
	return code, out.String(), err.String()
}
