package extract

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/page"
	"pvtally/extract/quantity"
	"pvtally/schema"
)

// fact reads the values of a labelled row into claims.
type fact func(d *document, r *row)

// facts is what the reader does with each concept that is no electrical value.
var facts = map[label.Concept]fact{
	"mass":          mass,
	"fuse":          single1("/limits/series_fuse_a", quantity.A, 1, 100),
	"revcur":        single1("/limits/reverse_current_a", quantity.A, 1, 100),
	"busbars":       count("/cell/busbars", 1, 40),
	"diodes":        count("/body/bypass_diodes", 0, 12),
	"dim":           dimensions,
	"sysvolt":       systemVoltage,
	"optemp":        operatingTemperature,
	"temperature":   operatingTemperature,
	"noct":          cellTemperature("/thermal/noct_c", "/thermal/noct_tolerance_c"),
	"nmot":          cellTemperature("/thermal/nmot_c", "/thermal/nmot_tolerance_c"),
	"alpha_isc":     coefficient("/thermal/alpha_isc_pct_per_k", "/thermal/alpha_isc_a_per_k", quantity.APerK),
	"beta_voc":      coefficient("/thermal/beta_voc_pct_per_k", "/thermal/beta_voc_v_per_k", quantity.VPerK),
	"gamma_pmax":    coefficient("/thermal/gamma_pmax_pct_per_k", "/thermal/gamma_pmax_w_per_k", quantity.WPerK),
	"tempcoef":      whoseCoefficient,
	"tol":           powerTolerance,
	"class":         classTolerance,
	"lowlight":      lowLightRow,
	"ptc":           ptcRow,
	"uncertainty":   percent("/tolerance/measurement_pct"),
	"tol_voc":       percent("/tolerance/voc_pct"),
	"tol_isc":       percent("/tolerance/isc_pct"),
	"bifaciality":   bifaciality,
	"cells":         cellsFact,
	"cell_type":     cellsFact,
	"cell_size":     cellSize,
	"front_cover":   glass("/body/front_glass_mm"),
	"rear_cover":    glass("/body/rear_glass_mm"),
	"glass":         glass("/body/front_glass_mm"),
	"junction_box":  junctionBox,
	"cable":         cable,
	"connector":     textFact("/body/connector"),
	"frame":         textFact("/body/frame"),
	"safety":        safetyClass,
	"fire":          fireClass,
	"load_f":        loads("front", false),
	"load_r":        loads("rear", false),
	"load_design_f": loads("front", true),
	"load_design_r": loads("rear", true),
	"load":          loads("", false),
	"load_design":   loads("", true),

	"warranty_product": years("/warranty/product_years"),
	"warranty_power":   years("/warranty/performance_years"),
	"annual_loss":      yearlyLoss,
	"first_year":       firstYear,
}

var mass = single1("/body/mass_kg", quantity.KG, 0.5, 200)

// each calls f for every quantity of the row.
func (r *row) each(f func(c *cell, q quantity.Quantity)) {
	for _, c := range r.values {
		for _, q := range c.quantities {
			f(c, q)
		}
	}
}

// claim adds a claim of a quantity's term where the unit can be the field's and the value lies within what the field can hold at all. The bounds tell places
// apart (a drawing's millimetres from a mass); they are far wider than what is plausible, so that a sheet's own mistake still comes through.
func (d *document) claim(field string, r *row, c *cell, q quantity.Quantity, term int, want quantity.Unit, lo, hi, score float64) bool {
	k, ok := claimOf(field, c, r.text(), q, term, want, score*r.weight)
	if !ok {
		return false
	}
	v := q.Terms[term].Value
	if k.halfStep == "" && (v < lo || v > hi) {
		return false
	}
	d.ledger.add(k)
	return true
}

func single1(field string, unit quantity.Unit, lo, hi float64) fact {
	return func(d *document, r *row) {
		var native, foreign []value
		r.each(func(c *cell, q quantity.Quantity) {
			if q.Shape != quantity.Single && q.Shape != quantity.Within {
				return
			}
			v := value{q: q, cell: c}
			if u := q.Terms[0].Unit; u == unit || u == quantity.None || q.Unit == unit {
				native = append(native, v)
			} else {
				foreign = append(foreign, v)
			}
		})
		// A figure with the unit goes before figures without one beside it.
		if slices.ContainsFunc(native, func(v value) bool { return v.q.Unit == unit }) {
			native = slices.DeleteFunc(native, func(v value) bool { return v.q.Unit != unit })
		}
		for _, v := range native {
			d.claim(field, r, v.cell, v.q, 0, unit, lo, hi, labelled)
		}
		for _, v := range foreign {
			d.claim(field, r, v.cell, v.q, 0, unit, lo, hi, labelled*0.8)
		}
	}
}

