package report

import "io"

// MarkdownText makes a text stand for itself in Markdown, for other reports of the program.
func MarkdownText(text string) string { return mdText(text) }

// EncodeJSON writes v as an indented document whose text does nothing to a screen.
func EncodeJSON(w io.Writer, v any) error { return encodeJSON(w, v, "  ") }
