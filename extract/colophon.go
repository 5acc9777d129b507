package extract

import (
	"regexp"
	"strings"

	"pvtally/extract/page"
)

// The small print that says whose sheet it is and which edition.
var (
	company   = regexp.MustCompile(`((?:[\p{Lu}\d][\pL\d&'’.-]*\s+(?:&\s+)?){1,5}?(?:GmbH|Co\.,?\s*Ltd\b\.?|Inc\b\.?|S\.p\.A\.|S\.r\.l\.|S\.A\.|S\.L\.|B\.V\.|A\.Ş\.|Ltd\b\.?|Limited\b|Corp\b\.?|Corporation\b|LLC\b|Sp\. z o\.o\.|AG\b)|\p{Han}{2,16}(?:股份)?有限公司|株式会社\pL{2,16})`)
	copyright = regexp.MustCompile(`(?:©|\(c\)|Copyright)\s*(?:20\d\d)?(?:\s*[–-]\s*20\d\d)?[,\s]*((?:[\p{Lu}][\pL&'’.-]*\s*){1,5})`)
	imprint   = regexp.MustCompile(`^\s*(\p{Lu}[\pL\d&'’. -]{3,40}?)\s*[·|•]\s`)
	contact   = regexp.MustCompile(`@|www\.|(?i:\btel\b|\bphone\b)`)
	edition   = regexp.MustCompile(`(?i)(?:\brev(?:ision)?\b\.?|\bver(?:sion)?\b\.?)\s*[:.]?\s*\d[\w./-]*|\bv\d{1,2}(?:\.\d+)*\b|\b20\d{6}\s?V?\d{0,2}\b|\b[A-Z]{2,5}-[A-Z0-9][A-Z0-9-]*-(?:EN|DE|FR|ES|IT|PT|NL|PL|TR|ZH|JA|US)\b\S*(?:\s+(?:Rev\.?|V)\s*\S+)?`)
	dateYM    = regexp.MustCompile(`\b(20[0-4]\d)[-./](0[1-9]|1[0-2])\b|\b(0[1-9]|1[0-2])[/.](20[0-4]\d)\b`)
)

// colophon fills maker, revision and date of issue. The most often named company is the maker.
func (d *document) colophon() {
	named := map[string]int{}
	var order []string
	place := map[string]*flow{}
	for _, f := range d.flows {
		for _, re := range []*regexp.Regexp{company, copyright, imprint} {
			if re == imprint && !contact.MatchString(f.text) {
				continue
			}
			for _, m := range re.FindAllStringSubmatch(f.text, -1) {
				name := strings.Trim(strings.Join(strings.Fields(m[1]), " "), " ,.")
				if strings.EqualFold(name, "copyright") || len([]rune(name)) < 4 || len([]rune(name)) > 60 {
					continue
				}
				if named[name]++; named[name] == 1 {
					order = append(order, name)
					place[name] = f
				}
			}
		}
		d.edition(f)
	}
	best := ""
	for _, name := range order {
		if best == "" || named[name] > named[best] {
			best = name
		}
	}
	if best != "" {
		f := place[best]
		at := max(0, strings.Index(f.text, best))
		box, by := f.place(at, at+len(best))
		d.ledger.add(claim{field: "/maker", text: true, literal: best, printed: best, label: "company", page: f.page, box: box, by: by, score: labelled})
	}
}

// edition reads the revision mark and the month of issue from small print at the foot or the head of a page.
func (d *document) edition(f *flow) {
	p := d.pageOf(f.page)
	if p == nil || len(f.text) > 200 || f.box.Y0 < 0.88*p.Height && f.box.Y1 > 0.06*p.Height && len(f.text) > 30 {
		return
	}
	if m := edition.FindStringIndex(f.text); m != nil {
		d.ledger.add(f.mark("/revision", strings.TrimSpace(f.text[m[0]:m[1]]), m))
	}
	if m := dateYM.FindStringSubmatchIndex(f.text); m != nil {
		year, month := 2, 4
		if m[2] < 0 {
			year, month = 8, 6
		}
		d.ledger.add(f.mark("/issued", f.text[m[year]:m[year+1]]+"-"+f.text[m[month]:m[month+1]], m[:2]))
	}
}

func (f *flow) mark(field, literal string, at []int) claim {
	box, by := f.place(at[0], at[1])
	return claim{field: field, text: true, literal: literal, printed: f.text[at[0]:at[1]], label: "small print", page: f.page, box: box, by: by, score: labelled}
}

func (d *document) pageOf(number int) *page.Page {
	for _, v := range d.views {
		if v.page.Number == number {
			return v.page
		}
	}
	return nil
}
