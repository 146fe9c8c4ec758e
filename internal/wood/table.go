package wood

import (
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"casewright/internal/measure"
)

//go:embed data/*.csv
var data embed.FS

// tables is everything embedded, parsed.
type tables struct {
	all    []*Species
	byKey  map[string]*Species
	byName map[string]*Species // by fold of every name
}

// loaded parses the tables on first use and once only.
var loaded = sync.OnceValue(load)

// All is every wood of the tables in their order. The slice is the caller's,
// the woods are shared.
func All() []*Species { return slices.Clone(loaded().all) }

func load() *tables {
	t := &tables{all: make([]*Species, 0, 128), byKey: make(map[string]*Species, 128)}
	kin := map[*Species]string{}
	eachRow("species.csv", speciesHead, func(r *row) { t.add(r, kin) })
	eachRow("strength.csv", strengthHead, func(r *row) { t.known(r).readStrength(r) })
	eachRow("elastic.csv", elasticHead, func(r *row) { t.known(r).readElastic(r) })
	eachRow("bonding.csv", bondingHead, func(r *row) { t.known(r).readBonding(r) })
	for _, s := range t.all {
		if k := kin[s]; k != "" {
			s.borrow(t.byKey[k])
		}
		s.setWorking()
	}
	t.nameAll()
	return t
}

// The columns the readers below expect, in order.
const (
	speciesHead = "key name group also kin shrink_radial shrink_tangential shrink_volumetric shrink_source shrink_status " +
		"c_r c_r_source c_r_status c_t c_t_source c_t_status agrees fibre_saturation note"
	strengthHead = "key sg_green sg_12 test_mc mor moe hardness compression_across shear mor_green moe_green intersection source status"
	elasticHead  = "key e_t e_t_status e_r e_r_status g_lr g_lr_status g_lt g_lt_status source"
	bondingHead  = "key class source status"
	targetsHead  = "use region average average_status low high range_status source"
)

func (t *tables) add(r *row, kin map[*Species]string) {
	s := &Species{Key: r.text(), Name: r.text(), Group: Group(r.text())}
	if also := r.text(); also != "" {
		s.Also = strings.Split(also, ";")
	}
	if k := r.text(); k != "" {
		kin[s] = k
	}
	sr, st, sv := r.text(), r.text(), r.text()
	source, status := r.text(), r.text()
	s.ShrinkRadial = figure[Shrinkage](r, sr, 1, source, status)
	s.ShrinkTangential = figure[Shrinkage](r, st, 1, source, status)
	s.ShrinkVolumetric = figure[Shrinkage](r, sv, 1, source, status)
	s.Radial = figure[Coefficient](r, r.text(), 1, r.text(), r.text())
	s.Tangential = figure[Coefficient](r, r.text(), 1, r.text(), r.text())
	s.PairAgrees = r.text() == "yes"
	s.FibreSaturation = fibreSaturation(r, r.text())
	s.Note = r.text()
	t.all = append(t.all, s)
	t.byKey[s.Key] = s
}

// fibreSaturation is 30 % as Eq. 13-3 has it. The 22 % behind the coefficients
// of some woods is from memory.
func fibreSaturation(r *row, value string) Figure[measure.MoistureContent] {
	if value == "30" {
		return figure[measure.MoistureContent](r, value, 1, "FPL-GTR-190 (2010) Eq. 13-3 p. 13-17", "read")
	}
	return figure[measure.MoistureContent](r, value, 1, "FPL-GTR-190 (2010) Table 13-5 footnote", "memory")
}

func (t *tables) known(r *row) *Species {
	key := r.text()
	s := t.byKey[key]
	if s == nil {
		panic(fmt.Sprintf("wood: %s names %q, which species.csv lacks", r.file, key))
	}
	return s
}

func (s *Species) readStrength(r *row) {
	var cell [11]string
	for i := range cell {
		cell[i] = r.text()
	}
	source, status := r.text(), r.text()
	psi := func(v string, times measure.Stress) Figure[measure.Stress] {
		return figure(r, v, times*PSI, source, status)
	}
	s.GravityGreen = figure[Gravity](r, cell[0], 1, source, status)
	s.Gravity12 = figure[Gravity](r, cell[1], 1, source, status)
	s.TestedAt = measure.MoistureContent(r.number(cell[2]))
	s.Rupture = psi(cell[3], 1)
	s.Stiffness = psi(cell[4], 1e6)
	s.Hardness = figure(r, cell[5], PoundForce, source, status)
	s.CompressionAcross = psi(cell[6], 1)
	s.Shear = psi(cell[7], 1)
	s.RuptureGreen = psi(cell[8], 1)
	s.StiffnessGreen = psi(cell[9], 1e6)
	s.Intersection = figure[measure.MoistureContent](r, cell[10], 1, "FPL-GTR-282 (2021) Eq. 5-3", status)
}

