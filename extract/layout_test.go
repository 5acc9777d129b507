package extract

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pvtally/extract/page"
)

// laid is a page put together by hand: what stands where, and how large.
type laid struct{ page.Page }

func newLaid() *laid {
	return &laid{page.Page{Number: 1, Width: 595, Height: 842}}
}

// put sets a text at x on a baseline; every rune is half as wide as tall.
func (l *laid) put(x, base, size float64, text string) *laid {
	for word := range strings.SplitSeq(text, " ") {
		w := page.Word{Text: word, Baseline: base, Size: size, By: page.ByText}
		for i := range utf8.RuneCountInString(word) + 1 {
			w.Edges = append(w.Edges, x+0.5*size*float64(i))
		}
		end := w.Edges[len(w.Edges)-1]
		w.Box = page.Box{X0: x, Y0: base - 0.72*size, X1: end, Y1: base}
		l.Words = append(l.Words, w)
		x = end + 0.28*size
	}
	return l
}

// row puts a label and values in columns.
func (l *laid) row(x, base float64, label string, first, pitch float64, values ...string) *laid {
	l.put(x, base, 7, label)
	for i, v := range values {
		l.put(first+pitch*float64(i), base, 7, v)
	}
	return l
}

// turned puts a word that reads upwards.
func (l *laid) turned(x, bottom, size float64, word string) *laid {
	long := 0.5 * size * float64(utf8.RuneCountInString(word))
	l.Words = append(l.Words, page.Word{Text: word, Size: size, Rotation: 270, By: page.ByText, Box: page.Box{X0: x, Y0: bottom - long, X1: x + size, Y1: bottom}})
	return l
}

