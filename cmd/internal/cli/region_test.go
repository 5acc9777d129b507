package cli

import (
	"testing"

	"pvtally/cmd/internal/report"
)

func TestLocator(t *testing.T) {
	text := "{\n  \"format\": \"pvtally.sheet/1\",\n  \"maker\": \"Käñ 𝄞\", \"series\": \"KR\",\n  \"models\": [\n    {\"stc\": {\"voc_v\": 37.10}}\n  ]\n}\n"
	tests := []struct {
		name, pointer string
		line          int
		want          report.Region
		found         bool
	}{
		{"a number", "/models/0/stc/voc_v", 0, report.Region{File: "kr.json", Line: 5, Column: 23, End: 28}, true},
		{"after characters of one and two code units", "/series", 0, report.Region{File: "kr.json", Line: 3, Column: 32, End: 36}, true},
		{"an object over several lines", "/models", 0, report.Region{File: "kr.json", Line: 4}, true},
		{"a missing field is where its object begins", "/models/0/stc/isc_a", 0, report.Region{File: "kr.json", Line: 5}, true},
		{"a missing object", "/limits/series_fuse_a", 0, report.Region{File: "kr.json", Line: 1}, true},
		{"in a stream", "/models/0/stc/voc_v", 12, report.Region{File: "all.jsonl", Line: 12, Column: 23, End: 28}, true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			in := input{name: "kr.json", kind: record, data: []byte(text), line: test.line}
			if test.line > 0 {
				in.name = "all.jsonl:12"
			}
			doc := decode(in)
			if doc.unread != nil {
				t.Fatal(doc.unread)
			}
			if got, ok := locator(doc)(test.pointer); got != test.want || ok != test.found {
				t.Errorf("%+v %v, want %+v %v", got, ok, test.want, test.found)
			}
		})
	}
	if locator(loaded{}) != nil {
		t.Error("a datasheet has no lines")
	}
}
