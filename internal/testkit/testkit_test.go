package testkit

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// spy is a testing.TB that records how it ended. The embedded interface is nil:
// a helper that calls anything else fails loudly.
type spy struct {
	testing.TB
	failed, stopped, skipped bool
	said                     string
}

func (s *spy) Helper()        {}
func (s *spy) Fatal(a ...any) { s.Fatalf("%s", fmt.Sprint(a...)) }
func (s *spy) Errorf(f string, a ...any) {
	s.failed = true
	s.said += fmt.Sprintf(f, a...)
}
func (s *spy) Fatalf(f string, a ...any) {
	s.stopped = true
	s.Errorf(f, a...)
	runtime.Goexit()
}
func (s *spy) Skipf(f string, a ...any) {
	s.skipped = true
	s.said += fmt.Sprintf(f, a...)
	runtime.Goexit()
}

// watch runs f with a spy, on a goroutine of its own because Fatalf ends it.
func watch(f func(t testing.TB)) *spy {
	s := &spy{}
	done := make(chan struct{})
	go func() { defer close(done); f(s) }()
	<-done
	return s
}

func TestNear(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name           string
		got, want, tol float64
		ok             bool
	}{
		{"same", 1, 1, 0, true},
		{"on the edge", 1.5, 1, 0.5, true},
		{"past the edge", 1.75, 1, 0.5, false},
		{"below", 0.25, 1, 0.5, false},
		{"got NaN", nan, 1, inf, false},
		{"NaN and NaN", nan, nan, 1, false},
		{"infinity to itself", inf, inf, 0, true},
		{"infinity to a number", 1, inf, inf, false},
		{"negative tolerance", 1, 1, -1, false},
		{"NaN tolerance", 1, 1, nan, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := watch(func(t testing.TB) { Near(t, c.got, c.want, c.tol) })
			if s.failed == c.ok {
				t.Errorf("failed = %v, said %q", s.failed, s.said)
			}
		})
	}
}

func TestDiff(t *testing.T) {
	if s := watch(func(t testing.TB) { Diff(t, []int{1, 2}, []int{1, 2}) }); s.failed {
		t.Errorf("equal values reported: %s", s.said)
	}
	s := watch(func(t testing.TB) { Diff(t, []int{1, 2}, []int{1, 3}) })
	if !s.failed || s.stopped || !strings.Contains(s.said, "3") {
		t.Errorf("want a failure that goes on and shows the 3, got %+v", s)
	}
}

func TestGolden(t *testing.T) {
	file := filepath.Join(t.TempDir(), "testdata", "deep", "rail.txt")
	run := func(got string, write, ci bool) *spy {
		return watch(func(t testing.TB) { golden(t, file, []byte(got), write, ci) })
	}
	if s := run("a rail\n", false, false); !s.stopped || !strings.Contains(s.said, "a rail") {
		t.Errorf("a missing golden file must stop the test and show the output: %+v", s)
	}
	if s := run("a rail\n", true, true); !s.stopped {
		t.Error("CI wrote a golden file")
	}
	if _, err := os.Stat(file); err == nil {
		t.Fatal("CI left a golden file behind")
	}
	if s := run("a rail\n", true, false); s.failed {
		t.Errorf("update: %s", s.said)
	}
	if s := run("a rail\n", false, true); s.failed {
		t.Errorf("same bytes reported: %s", s.said)
	}
	for _, other := range []string{"a stile\n", "a rail", "a rail\r\n", "a rail\n\n", "\xff"} {
		if s := run(other, false, false); !s.failed || s.stopped {
			t.Errorf("%q was taken for the golden text", other)
		}
	}
}

func TestGoldenBinary(t *testing.T) {
	want := append([]byte("%PDF\xff\xfe"), make([]byte, 100)...)
	got := append([]byte{}, want...)
	got[50] = 1
	if d := describe(want, got); !strings.Contains(d, "byte 50 of 106 wanted, 106 got") {
		t.Errorf("the place of the difference is missing:\n%s", d)
	}
	if d := describe(want, want[:20]); !strings.Contains(d, "byte 20 of 106 wanted, 20 got") {
		t.Errorf("a short file must say where it ends:\n%s", d)
	}
}

func TestGoldenStaysInside(t *testing.T) {
	for _, name := range []string{"../escape.txt", "a/../../escape.txt", "/escape.txt", ""} {
		if s := watch(func(t testing.TB) { Golden(t, name, nil) }); !s.stopped || !strings.Contains(s.said, "outside testdata") {
			t.Errorf("%s was accepted: %s", name, s.said)
		}
	}
}

func TestNeedTool(t *testing.T) {
	const absent = "no-such-program-in-any-shop"
	t.Setenv("CI", "")
	if s := watch(func(t testing.TB) { NeedTool(t, absent, "poppler-utils") }); !s.skipped || s.failed {
		t.Errorf("want a skip, got %+v", s)
	}
	t.Setenv("CI", "true")
	s := watch(func(t testing.TB) { NeedTool(t, absent, "poppler-utils") })
	if !s.stopped || !strings.Contains(s.said, "poppler-utils") {
		t.Errorf("under CI a missing reader must fail and name its package, got %+v", s)
	}
}

// TestOutside: programs that are missing skip, or fail under CI; what is not
// there for another reason stops.
func TestOutside(t *testing.T) {
	const absent = "no_such_module_in_any_shop"
	python := func(t testing.TB) { Python(t, new(any), absent, "python3-absent", "dxfaudit.py") }
	t.Setenv("CI", "")
	if s := watch(python); !s.skipped || s.failed || !strings.Contains(s.said, "install python3-absent") {
		t.Errorf("want a skip that names the package, got %+v", s)
	}
	t.Setenv("PATH", "")
	if s := watch(func(t testing.TB) { Node(t, new(any), "gltf.mjs") }); !s.skipped || s.failed {
		t.Errorf("want a skip without node, got %+v", s)
	}
	t.Setenv("CI", "true")
	if s := watch(python); !s.stopped || !strings.Contains(s.said, "install python3-absent") {
		t.Errorf("under CI a missing module must fail, got %+v", s)
	}
}

func TestRunJSON(t *testing.T) {
	echo := func(words ...string) *exec.Cmd { return exec.Command("/bin/echo", words...) }
	var got []int
	if s := watch(func(t testing.TB) { runJSON(t, &got, echo("[1, 2]")) }); s.failed || len(got) != 2 {
		t.Errorf("got %v, %+v", got, s)
	}
	if s := watch(func(t testing.TB) { runJSON(t, &got, echo("no", "JSON")) }); !s.stopped || !strings.Contains(s.said, "no JSON") {
		t.Errorf("want a stop that shows what was printed, got %+v", s)
	}
	if s := watch(func(t testing.TB) { runJSON(t, &got, exec.Command("/bin/false")) }); !s.stopped {
		t.Errorf("a program that fails must stop the test, got %+v", s)
	}
}
