package page

import (
	"context"
	"errors"
	"fmt"
	"reflect"

	"github.com/klippa-app/go-pdfium"
	"github.com/tetratelabs/wazero/api"
)

// guest calls PDFium's C functions in the sandbox directly. The library's own methods allocate and free every result in the
// sandbox, and note a random identifier for every object; for ten thousand characters that is the greater part of the time. Here
// results come back through one scratch block.
type guest struct {
	ctx     context.Context
	inst    pdfium.Pdfium // for the few calls whose speed does not matter
	mem     api.Memory
	fn      func(string) api.Function
	known   map[string]api.Function
	stack   [16]uint64
	scratch uint32 // scratchSize bytes of the sandbox's memory

	layout        layout          // of path points, see segments.go
	segmentBuffer []segment       // of the last path
	bolds         map[uint64]bool // by font
	hiddenLayers  bool            // of the document
}

const scratchSize = 4096

// guestFailure carries an error of the sandbox (a trap, memory, a closed module) through the many small calls of a page; withGuest
// recovers it. It never leaves the package.
type guestFailure struct{ err error }

var errNoMemory = errors.New("the sandbox's memory is used up")

// newGuest reaches the instance's module. The library hands its implementation out (GetImplementation) but its type is internal,
// hence reflection; TestGuest fails when an update changes the shape.
func newGuest(ctx context.Context, instance pdfium.Pdfium) (*guest, error) {
	impl := reflect.ValueOf(instance.GetImplementation())
	lookup := impl.MethodByName("Fn")
	if !lookup.IsValid() || impl.Kind() != reflect.Pointer {
		return nil, errors.New("could not reach the pdf reader's module: unknown shape")
	}
	module := impl.Elem().FieldByName("Module")
	if !module.IsValid() {
		return nil, errors.New("could not reach the pdf reader's memory: unknown shape")
	}
	memory, ok := module.Elem().MethodByName("Memory").Call(nil)[0].Interface().(api.Memory)
	if !ok {
		return nil, errors.New("could not reach the pdf reader's memory: unknown type")
	}
	g := &guest{ctx: ctx, inst: instance, mem: memory, known: map[string]api.Function{}}
	g.fn = func(name string) api.Function {
		f, _ := lookup.Call([]reflect.Value{reflect.ValueOf(name)})[0].Interface().(api.Function)
		return f
	}
	return g, nil
}

// call runs a C function and gives its result (0 for void). Failures of the sandbox panic with guestFailure.
func (g *guest) call(name string, args ...uint64) uint64 {
	f := g.known[name]
	if f == nil {
		if f = g.fn(name); f == nil {
			panic(guestFailure{fmt.Errorf("the pdf reader has no function %s", name)})
		}
		g.known[name] = f
	}
	copy(g.stack[:], args)
	if err := f.CallWithStack(g.ctx, g.stack[:]); err != nil {
		panic(guestFailure{err})
	}
	return g.stack[0]
}

// ok is call for functions that return a C boolean.
func (g *guest) ok(name string, args ...uint64) bool { return uint32(g.call(name, args...)) != 0 }

// count is call for functions that return a C int; the failures it reports as negative numbers count as none.
func (g *guest) count(name string, args ...uint64) int {
	return max(0, int(int32(g.call(name, args...))))
}

// ptr is call for functions that return a pointer.
func (g *guest) ptr(name string, args ...uint64) uint64 { return uint64(uint32(g.call(name, args...))) }

// at is the address of the scratch block's byte n.
func (g *guest) at(n uint32) uint64 {
	if g.scratch == 0 {
		g.scratch = uint32(g.alloc(scratchSize))
	}
	return uint64(g.scratch + n)
}

// alloc takes memory in the sandbox. Nothing is freed: the sandbox goes with the document.
func (g *guest) alloc(size int) uint64 {
	p := g.ptr("malloc", uint64(size))
	if p == 0 {
		panic(guestFailure{errNoMemory})
	}
	return p
}

func (g *guest) readF32(n uint32) float64 {
	v, _ := g.mem.ReadFloat32Le(g.scratch + n)
	return float64(v)
}

func (g *guest) readF64(n uint32) float64 {
	v, _ := g.mem.ReadFloat64Le(g.scratch + n)
	return v
}

func (g *guest) readU32(n uint32) uint32 {
	v, _ := g.mem.ReadUint32Le(g.scratch + n)
	return v
}

// bytes copies memory out of the sandbox.
func (g *guest) bytes(at uint64, size int) []byte {
	view, ok := g.mem.Read(uint32(at), uint32(size))
	if !ok {
		panic(guestFailure{errNoMemory})
	}
	return append([]byte(nil), view...)
}
