//go:build !linux

package page

import "context"

// ownMemory leaves the sandboxes' memory to their runtime.
func ownMemory(ctx context.Context) context.Context { return ctx }
