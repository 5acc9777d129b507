package cli

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pvtally/cmd/internal/report"
)

// TestReadme: the README names every command and every form of report.
func TestReadme(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	commands := 0
	for _, cmd := range (Command{}).root().Commands() {
		if cmd.Hidden || cmd.Name() == "help" || cmd.Name() == "completion" {
			continue
		}
		if commands++; !strings.Contains(text, "\n    pvtally "+cmd.Name()+" ") {
			t.Errorf("the README shows no use of %q", cmd.Name())
		}
	}
	if commands < 5 {
		t.Errorf("%d commands found", commands)
	}
	for _, form := range strings.Split(report.Names(), ", ") {
		if !strings.Contains(text, "`"+form+"`") {
			t.Errorf("the README does not name the form %q", form)
		}
	}
}
