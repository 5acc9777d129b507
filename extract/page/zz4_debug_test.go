package page

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"testing"
	"time"
)

func TestDebugSecond(t *testing.T) {
	pattern := os.Getenv("DBG_SECOND")
	if pattern == "" {
		t.Skip()
	}
	files, _ := filepath.Glob(pattern)
	all, good := 0, 0
	for _, file := range files {
		data, _ := os.ReadFile(file)
		pages, err := PDF(context.Background(), file, data, Options{})
		if err != nil {
			t.Error(err)
			continue
		}
		if !HasText(pages) {
			continue
		}
		t0 := time.Now()
		s, err := SecondReading(context.Background(), data)
		el := time.Since(t0)
		n, ok := 0, 0
		var bad []string
		for _, p := range pages {
			vis := map[string]int{}
			for _, w := range p.Words {
				for l, k := range Literals(w.Text) {
					if w.Hidden == Visible {
						vis[l] += k
					}
				}
			}
			for l, k := range vis {
				n += k
				if s.Confirms(p, l) {
					ok += k
				} else {
					bad = append(bad, fmt.Sprintf("p%d %s %d of %d/%d", p.Number, l, k, p.Digits[l], s.Count(p.Number, l)))
				}
			}
		}
		sort.Strings(bad)
		if len(bad) > 24 {
			bad = bad[:24]
		}
		all += n
		good += ok
		if len(bad) > 0 {
			fmt.Println(filepath.Base(file), ok, "/", n, el, err, bad)
		}
	}
	fmt.Println(good, all, float64(good)/float64(all))
}
