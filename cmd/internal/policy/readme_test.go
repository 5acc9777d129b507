package policy

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// TestReadmePolicy: the policy that the README shows is one that is taken.
func TestReadmePolicy(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	shown := regexp.MustCompile("(?s)```json\n(.*?)```").FindSubmatch(text)
	if shown == nil {
		t.Fatal("the README shows no policy")
	}
	p, err := Parse(shown[1])
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Waivers) == 0 || len(p.Rules) == 0 || len(p.Required) == 0 {
		t.Error("the README's policy shows no rules, required fields or waivers")
	}
}
