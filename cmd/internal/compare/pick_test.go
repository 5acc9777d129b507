package compare

import (
	"slices"
	"strings"
	"testing"

	"pvtally/rules/site"
	"pvtally/schema"
)

// TestPick: which classes of a sheet are compared.
func TestPick(t *testing.T) {
	doc, err := schema.Decode([]byte(`{"format": "pvtally.sheet/1", "series": "KR", "models": [
		{"name": "KR-400", "stc": {"pmax_w": 400}}, {"name": "KR-410", "aliases": ["Ridge 410"], "stc": {"pmax_w": 410}}, {"stc": {"pmax_w": 405}}]}`))
	if err != nil {
		t.Fatal(err)
	}
	classes := site.Modules(doc.Sheet)
	for _, c := range []struct {
		name   string
		wanted []string
		alone  bool
		want   string
		says   string
	}{
		{"a lone sheet", nil, true, "KR-400 KR-410 KR 405 W", ""},
		{"among others the highest", nil, false, "KR-410", "of 3 classes the highest is compared"},
		{"by name", []string{"kr-400"}, false, "KR-400", ""},
		{"by alias", []string{"ridge 410"}, false, "KR-410", ""},
		{"by watts", []string{"405", "400 W"}, false, "KR-400 KR 405 W", ""},
		{"none", []string{"500"}, false, "", "it has no class 500; it has KR-400, KR-410 and KR 405 W"},
	} {
		p := Picker{Wanted: c.wanted}
		list, note, why := p.Pick(classes, c.alone)
		var names []string
		for i := range list {
			names = append(names, list[i].Name)
		}
		if got := strings.Join(names, " "); got != c.want || !strings.HasPrefix(note+why, c.says) {
			t.Errorf("%s: %q %q %q", c.name, got, note, why)
		}
		if missed := p.Missed() != nil; missed != slices.Equal(c.wanted, []string{"500"}) {
			t.Errorf("%s: missed %v", c.name, p.Missed())
		}
	}
}

// TestTooMany: a list is no comparison.
func TestTooMany(t *testing.T) {
	var list []Candidate
	for range MaxOptions + 1 {
		list = append(list, candidates(t, nil, "example-270.json")...)
	}
	if _, err := Build(Input{Site: DefaultSite(), Options: list}); err == nil || !strings.Contains(err.Error(), "--class") {
		t.Error(err)
	}
	if _, err := Build(Input{Site: DefaultSite()}); err == nil {
		t.Error("nothing was compared")
	}
	for _, form := range []string{"text", "markdown", "html", "csv", "json"} { // the most there can be
		write(t, form, build(t, Input{Site: target(t, "5.4kW", "12 m x 4.5 m"), Options: list[:MaxOptions]}))
	}
}
