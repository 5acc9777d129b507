package page

import (
	"context"
	"errors"
	"strings"
	"testing"
)

// What goes wrong in the sandbox is an error of one line, and the next document gets a fresh sandbox.
func TestSandboxFailures(t *testing.T) {
	tests := []struct {
		name string
		do   func(*guest)
		is   error
		says string
	}{
		{"no memory left", func(g *guest) { g.alloc(sandboxMemory) }, errNoMemory, "memory"},
		{"a bad pointer", func(g *guest) { g.call("FPDF_LoadPage", 0xFFFF_FFF0, 0) }, nil, "wasm"},
		{"no such function", func(g *guest) { g.call("FPDF_NoSuchThing") }, nil, "FPDF_NoSuchThing"},
		{"memory outside", func(g *guest) { g.bytes(0xFFFF_0000, 1<<16) }, errNoMemory, "memory"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			err := withGuest(context.Background(), func(g *guest) error { tt.do(g); return nil })
			if err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), tt.says) || tt.is != nil && !errors.Is(err, tt.is) {
				t.Errorf("got %v, want one line with %q", err, tt.says)
			}
			var e *Error
			if wrapped := asError(context.Background(), "kr-400.pdf", 2, Options{}, err); !errors.As(wrapped, &e) || e.Page != 2 || e.Remedy == "" {
				t.Errorf("as the person sees it: got %v, want page 2 and a remedy", wrapped)
			}
			if got := seen(readOne(t, one(text(20, 200, 10, "1500V")))); got != "1500V" {
				t.Errorf("the next document: got %q", got)
			}
		})
	}
}

// A mistake in our own code is not dressed up as a fault of the file.
func TestOwnPanic(t *testing.T) {
	defer func() {
		if recover() != "own mistake" {
			t.Error("the panic did not pass")
		}
	}()
	_ = withGuest(context.Background(), func(*guest) error { panic("own mistake") })
}

// A sandbox has no files: PDFium cannot open one by its name.
func TestNoFiles(t *testing.T) {
	err := withGuest(context.Background(), func(g *guest) error {
		path := "/etc/hostname\x00"
		at := g.alloc(len(path))
		g.mem.Write(uint32(at), []byte(path))
		if g.ptr("FPDF_LoadDocument", at, 0) != 0 || g.call("FPDF_GetLastError") != pdfErrFile {
			t.Error("the guest saw a file of the host")
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
