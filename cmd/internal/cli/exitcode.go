package cli

import "errors"

// The exit codes. Unread wins over Found: a run that could not look must not pass for one that looked.
const (
	Done   = 0 // done, nothing at or above --fail-on
	Found  = 1 // findings at or above it
	Usage  = 2 // the command line or a policy file is wrong
	Unread = 3 // an input could not be read, or a result not written
)

// errSaid is the cause of an outcome that needs no further word: the report or standard error has it already.
var errSaid = errors.New("said already")

// outcome is an error that knows its exit code.
type outcome struct {
	code int
	error
}

func (o outcome) Unwrap() error { return o.error }

// exitCode gives the code of a command's result. An error without an outcome comes from the parsing of flags and arguments.
func exitCode(err error) int {
	var o outcome
	switch {
	case err == nil:
		return Done
	case errors.As(err, &o):
		return o.code
	}
	return Usage
}

// unwritten gives a failure to write results its code.
func unwritten(err error) error {
	if err == nil {
		return nil
	}
	return outcome{Unread, err}
}
