package diagnose

import (
	"math"
	"os"
	"testing"

	"pvtally/schema"
)

func TestMisfit(t *testing.T) {
	plain := scatter{lo: 0.01, hi: 0.02, wild: 0.02}
	for _, c := range []struct {
		name        string
		k           scatter
		r, rounding float64
		want        float64
	}{
		{"no gap", plain, 0, 0.01, 0},
		{"one deviation above", plain, 0.02, 0, 0.5},
		{"one deviation below", plain, -0.01, 0, 0.5},
		{"rounding widens it", plain, 0.03, math.Sqrt(0.03*0.03 - 0.02*0.02), 0.5},
		{"far off costs what anything costs", plain, 10, 0, math.Log((1/0.02 + 0.02) / 0.02)},
		{"a habit costs less", scatter{lo: 0.001, hi: 0.001, habit: 0.01, wild: 0.02}, 0.01, 0, math.Log((1/0.001 + habitual/0.011 + 0.02) / (habitual*math.Exp(-0.5*100./121)/0.011 + 0.02))},
	} {
		if got := c.k.misfit(c.r, c.rounding); math.Abs(got-c.want) > 0.002 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	// the farther off, the more it costs
	for _, k := range []scatter{plain, productScatter, areaScatter} {
		last := 0.0
		for r := 0.0; r < 3; r += 0.001 {
			got := k.misfit(r, 0.002)
			if got < last-1e-9 || math.IsNaN(got) || math.IsInf(got, 0) {
				t.Fatalf("%+v: %v at %v after %v", k, got, r, last)
			}
			last = got
		}
	}
}

func soundBoard(t testing.TB) *board {
	t.Helper()
	text, err := os.ReadFile("../../testdata/sheets/kr-hc108.expected.json")
	if err != nil {
		t.Fatal(err)
	}
	d, err := schema.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return newBoard(d.Sheet)
}

// TestSoundBoard: on a sheet without a mistake no relation is broken, and every one that tells a cell's value tells the printed one to within a few of
// its last digits, or, where only a range is told, to within the range's own width.
func TestSoundBoard(t *testing.T) {
	b := soundBoard(t)
	for i, r := range b.rels {
		if b.cost[i] > 5 {
			t.Errorf("%q %T costs %.1f", b.says[i], r, b.cost[i])
		}
		for _, c := range r.cells() {
			if c == none {
				continue
			}
			v, ok := r.solve(b, c)
			if !ok {
				continue
			}
			kept := b.now[c]
			if n, ok := rounded(v, b.cells[c].n.Decimals()+3); ok {
				b.put(c, n)
				if cost := r.misfit(b); cost > b.cost[i]+0.3 {
					t.Errorf("%q %T: %s would be %s, and costs %.2f instead of %.2f", b.says[i], r, b.cells[c].at, n, cost, b.cost[i])
				}
			}
			b.put(c, kept)
		}
	}
	if len(b.rels) < 60 {
		t.Errorf("only %d relations", len(b.rels))
	}
}

// TestImplicated: a wrong digit breaks relations of its cell, and leaving the cell out mends them all; what holds exonerates the others.
func TestImplicated(t *testing.T) {
	sheet := soundBoard(t).sheet
	const at = "/models/1/stc/imp_a"
	if err := sheet.Set(at, schema.MustNumber("13.98")); err != nil {
		t.Fatal(err)
	}
	b := newBoard(sheet)
	wrong := b.find(1, "stc", -1, "imp_a")
	if b.cells[wrong].at != at {
		t.Fatalf("found %q", b.cells[wrong].at)
	}
	worth := b.without(wrong, math.Inf(-1))
	if worth < 15 {
		t.Errorf("leaving it out gains %.1f", worth)
	}
	for c := 1; c < len(b.cells); c++ {
		if c != wrong && b.without(c, math.Inf(-1)) > 0.8*worth {
			t.Errorf("%s would explain as much", b.cells[c].at)
		}
	}
	r := b.rank(0)
	if len(r.list) == 0 || r.list[0].edits[0].to.String() != "12.98" || r.list[0].share < 0.9 {
		t.Errorf("%+v", r)
	}
	if b.now[wrong].String() != "13.98" || b.total() != newBoard(sheet).total() {
		t.Error("trying corrections has changed the board")
	}
}

func (b *board) total() (sum float64) {
	for _, r := range b.rels {
		sum += r.misfit(b)
	}
	return sum
}

func TestCellAt(t *testing.T) {
	for at, want := range map[string]cell{
		"/thermal/noct_c":               {group: "thermal", name: "noct_c", model: -1, row: -1},
		"/limits/system_voltage_v/1":    {group: "limits", name: "system_voltage_v", model: -1, row: 1},
		"/conditions/nmot/ambient_c":    {group: "conditions/nmot", name: "ambient_c", model: -1, row: -1},
		"/models/3/stc/imp_a":           {group: "stc", name: "imp_a", model: 3, row: -1},
		"/models/3/ptc_w":               {name: "ptc_w", model: 3, row: -1},
		"/models/12/rear_gain/2/pmax_w": {group: "rear_gain", name: "pmax_w", model: 12, row: 2},
	} {
		got := cellAt(at)
		want.at = at
		if got != want {
			t.Errorf("%s: %+v", at, got)
		}
	}
}

func TestNamedWatts(t *testing.T) {
	sheet := func(pairs ...string) *schema.Sheet {
		s := &schema.Sheet{}
		for i := 0; i < len(pairs); i += 2 {
			s.Models = append(s.Models, schema.Model{Name: pairs[i], STC: schema.Electrical{Pmax: schema.MustNumber(pairs[i+1])}})
		}
		return s
	}
	for _, c := range []struct {
		name  string
		sheet *schema.Sheet
		want  []float64
	}{
		{"one wrong", sheet("KR-108-400", "400", "KR-108-405", "450", "KR-108-410", "410"), []float64{400, 405, 410}},
		{"half a watt left off", sheet("A 252", "252.5", "A 257", "257.5"), []float64{252, 257}},
		{"no watts in the names", sheet("Basic", "400", "Better", "405"), []float64{0, 0}},
		{"one class tells nothing", sheet("KR-400", "400"), []float64{0}},
		{"too few agree", sheet("A1", "400", "A2", "405", "A410", "410"), []float64{0, 0, 0}},
	} {
		got := namedWatts(c.sheet)
		for i := range c.want {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
				break
			}
		}
	}
}

// TestLine: a value off its row's line costs a misprint and no more, wherever it stands, and the line through the others foretells it.
func TestLine(t *testing.T) {
	b := soundBoard(t)
	for class := range 6 {
		c := b.find(class, "stc", -1, "voc_v")
		for _, r := range b.of[c] {
			l, ok := b.rels[r].(*line)
			if !ok {
				continue
			}
			v, ok := l.solve(b, c)
			if !ok || math.Abs(v-b.x[c]) > 0.03 {
				t.Errorf("class %d: the line gives %.3f for %.2f", class, v, b.x[c])
			}
			kept := b.now[c]
			for _, wrong := range []string{"40.00", "97.05", "3.70"} {
				b.put(c, schema.MustNumber(wrong))
				if cost := l.misfit(b); cost < 5 || cost > 15 {
					t.Errorf("class %d: %s costs %.1f", class, wrong, cost)
				}
			}
			b.put(c, kept)
		}
	}
}
