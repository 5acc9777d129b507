package quantity

import "strings"

// role is what a word makes of the number behind it.
type role uint8

const (
	standard  role = iota + 1 // that of a standard
	rank                      // one that counts nothing: a class, a figure, a house number
	telephone                 // a telephone number
	prefix                    // an ordinary number, though it touches the word
)

// roles lists the words as they stand, except that those of lower case match in any case.
var roles = map[role][]string{
	standard: {"IEC", "ISO", "EN", "UL", "DIN", "VDE", "ASTM", "BS", "JIS", "GB", "CSA", "NF", "NZS", "CEI", "UNI", "UNE", "NBR", "IS", "SA", "OHSAS", "MCS", "TS", "NEMA"},
	rank: {"IP", "MC", "AM", "class", "klasse", "classe", "clase", "klasa", "schutzklasse", "hagelschutzklasse", "type", "typ", "tipo", "level", "tier", "no.", "nr.", "rev", "rev.",
		"ver", "ver.", "version", "edition", "ed.", "fig.", "fig", "figure", "table", "note", "page"},
	telephone: {"tel", "tel.", "telephone", "fax", "phone", "ph", "telefon", "telefax", "fon", "tél", "tél.", "hotline", "mobile", "teléfono", "telefono", "telefone"},
	prefix:    {"DC", "AC", "AWG", "VDC", "Ø", "max", "min", "ca", "approx"},
}

var roleOf = func() map[string]role {
	m := map[string]role{}
	for r, words := range roles {
		for _, w := range words {
			m[w] = r
		}
	}
	return m
}()

// wordRole is the role of a word; of words joined by a slash (IEC/EN) that of the last.
func wordRole(word string) role {
	if i := strings.LastIndexByte(word, '/'); i >= 0 {
		word = word[i+1:]
	}
	if r := roleOf[word]; r != 0 {
		return r
	}
	return roleOf[strings.ToLower(word)]
}

// ordinals make a number a rank.
var ordinals = map[string]bool{"st": true, "nd": true, "rd": true, "th": true, "er": true, "ère": true, "ème": true}
