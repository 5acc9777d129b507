// Package label is the lexicon: which printed words mean which thing, by language. The words are data (words/*.txt, one file a language);
// so is the composing of meanings (concepts.txt). It knows nothing of pages, tables or numbers and imports no other package of the project.
package label

import (
	_ "embed"
	"strings"
	"sync"
)

//go:generate go test -run TestIndex -update .

// indexFile is made from words/*.txt by the package's test, so that a start costs no folding and sorting of some 30,000 phrases.
//
//go:embed index.tsv
var indexFile string

// phrase is one squeezed phrase and what it may mean: entries parted by "|", each "atom,language,flags".
type phrase struct {
	letters string
	entries string
}

// entry is one meaning of a phrase.
type entry struct {
	atom  string
	lang  string // "" for the symbols of every language
	whole bool   // counts only as a whole piece of the label
	lost  bool   // lost a ligature: counts only at the beginning of a word
}

// lexicon is every phrase of every language, sorted, so that the longest one at a place is found by narrowing a range letter by letter.
type lexicon struct {
	phrases []phrase
	first   [256][2]int32 // the range of phrases by first byte
}

var words = sync.OnceValue(func() *lexicon { return parseIndex(indexFile) })

// parseIndex cuts the index into lines; its text is shared, nothing is copied.
func parseIndex(text string) *lexicon {
	l := &lexicon{phrases: make([]phrase, 0, strings.Count(text, "\n"))}
	for line := range strings.Lines(text) {
		letters, entries, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		if !ok || letters == "" {
			continue
		}
		n, b := int32(len(l.phrases)), letters[0]
		if l.first[b][1] == 0 {
			l.first[b][0] = n
		}
		l.first[b][1] = n + 1
		l.phrases = append(l.phrases, phrase{letters, entries})
	}
	return l
}

// meanings visits a phrase's entries.
func (p phrase) meanings(visit func(entry)) {
	for e := range strings.SplitSeq(p.entries, "|") {
		atom, rest, _ := strings.Cut(e, ",")
		lang, flags, _ := strings.Cut(rest, ",")
		visit(entry{atom, lang, strings.Contains(flags, "w"), strings.Contains(flags, "l")})
	}
}

// Languages lists the languages of the lexicon.
func Languages() []string {
	return []string{"de", "en", "es", "fr", "it", "ja", "ko", "nl", "pl", "pt", "tr", "zh"}
}
