package cli

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/schema"
)

// header is the part of a record that tells whose it is.
type header struct {
	Format string `json:"format"`
	Source struct {
		SHA256 string `json:"sha256"`
	} `json:"source"`
}

// decode takes a record apart. In a folder, a JSON that does not claim our format is somebody else's and passed over.
func decode(in input) loaded {
	in.data = bytes.TrimPrefix(in.data, []byte("\xef\xbb\xbf"))
	doc, err := schema.Decode(in.data)
	var wrong []schema.Problem
	if err == nil {
		wrong = doc.Check()
	} else if in.found && !ours(in.data) {
		return loaded{input: in, foreign: true}
	} else if len(in.data) <= maxValidated {
		wrong = schema.Validate(in.data) // says all that Decode, which stops at the first, would have come to
	}
	if err != nil || len(wrong) > 0 {
		return loaded{input: in, unread: &report.Unread{File: in.name, Problem: cmp.Or(list(wrong, in.line > 0), first(err, in.line > 0)),
			Remedy: "mend the record; 'pvtally schema' prints what is allowed"}}
	}
	return loaded{input: in, sheets: []*schema.Sheet{doc.Sheet}, doc: doc}
}

// maxValidated is ten times what a sheet's record with all its evidence has: of what is longer only the first problem is said.
const maxValidated = 1 << 20

// ours reports that a JSON claims to be a record of whatever edition. One that is broken off must not pass for somebody else's.
func ours(data []byte) bool {
	edition, _, _ := strings.Cut(schema.Format, "/")
	var h header
	if json.Unmarshal(data, &h) != nil {
		return bytes.Contains(data, []byte(`"`+edition+`/`))
	}
	return strings.HasPrefix(h.Format, edition+"/")
}

// maxProblems is how many problems of one record are listed: a person mends a few and looks again.
const maxProblems = 5

// list writes problems on one line. A record in a stream is named by its line, which its own lines would only confuse.
func list(problems []schema.Problem, lined bool) string {
	var texts []string
	for i, p := range problems {
		if i == maxProblems {
			texts = append(texts, fmt.Sprintf("and %d more", len(problems)-i))
			break
		}
		if lined {
			p.Line = 0
		}
		texts = append(texts, p.Error())
	}
	return strings.Join(texts, "; ")
}

// first is the one problem at which decoding stopped.
func first(err error, lined bool) string {
	var p schema.Problem
	if errors.As(err, &p) {
		return list([]schema.Problem{p}, lined)
	}
	return fmt.Sprint(err)
}

// sources collects the checksums of the datasheets that the records among the inputs name.
func sources(ctx context.Context, jobs int, list []input) map[string]bool {
	records := func(yield func(input) bool) {
		for _, in := range list {
			if in.kind == record && in.fault == nil && !yield(in) {
				return
			}
		}
	}
	known := map[string]bool{}
	for h := range ordered(ctx, jobs, iter.Seq[input](records), func(_ context.Context, in input) (h header) {
		if in.data == nil {
			in = readFile(in, maxRecord)
		}
		json.Unmarshal(in.data, &h) // what is wrong with it is said when it is loaded
		return h
	}) {
		if h.Format == schema.Format && h.Source.SHA256 != "" {
			known[h.Source.SHA256] = true
		}
	}
	return known
}
