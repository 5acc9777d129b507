package rules

import (
	"fmt"
	"math"
)

var packingProduct = &Rule{
	ID:      "packing/product",
	Title:   "modules per pallet times pallets is modules per container",
	Why:     "A container holds whole pallets: the three counts are one product.",
	Formula: "modules per container = modules per pallet × pallets per container",
	Sources: []Source{{"Arithmetic", "read"}},
	Levels:  []Threshold{{Note, "the modules of a container are no whole number of pallets, and no count of pallets is printed"}, {Warning, "the product is not the printed count"}},
	Needs:   []string{"packing.modules_per_pallet", "packing.modules_per_container"},
	Check: func(p *Pass) {
		k := &p.Sheet.Packing
		pallet, pallets, container := p.value(k.ModulesPerPallet, "packing", "modules_per_pallet", -1, -1), p.value(k.PalletsPerContainer, "packing", "pallets_per_container", -1, -1), p.value(k.ModulesPerContainer, "packing", "modules_per_container", -1, -1)
		switch {
		case !pallet.Printed() || !container.Printed() || pallet.V <= 0:
		case pallets.Printed():
			if product := pallet.V * pallets.V; product != container.V {
				p.Report(Warning, Finding{Message: fmt.Sprintf("%s modules × %s pallets = %s, printed modules per container %s", pallet.text, pallets.text, around(product), container.text), Implied: []string{around(product)}}, &container, &pallet, &pallets)
			}
		case math.Mod(container.V, pallet.V) != 0:
			p.Report(Note, Finding{Message: fmt.Sprintf("%s modules per container are no whole number of pallets of %s", container.text, pallet.text)}, &container, &pallet)
		}
	},
}
