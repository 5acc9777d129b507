package cli

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// output is where results go: standard output, or a file that appears only when it is complete.
type output struct {
	io.Writer
	buffer *bufio.Writer
	file   *os.File
	path   string // of a regular file, which appears when it is whole
	device string // of anything else
}

// create opens the output. An existing file keeps its content until the new one is whole; a device or pipe is written directly.
func (c Command) create(path string) (*output, error) {
	if path == "" {
		return &output{Writer: c.Stdout}, nil
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		f, err := os.OpenFile(path, os.O_WRONLY, 0)
		if err != nil {
			return nil, unwritable(path, err)
		}
		return buffered(&output{file: f, device: path}), nil
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return nil, unwritable(path, err)
	}
	return buffered(&output{file: f, path: path}), nil
}

// unwritable names the path that the user knows, not the temporary file beside it.
func unwritable(path string, err error) error {
	return fmt.Errorf("could not write %q: %s", path, cause(err))
}

func buffered(o *output) *output {
	o.buffer = bufio.NewWriterSize(o.file, 64<<10)
	o.Writer = o.buffer
	return o
}

// finish completes the output, or throws it away when the work failed; it gives the first error of the two.
func (o *output) finish(err error) error {
	if o.file == nil {
		return err
	}
	if flush := o.buffer.Flush(); err == nil {
		err = flush
	}
	if shut := o.file.Close(); err == nil {
		err = shut
	}
	if o.path == "" {
		if err != nil {
			err = unwritable(o.device, err)
		}
		return err
	}
	if err == nil {
		err = os.Chmod(o.file.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(o.file.Name(), o.path)
	}
	if err != nil {
		os.Remove(o.file.Name())
		return unwritable(o.path, err)
	}
	return nil
}

// save writes one small file whole.
func (c Command) save(path string, data []byte) error {
	o, err := c.create(path)
	if err != nil {
		return err
	}
	_, err = o.Write(data)
	return o.finish(err)
}
