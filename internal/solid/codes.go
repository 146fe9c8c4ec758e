package solid

import (
	"slices"

	"casewright/internal/diag"
)

// Explanations are all codes this package reports, in order.
func Explanations() []diag.Explanation { return slices.Clone(explanations) }

var explanations = []diag.Explanation{
	{Code: "E401", Title: "a joint that cannot be cut", Text: "One of a part's joints has a size of zero, or an outline that crosses itself, so the part has no shape. The place shown is the text the joint comes from."},
	{Code: "E402", Title: "nothing left of a part", Text: "A part's joints together take away all its wood."},
	{Code: "E403", Title: "a part in pieces", Text: "A part's joints go right through it, so that it falls apart: a dado or groove as deep as the board, or sockets that meet."},
	{Code: "N401", Title: "a weight not known", Text: "The tables have no specific gravity for this wood, so its parts are left out when the piece is weighed. Define the wood with a species block to have it weighed."},
}
