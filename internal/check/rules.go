package check

import (
	"slices"
	"strings"
)

// Rule explains one code that findings carry, for whoever asks what it means.
type Rule struct {
	Code     string
	Title    string
	Explains string // what is reckoned, by which formula, and who says so
}

// Rules explains every code that [Run] may give, in the order in which findings
// are read. The slice is the caller's.
func Rules() []Rule { return slices.Concat(pieceRules, jointRules) }

func known(code string) bool {
	return slices.ContainsFunc(Rules(), func(r Rule) bool { return r.Code == code })
}

// order is what is read first among findings of one severity: what hurts
// people, what splits wood, what has to be made again, what merely looks bad.
var order = [...]string{
	"solid.", "hang.", "machine.short", "machine.", "movement.crossgrain", "movement.panel", "stock.", "fit.",
	"case.", "measured.", "tenon.", "dado.", "groove.", "rabbet.", "bevel.", "boards.", "dovetail.",
	"site.", "moisture.", "set.", "drawer.", "movement.slots", "accept.",
}

func rank(code string) int {
	for i, p := range order {
		if strings.HasPrefix(code, p) {
			return i
		}
	}
	return len(order)
}

// pieceRules are the codes of this package's own rules.
var pieceRules = []Rule{
	{"solid.clash", "two parts in one place", "Every part is worked out as an exact solid with its joints cut, and every pair of parts that come near each other is held together. They may share no more than a millionth of the smaller one's volume, for slopes and curves are rounded to whole nanometres. Contact, face against face, is no clash: that is what joints are for."},
	{"solid.open", "a joint with a gap", "Every joint that is pushed home (dovetails, dadoes, tenons, corner rabbets) is pushed a twentieth of a millimetre further; if no wood is in the way it stands open. The rear tenons of runners and kickers are meant to."},
	{"case.huge", "cases larger than rooms", "A case more than 12 feet in one direction does not go up a stair or through a door. Far more often a size was meant in millimetres and read in inches. The figure is common practice, no source."},
	{"measured.far", "an opening far from its plan", "A measured opening overrides the plan from there on. One that differs by more than 3/16 in was likely read or written wrongly, or its neighbours differ too and the text should say so. The figure is common practice, no source."},
	{"solid.loose", "a joint that does not close", "The two parts of a joint must touch face to face somewhere. Where they do not, a tongue stands away from its housing or a tenon from its mortise, and the piece could not be put together as drawn."},
	{"hang.studs", "A hung case needs two studs",
		"Counts the studs that the wall cleat can reach, less 1 in at either end, wherever on the free wall the case may hang. Fewer than two is a warning; " +
			"no studs in the text is a note. Trade articles: screws into every stud, at least two. It counts and proves nothing: what a wall carries is for local building practice."},
	{"machine.short", "Too short for the machines",
		"A part shorter than the shop's shortest safe length (machine manuals: 7 to 14 in, mostly 12, so that a board reaches both feed rollers) is kept in a longer blank, " +
			"alone or joined with its like, until the last cut: blank = lengths + kerfs + 1 in. A blank that is itself too short is a stop."},
	{"machine.thin", "Too thin for the planer",
		"A part thinner than the shop's setting (manuals: 3/16 to 1/2 in) wants a carrier board, the hand plane or a drum sander. Under 3/16, which no manual allows, it is a warning."},
	{"machine.narrow", "Too narrow for the planer",
		"A part narrower than 3/4 in (one planer's manual) tips in the planer. Plane it in a wide blank and rip it off last."},
	{"movement.crossgrain", "Glued across the grain",
		"Where two parts are glued all along, each wants to change by size × coefficient × points of moisture (Wood Handbook, FPL-GTR-190, Eq. 13-2 and 13-3) from the day they are glued to either end of the season: " +
			"by its width or thickness coefficient across the grain, by next to nothing along it. Differing by more than 1/16 in over what they share is a warning, by more than 1/8 a stop. The limits are common practice, no source; " +
			"Building Furniture (Fine Woodworking, 2007), p. 64, glues only the front 3 to 4 in of a frame across a solid side."},
	{"movement.panel", "Room for panels, backs and bottoms",
		"A panel, back or drawer bottom grows by width × coefficient × points of moisture to the damp season (Wood Handbook, FPL-GTR-190, Eq. 13-2 and 13-3). More than its room bursts the frame: a stop; behind a drawer it only keeps it from closing. " +
			"At the driest, tongue − half the shrinkage must leave 1/8 in of a panel in its groove (derived from a trade forum's 3/8 grooves with the panel 1/4 in), and of lapped boards lap − gap − shrinkage must leave 1/16 (common practice, no source)."},
	{"stock.thin", "Stock thinner than the joint allows",
		"A housing may take half of its board (trade forum answers: a quarter to a third, never over half), a groove half (common practice, no source), a rabbet two thirds (Building Furniture, Fine Woodworking, 2007, p. 79). " +
			"Two housings back to back may take half between them: 3/16 each in 3/4. Less than 1/16 in left is a stop. Beside a panel's groove 1/8 must stay, below a drawer's groove 1/4 (common practice, no source)."},
	{"fit.drawer", "Drawers through the year",
		"A drawer's height swells by height × coefficient × points of moisture (Wood Handbook, Eq. 13-2 and 13-3), its sides swell in thickness; the opening is held by long grain and stays. Swelling more than the gap is a stop. " +
			"In the dry season gap + shrinkage should stay within 3/16 in above, and 1/8 at each side (common practice, no source)."},
	{"fit.door", "Doors through the year",
		"An inset door grows by the width of its stiles only, for rails run along it: stiles × coefficient × points of moisture, for a pair those of both doors. More than the gap at the closing side is a stop; over 3/16 in when dry is a warning (common practice, no source). " +
			"Where nothing moves, at the hinges, above and below, less than 1/64 in is a stop: the door binds all year (common practice, no source; 1/16 is usual for furniture)."},
	{"site.projection", "Standing out from the wall", "The greatest reach of all parts from the back, knobs not counted, against projection in site."},
	{"site.wall", "Wider than the free wall", "The width of the whole piece against the free wall in site."},
	{"site.niche", "Fitting the niche", "Each assembly against the narrowest width of the niche between its lower and upper edge, taken as straight between the heights measured; the whole against the lower end of the ceiling."},
	{"site.passage", "Getting it in", "The sizes of each case, stand and top, least first, against those of each passage, least first. Only straight carrying is reckoned: tilting may do more."},
	{"moisture.today", "The wood as it is today",
		"Furniture wood is glued at 6 to 8 % (Wood Handbook FPL-GTR-113, 1999, ch. 9, from memory; FPL-GTR-190, p. 13-13) and made at 10 % or less (ANSI/KCMA A161.1, 2012, 2.8). Over 10 % is a warning; outside 6 to 8, or more than 2 points from what the shop's air brings it to (Wood Handbook Eq. 4-5), a note."},
	{"moisture.apart", "Glued at unlike moisture",
		"Two woods of one glued joint more than 2 points apart (trade magazine column, Wengert, for edge-glued strips; Wood Handbook p. 13-5 allows 5 in laminations)."},
	{"set.match", "Matched sets that cannot match", "The parts of a matched set come out of one board: one wood, and for runs, leaves and slips one thickness."},
	{"drawer.wide-bottom", "Thin bottoms in wide drawers",
		"A solid bottom over 72 times its thickness from side to side: 18 in of 1/4, 27 of 3/8. Common practice, no source; Joyce gives wide drawers a muntin of about 2 × 5/8 and tells no width."},
	{"movement.slots", "What must slide where it is screwed",
		"A stand or loose top and the case it is fixed to, over the depth they share: the difference of their movements from the driest to the dampest season. Over 1/32 in, screws behind the front edge need slots that much longer than they are thick (limit: common practice, no source)."},
	{"accept.unused", "An accept that accepts nothing", "The text lets a finding stand that is not there: it is gone, or its code or place is misspelt."},
}

