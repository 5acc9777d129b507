package cli

import (
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/schema"
)

// TestColumnsAreTheRecord: a field added to the record is a column, or is said here not to be one.
func TestColumnsAreTheRecord(t *testing.T) {
	var full schema.Sheet
	fill(reflect.ValueOf(&full).Elem())
	elsewhere := regexp.MustCompile(`^(conditions|rear_gain|rear_ratio)\b`)
	var want []string
	for path := range cellsOf(&full) {
		path = strings.TrimPrefix(path, "models.0.")
		if !elsewhere.MatchString(path) && !slices.Contains(want, path) {
			want = append(want, path)
		}
	}
	slices.Sort(want)
	if diff := cmp.Diff(want, slices.Sorted(slices.Values(columns))); diff != "" {
		t.Errorf("columns: -record +table\n%s", diff)
	}
}

// fill sets every field of a record to something.
func fill(v reflect.Value) {
	switch v.Interface().(type) {
	case schema.Number:
		v.Set(reflect.ValueOf(schema.MustNumber("1.50")))
		return
	case schema.Notes, schema.Box, map[string]schema.Evidence:
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString("x")
	case reflect.Int:
		v.SetInt(1)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		fill(v.Index(0))
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i))
		}
	}
}

func TestClassRows(t *testing.T) {
	n := schema.MustNumber
	sheet := &schema.Sheet{
		Series:  "KR-HC108",
		Source:  schema.Source{Part: 2},
		Thermal: schema.Thermal{BetaVoc: n("-0.275"), GammaPmax: n("-0.350")},
		Limits:  schema.Limits{SystemVoltage: []schema.Number{n("1000"), n("1500")}},
		Models: []schema.Model{
			{Name: "KR-HC108-400", STC: schema.Electrical{Pmax: n("400"), Vmp: n("31.0")}},
			{Name: "KR-HC108-405", STC: schema.Electrical{Pmax: n("405")}, Thermal: schema.Thermal{BetaVoc: n("-0.280")}},
		},
	}
	want := []map[string]string{
		{"file": "kr.json", "part": "2", "series": "KR-HC108", "name": "KR-HC108-400", "stc.pmax_w": "400", "stc.vmp_v": "31.0",
			"thermal.beta_voc_pct_per_k": "-0.275", "thermal.gamma_pmax_pct_per_k": "-0.350", "limits.system_voltage_v": "1000; 1500"},
		{"file": "kr.json", "part": "2", "series": "KR-HC108", "name": "KR-HC108-405", "stc.pmax_w": "405",
			"thermal.beta_voc_pct_per_k": "-0.280", "thermal.gamma_pmax_pct_per_k": "-0.350", "limits.system_voltage_v": "1000; 1500"},
	}
	var got []map[string]string
	for row := range classRows("kr.json", sheet) {
		cells := map[string]string{}
		for i, cell := range row {
			if cell.Text != "" {
				cells[append([]string{"file", "part"}, columns...)[i]] = cell.Text
			}
		}
		got = append(got, cells)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}
