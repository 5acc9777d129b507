package cli

import (
	"context"
	"fmt"

	"pvtally/cmd/internal/policy"
	"pvtally/cmd/internal/report"
)

// newBaseline writes the findings of the run to the baseline. A run that could not look everywhere must not: what it did not see
// would count as new afterwards.
func (opt *checking) newBaseline(ctx context.Context, r *run, args []string) error {
	opt.format.Stream = false
	b := &policy.Baseline{}
	for j := range opt.law.across(opt.judged(ctx, r, args)) {
		if j.Sheet == nil {
			continue
		}
		opt.law.keep(j.input, j.Sheet, j.diagnosis)
		for _, f := range j.Sheet.Findings {
			b.Findings = append(b.Findings, policy.Name(recordID(j.input, j.Sheet, opt.baseline), j.Sheet.Record, f))
		}
	}
	if err := r.result(ctx, nil); err != nil {
		r.warn("the baseline %q was not written", opt.baseline)
		return err
	}
	text, err := b.Encode()
	if err == nil {
		err = r.save(opt.baseline, text)
	}
	if err != nil {
		return unwritten(err)
	}
	_, err = fmt.Fprintf(r.Stdout, "%d known findings written to %s\n", len(b.Findings), report.Plain(opt.baseline))
	return unwritten(err)
}
