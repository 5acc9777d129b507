package page

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"pvtally/extract/page/child"
)

// A document is untrusted, so PDFium runs as WebAssembly: no file system, no network, and a ceiling on memory.
const (
	wasmPage        = 64 << 10
	sandboxMemory   = 768 << 20 // most bytes one document may use; a rendered A3 page at 300 dpi takes 70 MB
	cacheFolderName = "pvtally/wazero"
)

// startPool compiles PDFium once in a process, at the first document. It holds as many workers as there are cores; each document
// gets a fresh one, so that nothing of one document can reach another.
//
// Code that can be stopped from outside asks at every turn of a loop whether it should, and takes three times as long (measured). A
// helper process does without: its parent kills it.
var startPool = sync.OnceValues(func() (pdfium.Pool, error) {
	workers := runtime.GOMAXPROCS(0)
	config := wazero.NewRuntimeConfigCompiler().
		// The module's setjmp is lowered to WebAssembly exceptions.
		WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling).
		WithMemoryLimitPages(sandboxMemory / wasmPage).
		WithCloseOnContextDone(!child.Is())
	if cache := compilationCache(); cache != nil {
		config = config.WithCompilationCache(cache)
	}
	pool, err := webassembly.Init(webassembly.Config{
		Context:       ownMemory(context.Background()),
		MaxTotal:      workers,
		MaxIdle:       0,
		FSConfig:      wazero.NewFSConfig(), // the default would mount the root folder
		RuntimeConfig: config,
		Stdout:        io.Discard,
		Stderr:        io.Discard,
	})
	if err != nil {
		return nil, fmt.Errorf("could not start the pdf reader: %w", err)
	}
	return pool, nil
})

// compilationCache keeps the compiled module between runs (4 s the first time, 0.1 s later). Where no cache folder can be written
// the reader works without.
func compilationCache() wazero.CompilationCache {
	root, err := os.UserCacheDir()
	if err != nil {
		return nil
	}
	cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(root, filepath.FromSlash(cacheFolderName)))
	if err != nil {
		return nil
	}
	return cache
}

// withGuest runs work with a fresh PDFium. When the context ends, the module is closed and whatever call is running returns an error.
func withGuest(ctx context.Context, work func(*guest) error) (err error) {
	pool, err := startPool()
	if err != nil {
		return err
	}
	instance, err := pool.GetInstanceWithContext(ctx)
	if err != nil {
		return fmt.Errorf("could not get a pdf reader: %w", err)
	}
	defer func() {
		if trap := recover(); trap != nil {
			err = trapped(ctx, trap)
		}
		_ = instance.Kill()
	}()
	g, err := newGuest(ctx, instance)
	if err != nil {
		return err
	}
	return work(g)
}

// trapped turns a panic of the guest into an error; panics of our own code pass on.
func trapped(ctx context.Context, trap any) error {
	failure, ok := trap.(guestFailure)
	if !ok {
		panic(trap)
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	// The runtime's errors carry a listing of the guest's calls; the first line says what happened.
	if line, rest, more := strings.Cut(failure.err.Error(), "\n"); more && rest != "" {
		return errors.New(line)
	}
	return failure.err
}
