package sheet_test

import (
	"bytes"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"

	"casewright/internal/sheet"
)

// TestSecondOpinion asks a second PDF library whether our files are valid.
func TestSecondOpinion(t *testing.T) {
	api.DisableConfigDir()
	for _, doc := range []sheet.Doc{sample(), {Pages: make([]sheet.Page, 1)}} {
		pdf := mustPDF(t, doc)
		if err := api.Validate(bytes.NewReader(pdf), nil); err != nil {
			t.Errorf("pdfcpu: %v", err)
		}
		n, err := api.PageCount(bytes.NewReader(pdf), nil)
		if err != nil || n != len(doc.Pages) {
			t.Errorf("pdfcpu counts %d pages (%v), want %d", n, err, len(doc.Pages))
		}
	}
}
