package page

import (
	"image"
	"image/color"
	"math"
	"slices"

	"golang.org/x/image/draw"
)

// Tesseract reads "Vupp" and "P..3." where an index hangs on a capital: its models know no lettering below the line. So it is shown
// the index as tall as other letters, on the line.

// Shapes of an index, in heights of the capital that it hangs on.
const (
	indexLetters  = 5    // at most: "cells"
	indexTall     = 0.9  // at most
	indexGap      = 0.3  // at most, between the capital and the index and between its letters
	indexDrop     = 0.25 // at least, below the capital's top
	indexDropMost = 0.85
	indexSink     = 0.1 // at least, below the capital's foot
	indexSinkMost = 0.7
	indexCapital  = 0.85 // of the line's letters: what an index may hang on
	indexWide     = 0.8  // at least: a single letter may be the "y" of "by"
	indexCapitals = 0.6  // an index that is taller is in capitals
)

// hang gives lowered letters to the letter they hang on: the index of a symbol, too low and often too tall to be its neighbour.
func (c *canvas) hang(lines []lettering) []lettering {
	slices.SortStableFunc(lines, func(a, b lettering) int { return a.box.Min.X - b.box.Min.X })
	top := newByTop(lines)
	for i := range lines {
		a := &lines[i]
		if a.blobs == nil {
			continue
		}
		k := top.nearest(image.Rect(a.box.Max.X, a.base-a.tall/4, a.box.Max.X+1, a.base), 2*indexGap, func(b *lettering) bool {
			return b != a && b.blobs != nil && c.indexOf(a, b)
		})
		if k >= 0 {
			a.blobs = append(a.blobs, lines[k].blobs...)
			a.box = a.box.Union(lines[k].box)
			lines[k].blobs = nil
		}
	}
	return slices.DeleteFunc(lines, func(l lettering) bool { return len(l.blobs) == 0 })
}

// indexOf tells whether b is the index at the end of a. Of what the page's text explains it has the lines itself.
func (c *canvas) indexOf(a, b *lettering) bool {
	if explained := func(b blob) bool { return b.text }; slices.ContainsFunc(a.blobs, explained) || slices.ContainsFunc(b.blobs, explained) {
		return false
	}
	tall := float64(a.tall)
	gap, drop, sink := float64(b.box.Min.X-a.box.Max.X), float64(b.base-b.tall-(a.base-a.tall)), float64(b.base-a.base)
	return len(b.blobs) <= indexLetters && float64(b.tall) <= indexTall*tall && gap >= -indexGap*tall && gap <= indexGap*tall &&
		drop >= indexDrop*tall && drop <= indexDropMost*tall && sink >= indexSink*tall && sink <= indexSinkMost*tall && !c.ruled(a.box, b.box)
}

// indexes finds the lowered letters behind the capitals that begin words: from..to of the line's blobs, and the capital's foot.
func (l *lettering) indexes() (out []index) {
	for i := 0; i < len(l.blobs); i++ {
		head := l.blobs[i].box
		if i > 0 && !l.apart(i) || float64(head.Dy()) < indexCapital*float64(l.tall) {
			continue
		}
		to := i + 1
		for to < len(l.blobs) && !l.apart(to) && l.hangs(l.blobs[to].box, head) {
			to++
		}
		if to > i+1 && l.blobs[to-1].box.Max.X-l.blobs[i+1].box.Min.X >= int(indexWide*float64(l.tall)) && (to == len(l.blobs) || l.apart(to) || !l.stands(l.blobs[to].box, head)) {
			out = append(out, index{i + 1, to, head.Max.Y})
		}
	}
	return out
}

// index is a run of blobs, last not included, that hang on a capital whose foot is at base.
type index struct{ first, last, base int }

// inIndex tells whether a character stands in one of the line's indexes.
func (l *lettering) inIndex(box image.Rectangle, indexes []index) bool {
	return slices.ContainsFunc(indexes, func(x index) bool {
		return box.Min.X >= l.blobs[x.first].box.Min.X && box.Max.X <= l.blobs[x.last-1].box.Max.X
	})
}