func percent(field string) fact {
	return func(d *document, r *row) {
		r.each(func(c *cell, q quantity.Quantity) {
			if q.Unit == quantity.Percent && (q.Shape == quantity.Spread || q.Shape == quantity.Single) {
				d.claim(field, r, c, q, len(q.Terms)-1, quantity.Percent, 0, 20, labelled)
			}
		})
	}
}

func count(field string, lo, hi float64) fact {
	return func(d *document, r *row) {
		r.each(func(c *cell, q quantity.Quantity) {
			if q.Shape == quantity.Single && (q.Unit == quantity.None || q.Unit == quantity.Piece) && q.Terms[0].Value == float64(int(q.Terms[0].Value)) {
				d.claim(field, r, c, q, 0, q.Unit, lo, hi, labelled)
			}
		})
	}
}

// coefficient reads a temperature coefficient in its relative or absolute form; "%/K" printed in the label serves the bare figure.
func coefficient(relative, absolute string, unit quantity.Unit) fact {
	return func(d *document, r *row) {
		labelUnit := unitIn(r.text())
		var perClass []value
		r.each(func(c *cell, q quantity.Quantity) {
			if q.Shape != quantity.Single && q.Shape != quantity.Within {
				return
			}
			v := value{q: q, cell: c, box: c.boxOf(q.Start, q.End), label: r.text()}
			if v.q.Unit == quantity.None {
				v.q.Unit = labelUnit
				v.q.Terms = slices.Clone(q.Terms)
				v.q.Terms[0].Unit = labelUnit
			}
			perClass = append(perClass, v)
		})
		d.coefficients(r, relative, absolute, unit, perClass)
	}
}

// unitIn is the unit printed in a label, as in "β Voc (%/°C)".
func unitIn(text string) quantity.Unit {
	for _, u := range []struct {
		spelling string
		unit     quantity.Unit
	}{{"%", quantity.PctPerK}, {"mV", quantity.MVPerK}, {"mA", quantity.MAPerK}, {"V/", quantity.VPerK}, {"A/", quantity.APerK}, {"W/", quantity.WPerK}} {
		at := strings.Index(text, u.spelling)
		if at >= 0 && (strings.Contains(text[at:], "/") || u.unit == quantity.PctPerK) {
			return u.unit
		}
	}
	return quantity.None
}

func (d *document) coefficients(r *row, relative, absolute string, unit quantity.Unit, values []value) {
	distinct := map[string]bool{}
	for _, v := range values {
		distinct[v.term().Literal] = true
	}
	for i, v := range values {
		field, want := relative, quantity.PctPerK
		if _, _, _, ok := quantity.Convert(v.term(), v.q.Unit, unit); ok && v.q.Unit != quantity.None {
			field, want = absolute, unit
		}
		if len(distinct) > 1 && len(values) == len(d.classes) && len(d.classes) > 1 {
			field = "/models/" + itoa(d.classAt(v.center(), i)) + field
		}
		limit := 1000.0
		if v.q.Unit == quantity.None {
			limit = 2 // a bare figure; no relative coefficient is larger
		}
		d.claim(field, r, v.cell, v.q, 0, want, -limit, limit, labelled)
	}
}

func cellTemperature(field, tolerance string) fact {
	return func(d *document, r *row) {
		r.each(func(c *cell, q quantity.Quantity) {
			switch {
			case len(c.quantities) > 2 && c.isValue():
				return // "75 °C 50 °C 25 °C": the legend of a curve
			case q.Unit != quantity.C && q.Unit != quantity.F && q.Unit != quantity.None && q.Unit != quantity.Degree && q.Unit != quantity.K:
				return
			case q.Shape == quantity.Within:
				q = asCelsius(q)
				if d.claim(field, r, c, q, 0, quantity.C, 30, 70, labelled) {
					d.temperatureTolerance(tolerance, r, c, q)
				}
			case q.Shape == quantity.Single:
				q = asCelsius(q)
				score := labelled
				if q.Unit == quantity.None && !strings.ContainsAny(r.text(), "°℃º") {
					score *= 0.5 // a bare figure may be anything
				}
				d.claim(field, r, c, q, 0, quantity.C, 30, 70, score)
			case q.Shape == quantity.Spread:
				d.claim(tolerance, r, c, asCelsius(q), 1, quantity.C, 0, 10, labelled)
			}
		})
	}
}

