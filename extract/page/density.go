package page

import (
	"bytes"
	"encoding/binary"
)

// described is what a picture file says of itself beside its pixels.
type described struct {
	dpi         float64 // 0 where it does not say
	orientation int     // of EXIF, 1 to 8; 1 is upright
	progressive bool    // a JPEG of several passes, which takes more memory
}

// describe reads the headers of a PNG, a JPEG or a page of a TIFF.
func describe(data []byte, tiffAt uint32) described {
	switch {
	case bytes.HasPrefix(data, []byte(pngStart)):
		return describePNG(data)
	case bytes.HasPrefix(data, []byte(jpegStart)):
		return describeJPEG(data)
	}
	d := described{orientation: 1}
	if dirs, _, ok := newDirectories(data); ok {
		if dir, _, ok := dirs.read(tiffAt); ok {
			d.take(dir)
		}
	}
	return d
}

func (d *described) take(dir directory) {
	if o := int(dir[tagOrientation]); o >= 1 && o <= 8 {
		d.orientation = o
	}
	if dpi := dir.dpi(); dpi > 0 {
		d.dpi = dpi
	}
}

const (
	pngStart  = "\x89PNG\r\n\x1a\n"
	jpegStart = "\xff\xd8\xff"
	maxChunks = 2_000
	inch      = 0.0254 // m
)

// describePNG looks for the chunk pHYs (PNG, third edition, 11.3.4.3).
func describePNG(data []byte) described {
	d := described{orientation: 1}
	rest := data[len(pngStart):]
	for range maxChunks {
		if len(rest) < 12 {
			break
		}
		size, kind := uint64(binary.BigEndian.Uint32(rest)), string(rest[4:8])
		if kind == "IDAT" || size+12 > uint64(len(rest)) {
			break
		}
		if body := rest[8:]; kind == "pHYs" && size == 9 && body[8] == 1 {
			d.dpi = float64(binary.BigEndian.Uint32(body)) * inch
		}
		rest = rest[12+size:]
	}
	return d
}

// JPEG's markers (ITU-T T.81, table B.1) and its application blocks (JFIF 1.02; EXIF 2.3, 4.5.4).
const (
	markProgressive = 0xC2
	markScan        = 0xDA
	markJFIF        = 0xE0
	markEXIF        = 0xE1
)

func describeJPEG(data []byte) described {
	d := described{orientation: 1}
	rest := data[2:]
	for range maxChunks {
		if len(rest) < 4 || rest[0] != 0xFF || rest[1] == markScan {
			break
		}
		if rest[1] == 0xFF { // a filler
			rest = rest[1:]
			continue
		}
		size := int(binary.BigEndian.Uint16(rest[2:]))
		if size < 2 || size+2 > len(rest) {
			break
		}
		body := rest[4 : 2+size]
		switch rest[1] {
		case markProgressive:
			d.progressive = true
		case markJFIF:
			if bytes.HasPrefix(body, []byte("JFIF\x00")) && len(body) >= 12 {
				n := float64(binary.BigEndian.Uint16(body[8:]))
				switch body[7] {
				case 1:
					d.dpi = n
				case 2:
					d.dpi = n * 2.54
				}
			}
		case markEXIF:
			if block, ok := bytes.CutPrefix(body, []byte("Exif\x00\x00")); ok {
				if dirs, first, ok := newDirectories(block); ok {
					if dir, _, ok := dirs.read(first); ok {
						d.take(dir)
					}
				}
			}
		}
		rest = rest[2+size:]
	}
	return d
}
