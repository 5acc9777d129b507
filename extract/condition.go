package extract

import (
	"strings"

	"pvtally/extract/label"
	"pvtally/extract/quantity"
)

// condition names the conditions an electrical table holds at.
type condition string

const (
	unknownCondition condition = ""
	atSTC            condition = "stc"
	atNMOT           condition = "nmot"
	atNOCT           condition = "noct"
	at800            condition = "800" // 800 W/m2 by its numbers; the sheet's name for it is looked up elsewhere
	atBNPI           condition = "bnpi"
	atLow            condition = "low"
	atGain           condition = "rear_gain"
	atRatio          condition = "rear_ratio"
	mixedCondition   condition = "mixed" // the text speaks of several
)

// conditionOf tells which condition a title or header speaks of. Names come before numbers: "NOCT (800 W/m2)" is NOCT.
func conditionOf(text string, found label.Found) condition {
	var named []condition
	for _, a := range []struct {
		atom string
		is   condition
	}{{"bnpi", atBNPI}, {"stc", atSTC}, {"nmot", atNMOT}, {"noct", atNOCT}} {
		if found.Has(a.atom) {
			named = append(named, a.is)
		}
	}
	switch {
	case found.Has("bifacialgain"):
		return atGain
	case found.Has("rearratio"):
		return atRatio
	case len(named) == 1:
		return named[0]
	case len(named) == 2 && named[0] == atNMOT && named[1] == atNOCT:
		return firstNamed(found)
	case len(named) > 1:
		return mixedCondition
	}
	if cond := byIrradiance(text); cond != unknownCondition || !found.Has("lowlight") || found.Share() < titleShare {
		return cond
	}
	return atLow
}

// titleShare is the share of known words from which on a text about low light is a table's title and no sentence.
const titleShare = 0.6

// firstNamed settles "NMOT (formerly NOCT)": the name that stands first is the table's.
func firstNamed(found label.Found) condition {
	for _, m := range found.Matches {
		for _, a := range m.Atoms {
			if a == "nmot" || a == "noct" {
				return condition(a)
			}
		}
	}
	return mixedCondition
}

// byIrradiance reads the condition from a printed irradiance.
func byIrradiance(text string) condition {
	if !strings.ContainsAny(text, "28１２８1") {
		return unknownCondition
	}
	var out condition
	for _, q := range quantity.Scan(text) {
		if q.Unit != quantity.WPerM2 {
			continue
		}
		var is condition
		switch v := q.Terms[0].Value; {
		case v == 1000:
			is = atSTC
		case v == 800:
			is = at800
		case v >= 100 && v < 800:
			is = atLow
		default:
			continue
		}
		if out != unknownCondition && out != is {
			return mixedCondition
		}
		out = is
	}
	return out
}
