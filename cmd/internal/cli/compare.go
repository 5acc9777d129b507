package cli

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"pvtally/cmd/internal/compare"
	"pvtally/cmd/internal/report"
	"pvtally/rules/site"
)

// comparing is what the compare command was asked for.
type comparing struct {
	work
	output, units      string
	site, target, area string
	prices             string
	classes            []string
	anyway             bool
	form               compare.Form
	law                *law
	place              *compare.Site
	costs              *compare.Prices
}

func (c Command) compareCommand() *cobra.Command {
	var opt comparing
	cmd := &cobra.Command{
		Use:   "compare FILE…",
		Short: "Lay modules side by side on one site: which differences are real, and what they mean",
		Long: `compare reads and checks records or datasheets and lays the modules side by side: what the sheets say, with what rounding and
tolerance leave open; how many are needed and how they lie on the roof; heat, cold, strings, cost. The first sentence is the answer.
Exit code: 0 compared, 1 a sheet to be rejected was left out, 2 the command line or one of its files is wrong, 3 an input could not be read.

Voltages, currents and fuses are arithmetic on printed numbers, not a design: the sheets' own limits, local code and a licensed
professional decide.`,
	}
	opt.flags(cmd)
	cmd.Flags().StringVar(&opt.output, "output", "text", "`format`: "+compare.Names())
	cmd.Flags().StringVar(&opt.units, "units", "si", "`units`: si or us")
	cmd.Flags().StringVar(&opt.site, "site", "", "a `file` that describes the site (format "+compare.SiteFormat+"); without it an invented mild one")
	cmd.Flags().StringVar(&opt.target, "target", "", "the `power` to be installed, such as 5.4kW")
	cmd.Flags().StringVar(&opt.area, "area", "", "the `area` along the eaves by up the slope, such as \"12 m x 4.5 m\"")
	cmd.Flags().StringVar(&opt.prices, "prices", "", "a `file` of prices (format "+compare.PricesFormat+")")
	cmd.Flags().StringArrayVar(&opt.classes, "class", nil, "a power `class` to compare, by name or watts; may be repeated")
	cmd.Flags().BoolVar(&opt.anyway, "anyway", false, "compare sheets to be rejected as well, marked")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := opt.validate(c, args); err != nil {
			return err
		}
		return opt.run(cmd.Context(), &run{Command: c, work: opt.work}, args)
	}
	return cmd
}

func (opt *comparing) validate(c Command, args []string) error {
	var ok bool
	if opt.form, ok = compare.Lookup(opt.output); !ok {
		return fmt.Errorf("--output %q: one of %s", opt.output, compare.Names())
	}
	if opt.form.Binary && opt.out == "" && isTerminal(c.Stdout) {
		return fmt.Errorf("--output %s is not for a terminal: add --out FILE", opt.output)
	}
	if opt.units != "si" && opt.units != "us" {
		return fmt.Errorf("--units %q: si or us", opt.units)
	}
	if err := opt.describe(); err != nil {
		return err
	}
	if slices.Contains(opt.classes, "") {
		return errors.New("--class needs a name or watts")
	}
	var err error
	if opt.law, err = newLaw("", "", false, args); err != nil {
		return err
	}
	return opt.work.validate()
}

// Sizes of the files that describe: a year of weather has some 2 MB.
const (
	maxSiteFile    = 1 << 20
	maxWeatherFile = 32 << 20
)

