//go:build !linux

package child

import "time"

// limitCPU does nothing here; the parent's clock stands alone.
func limitCPU(time.Duration) {}
