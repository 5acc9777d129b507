package cli

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestSpreadStandardInput(t *testing.T) {
	long := strings.Repeat("x", maxRecord+1)
	tests := []struct {
		name, stdin string
		want        []string // name, kind and content or problem of every input
	}{
		{"empty", "", []string{"- fault it is empty"}},
		{"blank lines only", "\n \n", []string{"- fault it is empty"}},
		{"one record on a line", `{"format":1}` + "\n", []string{`-:1 record {"format":1}`}},
		{"without a last line break", `{"a":1}`, []string{`-:1 record {"a":1}`}},
		{"lines, one blank, one broken", "{\"a\":1}\n\n{\"b\":\n{\"c\":3}\n", []string{`-:1 record {"a":1}`, `-:3 record {"b":`, `-:4 record {"c":3}`}},
		{"blank lines first", "\n\n{\"a\":1}\n", []string{`-:3 record {"a":1}`}},
		{"byte order mark", "\xef\xbb\xbf{\"a\":1}\n", []string{`-:1 record {"a":1}`}},
		{"carriage returns", "{\"a\":1}\r\n{\"b\":2}\r\n", []string{`-:1 record {"a":1}`, `-:2 record {"b":2}`}},
		{"one document over several lines keeps its line numbers", "\n{\n  \"a\": 1\n}\n", []string{"- record \n{\n  \"a\": 1\n}"}},
		{"a datasheet", "%PDF-1.7\n...", []string{"- datasheet %PDF-1.7\n..."}},
		{"blanks without end", strings.Repeat(" ", maxRecord+1) + "\n{\"a\":1}\n", []string{"- fault its first line is longer than 16 MiB and begins no record"}},
		{"one line too long, the next read", "{\"a\":1}\n" + long + "\n{\"b\":2}\n",
			[]string{`-:1 record {"a":1}`, "-:2 fault the line is longer than 16 MiB", `-:3 record {"b":2}`}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			c := Command{Stdin: strings.NewReader(test.stdin)}
			var got []string
			for in := range c.spread([]input{{name: "-", kind: stream}}) {
				switch {
				case in.fault != nil:
					got = append(got, in.name+" fault "+in.fault.Problem)
				default:
					kind := map[kind]string{record: "record", datasheet: "datasheet"}[in.kind]
					got = append(got, in.name+" "+kind+" "+strings.TrimRight(string(in.data), "\r\n"))
				}
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("-want +got\n%s", diff)
			}
		})
	}
}

func TestRecordName(t *testing.T) {
	tests := []struct {
		in   input
		part int
		want string
	}{
		{input{name: "a/kr.pdf", path: "a/kr.pdf"}, 1, "kr.json"},
		{input{name: "a/kr.pdf", path: "a/kr.pdf"}, 2, "kr.2.json"},
		{input{name: "KR.PDF", path: "KR.PDF"}, 1, "KR.json"},
		{input{name: "kr.v2.pdf", path: "kr.v2.pdf"}, 1, "kr.v2.json"},
		{input{name: "kr.v2", path: "kr.v2"}, 1, "kr.v2.json"},
		{input{name: "kr.2.json", path: "kr.2.json", kind: record}, 1, "kr.2.json"},
		{input{name: "-"}, 1, "stdin.json"},
		{input{name: "-:12", kind: record}, 1, "stdin-12.json"},
		{input{name: "a/all.jsonl:3", kind: record}, 1, "all.jsonl-3.json"},
	}
	for _, test := range tests {
		if got := recordName(test.in, test.part); got != test.want {
			t.Errorf("%q part %d: %q, want %q", test.in.name, test.part, got, test.want)
		}
	}
}
