package wood

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/agext/levenshtein"
)

// Lookup finds a wood by key ("cherry-black"), printed name ("Black cherry") or
// everyday shop name ("cherry", "hard maple"; see [Species.Also]). Case,
// hyphens, brackets and the order of words do not matter.
//
// A shop name means what is most likely sold under it: "ash" is white ash,
// "maple" hard maple, "soft maple" red maple, "walnut" and "cherry" the black
// ones, "red oak" the commercial mix, "white oak" Quercus alba (the more lively
// of its two rows), "poplar" yellow-poplar, "hickory" the true hickories,
// "redwood" young growth. A name that could be several woods of different
// movement, like "oak", "pine" or "cedar", is answered with an [UnknownError]
// that lists them.
func Lookup(name string) (*Species, error) {
	t := loaded()
	// A text of megabytes for a name is not worth splitting into words.
	if len(name) > 8*longestName {
		return nil, &UnknownError{Name: name}
	}
	if s, ok := t.byName[fold(name)]; ok {
		return s, nil
	}
	return nil, &UnknownError{Name: name, Close: t.nearest(name)}
}

// UnknownError is a name that no wood of the tables goes by.
type UnknownError struct {
	Name  string   // as written
	Close []string // up to three names that would be found, likeliest first
}

// Error says what was not found, what may have been meant and the way out.
func (e *UnknownError) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "no wood called %q in the tables", short(e.Name))
	if n := len(e.Close); n > 0 {
		b.WriteString("; did you mean ")
		b.WriteString(strings.Join(e.Close[:n-1], ", "))
		if n > 1 {
			b.WriteString(" or ")
		}
		b.WriteString(e.Close[n-1] + "?")
	} else {
		b.WriteString(".")
	}
	b.WriteString(" Any other wood can be defined in the text with its shrinkage and specific gravity")
	return b.String()
}

// short keeps a runaway name from filling the message.
func short(name string) string {
	runes := []rune(name)
	if len(runes) <= longestName {
		return name
	}
	return string(runes[:longestName]) + "…"
}

// longestName is well above the longest name in the tables.
const longestName = 60

// nameAll files every wood under all its names. Printed names go before shop
// names, so that a shop name never hides a wood.
func (t *tables) nameAll() {
	t.byName = make(map[string]*Species, 4*len(t.all))
	for _, s := range t.all {
		t.byName[fold(s.Key)] = s
		t.byName[fold(s.Name)] = s
	}
	for _, s := range t.all {
		for _, also := range s.Also {
			if _, taken := t.byName[fold(also)]; !taken {
				t.byName[fold(also)] = s
			}
		}
	}
}

// plain is the name in lower case with single spaces and no punctuation.
func plain(name string) string {
	return strings.Join(words(name), " ")
}

// fold is plain with its words in one order, for lookups.
func fold(name string) string {
	w := words(name)
	slices.Sort(w)
	return strings.Join(w, " ")
}

func words(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return strings.ContainsRune(" \t\r\n-_,;()/.'’", r)
	})
}

// nearest lists up to three names near the one written: first those that hold
// one of its words, then those few slips of the pen away.
func (t *tables) nearest(name string) []string {
	want := plain(name)
	if n := len([]rune(want)); n == 0 || n > longestName {
		return nil
	}
	var found []near
	for _, s := range t.all {
		if n, ok := s.near(want); ok {
			found = append(found, n)
		}
	}
	slices.SortStableFunc(found, compareNear)
	var out []string
	for _, n := range found[:min(3, len(found))] {
		out = append(out, n.name)
	}
	return out
}

// near is a name and how near it is to the one written.
type near struct {
	name  string
	slips int  // letters put in, left out or changed
	kin   bool // the two share a word that says something
}

func compareNear(a, b near) int {
	if a.kin != b.kin {
		if a.kin {
			return -1
		}
		return 1
	}
	return cmp.Compare(a.slips, b.slips)
}

// near is the nearest of the wood's names, if any is near at all.
func (s *Species) near(want string) (best near, ok bool) {
	limit := max(1, (len([]rune(want))+1)/3) // one slip in "oak", two in "mapel"
	consider := func(name string) {
		p := plain(name)
		n := near{name: strings.ToLower(name), slips: levenshtein.Distance(want, p, nil), kin: sharesWord(want, p)}
		if n.slips > limit && !n.kin {
			return
		}
		if !ok || compareNear(n, best) < 0 {
			best, ok = n, true
		}
	}
	consider(s.Name)
	for _, also := range s.Also {
		consider(also)
	}
	consider(s.Key)
	return best, ok
}

// sharesWord reports whether the names share a word that says something:
// colours and places are told of too many woods to be a hint.
func sharesWord(a, b string) bool {
	for _, w := range strings.Fields(a) {
		if !vague[w] && slices.Contains(strings.Fields(b), w) {
			return true
		}
	}
	return false
}

var vague = map[string]bool{
	"red": true, "white": true, "black": true, "yellow": true, "dark": true, "light": true, "green": true, "silver": true,
	"hard": true, "soft": true, "true": true, "old": true, "young": true, "growth": true, "commercial": true, "mix": true,
	"american": true, "african": true, "european": true, "indian": true, "brazilian": true, "western": true, "eastern": true,
	"northern": true, "southern": true, "english": true, "japanese": true, "coast": true, "wood": true,
}
