package model

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/xml"
	"fmt"
	"hash/crc32"
)

// ThreeMF writes the parts of a scene as a 3MF package (3D Manufacturing Format,
// core specification 1.x), unit millimetre. Parts keep their names and
// stand where the tree puts them; parts that share a Mesh and a material are
// one object, placed several times, under the first one's name. Assemblies
// and extras have no place in the format.
//
// A part without a Mesh, or with one that does not pass [Mesh.Check], is a
// *[Fault].
func ThreeMF(s Scene) ([]byte, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	w := mfWriter{objects: map[meshKey]int{}, coloured: len(s.Materials) > 0}
	if err := w.nodes(s.Nodes, Place{}); err != nil {
		return nil, err
	}
	return packed([]packedFile{
		{"[Content_Types].xml", mfTypes},
		{"_rels/.rels", mfRelations},
		{"3D/3dmodel.model", w.model(s)},
	})
}

const mfTypes = xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
	`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
	`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>` + "\n"

const mfRelations = xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
	`<Relationship Id="rel0" Target="/3D/3dmodel.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>` +
	"</Relationships>\n"

// materialsID is the resource that lists the materials; objects follow it.
const materialsID = 1

type mfWriter struct {
	resources, build bytes.Buffer
	objects          map[meshKey]int
	coloured         bool
}

func (w *mfWriter) nodes(nodes []Node, in Place) error {
	for i := range nodes {
		n := &nodes[i]
		place := in.then(n.Place)
		if len(n.Children) > 0 {
			if err := w.nodes(n.Children, place); err != nil {
				return err
			}
			continue
		}
		id, err := w.object(n)
		if err != nil {
			return err
		}
		fmt.Fprintf(&w.build, "<item objectid=\"%d\" partnumber=\"%s\"%s/>\n", id, escaped(n.Name), mfTransform(place))
	}
	return nil
}

// mfTransform lists where the axes and the origin go, a row each.
func mfTransform(p Place) string {
	if p.identity() {
		return ""
	}
	var b bytes.Buffer
	a := p.axes()
	for _, v := range [...]Vec{a[0], a[1], a[2], p.Origin} {
		fmt.Fprintf(&b, " %s %s %s", plain(v[0]), plain(v[1]), plain(v[2]))
	}
	return fmt.Sprintf(" transform=\"%s\"", b.String()[1:])
}

func (w *mfWriter) object(n *Node) (int, error) {
	if n.Mesh == nil {
		return 0, &Fault{Kind: Empty, Node: n.Name, Face: none, Detail: "no mesh"}
	}
	key := meshKey{n.Mesh, n.Material}
	if id, ok := w.objects[key]; ok {
		return id, nil
	}
	if err := n.Mesh.Check(); err != nil {
		return 0, err.(*Fault).named(n.Name)
	}
	id := materialsID + 1 + len(w.objects)
	w.objects[key] = id
	colour := ""
	if w.coloured {
		colour = fmt.Sprintf(" pid=\"%d\" pindex=\"%d\"", materialsID, n.Material)
	}
	fmt.Fprintf(&w.resources, "<object id=\"%d\" type=\"model\" name=\"%s\"%s>\n", id, escaped(n.Name), colour)
	w.mesh(n.Mesh)
	w.resources.WriteString("</object>\n")
	return id, nil
}

func (w *mfWriter) mesh(m *Mesh) {
	w.resources.WriteString("<mesh><vertices>\n")
	for _, p := range m.Positions {
		fmt.Fprintf(&w.resources, "<vertex x=\"%s\" y=\"%s\" z=\"%s\"/>\n", plain(p[0]), plain(p[1]), plain(p[2]))
	}
	w.resources.WriteString("</vertices><triangles>\n")
	for _, t := range m.Triangles {
		fmt.Fprintf(&w.resources, "<triangle v1=\"%d\" v2=\"%d\" v3=\"%d\"/>\n", t[0], t[1], t[2])
	}
	w.resources.WriteString("</triangles></mesh>\n")
}

// model is the one document of the package.
func (w *mfWriter) model(s Scene) string {
	var b bytes.Buffer
	b.WriteString(xml.Header + `<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">` + "\n")
	fmt.Fprintf(&b, "<metadata name=\"Title\">%s</metadata>\n<metadata name=\"Application\">Casewright</metadata>\n<resources>\n", escaped(s.Name))
	if w.coloured {
		fmt.Fprintf(&b, "<basematerials id=\"%d\">\n", materialsID)
		for _, m := range s.Materials {
			let := uint8(255*(1-share(m.Clear)) + 0.5)
			fmt.Fprintf(&b, "<base name=\"%s\" displaycolor=\"#%02X%02X%02X%02X\"/>\n", escaped(m.Name), m.Color[0], m.Color[1], m.Color[2], let)
		}
		b.WriteString("</basematerials>\n")
	}
	b.Write(w.resources.Bytes())
	b.WriteString("</resources>\n<build>\n")
	b.Write(w.build.Bytes())
	b.WriteString("</build>\n</model>\n")
	return b.String()
}

// escaped is s inside an XML attribute or text; what XML cannot hold becomes U+FFFD.
func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a buffer never refuses
	return b.String()
}

type packedFile struct{ name, text string }

// midnight is 1 January 1980 as a zip archive writes it: the earliest date it
// has, and the same in every file.
const midnight = 1<<5 | 1

// packed is a zip archive whose headers know the sizes beforehand: readers of
// 3MF are not all able to look for them behind the data.
func packed(files []packedFile) ([]byte, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, f := range files {
		data := deflated(f.text)
		w, err := z.CreateRaw(&zip.FileHeader{
			Name: f.name, Method: zip.Deflate, ModifiedDate: midnight,
			CRC32:              crc32.ChecksumIEEE([]byte(f.text)),
			UncompressedSize64: uint64(len(f.text)), CompressedSize64: uint64(len(data)),
		})
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(data); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func deflated(text string) []byte {
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.DefaultCompression)
	if err != nil {
		panic(err) // the level is one that exists
	}
	w.Write([]byte(text)) // a buffer never refuses
	w.Close()
	return b.Bytes()
}
