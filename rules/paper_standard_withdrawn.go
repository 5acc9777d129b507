package rules

import (
	"fmt"
	"strconv"
	"strings"
)

// withdrawn are standards that newer ones have replaced, with the year from which a sheet should not cite them.
var withdrawn = []struct {
	word, by string
	from     int
}{
	{"61646", "IEC 61215-1-2 to -1-4 (2016)", 2020},
	{"61215:2005", "IEC 61215-1 and -2 (2016, 2021)", 2020},
	{"61730:2004", "IEC 61730-1 and -2 (2016, 2023)", 2021},
	{"UL 1703", "UL 61730 (2017, from December 2019)", 2021},
	{"UL1703", "UL 61730 (2017, from December 2019)", 2021},
}

var paperStandardWithdrawn = &Rule{
	ID:      "paper/standard-withdrawn",
	Title:   "a new sheet cites standards in force",
	Why:     "A certificate to a withdrawn standard says nothing of today's product: the sheet was not revised, or the module was not tested anew.",
	Formula: "certificates ∌ withdrawn standards, for sheets issued after the change",
	Sources: []Source{{"Publication years of IEC 61215 (2016), IEC 61730 (2016), UL 61730 (2017)", "from memory"}},
	Levels:  []Threshold{{Note, "a withdrawn standard is cited"}},
	Needs:   []string{"certificates", "issued"},
	Check: func(p *Pass) {
		s := p.Sheet
		if len(s.Issued) < 4 {
			return
		}
		year, err := strconv.Atoi(s.Issued[:4])
		if err != nil {
			return
		}
		for i, certificate := range s.Certificates {
			for _, w := range withdrawn {
				if year >= w.from && strings.Contains(certificate, w.word) {
					p.Report(Note, Finding{Message: fmt.Sprintf("the sheet of %d cites %s, replaced by %s", year, certificate, w.by), Fields: []string{fmt.Sprintf("/certificates/%d", i)}, Printed: certificate})
					break
				}
			}
		}
	},
}
