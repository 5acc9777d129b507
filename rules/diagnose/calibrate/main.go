// Command calibrate holds the diagnosis against the yardstick: it makes the curve that turns the model's probabilities into confidences, and the
// page of what suspects with that confidence come to on sheets of other seeds. After a change of the diagnosis or of the rules:
//
//	go run ./rules/diagnose/calibrate        (the curve)
//	go run ./rules/diagnose/calibrate -page  (the page, with the curve built in)
package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"

	"pvtally/rules"
	"pvtally/rules/diagnose"
	"pvtally/rules/diagnose/yardstick"
)

func main() {
	if err := run(slices.Contains(os.Args[1:], "-page")); err != nil {
		fmt.Fprintln(os.Stderr, "calibrate:", err)
		os.Exit(1)
	}
}

// Seeds: the curve is made on the first, the page on the others.
var (
	curveSeeds = []uint64{1001, 1002, 1003, 1004, 1005, 1006}
	pageSeeds  = []uint64{2001, 2002, 2003}
)

const (
	sheetsASeed = 300
	pairsASeed  = 500
)

func run(page bool) error {
	_, self, _, _ := runtime.Caller(0)
	home := filepath.Dir(filepath.Dir(self))
	f, err := os.Open(filepath.Join(home, "..", "..", "testdata", "open", "modules.csv"))
	if err != nil {
		return err
	}
	defer f.Close()
	modules, err := yardstick.Read(f)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if !page {
		var m yardstick.Measure
		for _, seed := range curveSeeds {
			single(&m, modules, seed)
		}
		writeCurve(&out, m.Named)
		return os.WriteFile(filepath.Join(home, "curve.csv"), out.Bytes(), 0o644)
	}
	var m, two yardstick.Measure
	for _, seed := range pageSeeds {
		single(&m, modules, seed)
		double(&two, modules, seed)
	}
	writePage(&out, &m, &two)
	return os.WriteFile(filepath.Join(home, "CALIBRATION.md"), out.Bytes(), 0o644)
}

// single measures sheets with one mistake.
func single(m *yardstick.Measure, modules []yardstick.Module, seed uint64) {
	rng := rand.New(rand.NewPCG(seed, 1))
	order := rng.Perm(len(modules))
	for i := range sheetsASeed {
		honest := yardstick.Honest(modules[order[i%len(order)]], rng)
		clean := rules.Check(honest, rules.Options{})
		for _, f := range yardstick.Faults(honest, rng) {
			found := rules.Check(f.Sheet, rules.Options{})
			m.Add(clean, found, diagnose.Suspects(f.Sheet, found, rules.Options{}), f)
		}
	}
}

// double measures sheets with two.
func double(m *yardstick.Measure, modules []yardstick.Module, seed uint64) {
	rng := rand.New(rand.NewPCG(seed, 2))
	for i := 0; m.Sheets < pairsASeed*(slices.Index(pageSeeds, seed)+1); i++ {
		honest := yardstick.Honest(modules[rng.IntN(len(modules))], rng)
		clean := rules.Check(honest, rules.Options{})
		for _, p := range yardstick.Pairs(honest, rng, 1) {
			found := rules.Check(p[0].Sheet, rules.Options{})
			m.Add(clean, found, diagnose.Suspects(p[0].Sheet, found, rules.Options{}), p[0], p[1])
		}
	}
}
