package cli

import (
	"errors"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pvtally/cmd/internal/report"
)

// input is one thing to read: a file that was named or found in a folder, or a record in a stream.
type input struct {
	name   string         // as shown to the user: the path with slashes, "-", "-:12"
	path   string         // "" for standard input and for a record in a stream
	kind   kind           // what it seems to be
	found  bool           // in a folder, not named: a JSON that is no record of ours is passed over
	folder int            // index of the folder it was found in, when found
	data   []byte         // of a record in a stream, read already
	line   int            // of JSON Lines, from 1: it is in the name too; 0 for a whole document
	fault  *report.Unread // it cannot be opened
}

type kind uint8

const (
	datasheet kind = iota // whatever is not one of the others: the reader looks at the bytes
	record                // one JSON document
	stream                // JSON Lines of records, or standard input with whatever it brings
	folderEnd             // a folder with everything in it has been handed out
)

// kinds are the file name endings that a folder is searched for.
var kinds = map[string]kind{
	".pdf": datasheet, ".png": datasheet, ".jpg": datasheet, ".jpeg": datasheet, ".tif": datasheet, ".tiff": datasheet,
	".txt": datasheet, ".md": datasheet, ".html": datasheet, ".htm": datasheet,
	".json": record,
}

// streams are the endings of named files that hold JSON Lines.
var streams = map[string]bool{".jsonl": true, ".ndjson": true}

const (
	searched  = ".pdf .png .jpg .tif .txt .md .html, or .json with our format"
	checkPath = "check the path and its permissions"
)

// expand lists what args name, in their order; a folder's files in the order of their paths. A file reached twice counts once.
func expand(args []string) []input {
	var list []input
	seen := map[string]bool{}
	add := func(in input) {
		if key := filepath.Clean(in.path); in.path == "" || !seen[key] {
			seen[key] = true
			list = append(list, in)
		}
	}
	for n, arg := range args {
		if arg == "-" {
			add(input{name: "-", kind: stream})
			continue
		}
		info, err := os.Stat(arg)
		switch {
		case err != nil:
			add(unopened(arg, err))
		case info.IsDir():
			for in := range search(arg) {
				in.folder = n
				add(in)
			}
			list = append(list, input{name: filepath.ToSlash(arg), kind: folderEnd, folder: n})
		default:
			add(input{name: filepath.ToSlash(arg), path: arg, kind: kindOf(arg)})
		}
	}
	return list
}

func kindOf(path string) kind {
	ending := strings.ToLower(filepath.Ext(path))
	if streams[ending] {
		return stream
	}
	return kinds[ending]
}

// search walks a folder. Files and folders whose name begins with a dot are passed over (.git, editors' leftovers), and links to
// folders are not followed, so that a loop of links cannot hold the walk.
func search(folder string) iter.Seq[input] {
	return func(yield func(input) bool) {
		filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
			hidden := path != folder && strings.HasPrefix(filepath.Base(path), ".")
			switch _, wanted := kinds[strings.ToLower(filepath.Ext(path))]; {
			case err != nil:
				if !yield(unopened(path, err)) {
					return fs.SkipAll
				}
				return fs.SkipDir
			case hidden && entry.IsDir():
				return fs.SkipDir
			case hidden || !wanted || !readable(path, entry):
				return nil
			}
			if !yield(input{name: filepath.ToSlash(path), path: path, kind: kindOf(path), found: true}) {
				return fs.SkipAll
			}
			return nil
		})
	}
}

// readable tells files from folders, pipes and devices; a link counts as what it leads to.
func readable(path string, entry fs.DirEntry) bool {
	if entry.Type()&fs.ModeSymlink == 0 {
		return entry.Type().IsRegular()
	}
	info, err := os.Stat(path)
	return err != nil || info.Mode().IsRegular() // a dangling link is for the reader to report
}

func unopened(path string, err error) input {
	return input{name: filepath.ToSlash(path), path: path, fault: &report.Unread{
		File: filepath.ToSlash(path), Problem: cause(err), Remedy: checkPath}}
}

// cause is an error of the file system without the path, which the report names already.
func cause(err error) string {
	var at *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &at):
		err = at.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return err.Error()
}

// hasDatasheets reports whether a run may have to read a datasheet.
func hasDatasheets(list []input) bool {
	return slices.ContainsFunc(list, func(in input) bool { return in.kind == datasheet && in.fault == nil })
}
