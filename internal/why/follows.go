package why

// Follows reports whether s comes from o, however many sizes back: a change of
// o may change s. Every size that is given follows itself; nothing follows the
// zero Size.
func (s Size) Follows(o Size) bool {
	o = o.Root()
	if o.n == nil {
		return false
	}
	seen := map[*node]bool{}
	var walk func(s Size) bool
	walk = func(s Size) bool {
		s = s.Root()
		if s.n == nil || seen[s.n] {
			return false
		}
		if s.n == o.n {
			return true
		}
		seen[s.n] = true
		for _, t := range s.n.terms {
			if walk(t.Of) {
				return true
			}
		}
		return false
	}
	return walk(s)
}
