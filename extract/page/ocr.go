package page

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Pictures are read by Tesseract, a program of its own: it is named here, found on the search path and may be missing.
const (
	ocrProgram = "tesseract"
	ocrInstall = "install the text recognition: apt install tesseract-ocr (on Debian or Ubuntu), or see tesseract-ocr.github.io"
)

// Limits of one run of Tesseract.
const (
	ocrDeadline = 2 * time.Minute
	ocrAnswer   = 16 << 20 // bytes of words; a dense page gives 50 kB
	ocrFault    = 2 << 10  // bytes kept of what it complains about
)

// errNoOCR says that Tesseract is not installed.
var errNoOCR = errors.New("the program " + ocrProgram + " is not installed")

// ocr is Tesseract as it is installed here.
type ocr struct {
	path      string
	version   string
	languages []string // installed models, sorted
}

// findOCR looks for Tesseract once in a process.
var findOCR = sync.OnceValues(func() (*ocr, error) {
	path, err := exec.LookPath(ocrProgram)
	if err != nil {
		return nil, errNoOCR
	}
	version, err := exec.Command(path, "--version").CombinedOutput()
	if err != nil {
		return nil, fmt.Errorf("could not ask %s for its version: %w", ocrProgram, err)
	}
	list, err := exec.Command(path, "--list-langs").Output()
	if err != nil {
		return nil, fmt.Errorf("could not ask %s for its languages: %w", ocrProgram, err)
	}
	first, _, _ := strings.Cut(string(version), "\n")
	o := &ocr{path: path, version: strings.TrimSpace(first)}
	lines := bufio.NewScanner(bytes.NewReader(list))
	for lines.Scan() {
		if model.MatchString(lines.Text()) && lines.Text() != "osd" {
			o.languages = append(o.languages, lines.Text())
		}
	}
	if len(o.languages) == 0 {
		return nil, fmt.Errorf("%s has no language model: apt install tesseract-ocr-eng", ocrProgram)
	}
	slices.Sort(o.languages)
	return o, nil
})

// model is how Tesseract names a language's model; the list's headline is none.
var model = regexp.MustCompile(`^[A-Za-z_/]+$`)

// identity names what a result depends on besides the picture; a missing Tesseract has one, too.
func (o *ocr) identity() string {
	if o == nil {
		return ""
	}
	return o.version + " " + strings.Join(o.languages, " ")
}

// language is the model for a first reading: English, whose letters and digits most sheets are made of, else the first there is.
func (o *ocr) language() string {
	if slices.Contains(o.languages, "eng") {
		return "eng"
	}
	return o.languages[0]
}

// Tesseract's page segmentation modes.
const (
	psmLine   = 7  // one line of text
	psmSparse = 11 // as much text as there is, in no order
)

// ocrSettings of one run.
type ocrSettings struct {
	mode      int
	dpi       int // what the pictures' scale is; 0 lets Tesseract guess
	language  string
	whitelist string // the only characters there may be; empty for all
}

// ocrSlots bounds the processes that run at the same time, over all documents.
var ocrSlots = make(chan struct{}, max(1, runtime.GOMAXPROCS(0)))

// read has one process read all pictures. The words of picture i are in slot i.
func (o *ocr) read(ctx context.Context, pictures []*image.Gray, s ocrSettings) ([][]ocrWord, error) {
	if len(pictures) == 0 {
		return nil, nil
	}
	select {
	case ocrSlots <- struct{}{}:
		defer func() { <-ocrSlots }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	folder, err := os.MkdirTemp("", "pvtally-")
	if err != nil {
		return nil, fmt.Errorf("could not make a folder for pictures: %w", err)
	}
	defer os.RemoveAll(folder)
	list, err := writePictures(folder, pictures)
	if err != nil {
		return nil, err
	}
	out, err := o.run(ctx, list, s)
	if err != nil {
		return nil, err
	}
	return parseTSV(out, len(pictures))
}

// writePictures writes each picture and the list of their names.
func writePictures(folder string, pictures []*image.Gray) (list string, err error) {
	var names strings.Builder
	for i, p := range pictures {
		name := filepath.Join(folder, strconv.Itoa(i)+".pgm")
		if err := os.WriteFile(name, pgm(p), 0o600); err != nil {
			return "", fmt.Errorf("could not write a picture for %s: %w", ocrProgram, err)
		}
		names.WriteString(name + "\n")
	}
	list = filepath.Join(folder, "list.txt")
	if err := os.WriteFile(list, []byte(names.String()), 0o600); err != nil {
		return "", fmt.Errorf("could not write a list for %s: %w", ocrProgram, err)
	}
	return list, nil
}

// pgm is the plainest form of a grey picture: nothing to compress, nothing to go wrong.
func pgm(p *image.Gray) []byte {
	w, h := p.Rect.Dx(), p.Rect.Dy()
	out := append(make([]byte, 0, 32+w*h), fmt.Sprintf("P5\n%d %d\n255\n", w, h)...)
	for y := range h {
		out = append(out, p.Pix[y*p.Stride:y*p.Stride+w]...)
	}
	return out
}

// run starts the process: one thread each, since its own threads cost six times the time; pages run side by side instead.
func (o *ocr) run(ctx context.Context, list string, s ocrSettings) ([]byte, error) {
	limited, cancel := context.WithTimeout(ctx, ocrDeadline)
	defer cancel()
	args := []string{list, "stdout", "--psm", strconv.Itoa(s.mode), "-l", s.language}
	if s.dpi > 0 {
		args = append(args, "--dpi", strconv.Itoa(s.dpi))
	}
	if s.whitelist != "" {
		args = append(args, "-c", "tessedit_char_whitelist="+s.whitelist)
	}
	cmd := exec.CommandContext(limited, o.path, append(args, "-c", "tessedit_do_invert=0", "tsv")...)
	cmd.Env = append(os.Environ(), "OMP_THREAD_LIMIT=1")
	cmd.WaitDelay = time.Second
	out, fault := &capped{limit: ocrAnswer}, &capped{limit: ocrFault}
	cmd.Stdout, cmd.Stderr = out, fault
	err := cmd.Run()
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case limited.Err() != nil:
		return nil, fmt.Errorf("%s was not done within %s", ocrProgram, ocrDeadline)
	case err != nil:
		first, _, _ := bytes.Cut(bytes.TrimSpace(fault.Bytes()), []byte("\n"))
		return nil, fmt.Errorf("%s broke off: %w: %s", ocrProgram, err, first)
	case out.over:
		return nil, fmt.Errorf("%s gave more than %d MB", ocrProgram, ocrAnswer>>20)
	}
	return out.Bytes(), nil
}

// capped keeps the first bytes of what is written to it.
type capped struct {
	bytes.Buffer
	limit int
	over  bool
}

func (c *capped) Write(b []byte) (int, error) {
	if room := c.limit - c.Len(); room < len(b) {
		c.over = true
		c.Buffer.Write(b[:max(0, room)])
		return len(b), nil
	}
	return c.Buffer.Write(b)
}
