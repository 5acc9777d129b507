package browser

import (
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// audit asks axe-core for what breaks WCAG 2.2 A and AA, or its own best practice, contrast among it.
const audit = `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], resultTypes: ["violations"]})
	.then(r => r.violations.flatMap(v => v.nodes.map(n => v.id + ": " + v.help + ": " + n.html.slice(0, 200) + " " + (n.any[0] ? n.any[0].message : ""))))`

// Audit is what axe-core finds wrong with the page as it is shown now.
func (p *Page) Audit(t testing.TB) []string {
	t.Helper()
	p.Eval(t, axe(t), nil)
	var faults []string
	p.Eval(t, audit, &faults)
	return faults
}

// Contrast is the least contrast of any visible text against what is painted behind it (WCAG 2, success criterion 1.4.3), by a scan of our
// own that sees text in drawings too, which axe-core passes over.
func (p *Page) Contrast(t testing.TB) (least float64, text string) {
	t.Helper()
	var out struct {
		Least float64
		Text  string
	}
	p.Eval(t, contrast, &out)
	return out.Least, out.Text
}

const contrast = `(() => {
	const canvas = Object.assign(document.createElement("canvas"), {width: 1, height: 1}), pen = canvas.getContext("2d", {willReadFrequently: true});
	const rgba = (colour, alpha = 1) => { pen.clearRect(0, 0, 1, 1); pen.fillStyle = colour; pen.fillRect(0, 0, 1, 1); const d = pen.getImageData(0, 0, 1, 1).data; return [d[0], d[1], d[2], d[3] / 255 * alpha]; };
	const over = (a, b) => [0, 1, 2].map(i => a[i] * a[3] + b[i] * (1 - a[3])).concat(1);
	const light = c => { const f = v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; }; return 0.2126 * f(c[0]) + 0.7152 * f(c[1]) + 0.0722 * f(c[2]); };
	const ground = e => {
		const layers = [];
		for (let n = e; n; n = n.parentElement) layers.push(rgba(getComputedStyle(n).backgroundColor));
		return layers.reverse().reduce((below, c) => over(c, below), [255, 255, 255, 1]);
	};
	const behind = (text, below) => { // shapes of the same drawing that lie under the text's middle, in painting order
		const b = text.getBoundingClientRect(), x = (b.left + b.right) / 2, y = (b.top + b.bottom) / 2, svg = text.closest("svg");
		for (const s of svg.querySelectorAll("rect, circle")) {
			if (s.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_PRECEDING) continue;
			const r = s.getBoundingClientRect(), style = getComputedStyle(s);
			if (style.fill !== "none" && x >= r.left && x <= r.right && y >= r.top && y <= r.bottom) below = over(rgba(style.fill, +style.fillOpacity * +style.opacity), below);
		}
		return below;
	};
	let out = {Least: 99, Text: ""};
	const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let n; n = walk.nextNode();) {
		const e = n.parentElement, style = getComputedStyle(e), box = e.getBoundingClientRect();
		if (!n.data.trim() || box.width < 2 || box.height < 2 || style.visibility === "hidden" || ["TITLE", "DESC", "STYLE", "title", "desc"].includes(e.tagName)) continue;
		let below = ground(e), front;
		if (e.closest("svg")) { below = behind(e, below); front = over(rgba(style.fill), below); } else front = over(rgba(style.color), below);
		const a = light(front), b = light(below), ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		if (ratio < out.Least) out = {Least: ratio, Text: n.data.trim().slice(0, 60) + " <" + e.tagName + " " + (e.getAttribute("class") || "") + ">"};
	}
	return out;
})()`

// axe is axe-core as testdata keeps it.
func axe(t testing.TB) string {
	t.Helper()
	_, self, _, _ := runtime.Caller(0)
	f, err := os.Open(filepath.Join(filepath.Dir(self), "..", "..", "..", "testdata", "browser", "axe.min.js.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	script, err := io.ReadAll(r)
	if err != nil || !strings.HasPrefix(string(script), "/*! axe ") {
		t.Fatal(fmt.Errorf("axe.min.js.gz: %v", err))
	}
	return string(script) + "\n;0"
}
