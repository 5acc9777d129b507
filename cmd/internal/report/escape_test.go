package report

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestPlain(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"ordinary text", "Vmp × Imp = 31.21 V, −0.27 %/°C, 光伏", "Vmp × Imp = 31.21 V, −0.27 %/°C, 光伏"},
		{"escape sequence", "\x1b[2J\x1b]0;title\x07x", `\x1b[2J\x1b]0;title\x07x`},
		{"one-byte control sequence introducer", "\u009b31mred", `\x9b31mred`},
		{"invalid UTF-8", "a\x9bb\xff", `a\x9bb\xff`},
		{"a printed replacement character stays", "a\uFFFDb", "a\uFFFDb"},
		{"line breaks and tabs", "a\r\nb\tc", "a  b c"},
		{"writing direction reversed", "abc\u202Edef\u2066", `abc\u202edef\u2066`},
		{"invisible", "a\u200bb\ufeffc\u2028d", `a\u200bb\ufeffc\u2028d`},
		{"delete and backspace", "a\x7f\x08", `a\x7f\x08`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := Plain(test.in); got != test.want {
				t.Errorf("%q, want %q", got, test.want)
			}
		})
	}
}

func TestEscapeJSONLosesNothing(t *testing.T) {
	hostile := "a\u009b\u202e\x7f\x1b\U000e0041 × \n\"\\"
	var b strings.Builder
	if err := encodeJSON(&b, map[string]string{"key\u200f": hostile}, "  "); err != nil {
		t.Fatal(err)
	}
	if i := strings.IndexFunc(b.String(), unsafeInJSON); i >= 0 {
		t.Errorf("%q holds an unsafe character at %d", b.String(), i)
	}
	var back map[string]string
	if err := json.Unmarshal([]byte(b.String()), &back); err != nil {
		t.Fatal(err)
	}
	if back["key\u200f"] != hostile {
		t.Errorf("%q came back as %q", hostile, back)
	}
}
