package compare

import (
	"fmt"
	"strconv"
	"strings"

	"pvtally/rules/site"
)

// Picker chooses power classes: by name, alias, or nominal power in W.
type Picker struct {
	Wanted []string
	hit    map[string]bool
	seen   []string // classes that were there to be chosen
}

// Pick chooses of one record's classes. Without a wish it takes all of a lone record, else the highest, and says so. Its reason is not
// empty where none fits.
func (p *Picker) Pick(classes []site.Module, alone bool) (list []site.Module, note, why string) {
	if len(classes) == 0 {
		return nil, "", "it has no power class"
	}
	var names []string
	for i := range classes {
		names = append(names, classes[i].Name)
	}
	p.seen = append(p.seen, names...)
	if len(p.Wanted) > 0 {
		for i := range classes {
			if p.wants(&classes[i]) {
				list = append(list, classes[i])
			}
		}
		if len(list) == 0 {
			return nil, "", fmt.Sprintf("it has no class %s; it has %s", joined(p.Wanted, "or"), some(names))
		}
		return list, "", ""
	}
	if alone || len(classes) == 1 {
		return classes, "", ""
	}
	top := 0
	for i := range classes {
		if classes[i].Pmax.V > classes[top].Pmax.V {
			top = i
		}
	}
	return classes[top : top+1], fmt.Sprintf("of %d classes the highest is compared; --class picks others: %s", len(classes), some(names)), ""
}

func (p *Picker) wants(m *site.Module) bool {
	if p.hit == nil {
		p.hit = map[string]bool{}
	}
	found := false
	for _, w := range p.Wanted {
		same := key(w) == key(m.Name)
		for _, a := range m.Aliases {
			same = same || key(w) == key(a)
		}
		if v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimRight(w, "Wp")), 64); err == nil && m.Pmax.Known() {
			same = same || v == m.Pmax.V
		}
		if same {
			p.hit[w], found = true, true
		}
	}
	return found
}

// Missed is an error where a wish fits no class of any record.
func (p *Picker) Missed() error {
	for _, w := range p.Wanted {
		if !p.hit[w] {
			return fmt.Errorf("--class %q fits no class; there are %s", w, some(p.seen))
		}
	}
	return nil
}

// some lists names, as many as a message bears.
func some(names []string) string {
	const most = 12
	if len(names) > most {
		return strings.Join(names[:most], ", ") + fmt.Sprintf(" and %d more", len(names)-most)
	}
	return and(names)
}
