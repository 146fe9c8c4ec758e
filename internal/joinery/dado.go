package joinery

import "casewright/internal/measure"

// HousingSpec asks for a dado across a board, the host, that holds the end of
// another: a shelf in a side, a partition in a divider. Both boards' widths
// run the same way, front edges at W = 0.
type HousingSpec struct {
	Side                Side           // face of the host it opens on
	At                  measure.Length // nearer wall, from the host's near end
	Width               measure.Length // thickness of what enters
	Depth               measure.Length // 0 = see UsualHousingDepth
	StopFront, StopBack measure.Length // left uncut at the host's edges; 0 = through
	BackToBack          bool           // another housing lies opposite
}

// HousingLayout is a housing with its depth settled.
type HousingLayout struct {
	HousingSpec
	Host     Box
	Features []Feature // in the host
}

// UsualHousingDepth is a third of the host's thickness, or a quarter where
// another housing lies opposite, down to the next 1/16 in: 1/4 in in 3/4 in
// stock, 3/16 in back to back, as answers on trade forums have it. Stock under
// 1/4 in gets the plain share.
func UsualHousingDepth(thickness measure.Length, backToBack bool) measure.Length {
	depth := thickness / 3
	if backToBack {
		depth = thickness / 4
	}
	if d := snapDown(depth, sixteenth); d > 0 {
		return d
	}
	return depth
}

// LayHousing settles the depth of a housing and cuts it into the host.
func LayHousing(host Box, spec HousingSpec) (HousingLayout, []Problem) {
	if spec.Depth == 0 {
		spec.Depth = UsualHousingDepth(host.T, spec.BackToBack)
	}
	l := HousingLayout{HousingSpec: spec, Host: host}
	features, problems := slot{Dado, "dado", spec.Side.Face(), W, spec.At, spec.Width, spec.Depth,
		Stops{spec.StopFront, spec.StopBack}}.cut(host)
	l.Features = features
	if features != nil && spec.BackToBack && spec.Depth > host.T/4 && spec.Depth <= host.T/2 {
		problems = append(problems, warn("dado.back-to-back", "two housings back to back leave little wood between them",
			"make each a quarter of the thickness or less", length("depth", spec.Depth, host.T/4, practice)))
	}
	return l, problems
}

// HousedBoard is the board whose end enters a housing; its length includes
// what enters.
type HousedBoard struct {
	Box     Box
	End     End
	SetBack measure.Length // its front edge lies this far behind the host's front edge

	// Shoulder is cut off one face so that a thinner, barefaced tongue enters
	// and hides the housing's edge; 0 = the whole thickness enters.
	Shoulder     measure.Length
	ShoulderSide Side
}

// BoardFeatures is what the housed board loses so that it enters the housing
// and its edges run past the ends of a stopped one: notches, and the shoulder
// of a barefaced tongue. A board that enters whole loses nothing.
func (l HousingLayout) BoardFeatures(b HousedBoard) ([]Feature, []Problem) {
	if len(l.Features) == 0 {
		return nil, nil // already said why
	}
	if p := l.misfit(b); len(p) > 0 {
		return nil, p
	}
	deep := b.Box.inward(b.End.Face(), 0, l.Depth)
	front, back := l.notches(b)
	var out []Feature
	if front > 0 {
		out = append(out, block(Notch, T, [3]span{deep, {0, front}, {0, b.Box.T}}))
	}
	if back > 0 {
		out = append(out, block(Notch, T, [3]span{deep, {b.Box.W - back, b.Box.W}, {0, b.Box.T}}))
	}
	if b.Shoulder > 0 {
		out = append(out, block(TenonWaste, W, [3]span{deep, {front, b.Box.W - back}, b.Box.inward(b.ShoulderSide.Face(), 0, b.Shoulder)}))
	}
	return out, nil
}

// notches is how much of the board's edges stands before and behind the housing.
func (l HousingLayout) notches(b HousedBoard) (front, back measure.Length) {
	behind := l.Host.W - b.SetBack - b.Box.W
	return max(l.StopFront-b.SetBack, 0), max(l.StopBack-behind, 0)
}

func (l HousingLayout) misfit(b HousedBoard) []Problem {
	if !b.Box.solid() {
		return noPart("dado", b.Box)
	}
	if b.SetBack < -largest || b.SetBack > largest || b.Shoulder < 0 || b.Shoulder > b.Box.T {
		return []Problem{stop("dado.fit", "the housed board cannot lie where it is said to",
			"check its shoulder and how far it is set back", length("shoulder", b.Shoulder, b.Box.T, geometry))}
	}
	var out []Problem
	if enters := b.Box.T - b.Shoulder; enters <= 0 || enters != l.Width {
		out = append(out, stop("dado.fit", "what enters the housing is not as thick as the housing is wide",
			"make the housing as wide as the board, or its tongue, is thick", length("thickness that enters", enters, l.Width, geometry)))
	}
	if l.Depth >= b.Box.L {
		out = append(out, stop("dado.short", "the housed board is shorter than the housing is deep",
			"make it longer", length("depth", l.Depth, b.Box.L, geometry)))
	}
	if front, back := l.notches(b); front+back >= b.Box.W {
		out = append(out, stop("dado.notch", "the housing stops before it meets the housed board",
			"stop it nearer to the edges", length("notched away", front+back, b.Box.W, geometry)))
	}
	return out
}
