// Command catalogue makes a catalogue of records out of modules.csv beside it: one file a record in FOLDER, or JSON Lines on standard
// output for "-". Beyond the list's length it begins again with other names. Measurements need catalogues larger than a repository
// should hold.
//
//	go run ./testdata/open/catalogue 10000 FOLDER
//	go run ./testdata/open/catalogue 1000000 - > records.jsonl
package main

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 2 {
		return fmt.Errorf("usage: catalogue COUNT FOLDER (or -)")
	}
	count, err := strconv.Atoi(args[0])
	if err != nil || count < 1 {
		return fmt.Errorf("%q is no count of records", args[0])
	}
	list, err := modules()
	if err != nil {
		return err
	}
	if args[1] == "-" {
		return lines(os.Stdout, list, count)
	}
	return files(args[1], list, count)
}

// module is a row of the list by its columns.
type module map[string]string

func modules() ([]module, error) {
	_, self, _, _ := runtime.Caller(0)
	f, err := os.Open(filepath.Join(filepath.Dir(self), "..", "modules.csv"))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, err
	}
	var list []module
	for _, row := range rows[1:] {
		m := module{}
		for i, name := range rows[0] {
			m[name] = row[i]
		}
		list = append(list, m)
	}
	return list, nil
}

func lines(w io.Writer, list []module, count int) error {
	out := bufio.NewWriterSize(w, 1<<20)
	for i := range count {
		_, _, text := record(list, i)
		out.WriteString(text)
		out.WriteByte('\n')
	}
	return out.Flush()
}

// files writes one folder a product line, as a person would keep them.
func files(folder string, list []module, count int) error {
	for i := range count {
		family, name, text := record(list, i)
		at := filepath.Join(folder, family)
		if err := os.MkdirAll(at, 0o755); err != nil {
			return err
		}
		var b bytes.Buffer
		if err := json.Indent(&b, []byte(text), "", "  "); err != nil {
			return err
		}
		b.WriteByte('\n')
		if err := os.WriteFile(filepath.Join(at, name+".json"), b.Bytes(), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// technologies of the list that the record has a word for.
const technologies = " mono multi cdte cigs a-si "

// record is number i of the catalogue: its product line, its name, and its text in one line.
func record(list []module, i int) (family, name, text string) {
	m, round := list[i%len(list)], i/len(list)
	float := func(column string) float64 { v, _ := strconv.ParseFloat(m[column], 64); return v }
	family, name = m["family"], m["id"]
	if round > 0 {
		family, name = fmt.Sprintf("%s-%d", family, round+1), fmt.Sprintf("%s-%d", name, round+1)
	}
	var b strings.Builder
	fmt.Fprintf(&b, `{"format":"pvtally.sheet/1","maker":"Maker of %s","series":"%s","cell":{`, family, family)
	if strings.Contains(technologies, " "+m["technology"]+" ") {
		fmt.Fprintf(&b, `"technology":"%s",`, m["technology"])
	}
	fmt.Fprintf(&b, `"count":%s},`, m["cells_in_series"])
	efficiency := ""
	if m["length_m"] != "" {
		length, width := 1000*float("length_m"), 1000*float("width_m")
		fmt.Fprintf(&b, `"body":{"length_mm":%.0f,"width_mm":%.0f},`, max(length, width), min(length, width))
		efficiency = fmt.Sprintf(`,"efficiency_pct":%.1f`, float("pmax_w")/float("area_m2")/10)
	}
	fmt.Fprintf(&b, `"thermal":{"noct_c":%s,"alpha_isc_a_per_k":%s,"beta_voc_v_per_k":%s,"gamma_pmax_pct_per_k":%s},`,
		m["noct_c"], m["alpha_isc_a_per_k"], m["beta_voc_v_per_k"], m["gamma_pmax_pct_per_k"])
	fmt.Fprintf(&b, `"models":[{"name":"%s","stc":{"pmax_w":%s,"vmp_v":%s,"imp_a":%s,"voc_v":%s,"isc_a":%s%s}}]}`,
		name, m["pmax_w"], m["vmp_v"], m["imp_a"], m["voc_v"], m["isc_a"], efficiency)
	return family, name, b.String()
}
