// Package page turns the bytes of a datasheet into one model of what stands on its pages: words with boxes, drawn lines and
// filled bands. It knows nothing of photovoltaics and nothing of tables; it must not import any other package of extract.
//
// All lengths are points (1/72 in), origin at the top left of the page as it is shown (after rotation and crop), y downwards.
package page

import "time"

// Page is one page as a reader sees it.
type Page struct {
	Number int     `json:"page"` // 1 is the first
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Words  []Word  `json:"words"` // in reading order of the source; steps that need geometry sort for themselves
	Rules  []Rule  `json:"rules,omitempty"`
	Bands  []Band  `json:"bands,omitempty"`

	// Digits counts the page's literals (see Literals), hidden ones and all: what a second reader can compare itself with.
	Digits map[string]int `json:"-"`

	Looked time.Duration `json:"-"` // spent on rendering, where words left a doubt whether they are visible or all there is

	Figures []Figure  `json:"-"`
	Images  []Picture `json:"-"`
}

// Box is an upright rectangle: left, top, right, bottom.
type Box struct {
	X0, Y0, X1, Y1 float64
}

// Word is a run of characters without a gap that a reader would see as a space.
type Word struct {
	Text     string    `json:"text"`
	Box      Box       `json:"box"`
	Edges    []float64 `json:"-"`                  // along the reading direction: the left edge of every rune of Text, then the right edge of the last (len = runes + 1); for upright words these are x values
	Baseline float64   `json:"-"`                  // y of the baseline for upright words
	Size     float64   `json:"size"`               // font size as shown, in points
	Rotation int       `json:"rotation,omitempty"` // of the reading direction, clockwise in degrees: 0, 90, 180, 270
	Bold     bool      `json:"bold,omitempty"`
	Colour   uint32    `json:"-"` // 0xRRGGBB of the lettering
	Hidden   Hidden    `json:"hidden,omitempty"`
	By       By        `json:"by"`
	Sure     float64   `json:"sure,omitempty"` // a picture reader's confidence, 0 to 1; 0 where the source gives none

	// Doubt says why a visible word cannot be trusted to be all that stands there; empty for most.
	Doubt string `json:"doubt,omitempty"`
}

// Rule is a drawn straight line, horizontal or vertical: what separates the rows and columns of a table.
type Rule struct {
	Box    Box // of the stroke's centre line: X0 == X1 or Y0 == Y1
	Width  float64
	Colour uint32
}

// Band is a filled rectangle: a table's header bar, a striped row, a panel.
type Band struct {
	Box    Box
	Colour uint32
}

// Figure is a filled outline that may be a letter drawn as a path. Its contours are closed runs of points: x and y, x and y.
type Figure struct {
	Box      Box
	Contours [][]float32
	EvenOdd  bool // filled by the even-odd rule, else by the non-zero winding rule
}

// Picture is an image on the page. Photo tells that it is stored as photographs are.
type Picture struct {
	Box   Box
	Photo bool
}

// Hidden says why a word that the file holds is not visible on the page; empty for a visible word.
type Hidden string

const (
	Visible    Hidden = ""
	Clipped    Hidden = "clipped"    // outside its clip path
	Unpainted  Hidden = "unpainted"  // render mode draws nothing
	PaperInk   Hidden = "paper-ink"  // in the colour of what lies behind it
	Covered    Hidden = "covered"    // a later fill or picture lies over it
	OffPage    Hidden = "off-page"   // outside the page as shown
	NoInk      Hidden = "no-ink"     // the rendered page shows nothing there
	Overprint  Hidden = "overprint"  // the rendered page shows other ink there
	Repetition Hidden = "repetition" // the same text at the same place again
)

// By names the source of a word.
type By string

const (
	ByText    By = "text"
	ByPicture By = "picture"
	ByHTML    By = "html"
)

// W and H are the sides of the box.
func (b Box) W() float64 { return b.X1 - b.X0 }
func (b Box) H() float64 { return b.Y1 - b.Y0 }

// Union is the smallest box that holds both.
func (b Box) Union(o Box) Box {
	return Box{min(b.X0, o.X0), min(b.Y0, o.Y0), max(b.X1, o.X1), max(b.Y1, o.Y1)}
}
