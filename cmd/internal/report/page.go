package report

// Page is a page of the datasheet as the reader saw it: what is visible on it. Lengths are points (1/72 in), the origin at the top left.
type Page struct {
	Number        int
	Width, Height float64
	Words         []Word
	Lines         []Line
	Bands         []Band
	// Picture is a JPEG of the page where its words were read off a picture; nil else.
	Picture []byte
}

// Word is a word in its place. Rotation is that of the reading direction, clockwise in degrees.
type Word struct {
	Text           string
	X0, Y0, X1, Y1 float64
	Baseline, Size float64
	Rotation       int
	Bold           bool
}

// Line is a drawn straight line.
type Line struct{ X0, Y0, X1, Y1, Width float64 }

// Band is a filled rectangle. Dark is how dark it is: 0 for white, 1 for black.
type Band struct{ X0, Y0, X1, Y1, Dark float64 }
