package arch

// row is one package. Rows stand in import order: a package may import those
// above it, unless the table named apart says no.
type row struct {
	path string // below internal/, except cmd/…
	// alone is the reason that it imports nothing further down.
	alone string
	// outside lists packages of the outside world it may import although the
	// road may not, with the reason.
	outside map[string]string
	// tests marks packages that only _test.go files may import; they may
	// import the outside world freely.
	tests bool
	// edge marks packages that deal with people, files and the clock.
	edge bool
	// planned marks a package that is being written. It must be cleared once
	// the package exists.
	planned bool
}

// rooms is the list of packages in import order.
var rooms = []row{
	{path: "diag", alone: "every room reports with it, so it can know none of them"},
	{path: "measure", alone: "everything is written in quantities; a quantity knows nothing of what it measures"},
	{path: "why", alone: "a size may come from anywhere, so how it came about is told without knowing the trade"},
	{path: "wood", alone: "wood moves and bends the same whatever is made of it"},
	{path: "curve", alone: "a line is the same line whoever follows it"},
	{path: "solid/view", alone: "what is seen of a closed shape does not depend on what it is a part of"},
	{path: "design", alone: "what the text says must be readable before anybody knows what follows from it"},
	{path: "joinery", alone: "a joint is proportioned from two parts' sizes, before parts have a place"},
	{path: "piece", alone: "the piece is derived once; whatever judges or draws it must not be able to bend it"},
	{path: "model", alone: "a file format knows shapes and names; what they are the solid room fills in"},
	{path: "model/dxf", alone: "a cutter's file takes lines; which ones is the caller's business"},
	{path: "solid/csg", alone: "planes and prisms know no wood, so that they can be measured and reused alone"},
	{path: "solid", alone: "a shape follows from the piece; whether it is a good one is for the checks to say"},
	{path: "check", alone: "a finding is about the piece, not about how it is shown"},
	{path: "sheet/lettering", alone: "measuring text is a low room's work; a drawing asks it, never the other way"},
	{path: "sheet", alone: "paper takes lines and words; which ones is the book's business",
		outside: map[string]string{"time": "the PDF writer wants a date: a fixed one is handed to it, never the clock's"}},
	{path: "book", alone: "the book is handed results; it must not run the stages again"},
	{path: "compile", alone: "the one door serves command line, server and tests, so it can know none of them"},
	{path: "cmd/casewright", alone: "nothing stands below the command line", edge: true},
	{path: "testkit", alone: "test helpers serve every room, so they can know none of them", tests: true},
	{path: "testkit/designs", alone: "random commissions are plain text; the rooms above compile them", tests: true},
	{path: "arch", alone: "it reads the source as text and needs none of it", tests: true},
}

// ban is an import that points up the list and is forbidden all the same. "*"
// stands for every package.
type ban struct{ from, to, because string }

// apart lists the forbidden upward imports.
var apart = []ban{
	{"wood", "why", "a table figure carries its source itself; only sizes of a piece have fathers"},
	{"curve", "wood", "mathematics stays apart from wood: the stiffness of a batten is the caller's to give"},
	{"curve", "why", "a station on a curve is float64 millimetres, not a size somebody asked for"},
	{"design", "curve", "the text names a curve and its sizes; the piece bends it"},
	{"joinery", "design", "a joint is given sizes, not text, so that it can be tried without any"},
	{"joinery", "curve", "joints are cut before a front is shaped; the piece combines the two"},
	{"solid/csg", "piece", "mathematics stays apart from wood"},
	{"model", "*", "a writer of files takes plain shapes, so that it can be held against outside readers alone"},
	{"model/dxf", "measure", "lines come as millimetres; how a length reads is decided before"},
	{"solid/view", "*", "a view is of shapes in plain millimetres; sizes, parts and paper are the caller's"},
	{"sheet/lettering", "*", "letters are set from plain strings; how a length reads is decided before"},
	{"sheet", "why", "a drawing shows a size and does not explain it"},
	{"sheet", "wood", "paper knows no wood"},
	{"sheet", "curve", "a curve comes to the sheet as points"},
	{"sheet", "design", "a drawing is of the piece, never of the text"},
	{"sheet", "joinery", "the book turns joints into lines"},
	{"sheet", "piece", "the book turns parts into lines"},
	{"sheet", "check", "the book words the findings"},
	{"cmd/casewright", "joinery", "the command line goes through compile"},
	{"cmd/casewright", "curve", "the command line goes through compile"},
	{"cmd/casewright", "sheet/lettering", "the command line prints plain text"},
	{"testkit", "*", "a helper that knows a room cannot serve the rooms above it"},
	{"arch", "*", "the rules must be checkable when the rooms do not even compile"},
}

// world lists the standard packages that reach outside the program: files,
// network, processes, clock, chance. A path ending in / stands for everything
// below it.
var world = []string{
	"os", "os/", "net", "net/", "syscall", "io/ioutil", "path/filepath",
	"time", "log", "log/", "math/rand", "math/rand/", "crypto/rand", "unsafe", "plugin", "C",
}

// module is an outside module and the rooms that may import it. No rooms
// means: test files only.
type module struct {
	path    string
	rooms   []string
	because string
}

// modules lists every outside module that source may import; decision records
// 3, 5 and 7 give the reasons at length. gotest.tools is left out on purpose: it
// defines the flag -update, as testkit does.
var modules = []module{
	{"github.com/hashicorp/hcl/v2", []string{"design"}, "parsing the language; no other room sees its types"},
	{"github.com/zclconf/go-cty", []string{"design"}, "the values HCL hands back"},
	{"codeberg.org/go-pdf/fpdf", []string{"sheet"}, "PDF objects and cutting fonts down"},
	{"golang.org/x/image", []string{"sheet/lettering"}, "the Go fonts and their outlines"},
	{"golang.org/x/text", []string{"sheet/lettering"}, "Unicode normal forms of what people paste"},
	{"github.com/rivo/uniseg", []string{"diag", "design", "cmd/casewright"}, "columns and widths in grapheme clusters"},
	{"github.com/agext/levenshtein", []string{"wood", "design", "piece", "cmd/casewright"}, "close names"},
	{"gonum.org/v1/gonum", []string{"curve"}, "quadrature and elliptic integrals"},
	{"github.com/spf13/cobra", []string{"cmd/casewright"}, "commands, help and completion"},
	{"github.com/spf13/pflag", []string{"cmd/casewright"}, "the flags behind cobra"},
	{"github.com/google/go-cmp", []string{"testkit"}, "differences a person can read"},
	{"pgregory.net/rapid", []string{"testkit"}, "properties on random pieces"},
	{"github.com/rogpeppe/go-internal", nil, "command scripts with files inline"},
	{"github.com/pdfcpu/pdfcpu", nil, "a second opinion on our PDF files"},
	{"github.com/peterstace/simplefeatures", nil, "polygon areas checked by somebody else's code"},
}
