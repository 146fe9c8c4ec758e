package diag

// Explanation tells at length what a code means, for whoever asks.
type Explanation struct {
	Code  string
	Title string
	Text  string // one paragraph
}
