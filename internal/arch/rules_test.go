package arch

import (
	"fmt"
	"go/ast"
	"path"
	"slices"
	"strings"
)

// house is the table the rules are read from, so that tests can break a small
// one of their own.
type house struct {
	rooms   []row
	apart   []ban
	modules []module
}

// place is a room's number in import order, or -1.
func (h house) place(room string) int {
	return slices.IndexFunc(h.rooms, func(r row) bool { return r.path == room })
}

// refuses tells why one package may not import another; "" if it may.
func (h house) refuses(from, to string) string {
	f, t := h.place(from), h.place(to)
	if f < 0 || t < 0 || f == t {
		return ""
	}
	if h.rooms[t].tests {
		return "only test files import " + to
	}
	for _, b := range h.apart {
		if b.from == from && (b.to == to || b.to == "*") {
			return b.because
		}
	}
	if f < t {
		return h.rooms[f].alone
	}
	return ""
}

// edges reports forbidden imports between our own packages. Test files are
// free: what they may import without a cycle, the compiler decides.
func (h house) edges(tree []source) (wrong []string) {
	for _, s := range tree {
		for _, imported := range s.imports {
			to, own := ours(imported)
			if !own || s.test {
				continue
			}
			if reason := h.refuses(s.room, to); reason != "" {
				wrong = append(wrong, fmt.Sprintf("%s imports %s: %s", s.file, to, reason))
			}
		}
	}
	return wrong
}

// listed reports packages that the table does not have, and rows without a
// package.
func (h house) listed(tree []source) (wrong []string) {
	there := existing(tree)
	for _, room := range there {
		if h.place(room) < 0 {
			wrong = append(wrong, fmt.Sprintf("package %s is not in the table: give it a place and write down why (docs/decisions)", room))
		}
	}
	for _, r := range h.rooms {
		exists := slices.Contains(there, r.path)
		switch {
		case exists && r.planned:
			wrong = append(wrong, fmt.Sprintf("package %s exists: clear its planned mark", r.path))
		case !exists && !r.planned:
			wrong = append(wrong, fmt.Sprintf("package %s is in the table and no longer exists", r.path))
		}
	}
	return wrong
}

// consistent reports mistakes in the table itself: a row twice, a rule about
// nothing, a rule that the order already makes, a rule without a reason.
func (h house) consistent() (wrong []string) {
	for i, r := range h.rooms {
		if h.place(r.path) != i {
			wrong = append(wrong, r.path+" stands twice in the table")
		}
		if r.alone == "" {
			wrong = append(wrong, r.path+" gives no reason why it stands alone")
		}
	}
	for _, b := range h.apart {
		f, t := h.place(b.from), h.place(b.to)
		switch {
		case b.because == "":
			wrong = append(wrong, fmt.Sprintf("%s apart from %s gives no reason", b.from, b.to))
		case f < 0 || (t < 0 && b.to != "*"):
			wrong = append(wrong, fmt.Sprintf("%s apart from %s names a package that is not in the table", b.from, b.to))
		case b.to != "*" && f < t:
			wrong = append(wrong, fmt.Sprintf("%s apart from %s: the order forbids it already", b.from, b.to))
		}
	}
	for _, m := range h.modules {
		if m.because == "" {
			wrong = append(wrong, m.path+" gives no reason")
		}
		for _, room := range m.rooms {
			if h.place(room) < 0 {
				wrong = append(wrong, fmt.Sprintf("%s is given to %s, which is not in the table", m.path, room))
			}
		}
	}
	return wrong
}

// pure reports files on the road that reach outside the program.
func (h house) pure(tree []source) (wrong []string) {
	for _, s := range tree {
		i := h.place(s.room)
		if s.test || i < 0 || h.rooms[i].edge || h.rooms[i].tests {
			continue
		}
		for _, imported := range s.imports {
			if outsideWorld(imported) && h.rooms[i].outside[imported] == "" {
				wrong = append(wrong, fmt.Sprintf("%s imports %q: same text, same boards, same bytes; only cmd touches files, clock, network and chance", s.file, imported))
			}
		}
		for _, call := range clockCalls(s.syntax) {
			wrong = append(wrong, fmt.Sprintf("%s uses %s: no clock reaches output", s.file, call))
		}
	}
	return wrong
}

func outsideWorld(imported string) bool {
	return slices.ContainsFunc(world, func(w string) bool {
		return imported == w || strings.HasSuffix(w, "/") && strings.HasPrefix(imported, w)
	})
}

// clockCalls finds what reads the clock even where package time is allowed. It
// goes by the name time: the package is never renamed here.
func clockCalls(file *ast.File) (calls []string) {
	ast.Inspect(file, func(n ast.Node) bool {
		sel, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		x, ok := sel.X.(*ast.Ident)
		if ok && x.Name == "time" && slices.Contains(clock, sel.Sel.Name) {
			calls = append(calls, "time."+sel.Sel.Name)
		}
		return true
	})
	return calls
}

// clock lists what in package time depends on when or where the program runs.
var clock = []string{"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTicker", "NewTimer", "Local", "LoadLocation"}

// borrowed reports outside modules that nobody gave a reason for, and those
// that left their room.
func (h house) borrowed(tree []source) (wrong []string) {
	for _, s := range tree {
		for _, imported := range s.imports {
			if !outer(imported) {
				continue
			}
			i := slices.IndexFunc(h.modules, func(m module) bool {
				return imported == m.path || strings.HasPrefix(imported, m.path+"/")
			})
			switch {
			case i < 0:
				wrong = append(wrong, fmt.Sprintf("%s imports %s: a new dependency needs a row in the table and a decision record", s.file, imported))
			case !s.test && !slices.Contains(h.modules[i].rooms, s.room):
				wrong = append(wrong, fmt.Sprintf("%s imports %s, which is for %v and tests (%s)", s.file, imported, h.modules[i].rooms, h.modules[i].because))
			}
		}
	}
	return wrong
}

// introduced reports packages without a doc.go whose comment stands directly
// above the package clause and opens the way the doc tool expects.
func introduced(tree []source) (wrong []string) {
	for _, room := range existing(tree) {
		i := slices.IndexFunc(tree, func(s source) bool { return s.room == room && path.Base(s.file) == "doc.go" })
		if i < 0 {
			wrong = append(wrong, "package "+room+" has no doc.go")
			continue
		}
		opens := "Package " + tree[i].syntax.Name.Name + " "
		if tree[i].syntax.Name.Name == "main" {
			opens = "Command " + path.Base(room) + " "
		}
		if doc := strings.Join(strings.Fields(tree[i].syntax.Doc.Text()), " "); !strings.HasPrefix(doc, opens) {
			wrong = append(wrong, fmt.Sprintf("%s: no comment beginning %q directly above the package clause", tree[i].file, opens))
		}
	}
	return wrong
}

// mostLines is where a file is split. Our choice.
const mostLines = 800

// long reports files that should have been split.
func long(tree []source) (wrong []string) {
	for _, s := range tree {
		if s.lines > mostLines && !s.generated() {
			wrong = append(wrong, fmt.Sprintf("%s has %d lines; split it before %d", s.file, s.lines, mostLines))
		}
	}
	return wrong
}
