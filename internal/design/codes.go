package design

import (
	"slices"

	"casewright/internal/diag"
)

// Explanations are all codes this package reports, in order. E1.. is about the
// text itself, E2.. about what it says, N2.. are notes. Codes keep their
// meaning for good; a code that is no longer used is not given out again.
func Explanations() []diag.Explanation { return slices.Clone(explanations) }

var explanations = []diag.Explanation{
	{Code: "E101", Title: "not UTF-8", Text: "The text holds bytes that are no UTF-8, the one encoding the language has. Older editors, and some that come with an operating system, save in another; look for “encoding” where the file is saved."},
	{Code: "E102", Title: "too large", Text: "A text, or all texts of a commission together, are larger than anybody writes: more than 16 million bytes, or 2 million besides blanks and remarks, 200 000 lines, 150 000 words and signs, 10 000 blocks or 2 000 named sizes. Most often it is the wrong file. A real job of that size is several commissions."},
	{Code: "E103", Title: "nested too deep", Text: "Brackets stand more than 40 deep within each other, or that many minus signs in a row. Rows within columns within rows need a handful. Look for a bracket that was typed again and again."},
	{Code: "E104", Title: "too long", Text: "One line or one entry is longer than a person writes, more than 4 000 bytes or 4 000 words and signs. A quote or a bracket was left open, or this is not a commission at all."},
	{Code: "E105", Title: "a character without meaning", Text: "A character stands where the language has no use for it. Typeset quotes, dashes and blanks come with text pasted from a letter or a page; retype them. A remark begins with #."},
	{Code: "E106", Title: "a bracket is not closed", Text: "A bracket or a long remark is opened and never closed. The place reported is the opening most likely to lack its end, found by how the lines are indented; if it looks right, look at the blocks below it."},
	{Code: "E107", Title: "a bracket closes nothing", Text: "There is one closing bracket more than there are opening ones. Take it away, or find the opening one that is missing above."},
	{Code: "E108", Title: "text is not closed", Text: "A text begins with a quote and its line ends before a second one. Text stands on one line between two quotes. Text of several lines begins with <<END and ends with END on a line of its own."},
	{Code: "E109", Title: "a size with its unit", Text: "A bare number is in the commission's unit, inches unless the block commission says units = \"mm\", and has no mark: 23 1/2. A size that brings its own unit stands in quotes, where every usual way of writing works: \"23.5 in\", \"597 mm\", \"1 ft 11 in\". Fractions are written with a slash, not as one character, and a decimal begins with a digit: 0.5."},
	{Code: "E110", Title: "a hyphen in a size", Text: "Makers write 23-1/2 for a size, and in a sum it means 23 less 1/2. So that neither is taken for the other, the size is written 23 1/2, and the subtraction with blanks: 23 - 1/2."},
	{Code: "E111", Title: "a fraction that cannot be", Text: "A whole number is followed by a fraction that is one or more, such as 5 11/8, by one with 0 under the line, or a decimal by a fraction. One of the figures slipped."},
	{Code: "E112", Title: "two numbers side by side", Text: "Two numbers follow each other with nothing between. A fraction has a slash (20 1/2), a list has commas ([12, 20]), a sum a sign."},
	{Code: "E113", Title: "text that fills itself in", Text: "Between quotes the signs ${ and %{ would fill in other values. This language has no use for that: text is text, and sizes are written without quotes."},
	{Code: "E114", Title: "not an entry and not a block", Text: "The language has two shapes: an entry, name = value, and a block, kind \"name\" { … }. What stands here is neither."},
	{Code: "E115", Title: "too much on one line", Text: "A block written on one line holds one entry and nothing else: back { style = \"panel\" }. For anything more, start a new line after the { and put the } on a line of its own."},
	{Code: "E116", Title: "something follows", Text: "Each entry and each block ends with its line; commas and a second entry do not follow. If this is a size, look at how it is written: 20 1/2, or \"520 mm\" in quotes."},
	{Code: "E117", Title: "a backslash in text", Text: "Inside quotes a backslash begins one of \\\" \\\\ \\n \\r \\t and \\u with four digits. A backslash itself is written twice."},
	{Code: "E118", Title: "too many problems", Text: "After 200 problems no more are listed. Mend the first ones: often many follow from one."},
	{Code: "E119", Title: "too many digits", Text: "A number has more digits than any size. Nanometres, the finest the program keeps, need a dozen."},
	{Code: "E120", Title: "a comma in a number", Text: "The decimal sign is a point: 32.5. A comma stands between the members of a list, [12, 20], and nowhere else; thousands are written without one, 1067."},

	{Code: "E201", Title: "a block that cannot stand here", Text: "The kind of block is unknown, or belongs somewhere else. The message says where it belongs, or what can stand here."},
	{Code: "E202", Title: "an entry that cannot stand here", Text: "The block has no entry of that name. The message lists those it can still have; a close one is proposed."},
	{Code: "E203", Title: "set twice", Text: "The same entry stands twice in one block, or a named size twice in the commission. Only one can hold; keep the right one."},
	{Code: "E204", Title: "a block too many", Text: "This kind of block stands once in the block around it, or once in the commission, and stands there twice. Put everything into one."},
	{Code: "E205", Title: "something is missing", Text: "The block lacks an entry it cannot do without. The message says what it is for and how it is written."},
	{Code: "E206", Title: "a name behind the kind", Text: "Some blocks have a name in quotes behind their kind, case \"cabinet\" {, some have none, and none has two."},
	{Code: "E207", Title: "a name given twice", Text: "Two things of one kind have the same name, so nothing could point at one of them. Openings without a name are called by their number, which counts as a name too."},
	{Code: "E208", Title: "a name with a strange character", Text: "Names become part of paths such as cabinet.upper.keys and of part marks. They are letters, digits, blanks, - and _, neither empty nor long, and do not begin or end with a blank."},
	{Code: "E209", Title: "the wrong kind of value", Text: "The entry takes another kind of value: a length where text stands, a yes or no where a number stands. Text always stands in quotes, sizes in the commission's unit never do."},
	{Code: "E210", Title: "not one of the choices", Text: "The entry takes one of a few words, and this is none of them."},
	{Code: "E211", Title: "an unknown name", Text: "A word without quotes is the name of a size in a sizes block, and there is none of that name. A minus between two names needs blanks round it: inset - side. Yes and no are written true and false."},
	{Code: "E212", Title: "sizes in a circle", Text: "A named size is made from others, and in the end from itself, so none of them has a value. Give one of them a size that does not need the others."},
	{Code: "E213", Title: "a sum that cannot be worked out", Text: "Something is divided by nothing, a length is multiplied by a length, a yes or no stands in a sum, or a number grows beyond all measure."},
	{Code: "E214", Title: "more than the language has", Text: "The syntax comes from a larger language. Here a value is a size, a number, text in quotes, true or false, a list in square brackets, or a sum of these with + - * / and the functions min, max, mm and inch."},
	{Code: "E215", Title: "a function", Text: "There are four functions: min and max choose among sizes, mm(12) and inch(12) give a bare number another unit than the commission's."},
	{Code: "E216", Title: "a size beyond reason", Text: "The size is 0 or negative where that makes no sense, thinner than 0.1 mm, or larger than 20 m. Often the unit slipped: millimetres typed into a commission in inches."},
	{Code: "E217", Title: "a number beyond its bounds", Text: "A count is not whole, a percentage is above 100, legs do not come in pairs: the number lies outside what the entry can mean."},
	{Code: "E218", Title: "a quantity that cannot be read", Text: "The text in quotes is no length, slope, angle or temperature. Lengths: \"20 1/2 in\", \"520 mm\", \"1 ft 8 in\"; slopes: \"1:8\"; angles: \"45 deg\"; temperatures: \"21 C\", \"70 F\"."},
	{Code: "E219", Title: "nothing has this name", Text: "An entry cites a curve, case, stand or piece of hardware by name, and there is no block of that name."},
	{Code: "E220", Title: "standing in a circle", Text: "Cases, tops and stands say that they stand on each other, all the way round. One of them stands on the floor."},
	{Code: "E221", Title: "a board not between openings", Text: "A divider, rail or partition stands between two rows or columns, in the order of the text, one between each two. This one is first, last, doubled, or of the wrong kind: dividers and rails lie between rows, partitions stand between columns."},
	{Code: "E222", Title: "an opening in two minds", Text: "A space is divided into rows, or into columns, or filled; one of the three. A bank is all the rows of its space, and grows by a step or a ratio, not both."},
	{Code: "E224", Title: "two things that contradict each other", Text: "Two entries cannot both hold: a case that hangs and stands, a cleat on a case that does not hang, a stand under one case and named by another, a dry season damper than the damp one."},
	{Code: "E225", Title: "the commission block", Text: "Every commission has exactly one block commission, in one of its texts."},

	{Code: "N201", Title: "a size that nothing uses", Text: "A named size is not used anywhere. It does no harm, and is often what is left of a slip: the name typed somewhere else may be another one."},
	{Code: "N202", Title: "a fraction no rule has", Text: "The figure under the line of a size is none that an inch rule is divided in: 2, 4, 8, 16, 32 or 64. The size holds as it stands; most often two figures were exchanged, 13/61 for 13/16. Shares such as 1/3 and 5/12 and decimal fractions such as 7/10 are let be, and so is what a size is multiplied or divided by."},
}
