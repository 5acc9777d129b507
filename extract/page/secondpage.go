package page

import (
	"bytes"
	"fmt"

	"github.com/ledongthuc/pdf"
)

// secondLiteralsOf reads a document with the second reader's parser and font decoding. It runs in a helper: the library may loop,
// eat memory or panic.
func secondLiteralsOf(data []byte) (pages []map[string]int, err error) {
	defer func() {
		if cause := recover(); cause != nil {
			err = fmt.Errorf("%w: %v", errSecondOpen, cause)
		}
	}()
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("%w: %w", errSecondOpen, err)
	}
	n := r.NumPage()
	if n > DefaultMaxPages {
		return nil, fmt.Errorf("%d pages are more than the limit of %d", n, DefaultMaxPages)
	}
	for number := 1; number <= n; number++ {
		pages = append(pages, secondPage(r.Page(number)))
	}
	return pages, nil
}

// secondPage gives one page's literals; a page that breaks the library has those found so far.
func secondPage(p pdf.Page) (literals map[string]int) {
	s := &shower{}
	defer func() {
		_ = recover()
		literals = digitsOf(s.chars)
		if len(literals) > secondLiterals {
			literals = nil
		}
	}()
	s.now = showState{ctm: identity, th: 1}
	s.run(p.V.Key("Contents"), newScope(p.Resources()), 0)
	return nil
}
