package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
)

// The rooms of the house and what each may import of the project: cmd → {extract, rules} → schema. Within extract, the steps do not
// know each other; only extract itself knows them all.
var arrows = []struct {
	room string // the longest that fits counts
	may  []string
}{
	{"pvtally/schema", []string{"pvtally/schema"}},
	{"pvtally/schema/relate", []string{"pvtally/schema"}},
	{"pvtally/extract", []string{"pvtally/extract", "pvtally/schema"}},
	{"pvtally/extract/page", []string{"pvtally/extract/page"}},
	{"pvtally/extract/table", []string{"pvtally/extract/table", "pvtally/extract/page"}},
	{"pvtally/extract/label", []string{"pvtally/extract/label"}},
	{"pvtally/extract/quantity", []string{"pvtally/extract/quantity"}},
	{"pvtally/rules", []string{"pvtally/rules", "pvtally/schema"}},
	{"pvtally/rules/physics", []string{"pvtally/rules/physics"}},
	{"pvtally/rules/envelope", []string{"pvtally/rules/envelope", "pvtally/schema"}},
	{"pvtally/rules/envelope/generate", []string{"pvtally/rules"}}, // a program run by hand
	{"pvtally/cmd", []string{"pvtally"}},
	{"pvtally/cmd/internal/report", []string{"pvtally/cmd/internal/report", "pvtally/cmd/internal/draw", "pvtally/rules", "pvtally/schema"}},
	{"pvtally/cmd/internal/changes", []string{"pvtally/cmd/internal/report", "pvtally/rules", "pvtally/schema"}},
	{"pvtally/cmd/internal/draw", nil},
	{"pvtally/cmd/internal/jsonfile", []string{"pvtally/schema"}},
	{"pvtally/cmd/internal/browser", nil},
	{"pvtally/testdata", nil},
}

// outside are standard packages that a room must not import, tests apart: data are data, without files and without a network.
var outside = map[string][]string{
	"pvtally/schema": {"os", "net", "net/http", "os/exec", "log"},
	"pvtally/rules":  {"os", "net", "net/http", "os/exec", "log"},
}

func TestArrows(t *testing.T) {
	root := filepath.Join("..", "..")
	files := 0
	err := filepath.WalkDir(root, func(file string, entry fs.DirEntry, err error) error {
		if err == nil && file == filepath.Join(root, "out") { // scratch, ignored by git
			return fs.SkipDir
		}
		if err != nil || entry.IsDir() || filepath.Ext(file) != ".go" {
			return err
		}
		rel, err := filepath.Rel(root, file)
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		files++
		program := parsed.Name.Name == "main" && !strings.HasPrefix(rel, "cmd") // a generator, run by hand
		pkg := path.Join("pvtally", filepath.ToSlash(filepath.Dir(rel)))
		room, may := roomOf(pkg)
		if room == "" {
			t.Errorf("%s: package %s stands in no room of the house", rel, pkg)
		}
		for _, spec := range parsed.Imports {
			imported := strings.Trim(spec.Path.Value, `"`)
			switch {
			case within(imported, "pvtally") && !anyWithin(imported, may):
				t.Errorf("%s: %s must not import %s; it may import %s", rel, room, imported, strings.Join(may, ", "))
			case !program && !strings.HasSuffix(file, "_test.go") && forbidden(pkg, imported):
				t.Errorf("%s: %s must not import %s", rel, pkg, imported)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files == 0 {
		t.Fatal("no Go file found: the test looks in the wrong place")
	}
}

// TestMainIsSmall keeps the program's entry to streams in, exit code out.
func TestMainIsSmall(t *testing.T) {
	text, err := os.ReadFile("main.go")
	if err != nil {
		t.Fatal(err)
	}
	if lines := strings.Count(string(text), "\n"); lines > 20 {
		t.Errorf("main.go has %d lines, at most 20 are meant", lines)
	}
}

func roomOf(pkg string) (room string, may []string) {
	for _, a := range arrows {
		if within(pkg, a.room) && len(a.room) > len(room) {
			room, may = a.room, a.may
		}
	}
	return room, may
}

func forbidden(pkg, imported string) bool {
	for room, list := range outside {
		for _, p := range list {
			if within(pkg, room) && p == imported {
				return true
			}
		}
	}
	return false
}

func within(pkg, room string) bool { return pkg == room || strings.HasPrefix(pkg, room+"/") }

func anyWithin(pkg string, rooms []string) bool {
	for _, r := range rooms {
		if within(pkg, r) {
			return true
		}
	}
	return false
}
