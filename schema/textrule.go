package schema

import (
	"slices"
	"strings"
)

// textRule says which texts a key may hold. The decoder asks ok, the JSON Schema shows values or pattern; a test holds the two together.
type textRule struct {
	values  []string // an enumeration, or
	pattern string   // a regular expression of ECMA 262, for which
	ok      func(string) bool
	allowed string // says it in words
}

// textRules are by key: a key has one meaning wherever it stands.
var textRules = map[string]*textRule{
	"format":     oneOf(Format),
	"technology": oneOf(Technologies...),
	"cut":        oneOf(Cuts...),
	"by":         oneOf(ReadBy...),
	"sha256":     {pattern: "^[0-9a-f]{64}$", ok: isSHA256, allowed: "64 lower-case hexadecimal digits"},
	"language":   {pattern: "^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$", ok: isLanguage, allowed: `a language tag of BCP 47, such as "en"`},
	"field":      {pattern: pointerPattern, ok: isPointer, allowed: `a JSON Pointer (RFC 6901), such as "/body/mass_kg"`},
}

// pointerPattern is RFC 6901, section 3, without the pointer to the whole document.
const pointerPattern = "^(/([^~/]|~[01])*)+$"

func oneOf(values ...string) *textRule {
	return &textRule{
		values:  values,
		ok:      func(s string) bool { return slices.Contains(values, s) },
		allowed: `"` + strings.Join(values, `", "`) + `"`,
	}
}

func isSHA256(s string) bool {
	return len(s) == 64 && strings.Trim(s, "0123456789abcdef") == ""
}

func isLanguage(s string) bool {
	primary, rest, more := strings.Cut(s, "-")
	if len(primary) < 2 || len(primary) > 3 || strings.Trim(primary, lower) != "" {
		return false
	}
	for more {
		var part string
		part, rest, more = strings.Cut(rest, "-")
		if len(part) < 2 || len(part) > 8 || strings.Trim(part, lower+strings.ToUpper(lower)+"0123456789") != "" {
			return false
		}
	}
	return true
}

const lower = "abcdefghijklmnopqrstuvwxyz"

func isPointer(s string) bool {
	if s == "" || s[0] != '/' {
		return false
	}
	for i := range len(s) {
		if s[i] == '~' && (i+1 == len(s) || s[i+1] != '0' && s[i+1] != '1') {
			return false
		}
	}
	return true
}
