package sheet_test

import (
	"fmt"

	"casewright/internal/measure"
	"casewright/internal/sheet"
)

// The example of the package comment, so that it compiles.
func Example() {
	page := sheet.Page{Paper: sheet.Letter}
	frame := page.Paper.Frame()
	side := sheet.Box{W: 520.7, H: 679.45} // the case, 20 1/2 × 26 3/4 in
	view := sheet.FitView(side, frame.Inset(30), sheet.InchScales)
	inches := measure.Style{Graduation: measure.ThirtySeconds}
	dims := sheet.Dimensions(view.OnPaper(), sheet.DimStyle{},
		view.Chain(sheet.Below, inches, 0, measure.Inch*41/2),
		view.Chain(sheet.LeftOf, inches, 0, measure.Inch*107/4))
	page.Add(view.Place(sheet.Rect(side, sheet.Wide, sheet.NoFill)), dims,
		sheet.TitleBlock{Piece: "Hall cabinet", Sheet: "Front", Scale: view.Scale.String()}.In(frame))
	pdf, err := sheet.PDF(sheet.Doc{Title: "Hall cabinet", Pages: []sheet.Page{page}})
	fmt.Println(view.Scale, string(pdf[:5]), err)
	// Output: SCALE 1:8 (1 1/2 in = 1 ft) %PDF- <nil>
}
