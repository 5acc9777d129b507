package cli

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the letters in testdata/query")

func query(t *testing.T, args ...string) (out, errs string, code int) {
	t.Helper()
	var o, e bytes.Buffer
	code = Command{Stdin: strings.NewReader(""), Stdout: &o, Stderr: &e}.Main(append([]string{"query", "--no-cache"}, args...))
	return o.String(), e.String(), code
}

// TestLetters: the ten invented cases and their letters, in four languages as Markdown and in English as plain text.
func TestLetters(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "testdata", "query")
	records, err := filepath.Glob(filepath.Join(folder, "*.json"))
	if err != nil || len(records) != 10 {
		t.Fatalf("%d cases, want 10 (%v)", len(records), err)
	}
	for _, record := range records {
		name := strings.TrimSuffix(filepath.Base(record), ".json")
		for ending, args := range map[string][]string{
			".en.md": nil, ".de.md": {"--language", "de"}, ".fr.md": {"--language", "fr"}, ".es.md": {"--language", "es"}, ".en.txt": {"--output", "text"},
		} {
			t.Run(name+ending, func(t *testing.T) {
				out, errs, code := query(t, append(args, record)...)
				if code != Done || errs != "" {
					t.Fatalf("exit code %d, %s", code, errs)
				}
				golden := filepath.Join(folder, name+ending)
				if *update {
					if err := os.WriteFile(golden, []byte(out), 0o644); err != nil {
						t.Fatal(err)
					}
				}
				want, err := os.ReadFile(golden)
				if err != nil {
					t.Fatal(err)
				}
				if diff := cmp.Diff(string(want), out); diff != "" {
					t.Errorf("-want +got (go test ./cmd/internal/cli -run Letters -update)\n%s", diff)
				}
			})
		}
	}
}
