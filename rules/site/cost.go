package site

// Prices are what a system's parts cost, all in one currency and not negative.
type Prices struct {
	RailPerMetre     float64
	RackingPerModule float64
	ElectronicsUnit  float64
	LabourPerModule  float64
	Fixed            float64 // whatever does not depend on the modules
}

// Quantities are how much of each part one option takes.
type Quantities struct {
	Modules, Units int
	Rail           float64 // m
	Power          float64 // W installed
}

// Part is one input of a cost: so many at so much.
type Part struct {
	ID, Label string
	Amount    float64
	Price     float64
}

// Cost is what the part comes to.
func (p Part) Cost() float64 { return p.Amount * p.Price }

// Bill is one option's cost: the modules first, then the parts that every option shares the price of.
type Bill struct {
	Quantities
	Parts []Part
}

// NewBill multiplies out.
func NewBill(module float64, q Quantities, p Prices) Bill {
	n := float64(q.Modules)
	return Bill{q, []Part{
		{"module", "modules", n, module},
		{"rail", "rails", q.Rail, p.RailPerMetre},
		{"racking", "racking per module", n, p.RackingPerModule},
		{"electronics", "module-level electronics", float64(q.Units), p.ElectronicsUnit},
		{"labour", "labour", n, p.LabourPerModule},
		{"fixed", "fixed", 1, p.Fixed},
	}}
}

// Total is the sum of the parts.
func (b Bill) Total() float64 {
	sum := 0.0
	for _, p := range b.Parts {
		sum += p.Cost()
	}
	return sum
}

// BreakEven is the price of this bill's module at which its total is so much. It may be negative: then not even a gift is cheap enough.
func (b Bill) BreakEven(total float64) Value {
	if b.Modules < 1 {
		return None("no module is installed")
	}
	return Exactly((total - (b.Total() - b.Parts[0].Cost())) / float64(b.Modules))
}

// PerWatt is the total over the installed power.
func (b Bill) PerWatt() Value {
	if b.Power <= 0 {
		return None("no power is installed")
	}
	return Exactly(b.Total() / b.Power)
}

// EqualAt is the price of part i at which this bill and the base cost the same, every other price as it stands: of the modules this
// option's own price moves, of any other part the price that both share. It is no number where that price would be negative or the
// part counts alike for both.
func (b Bill) EqualAt(i int, base Bill) Value {
	difference := b.Total() - base.Total()
	slope := b.Parts[i].Amount
	if i > 0 {
		slope -= base.Parts[i].Amount
	}
	if slope == 0 {
		return None("both take the same amount: its price decides nothing")
	}
	price := b.Parts[i].Price - difference/slope
	if price < 0 {
		return None("no price of it makes them equal")
	}
	return Exactly(price)
}
