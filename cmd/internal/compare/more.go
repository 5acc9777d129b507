package compare

import (
	"fmt"
	"strings"

	"pvtally/rules/site"
	"pvtally/schema"
)

// more are the sentences after the answer.
func (b *builder) more() []string {
	var list []string
	add := func(s string) {
		if s != "" {
			list = append(list, s)
		}
	}
	for i, o := range b.Options {
		if o.Verdict == "reject" {
			add(fmt.Sprintf("%s's sheet is to be rejected: its numbers do not tally, and nothing below can be better than they are.", b.names[i]))
		}
	}
	for i := 1; i < len(b.Options); i++ {
		add(b.differing(i, Real, "%s differs really from A in %s."))
		add(b.differing(i, Within, "%s differs from A only within printed rounding and tolerance in %s."))
	}
	add(b.sunnyLoss())
	add(b.yearly())
	add(b.coldest())
	for i := 1; i < len(b.Options); i++ {
		add(b.evenAt(i))
	}
	return list
}

// differing lists the facts in which option i differs from the first by a verdict.
func (b *builder) differing(i int, verdict, sentence string) string {
	var in []string
	for _, f := range site.Facts {
		d := b.difference(f.Of(b.Options[i].Module), f.Of(b.Options[0].Module), f.Unit, true)
		if f.Said && d != nil && d.Verdict == verdict {
			in = append(in, fmt.Sprintf("%s (%s)", f.Label, d.words()))
		}
	}
	if len(in) == 0 {
		return ""
	}
	return fmt.Sprintf(sentence, b.names[i], and(in))
}

// words are a difference with its sign: "-10 W, -3.7 %"; of per cent "-0.6 points, -3.6 %".
func (d *Difference) words() string {
	text := withUnit(signed(d.Absolute), d.Unit)
	if !d.Percent.IsZero() {
		text += ", " + withUnit(signed(d.Percent), "%")
	}
	return text
}

func signed(n schema.Number) signedNumber { return signedNumber{n} }

// signedNumber shows a plus as well.
type signedNumber struct{ schema.Number }

func (n signedNumber) String() string {
	if n.Float() > 0 {
		return "+" + n.Number.String()
	}
	return n.Number.String()
}

// each says a value of every option that has one: "-7.4 % (A) and -7.8 % (B)".
func (b *builder) each(u site.Unit, of func(i int) site.Value) string {
	var list []string
	for i, name := range b.names {
		if v := of(i); v.Known() {
			list = append(list, fmt.Sprintf("%s (%s)", withUnit(b.cell(v, u).Value, b.of(u).sign), name))
		}
	}
	return and(list)
}

func (b *builder) sunnyLoss() string {
	loss := b.each(site.Percent, b.ofHeat(func(h *heat) site.Value { return h.sunny.Loss }))
	if loss == "" {
		return ""
	}
	return fmt.Sprintf("In the sunny hour temperature changes power by %s, in the hottest by %s.", loss,
		b.each(site.Percent, b.ofHeat(func(h *heat) site.Value { return h.hottest.Loss })))
}

func (b *builder) yearly() string {
	effect := b.each(site.Percent, b.ofHeat(func(h *heat) site.Value { return h.year.Effect }))
	if effect == "" {
		return ""
	}
	return fmt.Sprintf("Over the year temperature changes the energy by %s.", effect)
}

func (b *builder) coldest() string {
	low := b.Site.Climate.RecordLow
	volts := b.each(site.Volt, b.ofHeat(func(h *heat) site.Value { return h.cold.Highest() }))
	if low == nil || volts == "" {
		return ""
	}
	text := fmt.Sprintf("On the coldest morning (%s) one module's Voc reaches %s, the highest of coefficient, model and NEC table", b.showTo(*low, site.Celsius, 0), volts)
	var most []string
	for i, name := range b.names {
		if s := &b.heat[i].series; site.Missing(s.Most, s.Limit) == "" {
			most = append(most, fmt.Sprintf("%.0f × %s below %s", s.Most.V, name, withUnit(trimmed(s.Limit.V, 1), "V")))
		}
	}
	if len(most) > 0 {
		text += ", so a string holds at most " + joined(most, "or")
	}
	return text + ". " + site.Caution
}

// evenAt is the price at which option i costs the same as the first.
func (b *builder) evenAt(i int) string {
	x, base := &b.bills[i], &b.bills[0]
	if x.why+base.why != "" {
		return ""
	}
	even := x.BreakEven(base.Total())
	if !even.Known() {
		return ""
	}
	if even.V < 0 {
		return fmt.Sprintf("%s would cost more than A in all even as a gift.", b.names[i])
	}
	price, own := b.show(even.V, money), b.show(x.Parts[0].Price, money)
	gap := number(even.V-base.Parts[0].Price, 2)
	word := "more"
	if gap.Float() < 0 {
		word = "less"
	}
	return fmt.Sprintf("%s costs the same as A in all at %s per module, %s %s %s than A's; its price is %s.", b.names[i], price, withoutSign(gap), b.currency, word, strings.TrimSpace(own))
}
