package compare

import (
	"fmt"
	"math"

	"pvtally/rules/site"
)

// warmth sets the drifts of Isc beside the printed power tolerance: the question an adviser hears most about heat.
func (b *builder) warmth() string {
	if len(b.Options) < 2 {
		return ""
	}
	lo, hi, share, tolerance := math.Inf(1), math.Inf(-1), 0.0, math.Inf(1)
	for i, o := range b.Options {
		d := b.heat[i].sunny.IscDrift
		if !d.Known() || o.Isc.V <= 0 {
			return ""
		}
		lo, hi, share = min(lo, d.V), max(hi, d.V), max(share, 100/o.Isc.V)
		if t := o.PowerTolerance(); t.Known() && t.V > 0 {
			tolerance = min(tolerance, t.V)
		}
	}
	between := "against"
	if len(b.Options) > 2 {
		between = "to"
	}
	drift := func(v float64) string { return b.show(v, site.Ampere) }
	head := fmt.Sprintf("%s heat moves Isc by %s %s %s", b.place(), drift(lo), between, drift(hi))
	difference := fmt.Sprintf("%s (%s %% of Isc)", drift(hi-lo), number((hi-lo)*share, 1))
	switch {
	case drift(lo) == drift(hi):
		return head + ", which is no difference"
	case math.IsInf(tolerance, 0):
		return head + ", a difference of " + difference
	case (hi-lo)*share < tolerance:
		return fmt.Sprintf("%s, and the difference of %s is below the printed power tolerance of %s %%", head, difference, number(tolerance, 1))
	}
	return fmt.Sprintf("%s, and the difference of %s is not below the printed power tolerance of %s %%", head, difference, number(tolerance, 1))
}

// place is where, with the temperature of the modules there.
func (b *builder) place() string {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range b.heat {
		if t := b.heat[i].sunny.Cell; t.Known() {
			lo, hi = min(lo, t.V), max(hi, t.V)
		}
	}
	at := b.showTo(lo, site.Celsius, 0)
	if top := b.showTo(hi, site.Celsius, 0); top != at {
		at = b.of(site.Celsius).whole(lo) + " to " + top
	}
	where := "on a " + b.Site.Climate.Name + " site"
	if !b.Site.Climate.Invented {
		where = "at " + firstOf(b.Site.Name, b.Site.Climate.Name)
	}
	return fmt.Sprintf("%s (module at %s)", where, at)
}

func (m measure) whole(v float64) string { return number(m.of(v), 0).String() }
