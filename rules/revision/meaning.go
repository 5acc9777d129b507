package revision

import (
	"strings"

	"pvtally/schema"
)

// meaning is what a field is to the buyer.
type meaning struct {
	better  int    // +1 where more is better, -1 where less is, 0 where it depends
	up      string // what follows from more
	down    string // what follows from less
	strings int    // +1 where more asks for shorter strings, -1 where less does
	name    bool   // it only names the thing
	promise bool   // printing it binds the maker
}

const (
	colder = "a string's voltage in the cold rises, and the longest string that used to fit may not"
	racks  = "racking, clamps and layout made for the old size must be checked"
)

// meanings are by the key's last name, with the block before it where the same name means different things. What is not listed depends.
var meanings = map[string]meaning{
	"maker": {name: true}, "series": {name: true}, "revision": {name: true}, "issued": {name: true}, "language": {name: true}, "name": {name: true}, "aliases": {name: true},

	"pmax_w":         {better: 1, up: "more power from the same module", down: "less power from the same module", promise: true},
	"efficiency_pct": {better: 1, up: "more power from the same area", down: "less power from the same area", promise: true},
	"ptc_w":          {better: 1, up: "more power in practice", down: "less power in practice", promise: true},
	"voc_v":          {better: -1, up: colder, down: "a string's voltage in the cold falls", strings: 1, promise: true},
	"isc_a":          {up: "fuse, cable and inverter input must carry more", down: "less current at full light", promise: true},
	"vmp_v":          {up: "the string works at a higher voltage: check the tracking window", down: "the string works at a lower voltage: check the tracking window", promise: true},
	"imp_a":          {up: "more current: check the inverter's input", down: "less current", promise: true},

	"nmot_c": {better: -1, up: "the module runs hotter and yields less", down: "the module runs cooler and yields more", promise: true},
	"noct_c": {better: -1, up: "the module runs hotter and yields less", down: "the module runs cooler and yields more", promise: true},

	"alpha_isc_pct_per_k":  {up: "more current in the heat", down: "less current in the heat", promise: true},
	"beta_voc_pct_per_k":   {better: 1, up: "Voc falls and rises less with temperature", down: "steeper: " + colder, strings: -1, promise: true},
	"gamma_pmax_pct_per_k": {better: 1, up: "less power is lost in the heat", down: "steeper: more power is lost in the heat", promise: true},

	"system_voltage_v":     {better: 1, up: "longer strings are allowed", down: "strings built to the old limit are too long", strings: -1, promise: true},
	"series_fuse_a":        {better: 1, up: "more strings may be fused in parallel", down: "fuses and combiners chosen by the old rating are too large", promise: true},
	"reverse_current_a":    {better: 1, up: "the module stands more reverse current", down: "the module stands less reverse current", promise: true},
	"temperature_min_c":    {better: -1, up: "it is no longer meant for such cold", down: "it is meant for more cold", promise: true},
	"temperature_max_c":    {better: 1, up: "it is meant for more heat", down: "it is no longer meant for such heat", promise: true},
	"front_load_pa":        {better: 1, up: "it bears more snow", down: "it bears less snow", promise: true},
	"rear_load_pa":         {better: 1, up: "it bears more wind", down: "it bears less wind", promise: true},
	"front_design_load_pa": {better: 1, up: "it bears more snow", down: "it bears less snow", promise: true},
	"rear_design_load_pa":  {better: 1, up: "it bears more wind", down: "it bears less wind", promise: true},

	"factor_pct":           {better: 1, up: "the rear gives more", down: "the rear gives less", promise: true},
	"factor_tolerance_pct": {better: -1, up: "the rear's share is promised less closely", down: "the rear's share is promised more closely", promise: true},
	"nmot_tolerance_c":     {better: -1, up: "promised less closely", down: "promised more closely"},
	"noct_tolerance_c":     {better: -1, up: "promised less closely", down: "promised more closely"},
	"power_plus_w":         {better: 1, up: "more power may come", down: "less surplus may come", promise: true},
	"power_plus_pct":       {better: 1, up: "more power may come", down: "less surplus may come", promise: true},
	"power_minus_w":        {better: -1, up: "the module may have less than its name says", down: "less may be missing", promise: true},
	"power_minus_pct":      {better: -1, up: "the module may have less than its name says", down: "less may be missing", promise: true},
	"voc_pct":              {better: -1, up: "Voc may lie higher: " + colder, down: "promised more closely", strings: 1, promise: true},
	"isc_pct":              {better: -1, up: "promised less closely", down: "promised more closely", promise: true},
	"measurement_pct":      {better: -1, up: "the power is measured less closely", down: "the power is measured more closely", promise: true},

	"product_years":       {better: 1, up: "longer warranty", down: "shorter warranty", promise: true},
	"performance_years":   {better: 1, up: "longer warranty", down: "shorter warranty", promise: true},
	"first_year_loss_pct": {better: -1, up: "the warranty lets more power go", down: "the warranty lets less power go", promise: true},
	"annual_loss_pct":     {better: -1, up: "the warranty lets more power go, every year", down: "the warranty lets less power go, every year", promise: true},
	"final_output_pct":    {better: 1, up: "more power is promised at the end", down: "less power is promised at the end", promise: true},

	"relative_efficiency_pct": {better: 1, up: "more in weak light", down: "less in weak light", promise: true},
	"certificates":            {promise: true, up: "certified to one more standard", down: "ask whether the certificate has lapsed"},

	"length_mm": {up: racks, down: racks}, "width_mm": {up: racks, down: racks}, "depth_mm": {up: racks, down: racks},
	"mass_kg":         {better: -1, up: "roof and racking carry more", down: "roof and racking carry less"},
	"front_glass_mm":  {better: 1, up: "thicker glass", down: "thinner glass"},
	"rear_glass_mm":   {better: 1, up: "thicker glass", down: "thinner glass"},
	"cable_mm2":       {better: 1, up: "thicker cable", down: "thinner cable: more is lost in it"},
	"cable_length_mm": {better: 1, up: "the cable reaches farther", down: "the cable may no longer reach"},
	"connector":       {up: "it must mate with what is installed"},

	"modules_per_pallet": {name: true}, "pallets_per_container": {name: true}, "modules_per_container": {name: true},
	"busbars": {name: true},
}

