package compare

import (
	"fmt"

	"pvtally/rules/site"
)

// bill is one option's cost, or why there is none.
type bill struct {
	site.Bill
	why string
}

func (b *builder) calculateBills() {
	for i := range b.Options {
		b.bills = append(b.bills, b.billOf(i))
	}
}

func (b *builder) billOf(i int) bill {
	if b.Prices == nil {
		return bill{why: "no prices are given"}
	}
	p, o, r := b.Prices, b.Options[i], b.roof[i]
	price, ok := p.of(o.Module)
	if !ok {
		return bill{why: fmt.Sprintf("the prices name no %q", o.Name)}
	}
	rail, units := r.rail(), b.units(r)
	if p.RailPerMetre == 0 && !rail.Known() {
		rail = site.Exactly(0)
	}
	if b.Site.ModulesPerUnit == 0 {
		units = site.Exactly(0)
	}
	if why := site.Missing(r.count, b.power(i), rail, units); why != "" {
		return bill{why: why}
	}
	return bill{Bill: site.NewBill(price, site.Quantities{Modules: int(r.count.V), Units: int(units.V), Rail: rail.V, Power: b.power(i).V}, p.Prices)}
}

func (b *builder) ofBill(pick func(x *bill) site.Value) func(int) site.Value {
	return func(i int) site.Value {
		if x := &b.bills[i]; x.why == "" {
			return pick(x)
		} else {
			return site.None("%s", x.why)
		}
	}
}

// against is ofBill for what only a comparison with the first option gives.
func (b *builder) against(pick func(x, base *bill) site.Value) func(int) site.Value {
	return func(i int) site.Value {
		switch x, base := &b.bills[i], &b.bills[0]; {
		case i == 0:
			return site.None("the others are compared with it")
		case x.why+base.why != "":
			return site.None("%s", firstOf(x.why, base.why))
		default:
			return pick(x, base)
		}
	}
}

// aPart is a bill with parts, whose names and order all bills have; nil where no option has one.
func (b *builder) aPart() []site.Part {
	for i := range b.bills {
		if b.bills[i].why == "" {
			return b.bills[i].Parts
		}
	}
	return nil
}

func (b *builder) costSection() *Section {
	if b.Prices == nil {
		return nil
	}
	s := &Section{ID: "cost", Title: "Cost"}
	if b.aPart() == nil {
		s.Notes = append(s.Notes, "No cost: "+b.bills[0].why+".")
		return s
	}
	b.row(s, "module_price", "price of a module", money, "given", false, b.ofBill(func(x *bill) site.Value { return site.Exactly(x.Parts[0].Price) }))
	for k, p := range b.aPart() {
		if b.priced(k) {
			b.row(s, p.ID, p.Label, money, "amount × price", false, b.ofBill(func(x *bill) site.Value { return site.Exactly(x.Parts[k].Cost()) }))
		}
	}
	b.row(s, "total", "in all", money, "", false, b.ofBill(func(x *bill) site.Value { return site.Exactly(x.Total()) }))
	b.row(s, "per_watt", "per W installed", moneyPerWatt, "total / installed power at STC", false, b.ofBill(func(x *bill) site.Value { return x.PerWatt() }))
	if len(b.Options) > 1 {
		b.row(s, "break_even", "price of a module at which it costs the same as A in all", money, "(A's total - all but the modules) / modules", false,
			b.against(func(x, base *bill) site.Value { return x.BreakEven(base.Total()) }))
		b.row(s, "break_even_difference", "the same less A's price", money, "", false,
			b.against(func(x, base *bill) site.Value {
				return x.BreakEven(base.Total()).Sum(site.Exactly(-base.Parts[0].Price))
			}))
		b.row(s, "break_even_watt", "price of a module at which it costs the same as A per W", money, "(A's total per W × its power - all but the modules) / modules", false,
			b.against(func(x, base *bill) site.Value {
				return base.PerWatt().Product(site.Exactly(x.Power)).Sum(x.BreakEven(0).Times(float64(x.Modules))).Times(1 / float64(x.Modules))
			}))
	}
	return s
}

// priced reports that a part costs anything in some option.
func (b *builder) priced(k int) bool {
	for i := range b.bills {
		if x := &b.bills[i]; x.why == "" && x.Parts[k].Cost() != 0 {
			return true
		}
	}
	return false
}

// sensitivity moves each input by a tenth, and to where an option would cost the same as the first.
func (b *builder) sensitivity() *Section {
	if b.Prices == nil || b.aPart() == nil {
		return nil
	}
	s := &Section{ID: "sensitivity", Title: "What the cost hangs on"}
	for k, p := range b.aPart() {
		if !b.priced(k) {
			continue
		}
		b.row(s, p.ID+"_tenth", p.Label+" dearer by 10 %: change in all", money, "a tenth of the part", false,
			b.ofBill(func(x *bill) site.Value { return site.Exactly(x.Parts[k].Cost() / 10) }))
		if len(b.Options) > 1 && k > 0 && k < len(b.aPart())-1 {
			b.row(s, p.ID+"_equal", p.Label+": price at which it costs the same as A", money, "every other price as it stands", false,
				b.against(func(x, base *bill) site.Value { return x.EqualAt(k, base.Bill) }))
		}
	}
	return s
}
