package report

import "fmt"

// Unread is an input that could not be read, with what would help.
type Unread struct {
	File    string `json:"file"`
	Page    int    `json:"page,omitempty"`
	Problem string `json:"problem"`
	Remedy  string `json:"remedy,omitempty"`
}

// String gives file, page, problem and remedy in one line.
func (u *Unread) String() string {
	if u.Page > 0 {
		return u.File + " " + u.detail()
	}
	return u.File + ": " + u.detail()
}

// detail is String without the file.
func (u *Unread) detail() string {
	text := u.Problem
	if u.Page > 0 {
		text = fmt.Sprintf("page %d: %s", u.Page, text)
	}
	if u.Remedy != "" {
		text += " (" + u.Remedy + ")"
	}
	return text
}
