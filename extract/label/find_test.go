package label

import "testing"

func TestConcept(t *testing.T) {
	for text, want := range map[string]Concept{
		"Open Circuit Voltage (Voc) [V]": "voc", "Maximum Power (Pmax/W)": "pmax", "Voltage at Maximum Power (Vmp/V)": "vmp",
		"Nominal Power Current - IMPP (A)": "imp", "Temp.coe cient of I sc": "alpha_isc", "Temperature Coefficient of PMPP": "gamma_pmax",
		"V MPP (V)": "vmp", "I sc (A)": "isc", "Maximum System Voltage": "sysvolt", "Weight": "mass", "Panel Efficiency (%)": "eff",
		"Module Eﬃciency(%)": "eff", "Nominal Operating Cell Temperature (NOCT)": "noct", "Watt Class Sorting - (W)": "tol",
		"Front Side Maximum Static Loading": "load_f", "Product code": "model", "Rated Maximum Power at STC, (Watts)": "pmax",
		"Short Circuit Current @ STC/Isc": "isc", "Cable": "cable", "Temperature Coefficient of VOC": "beta_voc",
	} {
		if got := Find(text).Concept(); got != want {
			t.Errorf("%q: got %q, want %q (%+v)", text, got, want, Find(text).Matches)
		}
	}
}
