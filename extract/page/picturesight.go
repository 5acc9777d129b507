package page

import (
	"context"
	"errors"
	"image"
	"slices"
	"sync"
	"unicode"
)

// sight is what was made out on a picture of a page: where lettering stands and how its digits look.
type sight struct {
	lines []lettering
	kin   kin
}

// compact lets go of the page's picture but for the lines' own parts.
func (s *sight) compact() {
	for i := range s.lines {
		s.lines[i].detach()
	}
}

// detach gives the line a canvas of its own.
func (l *lettering) detach() {
	c := l.on
	frame := l.box.Inset(-l.tall).Intersect(image.Rect(0, 0, c.w, c.h))
	own := &canvas{left: c.left + frame.Min.X, top: c.top + frame.Min.Y, w: frame.Dx(), h: frame.Dy(), scale: c.scale}
	own.ink, own.mask = make([]uint8, 0, own.w*own.h), make([]uint8, 0, own.w*own.h)
	for y := frame.Min.Y; y < frame.Max.Y; y++ {
		own.ink = append(own.ink, c.ink[y*c.w+frame.Min.X:y*c.w+frame.Max.X]...)
		own.mask = append(own.mask, c.mask[y*c.w+frame.Min.X:y*c.w+frame.Max.X]...)
	}
	blobs := make([]blob, len(l.blobs))
	for i, b := range l.blobs {
		blobs[i] = b
		blobs[i].box = b.box.Sub(frame.Min)
		blobs[i].runs = make([]run3, len(b.runs))
		for k, r := range b.runs {
			blobs[i].runs[k] = run3{r.y - int32(frame.Min.Y), r.x0 - int32(frame.Min.X), r.x1 - int32(frame.Min.X)}
		}
	}
	l.on, l.blobs, l.box, l.base = own, blobs, l.box.Sub(frame.Min), l.base-frame.Min.Y
}

// A process reads so many lines at least, since starting one costs as much as reading eight to eighty, and so many at most, to be done
// in time.
const (
	leastLines = 60
	mostLines  = 600
)

// processesFor is how many processes share n lines.
func processesFor(n int) int {
	return max((n+mostLines-1)/mostLines, min(cap(ocrSlots), (n+leastLines-1)/leastLines))
}

// look recognises lines; what was read badly is read once more, in smaller pieces.
func (o *ocr) look(ctx context.Context, lines []lettering) (*sight, []laid, error) {
	s := &sight{lines: slices.DeleteFunc(slices.Clone(lines), func(l lettering) bool { return !l.legible() })}
	first, err := o.readAll(ctx, s.lines, cropTall)
	if err != nil {
		return nil, nil, err
	}
	all := make([]laid, len(first))
	var weak []lettering
	pieces := make([][]piece, len(first))
	for i := range s.lines {
		all[i] = s.lines[i].laid(first[i])
		if all[i].weak() {
			pieces[i] = all[i].weakPieces(&s.lines[i])
		}
		for _, p := range pieces[i] {
			weak = append(weak, p.lettering)
		}
	}
	again, err := o.readAll(ctx, weak, retryTall)
	if err != nil {
		return nil, nil, err
	}
	for i := range all {
		parts := make([]laid, len(pieces[i]))
		for n := range parts {
			parts[n] = weak[n].laid(again[n])
		}
		all[i].improve(pieces[i], parts)
		weak, again = weak[len(parts):], again[len(parts):]
	}
	for _, l := range all {
		s.kin.add(l)
	}
	for _, l := range all {
		s.kin.correct(l)
	}
	return s, all, nil
}

// readAll reads lines by as many processes as are worth starting. They take turns at the lines, so that each has long and short ones;
// what is read of a line does not depend on the others.
func (o *ocr) readAll(ctx context.Context, lines []lettering, tall int) ([][]ocrWord, error) {
	read := make([][]ocrWord, len(lines))
	n := processesFor(len(lines))
	var wait sync.WaitGroup
	faults := make([]error, n)
	for first := range n {
		wait.Go(func() {
			var part []lettering
			for i := first; i < len(lines); i += n {
				part = append(part, lines[i])
			}
			found := make([][]ocrWord, len(part))
			faults[first] = o.readLines(ctx, part, tall, ocrSettings{mode: psmLine, dpi: pictureDPI, language: o.language()}, found)
			for k, words := range found {
				read[first+k*n] = words
			}
		})
	}
	wait.Wait()
	return read, errors.Join(faults...)
}

// readLines has one process read lines, shown with capitals so many pixels tall.
func (o *ocr) readLines(ctx context.Context, lines []lettering, tall int, settings ocrSettings, to [][]ocrWord) error {
	pictures := make([]*image.Gray, len(lines))
	for i, l := range lines {
		pictures[i] = l.cut(tall)
	}
	found, err := o.read(ctx, pictures, settings)
	copy(to, found)
	return err
}

// correct takes the side of a digit's kin where the reading was unsure, and else leaves both in doubt.
func (k *kin) correct(line laid) {
	for i := range line.glyphs {
		g := &line.glyphs[i]
		if g.dubious || !unicode.IsDigit(g.r) {
			continue
		}
		if g.r == '1' && k.barsAreLetters() && g.column != nil && g.column.bitmap().isBar() && i > 0 && !g.spaced && unicode.IsLetter(line.glyphs[i-1].r) {
			g.r, g.sure = 'I', min(g.sure, sureMended)
			continue
		}
		l, ok := line.on.likenessOf(*g, line.tall)
		if !ok {
			continue
		}
		switch digit := k.judge(l, true); {
		case digit == 0:
		case digit == g.r:
		case g.sure < sureMended:
			g.r, g.sure = digit, sureMended
		default:
			g.dubious = true
		}
	}
}

// Shapes of what is no lettering, in heights to widths and points.
const (
	strokeSlender = 4.5
	strokeFlat    = 4.0
)

// legible tells whether a line may say something: not the strokes of a grid or of a dashed rule.
func (l *lettering) legible() bool {
	strokes := 0
	for _, b := range l.blobs {
		w, h := float64(b.box.Dx()), float64(b.box.Dy())
		if h > strokeSlender*w || w > strokeFlat*h || max(w, h) < speck*float64(l.tall) {
			strokes++
		}
	}
	return strokes < len(l.blobs)
}
