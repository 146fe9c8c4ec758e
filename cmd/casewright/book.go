package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"casewright/internal/book"
	"casewright/internal/diag"
	"casewright/internal/sheet"

	"github.com/spf13/cobra"
)

func newBook() *cobra.Command {
	var out, paper string
	c := &cobra.Command{
		Use:   "book [PATH]",
		Short: "Print the build book as one PDF file",
		Long: `Prints the build book of the commission in PATH (by default the current folder) into
one PDF file: a picture of the piece as it stands, what to settle before cutting, views
to scale, the piece drawn apart, parts and blanks, a sheet for each assembly, part and
kind of joint, dovetails in full size, curves with ordinates, openings to measure, how
the wood moves, and sources.

The file is written whole or not at all. One that is there already is replaced if it is
a PDF file, and left alone otherwise. With errors in the text nothing is written. With
findings that stop, the book is written with them at its front, and the exit code is 1:
nothing should be cut from it yet.

Print at 100 %, not “fit to page”: full-size sheets carry a line to check with a rule.`,
		Example: `  casewright book examples/hall-cabinet -o hall-cabinet.pdf
  casewright book examples/bookcase -o bookcase.pdf --paper a4`,
		Args: atMost(1, "one PATH"),
		RunE: func(c *cobra.Command, args []string) error { return runBook(c, args, out, paper) },
	}
	c.Flags().StringVarP(&out, "output", "o", "", "the file to write (by default the commission's name with .pdf, in the current folder)")
	c.Flags().StringVar(&paper, "paper", "letter", "the paper to print on: letter or a4")
	return c
}

// papers are those the book is laid out for.
var papers = map[string]sheet.Paper{"letter": sheet.Letter, "a4": sheet.A4}

func runBook(c *cobra.Command, args []string, out, paper string) error {
	p, ok := papers[strings.ToLower(paper)]
	if !ok {
		return fmt.Errorf("the book cannot be printed on %q: use letter or a4", clip(paper))
	}
	if out != "" {
		if err := mayWrite(out, pdfMark); err != nil { // before the work, not after it
			return err
		}
	}
	job, err := openShaped(c, args)
	if err != nil {
		return err
	}
	if out == "" {
		out = job.Spec.Commission.Name + ".pdf"
		if err := mayWrite(out, pdfMark); err != nil {
			return err
		}
	}
	show := newProgress(c.ErrOrStderr())
	pdf, err := book.PDF(job.Piece, job.Findings, book.Options{Paper: p, Model: job.Model, Progress: show.step})
	show.clear()
	if err != nil {
		return fmt.Errorf("the book could not be made: %w", err)
	}
	if err := writeWhole(c.Context(), out, pdf); err != nil {
		return err
	}
	return job.reportBook(c, out, len(pdf), p)
}

func (j *commission) reportBook(c *cobra.Command, out string, size int, p sheet.Paper) error {
	text := fmt.Sprintf("wrote %s: %s paper, %d KB\n", shown(out), p.Name, (size+1023)/1024)
	if len(j.Findings) > 0 {
		text += tally(j.Findings) + ", all in the book; “casewright check” shows them\n"
	}
	if err := write(c.OutOrStdout(), []byte(text)); err != nil {
		return err
	}
	if n := j.Findings.Count(diag.Stop); n > 0 {
		fmt.Fprintf(c.ErrOrStderr(), "not safe to cut from yet: %s; the book begins with it\n", count(n, "finding stops the work", "findings stop the work"))
		return stopped{}
	}
	return nil
}

// kind is a kind of file by its first bytes.
type kind struct{ mark, name string }

var pdfMark = kind{"%PDF-", "a PDF file"}

// mayWrite reports why a file must not be written: it is there and of another
// kind, or its folder is missing.
func mayWrite(path string, k kind) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		if folder := filepath.Dir(path); !isFolder(folder) {
			return fmt.Errorf("there is no folder %s to write %s into", shown(folder), shown(filepath.Base(path)))
		}
		return nil
	}
	switch {
	case err != nil:
		return plainError(path, err)
	case info.IsDir():
		return fmt.Errorf("%s is a folder: give the name of a file, as in -o %s", shown(path), shown(filepath.Join(path, "book.pdf")))
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is not an ordinary file", shown(path))
	}
	return mustBe(path, k)
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

func mustBe(path string, k kind) error {
	f, err := os.Open(path)
	if err != nil {
		return plainError(path, err)
	}
	defer f.Close()
	head := make([]byte, len(k.mark))
	if _, err := io.ReadFull(f, head); err != nil || string(head) != k.mark {
		return fmt.Errorf("%s is there and is not %s: it is left alone; give another name after -o", shown(path), k.name)
	}
	return nil
}

// writeWhole writes a file beside its place and moves it there once it is
// whole, so that a full disk or a power cut leaves the old one.
func writeWhole(ctx context.Context, path string, b []byte) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // what a link leads to is replaced, not the link
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return plainError(path, err)
	}
	defer os.Remove(f.Name()) // after the move there is nothing to remove
	_, err = f.Write(b)
	err = errors.Join(err, f.Sync(), f.Chmod(modeOf(path)), f.Close())
	if err == nil {
		err = ctx.Err()
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return plainError(path, err)
	}
	return nil
}

// modeOf keeps the rights of the file that is replaced. A new one may be read
// by all, as files usually are.
func modeOf(path string) fs.FileMode {
	if info, err := os.Stat(path); err == nil {
		return info.Mode().Perm()
	}
	return 0o644
}
