package changes

import (
	"embed"
	"html/template"
	"io"
	"strings"
	"sync"

	"github.com/sergi/go-diff/diffmatchpatch"

	"pvtally/cmd/internal/report"
	"pvtally/rules/revision"
)

//go:embed page.gohtml page.css
var files embed.FS

//go:embed page.css
var ownStyle template.CSS

var page = sync.OnceValue(func() *template.Template { return template.Must(template.ParseFS(files, "page.gohtml")) })

// htmlPage is what the page shows.
type htmlPage struct {
	*Doc
	Style    template.CSS
	Answer   string
	Silent   string
	Sections []htmlSection
	Moves    []htmlMove
}

type htmlSection struct {
	Number       int
	Series, Only string
	Silent       bool
	Changes      []htmlChange
	Classes      []string
	Strings      []htmlString
}

type htmlChange struct {
	Effect                        revision.Effect
	Name, Old, New, Size, Why, At string
	Strings                       bool
}

type htmlString struct {
	Model, Limit string
	Falls        []string
}

type htmlMove struct {
	Page     int
	Old, New []htmlPiece
}

// htmlPiece is a run of words that both editions share, or not.
type htmlPiece struct {
	Text    string
	Changed bool
}

// writeHTML writes one file with everything in it, in the style of the program's other pages.
func writeHTML(w io.Writer, d *Doc, _ bool) error {
	v := htmlPage{Doc: d, Style: report.Style + ownStyle, Answer: d.answer(), Silent: silent}
	plain := *d
	plain.Old, plain.New = report.Plain(d.Old), report.Plain(d.New)
	v.Doc = &plain
	for i := range d.Sheets {
		s := &d.Sheets[i]
		section := htmlSection{Number: i + 1, Series: report.Plain(s.Series), Silent: s.Silent}
		if s.Only != "" {
			section.Only = report.Plain(s.only())
		}
		for _, e := range revision.Effects {
			for _, c := range s.with(e) {
				section.Changes = append(section.Changes, htmlChange{Effect: e, Name: report.Plain(c.Name), Old: report.Plain(c.value(c.Old)), New: report.Plain(c.value(c.New)),
					Size: strings.ReplaceAll(c.size(), "-", "−"), Why: c.Why, Strings: c.Strings && len(s.Strings) > 0})
			}
		}
		for _, c := range s.Classes {
			section.Classes = append(section.Classes, report.Plain(c.says()))
		}
		for k := range s.Strings {
			line := &s.Strings[k]
			section.Strings = append(section.Strings, htmlString{report.Plain(line.Model), line.limit(), line.falls()})
		}
		v.Sections = append(v.Sections, section)
	}
	for _, m := range d.Text {
		old, new := pieces(report.Plain(m.Old), report.Plain(m.New))
		v.Moves = append(v.Moves, htmlMove{m.Page, old, new})
	}
	var b strings.Builder
	if err := page().Execute(&b, v); err != nil {
		return err
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// pieces compares two texts word by word.
func pieces(old, new string) (a, b []htmlPiece) {
	known, words := map[string]rune{}, map[rune]string{}
	split := func(text string) []rune {
		var out []rune
		for _, word := range strings.Fields(text) {
			r, ok := known[word]
			if !ok {
				r = rune(0x10000 + len(known))
				known[word], words[r] = r, word
			}
			out = append(out, r)
		}
		return out
	}
	d := diffmatchpatch.New()
	d.DiffTimeout = 0
	for _, part := range d.DiffMainRunes(split(old), split(new), false) {
		var texts []string
		for _, r := range part.Text {
			texts = append(texts, words[r])
		}
		piece := htmlPiece{strings.Join(texts, " "), part.Type != diffmatchpatch.DiffEqual}
		if part.Type != diffmatchpatch.DiffInsert {
			a = append(a, piece)
		}
		if part.Type != diffmatchpatch.DiffDelete {
			b = append(b, piece)
		}
	}
	return a, b
}
