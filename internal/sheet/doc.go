// Package sheet draws true to scale on paper: a display list in millimetres
// goes in, a PDF or SVG file comes out.
//
// A [Doc] is a list of [Page]s, a page a list of [Item]s: lines, curves, text
// and groups of them. On top of the list stand what a drawing needs: [View]s
// at a preferred [Scale], dimensions that stack and never print over each
// other ([Dimensions]), hatching, notes, balloons, symbols, the title block,
// tables that run over pages, and full-size drawings cut into tiles ([Tile]).
//
//	page := sheet.Page{Paper: sheet.Letter}
//	frame := page.Paper.Frame()
//	side := sheet.Box{W: 520.7, H: 679.45} // the case, 20 1/2 × 26 3/4 in
//	view := sheet.FitView(side, frame.Inset(30), sheet.InchScales)
//	inches := measure.Style{Graduation: measure.ThirtySeconds}
//	dims := sheet.Dimensions(view.OnPaper(), sheet.DimStyle{},
//		view.Chain(sheet.Below, inches, 0, measure.Inch*41/2),
//		view.Chain(sheet.LeftOf, inches, 0, measure.Inch*107/4))
//	page.Add(view.Place(sheet.Rect(side, sheet.Wide, sheet.NoFill)), dims,
//		sheet.TitleBlock{Piece: "Hall cabinet", Sheet: "Front", Scale: view.Scale.String()}.In(frame))
//	pdf, err := sheet.PDF(sheet.Doc{Title: "Hall cabinet", Pages: []sheet.Page{page}})
//
// Views that belong together are laid out in projection by [Figures].
//
// It promises that a millimetre is a millimetre in the file, that everything
// can be told apart in black and white, that text can be copied out of the PDF
// (stacked fractions too), and that the same list gives the same bytes.
//
// It does not know what is drawn: parts and joints are turned into items by
// package book. How a length reads is decided in package measure, how letters
// sit in package lettering. DXF is a further writer over the same list.
//
// Units and frame: float64 millimetres on paper, origin at the upper left
// corner of the page, x to the right, y DOWN, angles counter-clockwise as
// seen. Models are float64 millimetres with y UP; a [View] carries one over
// into the other. Widths of lines and sizes of type always mean paper, also
// inside a scaled group.
package sheet
