package page

import (
	"bytes"
	"context"
	"encoding/gob"
	"errors"
	"fmt"
	"slices"
	"time"
	"unicode"

	"pvtally/extract/page/child"
)

// Second is what another reader, which shares no code with PDFium, found of the digits in the same text layer. It confirms digits
// and never places them. A nil Second has found nothing.
type Second struct {
	pages []map[string]int // by page: how often each literal stands there
}

// The second reader gets little: on awkward files it loops for ever or takes all memory.
const (
	secondDeadline = 10 * time.Second
	secondMemory   = 512 << 20
	secondAnswer   = 8 << 20
	secondLiterals = 50_000                // of one page
	secondKept     = 50 * time.Millisecond // a reading that takes longer is kept
)

var secondHelpers = child.Pool{Kind: "second", MaxAnswer: secondAnswer}

// A helper for the second reading begins and ends here.
func init() {
	child.Serve(child.Work{Kind: secondHelpers.Kind, Do: serveSecond, MaxRequest: maxMessage, MaxMemory: secondMemory, MaxCPU: 2 * secondDeadline})
}

// SecondReading reads the digits of a PDF's text layer once more, with another reader in a helper process of its own. An error means
// that there is no second reading, for instance since the file is too awkward for that reader; it says nothing against the first.
//
// The second reader knows few kinds of encryption, one of them wrongly, and repairs nothing; where it cannot open a file it gets
// PDFium's clean copy.
func SecondReading(ctx context.Context, data []byte, opt Options) (*Second, error) {
	key := keyOf(data, "second")
	var kept []map[string]int
	if opt.Cache && loadKept(key, &kept) {
		return &Second{pages: kept}, nil
	}
	start := time.Now()
	s, err := readSecond(ctx, data)
	if err == nil && opt.Cache && time.Since(start) > secondKept {
		saveKept(key, s.pages)
	}
	return s, err
}

func readSecond(ctx context.Context, data []byte) (*Second, error) {
	err := fmt.Errorf("no second reading: %w", errSecondOpen)
	if !bytes.Contains(data, []byte("/Encrypt")) {
		var s *Second
		if s, err = secondReading(ctx, data); err == nil || !errors.Is(err, errSecondOpen) {
			return s, err
		}
	}
	a, copyErr := ask(ctx, job{Task: taskCopy}, data)
	if copyErr != nil {
		return nil, err
	}
	return secondReading(ctx, a.Raw)
}

// errSecondOpen says that the second reader could not open a file at all.
var errSecondOpen = errors.New("could not open the file")

func secondReading(ctx context.Context, data []byte) (*Second, error) {
	reply, err := secondHelpers.Do(ctx, secondDeadline, child.Message{Body: data})
	if err != nil {
		return nil, fmt.Errorf("no second reading: %w", err)
	}
	var a secondReply
	if err := gob.NewDecoder(bytes.NewReader(reply.Head)).Decode(&a); err != nil {
		return nil, fmt.Errorf("no second reading: %w", err)
	}
	if a.Unopened {
		return nil, fmt.Errorf("no second reading: %w", errSecondOpen)
	}
	if a.Fault != "" {
		return nil, errors.New("no second reading: " + a.Fault)
	}
	return &Second{pages: a.Pages}, nil
}

// secondReply is the helper's answer.
type secondReply struct {
	Pages    []map[string]int
	Fault    string
	Unopened bool
}

func serveSecond(request child.Message) child.Message {
	var a secondReply
	var err error
	if a.Pages, err = secondLiteralsOf(request.Body); err != nil {
		a = secondReply{Fault: err.Error(), Unopened: errors.Is(err, errSecondOpen)}
	}
	head, err := encode(a)
	if err != nil {
		head, _ = encode(secondReply{Fault: err.Error()})
	}
	return child.Message{Head: head}
}

// Count tells how often a literal ("37.23", "1722") stands on a page, 1 being the first. Signs and units do not belong to a literal.
func (s *Second) Count(page int, literal string) int {
	if s == nil || page < 1 || page > len(s.pages) {
		return 0
	}
	return s.pages[page-1][literal]
}

// Confirms tells whether the second reader found every literal of a printed text as often on the page as the first reader did,
// hidden ones included: it cannot tell those. A text without digits is not confirmed.
func (s *Second) Confirms(p Page, printed string) bool {
	literals := Literals(printed)
	for literal := range literals {
		if n := s.Count(p.Number, literal); n == 0 || n != p.Digits[literal] {
			return false
		}
	}
	return len(literals) > 0
}

// digitsOf counts the literals of characters whether they are visible or not, but what stands there twice only once: PDFium drops
// some repetitions by itself.
func digitsOf(chars []char) map[string]int {
	chars = slices.Clone(chars)
	for i := range chars {
		chars[i].hidden = Visible
	}
	markRepetitions(chars)
	all := map[string]int{}
	for _, w := range joinWords(chars) {
		if w.Hidden != Visible {
			continue
		}
		for literal, n := range Literals(w.Text) {
			all[literal] += n
		}
	}
	return all
}

// Literals counts the numbers of a text as they stand there: runs of digits with single points or commas between digits.
func Literals(text string) map[string]int {
	all := map[string]int{}
	runes := []rune(text)
	for i := 0; i < len(runes); i++ {
		if !unicode.IsDigit(runes[i]) {
			continue
		}
		start := i
		for i+1 < len(runes) && (unicode.IsDigit(runes[i+1]) || i+2 < len(runes) && (runes[i+1] == '.' || runes[i+1] == ',') && unicode.IsDigit(runes[i+2])) {
			i++
		}
		all[string(runes[start:i+1])]++
	}
	return all
}
