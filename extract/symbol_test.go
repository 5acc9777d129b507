package extract

import (
	"testing"

	"pvtally/extract/page"
)

// TestPictureLabels reads labels as a picture's reader gives them: words of a script that it has not learned, symbols misread in a
// letter, a little word taken for a number. From a text the same letters mean nothing. The module is invented.
func TestPictureLabels(t *testing.T) {
	build := func(by page.By) map[string]string {
		l := newLaid()
		l.row(40, 100, "Type", 200, 60, "KR-250", "KR-255")
		l.row(40, 115, "lS(BIN2 Dmax (W)", 200, 60, "250", "255")
		l.put(40, 130, 7, "Tension 4d").row(84, 130, "Pmax", 200, 60, "30.2", "30.4")
		l.row(40, 145, "Qx7b Irnp (A)", 200, 60, "8.28", "8.39")
		l.row(40, 160, "FPER ABER Voc (V)", 200, 60, "37.6", "37.8")
		l.row(40, 175, "FEESt Isc (A)", 200, 60, "8.83", "8.89")
		for i := range l.Words {
			l.Words[i].By = by
			l.Words[i].Sure = 1
		}
		sheets := read([]page.Page{l.Page}).records()
		out := map[string]string{}
		for _, s := range sheets {
			for f := range s.Evidence {
				if n, ok := s.At(f); ok {
					out[f] = n.String()
				}
			}
		}
		return out
	}
	got := build(page.ByPicture)
	for f, want := range map[string]string{
		"/models/0/stc/pmax_w": "250", "/models/0/stc/vmp_v": "30.2", "/models/0/stc/imp_a": "8.28", "/models/0/stc/voc_v": "37.6", "/models/0/stc/isc_a": "8.83",
		"/models/1/stc/pmax_w": "255", "/models/1/stc/isc_a": "8.89",
	} {
		if got[f] != want {
			t.Errorf("%s: %q, want %q", f, got[f], want)
		}
	}
	if v, ok := build(page.ByText)["/models/0/stc/pmax_w"]; ok && v == "250" {
		t.Error("a text's Dmax went for Pmax")
	}
}
