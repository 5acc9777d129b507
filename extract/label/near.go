package label

import (
	"slices"
	"strings"
)

// What a picture's reader makes of a label differs in a letter or two from what is printed, mostly at accents, which its model of
// another language does not know: "Zellgroe", "Tamaiio de célula".
const (
	nearLeast = 8 // letters; shorter labels have too many neighbours
	nearShare = 5 // letters for each that may differ
	nearMost  = 3 // letters that may differ
)

// Near finds the one meaning of the phrases that differ least from a whole label, in a letter out of five at most. It is for labels
// that Find does not know; ok is false where no phrase is near, or phrases that mean different things are as near as each other.
func Near(text string) (found Found, ok bool) {
	s := string(squeeze(text).runes)
	if len(s) < nearLeast {
		return Found{}, false
	}
	l := words()
	reach := l.first[s[0]]
	least, meant := nearMost+1, ""
	for _, p := range l.phrases[reach[0]:reach[1]] {
		most := min(nearMost, max(len(s), len(p.letters))/nearShare)
		if len(p.letters) < nearLeast || len(p.letters)-len(s) > most || len(s)-len(p.letters) > most {
			continue
		}
		d := edits(s, p.letters, min(most, least))
		switch {
		case d > min(most, least):
		case d < least:
			least, meant, ok = d, p.entries, true
			found = Find(p.letters)
		case atomsOf(p.entries) != atomsOf(meant):
			ok = false
		}
	}
	return found, ok
}

// symbolLeast is how many letters a symbol has that may be misread in one.
const symbolLeast = 3

// NearSymbol finds which one of some concepts a symbol names that was misread in a letter ("Dmax", "Vinp"): the symbol with the same
// letters but one, an "m" read as two. The caller must know the unit, which is why it can name the concepts; ok is false where none or
// several are near.
func NearSymbol(text string, concepts ...Concept) (found Concept, ok bool) {
	s := string(squeeze(text).runes)
	for _, two := range []string{"in", "rn", "nn"} {
		s = strings.Replace(s, two, "m", 1)
	}
	if len(s) < symbolLeast {
		return "", false
	}
	least := 2
	for _, p := range words().phrases {
		if len(p.letters) < symbolLeast || len(p.letters) > len(s)+1 || len(s) > len(p.letters)+1 {
			continue
		}
		p.meanings(func(e entry) {
			if e.lang != "" || !slices.Contains(concepts, Concept(e.atom)) {
				return
			}
			switch d := edits(s, p.letters, 1); {
			case d < least:
				least, found, ok = d, Concept(e.atom), true
			case d == least && d < 2 && Concept(e.atom) != found:
				ok = false
			}
		})
	}
	return found, ok
}

// atomsOf is what a phrase may mean, in whatever language.
func atomsOf(entries string) string {
	var atoms []string
	phrase{entries: entries}.meanings(func(e entry) { atoms = addOnce(atoms, e.atom) })
	return strings.Join(atoms, " ")
}

// edits is how many letters must be put in, left out or changed to make one text the other; more than most is most+1 (V. I. Levenshtein,
// 1966).
func edits(a, b string, most int) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal, least := row[0], i+1
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j+1]+1, row[j]+1)
			least = min(least, row[j+1])
		}
		if least > most {
			return most + 1
		}
	}
	return min(row[len(b)], most+1)
}
