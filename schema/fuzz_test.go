package schema

import "testing"

// FuzzDecode: whatever the text, Decode and Validate agree, nothing breaks, and what is accepted survives both forms of Encode.
func FuzzDecode(f *testing.F) {
	f.Add(kestrel)
	f.Add(small)
	for _, tt := range hostile {
		if len(tt.text) < 1<<12 {
			f.Add([]byte(tt.text))
		}
	}
	f.Add([]byte(`{"format":"pvtally.sheet/1","evidence":{"/maker":{"printed":"a","box":[-0.04,1e-9,99.95,1000000]}},"_":"\ud83d\ude00\u2028<&>"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		doc, err := Decode(data)
		problems := Validate(data)
		if err != nil {
			if len(problems) == 0 {
				t.Fatalf("Decode says %v, Validate nothing", err)
			}
			return
		}
		if len(problems) != len(doc.Check()) {
			t.Fatalf("Decode accepts, Validate says %v", problems)
		}
		roundTrip(t, doc.Sheet)
		doc.Sheet.Walk(func(pointer string, n Number) {
			start, end, ok := doc.Span(pointer)
			if !ok || string(data[start:end]) != n.String() {
				t.Fatalf("%s is %q in the record and %q in the text", pointer, n, data[start:end])
			}
		})
	})
}
