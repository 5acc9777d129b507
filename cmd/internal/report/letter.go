package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// letter is the questions to the maker of one sheet.
type letter struct {
	words     *words
	of        *Sheet
	sheet     *schema.Sheet
	questions []question
	first     []string // values to look at before the letter goes out
	caution   bool
}

// question is one numbered question.
type question struct {
	title   string
	printed []string
	untally []string
	kind    string
	would   []string
	ask     string
	needs   string
}

// WriteLetter writes the questions to the maker of a sheet in one of LetterLanguages, as Markdown or as plain text, and says how many there are; it
// writes nothing where there are none. The same sheet gives the same bytes.
func WriteLetter(w io.Writer, s *Sheet, language string, markdown bool) (questions int, err error) {
	words, ok := letterWords()[language]
	if !ok {
		return 0, fmt.Errorf("no letter in %q: one of %s", language, strings.Join(LetterLanguages, ", "))
	}
	l := &letter{words: words, of: s, sheet: s.Record}
	l.ask()
	if len(l.questions) == 0 {
		return 0, nil
	}
	write := writeLetterText
	if markdown {
		write = writeLetterMarkdown
	}
	return len(l.questions), write(w, l)
}

// convincing is the confidence from which a letter asks for one value; below, it asks which of several is wrong.
const convincing = 0.5

// ask makes the questions: one for each suspect that explains something the earlier ones do not, one for each grave finding that is left, and one for what
// is missing.
func (l *letter) ask() {
	asked := map[int]bool{}
	for _, x := range l.of.Suspects {
		fresh := slices.ContainsFunc(x.Findings, func(i int) bool { return !asked[i] && l.of.Findings[i].Level >= rules.Warning })
		if !fresh || x.Confidence < convincing || x.Cells[0].WouldBe.IsZero() {
			continue
		}
		for _, i := range x.Findings {
			asked[i] = true
		}
		l.questions = append(l.questions, l.aboutSuspect(x))
	}
	var missing []question // last of all
	for i, f := range l.of.Findings {
		switch {
		case f.Rule == "paper/required":
			missing = append(missing, l.aboutMissing(f))
		case asked[i] || f.Level < rules.Warning || len(f.Fields) == 0 || l.words.relation(f.Rule) == "":
		case l.sameRule(i, asked) >= 0:
		default:
			l.questions = append(l.questions, l.aboutFindings(i, asked))
		}
		l.caution = l.caution || f.Caution != "" && f.Level >= rules.Warning
	}
	l.questions = append(l.questions, missing...)
}

// sameRule is an earlier finding of the same rule that has been asked about together with this one; -1 for none.
func (l *letter) sameRule(i int, asked map[int]bool) int {
	for k := range i {
		f := &l.of.Findings[k]
		if !asked[k] && f.Level >= rules.Warning && f.Rule == l.of.Findings[i].Rule && len(f.Fields) > 0 {
			return k
		}
	}
	return -1
}

// maxUntally is how many findings one question quotes.
const maxUntally = 4

func (l *letter) aboutSuspect(x diagnose.Suspect) question {
	var fields []string
	for _, c := range x.Cells {
		fields = append(fields, c.Field)
	}
	q := question{title: l.title(fields), printed: l.places(fields), kind: l.words.say("kind." + string(x.Mistake)), needs: l.words.need(x.Field)}
	for _, i := range x.Findings {
		if f := l.of.Findings[i]; f.Level >= rules.Warning {
			q.untally = append(q.untally, l.finding(f))
		}
	}
	q.untally = l.atMost(q.untally, maxUntally)
	for _, c := range x.Cells {
		q.would = append(q.would, l.cellName(c.Field)+l.words.say("colon")+" "+l.words.amount(c.WouldBe.String(), c.Field))
	}
	q.would = l.atMost(q.would, 2*maxValues)
	q.ask = l.words.say("ask_many")
	if c := x.Cells[0]; len(x.Cells) == 1 {
		q.ask = l.words.say("ask_one", "would", l.words.amount(c.WouldBe.String(), c.Field), "printed", l.words.amount(c.Printed.String(), c.Field))
	}
	if x.Mistake == diagnose.Reading {
		for _, c := range x.Cells {
			l.first = append(l.first, l.where(c.Field)+l.words.say("colon")+" "+
				l.words.say("read_as", "printed", l.words.amount(c.Printed.String(), c.Field), "would", l.words.amount(c.WouldBe.String(), c.Field)))
		}
	}
	return q
}

// aboutFindings asks about a finding without a suspect, together with the others of its rule.
func (l *letter) aboutFindings(i int, asked map[int]bool) question {
	var fields, untally []string
	rule := l.of.Findings[i].Rule
	for k, f := range l.of.Findings {
		if k < i || asked[k] || f.Rule != rule || f.Level < rules.Warning || len(f.Fields) == 0 {
			continue
		}
		untally = append(untally, l.finding(f))
		for _, field := range f.Fields {
			if !slices.Contains(fields, field) && len(untally) <= maxUntally {
				fields = append(fields, field)
			}
		}
	}
	ask := "ask_open"
	if len(fields) == 1 {
		ask = "ask_single"
	}
	return question{title: l.title(fields), printed: l.places(fields), untally: l.atMost(untally, maxUntally), ask: l.words.say(ask), needs: l.words.need(fields[0])}
}

// aboutMissing asks for what the sheet does not print.
func (l *letter) aboutMissing(f rules.Finding) question {
	_, list, _ := strings.Cut(f.Message, "not printed: ")
	var names []string
	for _, name := range strings.Split(list, ", ") {
		if class, ok := strings.CutPrefix(name, "STC values of "); ok {
			name = l.words.say("missing.stc", "class", class)
		} else if text, ok := l.words.phrases["missing."+name]; ok {
			name = text
		}
		names = append(names, name)
	}
	return question{title: l.words.say("missing"), untally: []string{l.words.relation(f.Rule)}, ask: l.words.say("ask_missing", "list", strings.Join(names, l.words.say("semicolon")+" ")), needs: l.words.say("need.sheet")}
}

// finding says what must hold, and by what sum it does not.
func (l *letter) finding(f rules.Finding) string {
	text, sum := l.words.relation(f.Rule), l.arithmetic(f)
	if sum != "" {
		text = strings.TrimSuffix(text, ".") + l.words.say("colon") + " " + sum
	}
	if f.Model != "" && l.oneClass(f.Fields) {
		text = f.Model + l.words.say("colon") + " " + text
	}
	return text
}

// oneClass reports that no two of the fields belong to different classes.
func (l *letter) oneClass(fields []string) bool {
	first := -1
	for _, f := range fields {
		class, _, ok := splitClass(f)
		switch {
		case !ok:
		case first < 0:
			first = class
		case class != first:
			return false
		}
	}
	return true
}

func (l *letter) atMost(list []string, n int) []string {
	if len(list) <= n {
		return list
	}
	return append(list[:n:n], l.words.say("more", "n", fmt.Sprint(len(list)-n)))
}
