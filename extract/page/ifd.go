package page

import (
	"encoding/binary"
	"io"
)

// directories are a chain of image file directories: what a TIFF is made of, and the EXIF block of a JPEG too (TIFF 6.0, section 2).
type directories struct {
	data  []byte
	order binary.ByteOrder
}

// Tags (TIFF 6.0, sections 8 and 12; EXIF 2.3, 4.6.4).
const (
	tagSubfile     = 254
	tagOrientation = 274
	tagXResolution = 282
	tagUnit        = 296
)

const (
	ifdHeader  = 8
	ifdEntry   = 12
	ifdShort   = 3
	ifdLong    = 4
	ifdRatio   = 5
	maxEntries = 4096
)

// directory gives the numbers of a directory by their tag, as far as they are single ones.
type directory map[uint16]float64

func newDirectories(data []byte) (d directories, first uint32, ok bool) {
	if len(data) < ifdHeader {
		return d, 0, false
	}
	switch string(data[:4]) {
	case "II*\x00":
		d.order = binary.LittleEndian
	case "MM\x00*":
		d.order = binary.BigEndian
	default:
		return d, 0, false
	}
	d.data = data
	return d, d.order.Uint32(data[4:]), true
}

// read gives the directory at a place and the place of the next; 0 for none.
func (d directories) read(at uint32) (dir directory, next uint32, ok bool) {
	n := uint64(at)
	if n < ifdHeader || n+2 > uint64(len(d.data)) {
		return nil, 0, false
	}
	count := uint64(d.order.Uint16(d.data[n:]))
	n += 2
	if count > maxEntries || n+count*ifdEntry+4 > uint64(len(d.data)) {
		return nil, 0, false
	}
	dir = directory{}
	for range count {
		entry := d.data[n : n+ifdEntry]
		n += ifdEntry
		if d.order.Uint32(entry[4:]) != 1 {
			continue
		}
		tag, value := d.order.Uint16(entry), entry[8:]
		switch d.order.Uint16(entry[2:]) {
		case ifdShort:
			dir[tag] = float64(d.order.Uint16(value))
		case ifdLong:
			dir[tag] = float64(d.order.Uint32(value))
		case ifdRatio:
			if at := uint64(d.order.Uint32(value)); at+8 <= uint64(len(d.data)) {
				if below := d.order.Uint32(d.data[at+4:]); below != 0 {
					dir[tag] = float64(d.order.Uint32(d.data[at:])) / float64(below)
				}
			}
		}
	}
	return dir, d.order.Uint32(d.data[n:]), true
}

// dpi is the resolution that a directory names; 0 for none.
func (dir directory) dpi() float64 {
	const centimetres = 3
	switch unit, named := dir[tagUnit]; {
	case named && unit == centimetres:
		return dir[tagXResolution] * 2.54
	case named && unit != 2:
		return 0
	}
	return dir[tagXResolution]
}

// tiffPages gives the places of a TIFF's pages, at most one more than limit; previews are none.
func tiffPages(data []byte, limit int) []uint32 {
	d, at, ok := newDirectories(data)
	var pages []uint32
	seen := map[uint32]bool{}
	for ok && at != 0 && !seen[at] && len(pages) <= limit {
		seen[at] = true
		var dir directory
		here := at
		if dir, at, ok = d.read(at); ok && int(dir[tagSubfile])&1 == 0 {
			pages = append(pages, here)
		}
	}
	return pages
}

// tiffPage is a TIFF that begins with another of its pages: the decoder reads the first one only.
type tiffPage struct {
	data  []byte
	start [ifdHeader]byte
	at    int64
}

func newTIFFPage(data []byte, page uint32) *tiffPage {
	t := &tiffPage{data: data}
	d, _, ok := newDirectories(data)
	if copy(t.start[:], data); ok {
		d.order.PutUint32(t.start[4:], page)
	}
	return t
}

// ReadAt implements io.ReaderAt.
func (t *tiffPage) ReadAt(p []byte, at int64) (int, error) {
	if at < 0 || at >= int64(len(t.data)) {
		return 0, io.EOF
	}
	n := copy(p, t.data[at:])
	if at < ifdHeader {
		copy(p[:n], t.start[at:])
	}
	if n < len(p) {
		return n, io.EOF
	}
	return n, nil
}

// Read implements io.Reader.
func (t *tiffPage) Read(p []byte) (int, error) {
	n, err := t.ReadAt(p, t.at)
	t.at += int64(n)
	return n, err
}