// asCelsius reads a bare degree sign, whose letter is lost, as °C.
func asCelsius(q quantity.Quantity) quantity.Quantity {
	if q.Unit == quantity.Degree {
		q.Unit = quantity.C
		q.Terms = slices.Clone(q.Terms)
		for i := range q.Terms {
			q.Terms[i].Unit = quantity.C
		}
	}
	return q
}

// temperatureTolerance takes ± 2 °C, ± 2 K and a bare ± 2; one in °F is a difference, not a temperature.
func (d *document) temperatureTolerance(field string, r *row, c *cell, q quantity.Quantity) {
	q.Terms = slices.Clone(q.Terms)
	t := &q.Terms[1]
	score := labelled
	if t.Unit == quantity.F || q.Unit == quantity.F {
		_, half, literal, ok := quantity.ConvertDifference(*t, quantity.F, quantity.C)
		k, made := claimOf(field, c, r.text(), q, 1, quantity.F, score*r.weight*converted)
		if ok && made {
			k.literal, k.halfStep = literal, literalOf(half)
			d.ledger.add(k)
		}
		return
	}
	t.Unit = quantity.C
	if d.claim(field, r, c, q, 1, quantity.C, 0, 10, score) || c.by != page.ByPicture {
		return
	}
	if k, ok := claimOf(field, c, r.text(), q, 1, quantity.C, score*r.weight); ok { // "43 ±42 °C": a sign was read for a digit, or twice
		k.open = "read from a picture, and no tolerance"
		d.ledger.add(k)
	}
}

func systemVoltage(d *document, r *row) {
	r.each(func(c *cell, q quantity.Quantity) {
		for i := range q.Terms {
			if q.Shape == quantity.Product || q.Shape == quantity.Within && i > 0 || q.Shape == quantity.Spread {
				continue
			}
			if k, ok := claimOf("/limits/system_voltage_v", c, r.text(), q, i, quantity.V, labelled*r.weight); ok && q.Terms[i].Value >= 30 && q.Terms[i].Value <= 3000 && (k.unit != "" || math.Mod(q.Terms[i].Value, 50) == 0) {
				d.voltages = append(d.voltages, k)
			}
		}
	})
}

func operatingTemperature(d *document, r *row) {
	score := labelled
	if r.found.Has("ambient") {
		score *= 0.8
	}
	r.each(func(c *cell, q quantity.Quantity) {
		if q.Unit != quantity.C && q.Unit != quantity.F && q.Unit != quantity.None && q.Unit != quantity.Degree {
			return
		}
		q = asCelsius(q)
		if len(q.Terms) != 2 || q.Shape == quantity.Within || q.Shape == quantity.Product {
			return
		}
		lo, hi := 0, 1
		if q.Shape == quantity.Spread {
			return
		}
		if q.Terms[lo].Value > q.Terms[hi].Value {
			lo, hi = hi, lo
		}
		if q.Unit == quantity.F {
			d.claim("/limits/temperature_min_c", r, c, q, lo, quantity.C, -100, 0, score*0.9)
			d.claim("/limits/temperature_max_c", r, c, q, hi, quantity.C, 30, 300, score*0.9)
			return
		}
		d.claim("/limits/temperature_min_c", r, c, q, lo, quantity.C, -100, 0, score)
		d.claim("/limits/temperature_max_c", r, c, q, hi, quantity.C, 30, 150, score)
	})
}

func powerTolerance(d *document, r *row) {
	if r.found.Any("dim", "length", "width", "mass", "depth", "voc", "isc") && !r.found.Has("pmax") {
		return
	}
	labelUnit := quantity.None
	if text := r.text(); strings.Contains(text, "%") {
		labelUnit = quantity.Percent
	} else if wattUnit.MatchString(text) || r.found.Has("cls") {
		labelUnit = quantity.W
	}
	seen := map[string]bool{}
	r.each(func(c *cell, q quantity.Quantity) {
		if q.Unit == quantity.None {
			q.Unit = labelUnit
			q.Terms = slices.Clone(q.Terms)
			for i := range q.Terms {
				q.Terms[i].Unit = labelUnit
			}
		}
		if key := c.text[q.Start:q.End]; seen[key] {
			return
		} else {
			seen[key] = true
		}
		d.spread(r.text(), c, q, labelled)
	})
}

