// Package joinery turns the sizes of two parts and what they are asked to do
// into a joint: its proportions, the features (sockets, tenons, grooves) each
// side gets, and what stands against it.
//
//	ask                     get
//	DovetailSpec            DovetailLayout   tails and pins; features for both boards
//	HousingSpec             HousingLayout    dado in the host, notches in what enters
//	TenonSpec               TenonLayout      tenon with haunch, mortise
//	BoardingSpec            BoardingLayout   shiplapped or tongued boards
//	GrooveSpec, RabbetSpec, BevelSpec        features of one part
//
// It promises that the two sides of a joint mate to the nanometre, that sizes
// shared out add up to the size they fill, that every feature is a sound prism
// that removes wood from the part it was made for ([Feature.Check]), and that
// no request makes it panic: what cannot be cut comes back as a [Problem] that
// stops, with no features; what can but should not is cut as asked, with
// problems that warn. Every figure of the trade stands with its source in the
// problem or beside its constant.
//
// Left open, a size is chosen by the rule stated at its field or function. A
// zero field means open, never zero; where zero must be meant a flag says so.
//
// It knows nothing of where a part stands in a piece, nor of wood, seasons or
// the text behind a request. Package piece places parts and asks for joints,
// package wood says how much they move, package solid cuts features out of
// parts that overlap.
//
// Units and frame: sizes are [measure.Length]. Positions are in the frame of
// the part that gets the feature: corner at 0, 0, 0, L along the grain, W
// across the face, T through the thickness (see [Box] and [Feature]).
package joinery
