package extract

import "pvtally/extract/page"

// doubt leaves open what stands in a word that may not be all there is: the number is then part of another.
func (l *ledger) doubt(pages []page.Page) {
	for _, p := range pages {
		for _, w := range p.Words {
			if w.Doubt == "" || w.Hidden != page.Visible {
				continue
			}
			for i := range l.claims {
				if c := &l.claims[i]; c.page == p.Number && c.open == "" && shared(c.box, w.Box) {
					c.open, c.readings = w.Doubt, 0
				}
			}
		}
	}
}

// shared tells whether two boxes have more than their edges in common.
func shared(a, b page.Box) bool {
	w, h := min(a.X1, b.X1)-max(a.X0, b.X0), min(a.Y1, b.Y1)-max(a.Y0, b.Y0)
	return w > 0 && h > 0.3*min(a.H(), b.H())
}
