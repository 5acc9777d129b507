package changes

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// printedPage sets lines of words on a page, ten points apart.
func printedPage(number int, lines ...string) report.Page {
	p := report.Page{Number: number, Width: 595, Height: 842}
	for i, text := range lines {
		for k, word := range strings.Fields(text) {
			y := 10 * float64(i+1)
			p.Words = append(p.Words, report.Word{Text: word, X0: 40 * float64(k), X1: 40*float64(k) + 30, Y0: y - 8, Y1: y, Baseline: y, Size: 8})
		}
	}
	return p
}

func TestMoved(t *testing.T) {
	tests := []struct {
		name     string
		old, new []report.Page
		want     []Moved
	}{
		{"nothing", []report.Page{printedPage(1, "a b", "c")}, []report.Page{printedPage(1, "a b", "c")}, nil},
		{"one line", []report.Page{printedPage(1, "with notice", "c")}, []report.Page{printedPage(1, "without notice", "c")}, []Moved{{1, "with notice", "without notice"}}},
		{"two lines stand each by itself", []report.Page{printedPage(2, "a", "25 A", "12 years", "b")}, []report.Page{printedPage(2, "a", "20 A", "15 years", "b")},
			[]Moved{{2, "25 A", "20 A"}, {2, "12 years", "15 years"}}},
		{"gone from page 1", []report.Page{printedPage(1, "a", "promise"), printedPage(2, "b")}, []report.Page{printedPage(1, "a"), printedPage(2, "b")}, []Moved{{1, "promise", ""}}},
		{"come on page 2", []report.Page{printedPage(1, "a"), printedPage(2, "b")}, []report.Page{printedPage(1, "a"), printedPage(2, "b", "new text")}, []Moved{{2, "", "new text"}}},
		{"another page, the same text", []report.Page{printedPage(1, "a", "b")}, []report.Page{printedPage(1, "a"), printedPage(2, "b")}, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, left := moved(test.old, test.new)
			if diff := cmp.Diff(test.want, got); diff != "" || left != 0 {
				t.Errorf("%d left; -want +got\n%s", left, diff)
			}
		})
	}
}

func TestMovedIsBounded(t *testing.T) {
	var a, b []string
	for i := range 2000 {
		a, b = append(a, "old "+strings.Repeat("x", i%50)+string(rune('a'+i%26))), append(b, "new "+strings.Repeat("y", i%60)+string(rune('a'+i%26)))
	}
	list, left := moved([]report.Page{printedPage(1, a...)}, []report.Page{printedPage(1, b...)})
	if len(list) > maxMoved || len(list)+left == 0 {
		t.Errorf("%d listed, %d left", len(list), left)
	}
}

func TestPairs(t *testing.T) {
	s := func(series string) *schema.Sheet { return &schema.Sheet{Series: series} }
	name := func(s *schema.Sheet) string {
		if s == nil {
			return "-"
		}
		return s.Series
	}
	for _, test := range []struct{ name, old, new, want string }{
		{"by series", "A B", "B A", "A=A B=B"},
		{"the rest in order", "A B", "B C", "A=C B=B"},
		{"one gone", "A B", "B", "A=- B=B"},
		{"one new", "A", "A B", "A=A -=B"},
		{"no series at all", "_", "_", "_=_"},
	} {
		t.Run(test.name, func(t *testing.T) {
			var old, new []*schema.Sheet
			for _, n := range strings.Fields(test.old) {
				old = append(old, s(n))
			}
			for _, n := range strings.Fields(test.new) {
				new = append(new, s(n))
			}
			var got []string
			for _, p := range pairs(old, new) {
				got = append(got, name(p[0])+"="+name(p[1]))
			}
			if strings.Join(got, " ") != test.want {
				t.Errorf("%q, want %q", got, test.want)
			}
		})
	}
}

// TestHostileText: nothing that a sheet says becomes more than text, in any form.
func TestHostileText(t *testing.T) {
	evil := "\x1b]0;x\x07\u009b2J\u202e\n=1|<script>alert(1)</script>`](http://leak.invalid)"
	n := schema.MustNumber
	sheet := func(voc string, extra string) *schema.Sheet {
		return &schema.Sheet{Series: evil, Body: schema.Body{Connector: evil + extra}, Limits: schema.Limits{SystemVoltage: []schema.Number{n("1500")}},
			Models: []schema.Model{{Name: evil, STC: schema.Electrical{Pmax: n("400"), Voc: n(voc)}}, {Name: evil + extra, STC: schema.Electrical{Pmax: n("41" + voc[:1])}}}}
	}
	d := Build("v0", Edition{evil, []*schema.Sheet{sheet("37.1", "")}, []report.Page{printedPage(1, "a", evil)}},
		Edition{evil, []*schema.Sheet{sheet("47.1", "2"), {Series: evil + "3"}}, []report.Page{printedPage(1, "a", evil+"2")}})
	if d.Summary.Strings == 0 || len(d.Text) == 0 || d.Summary.Classes == 0 {
		t.Fatalf("the test shows too little: %+v", d.Summary)
	}
	for _, f := range forms {
		for _, colour := range []bool{false, true} {
			var b bytes.Buffer
			if err := f.Write(&b, d, colour); err != nil {
				t.Fatal(err)
			}
			text := b.String()
			if colour && f.Name == "text" {
				text = strings.NewReplacer("\x1b[1;31m", "", "\x1b[1;33m", "", "\x1b[1;36m", "", "\x1b[0m", "").Replace(text)
			}
			for _, r := range text {
				if r != '\n' && (unicode.Is(unicode.Cc, r) || unicode.Is(unicode.Cf, r)) {
					t.Fatalf("%s: %q in %q", f.Name, r, text)
				}
			}
			if f.Name != "json" && f.Name != "text" && strings.Contains(text, "<script") || strings.Contains(text, "\n=1") {
				t.Errorf("%s: %q", f.Name, text)
			}
			if f.Name == "json" && !json.Valid(b.Bytes()) {
				t.Errorf("no JSON: %q", text)
			}
		}
	}
}
