package page

import "fmt"

// Error is a document or a page of it that cannot be read. It names what was tried, what is wrong and what would help, since it is
// shown to people as it stands.
type Error struct {
	File    string // as the caller named it
	Page    int    // 1 is the first; 0 when the whole file is meant
	Problem string // what is wrong, in lower case
	Remedy  string // what to do about it
	Cause   error  // what lies beneath, may be nil
}

// Error gives file, page, problem and remedy in one line.
func (e *Error) Error() string {
	where := fmt.Sprintf("%q", e.File)
	if e.Page > 0 {
		where += fmt.Sprintf(" page %d", e.Page)
	}
	text := fmt.Sprintf("could not read %s: %s", where, e.Problem)
	if e.Cause != nil {
		text += ": " + e.Cause.Error()
	}
	if e.Remedy != "" {
		text += " (" + e.Remedy + ")"
	}
	return text
}

// Unwrap gives the cause.
func (e *Error) Unwrap() error { return e.Cause }
