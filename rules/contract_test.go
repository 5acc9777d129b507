package rules

import (
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// TestContract holds every rule to what the house asks of it: a file of its name that the build does not drop, a wrong example that fires
// exactly this rule, a right one that fires nothing, no fixture without a rule, no yield to a rule that is not there.
func TestContract(t *testing.T) {
	fired := map[string]bool{}
	quiet := map[string]bool{}
	for _, f := range loadFixtures(t) {
		if _, ok := Lookup(f.id); !ok {
			t.Errorf("%s: no rule %q", f.path, f.id)
		}
		found := f.findings()
		if !f.wrong {
			quiet[f.id] = true
			for _, x := range found {
				t.Errorf("%s: the right example fires %s: %s", f.path, x.Rule, x.Message)
			}
			continue
		}
		fired[f.id] = true
		if len(found) == 0 {
			t.Errorf("%s: the wrong example fires nothing", f.path)
		}
		for _, x := range found {
			if x.Rule != f.id {
				t.Errorf("%s: the wrong example fires %s too: %s", f.path, x.Rule, x.Message)
			}
			if r, _ := Lookup(f.id); r != nil && x.Level > r.Gravest() {
				t.Errorf("%s: the rule's page knows no %s", f.path, x.Level)
			}
			for _, at := range x.Fields {
				if !strings.HasPrefix(at, "/") {
					t.Errorf("%s: %q is no JSON Pointer", f.path, at)
				}
			}
		}
	}
	_, self, _, _ := runtime.Caller(0)
	for _, r := range All() {
		if !fired[r.ID] || !quiet[r.ID] {
			t.Errorf("%s has no wrong or no right fixture in %s", r.ID, filepath.Join(fixtureRoot, r.ID))
		}
		name := strings.NewReplacer("/", "_", "-", "_").Replace(strings.Replace(r.ID, "noct/", "nmot/", 1)) + ".go"
		if _, err := os.Stat(filepath.Join(filepath.Dir(self), name)); err != nil {
			t.Errorf("%s: no file %s", r.ID, name)
		}
		for _, last := range []string{"_test", "_linux", "_windows", "_arm", "_arm64", "_js", "_386", "_wasm", "_unix"} {
			if strings.HasSuffix(strings.TrimSuffix(name, ".go"), last) {
				t.Errorf("%s: the build drops a file ending in %s", r.ID, last)
			}
		}
		for _, other := range r.Yields {
			if _, ok := Lookup(other); !ok {
				t.Errorf("%s yields to %q, which is no rule", r.ID, other)
			}
			if other == r.ID {
				t.Errorf("%s yields to itself", r.ID)
			}
		}
	}
}

// TestFilesAreRules: every file named like a rule holds one that the registry has.
func TestFilesAreRules(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		family, rest, ok := strings.Cut(strings.TrimSuffix(f, ".go"), "_")
		if !ok || !slices.Contains(families, family) {
			continue
		}
		if _, ok := Lookup(family + "/" + strings.ReplaceAll(rest, "_", "-")); !ok {
			t.Errorf("%s holds no registered rule of that name", f)
		}
	}
}

// TestUndocumentedRule: a rule that lacks its documentation must not start.
func TestUndocumentedRule(t *testing.T) {
	full := *stcVoltageOrder
	for _, c := range []struct {
		name string
		edit func(*Rule)
		want string
	}{
		{"no reason", func(r *Rule) { r.Why = "" }, "reason"},
		{"no formula", func(r *Rule) { r.Formula = "" }, "formula"},
		{"no source", func(r *Rule) { r.Sources = nil }, "source"},
		{"unknown tag", func(r *Rule) { r.Sources = []Source{{"hearsay", "heard"}} }, "tag"},
		{"no level", func(r *Rule) { r.Levels = nil }, "levels"},
		{"bad ID", func(r *Rule) { r.ID = "voltage order" }, "ID"},
		{"no check", func(r *Rule) { r.Check = nil }, "check"},
	} {
		r := full
		c.edit(&r)
		if err := r.validate(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if _, err := index([]*Rule{&full, &full}); err == nil {
		t.Error("two rules with one ID must be refused")
	}
}
