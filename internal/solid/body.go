package solid

import (
	"errors"

	"casewright/internal/diag"
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/piece"
	"casewright/internal/solid/csg"
)

// Body is one part as a solid.
type Body struct {
	Part  *piece.Part
	Shape csg.Body   // what it is made of: Cuts[i] is the part's Features[i]
	Solid *csg.Solid // nil if the part cannot be; then a diagnostic says why

	Blank  measure.Volume // before any joint is cut
	Volume measure.Volume
	Mass   measure.Mass // at the wood's moisture today
	Centre [3]float64   // centre of gravity in the piece's frame, mm

	index int    // its place in Bodies
	key   string // equal shapes have equal keys
}

// baseTag marks faces that the part's own outline made; the faces that feature
// i made have tag i + 1.
const baseTag csg.Tag = 0

// JointOf is the joint that made a face, nil for the part's own faces.
func (b *Body) JointOf(o csg.Origin) *piece.Joint {
	if i := int(o.Tag) - 1; i >= 0 && i < len(b.Part.Features) {
		return b.Part.Features[i].Joint
	}
	return nil
}

// shape turns a part and its features into prisms.
func shape(p *piece.Part) csg.Body {
	b := csg.Body{Base: prism(p.Base(), baseTag)}
	for i, f := range p.Features {
		b.Cuts = append(b.Cuts, prism(f.Feature, csg.Tag(i+1)))
	}
	return b
}

// joinery and csg both count a part's axes L, W, T as 0, 1, 2 and give
// outlines in the plane of the two axes that follow.
func prism(f joinery.Feature, tag csg.Tag) csg.Prism {
	out := csg.Prism{Axis: csg.Axis(f.Axis), From: f.From, To: f.To, Tag: tag, Outline: make([]csg.Point2, len(f.Outline))}
	for i, q := range f.Outline {
		out.Outline[i] = csg.Point2{U: q.U, V: q.V}
	}
	return out
}

// fault words what is wrong with a part's shape at the joint that caused it.
func fault(p *piece.Part, err error) diag.List {
	var faults csg.Faults
	if !errors.As(err, &faults) {
		return diag.List{{Code: "E401", Severity: diag.Error, Subject: p.At, Where: where(p), Summary: called(p) + " has no shape", Detail: err.Error()}}
	}
	var out diag.List
	for _, f := range faults {
		out = append(out, faultOf(p, f))
	}
	return out
}

func faultOf(p *piece.Part, f csg.Fault) diag.Diagnostic {
	d := diag.Diagnostic{Severity: diag.Error, Subject: p.At, Where: where(p)}
	joint := "its outline"
	if f.Prism >= 0 && f.Prism < len(p.Features) {
		j := p.Features[f.Prism].Joint
		joint = "the " + j.Kind + " " + j.Name
		if !j.At.IsZero() {
			d.Subject = j.At
		}
	}
	switch f.Kind {
	case csg.Nothing:
		d.Code, d.Summary = "E402", "the joints leave nothing of "+called(p)
		d.Detail = "Together they take away all its wood. Make it larger, or its joints smaller."
	case csg.FallsApart:
		d.Code, d.Summary = "E403", "the joints cut "+called(p)+" into pieces"
		d.Detail = "A dado, groove or row of sockets goes right through. Make it shallower, or the part thicker."
	default:
		d.Code, d.Summary = "E401", called(p)+" cannot be shaped: "+joint+" "+f.String()
		d.Detail = "A size of this joint is zero or beyond the part. Look at the sizes at the place shown."
	}
	return d
}

func called(p *piece.Part) string { return p.Mark + " " + p.Name }

func where(p *piece.Part) string { return p.Mark + " (" + p.Path + ")" }
