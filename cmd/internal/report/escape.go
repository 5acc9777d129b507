package report

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Plain makes text from a sheet safe to show on a terminal: control characters (an escape sequence could recolour, overwrite or
// retitle the screen), marks that reverse the direction of writing and other invisible ones are written as visible escapes.
// Line breaks and tabs become spaces, so that a text stays in its line.
func Plain(s string) string {
	if strings.IndexFunc(s, unsafe) < 0 && utf8.ValidString(s) {
		return s
	}
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == '\n' || r == '\r' || r == '\t':
			b.WriteByte(' ')
		case r == utf8.RuneError && !strings.HasPrefix(s[i:], "\uFFFD"):
			fmt.Fprintf(&b, `\x%02x`, s[i])
		case !unsafe(r):
			b.WriteRune(r)
		case r < 0x100:
			fmt.Fprintf(&b, `\x%02x`, r)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}

// unsafe runes do something to a screen instead of standing on it: controls (C0, DEL, C1), format characters (bidirectional
// controls, zero width joiners, tags), line and paragraph separators.
func unsafe(r rune) bool {
	if r < 0x7f {
		return r < ' '
	}
	return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
}
