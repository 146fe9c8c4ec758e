package dxf

// R12 writes the drawing as AutoCAD Release 12 DXF (AC1009), which everything
// reads. That release knows neither units nor splines: the unit stands in
// a note below the drawing, on layer TEXT, and a [Curve] becomes a polyline.
func R12(d Drawing) ([]byte, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	d = d.noted()
	w := &writer{scale: d.Unit.scale(), old: true}
	w.comment(d)
	w.section("HEADER", func() {
		w.pairs(9, "$ACADVER", 1, "AC1009")
		w.extents(d)
	})
	w.section("TABLES", func() {
		w.table("LTYPE", len(lineTypes), func(string) { w.lineTypes("") })
		w.table("LAYER", len(d.Layers)+1, func(string) { w.layers(d, "") })
		w.table("STYLE", 1, func(string) { w.style("") })
	})
	w.section("BLOCKS", func() {})
	w.section("ENTITIES", func() { w.items(d) })
	w.pairs(0, "EOF")
	return w.out.Bytes(), nil
}

// noted adds the unit in words, and the layer it stands on if need be.
func (d Drawing) noted() Drawing {
	low, _ := d.box()
	const height = 3 // mm
	layers := append([]Layer(nil), d.Layers...)
	if !d.has(Words) {
		layers = append(layers, Layer{Words, 7, Whole})
	}
	note := Text{Layer: Words, At: Point{low.X, low.Y - 3*height}, Height: height, Text: "UNIT: " + d.Unit.word()}
	d.Layers = layers
	d.Items = append(append([]Item(nil), d.Items...), note)
	return d
}

func (d Drawing) has(layer string) bool {
	for _, l := range d.Layers {
		if l.Name == layer {
			return true
		}
	}
	return false
}

// R2000 writes the drawing as AutoCAD 2000 DXF (AC1015). The unit stands in
// the header ($INSUNITS, $MEASUREMENT).
func R2000(d Drawing) ([]byte, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	// The header names a handle that is not given yet, so it is written last
	// and put in front.
	w := &writer{scale: d.Unit.scale()}
	w.modern(d)
	head := &writer{scale: w.scale}
	head.comment(d)
	head.section("HEADER", func() {
		insUnits, metric := 4, 1
		if d.Unit == Inches {
			insUnits, metric = 1, 0
		}
		head.pairs(9, "$ACADVER", 1, "AC1015", 9, "$DWGCODEPAGE", 3, "ANSI_1252",
			9, "$INSUNITS", 70, insUnits, 9, "$MEASUREMENT", 70, metric,
			9, "$HANDSEED", 5, w.next())
		head.extents(d)
	})
	return append(head.out.Bytes(), w.out.Bytes()...), nil
}

func (w *writer) comment(d Drawing) {
	w.pairs(999, ASCII("Casewright: "+d.Name))
}

func (w *writer) section(name string, fill func()) {
	w.pairs(0, "SECTION", 2, name)
	fill()
	w.pairs(0, "ENDSEC")
}

func (w *writer) extents(d Drawing) {
	low, high := d.box()
	w.pairs(9, "$EXTMIN")
	w.place(10, low)
	w.pairs(9, "$EXTMAX")
	w.place(10, high)
}

func (w *writer) items(d Drawing) {
	for _, it := range d.Items {
		it.write(w)
	}
}

// table opens a table; fill gets its handle.
func (w *writer) table(name string, entries int, fill func(owner string)) {
	w.pairs(0, "TABLE", 2, name)
	owner := ""
	if !w.old {
		owner = w.next()
		w.pairs(5, owner, 330, 0, 100, "AcDbSymbolTable")
	}
	w.pairs(70, entries)
	if !w.old && name == "DIMSTYLE" {
		w.pairs(100, "AcDbDimStyleTable", 71, 0)
	}
	fill(owner)
	w.pairs(0, "ENDTAB")
}

// record opens an entry of a table and gives its handle.
func (w *writer) record(kind, owner, class, name string) string {
	handle := ""
	w.pairs(0, kind)
	if !w.old {
		code := 5
		if kind == "DIMSTYLE" { // 5 is something else there
			code = 105
		}
		handle = w.next()
		w.pairs(code, handle, 330, owner, 100, "AcDbSymbolTableRecord", 100, class)
	}
	w.pairs(2, name)
	return handle
}

// lineTypes are the patterns, in mm on paper: dash, gap, … Common practice,
// no source.
var lineTypes = []struct {
	name, shown string
	pattern     []float64
}{
	{"CONTINUOUS", "Solid line", nil},
	{"HIDDEN", "Hidden __ __ __", []float64{3, -1.5}},
	{"CENTER", "Center ____ _ ____", []float64{12, -2, 2, -2}},
}

func (l LineType) name() string { return lineTypes[l].name }

func (w *writer) lineTypes(owner string) {
	for _, t := range lineTypes {
		w.record("LTYPE", owner, "AcDbLinetypeTableRecord", t.name)
		total := 0.0
		for _, p := range t.pattern {
			total += max(p, -p)
		}
		w.pairs(70, 0, 3, t.shown, 72, 65, 73, len(t.pattern), 40, w.size(total))
		for _, p := range t.pattern {
			w.pairs(49, w.size(p))
			if !w.old {
				w.pairs(74, 0)
			}
		}
	}
}

func (w *writer) layers(d Drawing, owner string) {
	for _, l := range append([]Layer{{"0", 7, Whole}}, d.Layers...) {
		w.record("LAYER", owner, "AcDbLayerTableRecord", l.Name)
		w.pairs(70, 0, 62, l.Color, 6, l.Line.name())
	}
}

func (w *writer) style(owner string) {
	w.record("STYLE", owner, "AcDbTextStyleTableRecord", styleName)
	w.pairs(70, 0, 40, number(0), 41, number(1), 50, number(0), 71, 0, 42, w.size(3), 3, "txt", 4, "")
}

// modern writes everything behind the header of R2000.
func (w *writer) modern(d Drawing) {
	w.section("CLASSES", func() {})
	var paper string
	w.section("TABLES", func() {
		w.table("VPORT", 0, func(string) {})
		w.table("LTYPE", len(lineTypes)+2, func(owner string) {
			for _, name := range []string{"ByBlock", "ByLayer"} {
				w.record("LTYPE", owner, "AcDbLinetypeTableRecord", name)
				w.pairs(70, 0, 3, "", 72, 65, 73, 0, 40, number(0))
			}
			w.lineTypes(owner)
		})
		w.table("LAYER", len(d.Layers)+1, func(owner string) { w.layers(d, owner) })
		w.table("STYLE", 1, w.style)
		w.table("VIEW", 0, func(string) {})
		w.table("UCS", 0, func(string) {})
		w.table("APPID", 1, func(owner string) {
			w.record("APPID", owner, "AcDbRegAppTableRecord", "ACAD")
			w.pairs(70, 0)
		})
		w.table("DIMSTYLE", 1, func(owner string) {
			w.record("DIMSTYLE", owner, "AcDbDimStyleTableRecord", styleName)
			w.pairs(70, 0)
		})
		w.table("BLOCK_RECORD", 2, func(owner string) {
			w.space = w.record("BLOCK_RECORD", owner, "AcDbBlockTableRecord", "*Model_Space")
			paper = w.record("BLOCK_RECORD", owner, "AcDbBlockTableRecord", "*Paper_Space")
		})
	})
	w.section("BLOCKS", func() {
		w.block("*Model_Space", w.space)
		w.block("*Paper_Space", paper)
	})
	w.section("ENTITIES", func() { w.items(d) })
	w.section("OBJECTS", w.objects)
	w.pairs(0, "EOF")
}

// block is one of the two spaces, empty: what is in them stands among the
// entities.
func (w *writer) block(name, owner string) {
	w.pairs(0, "BLOCK", 5, w.next(), 330, owner, 100, "AcDbEntity", 8, "0", 100, "AcDbBlockBegin", 2, name, 70, 0)
	w.place(10, Point{})
	w.pairs(3, name, 1, "", 0, "ENDBLK", 5, w.next(), 330, owner, 100, "AcDbEntity", 8, "0", 100, "AcDbBlockEnd")
}

// objects is the root of named things, with the one entry that must be there.
func (w *writer) objects() {
	root, groups := w.next(), w.next()
	w.pairs(0, "DICTIONARY", 5, root, 330, 0, 100, "AcDbDictionary", 281, 1, 3, "ACAD_GROUP", 350, groups)
	w.pairs(0, "DICTIONARY", 5, groups, 330, root, 100, "AcDbDictionary", 281, 1)
}
