// Package label is the lexicon: which printed words mean which thing, by language. The words are data (words/*.txt, one file a language);
// so is the composing of meanings (concepts.txt). It knows nothing of pages, tables or numbers and imports no other package of the project.
package label

import (
	"cmp"
	"embed"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"
)

//go:embed words/*.txt
var wordFiles embed.FS

// phrase is one squeezed phrase and what it may mean.
type phrase struct {
	letters string
	entries []entry
}

// entry is one phrase's meaning.
type entry struct {
	atom  string
	lang  string // "" for the symbols of every language
	whole bool   // counts only as a whole piece of the label
	built bool   // lost a ligature: counts only at the beginning of a word
}

// lexicon is every phrase of every language, sorted, so that the longest one at a place is found by narrowing a range letter by letter.
type lexicon struct {
	phrases []phrase
	first   [256][2]int32 // the range of phrases by first byte
}

// words is built once; a malformed word file is a programming error that the package's test finds.
var words = sync.OnceValue(func() *lexicon {
	l, err := load(wordFiles)
	if err != nil {
		panic(err)
	}
	return l
})

func load(files fs.FS) (*lexicon, error) {
	names, err := fs.Glob(files, "words/*.txt")
	if err != nil {
		return nil, err
	}
	var all []phrase
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		lang := strings.TrimSuffix(path.Base(name), ".txt")
		if lang == symbols {
			lang = ""
		}
		part, err := parse(name, lang, string(data))
		if err != nil {
			return nil, err
		}
		all = append(all, imply(part)...)
	}
	return index(withoutLigatures(all)), nil
}

const symbols = "symbols" // the file of what every language prints

func parse(name, lang, data string) ([]phrase, error) {
	var out []phrase
	n := 0
	for line := range strings.Lines(data) {
		n++
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		atom, phrases, ok := strings.Cut(line, ":")
		if !ok || atom == "" {
			return nil, fmt.Errorf("%s:%d: want \"atom: phrase | phrase\", found %q", name, n, line)
		}
		for text := range strings.SplitSeq(phrases, "|") {
			text = strings.TrimSpace(text)
			if letters := string(squeeze(text).runes); letters != "" {
				out = append(out, phrase{letters, []entry{{atom: strings.TrimSpace(atom), lang: lang, whole: strings.HasPrefix(text, "=")}}})
			}
		}
	}
	return out, nil
}

// implied: a phrase of the first atom that contains a phrase of the second speaks of both ("product warranty" is a warranty, "design load" a load).
var implied = map[string]string{"product": "warranty", "performance": "warranty", "design": "load", "test": "load", "snow": "load", "windload": "load", "front": "load", "rear": "load"}

func imply(all []phrase) []phrase {
	by := map[string][]string{}
	for _, p := range all {
		by[p.entries[0].atom] = append(by[p.entries[0].atom], p.letters)
	}
	for _, p := range all {
		second, ok := implied[p.entries[0].atom]
		if ok && slices.ContainsFunc(by[second], func(q string) bool { return len(q) > 3 && q != p.letters && strings.Contains(p.letters, q) }) {
			all = append(all, phrase{p.letters, []entry{{atom: second, lang: p.entries[0].lang, whole: p.entries[0].whole}}})
		}
	}
	return all
}

// withoutLigatures adds the forms that lost their ligatures ("coe cient"): real PDFs drop them.
func withoutLigatures(all []phrase) []phrase {
	for _, p := range all {
		for _, lig := range []string{"ffi", "ffl", "ff", "fi", "fl"} {
			if without := strings.ReplaceAll(p.letters, lig, ""); without != p.letters && len(without) >= 5 && !strings.HasPrefix(p.letters, lig) {
				e := p.entries[0]
				e.built = true
				all = append(all, phrase{without, []entry{e}})
			}
		}
	}
	return all
}

// index sorts the phrases and merges those of the same letters.
func index(all []phrase) *lexicon {
	slices.SortStableFunc(all, func(a, b phrase) int { return cmp.Compare(a.letters, b.letters) })
	l := &lexicon{}
	for _, p := range all {
		n := len(l.phrases)
		if n > 0 && l.phrases[n-1].letters == p.letters {
			if last := &l.phrases[n-1]; !slices.Contains(last.entries, p.entries[0]) {
				last.entries = append(last.entries, p.entries[0])
			}
			continue
		}
		b := p.letters[0]
		if l.first[b][1] == 0 {
			l.first[b][0] = int32(n)
		}
		l.phrases = append(l.phrases, p)
		l.first[b][1] = int32(n + 1)
	}
	return l
}

// Languages lists the languages of the lexicon.
func Languages() []string {
	names, _ := fs.Glob(wordFiles, "words/*.txt")
	var out []string
	for _, n := range names {
		if l := strings.TrimSuffix(path.Base(n), ".txt"); l != symbols {
			out = append(out, l)
		}
	}
	return out
}
