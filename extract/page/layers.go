package page

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
)

// layerOff finds, in a document's dictionaries, optional content that is not shown: a list of groups that are off, a base state of
// off, or a usage that hides it from view (ISO 32000-1, 8.11.4). PDFium draws layers rightly but does not tell their state.
var layerOff = regexp.MustCompile(`/OFF\s*\[\s*\d|/BaseState\s*/OFF|/ViewState\s*/OFF`)

var objectStream = []byte("/ObjStm")

// Bounds of the search: the catalogue that lists the layers stands in one of the document's object streams.
const (
	maxObjectStreams     = 2_000
	maxObjectStreamBytes = 8 << 20
	dictionaryReach      = 512 // bytes from the stream's type to its data
)

// hiddenLayers tells whether a document may hold layers that are switched off. It may err on the side of yes: the rendered page
// decides.
func hiddenLayers(data []byte) bool {
	if layerOff.Match(data) {
		return true
	}
	rest := data
	for range maxObjectStreams {
		i := bytes.Index(rest, objectStream)
		if i < 0 {
			return false
		}
		rest = rest[i+len(objectStream):]
		j := bytes.Index(rest[:min(len(rest), dictionaryReach)], []byte("stream"))
		if j < 0 {
			continue
		}
		body := bytes.TrimLeft(rest[j+len("stream"):], "\r\n")
		z, err := zlib.NewReader(bytes.NewReader(body))
		if err != nil {
			continue
		}
		plain, _ := io.ReadAll(io.LimitReader(z, maxObjectStreamBytes)) // what could be read of a damaged one is looked at
		if layerOff.Match(plain) {
			return true
		}
	}
	return false
}
