package compare

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"
	"golang.org/x/net/html"

	"pvtally/rules/site"
	"pvtally/schema"
)

var update = flag.Bool("update", false, "write the goldens anew")

const data = "../../../testdata/compare/"

// candidates are the classes of records in testdata/compare, with an edit of each record.
func candidates(t testing.TB, edit func(*schema.Sheet), files ...string) (list []Candidate) {
	t.Helper()
	for _, f := range files {
		text, err := os.ReadFile(data + f)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := schema.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		if edit != nil {
			edit(doc.Sheet)
		}
		for _, m := range site.Modules(doc.Sheet) {
			list = append(list, Candidate{Module: &m, File: filepath.Base(f), Verdict: "clear"})
		}
	}
	return list
}

func build(t testing.TB, in Input) *Doc {
	t.Helper()
	if in.Site == nil {
		in.Site = DefaultSite()
	}
	if in.Version == "" {
		in.Version = "(test)"
	}
	d, err := Build(in)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// roofInput is the golden scenario: three invented modules on an invented roof.
func roofInput(t testing.TB) Input {
	t.Helper()
	place, err := os.ReadFile(data + "roof/site.json")
	if err != nil {
		t.Fatal(err)
	}
	costs, err := os.ReadFile(data + "roof/prices.json")
	if err != nil {
		t.Fatal(err)
	}
	in := Input{Options: candidates(t, nil, "roof/kr-hc108.json", "roof/wz-t48.json", "roof/fm-108t.json")}
	if in.Site, err = ParseSite(place, os.ReadFile); err != nil {
		t.Fatal(err)
	}
	if in.Prices, err = ParsePrices(costs); err != nil {
		t.Fatal(err)
	}
	return in
}

func write(t testing.TB, form string, d *Doc) []byte {
	t.Helper()
	f, ok := Lookup(form)
	if !ok {
		t.Fatalf("no form %q", form)
	}
	var b bytes.Buffer
	if err := f.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestGolden: the scenario in every form of text, in both systems of units.
func TestGolden(t *testing.T) {
	for _, c := range []struct{ file, form string }{
		{"roof.text", "text"}, {"roof.json", "json"}, {"roof.markdown", "markdown"}, {"roof.csv", "csv"}, {"roof.html", "html"}, {"roof.us.text", "text"},
	} {
		t.Run(c.file, func(t *testing.T) {
			in := roofInput(t)
			in.US = strings.Contains(c.file, ".us.")
			got := write(t, c.form, build(t, in))
			path := data + "golden/" + c.file
			if *update {
				if err := os.WriteFile(path, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), string(got)); diff != "" {
				t.Errorf("%s is stale (go test ./cmd/internal/compare -update):\n%s", c.file, diff)
			}
		})
	}
}

// TestWorkbook: the workbook holds what the CSV holds; numbers are numbers.
func TestWorkbook(t *testing.T) {
	d := build(t, roofInput(t))
	book, err := excelize.OpenReader(bytes.NewReader(write(t, "xlsx", d)))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	rows, err := book.GetRows("comparison")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := len(rows), strings.Count(string(write(t, "csv", d)), "\r\n"); got != want {
		t.Errorf("%d rows, the CSV has %d", got, want)
	}
	kind, err := book.GetCellType("comparison", "G40")
	if err != nil || kind == excelize.CellTypeSharedString || kind == excelize.CellTypeInlineString {
		t.Errorf("a value is of type %v (%v)", kind, err)
	}
}

var anyNumber = regexp.MustCompile(`[0-9]+(?:\.[0-9]+)?`)

// TestNumbersOfThePage: every number that the page shows, in text, tables and pictures, stands in the JSON.
func TestNumbersOfThePage(t *testing.T) {
	for _, us := range []bool{false, true} {
		in := roofInput(t)
		in.US = us
		d := build(t, in)
		known := map[string]bool{}
		for _, n := range anyNumber.FindAllString(string(write(t, "json", d)), -1) {
			known[n] = true
		}
		root, err := html.Parse(bytes.NewReader(write(t, "html", d)))
		if err != nil {
			t.Fatal(err)
		}
		shown := 0
		for _, text := range visible(root) {
			for _, n := range anyNumber.FindAllString(text, -1) {
				shown++
				if !known[n] {
					t.Errorf("%q is on the page (%q) and not in the JSON", n, text)
				}
			}
		}
		if shown < 500 {
			t.Errorf("only %d numbers found on the page", shown)
		}
	}
}

// visible are the page's texts and what a screen reader speaks.
func visible(n *html.Node) (list []string) {
	if n.Type == html.ElementNode && (n.Data == "style" || n.Data == "script") {
		return nil
	}
	if n.Type == html.TextNode {
		list = append(list, n.Data)
	}
	for _, a := range n.Attr {
		if a.Key == "aria-label" || a.Key == "title" || a.Key == "alt" {
			list = append(list, a.Val)
		}
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		list = append(list, visible(c)...)
	}
	return list
}

// TestPageIsAlone: nothing on the page leads out of it, and a policy forbids it besides.
func TestPageIsAlone(t *testing.T) {
	page := string(write(t, "html", build(t, roofInput(t))))
	for _, way := range []string{"http:", "https:", "src=", "href=", "url(", "@import", "<script", "<iframe", "<link"} {
		if strings.Contains(page, way) {
			t.Errorf("the page has %q", way)
		}
	}
	if !strings.Contains(page, `content="default-src 'none'; style-src 'unsafe-inline'"`) {
		t.Error("no policy against loading")
	}
	for _, must := range []string{`lang="en"`, `role="img" aria-label=`, `<th scope="row">`, `<th scope="col">`} {
		if !strings.Contains(page, must) {
			t.Errorf("the page lacks %q, by which screen readers go", must)
		}
	}
}

// TestHostile: names from a sheet and a site can hurt no form.
func TestHostile(t *testing.T) {
	evil := "<script>alert(1)</script>\x1b[2J\"' onload=x `a` | =1+1"
	in := roofInput(t)
	in.Options = candidates(t, func(s *schema.Sheet) {
		s.Maker, s.Series, s.Models[0].Name = evil, evil, evil
	}, "example-270.json", "example-260.json")
	in.Site.Name, in.Options[0].File = evil, "="+evil
	d := build(t, in)
	for _, form := range []string{"text", "json", "markdown", "csv", "html"} {
		out := string(write(t, form, d))
		if strings.Contains(out, "\x1b") {
			t.Errorf("%s lets an escape sequence through", form)
		}
		if (form == "html" || form == "markdown") && strings.Contains(out, "<script") {
			t.Errorf("%s lets a script through", form)
		}
		if form == "csv" && strings.Contains(out, "\r\n=") {
			t.Errorf("a cell of the CSV is a formula")
		}
	}
}

// TestJSON: the document decodes, and what is unknown is left out.
func TestJSON(t *testing.T) {
	var got map[string]any
	if err := json.Unmarshal(write(t, "json", build(t, roofInput(t))), &got); err != nil {
		t.Fatal(err)
	}
	if got["format"] != Format || got["answer"] == "" {
		t.Errorf("format %v, answer %v", got["format"], got["answer"])
	}
	if s := string(write(t, "json", build(t, Input{Options: candidates(t, nil, "example-270.json")}))); strings.Contains(s, "null") {
		t.Error("an unknown thing stands as null")
	}
}