// describe reads the site and the prices.
func (opt *comparing) describe() error {
	opt.place = compare.DefaultSite()
	if opt.site != "" {
		data, err := small(opt.site, maxSiteFile)
		if err != nil {
			return err
		}
		opt.place, err = compare.ParseSite(data, func(name string) ([]byte, error) {
			if !filepath.IsAbs(name) {
				name = filepath.Join(filepath.Dir(opt.site), name)
			}
			return small(name, maxWeatherFile)
		})
		if err != nil {
			return fmt.Errorf("site %q: %w", filepath.ToSlash(opt.site), err)
		}
	}
	if opt.target != "" {
		if err := opt.place.SetTarget(opt.target); err != nil {
			return fmt.Errorf("--target: %w", err)
		}
	}
	if opt.area != "" {
		if err := opt.place.SetArea(opt.area); err != nil {
			return fmt.Errorf("--area: %w", err)
		}
	}
	if opt.prices != "" {
		data, err := small(opt.prices, maxSiteFile)
		if err != nil {
			return err
		}
		if opt.costs, err = compare.ParsePrices(data); err != nil {
			return fmt.Errorf("prices %q: %w", filepath.ToSlash(opt.prices), err)
		}
	}
	return nil
}

// small reads a file that the command line names.
func small(path string, most int) ([]byte, error) {
	in := readFile(input{name: filepath.ToSlash(path), path: path}, most)
	if in.fault != nil {
		return nil, fmt.Errorf("could not read %q: %s", in.name, in.fault.Problem)
	}
	return in.data, nil
}

func (opt *comparing) run(ctx context.Context, r *run, args []string) error {
	in, rejected, err := opt.collect(ctx, r, args)
	if err != nil {
		return err
	}
	var found error
	if rejected > 0 {
		found = outcome{Found, errSaid}
	}
	if ctx.Err() != nil || len(in.Options) == 0 {
		if found == nil && r.unread == 0 && ctx.Err() == nil {
			return errors.New("no module is left to compare")
		}
		return r.result(ctx, found)
	}
	doc, err := compare.Build(in)
	if err != nil {
		return err
	}
	o, err := r.open(ctx, opt.out)
	if err != nil {
		return unwritten(err)
	}
	if err := o.finish(opt.form.Write(o, doc)); err != nil && ctx.Err() == nil {
		return unwritten(err)
	}
	return r.result(ctx, found)
}

// compared is one record that may stand in the comparison.
type compared struct {
	*report.Sheet
	input   input
	classes []site.Module
}

// collect loads and judges the inputs as check does, and picks the classes.
func (opt *comparing) collect(ctx context.Context, r *run, args []string) (in compare.Input, rejected int, err error) {
	in = compare.Input{Version: version(), US: opt.units == "us", Site: opt.place, Prices: opt.costs}
	judge := func(in loaded) (list []compared) {
		for _, sheet := range in.sheets {
			s := &report.Sheet{File: in.name, Record: sheet, Findings: opt.law.checker.Check(sheet)}
			list = append(list, compared{s, in.input, site.Modules(sheet)})
		}
		return list
	}
	var all []compared
	for l, list := range each(ctx, r, args, judge) {
		if l.unread != nil {
			in.LeftOut = append(in.LeftOut, l.unread)
		}
		for _, s := range list {
			if opt.law.keep(s.input, s.Sheet, opt.law.diagnose(s.Sheet)); s.Verdict() == "reject" && !opt.anyway {
				rejected++
				u := &report.Unread{File: s.File, Problem: "verdict reject: its numbers do not tally", Remedy: "'pvtally check' shows why, --anyway compares it all the same"}
				r.warn("%s", u)
				in.LeftOut = append(in.LeftOut, u)
				continue
			}
			all = append(all, s)
		}
	}
	pick := compare.Picker{Wanted: opt.classes}
	for _, s := range all {
		classes, note, why := pick.Pick(s.classes, len(all) == 1)
		if why != "" {
			u := &report.Unread{File: s.File, Problem: why}
			in.LeftOut = append(in.LeftOut, u)
			if len(s.classes) == 0 {
				r.refuse(u) // there is nothing to compare, whatever is asked for
			} else {
				r.warn("%s", u)
			}
		}
		for i := range classes {
			o := compare.Candidate{Module: &classes[i], File: s.File, Verdict: s.Verdict()}
			if note != "" {
				o.Notes = append(o.Notes, note)
			}
			in.Options = append(in.Options, o)
		}
	}
	if ctx.Err() == nil && len(all) > 0 {
		err = pick.Missed()
	}
	return in, rejected, err
}
