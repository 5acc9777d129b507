package page

import (
	"bytes"
	"context"
	"encoding/gob"
	"errors"
	"time"

	"pvtally/extract/page/child"
)

// PDFium works in helper processes: see package child, and sandbox.go for the wall within.
const (
	maxMessage   = maxBytes + 64<<20
	helperMemory = sandboxMemory + maxBytes + 512<<20
	helperCPU    = 10 * time.Minute // beyond any deadline; for a helper without a parent
)

const (
	taskRead = iota
	taskRender
	taskInk
	taskCopy
)

// job is a request to a helper; the document follows as it is.
type job struct {
	Task   int
	Name   string
	Opt    Options
	Number int     // of the page to render
	DPI    float64 // to render at; 0 leaves it to the page's size
	Parts  []Box   // of the page to render; none means all of it
	Bare   []Box   // of images that are left out
}

// answer is what a helper gives back.
type answer struct {
	Pages []Page
	Parts []part // of a rendered page
	Raw   []byte // their pixels, or the copy of a document; follows as it is
	Fault *fault
}

// fault is an *Error on its way between processes.
type fault struct {
	File            string
	Page            int
	Problem, Remedy string
	Cause           string
}

var helpers = child.Pool{Kind: "page", MaxAnswer: maxMessage}

// A helper begins and ends here.
func init() {
	child.Serve(child.Work{Kind: helpers.Kind, Do: serve, MaxRequest: maxMessage, MaxMemory: helperMemory, MaxCPU: helperCPU})
}

// ask has a helper do the job, or does it here where none can be started.
func ask(ctx context.Context, j job, data []byte) (answer, error) {
	head, err := encode(j)
	if err != nil {
		return answer{}, err
	}
	reply, err := helpers.Do(ctx, j.Opt.deadline(), child.Message{Head: head, Body: data})
	if errors.Is(err, child.ErrStart) {
		return j.do(ctx, data)
	}
	if err != nil {
		return answer{}, asError(ctx, j.Name, j.Number, j.Opt, err)
	}
	var a answer
	if err := gob.NewDecoder(bytes.NewReader(reply.Head)).Decode(&a); err != nil {
		return answer{}, asError(ctx, j.Name, j.Number, j.Opt, err)
	}
	a.Raw = reply.Body
	if f := a.Fault; f != nil {
		e := &Error{File: f.File, Page: f.Page, Problem: f.Problem, Remedy: f.Remedy}
		if f.Cause != "" {
			e.Cause = errors.New(f.Cause)
		}
		return answer{}, e
	}
	return a, nil
}

// serve is the helper's side of ask.
func serve(request child.Message) child.Message {
	var j job
	var a answer
	err := gob.NewDecoder(bytes.NewReader(request.Head)).Decode(&j)
	if err == nil {
		// The parent keeps the time: code in a helper cannot be stopped otherwise.
		a, err = j.do(context.Background(), request.Body)
	}
	if err != nil {
		a = answer{Fault: newFault(j.Name, err)}
	}
	raw := a.Raw
	a.Raw = nil
	head, err := encode(a)
	if err != nil {
		head, _ = encode(answer{Fault: newFault(j.Name, err)})
	}
	return child.Message{Head: head, Body: raw}
}

func newFault(name string, err error) *fault {
	var e *Error
	if !errors.As(err, &e) {
		return &fault{File: name, Problem: err.Error()}
	}
	f := &fault{File: e.File, Page: e.Page, Problem: e.Problem, Remedy: e.Remedy}
	if e.Cause != nil {
		f.Cause = e.Cause.Error()
	}
	return f
}

// do is the work itself, in whichever process.
func (j job) do(ctx context.Context, data []byte) (answer, error) {
	picture := Sniff(data) == KindPicture
	switch {
	case j.Task == taskCopy:
		return copyPDF(ctx, data)
	case j.Task == taskRead && picture:
		pages, err := readScans(j.Name, data, j.Opt)
		return answer{Pages: pages}, err
	case j.Task == taskRead:
		pages, err := readPDF(ctx, j.Name, data, j.Opt)
		return answer{Pages: pages}, err
	case picture:
		return renderScan(j, data)
	}
	return renderPDF(ctx, j, data)
}

func encode(v any) ([]byte, error) {
	var b bytes.Buffer
	err := gob.NewEncoder(&b).Encode(v)
	return b.Bytes(), err
}
