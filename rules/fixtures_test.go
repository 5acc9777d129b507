package rules

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/schema"
)

var update = flag.Bool("update", false, "write the goldens, examples.json and CATALOGUE.md anew")

const fixtureRoot = "../testdata/rules"

// fixture is one record, or several for a rule over a catalogue.
type fixture struct {
	id, path string
	wrong    bool
	entries  []CatalogueEntry
	many     bool
}

func loadFixtures(t *testing.T) []fixture {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(fixtureRoot, "*", "*", "*.json"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no fixtures in %s: %v", fixtureRoot, err)
	}
	var out []fixture
	for _, path := range paths {
		dir, _ := filepath.Rel(fixtureRoot, filepath.Dir(path))
		name := filepath.Base(path)
		f := fixture{id: filepath.ToSlash(dir), path: path, wrong: strings.HasPrefix(name, "wrong")}
		if !f.wrong && !strings.HasPrefix(name, "right") {
			t.Errorf("%s: a fixture's name begins with wrong or right", path)
		}
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		var several struct {
			Entries []struct {
				Name         string          `json:"name"`
				Sheet        json.RawMessage `json:"sheet"`
				Read         json.RawMessage `json:"read"`
				SourceSHA256 string          `json:"source_sha256"`
			} `json:"entries"`
		}
		if err := json.Unmarshal(data, &several); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		f.many = several.Entries != nil
		for _, e := range several.Entries {
			c := CatalogueEntry{Name: e.Name, Sheet: decode(t, path, e.Sheet), SourceSHA256: e.SourceSHA256}
			if e.Read != nil {
				c.Read = decode(t, path, e.Read)
			}
			f.entries = append(f.entries, c)
		}
		if !f.many {
			f.entries = []CatalogueEntry{{Name: name, Sheet: decode(t, path, data)}}
		}
		out = append(out, f)
	}
	return out
}

func decode(t *testing.T, path string, data []byte) *schema.Sheet {
	t.Helper()
	d, err := schema.Decode(data)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return d.Sheet
}

// findings runs the whole book over a fixture; what is missing is the fixtures' nature, so paper/required speaks only in its own.
func (f *fixture) findings() (out []Finding) {
	off := map[string]bool{}
	if f.id != "paper/required" {
		off["paper/required"] = true
	}
	opt := Options{Off: off}
	if f.many {
		for _, c := range Catalogue(f.entries, opt) {
			out = append(out, c.Finding)
		}
		return out
	}
	return Check(f.entries[0].Sheet, opt)
}

// TestFixtures compares every fixture's findings with its golden.
func TestFixtures(t *testing.T) {
	for _, f := range loadFixtures(t) {
		t.Run(f.id+"/"+filepath.Base(f.path), func(t *testing.T) {
			var b strings.Builder
			for _, x := range f.findings() {
				fmt.Fprintf(&b, "%s %s %s\n  %s\n  %s\n", x.Level, x.Rule, x.Model, x.Message, strings.Join(x.Fields, " "))
			}
			golden(t, strings.TrimSuffix(f.path, ".json")+".out", []byte(b.String()))
		})
	}
}

func golden(t *testing.T, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v (go test ./rules -update writes it)", err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s is stale; go test ./rules -update mends it (-old +new):\n%.2000s", path, diff)
	}
}

// TestGenerated: examples.json and CATALOGUE.md say what the rules and fixtures say today.
func TestGenerated(t *testing.T) {
	made := map[string]Example{}
	fixtures := loadFixtures(t)
	for _, f := range fixtures {
		if filepath.Base(f.path) != "wrong.json" {
			continue
		}
		found := f.findings()
		if len(found) == 0 {
			continue // the contract test reports it
		}
		e := Example{Finding: found[0].Level.String() + ": " + found[0].Message, Wrong: shown(f.entries[len(f.entries)-1].Sheet, found[0].Fields)}
		for _, g := range fixtures {
			if g.id == f.id && filepath.Base(g.path) == "right.json" {
				e.Right = shown(g.entries[len(g.entries)-1].Sheet, found[0].Fields)
			}
		}
		made[f.id] = e
	}
	data, err := json.MarshalIndent(made, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "examples.json", append(data, '\n'))
	var page bytes.Buffer
	if err := writePage(&page, made); err != nil {
		t.Fatal(err)
	}
	golden(t, "CATALOGUE.md", page.Bytes())
}

// shown writes the values at pointers with their symbols.
func shown(s *schema.Sheet, pointers []string) string {
	var parts []string
	for _, at := range pointers {
		if n, ok := s.At(at); ok {
			v := Value{text: n.String(), at: placeOf(at)}
			parts = append(parts, v.Symbol()+" "+v.String())
		}
	}
	return strings.Join(parts, ", ")
}
