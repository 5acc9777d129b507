package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"pvtally/cmd/internal/policy"
	"pvtally/cmd/internal/report"
	"pvtally/rules"
)

// maxLaw bounds a policy or baseline file: a baseline of a hundred thousand findings has some 15 MB.
const maxLaw = 64 << 20

// law is what holds for one run of check: the rules as the policy sets them, and what policy and baseline accept.
type law struct {
	policyFile, baselineFile string // "" where there is none
	policy                   *policy.Policy
	options                  rules.Options
	checker                  *rules.Checker
	keeper                   *policy.Keeper
}

// newLaw loads the files. Without a named policy it is looked for from the folder that holds all inputs upwards. The baseline may be
// missing when it is about to be written.
func newLaw(policyFile, baselineFile string, writing bool, args []string) (*law, error) {
	l := &law{policyFile: policyFile, baselineFile: baselineFile}
	if l.policyFile == "" {
		l.policyFile = findPolicy(args)
	}
	if l.policyFile != "" {
		data, err := lawText(l.policyFile)
		if err != nil {
			return nil, err
		}
		if l.policy, err = policy.Parse(data); err != nil {
			return nil, fmt.Errorf("policy %q: %w", filepath.ToSlash(l.policyFile), err)
		}
		if l.options, err = l.policy.Options(); err != nil {
			return nil, fmt.Errorf("policy %q: %w", filepath.ToSlash(l.policyFile), err)
		}
	}
	var baseline *policy.Baseline
	if l.baselineFile != "" && !writing {
		data, err := lawText(l.baselineFile)
		if err != nil {
			return nil, fmt.Errorf("%w ('--write-baseline' makes a baseline)", err)
		}
		if baseline, err = policy.ParseBaseline(data); err != nil {
			return nil, fmt.Errorf("baseline %q: %w", filepath.ToSlash(l.baselineFile), err)
		}
	}
	l.keeper = policy.NewKeeper(l.policy, baseline, time.Now().Format(time.DateOnly))
	var err error
	l.checker, err = rules.NewChecker(l.options)
	return l, err
}

func lawText(path string) ([]byte, error) {
	in := readFile(input{name: filepath.ToSlash(path), path: path}, maxLaw)
	if in.fault != nil {
		return nil, fmt.Errorf("could not read %q: %s", in.name, in.fault.Problem)
	}
	return in.data, nil
}

// findPolicy looks for a policy file from the innermost folder that holds all inputs upwards.
func findPolicy(args []string) string {
	for folder := common(args); ; folder = filepath.Dir(folder) {
		file := filepath.Join(folder, policy.FileName)
		if _, err := os.Stat(file); !errors.Is(err, fs.ErrNotExist) {
			return shown(file)
		}
		if folder == filepath.Dir(folder) {
			return ""
		}
	}
}

// common is the innermost folder that holds all inputs; standard input counts as in the working folder.
func common(args []string) string {
	folder := ""
	for _, arg := range args {
		own := "."
		if info, err := os.Stat(arg); arg != "-" && err == nil {
			own = arg
			if !info.IsDir() {
				own = filepath.Dir(arg)
			}
		}
		if abs, err := filepath.Abs(own); err == nil {
			own = abs
		}
		if folder == "" {
			folder = own
		}
		for !inside(own, folder) && folder != filepath.Dir(folder) {
			folder = filepath.Dir(folder)
		}
	}
	return folder
}

func inside(path, folder string) bool {
	rel, err := filepath.Rel(folder, path)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}

// shown is a path relative to the working folder, where that is possible.
func shown(abs string) string {
	if here, err := os.Getwd(); err == nil {
		if rel, err := filepath.Rel(here, abs); err == nil {
			return rel
		}
	}
	return abs
}

// limit is the level from which findings fail the run: the flag's when it was given, else the policy's, else error.
func (l *law) limit(flag string, given bool) (rules.Level, error) {
	if !given && l.policy != nil && l.policy.FailOn != "" {
		flag = l.policy.FailOn
	}
	if flag == "never" {
		return never, nil
	}
	level, err := rules.ParseLevel(flag)
	if err != nil {
		return 0, fmt.Errorf("--fail-on %q: error, warning, note or never", flag)
	}
	return level, nil
}

// keep silences what policy and baseline accept.
func (l *law) keep(in input, s *report.Sheet, d diagnosis) {
	if l.policyFile == "" && l.baselineFile == "" {
		return
	}
	s.Findings = l.keeper.Require(s.Record, s.Findings)
	s.Findings = l.keeper.Keep(recordID(in, s, l.policyFile), recordID(in, s, l.baselineFile), s.Record, s.Findings, d.causes())
}

// recordID is a record's name in a policy or baseline: its path from the file's folder, with the part where a datasheet gives several.
// A record in a stream has no place of its own and is called by maker and series.
func recordID(in input, s *report.Sheet, file string) string {
	name := s.Record.Maker + "/" + s.Record.Series
	if in.path != "" {
		name = relative(filepath.Dir(file), in.path)
	}
	if part := s.Record.Source.Part; part > 1 && in.kind != record {
		name += fmt.Sprintf("#%d", part)
	}
	return name
}

// relative is path as seen from folder, with slashes.
func relative(folder, path string) string {
	from, err1 := filepath.Abs(folder)
	to, err2 := filepath.Abs(path)
	if rel, err := filepath.Rel(from, to); errors.Join(err1, err2, err) == nil {
		path = rel
	}
	return filepath.ToSlash(path)
}

// silenced tells the report what was taken out.
func (l *law) silenced() report.Silenced {
	s := report.Silenced{Policy: filepath.ToSlash(l.policyFile), Baseline: filepath.ToSlash(l.baselineFile), Waived: l.keeper.Waived, Known: l.keeper.Known}
	for _, e := range l.keeper.Stale(exists(l.policyFile), exists(l.baselineFile)) {
		s.Stale = append(s.Stale, report.Stale{State: e.State, Rule: e.Rule, Record: e.Record, Field: e.Field, Printed: e.Printed, Until: e.Until})
	}
	return s
}

// exists tells whether a record that a file names is still there.
func exists(file string) func(string) bool {
	return func(record string) bool {
		path, _, _ := strings.Cut(record, "#")
		_, err := os.Stat(filepath.Join(filepath.Dir(file), filepath.FromSlash(path)))
		return !errors.Is(err, fs.ErrNotExist)
	}
}
