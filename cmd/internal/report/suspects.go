package report

import (
	"bytes"
	"fmt"
	"math"
	"strconv"

	"pvtally/rules/diagnose"
	"pvtally/schema"
)

// suspectDoc is a suspect on the wire.
type (
	suspectDoc struct {
		Field      string           `json:"field"`
		Confidence float64          `json:"confidence"`
		Mistake    diagnose.Mistake `json:"mistake"`
		Cells      []suspectCellDoc `json:"cells"`
		Findings   []int            `json:"findings"`
		Because    string           `json:"because"`
	}
	suspectCellDoc struct {
		Field   string     `json:"field"`
		Key     string     `json:"key"`
		Label   string     `json:"label"`
		Printed string     `json:"printed"`
		WouldBe string     `json:"would_be,omitempty"`
		Page    int        `json:"page,omitempty"`
		Box     schema.Box `json:"box,omitzero"`
	}
)

func (s *Sheet) suspectDocs() []suspectDoc {
	out := make([]suspectDoc, 0, len(s.Suspects))
	for _, x := range s.Suspects {
		doc := suspectDoc{Field: x.Field, Confidence: math.Round(100*x.Confidence) / 100, Mistake: x.Mistake, Findings: append([]int{}, x.Findings...), Because: x.Because}
		for _, c := range x.Cells {
			e := s.Record.Evidence[c.Field]
			doc.Cells = append(doc.Cells, suspectCellDoc{c.Field, schema.Key(s.Record, c.Field), labelOf(s.Record, c.Field), c.Printed.String(), c.WouldBe.String(), e.Page, e.Box})
		}
		out = append(out, doc)
	}
	return out
}

// labelOf is the label a value is printed under, else its symbol with its unit: "Imp (A)".
func labelOf(s *schema.Sheet, pointer string) string {
	if label := s.Evidence[pointer].Label; label != "" {
		return label
	}
	d, ok := schema.Describe(pointer)
	switch {
	case !ok:
		return fieldName(pointer)
	case d.Unit != "":
		return d.Title + " (" + d.Unit + ")"
	}
	return d.Title
}

// maxSuspectCells is how many values of one suspect are listed: a row of a table has some eight.
const maxSuspectCells = 12

// suspect writes one suspect for a person: what is wrong, what it would be, why.
func (look styles) suspect(b *bytes.Buffer, s *Sheet, x diagnose.Suspect) {
	fmt.Fprintf(b, "  %s  %s\n", look.strong.of(fmt.Sprintf("suspect %2.0f %%", 100*x.Confidence)), Plain(mistakes[x.Mistake]))
	width := 0
	for _, c := range x.Cells[:min(len(x.Cells), maxSuspectCells)] {
		width = max(width, len([]rune(Plain(spoken(s.Record, c.Field)))))
	}
	for i, c := range x.Cells {
		if i == maxSuspectCells {
			fmt.Fprintf(b, "    and %s more\n", plural(len(x.Cells)-i, "value"))
			break
		}
		name := []rune(Plain(spoken(s.Record, c.Field)))
		fmt.Fprintf(b, "    %s%*s  printed %s", string(name), width-len(name), "", look.underline.of(Plain(c.Printed.String())))
		if !c.WouldBe.IsZero() {
			fmt.Fprintf(b, ", would be %s", c.WouldBe)
		}
		if page := s.Record.Evidence[c.Field].Page; page > 0 {
			b.WriteString(", page " + strconv.Itoa(page))
		}
		b.WriteByte('\n')
	}
	fmt.Fprintf(b, "    %s\n", Plain(x.Because))
}
