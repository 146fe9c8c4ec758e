package design

// Explanation tells at length what a code means.
type Explanation struct {
	Code  string
	Title string
	Text  string // one paragraph
}

// Explanations are all codes this package reports, in order. E1.. is about the
// text itself, E2.. about what it says, N2.. are notes. Codes keep their
// meaning for good; a code that is no longer used is not given out again.
func Explanations() []Explanation { return append([]Explanation(nil), explanations...) }

var explanations = []Explanation{
	{"E101", "not UTF-8", "The text holds bytes that are no UTF-8, the one encoding the language has. Older editors, and some that come with an operating system, save in another; look for “encoding” where the file is saved."},
	{"E102", "too large", "A text, or all texts of a commission together, are larger than anybody writes: more than 16 million bytes, or 2 million besides blanks and remarks, 200 000 lines, 150 000 words and signs, 10 000 blocks or 2 000 named sizes. Most often it is the wrong file. A real job of that size is several commissions."},
	{"E103", "nested too deep", "Brackets stand more than 40 deep within each other, or that many minus signs in a row. Rows within columns within rows need a handful. Look for a bracket that was typed again and again."},
	{"E104", "too long", "One line or one entry is longer than a person writes, more than 4 000 bytes or 4 000 words and signs. A quote or a bracket was left open, or this is not a commission at all."},
	{"E105", "a character without meaning", "A character stands where the language has no use for it. Typeset quotes, dashes and blanks come with text pasted from a letter or a page; retype them. A remark begins with #."},
	{"E106", "a bracket is not closed", "A bracket or a long remark is opened and never closed. The place reported is the opening most likely to lack its end, found by how the lines are indented; if it looks right, look at the blocks below it."},
	{"E107", "a bracket closes nothing", "There is one closing bracket more than there are opening ones. Take it away, or find the opening one that is missing above."},
	{"E108", "text is not closed", "A text begins with a quote and its line ends before a second one. Text stands on one line between two quotes. Text of several lines begins with <<END and ends with END on a line of its own."},
	{"E109", "a size with its unit", "A bare number is in the commission's unit and has no mark: 23 1/2. A size that brings its own unit stands in quotes, where every usual way of writing works: \"23.5 in\", \"597 mm\", \"1 ft 11 in\". Fractions are written with a slash, not as one character, and a decimal begins with a digit: 0.5."},
	{"E110", "a hyphen in a size", "Makers write 23-1/2 for a size, and in a sum it means 23 less 1/2. So that neither is taken for the other, the size is written 23 1/2, and the subtraction with blanks: 23 - 1/2."},
	{"E111", "a fraction that cannot be", "A whole number is followed by a fraction that is one or more, such as 5 11/8, by one with 0 under the line, or a decimal by a fraction. One of the figures slipped."},
	{"E112", "two numbers side by side", "Two numbers follow each other with nothing between. A fraction has a slash (20 1/2), a list has commas ([12, 20]), a sum a sign."},
	{"E113", "text that fills itself in", "Between quotes the signs ${ and %{ would fill in other values. This language has no use for that: text is text, and sizes are written without quotes."},
	{"E114", "not an entry and not a block", "The language has two shapes: an entry, name = value, and a block, kind \"name\" { … }. What stands here is neither."},
	{"E115", "too much on one line", "A block written on one line holds one entry and nothing else: back { style = \"panel\" }. For anything more, start a new line after the { and put the } on a line of its own."},
	{"E116", "something follows", "Each entry and each block ends with its line; commas and a second entry do not follow. If this is a size, look at how it is written: 20 1/2, or \"520 mm\" in quotes."},
	{"E117", "a backslash in text", "Inside quotes a backslash begins one of \\\" \\\\ \\n \\r \\t and \\u with four digits. A backslash itself is written twice."},
	{"E118", "too many problems", "After 200 problems no more are listed. Mend the first ones: often many follow from one."},
	{"E119", "too many digits", "A number has more digits than any size. Nanometres, the finest the program keeps, need a dozen."},

	{"E201", "a block that cannot stand here", "The kind of block is unknown, or belongs somewhere else. The message says where it belongs, or what can stand here."},
	{"E202", "an entry that cannot stand here", "The block has no entry of that name. The message lists those it can still have; a close one is proposed."},
	{"E203", "set twice", "The same entry stands twice in one block, or a named size twice in the commission. Only one can hold; keep the right one."},
	{"E204", "a block too many", "This kind of block stands once in the block around it, or once in the commission, and stands there twice. Put everything into one."},
	{"E205", "something is missing", "The block lacks an entry it cannot do without. The message says what it is for and how it is written."},
	{"E206", "a name behind the kind", "Some blocks have a name in quotes behind their kind, case \"cabinet\" {, some have none, and none has two."},
	{"E207", "a name given twice", "Two things of one kind have the same name, so nothing could point at one of them. Openings without a name are called by their number, which counts as a name too."},
	{"E208", "a name with a strange character", "Names become part of paths such as cabinet.upper.keys and of part marks. They are letters, digits, blanks, - and _, neither empty nor long, and do not begin or end with a blank."},
	{"E209", "the wrong kind of value", "The entry takes another kind of value: a length where text stands, a yes or no where a number stands. Text always stands in quotes, sizes in the commission's unit never do."},
	{"E210", "not one of the choices", "The entry takes one of a few words, and this is none of them."},
	{"E211", "an unknown name", "A word without quotes is the name of a size in a sizes block, and there is none of that name. A minus between two names needs blanks round it: inset - side. Yes and no are written true and false."},
	{"E212", "sizes in a circle", "A named size is made from others, and in the end from itself, so none of them has a value. Give one of them a size that does not need the others."},
	{"E213", "a sum that cannot be worked out", "Something is divided by nothing, a length is multiplied by a length, a yes or no stands in a sum, or a number grows beyond all measure."},
	{"E214", "more than the language has", "The syntax comes from a larger language. Here a value is a size, a number, text in quotes, true or false, a list in square brackets, or a sum of these with + - * / and the functions min, max, mm and inch."},
	{"E215", "a function", "There are four functions: min and max choose among sizes, mm(12) and inch(12) give a bare number another unit than the commission's."},
	{"E216", "a size beyond reason", "The size is 0 or negative where that makes no sense, thinner than 0.1 mm, or larger than 20 m. Often the unit slipped: millimetres typed into a commission in inches."},
	{"E217", "a number beyond its bounds", "A count is not whole, a percentage is above 100, legs do not come in pairs: the number lies outside what the entry can mean."},
	{"E218", "a quantity that cannot be read", "The text in quotes is no length, slope, angle or temperature. Lengths: \"20 1/2 in\", \"520 mm\", \"1 ft 8 in\"; slopes: \"1:8\"; angles: \"45 deg\"; temperatures: \"21 C\", \"70 F\"."},
	{"E219", "nothing has this name", "An entry cites a curve, case, stand or piece of hardware by name, and there is no block of that name."},
	{"E220", "standing in a circle", "Cases, tops and stands say that they stand on each other, all the way round. One of them stands on the floor."},
	{"E221", "a board not between openings", "A divider, rail or partition stands between two rows or columns, in the order of the text, one between each two. This one is first, last, doubled, or of the wrong kind: dividers and rails lie between rows, partitions stand between columns."},
	{"E222", "an opening in two minds", "A space is divided into rows, or into columns, or filled; one of the three. A bank is all the rows of its space, and grows by a step or a ratio, not both."},
	{"E224", "two things that contradict each other", "Two entries cannot both hold: a case that hangs and stands, a cleat on a case that does not hang, a stand under one case and named by another, a dry season damper than the damp one."},
	{"E225", "the commission block", "Every commission has exactly one block commission, in one of its texts."},

	{"N201", "a size that nothing uses", "A named size is not used anywhere. It does no harm, and is often what is left of a slip: the name typed somewhere else may be another one."},
}
