package extract

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// keys are the record's keys of the electrical concepts.
var keys = map[label.Concept]struct {
	key  string
	unit quantity.Unit
}{
	"pmax": {"pmax_w", quantity.W}, "vmp": {"vmp_v", quantity.V}, "imp": {"imp_a", quantity.A},
	"voc": {"voc_v", quantity.V}, "isc": {"isc_a", quantity.A}, "eff": {"efficiency_pct", quantity.Percent},
}

// order in which claims are made: maps have none.
var electricalOrder = []label.Concept{"pmax", "vmp", "imp", "voc", "isc", "eff"}

// electricalClaims turns the classes' columns into claims.
func (d *document) electricalClaims() {
	d.eachClass(func(i int, k *class) {
		at := "/models/" + itoa(i)
		for _, cond := range []condition{atSTC, atNMOT, atNOCT, atBNPI, atLow} {
			if c := k.byCond[cond]; c != nil {
				d.columnClaims(at+"/"+string(cond), c, cond)
				if cond == atLow {
					d.lowIrradiance(at, k.blocks[cond])
				}
			}
		}
		if _, ok := k.main.values["pmax"]; !ok {
			d.wattsFromName(at, k)
		}
		for g, c := range k.gains {
			d.gainClaims(at+"/rear_gain/"+itoa(g), "/gain_pct", c)
		}
		for g, c := range k.ratios {
			d.gainClaims(at+"/rear_ratio/"+itoa(g), "/ratio_pct", c)
		}
	})
}

// eachClass visits the classes with their index in their series' record; claims made meanwhile belong to the series.
func (d *document) eachClass(visit func(i int, k *class)) {
	for p, part := range d.parts {
		if len(d.parts) > 1 {
			d.ledger.part = p + 1
		}
		for i, k := range part.classes {
			visit(i, k)
		}
	}
	d.ledger.part = 0
}

func (d *document) columnClaims(at string, c *column, cond condition) {
	for _, concept := range electricalOrder {
		v, ok := c.values[concept]
		if !ok || concept == "eff" && cond != atSTC && sharedWith(d, v) {
			continue
		}
		d.electrical(at, concept, v)
		for _, o := range c.doubt[concept] {
			d.electrical(at, concept, o)
		}
	}
}

// sharedWith: a merged efficiency over the pair STC and NMOT is the STC one's.
func sharedWith(d *document, v value) bool {
	for _, k := range d.classes {
		if o, ok := k.main.values["eff"]; ok && o.box == v.box {
			return true
		}
	}
	return false
}

func (d *document) electrical(at string, concept label.Concept, v value) {
	key := keys[concept]
	k, ok := claimOf(at+"/"+key.key, v.cell, v.label, v.q, 0, key.unit, inTable)
	if !ok {
		return
	}
	if k.unit == "" {
		k.score = inTable
	}
	k.box = v.box
	d.toleranceWithin(at, concept, v)
	k.row = strings.TrimLeft(at, "/models0123456789") + "/" + key.key
	d.ledger.add(k)
}

func (d *document) gainClaims(at, key string, c *column) {
	if c.gain == nil {
		return
	}
	if k, ok := claimOf(at+key, c.gain.cell, c.gain.label, c.gain.q, 0, quantity.Percent, inTable); ok {
		d.ledger.add(k)
		d.columnClaims(at, c, atGain)
	}
}

var wattsText = regexp.MustCompile(`(\d{2,4}(?:[.,]\d)?)\s*(?:W|Wp|w|wp)?$`)

// wattsFromName takes the class's power from its header where no power row is printed and the header is nothing but the watts.
func (d *document) wattsFromName(at string, k *class) {
	if k.named == nil {
		return
	}
	m := wattsText.FindStringSubmatch(k.name)
	if m == nil || len(k.name) > 8 {
		return
	}
	if _, err := strconv.ParseFloat(m[1], 64); err != nil {
		return
	}
	c := k.named
	d.ledger.add(claim{field: at + "/stc/pmax_w", literal: m[1], printed: c.text, label: "power class", page: c.page, box: c.box, by: c.by, score: labelled, note: "the class printed as the column's header; no power row"})
}

// lists fills the record's list fields, each entry with its evidence.
func (d *document) lists(s *schema.Sheet) {
	put := func(field string, claims []claim, keepRepeats bool) []schema.Number {
		var out []schema.Number
		var seen []string
		for _, k := range claims {
			n, err := schema.ParseNumber(k.literal)
			if err != nil || !keepRepeats && slices.Contains(seen, k.literal) {
				continue
			}
			seen = append(seen, k.literal)
			s.Evidence[field+"/"+itoa(len(out))] = evidenceOf(k)
			out = append(out, n)
		}
		return out
	}
	s.Limits.SystemVoltage = put("/limits/system_voltage_v", bestOf(d.voltages), false)
	s.Body.CableLengths = put("/body/cable_length_mm", metricOf(bestOf(d.cables)), true)
}

// bestOf keeps the claims of the best place only.
func bestOf(claims []claim) []claim {
	best := 0.0
	for _, k := range claims {
		best = max(best, k.score)
	}
	return slices.DeleteFunc(slices.Clone(claims), func(k claim) bool { return best-k.score >= margin })
}

// metricOf drops inches where millimetres are printed beside.
func metricOf(claims []claim) []claim {
	if slices.ContainsFunc(claims, func(k claim) bool { return k.unit != "in" }) {
		return slices.DeleteFunc(slices.Clone(claims), func(k claim) bool { return k.unit == "in" })
	}
	return claims
}

// lowIrradiance files the irradiance that a low-irradiance table's title names.
func (d *document) lowIrradiance(at string, b *block) {
	if b.titled == nil {
		return
	}
	for _, q := range b.titled.quantities {
		if q.Unit != quantity.WPerM2 {
			continue
		}
		if k, ok := claimOf(at+"/low/irradiance_w_m2", b.titled, b.title, q, 0, quantity.WPerM2, inTable); ok {
			d.ledger.add(k)
		}
		return
	}
}

// toleranceWithin reads a tolerance printed in the cell of an STC value: "230 Wp ± 3 %".
func (d *document) toleranceWithin(at string, concept label.Concept, v value) {
	if v.q.Shape != quantity.Within || !strings.HasSuffix(at, "/stc") {
		return
	}
	var fields []string
	unit := v.q.Terms[1].Unit
	switch {
	case concept == "pmax" && unit == quantity.Percent:
		fields = []string{"/tolerance/power_minus_pct", "/tolerance/power_plus_pct"}
	case concept == "pmax" && unit == quantity.W:
		fields = []string{"/tolerance/power_minus_w", "/tolerance/power_plus_w"}
	case concept == "voc" && unit == quantity.Percent:
		fields = []string{"/tolerance/voc_pct"}
	case concept == "isc" && unit == quantity.Percent:
		fields = []string{"/tolerance/isc_pct"}
	}
	for _, f := range fields {
		if k, ok := claimOf(f, v.cell, v.label, v.q, 1, unit, labelled); ok {
			d.ledger.add(k)
		}
	}
}
