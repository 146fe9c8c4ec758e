package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A file that is interrupted, or cannot be moved into place, leaves what was
// there and nothing beside it.
func TestWriteWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "a.pdf")
	if err := os.WriteFile(file, []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if err := writeWhole(gone, file, []byte("new")); err == nil {
		t.Error("interrupted, and no error")
	}
	if got := read(t, file); got != "old" {
		t.Errorf("the old file is now %q", got)
	}
	if err := writeWhole(context.Background(), file, []byte("new")); err != nil || read(t, file) != "new" {
		t.Errorf("not written: %v", err)
	}
	if info, _ := os.Stat(file); info.Mode().Perm() != 0o640 {
		t.Errorf("the rights are now %v", info.Mode())
	}
	if err := writeWhole(context.Background(), dir, []byte("new")); err == nil {
		t.Error("wrote over a folder")
	}
	for _, d := range []string{dir, filepath.Dir(dir)} {
		if left, _ := filepath.Glob(filepath.Join(d, ".*")); len(left) > 0 {
			t.Errorf("left behind: %v", left)
		}
	}
}

func read(t *testing.T, file string) string {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Progress stays silent for a second, then keeps to one line and leaves it
// empty; where nobody watches it says nothing at all.
func TestProgress(t *testing.T) {
	start := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	now := start
	var out bytes.Buffer
	p := &progress{w: &out, live: true, now: func() time.Time { return now }, started: start}
	p.step(0, 3, "cover")
	if out.Len() > 0 {
		t.Errorf("within the first second: %q", &out)
	}
	now = start.Add(1100 * time.Millisecond)
	p.step(1, 3, "assemblies")
	p.step(2, 3, "sources")
	p.step(3, 3, "done")
	p.clear()
	blank := func(n int) string { return "\r" + string(bytes.Repeat([]byte(" "), n)) + "\r" }
	if want := "2 of 3: assemblies" + blank(18) + "3 of 3: sources" + blank(15); out.String() != want {
		t.Errorf("got %q, want %q", &out, want)
	}
	out.Reset()
	if p := newProgress(&out); p.live {
		t.Error("a buffer is taken for a terminal")
	}
}
