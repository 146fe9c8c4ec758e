package model

import "bytes"

// STL writes one mesh as binary STL. The format knows neither unit nor name:
// numbers are millimetres, and name goes into the header as far as it is
// plain text and fits. A mesh that does not pass [Mesh.Check] is a *[Fault].
func STL(name string, m *Mesh) ([]byte, error) {
	if m == nil {
		return nil, &Fault{Kind: Empty, Node: name, Face: none, Detail: "no mesh"}
	}
	if err := m.Check(); err != nil {
		return nil, err.(*Fault).named(name)
	}
	out := bytes.NewBuffer(make([]byte, 0, 84+50*len(m.Triangles)))
	out.Write(stlHeader(name))
	put32(out, uint32(len(m.Triangles)))
	for _, t := range m.Triangles {
		putVec(out, single(m.area(t).unit()))
		for _, v := range t {
			putVec(out, single(m.Positions[v]))
		}
		out.Write([]byte{0, 0})
	}
	return out.Bytes(), nil
}

// stlHeader is 80 bytes. It does not begin with "solid", by which readers know
// the other, written form.
func stlHeader(name string) []byte {
	h := []byte("Casewright, millimetres: ")
	for _, r := range name {
		if len(h) < 80 && r >= ' ' && r <= '~' {
			h = append(h, byte(r))
		}
	}
	return append(h, bytes.Repeat([]byte{' '}, 80-len(h))...)
}
