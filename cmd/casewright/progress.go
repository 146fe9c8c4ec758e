package main

import (
	"fmt"
	"io"
	"os"
	"time"
)

// patience is how long work stays silent.
const patience = time.Second

// progress shows on one line of a terminal how far work that takes longer than
// patience has come. Elsewhere it is silent.
type progress struct {
	w       io.Writer
	live    bool // w is a terminal
	now     func() time.Time
	started time.Time
	shown   int // characters on the line
}

func newProgress(w io.Writer) *progress {
	return &progress{w: w, live: isTerminal(w), now: time.Now, started: time.Now()}
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// step shows what is being done as step number done of total.
func (p *progress) step(done, total int, what string) {
	if !p.live || done >= total || p.now().Sub(p.started) < patience {
		return
	}
	p.clear()
	line := fmt.Sprintf("%d of %d: %s", done+1, total, what)
	fmt.Fprint(p.w, line)
	p.shown = width(line)
}

// clear empties the line again. Blanks and carriage returns do on any
// terminal.
func (p *progress) clear() {
	if p.shown > 0 {
		fmt.Fprintf(p.w, "\r%*s\r", p.shown, "")
	}
	p.shown = 0
}
