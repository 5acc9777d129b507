package page

import (
	"math"

	"github.com/ledongthuc/pdf"
)

// shower interprets the text operators of a content stream (ISO 32000-1, 9.3 and 9.4) and notes the characters shown.
type shower struct {
	chars []char
	now   showState
	stack []showState
}

type showState struct {
	ctm, tm, line      matrix
	font               *secondFont
	size               float64
	tc, tw, th, tl, ts float64 // spacing of characters and words, horizontal scale, leading, rise
}

const maxStates = 1_000

func (s *shower) run(contents pdf.Value, in *scope, depth int) {
	if contents.Kind() != pdf.Stream && contents.Kind() != pdf.Array || depth > maxDepth {
		return
	}
	pdf.Interpret(contents, func(stk *pdf.Stack, op string) {
		args := make([]pdf.Value, stk.Len())
		for i := len(args) - 1; i >= 0; i-- {
			args[i] = stk.Pop()
		}
		number := func(i int) float64 {
			if i < 0 || i >= len(args) {
				return 0
			}
			return args[i].Float64()
		}
		s.operate(op, args, number, in, depth)
	})
}

func (s *shower) operate(op string, args []pdf.Value, number func(int) float64, in *scope, depth int) {
	t := &s.now
	six := func() matrix { return matrix{number(0), number(1), number(2), number(3), number(4), number(5)} }
	move := func(x, y float64) {
		t.line = matrix{1, 0, 0, 1, x, y}.then(t.line)
		t.tm = t.line
	}
	switch op {
	case "q":
		if len(s.stack) < maxStates {
			s.stack = append(s.stack, s.now)
		}
	case "Q":
		if n := len(s.stack); n > 0 {
			s.now, s.stack = s.stack[n-1], s.stack[:n-1]
		}
	case "cm":
		t.ctm = six().then(t.ctm)
	case "BT":
		t.tm, t.line = identity, identity
	case "Tf":
		if len(args) == 2 {
			t.font, t.size = in.font(args[0].Name()), number(1)
		}
	case "Tc":
		t.tc = number(0)
	case "Tw":
		t.tw = number(0)
	case "Tz":
		t.th = number(0) / 100
	case "TL":
		t.tl = number(0)
	case "Ts":
		t.ts = number(0)
	case "Tm":
		t.tm = six()
		t.line = t.tm
	case "Td":
		move(number(0), number(1))
	case "TD":
		t.tl = -number(1)
		move(number(0), number(1))
	case "T*":
		move(0, -t.tl)
	case "Tj":
		s.show(args)
	case "'":
		move(0, -t.tl)
		s.show(args)
	case "\"":
		if len(args) == 3 {
			t.tw, t.tc = number(0), number(1)
			move(0, -t.tl)
			s.show(args[2:])
		}
	case "TJ":
		if len(args) == 1 {
			for i := range args[0].Len() {
				s.showOrMove(args[0].Index(i))
			}
		}
	case "Do":
		if len(args) == 1 {
			s.form(in.form(args[0].Name()), depth)
		}
	}
}

// form shows a form's content in a state of its own.
func (s *shower) form(f *secondForm, depth int) {
	if f == nil {
		return
	}
	saved, stack := s.now, s.stack
	s.stack = nil
	s.now.ctm = f.matrix.then(s.now.ctm)
	s.run(f.content, f.scope, depth+1)
	s.now, s.stack = saved, stack
}

func (s *shower) show(args []pdf.Value) {
	if len(args) == 1 {
		s.showOrMove(args[0])
	}
}

// showOrMove is one element of TJ's array: a string, or a distance in thousandths of the font size.
func (s *shower) showOrMove(v pdf.Value) {
	t := &s.now
	if v.Kind() != pdf.String {
		t.tm = matrix{1, 0, 0, 1, -v.Float64() / 1000 * t.size * t.th, 0}.then(t.tm)
		return
	}
	if t.font == nil {
		return
	}
	for _, code := range t.font.codes(v.RawString()) {
		width := t.font.width(code)*t.size + t.tc
		if code == " " {
			width += t.tw
		}
		if len(s.chars) < maxChars {
			s.place(t.font.decode(code), t.font.width(code)*t.size*t.th)
		}
		t.tm = matrix{1, 0, 0, 1, width * t.th, 0}.then(t.tm)
	}
}

// place notes the characters of one code, which is width wide in text space.
func (s *shower) place(text string, width float64) {
	t := &s.now
	m := t.tm.then(t.ctm)
	x0, y0 := m.point(0, t.ts)
	x1, y1 := m.point(width, t.ts)
	dx, dy := m.point(1, 0)
	dx, dy = dx-m.e, dy-m.f
	degrees := -math.Atan2(dy, dx) * 180 / math.Pi
	quarter := math.Round(degrees / 90)
	st := style{size: math.Abs(t.size) * math.Hypot(m.c, m.d), rotation: (int(quarter)%4 + 4) % 4 * 90, slanted: math.Abs(degrees-quarter*90) > slantLimit}
	if st.size <= 0 {
		st.size = 1
	}
	// y downwards, as everywhere in the package
	box := Box{min(x0, x1), min(-y0, -y1), max(x0, x1), max(-y0, -y1)}
	runes := []rune(text)
	for k, r := range runes {
		if r = plain(r); r != dropped {
			s.chars = append(s.chars, char{r: r, box: box.share(st.rotation, k, len(runes)), x: x0, y: -y0, obj: 1, style: st})
		}
	}
}
