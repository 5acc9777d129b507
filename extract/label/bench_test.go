package label

import "testing"

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		parseIndex(indexFile)
	}
}

func BenchmarkFind(b *testing.B) {
	for b.Loop() {
		Find("Maximum Power Current (Imp) at STC")
	}
}
