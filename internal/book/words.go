package book

import (
	"fmt"
	"strings"

	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
)

// size is a size as it is printed everywhere in the book.
func (m *maker) size(s why.Size) string {
	if !s.Given() {
		return ""
	}
	return m.length(m.p.Shown(s))
}

// length prints an already rounded length: to the rule where that is exact,
// else to the finer gaps.
func (m *maker) length(l measure.Length) string {
	if text, exact := m.rule.Exact(l); exact {
		return text
	}
	return m.fine.Format(l)
}

// unit is a length with its unit.
func (m *maker) unit(l measure.Length) string {
	if m.fine.Unit == measure.Millimetres {
		return m.length(l) + " mm"
	}
	return m.length(l) + `"`
}

// gap prints a gap or a movement to the graduation of gaps.
func (m *maker) gap(l measure.Length) string { return m.fine.Format(l) }

// movement prints a movement, which is finer than any rule: thousandths of an
// inch or hundredths of a millimetre.
func (m *maker) thousandths(l measure.Length) string {
	if m.fine.Unit == measure.Millimetres {
		return fmt.Sprintf("%.2f", l.Millimetres())
	}
	return fmt.Sprintf("%.3f", l.Inches())
}

// three is length × width × thickness.
func (m *maker) three(a, b, c why.Size) string {
	return m.size(a) + " × " + m.size(b) + " × " + m.size(c)
}

// called is a part as it is cited: mark and name.
func called(p *piece.Part) string {
	if p == nil {
		return ""
	}
	return p.Mark + " " + p.Name
}

// marks cites parts by mark alone.
func marks(parts []*piece.Part) string {
	var out []string
	for _, p := range parts {
		out = append(out, p.Mark)
	}
	return listed(out)
}

// listed is "a, b and c".
func listed(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// assemblyTitle is "B · keys door", or "C and D · drawers" for those that are
// alike.
func assemblyTitle(group []*piece.Assembly) string {
	if len(group) == 1 {
		return group[0].Letter + " · " + assemblyName(group[0])
	}
	var out []string
	for _, a := range group {
		out = append(out, a.Letter)
	}
	return listed(out) + " · " + string(group[0].Kind) + "s"
}

// assemblyName is the assembly's name without a word said twice: an opening
// “left door” gives “left door door”.
func assemblyName(a *piece.Assembly) string {
	var out []string
	for word := range strings.FieldsSeq(a.Name) {
		if n := len(out); n == 0 || out[n-1] != word {
			out = append(out, word)
		}
	}
	return strings.Join(out, " ")
}

// woodName is the wood with its cut.
func woodName(w *piece.Wood) string { return w.Name }

// pair tells a mirrored part which hand it is.
func pair(p *piece.Part) string {
	if p.Mirror == nil {
		return ""
	}
	switch {
	case strings.Contains(p.Name, "left"):
		return "L of a pair with " + p.Mirror.Mark
	case strings.Contains(p.Name, "right"):
		return "R of a pair with " + p.Mirror.Mark
	}
	return "mirror of " + p.Mirror.Mark
}

// showFace says in the room's words which face is seen.
func showFace(p *piece.Part) string {
	d := p.Place.T
	if p.Show == joinery.Low {
		d = -d
	}
	switch d {
	case piece.Left, piece.Right:
		return "outside"
	case piece.Front:
		return "front"
	case piece.Back:
		return "back"
	case piece.Up:
		return "upper"
	}
	return "underside"
}

// edgeName is the reference edge in the room's words.
func edgeName(p *piece.Part) string {
	d := p.Place.W
	if p.Edge == joinery.Front {
		d = -d
	}
	return edgeOf(d)
}

// edgeOf is the edge on the side a direction points to.
func edgeOf(d piece.Dir) string {
	switch d {
	case piece.Left:
		return "left"
	case piece.Right:
		return "right"
	case piece.Front:
		return "front"
	case piece.Back:
		return "back"
	case piece.Up:
		return "upper"
	}
	return "lower"
}
