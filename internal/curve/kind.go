package curve

// Kind is the law a bow follows. The zero Kind is none and is refused by New.
type Kind uint8

const (
	// Arc is part of a true circle.
	Arc Kind = iota + 1
	// Batten is the line of a thin strip held at the chord's ends and pushed
	// out at the middle: the beam shape up to a rise of a tenth of the chord,
	// the elastica beyond (see ELASTICA.md for how far they differ there).
	Batten
)

// bow is the curved middle of a curve before flats are joined to it.
type bow struct {
	line line
	law  string // which law was used, in the maker's words
	// beyond says how far past each end of the chord the same line holds.
	beyond float64
}

// kinds says how each kind is made: left is the x of the chord's left end; all
// in millimetres, already checked by limits.
var kinds = [...]struct {
	name  string
	check func(Spec) *Error
	make  func(left, chord, rise float64) bow
}{
	Arc:    {"arc", checkArc, makeArc},
	Batten: {"batten", checkBatten, makeBatten},
}

// known reports whether k is a kind that can be made.
func (k Kind) known() bool { return int(k) < len(kinds) && kinds[k].make != nil }

// String is the word the kind is written with, or "unknown".
func (k Kind) String() string {
	if !k.known() {
		return "unknown"
	}
	return kinds[k].name
}

// ParseKind finds the kind written as name; ok is false when there is none.
func ParseKind(name string) (k Kind, ok bool) {
	for i := range kinds {
		if k := Kind(i); k.known() && kinds[i].name == name {
			return k, true
		}
	}
	return 0, false
}

// KindNames lists the words ParseKind knows, in a fixed order.
func KindNames() []string {
	var names []string
	for i := range kinds {
		if Kind(i).known() {
			names = append(names, kinds[i].name)
		}
	}
	return names
}
