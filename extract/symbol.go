package extract

import (
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
)

// bySymbol tells the coefficients by the letter that their symbol begins with: what a picture's reader makes of small subscripts is
// anything ("V,,.", "ls."), the letter before them is large.
var bySymbol = map[rune]label.Concept{'V': "beta_voc", 'U': "beta_voc", 'P': "gamma_pmax", 'I': "alpha_isc", 'l': "alpha_isc"}

// maxSymbol is how many characters a symbol with its subscript has at most.
const maxSymbol = 6

// readBySymbol tells of which quantity a coefficient is whose label a picture gives with an unknown symbol. The sign must be that of
// the quantity's coefficient, which for crystalline and thin-film modules is negative but for the current (IEC 61215-2, MQT 04).
func (r *row) readBySymbol() {
	if r.concept != "tempcoef" || r.label[0].by != page.ByPicture {
		return
	}
	words := strings.Fields(r.text())
	if len(words) < 2 {
		return
	}
	symbol := []rune(words[len(words)-1])
	concept, known := bySymbol[symbol[0]]
	if !known || len(symbol) > maxSymbol {
		return
	}
	n := 0
	for _, c := range r.values {
		for _, q := range c.quantities {
			if !q.Unit.Coefficient() || q.Shape == quantity.Range || (q.Terms[0].Value > 0) != (concept == "alpha_isc") {
				return
			}
			n++
		}
	}
	if n > 0 {
		r.concept = concept
	}
}

// ofUnit are the quantities of a table that are printed in a unit.
var ofUnit = map[string][]label.Concept{
	"W": {"pmax"}, "Wp": {"pmax"}, "Wc": {"pmax"}, "V": {"vmp", "voc"}, "Vv": {"vmp", "voc"}, "A": {"imp", "isc"},
}

// readByUnitSign reads a picture's label by its symbol and its unit alone ("E(BN2S Vmp (V)", "Dmax (W)"): the words before them may be
// of a script that the picture's reader has not learned, and the symbol misread in a letter.
func (r *row) readByUnitSign() {
	if r.concept != "" || r.label[0].by != page.ByPicture || !hasQuantity(r.values) {
		return
	}
	text := r.text()
	if r.values[0].isUnit() {
		text += " " + r.values[0].text
	}
	words := strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(" \t()[]/|", c) })
	if len(words) < 2 {
		return
	}
	if concept, ok := label.NearSymbol(words[len(words)-2], ofUnit[words[len(words)-1]]...); ok {
		r.concept = concept
	}
}

// atPower reads "Voltage at | Pmax", whose little word in between was read as a number or not at all, as one label.
func (v *view) atPower() {
	for i := 1; i < len(v.rows); i++ {
		a, b := v.rows[i-1], v.rows[i]
		if a.label[0].by != page.ByPicture || b.concept != "pmax" || b.found.Has("power") || abs(a.base-b.base) > 0.5*b.label[0].size || b.box.X0-a.box.X1 > besidePower*b.label[0].size {
			continue
		}
		switch a.concept {
		case "voltage":
			b.concept = "vmp"
		case "current":
			b.concept = "imp"
		}
	}
}

// besidePower is how far, in sizes, the symbol may stand from what is said of it.
const besidePower = 2.5

// readNear reads a picture's label that is unknown as the known one that is nearest to it.
func (r *row) readNear() {
	if r.concept != "" || r.label[0].by != page.ByPicture || len(r.values) == 0 {
		return
	}
	text := r.text()
	before, _, _ := strings.Cut(text, "(")
	for _, t := range []string{text, before} {
		if f, ok := label.Near(t); ok {
			r.found, r.concept = f, f.Concept()
			return
		}
	}
}

// whoseCoefficient leaves open what a picture's coefficient without a symbol may belong to.
func whoseCoefficient(d *document, r *row) {
	if r.label[0].by != page.ByPicture {
		return
	}
	r.each(func(c *cell, q quantity.Quantity) {
		fields := []string{"/thermal/beta_voc_pct_per_k", "/thermal/gamma_pmax_pct_per_k"}
		if q.Terms[0].Value > 0 {
			fields = []string{"/thermal/alpha_isc_pct_per_k"}
		}
		for _, field := range fields {
			if k, ok := claimOf(field, c, r.text(), q, 0, quantity.PctPerK, loosely); ok && q.Unit.Coefficient() {
				k.open = "a temperature coefficient, and its label does not say of what"
				d.ledger.add(k)
			}
		}
	})
}
