package joinery

import (
	"fmt"
)

// Check reports what would make the feature useless to whoever cuts it out of
// the part: too few points, an outline that runs the wrong way, ends in the
// wrong order, or nothing of it inside the part. Features made by this package
// pass for the part they were made for.
func (f Feature) Check(b Box) error {
	switch {
	case f.Axis > T:
		return fmt.Errorf("%s: axis %d is none of L, W, T", f.Kind, f.Axis)
	case len(f.Outline) < 3:
		return fmt.Errorf("%s: outline of %d points", f.Kind, len(f.Outline))
	case f.From >= f.To:
		return fmt.Errorf("%s: runs from %d to %d", f.Kind, f.From, f.To)
	case turning(f.Outline) <= 0:
		return fmt.Errorf("%s: outline is not counter-clockwise seen against its axis", f.Kind)
	case f.volumeIn(b) <= 0:
		return fmt.Errorf("%s: removes nothing from the part", f.Kind)
	}
	return nil
}