const (
	fromJoint = "Reckoned when the joint is laid out. "
	shapes    = fromJoint + "The sizes do not make a joint; nothing can be cut from them."
)

// jointRules are the codes that joints give themselves.
var jointRules = []Rule{
	{"tenon.part", "A part without a size", shapes},
	{"tenon.seat", "A rail along the face it should enter", shapes},
	{"tenon.off", "A tenon that misses its part", shapes},
	{"tenon.size", "A size that is none", shapes},
	{"tenon.long", "Tenon longer than its part is deep", shapes},
	{"tenon.rail", "Rail shorter than its tenon", shapes},
	{"tenon.thick", "Tenon as thick as its rail", fromJoint + "A third of the rail is usual (Noyes, Handwork in Wood, ch. 7)."},
	{"tenon.wide", "Nothing left of the tenon", fromJoint + "Half the rail, less the groove, is the tenon; the rest is haunch (Noyes, ch. 7)."},
	{"tenon.haunch", "Haunch as long as the tenon", shapes},
	{"tenon.deep", "Thin wall behind a blind mortise", fromJoint + "A blind mortise may take seven eighths of the stile (a period cabinet text)."},
	{"tenon.short", "Short tenon", fromJoint + "Two thirds of the stile is usual: common practice, no source."},
	{"tenon.thin-cheeks", "Little wood at the cheeks", fromJoint + "A third of the thickness is usual (Noyes, ch. 7); over half is a warning."},
	{"dado.part", "A part without a size", shapes},
	{"dado.along", "A housing that cannot run there", shapes},
	{"dado.depth", "A housing without depth, or right through", shapes},
	{"dado.width", "A housing beside its board", shapes},
	{"dado.stops", "A housing that stops before it starts", shapes},
	{"dado.fit", "A board that does not fit its housing", shapes},
	{"dado.short", "A board shorter than its housing is deep", shapes},
	{"dado.notch", "A housing that ends before its board begins", shapes},
	{"groove.part", "A part without a size", shapes},
	{"groove.along", "A groove that cannot run there", shapes},
	{"groove.depth", "A groove without depth, or right through", shapes},
	{"groove.width", "A groove beside its part", shapes},
	{"groove.stops", "A groove that stops before it starts", shapes},
	{"rabbet.part", "A part without a size", shapes},
	{"rabbet.faces", "A rabbet between faces that do not meet", shapes},
	{"rabbet.along", "A rabbet that cannot run there", shapes},
	{"rabbet.depth", "A rabbet without depth, or right through", shapes},
	{"rabbet.width", "A rabbet beside its part", shapes},
	{"rabbet.stops", "A rabbet that stops before it starts", shapes},
	{"bevel.part", "A part without a size", shapes},
	{"bevel.size", "A bevel larger than its edge", shapes},
	{"bevel.stops", "A bevel that stops before it starts", shapes},
	{"boards.part", "A part without a size", shapes},
	{"boards.size", "A size below zero", shapes},
	{"boards.count", "No number of boards", shapes},
	{"boards.narrow", "Boards no wider than their laps", shapes},
	{"boards.open", "Gaps as wide as the laps", shapes},
	{"boards.widest", "Laps as wide as the boards", shapes},
	{"boards.wide", "A board wider than wished for", fromJoint + "4 in unless the text asks for a number of boards: common practice, no source."},
	{"dovetail.part", "A part without a size", shapes},
	{"dovetail.size", "A size that is none", shapes},
	{"dovetail.limits", "A tool that is none", shapes},
	{"dovetail.lap", "A lap that leaves no tails", shapes},
	{"dovetail.tails", "No number of tails", shapes},
	{"dovetail.no-room", "No room for the tails", shapes},
	{"dovetail.too-wide", "A row wider than its board", shapes},
	{"dovetail.stock", "Laid out for other stock", shapes},
	{"dovetail.short", "A board shorter than its joint is deep", shapes},
	{"dovetail.run", "A rabbet or groove outside the corner", shapes},
	{"dovetail.run-depth", "A rabbet or groove deeper than its board", shapes},
	{"dovetail.run-lap", "A rabbet deeper than the tails are long", shapes},
	{"dovetail.slope", "A slope that is none", shapes},
	{"dovetail.coarse", "Slope too coarse", fromJoint + "Coarser than 1:5 the corners of the tails are short grain and break (Joyce). Slope 1:n leans by atan(1/n)."},
	{"dovetail.fine", "Slope too fine", fromJoint + "Finer than 1:8 the tails hardly hold (Joyce)."},
	{"dovetail.kerf", "Pins narrower than the saw", fromJoint + "The narrow end of a pin must be wider than the kerf of the dovetail saw."},
	{"dovetail.chisel", "Pins narrower than the chisel", fromJoint + "The wide end of a socket, pin at the tip + 2 × tail length / n, must take the narrowest chisel of the shop."},
	{"dovetail.half-pin", "A fragile end pin", fromJoint + "A half pin under 3/16 in at the base, rabbets taken off, splits off easily (least width: common practice, no source; Building Furniture, Fine Woodworking, 2007: at least as wide as a full pin)."},
	{"dovetail.half-pin-slim", "Half pins slimmer than full ones", fromJoint + "Half pins are made at least as wide as a full pin at the wide end (Building Furniture, Fine Woodworking, 2007)."},
	{"dovetail.wide-tail", "A wide tail", fromJoint + "Tails stay within 1-3/4 in (Noyes, ch. 7)."},
	{"dovetail.ratio", "Pins thin beside the tails", fromJoint + "Tail to pin is 2-1/2 to 1 on average (Joyce) and up to 4 to 1 for looks (Noyes)."},
	{"dovetail.thin-lap", "A thin lap", fromJoint + "Under 3/32 in a drawer's lap breaks easily (Building Furniture, Fine Woodworking, 2007, p. 84)."},
	{"dovetail.short-tail", "Short tails", fromJoint + "Tails are half to two thirds of the board they enter (Building Furniture, Fine Woodworking, 2007, p. 79)."},
	{"dovetail.rabbet-lip", "Thin end pin outside a rabbet", fromJoint + "What a rabbet leaves of an end pin is held to 3/32 in, as a lap is (Building Furniture, Fine Woodworking, 2007, p. 84)."},
	{"dovetail.rabbet-tail", "A rabbet through a tail", fromJoint + "A rabbet that runs out through a corner must stay within the end pin, or a hole shows. The layout that hides it is told beside it."},
	{"dovetail.groove-pin", "A groove through a pin", fromJoint + "A groove runs out within a tail, where it is hidden (Noyes, Joyce). The layout that hides it is told beside it."},
	{"dovetail.groove-shows", "A groove that shows at a through joint", fromJoint + "A groove through a tail of a through joint shows at the tail's end: stop it, or fill it."},
}
