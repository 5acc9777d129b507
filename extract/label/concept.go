package label

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

//go:embed concepts.txt
var conceptFile string

// Concept is what a whole label means: a quantity, a thing of the module, a decoy.
type Concept string

// rule is one line of concepts.txt.
type rule struct {
	concept Concept
	all     [][]string // each group: one of these atoms
	none    []string
}

var concepts = sync.OnceValue(func() []rule {
	rules, err := parseConcepts(conceptFile)
	if err != nil {
		panic(err)
	}
	return rules
})

func parseConcepts(text string) ([]rule, error) {
	var out []rule
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		name, terms, ok := strings.Cut(line, ":")
		if !ok {
			return nil, fmt.Errorf("concepts.txt:%d: want \"concept: atoms\", found %q", i+1, line)
		}
		r := rule{concept: Concept(strings.TrimSpace(name))}
		for _, t := range strings.Fields(terms) {
			if no, ok := strings.CutPrefix(t, "!"); ok {
				r.none = append(r.none, no)
				continue
			}
			r.all = append(r.all, strings.Split(t, "/"))
		}
		if len(r.all) == 0 {
			return nil, fmt.Errorf("concepts.txt:%d: %q asks for no atom", i+1, line)
		}
		out = append(out, r)
	}
	return out, nil
}

// Concept is the text's meaning as a label; "" where the lexicon knows none.
func (f Found) Concept() Concept {
	if len(f.Matches) == 0 {
		return ""
	}
next:
	for _, r := range concepts() {
		for _, no := range r.none {
			if f.atoms[no] {
				continue next
			}
		}
		for _, group := range r.all {
			if !f.Any(group...) {
				continue next
			}
		}
		return r.concept
	}
	return ""
}
