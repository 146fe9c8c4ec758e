// Package joinery turns the sizes of two parts and what they are asked to do
// into a joint: its proportions and the features (sockets, tenons, grooves)
// each side gets.
//
// It knows nothing of where a part stands in a piece; package piece places
// parts and asks for joints. All sizes are [measure.Length], all positions in
// the frame of the part that gets the feature (see [Feature]).
package joinery
