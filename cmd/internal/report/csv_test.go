package report

import (
	"slices"
	"strings"
	"testing"
)

func TestWriteCSV(t *testing.T) {
	tests := []struct {
		name string
		cell Cell
		want string
	}{
		{"a literal keeps its digits", Cell{"13.10", true}, "13.10"},
		{"a negative number is no formula", Cell{"-0.350", true}, "-0.350"},
		{"nor is one among texts", Cell{Text: "-0.27"}, "-0.27"},
		{"a list of numbers may be one", Cell{Text: "-1; -2"}, "'-1; -2"},
		{"a formula", Cell{Text: `=HYPERLINK("x","y")`}, `"'=HYPERLINK(""x"",""y"")"`},
		{"plus, minus and at begin formulas too", Cell{Text: "@SUM(A1)"}, "'@SUM(A1)"},
		{"a tab before a formula", Cell{Text: "\t=1+1"}, `" =1+1"`},
		{"a line break", Cell{Text: "a\nb"}, "a b"},
		{"a comma", Cell{Text: "a,b"}, `"a,b"`},
		{"empty", Cell{}, ""},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var b strings.Builder
			if err := WriteCSV(&b, slices.Values([][]Cell{{test.cell, {Text: "end"}}})); err != nil {
				t.Fatal(err)
			}
			if want := "\ufeff" + test.want + ",end\r\n"; b.String() != want {
				t.Errorf("%q, want %q", b.String(), want)
			}
		})
	}
}
