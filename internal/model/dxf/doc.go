// Package dxf writes drawings for cutters and CAD programs: lines, arcs and
// words on named layers go in, the bytes of a DXF file come out.
//
//	d := dxf.Drawing{Name: "Side template", Layers: dxf.Layers(), Items: []dxf.Item{
//		dxf.Polyline{Layer: dxf.Cut, Closed: true, Corners: corners},
//		dxf.Text{Layer: dxf.Words, At: dxf.Point{X: 20, Y: 20}, Height: 5, Text: "B1 side 26 3/4"},
//	}}
//	out, err := dxf.R2000(d) // for everything current
//	out, err := dxf.R12(d)   // for old cutters and careful ones
//
// It promises true size: the file says which unit it is in, and the numbers
// agree. Text is plain ASCII, since readers do not agree about anything else
// (see [ASCII]). Input that would make a broken file is a *model.Fault. The
// same drawing gives the same bytes.
//
// It does not choose what is drawn, and it is not for paper: package sheet
// draws with pens, dimensions and title blocks. Solids go out by package model.
//
// Units and frame: float64 millimetres whatever the unit of the file, x to the
// right, y UP, angles in radians counter-clockwise from x.
package dxf
