package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"casewright/internal/compile"
	"casewright/internal/design"
	"casewright/internal/diag"

	"github.com/spf13/cobra"
)

// mostRead bounds what is read before the language, whose own limit is lower,
// says that it is too much.
const mostRead = 32 << 20

// commission is a compiled commission with the texts it came from.
type commission struct {
	compile.Result
	sources []design.Source
}

// open reads and compiles the commission at a path.
func open(path string) (*commission, error) {
	sources, err := readTexts(path)
	if err != nil {
		return nil, err
	}
	return &commission{compile.Run(sources), sources}, nil
}

// openSound is open for commands that need a whole piece: errors in the text
// are printed and end the command.
func openSound(c *cobra.Command, args []string) (*commission, error) {
	job, err := open(pathArg(args))
	if err != nil {
		return nil, err
	}
	if !job.Sound() {
		job.renderErrors(c.ErrOrStderr())
		return nil, stopped{}
	}
	if len(job.Piece.Parts) == 0 {
		fmt.Fprintln(c.ErrOrStderr(), noParts)
		return nil, stopped{}
	}
	return job, nil
}

// openShaped is openSound with the piece in exact solids.
func openShaped(c *cobra.Command, args []string) (*commission, error) {
	job, err := openSound(c, args)
	if err != nil {
		return nil, err
	}
	job.Shape(nil)
	if !job.Sound() {
		job.renderErrors(c.ErrOrStderr())
		return nil, stopped{}
	}
	return job, nil
}

const noParts = "the text has no case yet, so there are no parts"

// text gives the text behind a name, for messages that show a line of it.
func (j *commission) text(name string) ([]byte, bool) {
	for _, s := range j.sources {
		if s.Name == name {
			return s.Text, true
		}
	}
	return nil, false
}

// renderErrors prints all errors and how many there are, with the notes on the
// text after them: the slip that a note tells of may be what the errors come from.
func (j *commission) renderErrors(w io.Writer) {
	for _, d := range j.Text {
		diag.Render(w, d, j.text)
		fmt.Fprintln(w)
	}
	fmt.Fprintf(w, "%s in the text\n", count(j.Text.Count(diag.Error), "error", "errors"))
}

// readTexts reads a file, or the texts of a folder in the order of their
// names. Folders within it are not looked into.
func readTexts(path string) ([]design.Source, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, plainError(path, err)
	}
	files := []string{path}
	if info.IsDir() {
		if files, err = textsIn(path); err != nil {
			return nil, err
		}
	} else if err := isText(path, info); err != nil {
		return nil, err
	}
	var sources []design.Source
	left := int64(mostRead)
	for _, f := range files {
		text, err := readFile(f, left)
		if err != nil {
			return nil, err
		}
		left -= int64(len(text))
		sources = append(sources, design.Source{Name: filepath.ToSlash(f), Text: text})
	}
	return sources, nil
}

// isText refuses a file that is no text of a commission: a letter or a picture
// would only give a flood of errors.
func isText(path string, info fs.FileInfo) error {
	if !info.Mode().IsRegular() || strings.EqualFold(filepath.Ext(path), ".hcl") {
		return nil // what is no ordinary file is refused when it is read
	}
	return fmt.Errorf("%s is no text of a commission: their names end in .hcl\n  give such a text, or the folder it is in", shown(path))
}

func textsIn(folder string) ([]string, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, plainError(folder, err)
	}
	var files []string
	for _, e := range entries {
		if filepath.Ext(e.Name()) == ".hcl" && !e.IsDir() && !strings.HasPrefix(e.Name(), ".") {
			files = append(files, filepath.Join(folder, e.Name()))
		}
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("no text in the folder %s: a commission is one or more files whose names end in .hcl\n  begin one: casewright init %s", shown(folder), shown(folder))
	}
	return files, nil
}

// readFile reads at most most bytes of an ordinary file.
func readFile(path string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, plainError(path, err)
	}
	if !info.Mode().IsRegular() { // a pipe or a device may never end
		return nil, fmt.Errorf("%s is not an ordinary file", shown(path))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, plainError(path, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil, plainError(path, err)
	}
	return text, nil
}

// plainError puts what the system says about a file into plain words.
func plainError(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no file or folder %s", shown(path))
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s may not be read or written by you", shown(path))
	}
	var inner *fs.PathError
	if errors.As(err, &inner) {
		err = inner.Err
	}
	return fmt.Errorf("%s: %w", shown(path), err)
}

// shown is a path fit for a message: control characters are quoted.
func shown(path string) string {
	q := fmt.Sprintf("%q", path)
	if q == `"`+path+`"` && path != "" && !strings.Contains(path, " ") {
		return path
	}
	return q
}

// count is "1 part", "3 parts".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
