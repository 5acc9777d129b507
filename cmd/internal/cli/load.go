package cli

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"strings"

	"pvtally/cmd/internal/report"
	"pvtally/extract"
	"pvtally/extract/page"
	"pvtally/schema"
)

// loader turns inputs into records: datasheets by reading them, JSON by decoding it.
type loader struct {
	cache    bool
	words    bool            // give a datasheet's words, not its records
	known    map[string]bool // checksums of datasheets that records of this run name: these are not read again
	progress *progress
}

// loaded is what became of one input.
type loaded struct {
	input
	sheets  []*schema.Sheet
	doc     *schema.Document // of a record
	pages   []page.Page      // with the loader's words
	unread  *report.Unread
	foreign bool // a JSON in a folder that is no record of ours
	again   bool // a datasheet whose record is in this run
}

// load reads one input. A panic in a reader must not take the other inputs with it.
func (l loader) load(ctx context.Context, in input) (out loaded) {
	defer func() {
		if p := recover(); p != nil {
			out = loaded{input: in, unread: &report.Unread{File: in.name, Problem: fmt.Sprintf("the reader failed: %v", p),
				Remedy: "this is a mistake in pvtally: please report it with the file"}}
		}
	}()
	pages, end := l.progress.share(in)
	defer end()
	if in.fault == nil && in.data == nil && in.kind != folderEnd {
		in = readFile(in, map[kind]int{record: maxRecord, datasheet: maxDatasheet}[in.kind])
	}
	switch {
	case in.fault != nil:
		return loaded{input: in, unread: in.fault}
	case in.kind == record && l.words:
		return loaded{input: in, foreign: in.found, unread: noWords(in)}
	case in.kind == record:
		return decode(in)
	case in.kind == datasheet:
		return l.read(ctx, in, pages)
	}
	return loaded{input: in}
}

func (l loader) read(ctx context.Context, in input, pages func(done, total int)) loaded {
	sum := sha256.Sum256(in.data)
	if l.known[hex.EncodeToString(sum[:])] {
		return loaded{input: in, again: true}
	}
	src, opt := extract.Source{Name: in.name, Data: in.data}, extract.Options{Cache: l.cache, Progress: pages}
	in.data = nil
	out, err := loaded{input: in}, error(nil)
	if l.words {
		out.pages, err = extract.Words(ctx, src, opt)
	} else {
		out.sheets, err = extract.Sheets(ctx, src, opt)
	}
	if err != nil {
		out.unread = unread(in, err)
	}
	return out
}

// unread says why a datasheet could not be read.
func unread(in input, err error) *report.Unread {
	u := &report.Unread{File: in.name, Problem: err.Error(), Remedy: "check that the file is a module's datasheet"}
	var at *page.Error
	if errors.As(err, &at) {
		u.Page, u.Problem, u.Remedy = at.Page, at.Problem, at.Remedy
		if at.Cause != nil {
			u.Problem += ": " + at.Cause.Error()
		}
	}
	return u
}

// noWords is for a record that was named where words are wanted; in a folder it is passed over.
func noWords(in input) *report.Unread {
	if in.found {
		return nil
	}
	return &report.Unread{File: in.name, Problem: "a record has no words", Remedy: "name the datasheet it was read from"}
}

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
	} else {
		wrong = schema.Validate(in.data) // says all that Decode, which stops at the first, would have come to
	}
	if err != nil || len(wrong) > 0 {
		return loaded{input: in, unread: &report.Unread{File: in.name, Problem: cmp.Or(list(wrong, in.line > 0), fmt.Sprint(err)),
			Remedy: "mend the record; 'pvtally schema' prints what is allowed"}}
	}
	return loaded{input: in, sheets: []*schema.Sheet{doc.Sheet}, doc: doc}
}

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
