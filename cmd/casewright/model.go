package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"casewright/internal/model"
	"casewright/internal/piece"

	"github.com/spf13/cobra"
)

// format is a file format for solids.
type format struct {
	ending string
	kind   kind
	what   string
	alone  bool                                           // holds one part only
	write  func(*commission, *piece.Part) ([]byte, error) // no part: the whole piece
}

var formats = []format{
	{".glb", kind{"glTF", "a glTF file"}, "glTF, for pictures and for turning it on a screen", false, scene(model.GLB)},
	{".step", kind{"ISO-10303-21;", "a STEP file"}, "STEP, solids for a machine's own software", false, scene(model.STEP)},
	{".3mf", kind{"PK", "a 3MF file"}, "3MF, for a printer", false, scene(model.ThreeMF)},
	{".stl", kind{"", "an STL file"}, "STL, one part in triangles", true, scene(stl)},
	{".dxf", kind{"", "a DXF file"}, "DXF, three views of one part in true size", true, func(j *commission, p *piece.Part) ([]byte, error) { return j.Model.PartDXF(p) }},
}

// scene hands a writer the piece, or one part alone.
func scene(write func(model.Scene) ([]byte, error)) func(*commission, *piece.Part) ([]byte, error) {
	return func(j *commission, p *piece.Part) ([]byte, error) {
		if p == nil {
			return write(j.Model.Scene())
		}
		return write(j.Model.PartScene(p))
	}
}

func stl(s model.Scene) ([]byte, error) { return model.STL(s.Name, s.Nodes[0].Mesh) }

func newModel() *cobra.Command {
	var out, part string
	c := &cobra.Command{
		Use:   "model [PATH]",
		Short: "Write the piece, or one part, in three dimensions",
		Long: `Works out every part of the commission in PATH (by default the current folder) as an
exact solid with all its joints, and writes it for other programs. The ending of the
file says in which format:

` + endings() + `
Parts are named by their marks. With --part only that part is written, lying in its own
frame: length along x, width along y, thickness along z. Curves are facets no more than
1/20 mm off the true curve. Millimetres, but for glTF, which is in metres.

The file is written whole or not at all. One that is there already is replaced only if
it is of the same kind.`,
		Example: `  casewright model examples/sideboard -o sideboard.glb
  casewright model examples/hall-cabinet -o side.step --part A1`,
		Args: atMost(1, "one PATH"),
		RunE: func(c *cobra.Command, args []string) error { return runModel(c, args, out, part) },
	}
	c.Flags().StringVarP(&out, "output", "o", "", "the file to write (by default the commission's name with .glb)")
	c.Flags().StringVar(&part, "part", "", "only this part, by its mark or path")
	return c
}

func endings() string {
	var b strings.Builder
	for _, f := range formats {
		fmt.Fprintf(&b, "  %-6s %s\n", f.ending, f.what)
	}
	return b.String()
}

func formatOf(path string) (format, error) {
	end := strings.ToLower(filepath.Ext(path))
	if end == ".stp" {
		end = ".step"
	}
	if i := slices.IndexFunc(formats, func(f format) bool { return f.ending == end }); i >= 0 {
		return formats[i], nil
	}
	return format{}, fmt.Errorf("%s has no ending that says which format to write; the endings are\n%s", shown(path), strings.TrimRight(endings(), "\n"))
}

func runModel(c *cobra.Command, args []string, out, part string) error {
	job, err := openShaped(c, args)
	if err != nil {
		return err
	}
	if out == "" {
		out = job.Spec.Commission.Name + ".glb"
	}
	f, err := formatOf(out)
	if err != nil {
		return err
	}
	if f.alone && part == "" {
		return fmt.Errorf("%s holds one part: say which with --part, as in --part A1", f.ending)
	}
	if err := mayWrite(out, f.kind); err != nil {
		return err
	}
	p, what := (*piece.Part)(nil), job.Spec.Commission.Name
	if part != "" {
		if p = job.Piece.Part(part); p == nil {
			return job.noSuchPart(part)
		}
		what = p.Mark + " " + p.Name
	}
	b, err := f.write(job, p)
	if err != nil {
		return fmt.Errorf("the model could not be made: %w", err)
	}
	if err := writeWhole(c.Context(), out, b); err != nil {
		return err
	}
	return write(c.OutOrStdout(), fmt.Appendf(nil, "wrote %s: %s, %d KB\n", shown(out), what, (len(b)+1023)/1024))
}

func (j *commission) noSuchPart(name string) error {
	var known []string
	for _, p := range j.Piece.Parts {
		known = append(known, p.Mark, p.Path)
	}
	return fmt.Errorf("no part has the mark or path %q%s", clip(name), didYouMean(name, known))
}
