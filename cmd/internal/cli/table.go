package cli

import (
	"context"
	"io"
	"iter"
	"strconv"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// columns are a class table's columns after file and part: fields of the class, else of the sheet. A list stands in one cell. The
// tables of rear gains and ratios are left out: they are tables of their own.
var columns = strings.Fields(`
	maker series revision issued language name aliases
	stc.pmax_w stc.vmp_v stc.imp_a stc.voc_v stc.isc_a stc.efficiency_pct
	nmot.pmax_w nmot.vmp_v nmot.imp_a nmot.voc_v nmot.isc_a nmot.efficiency_pct
	noct.pmax_w noct.vmp_v noct.imp_a noct.voc_v noct.isc_a noct.efficiency_pct
	bnpi.pmax_w bnpi.vmp_v bnpi.imp_a bnpi.voc_v bnpi.isc_a bnpi.efficiency_pct
	ptc_w
	low.irradiance_w_m2 low.pmax_w low.vmp_v low.imp_a low.voc_v low.isc_a low.efficiency_pct
	low_light.irradiance_w_m2 low_light.relative_efficiency_pct
	thermal.nmot_c thermal.nmot_tolerance_c thermal.noct_c thermal.noct_tolerance_c
	thermal.alpha_isc_pct_per_k thermal.alpha_isc_a_per_k thermal.beta_voc_pct_per_k thermal.beta_voc_v_per_k
	thermal.gamma_pmax_pct_per_k thermal.gamma_pmax_w_per_k
	cell.technology cell.count cell.arrangement cell.cut cell.width_mm cell.height_mm cell.busbars
	body.length_mm body.width_mm body.depth_mm body.mass_kg body.front_glass_mm body.rear_glass_mm
	body.cable_mm2 body.cable_length_mm body.bypass_diodes body.junction_box_ip body.connector body.frame
	bifacial.factor_pct bifacial.factor_tolerance_pct
	limits.system_voltage_v limits.series_fuse_a limits.reverse_current_a limits.temperature_min_c limits.temperature_max_c
	limits.front_load_pa limits.rear_load_pa limits.front_design_load_pa limits.rear_design_load_pa
	limits.safety_class limits.fire_class
	tolerance.power_plus_w tolerance.power_minus_w tolerance.power_plus_pct tolerance.power_minus_pct
	tolerance.voc_pct tolerance.isc_pct tolerance.measurement_pct
	warranty.product_years warranty.performance_years warranty.first_year_loss_pct warranty.annual_loss_pct warranty.final_output_pct
	packing.modules_per_pallet packing.pallets_per_container packing.modules_per_container
	certificates`)

// tables are the forms of a class table.
var tables = map[string]func(io.Writer, iter.Seq[[]report.Cell]) error{
	"csv":  report.WriteCSV,
	"xlsx": func(w io.Writer, rows iter.Seq[[]report.Cell]) error { return report.WriteXLSX(w, "classes", rows) },
}

// classes writes one row per power class, for a spreadsheet; a sheet without classes has one row.
func (opt *reading) classes(ctx context.Context, r *run, w io.Writer, args []string) error {
	rows := func(yield func([]report.Cell) bool) {
		head := []report.Cell{{Text: "file"}, {Text: "part"}}
		for _, c := range columns {
			head = append(head, report.Cell{Text: c})
		}
		if !yield(head) {
			return
		}
		for in := range each(ctx, r, args, nothing) {
			for _, sheet := range in.sheets {
				for row := range classRows(in.name, sheet) {
					if !yield(row) {
						return
					}
				}
			}
		}
	}
	return tables[opt.table](w, rows)
}

func classRows(file string, sheet *schema.Sheet) iter.Seq[[]report.Cell] {
	return func(yield func([]report.Cell) bool) {
		cells := cellsOf(sheet)
		for i := range max(1, len(sheet.Models)) {
			row := []report.Cell{{Text: file}, {}}
			if part := sheet.Source.Part; part > 0 {
				row[1] = report.Cell{Text: strconv.Itoa(part), Number: true}
			}
			for _, c := range columns {
				cell, own := cells["models."+strconv.Itoa(i)+"."+c]
				if !own {
					cell = cells[c]
				}
				row = append(row, cell)
			}
			if !yield(row) {
				return
			}
		}
	}
}

// cellsOf gives every printed value by its path; the entries of a list are joined.
func cellsOf(sheet *schema.Sheet) map[string]report.Cell {
	cells := map[string]report.Cell{}
	put := func(pointer string, cell report.Cell) {
		path := strings.ReplaceAll(pointer[1:], "/", ".")
		if i := strings.LastIndexByte(path, '.'); isIndex(path[i+1:]) {
			path = path[:i]
			if first, more := cells[path]; more {
				cell = report.Cell{Text: first.Text + "; " + cell.Text}
			}
		}
		cells[path] = cell
	}
	sheet.Walk(func(pointer string, n schema.Number) { put(pointer, report.Cell{Text: n.String(), Number: true}) })
	sheet.WalkText(func(pointer, text string) { put(pointer, report.Cell{Text: text}) })
	return cells
}

func isIndex(s string) bool {
	_, err := strconv.Atoi(s)
	return err == nil
}
