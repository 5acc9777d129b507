package label

import (
	"cmp"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write index.tsv from words/*.txt")

// TestIndex proves that index.tsv is what words/*.txt say.
func TestIndex(t *testing.T) {
	want, err := buildIndex("words")
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("index.tsv", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want != indexFile {
		t.Fatal("index.tsv is older than words/*.txt: run `go generate ./extract/label`")
	}
}

func TestLanguages(t *testing.T) {
	for _, l := range Languages() {
		if _, err := os.Stat(filepath.Join("words", l+".txt")); err != nil {
			t.Error(err)
		}
	}
}

// meaning is one phrase with one meaning, on the way to the index.
type meaning struct {
	letters string
	entry   entry
}

func buildIndex(folder string) (string, error) {
	names, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	if err != nil {
		return "", err
	}
	var all []meaning
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			return "", err
		}
		lang := strings.TrimSuffix(filepath.Base(name), ".txt")
		if lang == "symbols" {
			lang = ""
		}
		part, err := parseWords(name, lang, string(data))
		if err != nil {
			return "", err
		}
		all = append(all, imply(part)...)
	}
	return writeIndex(withoutLigatures(all)), nil
}

func parseWords(name, lang, data string) ([]meaning, error) {
	var out []meaning
	n := 0
	for line := range strings.Lines(data) {
		n++
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		atom, phrases, ok := strings.Cut(line, ":")
		if !ok || atom == "" || strings.ContainsAny(atom, ",|\t") {
			return nil, fmt.Errorf("%s:%d: want \"atom: phrase | phrase\", found %q", name, n, line)
		}
		for text := range strings.SplitSeq(phrases, "|") {
			text = strings.TrimSpace(text)
			if letters := string(squeeze(text).runes); letters != "" {
				out = append(out, meaning{letters, entry{atom: strings.TrimSpace(atom), lang: lang, whole: strings.HasPrefix(text, "=")}})
			}
		}
	}
	return out, nil
}

// implied: a phrase of the first atom that contains a phrase of the second speaks of both ("product warranty" is a warranty, "design load" a load).
var implied = map[string]string{"product": "warranty", "performance": "warranty", "design": "load", "test": "load", "snow": "load", "windload": "load", "front": "load", "rear": "load"}

func imply(all []meaning) []meaning {
	by := map[string][]string{}
	for _, p := range all {
		by[p.entry.atom] = append(by[p.entry.atom], p.letters)
	}
	for _, p := range all {
		second, ok := implied[p.entry.atom]
		if ok && slices.ContainsFunc(by[second], func(q string) bool { return len(q) > 3 && q != p.letters && strings.Contains(p.letters, q) }) {
			all = append(all, meaning{p.letters, entry{atom: second, lang: p.entry.lang, whole: p.entry.whole}})
		}
	}
	return all
}

// withoutLigatures adds the forms that lost their ligatures ("coe cient"): real PDFs drop them.
func withoutLigatures(all []meaning) []meaning {
	for _, p := range all {
		for _, lig := range []string{"ffi", "ffl", "ff", "fi", "fl"} {
			if without := strings.ReplaceAll(p.letters, lig, ""); without != p.letters && len(without) >= 5 && !strings.HasPrefix(p.letters, lig) {
				e := p.entry
				e.lost = true
				all = append(all, meaning{without, e})
			}
		}
	}
	return all
}

// writeIndex sorts the phrases and merges those of the same letters.
func writeIndex(all []meaning) string {
	slices.SortStableFunc(all, func(a, b meaning) int { return cmp.Compare(a.letters, b.letters) })
	var out strings.Builder
	for i := 0; i < len(all); {
		letters := all[i].letters
		var entries []string
		for ; i < len(all) && all[i].letters == letters; i++ {
			e := all[i].entry
			flags := ""
			if e.whole {
				flags += "w"
			}
			if e.lost {
				flags += "l"
			}
			if text := e.atom + "," + e.lang + "," + flags; !slices.Contains(entries, text) {
				entries = append(entries, text)
			}
		}
		fmt.Fprintf(&out, "%s\t%s\n", letters, strings.Join(entries, "|"))
	}
	return out.String()
}
