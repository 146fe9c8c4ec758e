package dxf

import (
	"fmt"
	"math"
	"strings"

	"casewright/internal/model"
)

// check finds the first thing that makes the drawing unfit for a file.
func (d Drawing) check() error {
	if len(d.Items) == 0 {
		return fault(model.Empty, "no item")
	}
	listed := map[string]bool{"0": true}
	for _, l := range d.Layers {
		if err := l.check(); err != nil {
			return err
		}
		if listed[l.Name] {
			return fault(model.BadTree, "layer "+l.Name+" stands twice")
		}
		listed[l.Name] = true
	}
	for i, it := range d.Items {
		err := it.check()
		if err == nil && !listed[it.layer()] {
			err = fault(model.BadIndex, fmt.Sprintf("layer %q is not listed", it.layer()))
		}
		if err != nil {
			f := *err.(*model.Fault)
			f.Node = fmt.Sprintf("item %d of %q", i, d.Name)
			return &f
		}
	}
	return nil
}

func fault(k model.Kind, detail string) error {
	return &model.Fault{Kind: k, Face: -1, Detail: detail}
}

// layerLetters is what R12 takes in a name.
const layerLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_"

func (l Layer) check() error {
	if l.Name == "" || len(l.Name) > 31 || strings.Trim(l.Name, layerLetters) != "" {
		return fault(model.NotText, fmt.Sprintf("layer name %q", l.Name))
	}
	if l.Color < 1 || l.Color > 255 || l.Line > DashDot {
		return fault(model.BadIndex, "colour or line type of layer "+l.Name)
	}
	return nil
}

// farthest is the largest number taken, in mm: a kilometre, as in package model.
const farthest = 1e6

func numbers(all ...float64) error {
	for _, f := range all {
		if !(math.Abs(f) <= farthest) {
			return fault(model.NotFinite, "")
		}
	}
	return nil
}

func points(all ...Point) error {
	for _, p := range all {
		if err := numbers(p.X, p.Y); err != nil {
			return err
		}
	}
	return nil
}

// round is what circles and arcs have in common.
func round(centre Point, radius float64) error {
	if err := numbers(centre.X, centre.Y, radius); err != nil {
		return err
	}
	if radius < least {
		return fault(model.Degenerate, "radius must be positive")
	}
	return nil
}

// least is the shortest line or smallest radius written, in mm: a nanometre.
const least = 1e-6

func same(a, b Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < least }

func (l Line) check() error {
	if err := points(l.A, l.B); err != nil {
		return err
	}
	if same(l.A, l.B) {
		return fault(model.Degenerate, "line without length")
	}
	return nil
}

func (l Polyline) check() error {
	if len(l.Corners) < 2 {
		return fault(model.Degenerate, "polyline of fewer than two corners")
	}
	for i, c := range l.Corners {
		if err := numbers(c.X, c.Y, c.Bulge); err != nil {
			return err
		}
		next := l.Corners[(i+1)%len(l.Corners)]
		if (l.Closed || i+1 < len(l.Corners)) && same(c.Point, next.Point) {
			return fault(model.Degenerate, fmt.Sprintf("corner %d repeated", i))
		}
	}
	return nil
}

func (a Arc) check() error {
	if err := numbers(a.From, a.To); err != nil {
		return err
	}
	if err := round(a.Centre, a.Radius); err != nil {
		return err
	}
	if s := a.sweep(); s < least || s > 2*math.Pi-least {
		return fault(model.Degenerate, "arc of no turn or a full one")
	}
	return nil
}

// sweep is the angle that the arc runs through, 0 to 2π.
func (a Arc) sweep() float64 {
	s := math.Mod(a.To-a.From, 2*math.Pi)
	if s < 0 {
		s += 2 * math.Pi
	}
	return s
}

func (c Circle) check() error { return round(c.Centre, c.Radius) }

func (c Curve) check() error {
	if len(c.Points) < 4 || len(c.Points)%3 != 1 {
		return fault(model.Degenerate, "a curve takes 4, 7, 10, … points")
	}
	if err := points(c.Points...); err != nil {
		return err
	}
	for i := 3; i < len(c.Points); i += 3 {
		if same(c.Points[i-3], c.Points[i]) {
			return fault(model.Degenerate, "curve that ends where it begins")
		}
	}
	return nil
}

func (t Text) check() error {
	if err := numbers(t.At.X, t.At.Y, t.Height, t.Turn); err != nil {
		return err
	}
	if t.Height < least {
		return fault(model.Degenerate, "height must be positive")
	}
	if t.Align > Right {
		return fault(model.BadIndex, "no such alignment")
	}
	if strings.TrimSpace(ASCII(t.Text)) == "" {
		return fault(model.Empty, "text without letters")
	}
	return nil
}
