package extract

import (
	"slices"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// conditions reads what the sheet says of its reporting conditions: "NMOT: irradiance 800 W/m², ambient 20 °C, AM 1.5, wind speed 1 m/s".
func (d *document) conditions() {
	for _, f := range d.flows {
		if len(f.text) > 4000 {
			continue
		}
		for _, p := range conditionParts(f.text) {
			d.conditionPart(f, p)
		}
	}
}

// conditionPart is a stretch of text that speaks of one condition.
type conditionPart struct {
	cond       condition
	start, end int
}

// conditionParts cuts a text where it names another condition.
func conditionParts(text string) []conditionPart {
	var out []conditionPart
	for _, m := range label.Find(text).Matches {
		for _, c := range []condition{atSTC, atNMOT, atNOCT, atBNPI} {
			if !slices.Contains(m.Atoms, string(c)) {
				continue
			}
			if n := len(out); n > 0 && out[n-1].cond == c {
				break
			} else if n > 0 {
				out[n-1].end = min(out[n-1].end, m.Start)
			}
			end := len(text)
			if stop := firstStop(text[m.Start:]); stop >= 0 {
				end = m.Start + stop
			}
			out = append(out, conditionPart{c, m.Start, end})
			break
		}
	}
	return out
}

// conditionPart files the figures of one stretch. A temperature that no word explains is the cell's at STC and the air's at NMOT and NOCT.
func (d *document) conditionPart(f *flow, p conditionPart) {
	at := "/conditions/" + string(p.cond)
	last := 0
	for _, c := range f.clauses() {
		if c.q.Start < p.start || c.q.End > p.end || c.q.Shape != quantity.Single {
			continue
		}
		before := label.Find(f.text[max(last, p.start):c.q.Start])
		last = c.q.End
		v := c.q.Terms[0].Value
		switch {
		case c.q.Unit == quantity.WPerM2 && v >= 700:
			d.ledger.add(c.claim(at+"/irradiance_w_m2", 0, worded))
		case c.q.Unit == quantity.WPerM2 && p.cond == atBNPI && v >= 100 && v < 300:
			d.ledger.add(c.claim(at+"/rear_irradiance_w_m2", 0, worded))
		case c.q.Unit == quantity.MPerS:
			d.ledger.add(c.claim(at+"/wind_m_s", 0, worded))
		case c.q.Unit == quantity.C && v <= 30 && (before.Has("ambient") || !before.Has("celltemp") && (p.cond == atNMOT || p.cond == atNOCT)):
			d.ledger.add(c.claim(at+"/ambient_c", 0, worded))
		case c.q.Unit == quantity.C && v <= 30 && (p.cond == atSTC || p.cond == atBNPI):
			d.ledger.add(c.claim(at+"/cell_c", 0, worded))
		case c.q.Unit == quantity.None && before.Has("airmass") && v >= 1 && v <= 2:
			d.ledger.add(c.claim(at+"/air_mass", 0, worded))
		}
	}
}
