package page

import (
	"encoding/binary"
	"math"
)

// PDFium's path segment types.
const (
	segLine   = 0
	segBezier = 1
	segMove   = 2
)

// segment is one point of a path in the path's own coordinates.
type segment struct {
	x, y   float64
	kind   int
	closes bool
}

// A path's points lie in a row in the sandbox's memory: two floats, a byte for the type, a byte for "closes the figure", padding.
// Reading them there saves four calls a point; pages with a hundred thousand points are common.
const segmentSize = 12

// layout tells whether segmentSize holds; it is tried on the first path of a document.
type layout int

const (
	layoutUnknown layout = iota
	layoutHolds
	layoutDiffers
)

// segments gives a path's points, or nil where it has curves.
func (g *guest) segments(path uint64, n int) []segment {
	first := g.ptr("FPDFPath_GetPathSegment", path, 0)
	if g.layout == layoutUnknown && n > 1 {
		g.layout = layoutDiffers
		if last := g.ptr("FPDFPath_GetPathSegment", path, uint64(n-1)); last == first+uint64(n-1)*segmentSize && g.sameSegment(first) && g.sameSegment(last) {
			g.layout = layoutHolds
		}
	}
	if g.layout != layoutHolds {
		return g.segmentsByCall(path, n)
	}
	raw, ok := g.mem.Read(uint32(first), uint32(n*segmentSize))
	if !ok {
		return nil
	}
	g.segmentBuffer = g.segmentBuffer[:0]
	for i := range n {
		s := parseSegment(raw[i*segmentSize:])
		if s.kind == segBezier {
			return nil
		}
		g.segmentBuffer = append(g.segmentBuffer, s)
	}
	return g.segmentBuffer
}

func parseSegment(raw []byte) segment {
	return segment{
		x:      float64(math.Float32frombits(binary.LittleEndian.Uint32(raw))),
		y:      float64(math.Float32frombits(binary.LittleEndian.Uint32(raw[4:]))),
		kind:   int(raw[8]),
		closes: raw[9] != 0,
	}
}

// sameSegment tells whether PDFium says of a segment what its memory says.
func (g *guest) sameSegment(at uint64) bool {
	raw, ok := g.mem.Read(uint32(at), segmentSize)
	return ok && parseSegment(raw) == g.segmentByCall(at)
}

func (g *guest) segmentsByCall(path uint64, n int) []segment {
	g.segmentBuffer = g.segmentBuffer[:0]
	for i := range n {
		s := g.segmentByCall(g.ptr("FPDFPath_GetPathSegment", path, uint64(i)))
		if s.kind == segBezier {
			return nil
		}
		g.segmentBuffer = append(g.segmentBuffer, s)
	}
	return g.segmentBuffer
}

func (g *guest) segmentByCall(at uint64) segment {
	s := segment{kind: int(int32(g.call("FPDFPathSegment_GetType", at))), closes: g.ok("FPDFPathSegment_GetClose", at)}
	g.call("FPDFPathSegment_GetPoint", at, g.at(64), g.at(68))
	s.x, s.y = g.readF32(64), g.readF32(68)
	return s
}
