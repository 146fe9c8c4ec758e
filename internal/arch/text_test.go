package arch

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf8"

	"casewright/internal/testkit"
)

// readTexts reads every text file of the repository by its slash path: what
// .gitignore names is left out, and so is what is not UTF-8 or holds a zero
// byte.
func readTexts(t testing.TB, root fs.FS) map[string]string {
	t.Helper()
	texts := map[string]string{}
	skip := ignored(root)
	err := fs.WalkDir(root, ".", func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == ".git" || skip(file)):
			return fs.SkipDir
		case !d.Type().IsRegular() || skip(file):
			return nil
		}
		b, err := fs.ReadFile(root, file)
		if err == nil && utf8.Valid(b) && !bytes.ContainsRune(b, 0) {
			texts[file] = string(b)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return texts
}

// ignored reads .gitignore. It knows the few forms ours uses: a name or
// pattern matched anywhere, and one anchored by a leading slash; a trailing
// slash is dropped.
func ignored(root fs.FS) func(file string) bool {
	b, _ := fs.ReadFile(root, ".gitignore")
	var patterns []string
	for _, line := range strings.Split(string(b), "\n") {
		if line = strings.TrimSuffix(strings.TrimSpace(line), "/"); line != "" && line[0] != '#' {
			patterns = append(patterns, line)
		}
	}
	return func(file string) bool {
		return slices.ContainsFunc(patterns, func(p string) bool {
			name := path.Base(file)
			if anchored, ok := strings.CutPrefix(p, "/"); ok {
				p, name = anchored, file
			}
			hit, _ := path.Match(p, name)
			return hit
		})
	}
}

// private finds what belongs to one machine and not to the project. The words
// are put together here so that this file does not report itself.
var private = regexp.MustCompile(strings.Join([]string{
	`(^|[^\w.~-])/` + `(work|root|tmp|home/\w+)/`,
	`\bshared/` + `(reference|[A-Z]+\.md)`,
	`\b(proxy\.golang|sum\.golang|registry\.npmjs|deb\.debian)` + `\.org\b`,
}, "|"))

// machineBound reports lines that name paths of one machine or the host of a
// registry.
func machineBound(texts map[string]string) (wrong []string) {
	for _, file := range sorted(texts) {
		for i, line := range strings.Split(texts[file], "\n") {
			if hit := private.FindString(line); hit != "" {
				wrong = append(wrong, fmt.Sprintf("%s:%d names %q, which exists on one machine only", file, i+1, strings.TrimSpace(hit)))
			}
		}
	}
	return wrong
}

var (
	fence = regexp.MustCompile("(?ms)^```.*?^```")
	code  = regexp.MustCompile("`([^`\n]+)`")
	link  = regexp.MustCompile(`\]\(([^)\s]+)\)`)
	// named is what looks like a path: it has a slash or a known ending, and
	// no blank, wildcard, placeholder or leading dash.
	named = regexp.MustCompile(`^[\w./-]+(/[\w./-]*|\.(md|go|hcl|csv|mod|svg|png|pdf))$`)
)

// mapTexts are the documents whose code spans are read as paths too.
var mapTexts = []string{"README.md", "docs/architecture.md", "docs/contributing.md"}

// stray reports paths in documents that do not exist: links in every .md file,
// from where it stands, and code spans in the documents that draw the map,
// from the root or from internal/, or as the plain name of some file. A planned
// package may be named already.
func stray(root fs.FS, texts map[string]string, rooms []row) (wrong []string) {
	planned := func(p string) bool {
		return slices.ContainsFunc(rooms, func(r row) bool { return r.planned && r.path == p })
	}
	names := map[string]bool{}
	for file := range texts {
		names[path.Base(file)] = true
	}
	for _, file := range sorted(texts) {
		if path.Ext(file) != ".md" {
			continue
		}
		prose := fence.ReplaceAllString(texts[file], "")
		for _, m := range link.FindAllStringSubmatch(prose, -1) {
			target, _, _ := strings.Cut(m[1], "#")
			if target != "" && !strings.Contains(target, ":") && !there(root, path.Join(path.Dir(file), target)) {
				wrong = append(wrong, fmt.Sprintf("%s links to %s, which does not exist", file, m[1]))
			}
		}
		if !slices.Contains(mapTexts, file) {
			continue
		}
		for _, m := range code.FindAllStringSubmatch(prose, -1) {
			p := m[1]
			if named.MatchString(p) && p[0] != '-' && !names[p] && !planned(p) && !there(root, path.Clean(p)) && !there(root, path.Join("internal", p)) {
				wrong = append(wrong, fmt.Sprintf("%s names %s, which does not exist", file, p))
			}
		}
	}
	return wrong
}

