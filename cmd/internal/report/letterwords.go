package report

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"pvtally/schema"
)

// The letter's words are data: phrases, what each rule asks, and the names of fields, one column a language.
//
//go:embed letter/*.csv
var letterFiles embed.FS

// LetterLanguages are the languages of the letter, by their tags (BCP 47).
var LetterLanguages = []string{"en", "de", "fr", "es"}

// words is one language of the letter.
type words struct {
	comma     bool // decimals stand behind a comma
	phrases   map[string]string
	relations map[string]string // by rule
	terms     map[string]string // by the field's English title
}

// letterWords are all languages, read when a letter is first wanted.
var letterWords = sync.OnceValue(func() map[string]*words {
	all := map[string]*words{}
	for i, language := range LetterLanguages {
		all[language] = &words{comma: language != "en", phrases: letterTable("words", 1+i), relations: letterTable("relations", 1+i), terms: letterTable("terms", i)}
	}
	return all
})

// letterTable is a column of an embedded table, by the first column.
func letterTable(name string, column int) map[string]string {
	text, err := letterFiles.ReadFile("letter/" + name + ".csv")
	if err != nil {
		panic(err) // a missing embedded file is a mistake of the build
	}
	table := map[string]string{}
	for r := csv.NewReader(strings.NewReader(string(text))); ; {
		row, err := r.Read()
		if err == io.EOF {
			return table
		}
		if err != nil {
			panic(fmt.Sprintf("letter/%s.csv: %v", name, err))
		}
		if line, _ := r.FieldPos(0); line > 1 { // the first names the columns
			table[row[0]] = row[column]
		}
	}
}

// say is a phrase with its {names} filled in: name, value, name, value ….
func (w *words) say(key string, pairs ...string) string {
	text := w.phrases[key]
	if text == "" {
		return key
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		pairs[i] = "{" + pairs[i] + "}"
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// relation is what a rule asks of the sheet. NOCT's rules are NMOT's.
func (w *words) relation(rule string) string {
	if text, ok := w.relations[rule]; ok {
		return text
	}
	if name, ok := strings.CutPrefix(rule, "noct/"); ok {
		return strings.ReplaceAll(w.relations["nmot/"+name], "NMOT", "NOCT")
	}
	return ""
}

// number writes a decimal as the language does.
func (w *words) number(text string) string {
	if w.comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

// amount is a number with its field's unit.
func (w *words) amount(text, pointer string) string {
	d, _ := schema.Describe(pointer)
	if d.Unit == "" {
		return w.number(text)
	}
	return w.number(text) + " " + strings.NewReplacer("m2", "m²", "mm2", "mm²").Replace(d.Unit)
}

// name names a value without its class: "Vmp at NMOT".
func (w *words) name(s *schema.Sheet, pointer string) string {
	name := fieldName(pointer)
	if d, ok := schema.Describe(pointer); ok {
		name = d.Title
		if term := w.terms[name]; term != "" {
			name = term
		}
	}
	class, field, ok := splitClass(pointer)
	if !ok || class >= len(s.Models) {
		return name
	}
	parts := strings.Split(field[1:], "/")
	m := &s.Models[class]
	switch i := entryOf(parts); {
	case len(parts) == 2 && parts[0] == "low":
		return name + " " + w.say("low")
	case len(parts) == 2 && conditions[parts[0]] != "":
		return name + " " + w.say("at."+conditions[parts[0]])
	case parts[0] == "rear_gain" && i >= 0 && i < len(m.RearGain):
		return name + " " + w.say("gain", "n", w.number(m.RearGain[i].Gain.String()))
	case parts[0] == "rear_ratio" && i >= 0 && i < len(m.RearRatio):
		return name + " " + w.say("ratio", "n", w.number(m.RearRatio[i].Ratio.String()))
	}
	return name
}

// entryOf is the index of a table's line in a split pointer, -1 for none.
func entryOf(parts []string) int {
	if len(parts) < 3 {
		return -1
	}
	class, _, ok := splitClass("/models/" + parts[1] + "/x")
	if !ok {
		return -1
	}
	return class
}

// needs are what answers a question beside a corrected sheet, by where the value stands.
var needs = []struct{ prefix, key string }{
	{"/stc/", "need.stc"}, {"/nmot/", "need.operating"}, {"/noct/", "need.operating"}, {"/low/", "need.operating"}, {"/ptc_w", "need.operating"},
	{"/bnpi/", "need.rear"}, {"/rear_", "need.rear"}, {"/bifacial/", "need.rear"}, {"/thermal/", "need.thermal"}, {"/body/", "need.body"}, {"/cell/", "need.body"},
	{"/limits/", "need.limits"}, {"/warranty/", "need.warranty"}, {"/packing/", "need.packing"},
}

// need is what the buyer needs for a value.
func (w *words) need(pointer string) string {
	if _, field, ok := splitClass(pointer); ok {
		pointer = field
	}
	if i := slices.IndexFunc(needs, func(n struct{ prefix, key string }) bool { return strings.HasPrefix(pointer, n.prefix) }); i >= 0 {
		return w.say(needs[i].key)
	}
	return w.say("need.sheet")
}
