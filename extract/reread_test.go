package extract

import (
	"testing"

	"pvtally/extract/page"
	"pvtally/schema"
)

// row makes the claims of one row of a table, each read from a picture.
func pictureRow(literals ...string) []claim {
	var out []claim
	for i, lit := range literals {
		out = append(out, claim{
			field: "/models/" + itoa(i) + "/stc/pmax_w", literal: lit, printed: lit, page: 1, box: page.Box{X0: float64(i)}, by: page.ByPicture, score: inTable, row: "stc/pmax_w",
		})
	}
	return out
}

func TestReread(t *testing.T) {
	for name, c := range map[string]struct {
		first  []string
		at     int    // the cell looked at
		second string // what the cell alone reads
		want   string // "" for unresolved
		twice  bool
	}{
		"both agree":                              {[]string{"465", "470", "475"}, 2, "475", "475", true},
		"units do not matter":                     {[]string{"465", "470", "475"}, 2, "475 W", "475", true},
		"the order of the classes rules one out":  {[]string{"465", "470", "4715"}, 2, "475", "475", false},
		"the row's decimals rule one out":         {[]string{"13.54", "13.61", "13"}, 2, "13.69", "13.69", false},
		"the row rules out the second":            {[]string{"13.54", "13.61", "13.69"}, 2, "1369", "13.69", false},
		"both could be: nobody guesses":           {[]string{"465", "470", "415"}, 2, "475", "", false},
		"the cell alone reads nothing: no guess":  {[]string{"465", "470", "475"}, 2, "", "475", false},
		"the cell alone reads several: no guess":  {[]string{"465", "470", "415"}, 2, "4 15", "", false},
		"neither fits the row: the field is open": {[]string{"13.54", "13.61", "1"}, 2, "3", "", false},
	} {
		t.Run(name, func(t *testing.T) {
			l := &ledger{claims: pictureRow(c.first...)}
			l.reread(map[place]page.CellReading{{1, page.Box{X0: float64(c.at)}}: {Text: c.second, Sure: 1}})
			s := &schema.Sheet{Format: schema.Format, Models: make([]schema.Model, len(c.first))}
			l.settle(s)
			field := "/models/" + itoa(c.at) + "/stc/pmax_w"
			got := ""
			if n, ok := s.At(field); ok {
				got = n.String()
			}
			if got != c.want || (s.Evidence[field].Readings == 2) != c.twice {
				t.Errorf("got %q with %d readings, want %q (twice: %v)", got, s.Evidence[field].Readings, c.want, c.twice)
			}
			if c.want == "" && len(s.Unresolved) != 1 {
				t.Errorf("want the field unresolved, got %+v", s.Unresolved)
			}
		})
	}
}