// TestLayouts reads pages whose meaning lies in where things stand. The modules are invented.
func TestLayouts(t *testing.T) {
	stc := func(l *laid, x, base, first float64, names, pmax, voc []string) {
		l.row(x, base, "Module Type", first, 60, names...)
		l.row(x, base+13, "Maximum Power (Pmax/W)", first, 60, pmax...)
		l.row(x, base+26, "Maximum Power Voltage (Vmp/V)", first, 60, "30.2", "30.4")
		l.row(x, base+39, "Maximum Power Current (Imp/A)", first, 60, "8.28", "8.39")
		l.row(x, base+52, "Open Circuit Voltage (Voc/V)", first, 60, voc...)
		l.row(x, base+65, "Short Circuit Current (Isc/A)", first, 60, "8.83", "8.89")
	}
	one := func(l *laid) {
		stc(l, 40, 120, 200, []string{"KR-250", "KR-255"}, []string{"250", "255"}, []string{"37.6", "37.8"})
	}
	cases := []struct {
		name string
		lay  func(l *laid)
		want map[string]string // "" where the field must stay empty
	}{
		{"a card's value stands under its label", func(l *laid) {
			one(l)
			l.put(40, 300, 6, "Temp. coefficient of Pmax").put(220, 300, 6, "Temp. coefficient of Voc").put(400, 300, 6, "Temp. coefficient of Isc")
			l.put(40, 308, 7.5, "-0.40 %/°C").put(220, 308, 7.5, "-0.31 %/°C").put(400, 308, 7.5, "0.06 %/°C")
			l.put(40, 330, 6, "Maximum series fuse").put(220, 330, 6, "Weight").put(400, 330, 6, "Modules per pallet")
			l.put(40, 338, 7.5, "20 A").put(220, 338, 7.5, "22.5 kg").put(400, 338, 7.5, "27")
		}, map[string]string{
			"/thermal/gamma_pmax_pct_per_k": "-0.40", "/thermal/beta_voc_pct_per_k": "-0.31", "/thermal/alpha_isc_pct_per_k": "0.06",
			"/limits/series_fuse_a": "20", "/body/mass_kg": "22.5", "/packing/modules_per_pallet": "27",
		}},
		{"a coefficient is told by its unit", func(l *laid) {
			one(l)
			l.row(40, 300, "Coefficient of Pmax", 200, 60, "-0.40 %/°C").row(40, 313, "Coefficient of Voc", 200, 60, "-0.31 %/°C").row(40, 326, "Coefficient of Isc", 200, 60, "0.06 %/°C")
		}, map[string]string{"/thermal/gamma_pmax_pct_per_k": "-0.40", "/thermal/beta_voc_pct_per_k": "-0.31", "/thermal/alpha_isc_pct_per_k": "0.06"}},
		{"a sentence about a coefficient is none", func(l *laid) {
			one(l)
			l.put(40, 300, 7, "In summer the power of our cells falls by no more than -0.26 %/°C where others lose -0.35 %/°C")
		}, map[string]string{"/thermal/gamma_pmax_pct_per_k": ""}},
		{"a turned title names the condition of the rows beside it", func(l *laid) {
			one(l)
			l.turned(20, 190, 7, "STC").turned(20, 290, 7, "NMOT")
			l.row(40, 240, "Maximum Power (Pmax/W)", 200, 60, "186.1", "189.9")
			l.row(40, 253, "Maximum Power Voltage (Vmp/V)", 200, 60, "28.2", "28.4")
			l.row(40, 266, "Maximum Power Current (Imp/A)", 200, 60, "6.60", "6.69")
			l.row(40, 279, "Open Circuit Voltage (Voc/V)", 200, 60, "35.3", "35.5")
			l.row(40, 292, "Short Circuit Current (Isc/A)", 200, 60, "7.12", "7.17")
		}, map[string]string{"/models/0/stc/pmax_w": "250", "/models/0/nmot/pmax_w": "186.1", "/models/1/nmot/voc_v": "35.5"}},
		{"the note under a low-light table tells its irradiance", func(l *laid) {
			l.put(40, 100, 8, "Electrical data at STC")
			one(l)
			l.put(40, 225, 8, "At low irradiance")
			l.row(40, 240, "Maximum Power (Pmax/W)", 200, 60, "48.1", "49.1")
			l.row(40, 253, "Maximum Power Voltage (Vmp/V)", 200, 60, "29.2", "29.4")
			l.row(40, 266, "Maximum Power Current (Imp/A)", 200, 60, "1.65", "1.67")
			l.row(40, 279, "Open Circuit Voltage (Voc/V)", 200, 60, "35.1", "35.3")
			l.put(40, 292, 6, "Low irradiance: air mass 1.5, irradiance 200 W/m², cell temperature 25 °C")
		}, map[string]string{"/models/0/stc/voc_v": "37.6", "/models/0/low/pmax_w": "48.1", "/models/0/low/irradiance_w_m2": "200"}},
		{"of steps the longest is the warranty", func(l *laid) {
			one(l)
			l.put(40, 300, 8, "WARRANTY")
			l.row(40, 313, "Power output", 120, 60, "10 years (90 % of Pmin), 25 years (80 % of Pmin)")
		}, map[string]string{"/warranty/performance_years": "25"}},
		{"a share goes with the years before it", func(l *laid) {
			one(l)
			l.put(40, 300, 7, "Warranty: 10 years on the product, 10 years at 90 % and 25 years at 80 % of the power.")
		}, map[string]string{"/warranty/performance_years": "25", "/warranty/final_output_pct": "80"}},
		{"a share goes with the years behind it", func(l *laid) {
			one(l)
			l.put(40, 300, 7, "Power guarantee 25 years: 90 % after 10 years and 80 % after 25 years.")
		}, map[string]string{"/warranty/performance_years": "25", "/warranty/final_output_pct": "80"}},
		{"an ordinal ends no sentence", func(l *laid) {
			one(l)
			l.put(40, 300, 7, "Leistungsgarantie: Jährliche Degradation vom 2. bis zum 25. Jahr maximal 0,55 %.")
		}, map[string]string{"/warranty/annual_loss_pct": "0.55"}},
		{"others' warranties are others'", func(l *laid) {
			one(l)
			l.put(40, 300, 7, "25 years power warranty: at least 82.6 % after 25 years. Standard step warranty: 80 % after 25 years.")
		}, map[string]string{"/warranty/final_output_pct": "82.6"}},
		{"both sides' loads share the label on their left", func(l *laid) {
			one(l)
			l.put(40, 305, 7, "Max. Load").put(120, 300, 7, "Wind: 3600 Pa back").put(120, 310, 7, "Snow: 6000 Pa front")
			l.put(40, 329, 7, "Design Load").put(120, 324, 7, "Wind: 2400 Pa back").put(120, 334, 7, "Snow: 4000 Pa front")
		}, map[string]string{
			"/limits/rear_load_pa": "3600", "/limits/front_load_pa": "6000", "/limits/rear_design_load_pa": "2400", "/limits/front_design_load_pa": "4000",
		}},
		{"a label in a second script", func(l *laid) {
			one(l)
			l.row(40, 300, "최대 직렬 퓨즈 Max. Series Fuse", 200, 60, "20 A").row(40, 313, "Макс. напряжение Max. System Voltage", 200, 60, "1500 V")
		}, map[string]string{"/limits/series_fuse_a": "20", "/limits/system_voltage_v/0": "1500"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			l := newLaid()
			c.lay(l)
			sheets := read([]page.Page{l.Page}).records()
			if len(sheets) != 1 {
				t.Fatalf("%d records", len(sheets))
			}
			got := values(sheets[0])
			for field, want := range c.want {
				if got[field] != want {
					t.Errorf("%s: read %q, want %q", field, got[field], want)
				}
			}
		})
	}
}

// TestHalves reads one table in two halves, which share the title over the left one: two series.
func TestHalves(t *testing.T) {
	l := newLaid()
	l.put(20, 90, 9, "ELECTRICAL DATA (STC)")
	for _, half := range []struct {
		x          float64
		names, voc []string
		pmax       []string
	}{
		{20, []string{"KR-250P-60", "KR-255P-60"}, []string{"37.6", "37.8"}, []string{"250", "255"}},
		{305, []string{"KR-300P-72", "KR-305P-72"}, []string{"45.1", "45.3"}, []string{"300", "305"}},
	} {
		l.row(half.x, 105, "Module Type", half.x+130, 60, half.names...)
		l.row(half.x, 118, "Max. Power (Pmax/W)", half.x+140, 60, half.pmax...)
		l.row(half.x, 131, "MPP Voltage (Vmp/V)", half.x+140, 60, "30.2", "30.4")
		l.row(half.x, 144, "MPP Current (Imp/A)", half.x+140, 60, "8.28", "8.39")
		l.row(half.x, 157, "Open Circuit Voltage (Voc/V)", half.x+140, 60, half.voc...)
	}
	var names []string
	for _, s := range read([]page.Page{l.Page}).records() {
		for _, m := range s.Models {
			names = append(names, m.Name+" "+m.STC.Voc.String())
		}
	}
	if got, want := strings.Join(names, ", "), "KR-250P-60 37.6, KR-255P-60 37.8, KR-300P-72 45.1, KR-305P-72 45.3"; got != want {
		t.Errorf("read %s, want %s", got, want)
	}
}
