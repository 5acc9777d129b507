package compare

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"pvtally/cmd/internal/jsonfile"
	"pvtally/rules/site"
)

// PricesFormat is the value of a price file's "format" key.
const PricesFormat = "pvtally.prices/1"

//go:embed prices.schema.json
var pricesSchema []byte

// PricesSchema is the JSON Schema (draft-07) of price files; a test holds ParsePrices to it.
func PricesSchema() []byte { return pricesSchema }

// Prices are what modules and everything around them cost.
type Prices struct {
	site.Prices
	Currency string
	modules  map[string]float64 // by class name or alias
}

type pricesFile struct {
	Schema      string             `json:"$schema"`
	Format      string             `json:"format"`
	Currency    string             `json:"currency"`
	Modules     map[string]float64 `json:"modules"`
	Rail        float64            `json:"rail_per_m"`
	Racking     float64            `json:"racking_per_module"`
	Electronics float64            `json:"electronics_per_unit"`
	Labour      float64            `json:"labour_per_module"`
	Fixed       float64            `json:"fixed"`
}

// ParsePrices reads a price file. An unknown key is an error, a negative price as well.
func ParsePrices(data []byte) (*Prices, error) {
	var f pricesFile
	if err := jsonfile.Decode(data, PricesFormat, &f); err != nil {
		return nil, err
	}
	if n := utf8.RuneCountInString(f.Currency); n < 1 || n > 8 || strings.ContainsFunc(f.Currency, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.Is(unicode.Sc, r) }) {
		return nil, fmt.Errorf("/currency: found %q, allowed: a code or sign of 1 to 8 letters, such as \"EUR\"", f.Currency)
	}
	if len(f.Modules) == 0 {
		return nil, fmt.Errorf("/modules: it needs the price of at least one module, by the name of its class")
	}
	p := &Prices{site.Prices{RailPerMetre: f.Rail, RackingPerModule: f.Racking, ElectronicsUnit: f.Electronics, LabourPerModule: f.Labour, Fixed: f.Fixed}, f.Currency, map[string]float64{}}
	var names []string
	for name := range f.Modules {
		names = append(names, name)
	}
	slices.Sort(names) // the first of several mistakes is always the same
	for _, name := range names {
		if err := site.CheckModule(name, f.Modules[name]); err != nil {
			return nil, err
		}
		p.modules[key(name)] = f.Modules[name]
	}
	return p, p.Check()
}

// of is the price of a module by its name or an alias.
func (p *Prices) of(m *site.Module) (price float64, ok bool) {
	for _, name := range append([]string{m.Name}, m.Aliases...) {
		if price, ok = p.modules[key(name)]; ok {
			return price, true
		}
	}
	return 0, false
}

// key is a name without what people write differently: case and spaces.
func key(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }
