package report

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strings"

	"github.com/rivo/uniseg"
)

// letterText makes text stand for itself in a letter's Markdown. Round brackets need no escape where square ones have one.
func letterText(text string) string {
	return strings.NewReplacer(`\(`, "(", `\)`, ")").Replace(mdText(text))
}

func writeLetterMarkdown(w io.Writer, l *letter) error {
	var b bytes.Buffer
	colon := l.words.say("colon")
	fmt.Fprintf(&b, "# %s\n\n", letterText(l.heading()))
	for _, line := range l.head() {
		fmt.Fprintf(&b, "- **%s%s** %s\n", line[0], colon, letterText(line[1]))
	}
	b.WriteByte('\n')
	if len(l.first) > 0 {
		fmt.Fprintf(&b, "> **%s**  \n> %s\n>\n", l.words.say("first"), letterText(l.words.say("first_why")))
		for _, item := range l.first {
			fmt.Fprintf(&b, "> - %s\n", letterText(item))
		}
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "%s\n\n%s\n\n", l.words.say("salutation"), letterText(l.intro()))
	for i, q := range l.questions {
		fmt.Fprintf(&b, "## %d. %s\n\n", i+1, letterText(q.title))
		for _, part := range l.parts(q) {
			if len(part.items) == 1 {
				fmt.Fprintf(&b, "- **%s%s** %s\n", part.label, colon, letterText(part.items[0]))
				continue
			}
			fmt.Fprintf(&b, "- **%s%s**\n", part.label, colon)
			for _, item := range part.items {
				fmt.Fprintf(&b, "  - %s\n", letterText(item))
			}
		}
		b.WriteByte('\n')
	}
	if l.caution {
		fmt.Fprintf(&b, "%s\n\n", letterText(l.words.say("caution")))
	}
	fmt.Fprintf(&b, "%s\n\n%s\n", letterText(l.words.say("closing")), l.words.say("regards"))
	_, err := w.Write(b.Bytes())
	return err
}

// part is a labelled piece of a question.
type part struct {
	label string
	items []string
}

// parts are a question's pieces in their order, the empty ones left out.
func (l *letter) parts(q question) (out []part) {
	would := q.would
	if len(would) > 0 && q.kind != "" {
		would = append(would[:len(would):len(would)], q.kind)
	}
	for _, p := range []part{{"printed", q.printed}, {"untally", q.untally}, {"would", would}, {"question", []string{q.ask}}, {"needs", []string{q.needs}}} {
		if len(p.items) > 0 {
			out = append(out, part{l.words.say(p.label), p.items})
		}
	}
	return out
}

// letterWidth is where plain text breaks its lines.
const letterWidth = 78

func writeLetterText(w io.Writer, l *letter) error {
	var b bytes.Buffer
	colon := l.words.say("colon")
	title := Plain(l.heading())
	fmt.Fprintf(&b, "%s\n%s\n\n", title, strings.Repeat("=", min(uniseg.StringWidth(title), letterWidth)))
	for _, line := range l.head() {
		folded(&b, line[0]+colon+" "+line[1], "", "  ")
	}
	b.WriteByte('\n')
	if len(l.first) > 0 {
		folded(&b, strings.ToUpper(l.words.say("first")), "", "")
		folded(&b, l.words.say("first_why"), "", "")
		for _, item := range l.first {
			folded(&b, item, "- ", "  ")
		}
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "%s\n\n", l.words.say("salutation"))
	folded(&b, l.intro(), "", "")
	b.WriteByte('\n')
	for i, q := range l.questions {
		number := fmt.Sprintf("%d. ", i+1)
		folded(&b, q.title, number, strings.Repeat(" ", len(number)))
		for _, part := range l.parts(q) {
			if len(part.items) == 1 {
				folded(&b, part.label+colon+" "+part.items[0], "   ", "     ")
				continue
			}
			folded(&b, part.label+colon, "   ", "     ")
			for _, item := range part.items {
				folded(&b, item, "   - ", "     ")
			}
		}
		b.WriteByte('\n')
	}
	if l.caution {
		folded(&b, l.words.say("caution"), "", "")
		b.WriteByte('\n')
	}
	folded(&b, l.words.say("closing"), "", "")
	fmt.Fprintf(&b, "\n%s\n", l.words.say("regards"))
	_, err := w.Write(b.Bytes())
	return err
}

// folded writes text in lines of letterWidth, the first and the others with an indent of their own.
func folded(b *bytes.Buffer, text, first, rest string) {
	line := first
	empty := true
	for _, word := range unbroken(Plain(text)) {
		if !empty && uniseg.StringWidth(line)+1+uniseg.StringWidth(word) > letterWidth {
			b.WriteString(line + "\n")
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	b.WriteString(line + "\n")
}

// unit is a word that must not begin a line: the unit of the number before it.
var unit = regexp.MustCompile(`^(%|%/K|[VAW](/K)?|W/m²|mm²?|kg|Pa|°C|years)[.,;:)]*$`)

// unbroken are the words of a text, a number and its unit being one.
func unbroken(text string) (words []string) {
	for _, word := range strings.Fields(text) {
		if last := len(words) - 1; last >= 0 && unit.MatchString(word) && strings.ContainsAny(words[last][len(words[last])-1:], "0123456789") {
			words[last] += " " + word
			continue
		}
		words = append(words, word)
	}
	return words
}
