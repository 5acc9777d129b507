package page

import (
	"bytes"
	"context"
	"regexp"
)

// Kind is what a file holds, told by its content and never by its name.
type Kind string

const (
	KindPDF     Kind = "pdf"
	KindPicture Kind = "picture"
	KindHTML    Kind = "html"
	KindText    Kind = "text"
	KindUnknown Kind = ""
)

// Open reads a document of any kind. Errors are of type *Error, but for a context that the caller ended.
func Open(ctx context.Context, name string, data []byte, opt Options) ([]Page, error) {
	if len(data) == 0 {
		return nil, emptyFile(name)
	}
	switch Sniff(data) {
	case KindPDF, KindPicture:
		return openPages(ctx, name, data, opt)
	case KindHTML:
		return HTML(name, data)
	case KindText:
		return Text(name, data)
	}
	return nil, &Error{File: name, Problem: "this is no datasheet of a kind that is known here", Remedy: "give a PDF, a picture (PNG, JPEG, TIFF), an HTML page or plain text"}
}

func emptyFile(name string) error {
	return &Error{File: name, Problem: "the file is empty", Remedy: "fetch the file again"}
}

// sniffBytes is how much of a file is looked at to tell text from other data.
const sniffBytes = 64 << 10

// htmlStart is how a web page or a piece of one begins.
var htmlStart = regexp.MustCompile(`(?is)^(\x{FEFF}|\s|<!--.*?-->|<\?xml.*?\?>)*<(!doctype\s+html|html|head|body|table|div|section|article|main|h[1-6]|p|dl|ul|meta|title)\b`)

var pictureStarts = []string{pngStart, jpegStart, "II*\x00", "MM\x00*", "GIF8", "BM"}

// Sniff tells what a file holds.
func Sniff(data []byte) Kind {
	head := data[:min(len(data), sniffBytes)]
	for _, start := range pictureStarts {
		if bytes.HasPrefix(head, []byte(start)) && !(start == "BM" && isText(head)) {
			return KindPicture
		}
	}
	if bytes.HasPrefix(head, []byte("RIFF")) && len(head) > 12 && string(head[8:12]) == "WEBP" {
		return KindPicture
	}
	switch {
	case isPDF(data):
		return KindPDF
	case bytes.HasPrefix(head, []byte{0xFE, 0xFF}), bytes.HasPrefix(head, []byte{0xFF, 0xFE}):
		return textOrHTML(decodeText(head[:len(head)&^1]))
	case isText(head):
		return textOrHTML(string(head))
	}
	return KindUnknown
}

func textOrHTML(text string) Kind {
	if htmlStart.MatchString(text) {
		return KindHTML
	}
	return KindText
}

// isText tells whether data is text, in UTF-8 or a code page: it has no control characters but the usual ones.
func isText(data []byte) bool {
	for _, b := range data {
		if b < 0x20 && b != '\t' && b != '\n' && b != '\r' && b != '\f' {
			return false
		}
	}
	return len(data) > 0
}
