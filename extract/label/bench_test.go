package label

import "testing"

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := load(wordFiles); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFind(b *testing.B) {
	for b.Loop() {
		Find("Maximum Power Current (Imp) at STC")
	}
}
