package page

import (
	"bytes"
	"context"

	"github.com/klippa-app/go-pdfium/requests"
)

// copyPDF saves a document anew, without encryption and with whatever PDFium mended when it read it.
func copyPDF(ctx context.Context, data []byte) (answer, error) {
	var out bytes.Buffer
	err := withGuest(ctx, func(g *guest) error {
		doc, err := g.inst.OpenDocument(&requests.OpenDocument{File: &data})
		if err != nil {
			return err
		}
		_, err = g.inst.FPDF_SaveAsCopy(&requests.FPDF_SaveAsCopy{Document: doc.Document, Flags: requests.SaveFlagRemoveSecurity, FileWriter: &out})
		return err
	})
	return answer{Raw: out.Bytes()}, err
}
