package page

import (
	"context"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const (
	older   = "BT /F1 10 Tf 20 200 Td (1000V) Tj ET\n"
	current = "BT /F1 10 Tf 20 100 Td (1500V) Tj ET\n"
)

// Every way in which a file holds text that its page does not show.
func TestHidden(t *testing.T) {
	inForm := func(content, entries string) doc {
		return doc{
			extra: []string{stream("/Type /XObject /Subtype /Form /BBox [0 0 400 300] "+entries+" /Resources << /Font << /F1 3 0 R >> >>", content)},
			pages: []leaf{{content: "/X1 Do " + current, resources: fmt.Sprintf("/XObject << /X1 %d 0 R >>", firstExtra)}},
		}
	}
	layer := func(state string) doc {
		return doc{
			catalog: fmt.Sprintf("/OCProperties << /OCGs [%d 0 R] /D << %s >> >>", firstExtra, state),
			extra:   []string{"<< /Type /OCG /Name (older) >>"},
			pages:   []leaf{{content: "/OC /L1 BDC " + older + "EMC " + current, resources: fmt.Sprintf("/Properties << /L1 %d 0 R >>", firstExtra)}},
		}
	}
	plain := func(content string) doc { return doc{pages: []leaf{{content: content}}} }
	tests := []struct {
		name string
		doc  doc
		want Hidden // of the older value
	}{
		{"visible", plain(older + current), Visible},
		{"outside its clip", plain("q 300 250 20 20 re W n " + older + "Q " + current), Clipped},
		{"inside its clip", plain("q 10 190 100 30 re W n " + older + "Q " + current), Visible},
		{"clip that is no rectangle, outside", plain("q 0 150 m 200 150 l 200 290 l 190 290 l h W n " + older + "Q " + current), NoInk},
		{"clip that is no rectangle, inside", plain("q 0 150 m 200 150 l 200 290 l 0 290 l 0 280 l h W n " + older + "Q " + current), Visible},
		{"clip of a form", inForm("300 250 20 20 re W n "+older, ""), Clipped},
		{"clip moved with its form", inForm("10 190 100 30 re W n "+older, "/Matrix [1 0 0 1 100 0]"), Visible},
		{"box of a form", inForm(older, "/Matrix [1 0 0 1 0 0] /BBox [300 0 400 300]"), Clipped},
		{"invisible render mode", plain("BT 3 Tr ET " + older + "BT 0 Tr ET " + current), Unpainted},
		{"fully transparent", doc{pages: []leaf{{content: "/G1 gs " + older + "/G0 gs " + current, resources: "/ExtGState << /G1 << /ca 0 >> /G0 << /ca 1 >> >>"}}}, Unpainted},
		{"white on paper", plain("1 g " + older + "0 g " + current), PaperInk},
		{"white on a dark bar", plain("0.1 g 0 190 400 30 re f 1 g " + older + "0 g " + current), Visible},
		{"bar's colour on the bar", plain("0.1 g 0 190 400 30 re f 0.12 g " + older + "0 g " + current), PaperInk},
		{"under a later bar", plain(older + "0.9 g 0 190 400 30 re f 0 g " + current), Covered},
		{"under a later round panel", plain(older + "0.9 g 0 180 m 400 180 l 400 230 l 300 250 100 250 0 230 c f 0 g " + current), NoInk},
		{"beside a later round panel", plain(older + "0.9 g 200 180 m 400 180 l 400 230 l 350 250 250 250 200 230 c f 0 g " + current), Visible},
		{"under a bar that lets through", doc{pages: []leaf{{content: older + "/G1 gs 0.9 g 0 190 400 30 re f /G0 gs 0 g " + current, resources: "/ExtGState << /G1 << /ca 0.2 >> /G0 << /ca 1 >> >>"}}}, Visible},
		{"under other words on a panel", plain(older + "0.9 g 0 180 m 400 180 l 400 230 l 300 250 100 250 0 230 c f 0.8 0 0 rg 20 201 40 2 re f 20 205 40 2 re f 0 g " + current), Overprint},
		{"beyond the page", plain("q 1 0 0 1 1000 0 cm " + older + "Q " + current), OffPage},
		{"the same again", plain("BT /F1 10 Tf 20.2 100 Td (1500V) Tj ET\n" + current), Visible},
		{"layer on", layer(""), Visible},
		{"layer off", layer(fmt.Sprintf("/OFF [%d 0 R]", firstExtra)), NoInk},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := readOne(t, tt.doc.bytes())
			for _, w := range p.Words {
				if w.Text == "1000V" && w.Hidden != tt.want {
					t.Errorf("older value: got %q, want %q", w.Hidden, tt.want)
				}
				if w.Text != "1000V" && w.Text != "1500V" {
					t.Errorf("unexpected word %q", w.Text)
				}
			}
			want := "1500V"
			if tt.want == Visible && tt.name != "the same again" {
				want = "1000V 1500V"
			}
			if diff := cmp.Diff(want, seen(p)); diff != "" {
				t.Errorf("visible words (-want +got)\n%s", diff)
			}
		})
	}
}

// Lettering made bold by printing it twice keeps one copy, letter for letter; "ll" stays two letters.
func TestRepetition(t *testing.T) {
	p := readOne(t, one(text(20, 200, 10, "full cell")+text(20.3, 200, 10, "full cell")+text(20, 199.8, 10, "full cell")))
	if got := seen(p); got != "full cell" {
		t.Errorf("got %q, want one copy", got)
	}
}

// The layers' state is found in a compressed object stream as well.
func TestHiddenLayers(t *testing.T) {
	tests := []struct {
		name, data string
		want       bool
	}{
		{"none", "<< /Type /Catalog >>", false},
		{"all on", "<< /D << /ON [5 0 R] /OFF [] >> >>", false},
		{"one off", "<< /D << /OFF [5 0 R] >> >>", true},
		{"off unless said", "<< /D << /BaseState/OFF >> >>", true},
		{"not a list of layers", "/OFFSET 5", false},
		{"off, compressed", "<< /Type /ObjStm /Filter /FlateDecode >> stream\r\n" + deflated("<< /OFF [5 0 R] >>"), true},
		{"on, compressed", "<< /Type /ObjStm /Filter /FlateDecode >> stream\n" + deflated("<< /OFF [] >>"), false},
		{"damaged", "<< /Type /ObjStm >> stream\nxyz", false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := hiddenLayers([]byte(tt.data)); got != tt.want {
				t.Errorf("got %v, want %v", got, tt.want)
			}
		})
	}
}

func TestRender(t *testing.T) {
	data := one("1 0 0 rg 0 0 200 150 re f")
	img, err := Render(context.Background(), data, 1, 36)
	if err != nil {
		t.Fatal(err)
	}
	if b := img.Bounds(); b.Dx() != 200 || b.Dy() != 150 {
		t.Fatalf("got %v, want 200 x 150", b)
	}
	at := func(x, y int) [3]uint32 {
		r, g, b, _ := img.At(x, y).RGBA()
		return [3]uint32{r >> 8, g >> 8, b >> 8}
	}
	if at(10, 140) != [3]uint32{255, 0, 0} || at(190, 10) != [3]uint32{255, 255, 255} {
		t.Errorf("got %v at the bottom left and %v at the top right, want red and white", at(10, 140), at(190, 10))
	}
	for name, try := range map[string]struct {
		number int
		dpi    float64
	}{"no such page": {2, 36}, "page nought": {0, 36}, "too fine": {1, 5000}, "too coarse": {1, 0}} {
		if _, err := Render(context.Background(), data, try.number, try.dpi); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
