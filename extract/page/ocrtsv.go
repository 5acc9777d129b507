package page

import (
	"bytes"
	"fmt"
	"image"
	"strconv"
	"strings"
	"unicode/utf8"
)

// ocrWord is a word as Tesseract gives it.
type ocrWord struct {
	text string
	box  image.Rectangle // pixels of its picture
	line int             // words of one line have the same number
	sure float64         // 0 to 1
}

// The columns of Tesseract's table of words, and the level that is a word (below page, block, paragraph and line).
const (
	tsvLevel, tsvPage, tsvBlock, tsvPar, tsvLine, tsvWord  = 0, 1, 2, 3, 4, 5
	tsvLeft, tsvTop, tsvWidth, tsvHeight, tsvConf, tsvText = 6, 7, 8, 9, 10, 11
	tsvColumns                                             = 12
	tsvWordLevel                                           = "5"
	maxTSVWords                                            = 50_000
	maxTSVText                                             = 200     // bytes of a word
	maxTSVPixel                                            = 100_000 // a coordinate
)

// parseTSV reads the table of words of several pictures into a slot each. What does not have the table's form is an error: the
// program is then not the one that is known here.
func parseTSV(data []byte, pictures int) ([][]ocrWord, error) {
	out := make([][]ocrWord, pictures)
	words, lines := 0, 0
	var last string
	for n, line := range bytes.Split(data, []byte("\n")) {
		f := strings.Split(strings.TrimSuffix(string(line), "\r"), "\t")
		if len(f) < tsvColumns || f[tsvLevel] != tsvWordLevel {
			continue
		}
		at, w, err := tsvRow(f)
		if err != nil || at < 1 || at > pictures {
			return nil, fmt.Errorf("could not read line %d of what %s gave: %q", n+1, ocrProgram, line[:min(len(line), 80)])
		}
		if place := strings.Join(f[tsvPage:tsvWord], " "); place != last {
			last = place
			lines++
		}
		if w.line = lines; strings.TrimSpace(w.text) == "" || w.box.Empty() {
			continue
		}
		if words++; words > maxTSVWords {
			return nil, fmt.Errorf("%s gave more than %d words", ocrProgram, maxTSVWords)
		}
		out[at-1] = append(out[at-1], w)
	}
	return out, nil
}

func tsvRow(f []string) (picture int, w ocrWord, err error) {
	var n [4]int
	for i := range n {
		if n[i], err = strconv.Atoi(f[tsvLeft+i]); err != nil || n[i] < 0 || n[i] > maxTSVPixel {
			return 0, w, strconv.ErrRange
		}
	}
	if picture, err = strconv.Atoi(f[tsvPage]); err != nil {
		return 0, w, err
	}
	conf, err := strconv.ParseFloat(f[tsvConf], 64)
	if err != nil || !(conf >= -1 && conf <= 100.5) {
		return 0, w, strconv.ErrRange
	}
	text := strings.Join(f[tsvText:], " ")
	if len(text) > maxTSVText || !utf8.ValidString(text) {
		return 0, w, strconv.ErrRange
	}
	w.text, w.box, w.sure = text, image.Rect(n[0], n[1], n[0]+n[2], n[1]+n[3]), min(1, max(0, conf/100))
	return picture, w, nil
}
