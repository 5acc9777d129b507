package extract

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var wattsPattern = regexp.MustCompile(`\d{2,4}(?:[.,]\d)?`)

// wattsIn finds the class's watts in a model name or header ("KR-HC108-405", "405 W", "410"). Only a number of a module's size counts, and only when
// there is one such number.
func wattsIn(name string) (float64, bool) {
	var hit float64
	for _, at := range wattsPattern.FindAllStringIndex(name, -1) {
		v, err := strconv.ParseFloat(strings.ReplaceAll(name[at[0]:at[1]], ",", "."), 64)
		if err != nil || v < 20 || v > 1000 {
			continue
		}
		if hit != 0 && v != hit {
			if !strings.HasSuffix(strings.ToLower(strings.TrimSpace(name[at[1]:])), "w") && v < 200 {
				continue
			}
			if hit >= 200 && v >= 200 {
				return 0, false
			}
		}
		if hit == 0 || v >= 200 {
			hit = v
		}
	}
	return hit, hit != 0
}

// hasNumber reports whether a number stands in a text as a number of its own.
func hasNumber(text string, v float64) bool {
	want := strconv.FormatFloat(v, 'f', -1, 64)
	for _, n := range regexp.MustCompile(`\d+(?:[.,]\d+)?`).FindAllString(text, -1) {
		if n == want {
			return true
		}
	}
	return false
}

// namePattern is a product code in which the class stands as x's: "KRxxxQX".
var namePattern = regexp.MustCompile(`[A-Za-z0-9][A-Za-z0-9./-]*(?:[xX]{3,4}|\*{3}|□{3}|_{3}|\bAAA\b|\bYYY\b|\bNNN\b|\bPPP\b|#{3})[A-Za-z0-9./()-]*`)

// spacedPattern is a product code whose blanks are a word of their own: "AB2 HC XXX BF".
var spacedPattern = regexp.MustCompile(`^(?:[^:]*:\s*)?((?:[A-Z0-9][A-Z0-9./-]*\s+){1,4}(?:X{3,4}|x{3,4}|\*{3}|AAA|YYY|NNN|PPP|#{3})(?:\s+[A-Z0-9][A-Z0-9./-]*){0,3})$`)

var blanks = regexp.MustCompile(`[xX]{3,4}|\*{3}|□{3}|_{3}|\b(?:AAA|YYY|NNN|PPP)\b|#{3}`)

// fillPattern puts the watts into a product code's blanks.
func fillPattern(pattern string, watts string) string {
	at := blanks.FindStringIndex(pattern)
	if at == nil {
		return pattern
	}
	return pattern[:at[0]] + watts + pattern[at[1]:]
}

// token is a word that may be a model's name: letters and digits, as product names have.
var token = regexp.MustCompile(`\p{Lu}[\pL\d]*(?:[-./][\pL\d]+)+|\p{Lu}[\pL\d]*\d[\pL\d]*`)

// spelledNames looks for the names of classes that no header names: a token with the class's watts in it, of one pattern for all classes.
func (d *document) spelledNames() {
	if len(d.classes) == 0 || slices.ContainsFunc(d.classes, func(k *class) bool { return hasLetters(k.name) }) {
		return
	}
	names := make([]string, len(d.classes))
	cells := make([]*cell, len(d.classes))
	stem := ""
	for i, k := range d.classes {
		watts := strconv.FormatFloat(k.watts, 'f', -1, 64)
		names[i], cells[i] = d.spelled(watts)
		if cells[i] == nil {
			return
		}
		if s := strings.Replace(names[i], watts, "#", 1); stem == "" {
			stem = s
		} else if s != stem {
			return
		}
	}
	for i, k := range d.classes {
		k.name, k.named = names[i], cells[i]
	}
}

// spelled is the longest token of the sheet that holds the watts as a number of their own.
func (d *document) spelled(watts string) (string, *cell) {
	var best string
	var where *cell
	for _, v := range d.views {
		for i := range v.cells {
			for k := range v.cells[i] {
				c := &v.cells[i][k]
				for _, t := range token.FindAllString(c.text, -1) {
					if len(t) <= len(watts)+2 || !hasLetters(t) || !hasNumber(t, number(watts)) {
						continue
					}
					if where == nil || c.size > where.size*1.1 || c.size > where.size*0.9 && len(t) > len(best) {
						best, where = t, c
					}
				}
			}
		}
	}
	return best, where
}

func number(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}

// wholeNames completes names whose first half stands apart ("540/QX" under "AB72S30", the hyphen lost): where the sheet spells one of them out elsewhere
// ("AB72S30-540/QX" over a curve), all classes take the same beginning.
func (d *document) wholeNames() {
	prefix := ""
	for _, k := range d.classes {
		if k.named == nil || k.name == "" || k.name[0] < '0' || k.name[0] > '9' || len(k.name) < 4 {
			return
		}
		if t, _ := d.spelledWith(k.name); t != "" && prefix == "" {
			prefix = strings.TrimSuffix(t, k.name)
		}
	}
	if prefix == "" || !hasLetters(prefix) {
		return
	}
	for _, k := range d.classes {
		k.name = prefix + k.name
	}
}

// spelledWith is a token of the sheet that ends in a name and is more than it.
func (d *document) spelledWith(name string) (string, *cell) {
	for _, v := range d.views {
		for i := range v.cells {
			for k := range v.cells[i] {
				c := &v.cells[i][k]
				for _, t := range strings.Fields(c.text) {
					t = strings.Trim(t, "()[],;:*")
					if strings.HasSuffix(t, name) && len(t) > len(name)+2 && strings.ContainsAny(t[:len(t)-len(name)], "-/_ ") {
						return t, c
					}
				}
			}
		}
	}
	return "", nil
}
