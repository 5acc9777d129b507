package page

import (
	"bytes"
	"fmt"
	"os"
	"testing"

	"github.com/ledongthuc/pdf"
)

func TestDebugFonts(t *testing.T) {
	file := os.Getenv("DBG_FONTS")
	if file == "" {
		t.Skip()
	}
	data, _ := os.ReadFile(file)
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	p := r.Page(2)
	fonts := p.Resources().Key("Font")
	for _, k := range fonts.Keys() {
		f := fonts.Key(k)
		fmt.Println(k, f.Key("Subtype"), f.Key("BaseFont"), "ENC", f.Key("Encoding"), "TOU", f.Key("ToUnicode").Kind(), "W", f.Key("Widths").Len())
	}
	s := &shower{}
	s.now = showState{ctm: identity, th: 1}
	func() {
		defer func() { fmt.Println("recovered", recover()) }()
		s.run(p.V.Key("Contents"), newScope(p.Resources()), 0)
	}()
	fmt.Println(len(s.chars))
	for _, w := range joinWords(s.chars) {
		fmt.Print(w.Text, " ")
	}
}
