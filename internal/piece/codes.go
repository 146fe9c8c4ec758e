package piece

import (
	"slices"

	"casewright/internal/diag"
)

// Explanations are all codes this package reports, in order: what only shows
// once real sizes are known. Codes keep their meaning for good; one that is no
// longer used is not given out again.
func Explanations() []diag.Explanation { return slices.Clone(explanations) }

var explanations = []diag.Explanation{
	{Code: "E301", Title: "too many parts", Text: "The piece would have more than 20 000 parts. No single piece needs that many; a count has a digit too many, most often of shelves or of drawers in a bank."},
	{Code: "E310", Title: "sizes that do not fill the space", Text: "Every row of a space has a height, or every column a width, and together with the boards between them they do not add up to the space. One of them has to give: the message shows for each what it would become. A row or column without a size of its own takes what is left, so leaving one size out is the usual way."},
	{Code: "E311", Title: "nothing left", Text: "The fixed sizes use up the space, and a row or column that should take what is left has nothing. Either a fixed size is too large or the case too small. Sizes inside a case are what its boards leave: outside width less both sides, outside height less top and bottom."},
	{Code: "E312", Title: "a part without size", Text: "What surrounds a part leaves it less than a millimetre in one direction. The message gives the sum that its size comes from; the figure in it that is larger than you thought is the one to change."},
	{Code: "E313", Title: "a case with nothing inside", Text: "Sides, top, bottom and back together are as large as the case. Outside sizes are of the finished case with its boards."},
	{Code: "E314", Title: "no drawer fits", Text: "The opening leaves less than 1/2 in inside the drawer, in its height, width or depth, once gaps, sides, bottom and the room behind are taken away."},
	{Code: "E315", Title: "a frame without a panel", Text: "Stiles or rails are so wide that less than an inch is left between them. A door that small is better made of one board."},
	{Code: "E316", Title: "a shelf above its opening", Text: "The height given for a shelf, from the floor of its opening to its underside, and its thickness do not fit below the opening's ceiling."},
	{Code: "E317", Title: "too many shelves", Text: "The shelves together are as thick as the opening is high, so nothing is left between them."},
	{Code: "E318", Title: "nothing to stand on", Text: "Inset and setback leave a stand less than three legs' width. A stand is measured from the outside of its case."},
	{Code: "E319", Title: "top rails that overlap", Text: "A front and a back rail take the place of a top. Wider than half the inside depth they would lie over each other; a whole top is the better answer then."},
	{Code: "E320", Title: "air outside the formula", Text: "Moisture of wood is worked out from relative humidity and temperature by the Wood Handbook's equation 4-5. It covers 0 to just under 100 % and ordinary temperatures; a room given outside that is a slip."},
	{Code: "E321", Title: "a wood nobody knows", Text: "The name is in neither the species tables nor the text. Everyday names such as cherry, ash or white oak are known as well as the full ones. Any other wood can be defined with a species block: its shrinkage and specific gravity are enough."},
	{Code: "E322", Title: "a species that cannot be", Text: "The figures given for a species of one's own are outside what any wood has. Shrinkage is in percent from green to oven-dry, specific gravity of oven-dry wood at its volume at 12 %."},
	{Code: "E323", Title: "movement cannot be reckoned", Text: "A wood lacks the figure that its movement is worked out from, or its moisture is given as one that no wood has."},
	{Code: "E324", Title: "an overlay front on a bow", Text: "A front that laps the case would have to be bent round the edges behind it. On a bowed case fronts are set into their openings and sawn to the curve."},
	{Code: "E325", Title: "a taper that leaves no foot", Text: "Legs are tapered on their inner faces, those in the middle of a row on two that face each other. Twice the taper must stay under the leg's thickness."},
	{Code: "E330", Title: "a curve that cannot be drawn", Text: "Chord and rise do not make the curve asked for. An arc can rise by less than half its chord; a bent batten has the same limit here."},
	{Code: "E331", Title: "a curve that does not span", Text: "What follows a curve from end to end must be as wide as chord and flats together, else no two parts would agree where the curve is. A loose top may span its case or itself."},
	{Code: "E340", Title: "no such part", Text: "A path names no part. Paths run from the case inwards by the names in the text; rows and columns without a name have their number, from the top and from the left. A star stands for any one name."},
	{Code: "E341", Title: "one part in two sets", Text: "A part can be matched in one set only, because it is cut from one place of one board."},
	{Code: "E342", Title: "nothing there to measure", Text: "A measured block names neither an opening nor a part."},
}
