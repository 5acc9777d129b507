package cli

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"iter"
	"os"

	"pvtally/cmd/internal/report"
)

// Limits of what is held in memory at once. A sheet's record with all its evidence has some 100 kB, a datasheet with photographs
// some 10 MB.
const (
	maxRecord    = 16 << 20
	maxDatasheet = 256 << 20
)

var errTooLong = errors.New("too long")

// spread hands the inputs out one by one and takes streams apart into their records, as they are asked for.
func (c Command) spread(list []input) iter.Seq[input] {
	return func(yield func(input) bool) {
		for _, in := range list {
			if in.kind != stream || in.fault != nil {
				if !yield(in) {
					return
				}
				continue
			}
			for part := range c.stream(in) {
				if !yield(part) {
					return
				}
			}
		}
	}
}

// stream reads standard input or a file of JSON Lines. Content that does not begin like JSON is one datasheet.
func (c Command) stream(in input) iter.Seq[input] {
	return func(yield func(input) bool) {
		from := c.Stdin
		if in.path != "" {
			f, err := os.Open(in.path)
			if err != nil {
				yield(unopened(in.path, err))
				return
			}
			defer f.Close()
			from = f
		}
		r := bufio.NewReaderSize(from, 64<<10)
		line, blank, err := firstLine(r)
		switch {
		case err != nil && err != io.EOF && err != errTooLong:
			yield(faulty(in.name, cause(err), "check where the data come from"))
		case err == errTooLong && !bytes.HasPrefix(line, []byte("{")): // the rest of the line is skipped, and was no record's
			yield(faulty(in.name, fmt.Sprintf("its first line is longer than %d MiB and begins no record", maxRecord>>20), "give a datasheet, a record or JSON Lines of records"))
		case len(line) == 0:
			yield(faulty(in.name, "it is empty", "give a datasheet, a record or JSON Lines of records"))
		case line[0] != '{':
			yield(rest(in.name, datasheet, line, r, maxDatasheet))
		case err != errTooLong && !bytes.HasSuffix(bytes.TrimSpace(line), []byte("}")):
			yield(rest(in.name, record, append(bytes.Repeat([]byte("\n"), blank), line...), r, maxRecord))
		default:
			lines(in.name, blank+1, line, err, r, yield)
		}
	}
}

// firstLine skips blank lines and a byte order mark. A datasheet's bytes before its first line break are a line, too.
func firstLine(r *bufio.Reader) (line []byte, blank int, err error) {
	if mark, _ := r.Peek(3); string(mark) == "\xef\xbb\xbf" {
		r.Discard(3)
	}
	for ; ; blank++ {
		line, err = readLine(r, maxRecord)
		if err != nil || len(bytes.TrimSpace(line)) > 0 {
			return bytes.TrimLeft(line, " \t\r"), blank, err
		}
	}
}

// lines hands out JSON Lines, one record a line, named by the line's number.
func lines(name string, number int, line []byte, err error, r *bufio.Reader, yield func(input) bool) {
	for ; ; number++ {
		at := fmt.Sprintf("%s:%d", name, number)
		switch {
		case err == errTooLong:
			if !yield(faulty(at, fmt.Sprintf("the line is longer than %d MiB", maxRecord>>20), "give one record a line")) {
				return
			}
		case err != nil && err != io.EOF:
			yield(faulty(at, cause(err), "check where the data come from"))
			return
		case len(bytes.TrimSpace(line)) > 0:
			if !yield(input{name: at, kind: record, data: line, line: number}) {
				return
			}
		}
		if err == io.EOF {
			return
		}
		line, err = readLine(r, maxRecord)
	}
}

// readLine gives the next line with its line break. Of a line above the limit it gives the beginning and errTooLong, and skips the rest.
func readLine(r *bufio.Reader, limit int) ([]byte, error) {
	var line []byte
	long := false
	for {
		piece, err := r.ReadSlice('\n')
		if long = long || len(line)+len(piece) > limit; !long {
			line = append(line, piece...)
		}
		switch {
		case err == bufio.ErrBufferFull:
			continue
		case long && (err == nil || err == io.EOF):
			return line, errTooLong
		default:
			return line, err
		}
	}
}

// rest is one document that began with head.
func rest(name string, k kind, head []byte, r io.Reader, limit int) input {
	data, err := io.ReadAll(io.LimitReader(r, int64(limit-len(head)+1)))
	switch data = append(head, data...); {
	case err != nil:
		return faulty(name, cause(err), "check where the data come from")
	case len(data) > limit:
		return tooLarge(name, limit)
	}
	return input{name: name, kind: k, data: data}
}

// readFile is the whole of a file, however it came to be one (a pipe, a device), up to a limit.
func readFile(in input, limit int) input {
	f, err := os.Open(in.path)
	if err != nil {
		return unopened(in.path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return unopened(in.path, err)
	}
	if info.Size() > int64(limit) {
		return tooLarge(in.name, limit)
	}
	var buf bytes.Buffer
	buf.Grow(int(info.Size()) + bytes.MinRead)
	n, err := buf.ReadFrom(io.LimitReader(f, int64(limit)+1))
	switch {
	case err != nil:
		return unopened(in.path, err)
	case n > int64(limit):
		return tooLarge(in.name, limit)
	}
	in.data = buf.Bytes()
	return in
}

func faulty(name, problem, remedy string) input {
	return input{name: name, fault: &report.Unread{File: name, Problem: problem, Remedy: remedy}}
}

func tooLarge(name string, limit int) input {
	return faulty(name, fmt.Sprintf("it is larger than %d MiB", limit>>20), "give one datasheet or record a file")
}
