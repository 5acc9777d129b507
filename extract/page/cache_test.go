package page

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"
)

func TestCache(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	want := []Word{{Text: "Voc", Edges: []float64{1, 2, 3, 4}, Baseline: 7, By: ByPicture, Sure: 0.9}}
	key := keyOf([]byte("a sheet"), 300, "eng")
	var got []Word
	if loadKept(key, &got) {
		t.Fatal("an empty cache gives a result")
	}
	saveKept(key, want)
	if !loadKept(key, &got) || !reflect.DeepEqual(got, want) {
		t.Fatalf("kept %+v, want %+v", got, want)
	}
	for _, other := range []string{keyOf([]byte("another sheet"), 300, "eng"), keyOf([]byte("a sheet"), 200, "eng"), keyOf([]byte("a sheet"), 300, "deu")} {
		if loadKept(other, &got) {
			t.Error("another content or setting gives the same result")
		}
	}
	path, _ := keptPath(key)
	if err := os.WriteFile(path, []byte("broken"), 0o600); err != nil {
		t.Fatal(err)
	}
	if loadKept(key, &got) {
		t.Error("a broken entry is used")
	}
	left, err := filepath.Glob(filepath.Join(filepath.Dir(path), "new-*"))
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
	old := time.Now().Add(-2 * keptFor)
	if err := os.Chtimes(path, old, old); err != nil {
		t.Fatal(err)
	}
	forgetOld(filepath.Dir(path)) // has run in this process already: nothing happens
	if _, err := os.Stat(path); err != nil {
		t.Error("what is kept is looked through more than once a run")
	}
}
