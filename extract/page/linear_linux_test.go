package page

import "testing"

// What one document leaves in memory never comes to another.
func TestLinearIsZeroed(t *testing.T) {
	const most = 1 << 20
	first := newLinear(0, most)
	used := first.Reallocate(70_000)
	for i := range used {
		used[i] = 0xAA
	}
	if grown := first.Reallocate(most); grown[69_999] != 0xAA || grown[70_000] != 0 {
		t.Error("growing does not keep what was written, or gives more than zeros")
	}
	if first.Reallocate(most+1) != nil {
		t.Error("the limit does not hold")
	}
	first.Free()
	if used[0] != 0 || used[69_999] != 0 {
		t.Error("freed memory keeps what was written")
	}
	second := newLinear(0, most)
	if second != first {
		t.Error("a freed place is not used again")
	}
	for i, b := range second.Reallocate(most) {
		if b != 0 {
			t.Fatalf("byte %d is %#x", i, b)
		}
	}
	second.Free()
}
