package wood

import (
	"fmt"

	"casewright/internal/measure"
)

// Status says how well a figure is founded. The zero Status is [Missing].
type Status uint8

const (
	// Missing means that the tables have no such figure; its value is no zero.
	Missing Status = iota
	// Read was read in the document named as the source.
	Read
	// Memory is believed to stand in the source named, but was not looked up.
	Memory
	// Calculated follows by a named equation from figures that were read.
	Calculated
	// CalculatedFromMemory follows from at least one figure from memory.
	CalculatedFromMemory
	// Borrowed is the read figure of a near kin, for a trade mix of species.
	Borrowed
	// Given stands in the design text.
	Given
)

var statusWords = [...]string{"missing", "read", "memory", "calculated", "calculated-memory", "borrowed", "given"}

// String is the one word for the status, as the tables under data write it.
func (s Status) String() string {
	if int(s) < len(statusWords) {
		return statusWords[s]
	}
	return "unknown"
}

// FromMemory reports whether a figure from memory stands behind it.
func (s Status) FromMemory() bool { return s == Memory || s == CalculatedFromMemory }

func parseStatus(word string) (Status, error) {
	for i, w := range statusWords {
		if w == word {
			return Status(i), nil
		}
	}
	return Missing, fmt.Errorf("no status %q", word)
}

// calculated is the status of what follows from figures of these statuses.
func calculated(from ...Status) Status {
	out := Calculated
	for _, s := range from {
		switch {
		case s == Missing:
			return Missing
		case s.FromMemory():
			out = CalculatedFromMemory
		}
	}
	return out
}

// Figure is a published number with the one who says so. The zero Figure is
// missing; read Value only when Known.
type Figure[T ~float64] struct {
	Value  T
	Source string // title, edition and table
	Status Status
}

// Known reports whether there is a value at all.
func (f Figure[T]) Known() bool { return f.Status != Missing }

// Get is the value, and whether there is one.
func (f Figure[T]) Get() (T, bool) { return f.Value, f.Known() }

// Coefficient is the share of a size that moves for one percent of moisture,
// based on the size at 10 %: 0.00248 is 2.48 thousandths.
type Coefficient float64

// Shrinkage is the shrinkage from green to oven-dry in percent of the green size.
type Shrinkage float64

// Gravity is a specific gravity: oven-dry mass over the mass of as much water
// as fills the volume at the moisture content stated with it.
type Gravity float64

// Ratio is a plain ratio of two like quantities.
type Ratio float64

// Force is a force in newtons.
type Force float64

// The units the tables print, in ours. One pound-force is 4.4482216152605 N
// exactly and one inch 25.4 mm exactly, hence the psi.
const (
	PoundForce Force          = 4.4482216152605
	PSI        measure.Stress = 4.4482216152605 / (0.0254 * 0.0254)
)

// MissingError is a question that needs a figure the tables do not have.
type MissingError struct {
	Species string // name of the wood
	What    string // the figure, in words
}

// Error says which figure is wanted and the way out.
func (e *MissingError) Error() string {
	return fmt.Sprintf("the tables have no %s for %s; define the wood in the text with a figure of your own", e.What, e.Species)
}

// RangeError is a value outside what an equation or the material allows.
type RangeError struct {
	What      string  // the quantity, in words
	Value     float64 // as given, in Unit
	Low, High float64 // the limits, in Unit
	Below     bool    // High itself is too much
	Unit      string
}

// Error names the value and its limits.
func (e *RangeError) Error() string {
	if e.Below {
		return fmt.Sprintf("%s is %.4g %s; it must be from %.4g to below %.4g %s", e.What, e.Value, e.Unit, e.Low, e.High, e.Unit)
	}
	return fmt.Sprintf("%s is %.4g %s; it must be between %.4g and %.4g %s", e.What, e.Value, e.Unit, e.Low, e.High, e.Unit)
}

// within reports whether v lies in the closed range; NaN never does.
func within(v, low, high float64) bool { return v >= low && v <= high }

// wettest is more water than any wood holds: balsa, at a sixth of the weight
// of water, could take up some 500 % and no more.
const wettest = 600

func checkMoisture(mc measure.MoistureContent) error {
	if within(float64(mc), 0, wettest) {
		return nil
	}
	return &RangeError{What: "the moisture content", Value: float64(mc), High: wettest, Unit: "%"}
}
