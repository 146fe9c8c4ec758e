package model_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"testing"

	"casewright/internal/model"
	"casewright/internal/testkit"
)

// mf is what the tests look at in the document of a 3MF package.
type mf struct {
	Unit     string `xml:"unit,attr"`
	Metadata []struct {
		Name string `xml:"name,attr"`
		Text string `xml:",chardata"`
	} `xml:"metadata"`
	Bases []struct {
		Name  string `xml:"name,attr"`
		Color string `xml:"displaycolor,attr"`
	} `xml:"resources>basematerials>base"`
	Objects []struct {
		ID       int    `xml:"id,attr"`
		Name     string `xml:"name,attr"`
		Material int    `xml:"pindex,attr"`
	} `xml:"resources>object"`
	Items []struct {
		Object    int    `xml:"objectid,attr"`
		Part      string `xml:"partnumber,attr"`
		Transform string `xml:"transform,attr"`
	} `xml:"build>item"`
}

// unpacked are the files of a package by name; each must know its size before
// its data (flag bit 3 clear), which not every reader of 3MF can do without.
func unpacked(t testing.TB, b []byte) (names []string, texts map[string]string) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	texts = map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil || f.Flags&8 != 0 {
			t.Fatalf("%s: %v, flags %x", f.Name, err, f.Flags)
		}
		if y, m, d := f.Modified.Date(); y != 1980 || m != 1 || d != 1 {
			t.Errorf("%s: of %v", f.Name, f.Modified)
		}
		names = append(names, f.Name)
		texts[f.Name] = string(text)
	}
	return names, texts
}

// TestThreeMFPackage: the three files that the core specification asks for,
// the unit, names, colours, and parts that share a mesh as one object.
func TestThreeMFPackage(t *testing.T) {
	s := joint()
	s.Nodes[0].Name = `A1 <"&>`
	b, err := model.ThreeMF(s)
	if err != nil {
		t.Fatal(err)
	}
	names, texts := unpacked(t, b)
	testkit.Diff(t, []string{"[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"}, names)
	var types struct {
		Default []struct {
			Extension, ContentType string `xml:",attr"`
		}
	}
	var relations struct {
		Relationship []struct {
			Target string `xml:",attr"`
		}
	}
	var m mf
	for name, into := range map[string]any{names[0]: &types, names[1]: &relations, names[2]: &m} {
		if err := xml.Unmarshal([]byte(texts[name]), into); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	if len(types.Default) != 2 || types.Default[1].ContentType != "application/vnd.ms-package.3dmanufacturing-3dmodel+xml" {
		t.Errorf("content types: %+v", types)
	}
	if len(relations.Relationship) != 1 || relations.Relationship[0].Target != "/"+names[2] {
		t.Errorf("relations: %+v", relations)
	}
	if m.Unit != "millimeter" || m.Metadata[0].Text != s.Name {
		t.Errorf("unit %q, title %q", m.Unit, m.Metadata[0].Text)
	}
	if len(m.Objects) != 3 || m.Objects[0].Name != `A1 <"&>` || m.Objects[2].Material != 2 {
		t.Errorf("objects: %+v", m.Objects)
	}
	if m.Bases[1].Color != "#A8623CFF" || m.Bases[2].Color != "#FFFFFF40" { // a quarter of the light is held back
		t.Errorf("colours: %+v", m.Bases)
	}
	var marks []string
	for _, i := range m.Items {
		marks = append(marks, i.Part)
	}
	testkit.Diff(t, []string{`A1 <"&>`, "B1", "B2", "B3"}, marks)
	if m.Items[1].Object != m.Items[2].Object || m.Items[1].Transform != "0 1 0 -1 0 0 0 0 1 500 40 7.5" {
		t.Errorf("items: %+v", m.Items)
	}
}
