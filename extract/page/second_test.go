package page

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestLiterals(t *testing.T) {
	tests := []struct {
		text string
		want map[string]int
	}{
		{"", map[string]int{}},
		{"Voc", map[string]int{}},
		{"37.23", map[string]int{"37.23": 1}},
		{"-0.275%/°C", map[string]int{"0.275": 1}},
		{"1722×1134×30mm", map[string]int{"1722": 1, "1134": 1, "30": 1}},
		{"10.52A10.61A", map[string]int{"10.52": 1, "10.61": 1}},
		{"1.318,5", map[string]int{"1.318,5": 1}},
		{"25.", map[string]int{"25": 1}},
		{"..5,,6", map[string]int{"5": 1, "6": 1}},
		{"30/30", map[string]int{"30": 2}},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, Literals(tt.text)); diff != "" {
			t.Errorf("%q (-want +got)\n%s", tt.text, diff)
		}
	}
}

// Both readers find the same digits, whatever way they are set.
func TestSecondReading(t *testing.T) {
	inForm := doc{
		extra: []string{stream("/Type /XObject /Subtype /Form /BBox [0 0 400 300] /Matrix [1 0 0 1 5 5] /Resources << /Font << /F1 3 0 R >> >>", text(20, 200, 10, "37.23"))},
		pages: []leaf{{content: "/X1 Do q 1 0 0 1 50 0 cm /X1 Do Q", resources: "/XObject << /X1 5 0 R >>"}},
	}
	tests := []struct {
		name     string
		data     []byte
		literals map[string]int
	}{
		{"plain", one(text(20, 200, 10, "37.23 V 37.23 A")), map[string]int{"37.23": 2}},
		{"in pieces", one(text(20, 200, 10, "37") + text(20+11.12, 200, 10, ".23")), map[string]int{"37.23": 1}},
		{"kerned", one("BT /F1 10 Tf 20 200 Td [(3) 20 (7.2) -30 (3) -300 (41)] TJ ET"), map[string]int{"37.23": 1, "41": 1}},
		{"hidden as well", one("3 Tr " + text(20, 200, 10, "1000")), map[string]int{"1000": 1}},
		{"turned", one("BT /F1 10 Tf 0 1 -1 0 60 40 Tm (37.23) Tj 30 0 Td (5) Tj ET"), map[string]int{"37.23": 1, "5": 1}},
		{"scaled, in lines", one("q 2 0 0 2 0 0 cm BT /F1 5 Tf 6 TL 10 100 Td (37.23) Tj (41) ' T* (42) Tj ET Q"), map[string]int{"37.23": 1, "41": 1, "42": 1}},
		{"in a form", inForm.bytes(), map[string]int{"37.23": 2}},
		{"at the same place again", one(text(20, 200, 10, "37.23") + text(20, 200, 10, "37.23")), map[string]int{"37.23": 1}},
		{"encrypted", doc{pages: []leaf{{content: text(20, 200, 10, "37.23")}}, locked: true}.bytes(), map[string]int{"37.23": 1}},
		{"without its end", cut(one(text(20, 200, 10, "37.23")), 20), map[string]int{"37.23": 1}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			pages, err := PDF(context.Background(), "test.pdf", tt.data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			s, err := SecondReading(context.Background(), tt.data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			for literal, n := range tt.literals {
				if s.Count(1, literal) != n || !s.Confirms(pages[0], literal) {
					t.Errorf("%s: second %d, first %d, want %d in both", literal, s.Count(1, literal), pages[0].Digits[literal], n)
				}
			}
		})
	}
}

func TestConfirms(t *testing.T) {
	p := Page{Number: 1, Digits: map[string]int{"37.23": 2, "41": 1, "7": 1}}
	s := &Second{pages: []map[string]int{{"37.23": 2, "41": 2}}}
	tests := []struct {
		name, printed string
		second        *Second
		want          bool
	}{
		{"as often", "37.23", s, true},
		{"with sign and unit", "-37.23 V", s, true},
		{"more often", "41", s, false},
		{"not found", "7", s, false},
		{"one of two", "37.23 / 41", s, false},
		{"no digits", "IP", s, false},
		{"no second reading", "37.23", nil, false},
	}
	for _, tt := range tests {
		if got := tt.second.Confirms(p, tt.printed); got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

// What the second reader cannot do is no error of the program's, and the next file is read.
func TestNoSecondReading(t *testing.T) {
	for name, data := range map[string][]byte{"empty": nil, "no PDF": []byte("GIF89a"), "endless": bomb(9)} {
		t.Run(name, func(t *testing.T) {
			if s, err := SecondReading(context.Background(), data, Options{}); err == nil && s.Count(1, "1") == 1 {
				t.Errorf("got a reading")
			}
			if s, err := SecondReading(context.Background(), one(text(20, 200, 10, "37.23")), Options{}); err != nil || s.Count(1, "37.23") != 1 {
				t.Errorf("the next file: %v", err)
			}
		})
	}
}

// agreement is the least share of the visible literals of real sheets that both readers find as often; 0.998 when this was written.
const agreement = 0.99

func TestSecondReadingOfRealSheets(t *testing.T) {
	all, agreed := 0, 0
	for _, file := range sheetsFor(t, "../../../shared/sheets/*.pdf") {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		pages, err := PDF(context.Background(), file, data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if !HasText(pages) {
			continue
		}
		s, err := SecondReading(context.Background(), data, Options{})
		if err != nil {
			t.Errorf("%s: %v", filepath.Base(file), err)
		}
		for _, p := range pages {
			for _, w := range p.Words {
				if w.Hidden != Visible {
					continue
				}
				for literal, n := range Literals(w.Text) {
					all += n
					if s.Confirms(p, literal) {
						agreed += n
					}
				}
			}
		}
	}
	if share := float64(agreed) / float64(all); share < agreement {
		t.Errorf("%d of %d literals agree (%.3f), want %.2f", agreed, all, share, agreement)
	}
}

// cut takes the last n bytes off.
func cut(data []byte, n int) []byte { return data[:len(data)-n] }
