package curve_test

import (
	"fmt"

	"casewright/internal/curve"
	"casewright/internal/measure"
)

// The front of a sideboard: radius and ordinates for the template.
func ExampleNew() {
	c, err := curve.New(curve.Spec{Kind: curve.Arc, Chord: 57 * measure.Inch, Rise: 5 * measure.Inch / 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	r, _ := c.Radius()
	fmt.Printf("radius %.1f in\n", r.Inches())
	table, _ := c.Ordinates(12 * measure.Inch)
	for _, s := range table {
		fmt.Printf("%6.1f %6.3f\n", s.FromCentre/25.4, s.Y/25.4)
	}
	// √(163.7² − x²) − 161.2: at 12 in 2.060, at 24 in 0.731.
	// Output:
	// radius 163.7 in
	//  -28.5  0.000
	//  -24.0  0.731
	//  -12.0  2.060
	//    0.0  2.500
	//   12.0  2.060
	//   24.0  0.731
	//   28.5  0.000
}
