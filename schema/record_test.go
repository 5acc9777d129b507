package schema

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the generated files anew: go test ./schema -update")

// golden compares with a generated file, or writes it.
func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s is not what the code makes (go test ./schema -update writes it anew) (-file +code):\n%s", file, diff)
	}
}

// kestrel is the example record of the format: every kind of field, as a person could write it.
var kestrel = func() []byte {
	data, err := os.ReadFile("testdata/kestrel.json")
	if err != nil {
		panic(err)
	}
	return data
}()

// small is a record of one class, as a catalogue made from a list holds it.
var small = []byte(`{"format":"pvtally.sheet/1","maker":"Kestrel Ridge Solar","series":"KR-60-M2","language":"en","cell":{"technology":"mono","count":60},` +
	`"body":{"length_mm":1640,"width_mm":992},"thermal":{"noct_c":45,"alpha_isc_pct_per_k":0.05,"beta_voc_pct_per_k":-0.31,"gamma_pmax_pct_per_k":-0.40},` +
	`"models":[{"name":"KR-60-M2-270","stc":{"pmax_w":270,"vmp_v":31.0,"imp_a":8.71,"voc_v":38.3,"isc_a":9.24,"efficiency_pct":16.6}}]}`)

func mustDecode(t testing.TB, data []byte) *Document {
	t.Helper()
	doc, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestEncodeIsCanonical(t *testing.T) {
	doc := mustDecode(t, kestrel)
	got, err := Encode(doc.Sheet)
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "testdata/kestrel.json", got) // the example is in canonical form and must come back as it is
}

// roundTrip checks that Decode undoes both forms of Encode, and that both are the same bytes each time.
func roundTrip(t *testing.T, s *Sheet) {
	t.Helper()
	for _, encode := range []func(*Sheet) ([]byte, error){Encode, EncodeLine} {
		first, err := encode(s)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := Decode(first)
		if err != nil {
			t.Fatalf("%v in\n%s", err, first)
		}
		if diff := cmp.Diff(s, doc.Sheet); diff != "" {
			t.Fatalf("Decode does not give back what Encode wrote (-want +got):\n%s\n%s", diff, first)
		}
		second, err := encode(doc.Sheet)
		if err != nil || !bytes.Equal(first, second) {
			t.Fatalf("two runs, two forms (%v):\n%s\n%s", err, first, second)
		}
	}
}

func TestRoundTrip(t *testing.T) {
	for name, data := range map[string][]byte{"kestrel": kestrel, "small": small} {
		t.Run(name, func(t *testing.T) { roundTrip(t, mustDecode(t, data).Sheet) })
	}
}

// TestInsideOtherJSON: a record keeps its notes where encoding/json meets it.
func TestInsideOtherJSON(t *testing.T) {
	s := mustDecode(t, kestrel).Sheet
	text, err := json.Marshal([]*Sheet{s})
	if err != nil {
		t.Fatal(err)
	}
	var back []*Sheet
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]*Sheet{s}, back); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

func TestEncodeRefuses(t *testing.T) {
	for name, s := range map[string]*Sheet{
		"text that is not UTF-8":   {Maker: "\xff"},
		"a note that is not JSON":  {Notes: Notes{"_n": []byte("{")}},
		"a note without its mark":  {Notes: Notes{"n": []byte("1")}},
		"a note too deep":          {Notes: Notes{"_n": []byte(strings.Repeat("[", 33) + strings.Repeat("]", 33))}},
		"evidence for no pointer":  {Evidence: map[string]Evidence{"maker": {}}},
		"a box without end":        {Also: []Also{{Box: Box{0, 0, math.Inf(1), 1}}}},
		"a box of no number":       {Also: []Also{{Box: Box{0, 0, math.NaN(), 1}}}},
		"an absent number in list": {Limits: Limits{SystemVoltage: []Number{{}}}},
	} {
		for _, encode := range []func(*Sheet) ([]byte, error){Encode, EncodeLine} {
			if text, err := encode(s); err == nil {
				t.Errorf("%s: %s", name, text)
			}
		}
	}
}

func TestBoxHasOneDecimal(t *testing.T) {
	text, err := Box{-0.04, 0.05, 99.96, 1000}.MarshalJSON()
	if want := "[0.0,0.1,100.0,1000.0]"; err != nil || string(text) != want {
		t.Errorf("%s, want %s (%v)", text, want, err)
	}
}

// TestTruthRecords reads the hand-made records of real sheets, where they are at hand.
func TestTruthRecords(t *testing.T) {
	files, _ := filepath.Glob("../../shared/sheets/truth/*.json")
	if len(files) == 0 {
		t.Skip("no real sheets here")
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		roundTrip(t, mustDecode(t, data).Sheet)
	}
}

func BenchmarkDecode(b *testing.B) {
	for _, bench := range []struct {
		name string
		data []byte
	}{{"small", small}, {"kestrel", kestrel}} {
		b.Run(bench.name, func(b *testing.B) {
			b.SetBytes(int64(len(bench.data)))
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Decode(bench.data); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
