package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// source is one Go file.
type source struct {
	file    string // slash path from the root of the repository
	room    string // "piece", "sheet/lettering", "cmd/casewright"
	test    bool
	imports []string
	syntax  *ast.File
	lines   int
}

// readTree reads every Go file below internal/ and cmd/. testdata is none of
// our business: the go command does not build it either.
func readTree(t testing.TB, root fs.FS) []source {
	t.Helper()
	var all []source
	for _, top := range []string{"internal", "cmd"} {
		if _, err := fs.Stat(root, top); err != nil {
			continue
		}
		err := fs.WalkDir(root, top, func(file string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && d.Name() == "testdata":
				return fs.SkipDir
			case d.IsDir() || path.Ext(file) != ".go":
				return nil
			}
			s, err := readSource(root, file)
			all = append(all, s)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return all
}

func readSource(root fs.FS, file string) (source, error) {
	text, err := fs.ReadFile(root, file)
	if err != nil {
		return source{}, err
	}
	syntax, err := parser.ParseFile(token.NewFileSet(), file, text, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return source{}, err
	}
	s := source{
		file:   file,
		room:   strings.TrimPrefix(path.Dir(file), "internal/"),
		test:   strings.HasSuffix(file, "_test.go"),
		syntax: syntax,
		lines:  strings.Count(string(text), "\n"),
	}
	for _, i := range syntax.Imports {
		p, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			return source{}, err
		}
		s.imports = append(s.imports, p)
	}
	return s, nil
}

// generated tells whether the file says so in the form the go command knows.
func (s source) generated() bool { return ast.IsGenerated(s.syntax) }

// existing lists the rooms with at least one file that is not a test; a room
// of tests only counts by its doc.go.
func existing(tree []source) []string {
	var rooms []string
	for _, s := range tree {
		if !s.test && !slices.Contains(rooms, s.room) {
			rooms = append(rooms, s.room)
		}
	}
	return rooms
}

// ours returns the room an import path names, if it is one of our packages.
func ours(imported string) (room string, ok bool) {
	rest, ok := strings.CutPrefix(imported, "casewright/")
	return strings.TrimPrefix(rest, "internal/"), ok
}

// outer tells whether an import path is neither ours nor of the standard
// library, whose first element never has a dot.
func outer(imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	return strings.Contains(first, ".")
}