func there(root fs.FS, file string) bool {
	_, err := fs.Stat(root, file)
	return err == nil
}

// unmapped reports packages that docs/architecture.md does not name.
func unmapped(rooms []row, page string) (wrong []string) {
	for _, r := range rooms {
		if !strings.Contains(page, "`"+r.path+"`") {
			wrong = append(wrong, "docs/architecture.md does not name "+r.path)
		}
	}
	return wrong
}

// record is what a decision record must have, in this order.
var record = []string{"# ", "## Status", "## Context", "## Decision", "## Alternatives", "## Consequences"}

// halfDecided reports decision records with a section missing or empty: one
// without alternatives has not decided anything.
func halfDecided(texts map[string]string) (wrong []string) {
	for _, file := range sorted(texts) {
		if path.Dir(file) != "docs/decisions" {
			continue
		}
		rest := texts[file]
		for _, head := range record {
			at := strings.Index("\n"+rest, "\n"+head)
			if at < 0 {
				wrong = append(wrong, fmt.Sprintf("%s has no %q in its place", file, head))
				break
			}
			rest = rest[at+len(head):]
			body, _, _ := strings.Cut(rest, "\n#")
			if strings.TrimSpace(body) == "" {
				wrong = append(wrong, fmt.Sprintf("%s says nothing under %q", file, head))
			}
		}
	}
	return wrong
}

func sorted(texts map[string]string) []string {
	var files []string
	for f := range texts {
		files = append(files, f)
	}
	slices.Sort(files)
	return files
}

func TestTexts(t *testing.T) {
	root := os.DirFS(repository)
	texts := readTexts(t, root)
	t.Run("no machine is named", func(t *testing.T) { report(t, machineBound(texts)) })
	t.Run("named paths exist", func(t *testing.T) { report(t, stray(root, texts, rooms)) })
	t.Run("the map is whole", func(t *testing.T) { report(t, unmapped(rooms, texts["docs/architecture.md"])) })
	t.Run("decisions are whole", func(t *testing.T) { report(t, halfDecided(texts)) })
}

func TestTextRulesCanFail(t *testing.T) {
	slash := "/"
	root := fstest.MapFS{
		".gitignore":           file("# ours\n/out\n*.pdf\n"),
		"README.md":            file("See `docs/gone.md`, `internal/low/doc.go`, `low/doc.go`, `doc.go`, `gone.go`, `go test ./...`, `-update`, [map](docs/architecture.md#top), [web](https://example.org/x).\n```\n`no/such`\n```\n"),
		"docs/architecture.md": file("`low` `to/come` [up](../README.md) [no](README.md) `mid/`\n"),
		"docs/other.md":        file("`not/checked/here`\n"),
		"internal/low/doc.go":  file("package low // built in " + slash + "work" + slash + "main\n"),
		"web.txt":              file("https://example.org" + slash + "tmp" + slash + "x and a" + slash + "root" + slash + "b\n"),
		"list.pdf":             file(slash + "tmp" + slash + "x"),
		"out/x.txt":            file(slash + "tmp" + slash + "x"),
		"deep/out":             file(slash + "tmp" + slash + "x"),
		"picture.png":          file("\xff " + slash + "tmp" + slash + "x"),
		"docs/decisions/1.md":  file("# One\n\n## Status\n\nAccepted\n\n## Context\n\nc\n\n## Decision\n\nd\n\n## Alternatives\n\n## Consequences\n\ne\n"),
		"docs/decisions/2.md":  file("# Two\n\n## Status\n\nAccepted\n\n## Decision\n\nd\n"),
	}
	texts := readTexts(t, root)
	testkit.Diff(t, []string{
		"deep/out:1 names \"" + slash + "tmp" + slash + "\", which exists on one machine only",
		"internal/low/doc.go:1 names \"" + slash + "work" + slash + "\", which exists on one machine only",
	}, machineBound(texts))
	testkit.Diff(t, []string{
		"README.md names docs/gone.md, which does not exist",
		"README.md names gone.go, which does not exist",
		"docs/architecture.md links to README.md, which does not exist",
		"docs/architecture.md names mid/, which does not exist",
	}, stray(root, texts, []row{{path: "to/come", planned: true}}))
	testkit.Diff(t, []string{"docs/architecture.md does not name mid"},
		unmapped([]row{{path: "low"}, {path: "mid"}}, texts["docs/architecture.md"]))
	testkit.Diff(t, []string{
		`docs/decisions/1.md says nothing under "## Alternatives"`,
		`docs/decisions/2.md has no "## Context" in its place`,
	}, halfDecided(texts))
}
