// Package label is the lexicon: which printed words mean which thing, by language. The words are data (words/*.txt, one file a language);
// so is the composing of meanings (concepts.txt). It knows nothing of pages, tables or numbers and imports no other package of the project.
package label

import (
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

// node is one letter of the trie that holds every phrase of every language.
type node struct {
	next    map[rune]*node
	entries []entry
}

// entry is one phrase's meaning.
type entry struct {
	atom  string
	lang  string // "" for the symbols of every language
	whole bool   // counts only as a whole piece of the label
}

// lexicon is built once; a malformed word file is a programming error that the package's test finds.
var lexicon = sync.OnceValue(func() *node {
	root, err := load(wordFiles)
	if err != nil {
		panic(err)
	}
	return root
})

func load(files fs.FS) (*node, error) {
	names, err := fs.Glob(files, "words/*.txt")
	if err != nil {
		return nil, err
	}
	root := &node{}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		lang := strings.TrimSuffix(path.Base(name), ".txt")
		if lang == "symbols" {
			lang = ""
		}
		for i, line := range strings.Split(string(data), "\n") {
			line = strings.TrimSpace(line)
			if line == "" || line[0] == '#' {
				continue
			}
			atom, phrases, ok := strings.Cut(line, ":")
			if !ok || atom == "" {
				return nil, fmt.Errorf("%s:%d: want \"atom: phrase | phrase\", found %q", name, i+1, line)
			}
			for phrase := range strings.SplitSeq(phrases, "|") {
				phrase = strings.TrimSpace(phrase)
				whole := strings.HasPrefix(phrase, "=")
				root.add(phrase, entry{strings.TrimSpace(atom), lang, whole})
			}
		}
	}
	return root, nil
}

// add puts a phrase into the trie, and with it the forms that lost their ligatures ("coe cient"): real PDFs drop them.
func (n *node) add(phrase string, e entry) {
	letters := string(squeeze(phrase).runes)
	if letters == "" {
		return
	}
	forms := []string{letters}
	for _, lig := range []string{"ffi", "ffl", "ff", "fi", "fl"} {
		if without := strings.ReplaceAll(letters, lig, ""); without != letters && len(without) >= 5 && !strings.HasPrefix(letters, lig) {
			forms = append(forms, without)
		}
	}
	for _, form := range forms {
		at := n
		for _, r := range form {
			if at.next == nil {
				at.next = map[rune]*node{}
			}
			if at.next[r] == nil {
				at.next[r] = &node{}
			}
			at = at.next[r]
		}
		if !slices.Contains(at.entries, e) {
			at.entries = append(at.entries, e)
		}
	}
}

// Languages lists the languages of the lexicon.
func Languages() []string {
	names, _ := fs.Glob(wordFiles, "words/*.txt")
	var out []string
	for _, n := range names {
		if l := strings.TrimSuffix(path.Base(n), ".txt"); l != "symbols" {
			out = append(out, l)
		}
	}
	return out
}