func (s *Species) readElastic(r *row) {
	v := [8]string{}
	for i := range v {
		v[i] = r.text()
	}
	source := r.text()
	s.Elastic.Tangential = figure[Ratio](r, v[0], 1, source, v[1])
	s.Elastic.Radial = figure[Ratio](r, v[2], 1, source, v[3])
	s.Elastic.ShearRadial = figure[Ratio](r, v[4], 1, source, v[5])
	s.Elastic.ShearTangential = figure[Ratio](r, v[6], 1, source, v[7])
}

func (s *Species) readBonding(r *row) {
	class := slices.Index(bondWords[:], r.text())
	if class < 1 {
		panic(fmt.Sprintf("wood: %s: unknown class for %s", r.file, s.Key))
	}
	s.Bonding = Bond{Class: Bonding(class), Source: r.text(), Status: r.status(r.text())}
}

// borrow fills what a trade mix lacks from the species that stands for it.
func (s *Species) borrow(kin *Species) {
	from := ", " + kin.Name + " standing for the mix"
	lend(&s.ShrinkVolumetric, kin.ShrinkVolumetric, from)
	lend(&s.GravityGreen, kin.GravityGreen, from)
	lend(&s.Gravity12, kin.Gravity12, from)
	s.TestedAt = kin.TestedAt
	lend(&s.Rupture, kin.Rupture, from)
	lend(&s.Stiffness, kin.Stiffness, from)
	lend(&s.Hardness, kin.Hardness, from)
	lend(&s.CompressionAcross, kin.CompressionAcross, from)
	lend(&s.Shear, kin.Shear, from)
	lend(&s.RuptureGreen, kin.RuptureGreen, from)
	lend(&s.StiffnessGreen, kin.StiffnessGreen, from)
	lend(&s.Intersection, kin.Intersection, from)
	lend(&s.Elastic.Tangential, kin.Elastic.Tangential, from)
	lend(&s.Elastic.Radial, kin.Elastic.Radial, from)
	lend(&s.Elastic.ShearRadial, kin.Elastic.ShearRadial, from)
	lend(&s.Elastic.ShearTangential, kin.Elastic.ShearTangential, from)
	if s.Bonding.Status == Missing && kin.Bonding.Status != Missing {
		s.Bonding = Bond{Class: kin.Bonding.Class, Source: kin.Bonding.Source + from, Status: Borrowed}
	}
}

// lend keeps a figure from memory marked as one; only a read figure becomes
// a borrowed one.
func lend[T ~float64](to *Figure[T], from Figure[T], why string) {
	if to.Known() || !from.Known() {
		return
	}
	*to = Figure[T]{Value: from.Value, Source: from.Source + why, Status: from.Status}
	if from.Status == Read {
		to.Status = Borrowed
	}
}

// row walks the cells of one line of an embedded table. Faults are ours, so
// they panic; a test loads every table.
type row struct {
	file  string
	cells []string
	next  int
}

func (r *row) text() string {
	r.next++
	return r.cells[r.next-1]
}

func (r *row) number(cell string) float64 {
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		panic(fmt.Sprintf("wood: %s: %v", r.file, err))
	}
	return v
}

func (r *row) status(word string) Status {
	s, err := parseStatus(word)
	if err != nil {
		panic(fmt.Sprintf("wood: %s: %v", r.file, err))
	}
	return s
}

// figure is the cell in our unit; an empty cell is a missing figure.
func figure[T ~float64](r *row, cell string, unit T, source, status string) Figure[T] {
	if cell == "" {
		return Figure[T]{}
	}
	return Figure[T]{Value: T(r.number(cell)) * unit, Source: source, Status: r.status(status)}
}

// eachRow calls do for every line of an embedded table below its heading.
func eachRow(file, head string, do func(*row)) {
	text, err := data.ReadFile("data/" + file)
	if err != nil {
		panic(err)
	}
	in := csv.NewReader(bytes.NewReader(text))
	in.Comment = '#'
	in.ReuseRecord = true
	for line := 0; ; line++ {
		cells, err := in.Read()
		if err == io.EOF {
			return
		}
		if err != nil {
			panic(fmt.Sprintf("wood: %s: %v", file, err))
		}
		if line == 0 {
			if got := strings.Join(cells, " "); got != head {
				panic(fmt.Sprintf("wood: %s has columns %q, want %q", file, got, head))
			}
			continue
		}
		do(&row{file: file, cells: cells})
	}
}
