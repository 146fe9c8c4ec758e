package wood

import (
	"slices"
	"sync"

	"casewright/internal/measure"
)

// Target is a moisture content to aim for in one use and region.
type Target struct {
	Use     string // "interior", "exterior", "furniture lumber", …
	Region  string
	Average Figure[measure.MoistureContent] // of the whole lot
	Low     Figure[measure.MoistureContent] // of single pieces
	High    Figure[measure.MoistureContent]
}

var targets = sync.OnceValue(func() []Target {
	var all []Target
	eachRow("targets.csv", targetsHead, func(r *row) {
		t := Target{Use: r.text(), Region: r.text()}
		average, averageStatus := r.text(), r.text()
		low, high, status, source := r.text(), r.text(), r.text(), r.text()
		t.Average = figure[measure.MoistureContent](r, average, 1, source, averageStatus)
		t.Low = figure[measure.MoistureContent](r, low, 1, source, status)
		t.High = figure[measure.MoistureContent](r, high, 1, source, status)
		all = append(all, t)
	})
	return all
})

// Targets is the table of moisture contents to aim for. The slice is the
// caller's.
func Targets() []Target { return slices.Clone(targets()) }
