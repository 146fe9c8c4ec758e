package view

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"casewright/internal/sheet"
)

// TestPictures writes the test scenes as PDF, one a page, into the folder named
// by VIEW_PICTURES, for looking at.
func TestPictures(t *testing.T) {
	dir := os.Getenv("VIEW_PICTURES")
	if dir == "" {
		t.Skip("set VIEW_PICTURES to a folder to look at the test scenes")
	}
	room := Vec3{1500, 450, 800}
	eye, err := Standing(Vec3{2600, -2300, 0}, 1600, room.times(0.5))
	if err != nil {
		t.Fatal(err)
	}
	joint := dovetail{width: 120, thickness: 18, long: 160, tails: 3, slope: 1.0 / 7}
	corner := []Body{joint.tailBoard(1), joint.pinBoard(2)}
	apart := []Body{joint.tailBoard(1).Moved(Vec3{0, 0, 60}), joint.pinBoard(2)}
	lines := Options{Hidden: true}
	shaded := Options{Fills: true}
	both := Options{Fills: true, Hidden: true}
	cut := Plane{At: Vec3{0, 225, 0}, Normal: Vec3{0, -1, 0}}
	_, half := Cut(sideboard(), cut)
	var doc sheet.Doc
	for _, p := range []struct {
		bodies []Body
		cam    Camera
		opts   Options
	}{
		{corner, Isometric(Left), both},
		{apart, Isometric(Left), both},
		{corner, From(Front), lines},
		{corner, From(Left), lines},
		{corner, From(Top), lines},
		{sideboard(), eye, shaded},
		{sideboard(), Isometric(Right), both},
		{sideboard(), From(Front), lines},
		{sideboard(), From(Right), both},
		{sideboard(), From(Top), both},
		{half, From(Front), both},
		{half, Isometric(Left), shaded},
	} {
		doc.Pages = append(doc.Pages, page(Project(p.bodies, p.cam, p.opts)))
	}
	pdf, err := sheet.PDF(doc)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "view.pdf"), pdf, 0o644); err != nil {
		t.Fatal(err)
	}
}

// page fits a drawing on a sheet. The light comes from the upper left, behind
// the eye.
func page(d Drawing) sheet.Page {
	paper := sheet.Letter.Landscape()
	w, h := d.Bounds.Max.X-d.Bounds.Min.X, d.Bounds.Max.Y-d.Bounds.Min.Y
	k := math.Min((paper.W-30)/w, (paper.H-30)/h)
	at := func(p Point2) sheet.Point {
		return sheet.Pt(15+k*(p.X-d.Bounds.Min.X), paper.H-15-k*(p.Y-d.Bounds.Min.Y))
	}
	ring := func(r []Point2) (out []sheet.Point) {
		for _, p := range r {
			out = append(out, at(p))
		}
		return out
	}
	page := sheet.Page{Paper: paper}
	light, _ := Vec3{-0.4, -0.6, 1}.unit()
	for _, f := range d.Fills {
		shade := sheet.Shade(4 + 30*(1-math.Max(0, f.Normal.dot(light))))
		poly := sheet.Polygon{Rings: [][]sheet.Point{ring(f.Outer)}, Fill: shade}
		for _, h := range f.Holes {
			poly.Rings = append(poly.Rings, ring(h))
		}
		page.Add(poly)
	}
	pens := map[Kind]float64{Outline: 0.35, Edge: 0.2, Joint: 0.13}
	for _, l := range d.Lines {
		pen := sheet.Pen{Width: pens[l.Kind]}
		if l.Hidden {
			pen = sheet.Pen{Width: 0.1, Stroke: sheet.Dashed, Ink: sheet.Mid}
		}
		page.Add(sheet.Line{A: at(l.A), B: at(l.B), Pen: pen})
	}
	return page
}
