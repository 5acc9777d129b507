package quantity

import (
	"sort"
	"unicode"
)

// binding lists the words and signs between and around numbers, by what they do. One that stands in two lists does what the
// first says, if it stands behind a number and that kind needs one before it.
var binding = []struct {
	kind   kind
	bound  Bound
	behind bool // means this only behind a number or its unit
	words  []string
}{
	{kTilde, Exact, true, []string{"to", "up to", "bis", "bis zu", "a", "à", "al", "até", "hasta", "tot", "do", "ile", "ila", "till", "until", "jusqu'à", "fino a", "至", "到", "から"}},
	{kAnd, Exact, true, []string{"and", "or", "und", "oder", "et", "ou", "y", "o", "e", "ed", "en", "of", "i", "lub", "ve", "veya", "和", "或", "及", "und/oder", "and/or"}},
	{kTimes, Exact, true, []string{"by", "mal", "por"}},
	{kBound, AtLeast, false, []string{"≥", ">", ">=", "=>", "at least", "min", "min.", "minimum", "a minimum of", "minimum of", "mind.", "mindestens", "au moins", "al menos", "almeno",
		"no less than", "not less than", "not be less than", "never less than", "nicht weniger als", "pas moins de", "no menos de", "non meno di", "não menos de", "niet minder dan", "more than", "greater than", "mehr als", "plus de", "más de", "mais de", "oltre", "meer dan", "minimaal", "co najmniej", "en az", "不低于", "至少", "以上", "or more", "or greater", "or above", "and above", "oder mehr", "ou plus", "o más", "o più", "ou mais", "of meer"}},
	{kBound, AtMost, false, []string{"≤", "<", "<=", "=<", "up to", "max", "max.", "maximum", "a maximum of", "maximum of", "maximal", "bis zu", "jusqu'à", "hasta", "fino a", "massimo di", "máximo de", "até", "maks", "maks.",
		"maximaal", "not more than", "not be more than", "no more than", "not exceed", "not exceeding", "nicht mehr als", "no más de", "pas plus de", "non più di", "não mais de", "niet meer dan", "less than", "weniger als", "moins de", "menos de", "meno di", "minder dan", "maximum de", "不超过", "最大", "最高", "以下", "or less", "or below", "oder weniger", "ou moins", "o menos", "o meno", "ou menos", "of minder"}},
}

// binder is a word of binding, ready to be matched.
type binder struct {
	runes  []rune
	behind bool
	token  token
}

var byWord = func() map[rune][]binder {
	m := map[rune][]binder{}
	for _, b := range binding {
		for _, w := range b.words {
			r := newLine(w).r
			first := unicode.ToLower(r[0])
			m[first] = append(m[first], binder{r, b.behind, token{kind: b.kind, bound: b.bound}})
		}
	}
	for _, list := range m {
		sort.SliceStable(list, func(i, j int) bool { return len(list[i].runes) > len(list[j].runes) })
	}
	return m
}()

// wordToken reads a binding word at i; behind tells that a number or its unit stands before it.
func (l *line) wordToken(i int, behind bool) (token, bool) {
	for _, b := range byWord[unicode.ToLower(l.at(i))] {
		if b.behind && !(behind && (l.at(i-1) == ' ' || !isLetter(b.runes[0]))) {
			continue
		}
		end, ok := l.match(b.runes, i, true)
		if !ok || isLetter(l.at(end-1)) && isLetter(l.at(end)) {
			continue
		}
		t := b.token
		t.j = end
		return t, true
	}
	return token{}, false
}
