package main

import (
	"strings"

	"github.com/agext/levenshtein"
)

// longestNear bounds what is worth comparing letter by letter.
const longestNear = 80

// nearest is the candidate a person most likely meant, or "" when none is near:
// one that the word begins or ends, else one within a third of its letters.
func nearest(word string, candidates []string) string {
	if word == "" || len(word) > longestNear {
		return ""
	}
	word = strings.ToLower(word)
	best, least := "", (len([]rune(word))+2)/3+1
	for _, c := range candidates {
		if len(c) > 2*longestNear {
			continue
		}
		if d := levenshtein.Distance(word, strings.ToLower(c), nil); d < least {
			best, least = c, d
		}
	}
	if best != "" || len(word) < 3 {
		return best
	}
	for _, c := range candidates {
		if l := strings.ToLower(c); strings.HasPrefix(l, word) || strings.HasSuffix(l, word) {
			return c
		}
	}
	return ""
}

// didYouMean is the end of a message about an unknown word, or "".
func didYouMean(word string, candidates []string) string {
	if n := nearest(word, candidates); n != "" {
		return "; did you mean " + n + "?"
	}
	return ""
}