// without gives the blobs that stand in no index; there are always some, the capitals.
func (l *lettering) without(indexes []index) []blob {
	var out []blob
	next := 0
	for _, x := range indexes {
		out = append(out, l.blobs[next:x.first]...)
		next = x.last
	}
	return append(out, l.blobs[next:]...)
}

// apart tells whether a gap stands before a blob.
func (l *lettering) apart(i int) bool {
	return float64(l.blobs[i].box.Min.X-l.blobs[i-1].box.Max.X) > indexGap*float64(l.tall)
}

// hangs tells whether a letter is lowered against a capital.
func (l *lettering) hangs(b, capital image.Rectangle) bool {
	tall := float64(capital.Dy())
	drop, sink := float64(b.Min.Y-capital.Min.Y), float64(b.Max.Y-capital.Max.Y)
	return drop >= indexDrop*tall && sink >= indexSink*tall && sink <= indexSinkMost*tall && float64(b.Dy()) > dotMost*tall
}

// stands tells whether a blob may be a letter beside a capital: what stands right behind an "app" is another.
func (l *lettering) stands(b, capital image.Rectangle) bool {
	tall := float64(capital.Dy())
	foot := float64(b.Max.Y - capital.Max.Y)
	return foot > -indexSink*tall && foot < indexSink*tall && float64(b.Dy()) > dotMost*tall
}

// raise draws the indexes on the line, as tall as other letters; plain shows the rest, frame is its place on the canvas.
func (l *lettering) raise(plain *image.Gray, frame image.Rectangle, indexes []index, gain int) *image.Gray {
	type patch struct {
		picture *image.Gray
		at, to  image.Rectangle
	}
	var patches []patch
	wider := 0
	for _, x := range indexes {
		box, heights := image.Rectangle{}, []int(nil)
		for _, b := range l.blobs[x.first:x.last] {
			box, heights = box.Union(b.box), append(heights, b.box.Dy())
		}
		slices.Sort(heights)
		high := float64(heights[len(heights)/2])
		want := lower * float64(l.tall)
		if high >= indexCapitals*float64(l.tall) {
			want = float64(l.tall)
		}
		at := box.Inset(-1)
		picture := l.on.draw(l.blobs[x.first:x.last], at, gain)
		k := max(1, want/high)
		w, h := int(math.Round(float64(at.Dx())*k)), int(math.Round(float64(at.Dy())*k))
		corner := image.Pt(at.Min.X-frame.Min.X+wider, x.base-frame.Min.Y-h+1)
		patches = append(patches, patch{picture, at.Sub(frame.Min), image.Rectangle{corner, corner.Add(image.Pt(w, h))}})
		wider += w - at.Dx()
	}
	out := white(plain.Rect.Dx()+wider, plain.Rect.Dy())
	from, shift := 0, 0
	for _, p := range patches {
		draw.Draw(out, image.Rect(from+shift, 0, p.at.Max.X+shift, out.Rect.Dy()), plain, image.Pt(from, 0), draw.Src)
		from, shift = p.at.Max.X, p.to.Max.X-p.at.Max.X
	}
	draw.Draw(out, image.Rect(from+shift, 0, out.Rect.Dx(), out.Rect.Dy()), plain, image.Pt(from, 0), draw.Src)
	for _, p := range patches {
		scaled := white(p.to.Dx(), p.to.Dy())
		draw.CatmullRom.Scale(scaled, scaled.Rect, p.picture, p.picture.Rect, draw.Src, nil)
		darken(out, scaled, p.to.Min)
	}
	return out
}

// darken draws a picture over another, the darker pixel of both.
func darken(to, from *image.Gray, at image.Point) {
	r := from.Rect.Add(at).Intersect(to.Rect)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			v := from.GrayAt(x-at.X, y-at.Y).Y
			to.SetGray(x, y, color.Gray{Y: min(v, to.GrayAt(x, y).Y)})
		}
	}
}