// blocks are names whose meaning hangs on the block they stand in.
var blocks = map[string]meaning{
	"cell.width_mm": {up: anotherBuild, down: anotherBuild}, "cell.height_mm": {up: anotherBuild, down: anotherBuild}, "cell.count": {up: anotherBuild, down: anotherBuild},
	"cell.technology": {up: anotherBuild}, "cell.arrangement": {up: anotherBuild}, "cell.cut": {up: anotherBuild},
}

const anotherBuild = "the module is built another way: ask whether its certificates and coefficients still hold"

// absolutes are the coefficients in V/K and its kind: they mean what the relative ones do.
var absolutes = map[string]string{"alpha_isc_a_per_k": "alpha_isc_pct_per_k", "beta_voc_v_per_k": "beta_voc_pct_per_k", "gamma_pmax_w_per_k": "gamma_pmax_pct_per_k"}

// meaningOf finds a change's meaning by where it stands, whatever class or entry of a list that is.
func meaningOf(c schema.Change) meaning {
	pointer := c.New.Pointer
	if c.New.IsZero() {
		pointer = c.Old.Pointer
	}
	block, name := "", ""
	for token := range strings.SplitSeq(strings.TrimPrefix(pointer, "/models"), "/") {
		if strings.Trim(token, "0123456789") != "" {
			block, name = name, token
		}
	}
	if m, ok := blocks[block+"."+name]; ok {
		return m
	}
	if relative, ok := absolutes[name]; ok {
		name = relative
	}
	m := meanings[name]
	if name == "voc_v" && block != "stc" { // strings are sized from STC
		m = meaning{up: "the voltage at this condition is another", down: "the voltage at this condition is another", promise: true}
	}
	return m
}

func (m meaning) appears() (Effect, string) {
	switch {
	case m.name:
		return Neutral, ""
	case m.promise:
		return Helps, "there now: the maker can be held to it"
	}
	return Depends, ""
}

func (m meaning) goes() (Effect, string) {
	switch {
	case m.name:
		return Neutral, ""
	case m.promise:
		return Hurts, "not found in the new edition: if it is gone, the maker can no longer be held to it"
	}
	return Depends, "not found in the new edition"
}

// other is a text that became another.
func (m meaning) other() (Effect, string) {
	if m.name {
		return Neutral, ""
	}
	return Depends, m.up
}

// moves is a number that became another.
func (m meaning) moves(c *Change) (Effect, string) {
	a, b := c.Old.Number.Float(), c.New.Number.Float()
	switch {
	case c.Delta == 0:
		return Neutral, "the same number, printed with another precision"
	case c.Explained:
		return Neutral, "one is the other rounded"
	case a*b < 0 && m.better != 0:
		return Depends, "the sign is another: one of the two is a misprint, ask which"
	case m.name:
		return Neutral, ""
	}
	why := m.up
	if c.Delta < 0 {
		why = m.down
	}
	switch {
	case m.better == 0:
		return Depends, why
	case float64(m.better)*c.Delta > 0:
		return Helps, why
	}
	return Hurts, why
}
