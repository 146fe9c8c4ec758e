package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"io"
	"strings"

	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/why"
)

// partsJSON is what parts prints as JSON.
type partsJSON struct {
	Commission string         `json:"commission"`
	Title      string         `json:"title"`
	Unit       string         `json:"unit"` // "in" or "mm"
	Assemblies []assemblyJSON `json:"assemblies"`
}

type assemblyJSON struct {
	Letter string     `json:"letter"`
	Name   string     `json:"name"`
	Kind   string     `json:"kind"`
	Path   string     `json:"path"`
	Parts  []partJSON `json:"parts"`
}

type partJSON struct {
	Mark      string    `json:"mark"`
	Path      string    `json:"path"`
	Name      string    `json:"name"`
	Wood      string    `json:"wood"`
	Species   string    `json:"species"`
	Length    *sizeJSON `json:"length"`
	Width     *sizeJSON `json:"width"`
	Thickness *sizeJSON `json:"thickness"`
	Shoulder  *sizeJSON `json:"shoulder,omitempty"`
	Blank     blankJSON `json:"blank"`
	Standing  string    `json:"standing"`
	WaitsFor  string    `json:"waits_for,omitempty"` // path of an opening
	Grain     string    `json:"grain"`
	Show      string    `json:"show"`
	Edge      string    `json:"edge"`
	Mirrors   string    `json:"mirrors,omitempty"` // mark
	Set       string    `json:"set,omitempty"`
	SetKind   string    `json:"set_kind,omitempty"`
	Curve     string    `json:"curve,omitempty"`
	WrittenAt *spanJSON `json:"at,omitempty"`
}

// sizeJSON is one size. Decimal is Printed as a number of the unit; both are
// rounded, Nanometres is not.
type sizeJSON struct {
	Printed    string      `json:"printed"`
	Decimal    json.Number `json:"decimal"`
	Nanometres int64       `json:"nm"`
	Kind       string      `json:"kind"` // typed, default, measured, derived
	Waits      bool        `json:"waits,omitempty"`
}

type blankJSON struct {
	Length    *sizeJSON `json:"length"`
	Width     *sizeJSON `json:"width"`
	Thickness *sizeJSON `json:"thickness"`
	With      []string  `json:"with,omitempty"` // marks of others from the same blank
	Staves    int       `json:"staves,omitempty"`
}

func (j *commission) partsJSON() partsJSON {
	c := j.Spec.Commission
	out := partsJSON{Commission: c.Name, Title: j.title(), Unit: c.Unit.String(), Assemblies: []assemblyJSON{}}
	for _, a := range j.Piece.Assemblies {
		g := assemblyJSON{Letter: a.Letter, Name: a.Name, Kind: string(a.Kind), Path: a.Path}
		for _, q := range a.Parts {
			g.Parts = append(g.Parts, j.partJSON(q))
		}
		out.Assemblies = append(out.Assemblies, g)
	}
	return out
}

func (j *commission) partJSON(q *piece.Part) partJSON {
	size := func(s why.Size) *sizeJSON { return j.sizeJSON(q, s) }
	out := partJSON{Mark: q.Mark, Path: q.Path, Name: q.Name, Wood: q.Wood.Name, Species: q.Wood.Species.Name,
		Length: size(q.Length), Width: size(q.Width), Thickness: size(q.Thickness), Shoulder: size(q.Shoulder),
		Blank:    blankJSON{size(q.Blank.Length), size(q.Blank.Width), size(q.Blank.Thickness), joinedWith(q), q.Blank.Staves},
		Standing: string(q.Standing), Grain: grainRuns(q), Show: showFace(q), Edge: reference(q), WrittenAt: spanOf(q.At)}
	if q.WaitsFor != nil {
		out.WaitsFor = q.WaitsFor.Path
	}
	if q.Mirror != nil {
		out.Mirrors = q.Mirror.Mark
	}
	if q.Set != nil {
		out.Set, out.SetKind = q.Set.Name, q.Set.Kind
	}
	if q.Bow != nil {
		out.Curve = q.Bow.Curve.Name
	}
	return out
}

func (j *commission) sizeJSON(q *piece.Part, s why.Size) *sizeJSON {
	if !s.Given() {
		return nil
	}
	l := j.Piece.Shown(s)
	return &sizeJSON{Printed: newPrinter(j.Spec.Commission).settled(l), Decimal: json.Number(j.decimal(l)),
		Nanometres: int64(s.Length()), Kind: s.Kind().String(), Waits: waits(q, s)}
}

// decimal is a length as a number of the commission's unit: fractions such as
// 3/4 are taken for dates by spreadsheets.
func (j *commission) decimal(l measure.Length) string {
	return measure.Decimal(l, j.Spec.Commission.Unit, 6)
}

var csvHeader = []string{"mark", "path", "part", "assembly", "wood", "species", "unit", "length", "width", "thickness", "shoulder",
	"blank_length", "blank_width", "blank_thickness", "blank_with", "standing", "waits_for", "waiting_sizes", "grain", "show", "edge", "mirrors", "set", "set_kind", "curve"}

func (j *commission) writeCSV(w io.Writer) error {
	var b bytes.Buffer
	c := csv.NewWriter(&b)
	c.Write(csvHeader)
	for _, a := range j.partsJSON().Assemblies {
		for _, p := range a.Parts {
			c.Write(j.csvRow(a, p))
		}
	}
	c.Flush()
	if err := c.Error(); err != nil {
		return err
	}
	return write(w, b.Bytes())
}

func (j *commission) csvRow(a assemblyJSON, p partJSON) []string {
	n := func(s *sizeJSON) string {
		if s == nil {
			return ""
		}
		return string(s.Decimal)
	}
	var waiting []string
	for _, s := range []struct {
		word string
		size *sizeJSON
	}{{"length", p.Length}, {"width", p.Width}, {"thickness", p.Thickness}, {"shoulder", p.Shoulder}} {
		if s.size != nil && s.size.Waits {
			waiting = append(waiting, s.word)
		}
	}
	return []string{p.Mark, p.Path, p.Name, a.Letter + " " + a.Name, p.Wood, p.Species, j.Spec.Commission.Unit.String(),
		n(p.Length), n(p.Width), n(p.Thickness), n(p.Shoulder), n(p.Blank.Length), n(p.Blank.Width), n(p.Blank.Thickness),
		strings.Join(p.Blank.With, " "), p.Standing, p.WaitsFor, strings.Join(waiting, " "), p.Grain, p.Show, p.Edge, p.Mirrors, p.Set, p.SetKind, p.Curve}
}
