package dxf

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// writer collects the pairs of a file: a group code that says what follows,
// then the value (AutoCAD 2000 DXF Reference, "Group Codes").
type writer struct {
	out    bytes.Buffer
	scale  float64 // of a millimetre
	old    bool    // R12: no handles, no subclass marks
	handle int     // the last one given
	space  string  // handle of the model space, which owns the items
}

func (w *writer) pair(code int, value string) { fmt.Fprintf(&w.out, "%3d\n%s\n", code, value) }

// pairs writes code, value, code, value …
func (w *writer) pairs(all ...any) {
	for i := 0; i < len(all); i += 2 {
		w.pair(all[i].(int), fmt.Sprint(all[i+1]))
	}
}

// size is a length in the unit of the file.
func (w *writer) size(mm float64) string { return number(mm * w.scale) }

// place is a point at group code and those that belong to it.
func (w *writer) place(code int, p Point) {
	w.pairs(code, w.size(p.X), code+10, w.size(p.Y), code+20, number(0))
}

// number has nine decimals at most, always a point, never an exponent.
func number(f float64) string {
	s := strings.TrimRight(strconv.FormatFloat(f, 'f', 9, 64), "0")
	if strings.HasSuffix(s, ".") {
		s += "0"
	}
	if s == "-0.0" {
		return "0.0"
	}
	return s
}

// degrees is an angle as DXF wants it, 0 to 360.
func degrees(radians float64) string {
	d := math.Mod(radians*180/math.Pi, 360)
	if d < 0 {
		d += 360
	}
	if n := number(d); n != "360.0" {
		return n
	}
	return number(0)
}

func (w *writer) next() string {
	w.handle++
	return strings.ToUpper(strconv.FormatInt(int64(w.handle), 16))
}

// entity opens an item.
func (w *writer) entity(kind, layer string) {
	w.pairs(0, kind)
	if !w.old {
		w.pairs(5, w.next(), 330, w.space, 100, "AcDbEntity")
	}
	w.pairs(8, layer)
}

// class marks what follows as belonging to a class of AutoCAD's.
func (w *writer) class(name string) {
	if !w.old {
		w.pairs(100, name)
	}
}

func (l Line) write(w *writer) {
	w.entity("LINE", l.Layer)
	w.class("AcDbLine")
	w.place(10, l.A)
	w.place(11, l.B)
}

func (c Circle) write(w *writer) {
	w.entity("CIRCLE", c.Layer)
	w.class("AcDbCircle")
	w.place(10, c.Centre)
	w.pairs(40, w.size(c.Radius))
}

func (a Arc) write(w *writer) {
	w.entity("ARC", a.Layer)
	w.class("AcDbCircle")
	w.place(10, a.Centre)
	w.pairs(40, w.size(a.Radius))
	w.class("AcDbArc")
	w.pairs(50, degrees(a.From), 51, degrees(a.To))
}

func (t Text) write(w *writer) {
	w.entity("TEXT", t.Layer)
	w.class("AcDbText")
	w.place(10, t.At)
	w.pairs(40, w.size(t.Height), 1, ASCII(t.Text), 50, degrees(t.Turn), 7, styleName)
	if t.Align != Left {
		// Other than to the left, the second point is the one that counts.
		w.pairs(72, int(t.Align))
		w.place(11, t.At)
	}
	w.class("AcDbText")
}

// styleName is the one style of text.
const styleName = "STANDARD"

func (l Polyline) write(w *writer) {
	closed := 0
	if l.Closed {
		closed = 1
	}
	if w.old {
		l.writeOld(w, closed)
		return
	}
	w.entity("LWPOLYLINE", l.Layer)
	w.class("AcDbPolyline")
	w.pairs(90, len(l.Corners), 70, closed)
	for _, c := range l.Corners {
		w.pairs(10, w.size(c.X), 20, w.size(c.Y))
		if c.Bulge != 0 {
			w.pairs(42, number(c.Bulge))
		}
	}
}

func (l Polyline) writeOld(w *writer, closed int) {
	w.entity("POLYLINE", l.Layer)
	w.pairs(66, 1)
	w.place(10, Point{})
	w.pairs(70, closed)
	for _, c := range l.Corners {
		w.entity("VERTEX", l.Layer)
		w.place(10, c.Point)
		if c.Bulge != 0 {
			w.pairs(42, number(c.Bulge))
		}
	}
	w.entity("SEQEND", l.Layer)
}

// write makes one B-spline of the chain: every end is a knot three times over,
// so each arc keeps its own shape.
func (c Curve) write(w *writer) {
	if w.old {
		c.flattened().write(w)
		return
	}
	arcs := (len(c.Points) - 1) / 3
	w.entity("SPLINE", c.Layer)
	w.class("AcDbSpline")
	w.pairs(210, number(0), 220, number(0), 230, number(1), // normal
		70, 8, 71, 3, 72, len(c.Points)+4, 73, len(c.Points), 74, 0) // planar, cubic
	w.pairs(40, number(0))
	for k := range arcs + 1 {
		for range 3 {
			w.pairs(40, number(float64(k)))
		}
	}
	w.pairs(40, number(float64(arcs)))
	for _, p := range c.Points {
		w.place(10, p)
	}
}
