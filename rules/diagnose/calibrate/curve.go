package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"

	"pvtally/rules/diagnose/yardstick"
)

// block is suspects of neighbouring shares that the curve makes one of.
type block struct{ share, right, n float64 }

// leastBlock is how many suspects one block has at least: a share of right ones to some hundredths.
const leastBlock = 150

// isotonic pools suspects by share until the share of right ones rises from block to block (pool-adjacent-violators algorithm; Ayer et al.,
// Annals of Mathematical Statistics 26 (1955) 641).
func isotonic(named []yardstick.Named) (blocks []block) {
	named = slices.DeleteFunc(slices.Clone(named), func(s yardstick.Named) bool { return s.Share == 0 })
	slices.SortStableFunc(named, func(a, b yardstick.Named) int { return cmp.Compare(a.Share, b.Share) })
	for _, s := range named {
		last := len(blocks) - 1
		if last < 0 || blocks[last].n >= leastBlock {
			blocks = append(blocks, block{})
			last++
		}
		b := &blocks[last]
		b.n++
		b.share += s.Share
		if s.Right {
			b.right++
		}
	}
	for i := 1; i < len(blocks); {
		a, b := blocks[i-1], blocks[i]
		if a.right/a.n < b.right/b.n && b.n >= leastBlock {
			i++
			continue
		}
		blocks[i-1] = block{a.share + b.share, a.right + b.right, a.n + b.n}
		blocks = slices.Delete(blocks, i, i+1)
		i = max(1, i-1)
	}
	return blocks
}

// surest is the greatest confidence: the yardstick's mistakes are simpler than some real ones.
const surest = 0.99

// writeCurve writes how often the judged value of an unexplained finding is wrong, and the blocks' middles with both ends.
func writeCurve(w io.Writer, named []yardstick.Named) {
	fmt.Fprintln(w, "share,right")
	for _, kind := range []struct {
		name    string
		pointed bool
	}{{"pointed", true}, {"other", false}} {
		var n, right float64
		for _, s := range named {
			if s.Share == 0 && s.Pointed == kind.pointed {
				n++
				if s.Right {
					right++
				}
			}
		}
		fmt.Fprintf(w, "%s,%.3f\n", kind.name, right/max(n, 1))
	}
	fmt.Fprintln(w, "0,0")
	blocks := isotonic(named)
	for _, b := range blocks {
		if share := b.share / b.n; share < 0.9995 {
			fmt.Fprintf(w, "%.3f,%.3f\n", share, min(b.right/b.n, surest))
		}
	}
	fmt.Fprintf(w, "1,%.3f\n", surest)
}
