package extract

import (
	"pvtally/extract/page"
	"pvtally/schema"
)

// confirm marks the values whose digits the second reader finds on the page as often as the first.
func confirm(s *schema.Sheet, pages []page.Page, second *page.Second) {
	for at, e := range s.Evidence {
		if e.By != string(page.ByText) || e.Page < 1 || e.Page > len(pages) || !second.Confirms(pages[e.Page-1], e.Printed) {
			continue
		}
		e.Readings = 2
		s.Evidence[at] = e
	}
}
