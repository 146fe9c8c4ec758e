package main

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"casewright/internal/compile"
	"casewright/internal/design"

	"github.com/spf13/cobra"
)

// starter is the first text of a commission: a small hung cabinet with remarks.
//
//go:embed starter.hcl
var starter []byte

// starterName stands in starter where the commission's name goes.
const starterName = "small-cabinet"

func newInit() *cobra.Command {
	var name string
	c := &cobra.Command{
		Use:   "init DIR",
		Short: "Begin a commission with a small text to change",
		Long: `Begins a commission: makes the folder DIR if it is not there and writes a first text
into it, commission.hcl, a small hung cabinet with remarks. It is complete: check, parts
and book work at once, and you change it from there.

Nothing is written over. A folder that has texts already is left alone.`,
		Example: `  casewright init hall-bench
  casewright init . --name "hall bench"`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("init takes the folder to begin in, as in: casewright init hall-bench")
			}
			return atMost(1, "one DIR")(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error { return runInit(c, args[0], name) },
	}
	c.Flags().StringVar(&name, "name", "", "what the commission is called (by default like the folder)")
	return c
}

func runInit(c *cobra.Command, dir, name string) error {
	text, err := firstText(dir, name)
	if err != nil {
		return err
	}
	if err := emptyOfTexts(dir); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return plainError(dir, err)
	}
	file := filepath.Join(dir, "commission.hcl")
	if err := writeNew(file, text); err != nil {
		return err
	}
	d := shown(dir)
	return write(c.OutOrStdout(), fmt.Appendf(nil, "wrote %s\nnext:  casewright check %s\n       casewright parts %s\n       casewright book %s\n", shown(filepath.ToSlash(file)), d, d, d))
}

// firstText is starter under the commission's name.
func firstText(dir, name string) ([]byte, error) {
	if name == "" {
		full, err := filepath.Abs(dir)
		if err != nil {
			return nil, plainError(dir, err)
		}
		name = filepath.Base(full)
	}
	text := bytes.Replace(starter, []byte(starterName), []byte(name), 1)
	// The language says what a name can be. What would change the text instead
	// of naming it is a bad name, too.
	r := compile.Run([]design.Source{{Name: "commission.hcl", Text: text}})
	if !r.Sound() || r.Spec.Commission.Name != name || strings.TrimSpace(name) != name {
		return nil, fmt.Errorf("%q cannot be the name of a commission: it takes letters, digits, blanks, - and _\n  give another one: --name \"hall bench\"", clip(name))
	}
	return text, nil
}

// emptyOfTexts reports why a commission cannot begin in a folder.
func emptyOfTexts(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return plainError(dir, err)
	case !info.IsDir():
		return fmt.Errorf("%s is a file: give a folder", shown(dir))
	}
	if files, _ := textsIn(dir); len(files) > 0 {
		return fmt.Errorf("the folder %s has a text already, %s: it is left alone", shown(dir), shown(filepath.Base(files[0])))
	}
	return nil
}

// writeNew writes a file that must not be there yet.
func writeNew(path string, b []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is there already: it is left alone", shown(path))
	}
	if err != nil {
		return plainError(path, err)
	}
	_, err = f.Write(b)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(path) // half a text is worse than none
		return plainError(path, err)
	}
	return nil
}