// spread files a power tolerance; minus is stored as a positive number.
func (d *document) spread(lab string, c *cell, q quantity.Quantity, score float64) {
	var suffix string
	switch q.Unit {
	case quantity.W:
		suffix = "w"
	case quantity.Percent:
		suffix = "pct"
	default:
		return
	}
	minus, plus := 0, 1
	switch {
	case q.Shape == quantity.Spread && len(q.Terms) == 2:
	case q.Shape == quantity.Range && q.Terms[0].Value <= 0 && q.Terms[1].Value >= 0:
	case q.Shape == quantity.Slash && len(q.Terms) == 2 && q.Terms[0].Value*q.Terms[1].Value <= 0:
		if q.Terms[0].Value > 0 {
			minus, plus = 1, 0
		}
	default:
		return
	}
	for _, side := range []struct {
		name string
		term int
	}{{"minus", minus}, {"plus", plus}} {
		k, ok := claimOf("/tolerance/power_"+side.name+"_"+suffix, c, lab, q, side.term, q.Unit, score)
		if !ok {
			return
		}
		k.literal = strings.TrimPrefix(k.literal, "-")
		d.ledger.add(k)
	}
}

// wattUnit is a W or Wp that stands as a unit in a label: bracketed, or at its end.
var wattUnit = regexp.MustCompile(`[\[(]\s*Wp?\s*[\])]|\sWp?$`)

func bifaciality(d *document, r *row) {
	r.each(func(c *cell, q quantity.Quantity) {
		if d.bifacialFraction(r, c, q) {
			return
		}
		if q.Unit != quantity.Percent && q.Unit != quantity.None || q.Shape != quantity.Single && q.Shape != quantity.Within {
			return
		}
		if d.claim("/bifacial/factor_pct", r, c, q, 0, quantity.Percent, 30, 100, labelled) && q.Shape == quantity.Within {
			d.claim("/bifacial/factor_tolerance_pct", r, c, q, 1, quantity.Percent, 0, 20, labelled)
		}
	})
}

// classTolerance reads the sorting printed in the label of the class's or power's row: "Power class (+5 W/-0 W)"; ± may be the measurement's.
func classTolerance(d *document, r *row) {
	c := r.label[0]
	for _, q := range c.quantities {
		if q.Shape == quantity.Spread && (r.concept == "class" || q.Terms[0].Value != q.Terms[1].Value) {
			d.spread(r.text(), c, q, labelled*r.weight)
		}
	}
}

// namedInValue reads rows whose value names the condition that the label fails to: "45 ± 2 °C (NOCT)".
func (d *document) namedInValue(r *row) {
	for _, c := range r.values {
		found := c.whole()
		nmot, noct := found.Has("nmot"), found.Has("noct")
		if nmot == noct || !slices.ContainsFunc(c.quantities, func(q quantity.Quantity) bool { return q.Unit == quantity.C && q.Shape == quantity.Within }) {
			continue
		}
		if nmot {
			d.nearest(facts["nmot"], r)
		} else {
			d.nearest(facts["noct"], r)
		}
		return
	}
	if f := facts[r.concept]; f != nil {
		d.nearest(f, r)
	}
}

// ptcRow reads the PVUSA test condition's power, one value a class.
func ptcRow(d *document, r *row) {
	r.each(func(c *cell, q quantity.Quantity) {
		box := c.boxOf(q.Start, q.End)
		d.eachClass(func(i int, k *class) {
			if q.Shape == quantity.Single && (k.x > box.X0-6 && k.x < box.X1+6 || len(d.classes) == 1) {
				d.claim("/models/"+itoa(i)+"/ptc_w", r, c, q, 0, quantity.W, 10, 1000, labelled)
			}
		})
	})
}

// bifacialFraction reads a bifaciality printed as a fraction; of the three for Voc, Isc and Pmax the record keeps that of the power.
func (d *document) bifacialFraction(r *row, c *cell, q quantity.Quantity) bool {
	v := q.Terms[0].Value
	if q.Unit != quantity.None || v < 0.3 || v > 1 || q.Shape != quantity.Single && q.Shape != quantity.Within {
		return false
	}
	if before := label.Find(c.text[:q.Start]); before.Any("voc", "isc") && !before.Has("pmax") {
		return true
	}
	k, ok := claimOf("/bifacial/factor_pct", c, r.text(), q, 0, quantity.None, labelled*r.weight)
	n, err := schema.ParseNumber(k.literal)
	if !ok || err != nil {
		return true
	}
	k.literal = strconv.FormatFloat(n.Float()*100, 'f', max(0, n.Decimals()-2), 64)
	k.note = "printed as a fraction"
	d.ledger.add(k)
	return true
}
