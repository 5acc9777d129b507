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

// TestReadmeGit: what the README says to git is what the session of the changes command says to it.
func TestReadmeGit(t *testing.T) {
	readme, err1 := os.ReadFile(filepath.Join("..", "..", "..", "README.md"))
	session, err2 := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "cli", "changes.txtar"))
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	_, setup, _ := strings.Cut(string(session), "-- git-setup.sh --\n")
	setup, _, _ = strings.Cut(setup, "\n--")
	lines := strings.Split(strings.TrimSpace(setup), "\n")
	if len(lines) < 3 {
		t.Fatalf("the session sets up nothing: %q", setup)
	}
	for _, line := range lines {
		if !strings.Contains(string(readme), "    "+line+"\n") {
			t.Errorf("the README lacks %s", line)
		}
	}
}
