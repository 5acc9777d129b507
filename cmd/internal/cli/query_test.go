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

// TestQueryCommand: what the command line takes, and what it says where there is nothing to ask or to read.
func TestQueryCommand(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "testdata")
	digit, sound := filepath.Join(folder, "query", "digit.json"), filepath.Join(folder, "sheets", "kr-hc108.expected.json")
	for _, c := range []struct {
		name      string
		args      []string
		code      int
		out, errs string
	}{
		{"a sound sheet", []string{sound}, Done, "", "nothing to ask"},
		{"two letters with a rule between", []string{digit, filepath.Join(folder, "query", "swap.json")}, Done, "\n---\n\n# Questions on the datasheet AB-T54\n", ""},
		{"two in text", []string{"--output", "text", digit, filepath.Join(folder, "query", "swap.json")}, Done, "\n" + strings.Repeat("-", 78) + "\n\nQuestions on", ""},
		{"no such language", []string{"--language", "xx", digit}, Usage, "", `--language "xx": one of en, de, fr, es`},
		{"no such format", []string{"--output", "pdf", digit}, Usage, "", `--output "pdf": markdown or text`},
		{"nothing named", nil, Usage, "", "name at least one file"},
		{"an unreadable input, the others done", []string{"nowhere.json", digit}, Unread, "# Questions on the datasheet KR-HC108-M10", "nowhere.json"},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, errs, code := query(t, c.args...)
			if code != c.code || !strings.Contains(out, c.out) || !strings.Contains(errs, c.errs) || c.out == "" && out != "" {
				t.Errorf("exit code %d, want %d\n%s\n%s", code, c.code, out, errs)
			}
		})
	}
}
