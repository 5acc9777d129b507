package page

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// shown renders words as a person would check them: one line a baseline, with the column of each word.
func shown(p Page) string {
	var b strings.Builder
	y := -1.0
	for _, w := range p.Words {
		if w.Baseline != y && y >= 0 {
			b.WriteString("\n")
		} else if y >= 0 {
			b.WriteString(" ")
		}
		y = w.Baseline
		fmt.Fprintf(&b, "%s@%.0f", w.Text, (w.Edges[0]-gridMargin)/gridChar)
	}
	return b.String()
}

func TestHTML(t *testing.T) {
	tests := []struct {
		name, html, want string
	}{
		{
			name: "paragraphs are lines, white space is one space",
			html: "<p>Peak  power\n of <b>410</b> W</p><div>next</div>",
			want: "Peak@0 power@5 of@11 410@14 W@18\nnext@0",
		},
		{
			name: "columns of a table stand one under the other",
			html: "<table><tr><th>Model</th><th>KR-400</th><th>KR-405</th></tr><tr><td>Voc</td><td>37.07</td><td>37.23</td></tr></table>",
			want: "Model@0 KR-400@8 KR-405@17\nVoc@0 37.07@8 37.23@17",
		},
		{
			name: "a cell over two columns stands centred over them",
			html: "<table><tr><td>Model</td><td colspan=2>KR</td></tr><tr><td>Condition</td><td>STC</td><td>NMOT</td></tr></table>",
			want: "Model@0 KR@16\nCondition@0 STC@12 NMOT@18",
		},
		{
			name: "a cell over two rows keeps its column free below",
			html: "<table><tr><td rowspan=2>STC</td><td>Pmax</td><td>400</td></tr><tr><td>Voc</td><td>37.1</td></tr></table>",
			want: "STC@0 Pmax@6 400@13\nVoc@6 37.1@13",
		},
		{
			name: "terms and descriptions are a table",
			html: "<dl><dt>Weight</dt><dd>21.5 kg</dd><dt>Frame</dt><dd>Aluminium</dd></dl>",
			want: "Weight@0 21.5@9 kg@14\nFrame@0 Aluminium@9",
		},
		{
			name: "scripts, styles and hidden parts are not text",
			html: "<script>var a = 1500;</script><style>p{}</style><p hidden>1000 V</p><p style='display: none'>25 A</p><p>30 A</p>",
			want: "30@0 A@3",
		},
		{
			name: "a subscript belongs to its letter, a footnote's digit not to its number",
			html: "<p>V<sub>oc</sub> 1000 W/m<sup>2</sup> 405<sup>1</sup></p>",
			want: "Voc@0 1000@4 W/m2@9 405@14\n1@17",
		},
		{
			name: "lines in a cell",
			html: "<table><tr><td>Load</td><td>5400 Pa<br>2400 Pa</td></tr></table>",
			want: "Load@0 5400@7 Pa@12\n2400@7 Pa@12",
		},
		{name: "entities", html: "<p>&minus;0.27&nbsp;%/&deg;C &plusmn;3&thinsp;%</p>", want: "−0.27@0 %/°C@6 ±3@11 %@14"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := HTML("spec.html", []byte(tt.html))
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, shown(pages[0])); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestText(t *testing.T) {
	tests := []struct {
		name, text, want string
	}{
		{name: "spaces place columns", text: "Pmax  W   400 405\r\nVoc   V  37.1 37.2", want: "Pmax@0 W@6 400@10 405@14\nVoc@0 V@6 37.1@9 37.2@14"},
		{name: "tabs make a table", text: "Model\tKR-400\tKR-405\nMax. voltage\t1500\t1500", want: "Model@0 KR-400@15 KR-405@24\nMax.@0 voltage@5 1500@15 1500@24"},
		{name: "a Markdown table", text: "# Data\n\n| Voc | 37.1 |\n|:---|---:|\n| **Isc** | 13.8 |\n", want: "Data@0\nVoc@0 37.1@6\nIsc@0 13.8@6"},
		{name: "a bar that is no table", text: "A | B", want: "A@0 |@2 B@4"},
		{name: "wide characters take two columns", text: "重量 21\nabcd 22", want: "重量@0 21@5\nabcd@0 22@5"},
		{name: "Western Windows code page", text: "Gr\xf6\xdfe 25 \xb0C", want: "Größe@0 25@6 °C@9"},
		{name: "UTF-16", text: "\xff\xfe4\x00\x00\x20", want: "4@0"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := Text("spec.txt", []byte(tt.text))
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, shown(pages[0])); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestTextPages(t *testing.T) {
	pages, err := Text("spec.txt", []byte("one\n\ftwo\n\f\n"))
	if err != nil || len(pages) != 2 || pages[1].Number != 2 || pages[1].Words[0].Text != "two" {
		t.Errorf("got %d pages, %v; want two, the second with \"two\"", len(pages), err)
	}
}

func TestGridBounds(t *testing.T) {
	tests := []struct {
		name string
		read func() ([]Page, error)
	}{
		{"lines", func() ([]Page, error) { return Text("x", []byte(strings.Repeat("a\n", maxGridLines+1))) }},
		{"bytes", func() ([]Page, error) { return Text("x", make([]byte, maxTextBytes+1)) }},
		{"cells by span", func() ([]Page, error) {
			return HTML("x", []byte("<table><tr>"+strings.Repeat("<td colspan=1000 rowspan=1000>a</td>", 60)+strings.Repeat("<tr><td>b</td></tr>", 2000)+"</table>"))
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := tt.read()
			var e *Error
			if !errors.As(err, &e) || e.Remedy == "" {
				t.Errorf("got %v, want an *Error with a remedy", err)
			}
		})
	}
	t.Run("nesting", func(t *testing.T) {
		// The parser itself refuses more than 512 open elements.
		if _, err := HTML("x", []byte(strings.Repeat("<div>", 100_000)+"deep")); err != nil {
			var e *Error
			if !errors.As(err, &e) {
				t.Errorf("got %v, want no error or an *Error", err)
			}
		}
	})
}

func TestTableRules(t *testing.T) {
	pages, err := HTML("spec.html", []byte("<table><tr><td>a</td><td>b</td></tr></table>"))
	if err != nil {
		t.Fatal(err)
	}
	across, down := 0, 0
	for _, r := range pages[0].Rules {
		if r.Box.Y0 == r.Box.Y1 {
			across++
		}
		if r.Box.X0 == r.Box.X1 {
			down++
		}
	}
	if across != 4 || down != 3 {
		t.Errorf("got %d lines across and %d down, want 4 and 3: each cell its top, the last row its bottom, each cell its left, the last column its right", across, down)
	}
}

func TestSniff(t *testing.T) {
	tests := []struct {
		name, data string
		want       Kind
	}{
		{"pdf", "%PDF-1.7\n", KindPDF},
		{"pdf behind other bytes", "\r\n\x1b%PDF-1.4\n", KindPDF},
		{"png", "\x89PNG\r\n\x1a\n\x00\x00", KindPicture},
		{"jpeg", "\xff\xd8\xff\xe0", KindPicture},
		{"tiff", "II*\x00\x08", KindPicture},
		{"html", "\n<!DOCTYPE HTML><html>", KindHTML},
		{"piece of html", "<table class='a'><tr>", KindHTML},
		{"text", "Pmax 400 W", KindText},
		{"text that begins like a bitmap", "BMS module", KindText},
		{"text with an angle", "<1 % loss", KindText},
		{"zip", "PK\x03\x04\x14\x00", KindUnknown},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Sniff([]byte(tt.data)); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}
