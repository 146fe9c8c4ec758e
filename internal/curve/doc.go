// Package curve turns a chord, a rise and a kind into the planar line that
// furniture parts follow, such as the bowed front of a case.
//
// It promises that a [Curve] answers for every x without NaN and without
// panic, that it is symmetric about the middle of its bow, that a parallel
// curve ([Curve.Offset]) really lies at its distance and is refused where it
// would fold over itself, and that polylines and Béziers keep the tolerance
// asked for. A Curve never changes once made and may be shared.
//
// It is not about wood: how far a species bends is for package check, which
// has [BendStrain] to ask with. It draws nothing (package sheet) and does not
// decide which part follows which stretch (package piece).
//
// Units and frame: float64 millimetres and radians inside and for sampled
// points; sizes go in and out as measure.Length, rounded once to the
// nanometre. x runs along the chord from the left end of the left flat (0) to
// the right end of the right flat ([Curve.Span]); y is the rise outward, 0 on
// the flats and at the ends of the chord. Angles are counter-clockwise, so the
// left half of a bow climbs with a positive angle. Bend is the curvature,
// 1/radius, and is positive where the line bulges outward.
//
// Flats meet the bow at a corner, not smoothly; at the corner itself the
// curve answers for the bow's side. Beyond its two ends a curve runs on, so
// that an overhang can be laid out: along a flat where there is one, else an
// arc goes on round its own circle for a while and a batten goes on straight,
// as an unloaded batten does.
//
// A kind is one file and one row in [kinds]; arc.go is the shortest to copy.
// ELASTICA.md beside this file derives the bent batten.
package curve
