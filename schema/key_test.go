package schema

import "testing"

func TestKey(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	twice, unnamed := s.Models[0], Model{STC: Electrical{Pmax: MustNumber("415")}}
	s.Models = append(s.Models, twice, unnamed, Model{})
	for pointer, want := range map[string]string{
		"/models/0/stc/imp_a":               "models[KR-HC108-M10-405].stc.imp_a",
		"/models/2/stc/imp_a":               "models[KR-HC108-M10-405#2].stc.imp_a",
		"/models/3/stc/imp_a":               "models[415 W].stc.imp_a",
		"/models/4/name":                    "models[].name",
		"/models/9/name":                    "models[9].name",
		"/models/0/rear_gain/0/pmax_w":      "models[KR-HC108-M10-405].rear_gain[10].pmax_w",
		"/models/0/rear_ratio/0/pmax_w":     "models[KR-HC108-M10-405].rear_ratio[10].pmax_w",
		"/models/0/aliases/0":               "models[KR-HC108-M10-405].aliases[KR-HC108-M10-405-B]",
		"/models":                           "models",
		"/body/length_mm":                   "body.length_mm",
		"/body/cable_length_mm/0":           "body.cable_length_mm[1200]",
		"/body/cable_length_mm/1":           "body.cable_length_mm[1200#2]",
		"/limits/system_voltage_v/1":        "limits.system_voltage_v[1500]",
		"/certificates/0":                   "certificates[IEC 61215]",
		"/also/0/value":                     "also[body.mass_kg].value",
		"/unresolved/0":                     "unresolved[limits.series_fuse_a]",
		"/evidence/~1models~10~1stc~1voc_v": "evidence[models[KR-HC108-M10-405].stc.voc_v]",
		"/also/0/box/2":                     "also[body.mass_kg].box[2]",
		"/nothing/of/ours":                  "nothing.of.ours",
		"":                                  "",
		"words":                             "words",
	} {
		if got := Key(s, pointer); got != want {
			t.Errorf("%s: %s, want %s", pointer, got, want)
		}
	}
	s.Also[0].Field = "/also/0/field" // a pointer that leads in circles
	if got := Key(s, "/also/0/value"); got != "also[/also/0/field].value" {
		t.Error(got)
	}
}

func TestDescribe(t *testing.T) {
	for pointer, want := range map[string]Description{
		"/models/7/stc/voc_v":         {"Voc", "Open-circuit voltage.", "V"},
		"/models/0/rear_gain/2/isc_a": {"Isc", "Short-circuit current.", "A"},
		"/thermal/noct_c":             {"NOCT", "Nominal operating cell temperature (IEC 61215:2005).", "°C"},
		"/limits/system_voltage_v/1":  {"System voltage", "Every printed maximum system voltage, such as 1000 and 1500.", "V"},
		"/certificates":               {"Certificates", "Standards and certificates named on the sheet, as printed.", ""},
	} {
		if got, ok := Describe(pointer); !ok || got != want {
			t.Errorf("%s: %+v, want %+v", pointer, got, want)
		}
	}
	for _, pointer := range []string{"", "/", "/models/x/stc", "/models/0/stc/voc", "/maker/0", "/certificates/0/x", "/limits/system_voltage_v/01"} {
		if got, ok := Describe(pointer); ok {
			t.Errorf("%q is described as %+v", pointer, got)
		}
	}
}
