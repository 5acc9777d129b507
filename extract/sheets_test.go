package extract

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pvtally/schema"
)

const sheetsFolder = "../testdata/sheets"

var explain = flag.Bool("explain", false, "print what the reader made of a sheet whose record differs")

// inkOnly are the invented sheets whose values only the rendered page tells.
var inkOnly = map[string]bool{"pw-h108": true}

// TestInventedSheets reads every invented sheet and compares each value with the record that the sheet was made from.
func TestInventedSheets(t *testing.T) {
	expected, err := filepath.Glob(filepath.Join(sheetsFolder, "*.expected.json"))
	if err != nil || len(expected) < 20 {
		t.Fatalf("want at least 20 expected records, found %d (%v)", len(expected), err)
	}
	for _, path := range expected {
		name, part := strings.TrimSuffix(filepath.Base(path), ".expected.json"), 1
		if base, ok := strings.CutSuffix(name, ".2"); ok {
			name, part = base, 2
		}
		t.Run(fmt.Sprintf("%s/%d", name, part), func(t *testing.T) {
			if inkOnly[name] {
				need(t, "tesseract")
			}
			want := flatten(t, path)
			file := sourceOf(t, name)
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			sheets, err := Sheets(context.Background(), Source{Name: filepath.Base(file), Data: data}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if len(sheets) < part {
				t.Fatalf("read %d records, want part %d", len(sheets), part)
			}
			got := values(sheets[part-1])
			for at := range asides { // such values stand under "also"
				delete(want, at)
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("record differs from what was printed (-printed +read):\n%s", diff)
				if *explain {
					pages, _ := Words(context.Background(), Source{Name: file, Data: data}, Options{})
					var b bytes.Buffer
					Explain(&b, pages)
					t.Log(b.String())
				}
			}
		})
	}
}

// sourceOf finds a sheet or store page by name.
func sourceOf(t *testing.T, name string) string {
	t.Helper()
	for _, ext := range []string{".pdf", ".html", ".md", ".txt"} {
		if f := filepath.Join(sheetsFolder, name+ext); fileExists(f) {
			return f
		}
	}
	t.Fatalf("no sheet for %s", name)
	return ""
}

func fileExists(f string) bool {
	_, err := os.Stat(f)
	return err == nil
}

// values are a record's numbers as printed, by pointer, with the technology and the models' names.
func values(s *schema.Sheet) map[string]string {
	out := map[string]string{}
	s.Walk(func(pointer string, n schema.Number) {
		if !strings.HasPrefix(pointer, "/conditions/") && !strings.HasPrefix(pointer, "/body/cable_length_mm") {
			out[pointer] = n.String()
		}
	})
	if s.Cell.Technology != "" {
		out["/cell/technology"] = s.Cell.Technology
	}
	for i, m := range s.Models {
		out[fmt.Sprintf("/models/%d/name", i)] = m.Name
	}
	return out
}

// flatten reads an expected record the same way.
func flatten(t *testing.T, path string) map[string]string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := schema.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return values(doc.Sheet)
}

// TestEvidenceIsComplete: every value of a read record is traced to its place, and two readings give the same bytes.
func TestEvidenceIsComplete(t *testing.T) {
	file := filepath.Join(sheetsFolder, "kr-hc108.pdf")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var first []byte
	for range 2 {
		sheets, err := Sheets(context.Background(), Source{Name: "kr-hc108.pdf", Data: data}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		sheets[0].Walk(func(pointer string, n schema.Number) {
			e, ok := sheets[0].Evidence[pointer]
			if !ok || e.Page == 0 || e.Box.IsZero() || e.Printed == "" {
				t.Errorf("%s = %s has no complete evidence: %+v", pointer, n, e)
			}
		})
		out, err := schema.Encode(sheets[0])
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = out
		} else if !bytes.Equal(first, out) {
			t.Error("two readings of one file differ")
		}
		if problems := schema.Validate(out); len(problems) > 0 {
			t.Errorf("the record breaks its schema: %v", problems)
		}
	}
}

// TestRealSheets reads the real sheets beside the repository, where they are: no crash, valid records.
func TestRealSheets(t *testing.T) {
	files, _ := filepath.Glob("../../shared/sheets/*.pdf")
	if len(files) == 0 {
		t.Skip("no ../shared/sheets here")
	}
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) {
			t.Parallel()
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			sheets, err := Sheets(context.Background(), Source{Name: f, Data: data}, Options{})
			if err != nil {
				t.Log(err) // pages without text say so
				return
			}
			for _, s := range sheets {
				out, err := schema.EncodeLine(s)
				if err != nil {
					t.Fatal(err)
				}
				if problems := schema.Validate(out); len(problems) > 0 {
					t.Errorf("the record breaks its schema: %v", problems)
				}
				if !json.Valid(out) {
					t.Error("not JSON")
				}
			}
			if slices.ContainsFunc(sheets, func(s *schema.Sheet) bool { return s == nil }) {
				t.Error("a nil record")
			}
		})
	}
}
