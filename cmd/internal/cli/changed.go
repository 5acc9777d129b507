package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
)

// changedSince keeps the inputs that git counts as changed since a revision: committed, staged, in the work tree, or not yet known to
// git. What stands in no file (standard input) and what could not be opened stays.
func changedSince(ctx context.Context, rev string, args []string, list []input) ([]input, error) {
	at := common(args)
	top, err := git(ctx, at, "rev-parse", "--show-toplevel")
	if err != nil {
		return nil, fmt.Errorf("--changed-since: %w", err)
	}
	root := strings.TrimSuffix(top, "\n")
	changed := map[string]bool{}
	for _, command := range [][]string{
		{"diff", "--name-only", "-z", "--no-renames", "--no-relative", "--end-of-options", rev, "--"},
		{"ls-files", "--others", "--exclude-standard", "--full-name", "-z", root},
	} {
		names, err := git(ctx, at, command...)
		if err != nil {
			return nil, fmt.Errorf("--changed-since: %w", err)
		}
		for name := range strings.SplitSeq(names, "\x00") {
			changed[filepath.Join(root, filepath.FromSlash(name))] = true
		}
	}
	kept := []input{}
	spared := map[int]bool{} // folders whose content has not changed: they are not empty
	for _, in := range list {
		switch {
		case in.kind == folderEnd && spared[in.folder]:
		case in.path == "" || in.fault != nil || changed[real(in.path)]:
			kept = append(kept, in)
		case in.found:
			spared[in.folder] = true
		}
	}
	return kept, nil
}

// real is a path as git knows it, with all links followed.
func real(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	if resolved, err := filepath.EvalSymlinks(path); err == nil {
		return resolved
	}
	return path
}

// errNoGit is for what only git can tell.
var errNoGit = errors.New("this needs git, which is not installed")

// git runs a command that only reads, and gives what it prints.
func git(ctx context.Context, folder string, args ...string) (string, error) {
	cmd := exec.CommandContext(ctx, "git", append([]string{"-C", folder}, args...)...)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if errors.Is(err, exec.ErrNotFound) {
		return "", errNoGit
	}
	if err != nil {
		said, _, _ := strings.Cut(strings.TrimSpace(errs.String()), "\n")
		return "", fmt.Errorf("git %s: %s", args[0], said)
	}
	return string(out), nil
}
