package model

// Shell is the surface of one solid as planar faces. Faces that meet have
// their corners in the same places, within [Weld]; no corner of one may lie
// inside an edge of the other.
type Shell struct{ Faces []PlanarFace }

// PlanarFace is a flat face. Rings are not closed by repeating the first
// corner.
type PlanarFace struct {
	Outer  []Vec   // counter-clockwise seen from outside
	Holes  [][]Vec // clockwise seen from outside
	Normal Vec     // out of the wood, any length; must agree with Outer
	Name   string  // what made the face; may be ""
}

// Weld is how far apart, in mm, two corners may lie and still be one: the
// nanometre of a length. Edges must be longer.
const Weld = 1e-6

// Check finds the first thing that makes the shell unfit for a file; nil if it
// is sound. The error is a *[Fault].
func (s *Shell) Check() error {
	if _, f := s.weave(); f != nil {
		return f
	}
	return nil
}

// woven is a shell whose faces share corners by number.
type woven struct {
	corners []Vec
	faces   []wovenFace
}

type wovenFace struct {
	name   string
	rings  [][]int // the outer one first
	normal Vec     // length 1, from the corners themselves
	area   Vec     // vector area
}

// weave joins what belongs together and finds what does not fit.
func (s *Shell) weave() (woven, *Fault) {
	if len(s.Faces) == 0 {
		return woven{}, &Fault{Kind: Empty, Face: none, Detail: "no face"}
	}
	var w woven
	weld := welder{cells: map[[3]int64][]int{}}
	for i := range s.Faces {
		f, fault := weld.face(&s.Faces[i])
		if fault != nil {
			fault.Face = i
			return woven{}, fault
		}
		w.faces = append(w.faces, f)
	}
	w.corners = weld.corners
	for i := range w.faces {
		if fault := w.planar(i, s.Faces[i].Normal); fault != nil {
			fault.Face = i
			return woven{}, fault
		}
	}
	if fault := w.paired(); fault != nil {
		return woven{}, fault
	}
	w.dissolve()
	for _, body := range w.bodies() {
		if fault := judgeVolume(w.volume(body)); fault != nil {
			fault.Face = body[0]
			return woven{}, fault
		}
	}
	return w, nil
}

// paired wants every edge once in each direction.
func (w *woven) paired() *Fault {
	uses := edgeUses{}
	w.walk(func(_, a, b int) bool { uses.count(a, b); return true })
	var fault *Fault
	w.walk(func(face, a, b int) bool {
		if kind := uses.judge(a, b); kind != "" {
			fault = &Fault{Kind: kind, Face: face, At: w.corners[a].plus(w.corners[b]).by(0.5)}
		}
		return fault == nil
	})
	return fault
}

// walk visits every edge of every face in order, until visit says no.
func (w *woven) walk(visit func(face, from, to int) bool) {
	for i, f := range w.faces {
		for _, ring := range f.rings {
			for k, c := range ring {
				if !visit(i, c, ring[(k+1)%len(ring)]) {
					return
				}
			}
		}
	}
}

// dissolve takes out corners where only two edges meet, in one line: they
// stand there because some other part touches, and would only cut edges up.
func (w *woven) dissolve() {
	next := make([][]int, len(w.corners))
	w.walk(func(_, a, b int) bool { next[a] = append(next[a], b); return true })
	gone := make([]bool, len(w.corners))
	for c, ends := range next {
		gone[c] = len(ends) == 2 && w.between(c, ends[0], ends[1])
	}
	for i := range w.faces {
		for r, ring := range w.faces[i].rings {
			w.faces[i].rings[r] = without(ring, gone)
		}
	}
}

// straight is how far, in mm, a corner may lie beside a line and still be on it.
const straight = Weld

func (w *woven) between(c, a, b int) bool {
	along := w.corners[b].minus(w.corners[a])
	to := w.corners[c].minus(w.corners[a])
	t := along.unit()
	return to.cross(t).length() <= straight && to.dot(t) > 0 && to.dot(t) < along.length()
}

func without(ring []int, gone []bool) []int {
	kept := make([]int, 0, len(ring))
	for _, c := range ring {
		if !gone[c] {
			kept = append(kept, c)
		}
	}
	return kept
}

// bodies are the faces that hang together, by number, each list and the lists
// themselves in order of their first face.
func (w *woven) bodies() [][]int {
	owner := map[[2]int]int{} // of a directed edge
	w.walk(func(face, a, b int) bool { owner[[2]int{a, b}] = face; return true })
	body := make([]int, len(w.faces)) // 0: not yet seen
	var all [][]int
	for start := range w.faces {
		if body[start] != 0 {
			continue
		}
		body[start] = len(all) + 1
		reached := []int{start}
		for k := 0; k < len(reached); k++ {
			for _, ring := range w.faces[reached[k]].rings {
				for j, c := range ring {
					if n := owner[[2]int{ring[(j+1)%len(ring)], c}]; body[n] == 0 {
						body[n] = len(all) + 1
						reached = append(reached, n)
					}
				}
			}
		}
		all = append(all, reached)
	}
	return all
}

// volume of some faces in mm³, by the divergence theorem: the height of each
// plane above a common point times the face's area.
func (w *woven) volume(faces []int) float64 {
	from, three := w.corners[w.faces[faces[0]].rings[0][0]], 0.0
	for _, i := range faces {
		f := w.faces[i]
		three += w.corners[f.rings[0][0]].minus(from).dot(f.area)
	}
	return three / 3
}
